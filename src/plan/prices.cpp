#include "plan/prices.hpp"

#include <algorithm>
#include <functional>
#include <numeric>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

std::int64_t least_way(const Window& window, const std::int64_t* to, const std::int64_t* on) {
  std::int64_t least = far;
  for (int i = 0; i < window.size(); ++i) {
    if (to[i] < far && on[i] < far) least = std::min(least, to[i] + on[i]);
  }
  return least;
}

// Shares a stop's cost out among what it is worth to each. When it is worth less than it costs, each pays its worth and
// an even part of the rest; when it is worth more, each keeps as much of the surplus as the others, if it has that.
void share_out(std::vector<std::int64_t>& worth, std::int64_t cost, std::vector<std::int64_t>& scratch) {
  const auto count = static_cast<std::int64_t>(worth.size());
  const std::int64_t sum = std::accumulate(worth.begin(), worth.end(), std::int64_t{0});
  if (sum <= cost) {
    const std::int64_t rest = cost - sum;
    for (std::size_t i = 0; i < worth.size(); ++i) {
      worth[i] += rest / count + (static_cast<std::int64_t>(i) < rest % count ? 1 : 0);
    }
    return;
  }
  scratch = worth;
  std::sort(scratch.begin(), scratch.end(), std::greater<>());
  std::int64_t above = 0;
  std::int64_t level = 0;  // what each payer keeps
  std::int64_t payers = 0;
  for (const std::int64_t value : scratch) {
    if (payers > 0 && above - payers * value >= cost) break;
    above += value;
    ++payers;
    level = (above - cost) / payers;
  }
  std::int64_t excess = above - payers * level - cost;  // below `payers`: the first ones keep one unit more
  for (auto& value : worth) {
    value = std::max<std::int64_t>(0, value - level);
    if (value > 0 && excess > 0) {
      --value;
      --excess;
    }
  }
}

}  // namespace

Prices::Prices(const Problem& problem, const Windows& windows) : problem_(&problem), windows_(&windows) {
  std::size_t most = 0;
  for (const auto& lane : windows.lanes) {
    ahead_.emplace_back(at(lane.offset.back()), far);
    ahead_.back()[0] = 0;
    back_.emplace_back(at(lane.offset.back()), far);
    const Window& end = lane.layer.back();
    for (int i = end.low; i <= end.high; ++i) {
      if (i == problem.lanes[back_.size() - 1].task_count())
        back_.back()[at(lane.offset.back() - end.size() + i - end.low)] = 0;
    }
  }
  price_.resize(windows.users.size());
  for (int row = 0; row <= problem.rows; ++row) {
    const auto& users = windows.users[at(row)];
    price_[at(row)].assign(users.size(), 0);
    if (is_forced(problem, row)) {
      forced_cost_ += problem.stop_cost;
    } else {
      for (std::size_t k = 0; k < users.size(); ++k) {
        const auto count = static_cast<std::int64_t>(users.size());
        price_[at(row)][k] =
            problem.stop_cost / count + (static_cast<std::int64_t>(k) < problem.stop_cost % count ? 1 : 0);
      }
    }
    std::size_t size = 0;
    for (const int user : users) size += at(windows.lanes[at(user)].layer[at(row) + 1].size());
    most = std::max(most, size);
  }
  stopped_.resize(most);
  // The first way down: nothing is known ahead, so the prices stay.
  bound_ = way_back();
}

// All the way down under the prices as they are; returns the bound they give.
std::int64_t Prices::way_back() {
  for (int row = problem_->rows; row >= 0; --row) take_back(row);
  std::int64_t bound = forced_cost_;
  for (const auto& back : back_) bound += back[0];
  return bound;
}

// What the stop at a row is worth to each user, as prices. Leaves layer row + 1 as if no lane stopped, and the same
// with a stop in stopped_.
void Prices::price_row(int row) {
  const auto& users = windows_->users[at(row)];
  const bool forced = is_forced(*problem_, row);
  gain_.clear();
  std::int64_t* stopped = stopped_.data();
  for (const int user : users) {
    const auto& lane = windows_->lanes[at(user)];
    const Window& a = lane.layer[at(row)];
    const Window& b = lane.layer[at(row) + 1];
    const std::int64_t* from = ahead_[at(user)].data() + lane.offset[at(row)];
    std::int64_t* to = ahead_[at(user)].data() + lane.offset[at(row) + 1];
    const std::int64_t* on = back_[at(user)].data() + lane.offset[at(row) + 1];
    stay(a, from, b, to);
    stop(problem_->lanes[at(user)], row, a, from, b, stopped);
    if (!forced) {
      const std::int64_t avoiding = least_way(b, to, on);
      const std::int64_t using_it = least_way(b, stopped, on);
      gain_.push_back(using_it >= far ? 0 : std::min(problem_->stop_cost, avoiding - using_it));
    }
    stopped += b.size();
    work_ += b.size();
  }
  if (forced || users.empty()) return;
  share_out(gain_, problem_->stop_cost, scratch_);
  price_[at(row)] = gain_;
}

void Prices::take_ahead(int row) {
  const auto& users = windows_->users[at(row)];
  const std::int64_t* stopped = stopped_.data();
  std::size_t k = 0;
  for (std::size_t lane = 0; lane < ahead_.size(); ++lane) {
    const auto& windows = windows_->lanes[lane];
    const Window& b = windows.layer[at(row) + 1];
    std::int64_t* to = ahead_[lane].data() + windows.offset[at(row) + 1];
    if (k < users.size() && at(users[k]) == lane) {
      const std::int64_t price = price_[at(row)][k++];
      for (int i = 0; i < b.size(); ++i) to[i] = std::min(to[i], std::min(far, stopped[i] + price));
      stopped += b.size();
    } else {
      stay(windows.layer[at(row)], ahead_[lane].data() + windows.offset[at(row)], b, to);
    }
  }
}

