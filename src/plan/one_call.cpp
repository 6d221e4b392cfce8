#include "plan/one_call.hpp"

#include <algorithm>

#include "plan/solve.hpp"

namespace latchwork::inline v0::planning {
namespace {

std::int64_t share_of(std::int64_t left, double share) {
  return std::max<std::int64_t>(1, static_cast<std::int64_t>(static_cast<double>(left) * share));
}

}  // namespace

std::int64_t OneCall::work_left() const {
  return std::max<std::int64_t>(0, options_.work_limit - spent_.work);
}

bool OneCall::ended() const {
  if (options_.stop.stop_requested()) return true;
  if (options_.work_limit > 0 && work_left() == 0) return true;
  return deadline_.set() && deadline_.left_ms() < std::max<std::int64_t>(1, spent_.least_ms) + overrun_ms_;
}

PlanOptions OneCall::part(double from, double to, std::optional<Told> told) {
  PlanOptions own = keystone(from, to, told);
  if (to >= 1) return own;
  const double share = (to - from) / (1 - from);
  if (own.time_limit_ms > 0) own.time_limit_ms = share_of(own.time_limit_ms, share);
  if (own.work_limit > 0) own.work_limit = share_of(own.work_limit, share);
  return own;
}

PlanOptions OneCall::keystone(double from, double to, std::optional<Told> told) {
  PlanOptions own = options_;
  if (deadline_.set()) own.time_limit_ms = std::max<std::int64_t>(1, deadline_.left_ms() - overrun_ms_);
  if (options_.work_limit > 0) own.work_limit = std::max<std::int64_t>(1, work_left());
  if (options_.progress) {
    own.progress = [this, from, to, told](const Progress& now) {
      tell(told.value_or(Told{now.bound_ms, now.best_ms}), from + (to - from) * now.share);
    };
  }
  return own;
}

Plan OneCall::plan(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& own,
                   const Plan* plain) {
  const Deadline mine(own);
  spent_.ended = false;
  const auto note = [&] {
    if (mine.set()) overrun_ms_ = std::max(overrun_ms_, mine.gone_ms() - own.time_limit_ms);
  };
  try {
    Plan plan = plan_counted(grid, machine, effort, own, spent_, plain);
    note();
    return plan;
  } catch (const Error&) {
    note();
    throw;
  }
}

const Wales& OneCall::wales(const Grid& grid) {
  const PlanOptions own = keystone(0, 1);
  Limits limits(own, &spent_);
  return readings_.wales(grid, limits);
}

const Problem& OneCall::problem(const Grid& grid, const Machine& machine, const Effort& effort, Lanes lanes) {
  const PlanOptions own = keystone(0, 1);
  Limits limits(own, &spent_);
  const Problem& read = readings_.problem(grid, machine, effort, limits, lanes);
  limits.keep_back(grid);
  return read;
}

void OneCall::tell(const Told& told, double share) {
  if (!options_.progress) return;
  share_ = std::max({share_, share, deadline_.gone()});
  bound_ms_ = std::max(bound_ms_, told.bound_ms);  // where there is no plan after all, none is bound any more
  options_.progress({bound_ms_, told.best_ms, share_});
}

}  // namespace latchwork::inline v0::planning
