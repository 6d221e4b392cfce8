#include "latchwork/session.hpp"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <vector>

#include "catch.hpp"
#include "random.hpp"
#include "random_grid.hpp"

namespace session_test {

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
  /// Where a session may end, by the words of session.hpp.
  std::vector<int> ends(int from, std::int64_t length) const {
    std::vector<int> by_stop;
    std::vector<int> by_row;
    for (int row = from + 1; row <= plan.rows && work(from, row) <= length; ++row) {
      if (!clear(row) && row < plan.rows) continue;
      by_row.push_back(row);
      if ((stops(row) || row == plan.rows) && 2 * work(from, row) >= length) by_stop.push_back(row);
    }
    if (!by_stop.empty()) return by_stop;
    if (!by_row.empty()) return by_row;
    for (int row = from + 1; row < plan.rows; ++row) {
      if (work(from, row) > length && clear(row)) return {row};
    }
    return {plan.rows};
  }
};

/// The best of all ways, each of them tried.
class AllWays {
 public:
  AllWays(const Bed& bed, int from, std::int64_t length) : bed_(bed), length_(length) {
    if (from < bed.plan.rows) go(from);
  }
  std::vector<int> best;

 private:
  void go(int from) {
    if (from == bed_.plan.rows) return keep();
    for (const int end : bed_.ends(from, length_)) {
      ends_.push_back(end);
      works_.push_back(bed_.work(from, end));
      go(end);
      ends_.pop_back();
      works_.pop_back();
    }
  }
  void keep() {
    const auto [shortest, longest] = std::minmax_element(works_.begin(), works_.end());
    std::vector<std::int64_t> rank{std::ssize(ends_), *longest, -*shortest};
    rank.insert(rank.end(), ends_.begin(), ends_.end());
    std::transform(rank.begin() + 3, rank.end(), rank.begin() + 3, std::negate<>{});  // later ends first
    if (!best.empty() && rank >= rank_) return;
    rank_ = rank;
    best = ends_;
  }

  const Bed& bed_;
  std::int64_t length_;
  std::vector<int> ends_;
  std::vector<std::int64_t> works_;
  std::vector<std::int64_t> rank_;
};

/// A plan that no planner made: stops, holds and eased crossings anywhere.
Plan any_plan(Random& random) {
  Plan plan;
  plan.rows = random.between(1, 13);
  plan.columns = 4;
  plan.leftmost = -2;
  plan.status = PlanStatus::feasible;
  for (int row = 0; row <= plan.rows; ++row) {
    if (random.one_in(2)) continue;
    Stop stop;
    stop.row = row;
    if (random.one_in(4)) stop.holds = {1};
    if (random.one_in(3)) stop.releases = {1};
    if (random.one_in(5)) stop.crossings.push_back({.crossing = {}, .returns = {}, .ease = random.one_in(2)});
    plan.stops.push_back(stop);
  }
  return plan;
}

}  // namespace

TEST_CASE("sessions of small plans are the first of all ways there are", "[session][property]") {
  int split = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Plan plan = any_plan(random);
    Effort effort;
    effort.stop = random.between(0, 40) * 1000;
    effort.row = random.between(0, 20) * 1000;
    effort.hold = random.between(0, 3) * 1000;
    effort.crossing = random.between(0, 90) * 1000;
    const int from = random.one_in(2) ? 0 : random.between(0, plan.rows);
    const SessionOptions options{.session_ms = random.between(60, 150) * 1000, .rest_ms = 0, .from_row = from};
    const Bed bed{plan, effort};
    const AllWays all(bed, from, options.session_ms);
    std::vector<int> ends;
    for (const Session& session : sessions(plan, effort, options)) ends.push_back(session.to_row);
    REQUIRE(ends == all.best);
    split += ends.size() > 2 ? 1 : 0;
  }
  CHECK(split > 100);
}

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
      const std::vector<int> may = bed.ends(from, options.session_ms);
      CHECK(std::find(may.begin(), may.end(), session.to_row) != may.end());
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

}  // namespace session_test
