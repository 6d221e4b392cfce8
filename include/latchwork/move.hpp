#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

/// What hands and carriage do, one thing at a time. No move names a stitch pattern: what comes of it is for simulate()
/// to find out. Needles are the operator's; rows are RC rows, 0 the cast-on.
enum class MoveKind : std::uint8_t {
  cast_on = 0,   ///< needles needle..last_needle get a new loop each and are in work
  bind_off = 1,  ///< the loops on needle..last_needle are bound off; the needles are out of work
  carriage =
      2,     ///< one pass: every needle in work and not in hold knits; a needle in hold takes the strand with its loop
  hold = 3,  ///< needle..last_needle go to hold
  release = 4,       ///< and come back to work
  tool_into = 5,     ///< the latch tool goes into the loop of `row` in the wale on `needle`
  drop = 6,          ///< the stitch on `needle` is dropped and ladders down to the loop of `row`
  rung_behind = 7,   ///< the tool passes behind the rung of `row`: the rung is taken into the stitch
  rung_before = 8,   ///< the tool passes in front of the rung: it stays on the RS side of the stitch
  rung_aside = 9,    ///< the rung is left on the operator's side of the stitch, as when it is worked on its needle
  draw_toward = 10,  ///< the rung of `row` is drawn through, toward the operator: a back loop on the RS
  draw_away = 11,    ///< the rung of `row` is drawn through, away from the operator: a face loop on the RS
  hang = 12,         ///< the loop on the latch tool goes back on `needle`
  lift = 13,         ///< the stitches on needle..last_needle go to pronged tool `tool`
  put_back =
      14,  ///< the stitches on `tool` go to needle..last_needle, in their order; this tool now is nearest the operator
};

struct Move {
  MoveKind kind = MoveKind::carriage;
  int needle = 0;       ///< operator's view; 0: none
  int last_needle = 0;  ///< at or right of `needle`; same as `needle` for one
  int row = -1;         ///< loop or rung meant; -1: none
  int tool = -1;        ///< pronged tool, counted from 0 within the stop; -1: none
  friend bool operator==(const Move&, const Move&) = default;
};

/// Every move of a plan from the cast-on to the last row, in order. Works for wrong plans too: it translates and does
/// not judge. A plan is followed by the row counter: a stop at a row that is never read is never made, and stops out of
/// order are made when their row comes. Linear in rows and rungs. @throws Error too_large (field rows) above
/// Grid::max_side.
LATCHWORK_API std::vector<Move> moves(const Plan& plan);

/// The move for people: "needle L3: draw the rung of row 9 through, toward you".
LATCHWORK_API std::string describe(const Move& move);

}  // namespace latchwork::inline v0
