#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "effort/check.hpp"
#include "error/refuse.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "machine/check.hpp"
#include "plan/ahead.hpp"
#include "plan/inputs.hpp"
#include "plan/limits.hpp"
#include "plan/lone_way.hpp"
#include "plan/prices.hpp"
#include "plan/problem.hpp"
#include "plan/readings.hpp"
#include "plan/search.hpp"
#include "plan/widths.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

/// Prices as they were after a step that came to its end.
struct Known {
  std::vector<std::vector<std::int64_t>> at_row;
  std::vector<std::int64_t> least;  // per lane
  std::int64_t bound = 0;
};

void add_prices(Certificate& out, const Problem& problem, const Windows& windows, const Known& prices) {
  for (std::size_t k = 0; k < problem.lanes.size(); ++k) {
    out.classes.push_back({problem.lanes[k].wales, {}, prices.least[k]});
  }
  for (int row = 0; row <= problem.rows; ++row) {
    if (is_forced(problem, row)) {
      out.forced.push_back(row);
      continue;
    }
    if (prices.at_row.empty()) continue;
    const std::vector<int>& users = windows.users[static_cast<std::size_t>(row)];
    for (std::size_t i = 0; i < users.size(); ++i) {
      const std::int64_t price = prices.at_row[static_cast<std::size_t>(row)][i];
      if (price > 0) out.classes[static_cast<std::size_t>(users[i])].prices.push_back({row, price});
    }
  }
}

std::vector<Branch> branches_of(const Fates& fates, int first_row) {
  std::vector<Branch> branches;
  std::vector<int> below = {-1};  // of the kept branches
  for (std::size_t i = 0; i < fates.rows.size(); ++i) {
    const int first = static_cast<int>(branches.size());
    std::vector<int> kept;
    for (const Fate& fate : fates.rows[i]) {
      Branch branch;
      branch.row = first_row + static_cast<int>(i);
      branch.below = below[fate.from];
      branch.stop = fate.stop;
      if (fate.end == Fate::End::kept) {
        branch.end = BranchEnd::kept;
        kept.push_back(static_cast<int>(branches.size()));
      } else if (fate.end == Fate::End::bound) {
        branch.end = BranchEnd::bound;
      } else {
        branch.end = BranchEnd::dominated;
        // The one that beat it may itself have been beaten by a third, which is then as good as both.
        std::uint32_t by = fate.by;
        while (fates.rows[i][by].end == Fate::End::dominated) by = fates.rows[i][by].by;
        branch.by = first + static_cast<int>(by);
      }
      branches.push_back(branch);
    }
    below = std::move(kept);
    if (below.empty()) break;
  }
  return branches;
}

bool any_kept(const Fates& fates) {
  const auto kept = [](const Fate& fate) { return fate.end == Fate::End::kept; };
  return !fates.rows.empty() && std::any_of(fates.rows.back().begin(), fates.rows.back().end(), kept);
}

constexpr std::size_t looks_ahead =
    256;  // from this width on, or at the widest: narrower passes make shorter proofs without

/// Looks for a proof that no schedule costs `cut` or less.
class Prover {
 public:
  Prover(const Problem& problem, const PlanOptions& options, std::int64_t cut, std::int64_t total_ms, Limits& limits)
      : problem_(problem), limits_(limits), cut_(cut), total_ms_(total_ms), ahead_(problem) {
    if (set_up(options)) {
      keep();
    } else {
      know_without_prices();
    }
    limits_.now(bound_ms(problem_, known_.bound), total_ms_, 0.02);
  }

  /// Fills in what was proven; whether more than the prices' bound was.
  bool prove(Certificate& out) {
    const bool more = close(out);
    if (!more) {  // its stretches may lack
      out.branches.clear();
      out.stretches.clear();
    }
    add_prices(out, problem_, windows_, known_);
    return more;
  }
  std::int64_t bound() const { return known_.bound; }

 private:
  // Whether there was time for it.
  bool set_up(const PlanOptions& options) {
    if (limits_.over()) return false;
    windows_ = windows_of(problem_, &limits_);
    if (limits_.over()) return false;
    greatest_ = greatest_width(options, states_of_label(windows_), problem_.rows);
    room_ = memory_of(options.memory_limit) / (sizeof(Fate) + 2 * sizeof(Branch));  // a list may be half empty
    if (prices_.emplace(problem_, windows_, &limits_).whole()) return true;
    prices_.reset();
    return false;
  }

  // With stops that cost the lanes nothing, each one's cheapest way is soon found, and bounds it.
  void know_without_prices() {
    const std::vector<std::int64_t> nothing(static_cast<std::size_t>(problem_.rows) + 1, 0);
    LoneWay alone(problem_.rows);
    known_.bound = 0;
    for (int row = 0; row <= problem_.rows; ++row) known_.bound += is_forced(problem_, row) ? problem_.stop_cost : 0;
    known_.least.reserve(problem_.lanes.size());
    for (const Lane& lane : problem_.lanes) {
      known_.least.push_back(alone.find(lane, nothing.data()));
      known_.bound += known_.least.back();
    }
  }

