#include <algorithm>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/wale.hpp"

// Plans against a brute force over all stop sets and all works of each wale, written from DEVELOPERS.md, batches, in
// the plainest way. It shares no code with the planner.

using namespace latchwork;
using namespace latchwork_test;

namespace {

bool in_stack(Cell cell) {
  return cell == Cell::tuck || cell == Cell::slip;
}

struct Brute {
  const Instance& in;
  Wales wales{in.grid};

  std::int64_t rung(Cell cell) const {
    const Effort& effort = in.effort;
    return effort.drop + (cell == Cell::knit   ? effort.rung_knit
                          : cell == Cell::purl ? effort.rung_purl
                          : cell == Cell::tuck ? effort.rung_tuck
                                               : effort.rung_slip);
  }

  // Does a crossing after this row take the wale?
  bool crossed(const Wale& wale, int row) const {
    return std::any_of(in.grid.crossings().begin(), in.grid.crossings().end(), [&](const Crossing& crossing) {
      return crossing.row == row && wale.column_at(row) >= crossing.column &&
             wale.column_at(row) < crossing.column + crossing.width();
    });
  }

  Cell cell(const Wale& wale, int row) const { return in.grid.at(row, wale.column_at(row)); }

  bool tuck_at(int row, int column) const {
    return column >= 0 && column < in.grid.columns() && in.grid.at(row, column) == Cell::tuck;
  }

  bool batch_allowed(const Wale& wale, int a, int s) const {
    if (s - a > in.machine.max_ladder) return false;
    if (a == wale.row - 1 && !in.machine.cast_on_loops) return false;
    if (a >= wale.row && in_stack(cell(wale, a))) return false;
    if (in_stack(cell(wale, s))) return false;
    for (int row = a + 1; row < s; ++row) {
      if (crossed(wale, row)) return false;
    }
    return true;
  }

  // The cheapest way to make rows r+1 and up of a wale that is right up to row r; nothing when there is none.
  std::optional<std::int64_t> rest(const Wale& wale, int r, const std::vector<bool>& stops) const {
    if (r == wale.last_row()) return 0;
    std::optional<std::int64_t> best;
    const auto offer = [&](std::int64_t cost, int then) {
      const auto more = rest(wale, then, stops);
      if (more && (!best || cost + *more < *best)) best = cost + *more;
    };
    if (cell(wale, r + 1) == Cell::knit) offer(0, r + 1);
    std::int64_t cost = in.effort.batch;
    for (int s = r + 1; s <= wale.last_row(); ++s) {
      cost += rung(cell(wale, s));
      if (stops[static_cast<std::size_t>(s)] && batch_allowed(wale, r, s)) offer(cost, s);
    }
    // By hold: all the tucks from here up to a knit, none with a tuck beside it, set after row r, released after row b.
    int b = r;
    bool alone = true;
    while (b + 1 <= wale.last_row() && cell(wale, b + 1) == Cell::tuck) {
      ++b;
      alone = alone && !tuck_at(b, wale.column_at(b) - 1) && !tuck_at(b, wale.column_at(b) + 1);
    }
    const bool whole = r < wale.row || !in_stack(cell(wale, r));
    const bool loop = r >= wale.row || in.machine.cast_on_loops;
    if (b > r && b < wale.last_row() && cell(wale, b + 1) == Cell::knit && alone && whole && loop &&
        stops[static_cast<std::size_t>(r)] && stops[static_cast<std::size_t>(b)]) {
      offer(in.effort.hold, b + 1);
    }
    return best;
  }

  std::int64_t fixed() const {
    const Effort& effort = in.effort;
    std::int64_t cost = in.grid.rows() * effort.row;
    for (const Crossing& crossing : in.grid.crossings()) {
      int lifted = crossing.left + crossing.right;
      const bool bare = crossing.centre > 0 && in.grid.at(crossing.row, crossing.column + crossing.left) == Cell::none;
      const bool moves = crossing.left != crossing.right;
      if (!bare && (crossing.place != Centre::front || moves)) lifted += crossing.centre;
      cost += effort.crossing + effort.crossing_stitch * lifted;
    }
    for (const Wale& wale : wales.all()) {
      cost += effort.shaping * ((wale.row > 1) + (wale.last_row() < in.grid.rows()));
    }
    return cost;
  }

  std::vector<bool> forced() const {
    std::vector<bool> rows(static_cast<std::size_t>(in.grid.rows()) + 1, false);
    for (const Crossing& crossing : in.grid.crossings()) rows[static_cast<std::size_t>(crossing.row)] = true;
    for (const Wale& wale : wales.all()) {
      if (wale.row > 1) rows[static_cast<std::size_t>(wale.row - 1)] = true;
      if (wale.last_row() < in.grid.rows()) rows[static_cast<std::size_t>(wale.last_row())] = true;
    }
    return rows;
  }

