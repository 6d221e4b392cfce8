#include "plan/prices.hpp"

#include <algorithm>

#include "plan/index.hpp"
#include "plan/share.hpp"

namespace latchwork::inline v0::planning {

namespace {

// Looks at the clock: one in so many rows.
int rows_between(std::size_t lanes) {
  return static_cast<int>(std::clamp<std::size_t>(8'000 / std::max<std::size_t>(1, lanes), 1, 32));
}

}  // namespace

Prices::Prices(const Problem& problem, const Windows& windows, Limits* limits)
    : problem_(&problem), windows_(&windows), whole_(begin(limits)) {}

// Whether it came to its end.
bool Prices::begin(Limits* limits) {
  const Problem& problem = *problem_;
  const Windows& windows = *windows_;
  const int between = rows_between(windows.lanes.size());
  const auto over = [&](int i) { return limits && i % between == 0 && limits->over(); };
  lanes_.reserve(windows.lanes.size());
  go_at_.resize(windows.lanes.size());
  for (std::size_t lane = 0; lane < windows.lanes.size(); ++lane) {
    if (over(static_cast<int>(lane))) return false;
    lanes_.emplace_back(problem.lanes[lane], problem.rows);
    for (const Window& window : windows.lanes[lane].layer) states_ += window.size();
  }
  price_.resize(windows.users.size());
  for (int row = 0; row <= problem.rows; ++row) {
    if (over(row)) return false;
    auto& prices = price_[at(row)];
    prices.assign(windows.users[at(row)].size(), 0);
    if (is_forced(problem, row)) {
      forced_cost_ += problem.stop_cost;
    } else if (!prices.empty()) {
      share_out(prices, problem.stop_cost);
    }
  }
  return take_down(limits);
}

// All the way down under the prices as they are, lane by lane, for none of them moves. Whether it came to its end.
bool Prices::take_down(Limits* limits) {
  std::vector<std::size_t> next(price_.size(), 0);  // per row: which of its users
  for (std::size_t k = 0; k < lanes_.size(); ++k) {
    if (limits && limits->over()) return false;
    PricedLane& lane = lanes_[k];
    lane.start_down();
    for (int row = problem_->rows; row >= 0; --row) {
      const auto& users = windows_->users[at(row)];
      std::size_t& user = next[at(row)];
      if (user == users.size() || at(users[user]) != k) continue;
      lane.take_down(row, price_[at(row)][user++]);
    }
  }
  bound_ = sum();
  return down_ = true;
}

std::int64_t Prices::sum() {
  ready_ = false;
  for (PricedLane& lane : lanes_) lane.end_down();
  return sum_of_least();
}

std::int64_t Prices::sum_of_least() {
  std::int64_t bound = forced_cost_;
  for (PricedLane& lane : lanes_) {
    bound += lane.least();
    work_ += lane.take_work();
  }
  return bound;
}

void Prices::look_from(int layer) {
  if (!down_) take_down(nullptr);
  if (!ready_) {
    for (PricedLane& lane : lanes_) lane.get_ready();
    ready_ = true;
    work_ += states_;
  }
  std::size_t size = 0;
  for (std::size_t lane = 0; lane < lanes_.size(); ++lane) {
    go_at_[lane] = size;
    size += at(windows_->lanes[lane].layer[at(layer)].size());
  }
  go_.resize(size);
  for (std::size_t lane = 0; lane < lanes_.size(); ++lane) {
    lanes_[lane].write_ways(windows_->lanes[lane].layer[at(layer)], layer, go_.data() + go_at_[lane]);
  }
}

std::int64_t Prices::ascend(Limits* limits, std::int64_t enough) {
  const int between = rows_between(lanes_.size());
  const auto over = [&](int row) { return limits && row % between == 0 && limits->over(); };
  if (!down_ && !take_down(limits)) return bound_;
  down_ = false;
  for (PricedLane& lane : lanes_) lane.start_up();
  for (int row = 0; row <= problem_->rows; ++row) {
    if (over(row)) return bound_;
    price_row(row, &PricedLane::up, &PricedLane::set_up);
  }
  if (const std::int64_t bound = sum_of_least(); bound > enough) {
    ready_ = false;
    return bound_ = bound;
  }
  for (PricedLane& lane : lanes_) lane.start_down();
  for (int row = problem_->rows; row >= 0; --row) {
    if (over(row)) return bound_;
    price_row(row, &PricedLane::down, &PricedLane::set_down);
  }
  down_ = true;
  return bound_ = sum();
}

// What the stop at a row is worth to each user, as prices; `go` and `set` are those of the pass.
template <class Go, class Set>
void Prices::price_row(int row, Go go, Set set) {
  const auto& users = windows_->users[at(row)];
  auto& prices = price_[at(row)];
  if (users.empty()) return;
  for (const int user : users) (lanes_[at(user)].*go)(row);
  if (!is_forced(*problem_, row)) {
    for (std::size_t k = 0; k < users.size(); ++k) {
      prices[k] = lanes_[at(users[k])].worth(prices[k], problem_->stop_cost);
    }
    share_out(prices, problem_->stop_cost);
  }
  for (std::size_t k = 0; k < users.size(); ++k) (lanes_[at(users[k])].*set)(prices[k]);
}

}  // namespace latchwork::inline v0::planning