void Prices::take_back(int row) {
  const auto& users = windows_->users[at(row)];
  std::size_t k = 0;
  for (std::size_t lane = 0; lane < back_.size(); ++lane) {
    const auto& windows = windows_->lanes[lane];
    const Window& a = windows.layer[at(row)];
    const Window& b = windows.layer[at(row) + 1];
    std::int64_t* from = back_[lane].data() + windows.offset[at(row)];
    const std::int64_t* to = back_[lane].data() + windows.offset[at(row) + 1];
    if (k < users.size() && at(users[k]) == lane) {
      const std::int64_t price = price_[at(row)][k++];
      stop_back(problem_->lanes[lane], row, a, from, b, to);
      for (int i = 0; i < a.size(); ++i) from[i] = std::min(far, from[i] + price);
      // Not stopping is free. Few states: worth no second array.
      int i = 0;
      for (int state = a.low; state <= a.high; ++state, ++i) {
        if (b.has(state)) from[i] = std::min(from[i], to[state - b.low]);
      }
      if (a.held >= 0 && a.held == b.held) from[i] = std::min(from[i], to[b.states()]);
      work_ += a.size();
    } else {
      stay_back(a, from, b, to);
    }
  }
}

std::int64_t Prices::ascend() {
  for (int row = 0; row <= problem_->rows; ++row) {
    price_row(row);
    take_ahead(row);
  }
  for (int row = problem_->rows; row >= 0; --row) {
    if (!is_forced(*problem_, row)) price_row(row);
    take_back(row);
  }
  std::int64_t bound = forced_cost_;
  for (const auto& back : back_) bound += back[0];
  bound_ = bound;
  return bound_;
}

// Follows a lane's cheapest way and flags, per row and user, the stops that it pays for.
void Prices::trace(std::size_t lane, std::vector<std::vector<char>>& used) const {
  const Lane& worked = problem_->lanes[lane];
  const auto& windows = windows_->lanes[lane];
  int state = 0;
  bool held = false;
  for (int row = 0; row <= problem_->rows; ++row) {
    const Window& a = windows.layer[at(row)];
    const Window& b = windows.layer[at(row) + 1];
    const std::int64_t* from = back_[lane].data() + windows.offset[at(row)];
    const std::int64_t* to = back_[lane].data() + windows.offset[at(row) + 1];
    const std::int64_t here = held ? from[a.states()] : from[state - a.low];
    std::int64_t staying = far;
    if (held && a.held == b.held) staying = to[b.states()];
    if (!held && b.has(state)) staying = to[state - b.low];
    if (staying == here) continue;
    const auto& users = windows_->users[at(row)];
    const auto user = std::lower_bound(users.begin(), users.end(), static_cast<int>(lane)) - users.begin();
    used[at(row)][static_cast<std::size_t>(user)] = 1;
    if (held) {
      state = a.held + 1;
      held = false;
      continue;
    }
    const std::int64_t paid = here - price_[at(row)][static_cast<std::size_t>(user)];
    const bool starts = b.held >= 0 && worked.task(b.held).low - 1 == row;
    if (starts && b.held == state && worked.hold + to[b.states()] == paid) {
      held = true;
      continue;
    }
    const std::int64_t batch = worked.batch_cost(state, row);
    state = worked.done_at(row);
    held = !(b.has(state) && batch + to[state - b.low] == paid);
  }
}

std::int64_t Prices::climb(int steps, std::int64_t best) {
  std::vector<std::vector<std::int64_t>> kept = price_;
  std::vector<std::vector<char>> used(price_.size());
  std::vector<std::vector<double>> way(price_.size());
  for (std::size_t row = 0; row < price_.size(); ++row) way[row].assign(price_[row].size(), 0.0);
  double boldness = 1.0;
  int since_better = 0;
  for (int step = 0; step < steps && bound_ < best; ++step) {
    const std::int64_t now = way_back();
    if (now > bound_) {
      bound_ = now;
      kept = price_;
      since_better = 0;
    } else if (++since_better >= 8) {
      boldness /= 2;
      since_better = 0;
    }
    for (std::size_t row = 0; row < used.size(); ++row) used[row].assign(price_[row].size(), 0);
    for (std::size_t lane = 0; lane < back_.size(); ++lane) trace(lane, used);
    // Only what differs among a stop's users counts: their prices have a fixed sum.
    double norm = 0;
    for (int row = 0; row <= problem_->rows; ++row) {
      auto& mine = way[at(row)];
      if (is_forced(*problem_, row) || mine.empty()) continue;
      double mean = 0;
      for (std::size_t k = 0; k < mine.size(); ++k) {
        mine[k] = step == 0 ? used[at(row)][k] : 0.7 * mine[k] + 0.3 * used[at(row)][k];
        mean += mine[k];
      }
      mean /= static_cast<double>(mine.size());
      for (const double value : mine) norm += (value - mean) * (value - mean);
    }
    if (norm < 1e-9) break;
    const double length = boldness * static_cast<double>(best - now) / norm;
    for (int row = 0; row <= problem_->rows; ++row) {
      if (is_forced(*problem_, row) || price_[at(row)].empty()) continue;
      gain_ = price_[at(row)];
      for (std::size_t k = 0; k < gain_.size(); ++k) {
        gain_[k] += std::min(problem_->stop_cost, static_cast<std::int64_t>(length * way[at(row)][k]));
      }
      share_out(gain_, problem_->stop_cost, scratch_);
      price_[at(row)] = gain_;
    }
  }
  price_ = std::move(kept);
  return bound_ = way_back();
}

}  // namespace latchwork::inline v0::planning
