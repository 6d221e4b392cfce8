#include "latchwork/session.hpp"

#include <algorithm>
#include <vector>

#include "catch.hpp"
#include "random.hpp"
#include "random_grid.hpp"

using namespace latchwork;
using latchwork_test::Random;

namespace {

/// A row's end, worked out anew for every question: what lies behind it, and whether it can be left.
struct Bed {
  const Plan& plan;
  const Effort& effort;

  std::int64_t hand(int first, int last) const {
    Plan part = plan;
    std::erase_if(part.stops, [&](const Stop& stop) { return stop.row < first || stop.row > last; });
    return hand_work(part, effort).hand_ms;
  }
  std::int64_t work(int from, int to) const { return hand(from == 0 ? 0 : from + 1, to) + (to - from) * effort.row; }
  bool stops(int row) const {
    return std::any_of(plan.stops.begin(), plan.stops.end(), [&](const Stop& stop) { return stop.row == row; });
  }
  bool clear(int row) const {
    std::ptrdiff_t held = 0;
    for (const Stop& stop : plan.stops) {
      if (stop.row > row) continue;
      held += std::ssize(stop.holds) - std::ssize(stop.releases);
      for (const CrossingStep& step : stop.crossings) {
        if (step.ease && stop.row == row) return false;
      }
    }
    return held <= 0;
  }
  /// By the words of session.hpp.
  int end(int from, std::int64_t length) const {
    if (work(from, plan.rows) <= length) return plan.rows;
    int last_stop = -1;
    int last_row = -1;
    for (int row = from + 1; row <= plan.rows && work(from, row) <= length; ++row) {
      if (!clear(row)) continue;
      last_row = row;
      if (stops(row) && 2 * work(from, row) >= length) last_stop = row;
    }
    if (last_stop >= 0) return last_stop;
    if (last_row >= 0) return last_row;
    for (int row = from + 1; row <= plan.rows; ++row) {
      if (work(from, row) > length && clear(row)) return row;
    }
    return plan.rows;
  }
};

}  // namespace

TEST_CASE("sessions of random plans end where their rule says, and hold all the work", "[session][property]") {
  int planned = 0;
  int split = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Grid grid = latchwork_test::any_grid(random);
    Effort effort;
    effort.stop = random.between(0, 60) * 1000;
    effort.row = random.between(0, 20) * 1000;
    effort.hold = random.between(0, 3) * 1000;
    const Plan made = plan(grid, Machine{}, effort);
    if (made.status == PlanStatus::infeasible) continue;
    ++planned;
    const SessionOptions options{.session_ms = random.between(60, 400) * 1000,
                                 .rest_ms = random.one_in(3) ? 0 : random.between(60, 200) * 1000,
                                 .from_row = random.one_in(2) ? 0 : random.between(0, made.rows)};
    const std::vector<Session> found = sessions(made, effort, options);
    const Bed bed{made, effort};
    int from = options.from_row;
    std::int64_t total = 0;
    for (const Session& session : found) {
      CHECK(session.from_row == from);
      CHECK(session.to_row == bed.end(from, options.session_ms));
      CHECK(session.work_ms == bed.work(from, session.to_row));
      CHECK(session.clear == bed.clear(session.to_row));
      total += session.work_ms;
      from = session.to_row;
    }
    CHECK(from == made.rows);
    if (options.from_row == 0) CHECK(total == made.total_ms);
    split += found.size() > 2 ? 1 : 0;
    std::int64_t since = 0;
    int row = -1;
    for (const Rest& rest : rests(made, effort, options)) {
      const Session& session = found.at(static_cast<std::size_t>(rest.session));
      CHECK((rest.row >= session.from_row && rest.row < session.to_row && rest.row > row));
      CHECK(rest.hand_ms >= options.rest_ms);
      const bool first = row < session.from_row || (row == session.from_row && row > 0);
      since = bed.hand(first ? (session.from_row == 0 ? 0 : session.from_row + 1) : row + 1, rest.row);
      CHECK(rest.hand_ms == since);
      row = rest.row;
    }
  }
  CHECK(planned > 100);
  CHECK(split > 30);
}
