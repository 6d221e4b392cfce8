#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <numeric>

#include "effort/check.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "machine/check.hpp"
#include "plan/inputs.hpp"
#include "plan/prices.hpp"
#include "plan/problem.hpp"
#include "plan/search.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

/// What the totals of any two plans differ by, at least.
std::int64_t step_of(const Effort& effort) {
  std::int64_t step = 0;
  for (const std::int64_t cost :
       {effort.stop, effort.batch, effort.hold, effort.drop + effort.rung_knit, effort.drop + effort.rung_purl,
        effort.drop + effort.rung_tuck, effort.drop + effort.rung_slip}) {
    step = std::gcd(step, cost);
  }
  return std::max<std::int64_t>(1, step);
}

void add_prices(Certificate& out, const Problem& problem, const Windows& windows, const Prices& prices) {
  for (std::size_t k = 0; k < problem.lanes.size(); ++k) {
    out.classes.push_back({problem.lanes[k].wales, {}, prices.least(k)});
  }
  for (int row = 0; row <= problem.rows; ++row) {
    if (is_forced(problem, row)) {
      out.forced.push_back(row);
      continue;
    }
    const std::vector<int>& users = windows.users[static_cast<std::size_t>(row)];
    for (std::size_t i = 0; i < users.size(); ++i) {
      const std::int64_t price = prices.at_row(row)[i];
      if (price > 0) out.classes[static_cast<std::size_t>(users[i])].prices.push_back({row, price});
    }
  }
}

void add_branches(Certificate& out, const Fates& fates) {
  std::vector<int> below = {-1};  // of the kept branches
  for (std::size_t row = 0; row < fates.size(); ++row) {
    const int first = static_cast<int>(out.branches.size());
    std::vector<int> kept;
    for (const Fate& fate : fates[row]) {
      Branch branch;
      branch.row = static_cast<int>(row);
      branch.below = below[fate.from];
      branch.stop = fate.stop;
      if (fate.end == Fate::End::kept) {
        branch.end = BranchEnd::kept;
        kept.push_back(static_cast<int>(out.branches.size()));
      } else if (fate.end == Fate::End::bound) {
        branch.end = BranchEnd::bound;
      } else {
        branch.end = BranchEnd::dominated;
        // The one that beat it may itself have been beaten by a third, which is then as good as both.
        std::uint32_t by = fate.by;
        while (fates[row][by].end == Fate::End::dominated) by = fates[row][by].by;
        branch.by = first + static_cast<int>(by);
      }
      out.branches.push_back(branch);
    }
    below = std::move(kept);
  }
}

constexpr std::size_t first_width = 16;
constexpr std::size_t widening = 16;
constexpr std::size_t greatest_width = std::size_t{1} << 18;

// Whether no schedule costs `cut` or less: by the prices, which it raises, or else by labels, written to `fates`.
bool proven(const Problem& problem, const Windows& windows, Prices& prices, std::int64_t cut,
            const std::function<bool(std::int64_t, double)>& go_on, Fates& fates) {
  std::int64_t work = 0;
  const auto raise = [&](int times, int worth, const auto& step) {
    for (int i = 0; i < times && prices.bound() <= cut; ++i) {
      const std::int64_t before = prices.bound();
      const std::int64_t after = step();
      if (!go_on(prices.work() - work, 0.02)) return false;
      work = prices.work();
      if (after - before <= (cut - after) / worth) break;
    }
    return true;
  };
  const auto ascend = [&] { return prices.ascend(); };
  const auto climb = [&] { return prices.climb(25, cut + 1); };
  if (!raise(32, 64, ascend)) return false;
  for (std::size_t width = first_width; prices.bound() <= cut; width *= widening) {
    if (width > greatest_width) return false;
    Schedule open;
    open.cost = cut;
    const Pass pass = search(problem, windows, prices, width, open, go_on, &fates);
    if (pass.broken_off) return false;
    const auto kept = [](const Fate& fate) { return fate.end == Fate::End::kept; };
    if (std::any_of(fates.back().begin(), fates.back().end(), kept)) return false;  // a schedule costs no more
    if (pass.complete) return true;
    if (!raise(16, 100, climb) || !raise(8, 64, ascend)) return false;
  }
  return true;
}

}  // namespace

Certificate certify(const Grid& grid, const Machine& machine, const Effort& effort, std::int64_t total_ms,
                    const PlanOptions& options) {
  check(machine);
  check(effort);
  check(options);
  if (total_ms < 0) {
    Place place;
    place.field = "total_ms";
    throw Error(ErrorCode::bad_argument, place, fmt::format("total_ms is {}; it may be 0 or more", total_ms));
  }
  const Wales wales(grid);
  Problem problem = problem_of(grid, wales, machine, effort);
  if (const auto barred = what_bars(grid, machine, problem); !barred.empty()) {
    Place place = barred.front().place;
    place.field = "grid";
    throw Error(ErrorCode::bad_argument, place, "there is no plan to certify: " + barred.front().message);
  }
  problem.stop_cost = effort.stop * problem.unit;  // what is certified is time: no part of it breaks ties
  const std::int64_t step = step_of(effort) * problem.unit;

  // The greatest cost below total_ms that a schedule could have: what must be passed.
  const std::int64_t room = total_ms - problem.fixed_ms - 1;
  const std::int64_t cut = room < 0 ? -1 : std::min(room, far / problem.unit - 1) * problem.unit / step * step;

  const Windows windows = windows_of(problem);
  Prices prices(problem, windows);
  std::int64_t work = 0;
  double share = 0;
  const auto go_on = [&](std::int64_t more, double now) {
    work += more;
    if (options.stop.stop_requested()) return false;
    if (options.work_limit > 0 && work > options.work_limit) return false;
    share = std::max(share, now);
    if (options.progress) options.progress({bound_ms(problem, prices.bound()), total_ms, share});
    return !options.stop.stop_requested();
  };

  Certificate out;
  Fates fates;
  const bool done = proven(problem, windows, prices, cut, go_on, fates);
  out.rows = grid.rows();
  out.columns = grid.columns();
  out.unit = problem.unit;
  out.bound_ms = problem.fixed_ms + (prices.bound() + step - 1) / step * step / problem.unit;
  add_prices(out, problem, windows, prices);
  if (done && prices.bound() <= cut) {
    add_branches(out, fates);
    out.bound_ms = total_ms;
  }
  return out;
}

}  // namespace latchwork::inline v0
