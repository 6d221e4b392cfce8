#include <algorithm>
#include <array>
#include <iterator>
#include <limits>

#include "effort/check.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

HandWork hand_work(const Plan& plan, const Effort& effort) {
  check(effort);
  HandWork work;
  std::array<int, 6> rungs_of{};  // by cell; none, or what no cell describes: no rung, laddered for nothing
  std::int64_t rungs = 0;
  std::int64_t crossed = 0;
  for (const Stop& stop : plan.stops) {
    ++work.stops;
    work.batches += static_cast<int>(stop.reforms.size());
    work.crossings += static_cast<int>(stop.crossings.size());
    work.holds += static_cast<int>(stop.holds.size());
    work.shapings += static_cast<int>(stop.shapings.size());
    for (const Reform& reform : stop.reforms) {
      rungs += std::ssize(reform.rungs);
      for (const Cell rung : reform.rungs) ++rungs_of[std::min<std::size_t>(5, static_cast<std::size_t>(rung))];
    }
    for (const CrossingStep& step : stop.crossings) {
      for (const GroupReturn& back : step.returns) crossed += back.prongs.empty() ? 0 : std::max(0, back.stitches);
    }
  }
  const auto count = [&](Cell cell) { return rungs_of[static_cast<std::size_t>(cell)]; };
  work.rungs_knit = count(Cell::knit);
  work.rungs_purl = count(Cell::purl);
  work.rungs_tuck = count(Cell::tuck);
  work.rungs_slip = count(Cell::slip);
  // A plan is plain data, and its groups may be of any size. So bounded, no sum of times below passes 64 bits: costs
  // are at most an hour.
  constexpr std::int64_t most = std::numeric_limits<int>::max();
  work.stitches_crossed = static_cast<int>(std::min(crossed, most));
  work.hand_ms = work.stops * effort.stop + work.batches * effort.batch + rungs * effort.drop +
                 work.rungs_knit * effort.rung_knit + work.rungs_purl * effort.rung_purl +
                 work.rungs_tuck * effort.rung_tuck + work.rungs_slip * effort.rung_slip +
                 work.crossings * effort.crossing + work.stitches_crossed * effort.crossing_stitch +
                 work.holds * effort.hold + work.shapings * effort.shaping;
  work.carriage_ms = std::max(0, plan.rows) * effort.row;
  return work;
}

}  // namespace latchwork::inline v0
