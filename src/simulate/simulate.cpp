#include "latchwork/simulate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "hands.hpp"
#include "knit.hpp"
#include "progress/pulse.hpp"
#include "reading.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace knitting;

Place field(const char* name) {
  Place place;
  place.field = name;
  return place;
}

void require_bed(const Bed& bed, std::int64_t rows) {
  if (bed.leftmost == 0) {
    throw Error(ErrorCode::bad_argument, field("leftmost"),
                "the bed's leftmost needle is 0; needles are ..., -2, -1, 1, 2, ...");
  }
  if (bed.columns < 1) {
    throw Error(ErrorCode::bad_argument, field("columns"),
                fmt::format("a bed of {} columns; at least 1 is needed", bed.columns));
  }
  if (bed.columns > Grid::max_side) {
    throw Error(ErrorCode::too_large, field("columns"),
                fmt::format("a bed of {} columns; the limit is {}", bed.columns, Grid::max_side));
  }
  if (rows > Grid::max_side || (rows + 1) * bed.columns > Grid::max_cells) {
    throw Error(ErrorCode::too_large, field("moves"),
                fmt::format("{} carriage passes over {} columns; the limits are {} passes and {} stitches", rows,
                            bed.columns, Grid::max_side, Grid::max_cells));
  }
}

std::int64_t rows_of(std::span<const Move> moves) {
  return std::ranges::count(moves, MoveKind::carriage, &Move::kind);
}

/// The moves after a stuck one that cannot be made without it: past them the knitting goes on.
std::size_t past_left(std::span<const Move> moves, std::size_t at) {
  const auto follows = [&](auto... kinds) { return at + 1 < moves.size() && ((moves[at + 1].kind == kinds) || ...); };
  const MoveKind kind = moves[at].kind;
  if (kind == MoveKind::tool_into) {
    while (follows(MoveKind::drop, MoveKind::rung_behind, MoveKind::rung_before, MoveKind::rung_aside,
                   MoveKind::draw_toward, MoveKind::draw_away, MoveKind::hang)) {
      ++at;
    }
  }
  if (kind == MoveKind::lift) {
    while (follows(MoveKind::lift)) ++at;
  }
  if (kind == MoveKind::lift || kind == MoveKind::put_back) {
    while (follows(MoveKind::put_back)) ++at;
  }
  return at + 1;
}

/// Makes the moves. The first that hands could not make, if any.
std::optional<Fault> work(Hands& hands, std::span<const Move> moves, Impossible impossible, Pulse& pulse) {
  std::optional<Fault> first;
  const auto keep = [&first](std::int64_t move, Stuck& stuck) {
    if (!first) first = Fault{.move = move, .place = stuck.place, .message = std::move(stuck.message)};
  };
  for (std::size_t at = 0; at < moves.size();) {
    pulse.step();
    std::size_t next = at + 1;
    try {
      hands.execute(moves[at], static_cast<std::int64_t>(at));
    } catch (Stuck& stuck) {
      keep(static_cast<std::int64_t>(at), stuck);
      if (impossible == Impossible::ends_all) return first;
      if (moves[at].kind == MoveKind::lift || moves[at].kind == MoveKind::put_back) hands.uncross();
      next = past_left(moves, at);
      if (next > at + 1) pulse.step(static_cast<std::int64_t>(next - at - 1));
    }
    at = next;
  }
  try {
    hands.finish();
  } catch (Stuck& stuck) {
    keep(-1, stuck);  // past the last move there is none to name
  }
  return first;
}

}  // namespace

Knitted knitting::knit(const Bed& bed, std::span<const Move> moves, Impossible impossible,
                       const WatchOptions& options) {
  const std::int64_t rows = rows_of(moves);
  require_bed(bed, rows);
  Hands hands(bed, static_cast<int>(rows));
  Pulse pulse(options, static_cast<std::int64_t>(moves.size()) + rows, "the simulation");
  Knitted knitted;
  knitted.rows = static_cast<int>(rows);
  knitted.stuck = work(hands, moves, impossible, pulse);
  knitted.loops = hands.loops();
  const std::vector<Needless> needless = hands.needless();
  knitted.needless = std::ssize(needless);
  if (!needless.empty()) knitted.first_needless = hands.told(needless.front());
  if (!knitted.stuck || impossible == Impossible::passed_over) {
    knitted.reading =
        read(hands.cloth(), knitted.rows, hands.on_needles(), hands.endings(), [&pulse] { pulse.step(); });
  }
  pulse.finish();
  return knitted;
}

Tried knitting::tried(const Bed& bed, std::span<const Move> moves) {
  const std::int64_t rows = rows_of(moves);
  require_bed(bed, rows);
  Hands hands(bed, static_cast<int>(rows));
  const WatchOptions unwatched;
  Pulse pulse(unwatched, static_cast<std::int64_t>(moves.size()), "the simulation");
  Tried tried;
  tried.impossible = work(hands, moves, Impossible::ends_all, pulse);
  const std::vector<Needless> needless = hands.needless();
  for (const Needless& step : needless) tried.needless.push_back(step.move);
  if (!needless.empty()) tried.first_needless = hands.told(needless.front());
  return tried;
}

Fabric simulate(const Bed& bed, std::span<const Move> moves, const WatchOptions& options) {
  Knitted knitted = knit(bed, moves, Impossible::ends_all, options);
  Fabric fabric;
  fabric.loops = knitted.loops;
  if (knitted.stuck) {
    fabric.faults.push_back(std::move(*knitted.stuck));
    return fabric;
  }
  Reading& reading = knitted.reading;
  fabric.faults = std::move(reading.faults);
  if (knitted.rows == 0) {
    fabric.faults.push_back({.move = -1, .place = {}, .message = "no row was knitted, so there is no fabric to read"});
  }
  if (!fabric.faults.empty()) return fabric;

  std::vector<std::uint8_t> cells(reading.cells.size());
  std::ranges::transform(reading.cells, cells.begin(), [](Cell cell) { return static_cast<std::uint8_t>(cell); });
  Grid grid = Grid::from_cells(knitted.rows, bed.columns, cells);
  for (const Crossing& crossing : reading.crossings) {
    try {
      grid.cross(crossing);
    } catch (const Error& error) {
      // A chart's rules look over the seam too: a crossing after the last row may lie where row 1 has no stitch.
      fabric.faults.push_back({.move = -1, .place = place_of(crossing.row, crossing.column), .message = error.what()});
    }
  }
  if (fabric.faults.empty()) fabric.grid = std::move(grid);
  return fabric;
}

}  // namespace latchwork::inline v0
