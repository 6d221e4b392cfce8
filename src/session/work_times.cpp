#include <fmt/format.h>

#include <cstdint>
#include <limits>
#include <string>

#include "effort/check.hpp"
#include "latchwork/error.hpp"
#include "latchwork/session.hpp"

namespace latchwork::inline v0 {

WorkTimes work_times(const Plan& plan, const Effort& effort, int pieces) {
  constexpr int most_pieces = 1000;
  if (pieces < 1 || pieces > most_pieces) {
    Place place;
    place.field = "pieces";
    throw Error(ErrorCode::bad_argument, place, fmt::format("pieces is {}; it must be 1..{}", pieces, most_pieces));
  }
  if (plan.status == PlanStatus::infeasible) {
    Place place;
    place.field = "plan";
    throw Error(ErrorCode::bad_argument, place,
                plan.findings.empty() ? std::string("the plan is infeasible: nothing is knitted by it")
                                      : "the plan is infeasible: " + plan.findings.front().message);
  }
  const HandWork work = hand_work(plan, effort);
  if (work.hand_ms > (std::numeric_limits<std::int64_t>::max() / pieces) - work.carriage_ms) {
    Place place;
    place.field = "pieces";  // one panel's work is always within
    throw Error(ErrorCode::too_large, place, fmt::format("the work of {} such panels is past 64 bits", pieces));
  }
  WorkTimes times;
  times.stops_ms = pieces * (work.stops * effort.stop);
  times.crossings_ms = pieces * (work.crossings * effort.crossing + work.stitches_crossed * effort.crossing_stitch);
  times.holds_ms = pieces * (work.holds * effort.hold);
  times.shapings_ms = pieces * (work.shapings * effort.shaping);
  times.carriage_ms = pieces * work.carriage_ms;
  times.reforms_ms = pieces * work.hand_ms - times.stops_ms - times.crossings_ms - times.holds_ms - times.shapings_ms;
  times.total_ms = pieces * (work.hand_ms + work.carriage_ms);
  return times;
}

}  // namespace latchwork::inline v0