  bool close(Certificate& out) {
    if (!prices_ || limits_.over()) return false;
    if (!raise(32, 64, [&] { return prices_->ascend(&limits_); })) return false;
    for (std::size_t width = wide; prices_->bound() <= cut_; width *= widening) {
      const bool last = width >= greatest_;
      width = std::min(width, greatest_);
      ahead_.forget();
      if ((width >= looks_ahead || last) &&
          !ahead_.look(problem_, windows_, *prices_, std::max<std::size_t>(1, width / 2), stretches_for(width),
                       cut_ - prices_->bound(), limits_)) {
        return false;
      }
      Schedule open;
      Fates fates;
      fates.room = room_;
      const Pass pass = search(problem_, windows_, *prices_, width, cut_, ahead_.gain(), open, limits_, &fates);
      if (pass.broken_off || any_kept(fates)) return false;  // or a schedule costs no more
      if (pass.complete) {
        room_ -= fates.told;
        out.branches = branches_of(fates, 0);
        return add_stretches(out, std::max<std::size_t>(1, width / 2));
      }
      if (last || !raise(16, 100, [&] { return prices_->climb(25, cut_ + 1, &limits_); }) ||
          !raise(8, 64, [&] { return prices_->ascend(&limits_); })) {
        return false;
      }
    }
    return false;
  }

  // Looks through each stretch again, now that it is known what it gains: what comes to that much is dropped at once.
  bool add_stretches(Certificate& out, std::size_t width) {
    std::vector<std::int64_t> gain(ahead_.gain().size(), 0);
    for (const Looked& looked : ahead_.looked()) {
      Fates fates;
      fates.room = room_;
      const Pass pass = look_ahead(problem_, windows_, *prices_, width, looked.gain - 1, gain, looked.row + 1,
                                   looked.last, limits_, &fates);
      if (pass.broken_off) return false;
      if (!pass.complete || any_kept(fates)) {
        throw Error(ErrorCode::internal, {}, "a stretch gains less when it is looked through again");
      }
      room_ -= fates.told;
      out.stretches.push_back({looked.row, looked.gain, branches_of(fates, looked.row + 1)});
      std::fill(gain.begin(), gain.begin() + looked.row + 1, looked.gain);
    }
    return true;
  }

  template <class Step>
  bool raise(int times, int worth, Step&& step) {
    for (int i = 0; i < times && prices_->bound() <= cut_; ++i) {
      const std::int64_t before = prices_->bound();
      const std::int64_t after = step();
      if (limits_.over()) return false;  // the prices may have been left on the way
      keep();
      limits_.now(bound_ms(problem_, after), total_ms_, 0.02);
      if (!limits_.go_on(prices_->work() - std::exchange(work_of_prices_, prices_->work()))) return false;
      if (after - before <= (cut_ - after) / worth) break;
    }
    return true;
  }

  void keep() {
    known_.at_row.resize(windows_.users.size());
    for (int row = 0; row <= problem_.rows; ++row) known_.at_row[static_cast<std::size_t>(row)] = prices_->at_row(row);
    known_.least.clear();
    for (std::size_t k = 0; k < problem_.lanes.size(); ++k) known_.least.push_back(prices_->least(k));
    known_.bound = prices_->bound();
  }

  const Problem& problem_;
  Limits& limits_;
  std::int64_t cut_;
  std::int64_t total_ms_;
  Windows windows_;
  std::optional<Prices> prices_;  // none where there was no time for any
  Known known_;
  Ahead ahead_;
  std::size_t greatest_ = 1;
  std::size_t room_ = 0;  // branches that the proof may still have
  std::int64_t work_of_prices_ = 0;
};

}  // namespace

Certificate certify(const Grid& grid, const Machine& machine, const Effort& effort, std::int64_t total_ms,
                    const PlanOptions& options) {
  check(machine);
  check(effort);
  check(options);
  require_counted(grid, effort);
  if (total_ms < 0) refuse("total_ms", fmt::format("total_ms is {}; it may be 0 or more", total_ms));
  Limits limits(options);  // its clock runs from here
  Readings readings(false);
  const Wales& wales = readings.wales(grid, limits);
  Problem problem = problem_of(grid, wales, machine, effort, &limits);
  if (const auto barred = what_bars(grid, machine, problem); !barred.empty()) {
    Place place = barred.front().place;
    place.field = "grid";
    throw Error(ErrorCode::bad_argument, place, "there is no plan to certify: " + barred.front().message);
  }
  problem.stop_cost = effort.stop * problem.unit;  // what is certified is time: no part of it breaks ties
  const std::int64_t step = problem.step_ms * problem.unit;

  // The greatest cost below total_ms that a schedule could have: what must be passed.
  const std::int64_t room = total_ms - problem.fixed_ms - 1;
  const std::int64_t cut = room < 0 ? -1 : std::min(room, far / problem.unit - 1) * problem.unit / step * step;

  Certificate out;
  out.rows = grid.rows();
  out.columns = grid.columns();
  out.unit = problem.unit;
  Prover prover(problem, options, cut, total_ms, limits);
  const bool more = prover.prove(out);
  const std::int64_t prices_ms = problem.fixed_ms + (prover.bound() + step - 1) / step * step / problem.unit;
  out.bound_ms = more ? std::max(total_ms, prices_ms) : prices_ms;
  if (options.progress) options.progress({out.bound_ms, total_ms, 1.0});
  return out;
}

}  // namespace latchwork::inline v0