  // Over every set of stops.
  std::optional<std::int64_t> best() const {
    const std::vector<bool> must = forced();
    std::optional<std::int64_t> best;
    for (unsigned set = 0; set < 1U << must.size(); ++set) {
      std::vector<bool> stops(must.size());
      std::int64_t count = 0;
      bool all = true;
      for (std::size_t row = 0; row < must.size(); ++row) {
        stops[row] = (set >> row & 1U) != 0;
        count += stops[row] ? 1 : 0;
        all = all && (stops[row] || !must[row]);
      }
      if (!all) continue;
      std::int64_t total = fixed() + count * in.effort.stop;
      bool made = true;
      for (const Wale& wale : wales.all()) {
        const auto cost = rest(wale, wale.row - 1, stops);
        made = made && cost;
        total += cost.value_or(0);
      }
      if (!made) continue;
      if (!best || total < *best) best = total;
    }
    return best;
  }

  // A rhythm done as plan.hpp tells it; nothing when a batch is not allowed or something is left undone.
  std::optional<std::int64_t> rhythm(int every, int first) const {
    const std::vector<bool> must = forced();
    std::int64_t total = fixed();
    std::vector<int> right_up_to;
    for (const Wale& wale : wales.all()) right_up_to.push_back(wale.row - 1);
    for (int row = 1; row <= in.grid.rows(); ++row) {
      const bool stop = row >= first && (row - first) % every == 0;
      if (must[static_cast<std::size_t>(row)] && !stop) return {};
      if (!stop) continue;
      bool busy = must[static_cast<std::size_t>(row)];
      for (std::size_t w = 0; w < wales.all().size(); ++w) {
        const Wale& wale = wales.all()[w];
        if (row < wale.row || row > wale.last_row() || in_stack(cell(wale, row))) continue;
        int lowest = right_up_to[w] + 1;
        while (lowest <= row && cell(wale, lowest) == Cell::knit) ++lowest;
        if (lowest > row) continue;
        if (!batch_allowed(wale, lowest - 1, row)) return {};
        total += in.effort.batch;
        for (int r = lowest; r <= row; ++r) total += rung(cell(wale, r));
        right_up_to[w] = row;
        busy = true;
      }
      if (busy) total += in.effort.stop;
    }
    for (std::size_t w = 0; w < wales.all().size(); ++w) {
      const Wale& wale = wales.all()[w];
      for (int row = right_up_to[w] + 1; row <= wale.last_row(); ++row) {
        if (cell(wale, row) != Cell::knit) return {};
      }
    }
    return total;
  }
};

std::int64_t sum_of(const Plan& plan, const Effort& effort) {
  std::int64_t sum = plan.rows * effort.row;
  for (const Stop& stop : plan.stops) sum += stop.effort_ms;
  return sum;
}

// LATCHWORK_PLANS sets how many panels are tried; the seeds follow each other from 1.
int how_many(int usual) {
  const char* wanted = std::getenv("LATCHWORK_PLANS");
  const int count = wanted ? std::atoi(wanted) : 0;
  return count > 0 ? count : usual;
}

}  // namespace

TEST_CASE("a plan takes what a brute force over all stop sets and batches takes", "[plan][property]") {
  int planned = 0;
  int barred = 0;
  int held = 0;
  const int count = how_many(20'000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    const auto best = Brute{in}.best();
    const Plan least = plan(in.grid, in.machine, in.effort);
    REQUIRE((least.status != PlanStatus::infeasible) == best.has_value());
    if (!best) {
      ++barred;
      REQUIRE(!least.findings.empty());
      REQUIRE(least.findings.front().severity == Severity::error);
      continue;
    }
    ++planned;
    REQUIRE(least.status == PlanStatus::optimal);
    REQUIRE(least.total_ms == *best);
    REQUIRE(least.bound_ms == least.total_ms);
    REQUIRE(sum_of(least, in.effort) == least.total_ms);
    const HandWork work = hand_work(least, in.effort);
    REQUIRE(work.hand_ms + work.carriage_ms == least.total_ms);
    held += work.holds;
  }
  // The panels try each case often enough to mean something.
  CHECK(planned > count / 3);
  CHECK(barred > count / 20);
  CHECK(held > count / 50);
}

TEST_CASE("the regular plan is the best of all rhythms, and no better than the best plan", "[plan][property]") {
  int found = 0;
  const int count = how_many(2000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 1'000'000;
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    const Brute brute{in};
    std::optional<std::int64_t> best;
    Rhythm rhythm;
    for (int every = in.grid.rows(); every >= 1; --every) {
      for (int first = 1; first <= in.grid.rows(); ++first) {
        const auto total = brute.rhythm(every, first);
        if (total && (!best || *total < *best)) {
          best = total;
          rhythm = {every, first};
        }
      }
    }
    const Plan regular = plan_regular(in.grid, in.machine, in.effort);
    REQUIRE((regular.status != PlanStatus::infeasible) == best.has_value());
    if (!best) {
      REQUIRE(!regular.findings.empty());
      continue;
    }
    ++found;
    REQUIRE(regular.rhythm.has_value());
    REQUIRE(regular.total_ms == *best);
    REQUIRE(regular.rhythm->every == rhythm.every);
    REQUIRE(regular.rhythm->first == rhythm.first);
    REQUIRE(sum_of(regular, in.effort) == regular.total_ms);
    REQUIRE(regular.total_ms >= plan(in.grid, in.machine, in.effort).total_ms);
  }
  CHECK(found > count / 3);
}
