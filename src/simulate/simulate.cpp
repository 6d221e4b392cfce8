#include "latchwork/simulate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
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

}  // namespace

Knitted knitting::knit(const Bed& bed, std::span<const Move> moves, const WatchOptions& options) {
  const std::int64_t rows = std::ranges::count(moves, MoveKind::carriage, &Move::kind);
  require_bed(bed, rows);
  Hands hands(bed, static_cast<int>(rows));
  Pulse pulse(options, static_cast<std::int64_t>(moves.size()) + rows, "the simulation");
  Knitted knitted;
  knitted.rows = static_cast<int>(rows);
  std::size_t done = 0;
  try {
    for (; done < moves.size(); ++done) {
      pulse.step();
      hands.execute(moves[done]);
    }
    hands.finish();
  } catch (Stuck& stuck) {
    // Past the last move there is none to name.
    const std::int64_t move = done < moves.size() ? static_cast<std::int64_t>(done) : -1;
    knitted.stuck = Fault{.move = move, .place = stuck.place, .message = std::move(stuck.message)};
  }
  knitted.loops = hands.loops();
  if (!knitted.stuck) {
    knitted.reading =
        read(hands.cloth(), knitted.rows, hands.on_needles(), hands.endings(), [&pulse] { pulse.step(); });
  }
  pulse.finish();
  return knitted;
}

Fabric simulate(const Bed& bed, std::span<const Move> moves, const WatchOptions& options) {
  Knitted knitted = knit(bed, moves, options);
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
