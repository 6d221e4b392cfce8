#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/move.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/progress.hpp"

namespace latchwork::inline v0 {

/// The needles that make the panel.
struct Bed {
  int leftmost = -1;  ///< operator's leftmost needle of the panel
  int columns = 1;    ///< needles in a run; RS column 0 is the rightmost
  friend bool operator==(const Bed&, const Bed&) = default;
};

/// Something that hands could not do, or a loop left in a state no fabric has.
struct Fault {
  std::int64_t move = -1;  ///< index of the move; -1: found when the fabric was read
  Place place;             ///< RS row and column
  std::string message;
  friend bool operator==(const Fault&, const Fault&) = default;
};

/// What came off the bed.
struct Fabric {
  std::optional<Grid> grid;   ///< the fabric read back as cells and crossings, RS; nothing when a fault bars it
  std::vector<Fault> faults;  ///< in the order found; empty for a sound fabric
  std::int64_t loops = 0;     ///< loops drawn in all, by carriage and by hand
};

/// Knits: executes the moves, right or wrong, on a bed that knows loops, strands and passings and nothing of charts,
/// then reads the fabric back. A move that hands could not do (nothing on the needle, a stitch that would run) is a
/// fault, and the moves end there: of single moves nobody can say what would be done instead, so that no fabric is
/// read. (Of a plan's steps one can: see verify().) Linear in loops, moves, rungs dropped and passings, but for sorting
/// a row's passings: stitches that change places pass each other one by one, left * right of them in a crossing, those
/// dropped below it pass anew, and those lifted at one time are looked at in pairs.
/// @throws Error bad_argument (leftmost, columns); too_large (columns; moves; more than 2^26 passings); cancelled.
LATCHWORK_API Fabric simulate(const Bed& bed, std::span<const Move> moves, const WatchOptions& options = {});

/// What came of a plan when its cloth was held against a chart.
struct Verification {
  bool verified = false;  ///< all could be done, the fabric is sound and equals the chart, crossings' front to back
                          ///< order included, and the plan says of itself what is so, but for its
                          ///< times and their bound, which go by efforts: see hand_work()
  /// First differing place of the cloth, by row and then column. Where the cloth is the chart's and yet not verified:
  /// the place of `fault`, or where the plan says what is not so. None when verified.
  Place difference;
  /// "verified", and what of it is needless; or what differs there, and what could not be done.
  std::string message;
  std::int64_t loops = 0;
  int wale = -1;         ///< index into Wales(grid).all() of the chart's wale at that place of the cloth; -1: none
  std::string expected;  ///< what the chart has there: "purl", "no stitch", "1/2 RC", "no crossing"; empty when the
                         ///< cloth is the chart's
  /// What the cloth has there: likewise, or "a stitch that no cell describes", "a passing that no crossing describes".
  std::string found;
  std::optional<Fault> fault;  ///< the first move that hands could not make; `move` is its index in moves(plan)
  /// Steps that hands do for nothing: without them the cloth is the same. A needle brought back that is not in hold,
  /// put in hold that is, or put in hold and brought back before a row is knitted; a wale re-formed as it stood; a
  /// crossing that puts every stitch back where it was and behind none. Of two that undo each other both are counted.
  std::int64_t needless = 0;
  std::optional<Fault> first_needless;  ///< the first of them; `move` is the index of its first move in moves(plan)
  friend bool operator==(const Verification&, const Verification&) = default;
};

/// Knits the plan and compares. The one way in which anything is called verified. A plan that makes the right cloth but
/// tells a wrong carriage side, another crossing than the chart's, a stop at a row that the counter never reads, a
/// column or wale that is not its needle's, other needles cast on than the chart's in row 1, a crossing's groups put
/// back in another order than its name says, one twice or not at all (but for a bare centre), or tools that do not
/// carry their stitches, is not verified either. Work that hands can do and that changes nothing (a needle brought back
/// that was not in hold, a wale re-formed once more as it was) is done and does no harm: the plan is verified all the
/// same, and `needless` tells how much of it there is. Where the centre of a
/// crossing lies cannot be told when it is bare, so it is not compared; simulate() reads such a centre as `between`.
/// Nor is the order in which the plan lists its stops, for moves() goes by the row counter; what tells the stops from
/// first to last (charts, instructions, sessions and rests, plan_period()) takes only those that rise. An infeasible
/// plan is none, and nothing is knitted.
///
/// A plan may ask what hands cannot do. It is knitted to its end all the same, so that a move that cannot be made hides
/// no difference: what can be done is done, the rest is left undone. That is, a rung that does not hang on the ladder
/// is passed over and the others of the batch are worked; a batch is not begun whose wale has no loop at its
/// `from_row`; of a crossing of which some stitch cannot be lifted or put back nothing is done; a needle that should be
/// cast on, bound off, held or released and cannot is let be; one left in hold without a stitch goes back before the
/// carriage comes. The cloth that is compared is what then comes off the bed. It may be the chart's: the plan is still
/// not verified, and `fault` says why.
/// @throws Error size_mismatch when the plan is for another size; bad_argument when its leftmost needle is 0;
/// too_large, as simulate(); cancelled.
LATCHWORK_API Verification verify(const Grid& grid, const Plan& plan, const WatchOptions& options = {});

}  // namespace latchwork::inline v0
