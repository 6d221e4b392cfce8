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
void share_out(std::vector<std::int64_t>& worth, std::int64_t cost) {
  std::int64_t sum = std::accumulate(worth.begin(), worth.end(), std::int64_t{0});
  auto count = static_cast<std::int64_t>(worth.size());
  if (sum <= cost) {
    const std::int64_t rest = cost - sum;
    for (std::size_t i = 0; i < worth.size(); ++i) {
      worth[i] += rest / count + (static_cast<std::int64_t>(i) < rest % count ? 1 : 0);
    }
    return;
  }
  // What each payer keeps; who has no more than that pays nothing, and the others keep the less for it.
  std::int64_t level = 0;
  for (bool fewer = true; fewer;) {
    fewer = false;
    level = (sum - cost) / count;
    for (auto& value : worth) {
      if (value == 0 || value > level) continue;
      sum -= value;
      value = 0;
      fewer = true;
    }
    const auto payers =
        static_cast<std::int64_t>(worth.size()) - std::count(worth.begin(), worth.end(), std::int64_t{0});
    fewer = fewer || payers != count;
    count = payers;
  }
  std::int64_t excess = sum - count * level - cost;  // below `count`: the first ones keep one unit more
  for (auto& value : worth) {
    if (value == 0) continue;
    value -= level;
    if (excess > 0) {
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
  slot_.assign(windows.lanes.size(), std::vector<int>(windows.users.size(), -1));
  for (int row = 0; row <= problem.rows; ++row) {
    const auto& users = windows.users[at(row)];
    price_[at(row)].assign(users.size(), 0);
    for (std::size_t k = 0; k < users.size(); ++k) slot_[at(users[k])][at(row)] = static_cast<int>(k);
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

// All the way down under the prices as they are, lane by lane; returns the bound they give.
std::int64_t Prices::way_back() {
  std::int64_t bound = forced_cost_;
  for (std::size_t lane = 0; lane < back_.size(); ++lane) {
    for (int row = problem_->rows; row >= 0; --row) {
      const int slot = slot_[lane][at(row)];
      take_back(lane, row, slot < 0 ? nullptr : &price_[at(row)][at(slot)]);
    }
    bound += back_[lane][0];
  }
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
  share_out(gain_, problem_->stop_cost);
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

// One row down for one lane, which pays `price` for a stop there; NULL: it has no use for one.
void Prices::take_back(std::size_t lane, int row, const std::int64_t* price) {
  const auto& windows = windows_->lanes[lane];
  const Window& a = windows.layer[at(row)];
  const Window& b = windows.layer[at(row) + 1];
  std::int64_t* from = back_[lane].data() + windows.offset[at(row)];
  const std::int64_t* to = back_[lane].data() + windows.offset[at(row) + 1];
  if (!price) {
    stay_back(a, from, b, to);
    return;
  }
  stop_back(problem_->lanes[lane], row, a, from, b, to);
  for (int i = 0; i < a.size(); ++i) from[i] = std::min(far, from[i] + *price);
  // Not stopping is free. Few states: worth no second array.
  int i = 0;
  for (int state = a.low; state <= a.high; ++state, ++i) {
    if (b.has(state)) from[i] = std::min(from[i], to[state - b.low]);
  }
  if (a.held >= 0 && a.held == b.held) from[i] = std::min(from[i], to[b.states()]);
  work_ += a.size();
}

std::int64_t Prices::ascend() {
  for (int row = 0; row <= problem_->rows; ++row) {
    price_row(row);
    take_ahead(row);
  }
  for (int row = problem_->rows; row >= 0; --row) {
    if (!is_forced(*problem_, row)) price_row(row);
    for (std::size_t lane = 0; lane < back_.size(); ++lane) {
      const int slot = slot_[lane][at(row)];
      take_back(lane, row, slot < 0 ? nullptr : &price_[at(row)][at(slot)]);
    }
  }
  std::int64_t bound = forced_cost_;
  for (const auto& back : back_) bound += back[0];
  bound_ = bound;
  return bound_;
}

// A lane's cheapest way alone, quicker than by take_back(): where it stands is known by its tasks, and a batch costs
// what its stop adds and its start takes off, so that of all stops in reach the one that adds the least is best.
std::int64_t Prices::cheapest(std::size_t lane, const std::int64_t* price) {
  const Lane& worked = problem_->lanes[lane];
  const int count = worked.task_count();
  to_end_.resize(at(count) + 1);
  best_.resize(at(count));
  adds_.resize(at(problem_->rows) + 1);
  to_end_[at(count)] = 0;
  int known = problem_->rows + 1;  // adds_ from here on
  for (int i = count - 1; i >= 0; --i) {
    const Task& task = worked.task(i);
    const Task* above = i + 1 < count ? &worked.task(i + 1) : nullptr;
    const std::int64_t then = to_end_[at(i) + 1];
    for (int row = known - 1; row >= task.high; --row) {
      adds_[at(row)] = worked.done_at(row) < 0 || then >= far ? far : worked.upto[at(row)] + price[row] + then;
    }
    if (above && above->by_hold && above->low - 1 >= task.high && above->low - 1 < known) {  // set at that stop too
      const std::int64_t held = to_end_[at(i) + 2];
      const int row = above->low - 1;
      if (held < far) {
        adds_[at(row)] =
            std::min(adds_[at(row)], worked.upto[at(row)] + price[row] + worked.hold + price[above->high - 1] + held);
      }
    }
    known = std::min(known, task.high);
    Way way{far, -1};
    for (int row = task.high; row <= task.last_stop; ++row) {
      if (adds_[at(row)] < way.cost) way = {adds_[at(row)], row};
    }
    if (way.cost < far) way.cost += worked.batch - worked.before[at(i)];
    if (task.by_hold && then < far) {
      const std::int64_t held = worked.hold + price[task.low - 1] + price[task.high - 1] + then;
      if (held < way.cost) way = {held, -1};
    }
    to_end_[at(i)] = way.cost;
    best_[at(i)] = way.stop;
  }
  work_ += count + problem_->rows / 4;
  return to_end_[0];
}

// Flags the stops of the way that cheapest() found last.
void Prices::follow(std::size_t lane, const std::int64_t* price, char* used) const {
  const Lane& worked = problem_->lanes[lane];
  for (int i = 0; i < worked.task_count();) {
    const int stop = best_[at(i)];
    const Task& task = worked.task(i);
    if (stop < 0) {
      used[task.low - 1] = used[task.high - 1] = 1;
      ++i;
      continue;
    }
    used[stop] = 1;
    i = worked.done_at(stop);
    if (i >= worked.task_count()) break;
    const Task& next = worked.task(i);
    // Set in hold at the same stop, when that is what it added.
    if (next.by_hold && next.low - 1 == stop &&
        adds_[at(stop)] != worked.upto[at(stop)] + price[stop] + to_end_[at(i)]) {
      used[next.high - 1] = 1;
      ++i;
    }
  }
}

std::int64_t Prices::climb(int steps, std::int64_t best) {
  // Prices, what is used, and the way to go, per lane and row.
  const std::size_t layers = price_.size();
  const std::size_t lanes = back_.size();
  std::vector<std::int64_t> now(lanes * layers, 0);
  for (std::size_t row = 0; row < layers; ++row) {
    const auto& users = windows_->users[row];
    for (std::size_t k = 0; k < users.size(); ++k) now[at(users[k]) * layers + row] = price_[row][k];
  }
  std::vector<std::int64_t> kept = now;
  std::vector<char> used(lanes * layers);
  std::vector<double> way(lanes * layers, 0.0);
  double boldness = 1.0;
  int since_better = 0;
  for (int step = 0; step < steps && bound_ < best; ++step) {
    std::fill(used.begin(), used.end(), 0);
    std::int64_t bound = forced_cost_;
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      bound += cheapest(lane, now.data() + lane * layers);
      follow(lane, now.data() + lane * layers, used.data() + lane * layers);
    }
    if (bound > bound_) {
      bound_ = bound;
      kept = now;
      since_better = 0;
    } else if (++since_better >= 8) {
      boldness /= 2;
      since_better = 0;
    }
    // Only what differs among a stop's users counts: their prices have a fixed sum.
    double norm = 0;
    for (std::size_t row = 0; row < layers; ++row) {
      const auto& users = windows_->users[row];
      if (problem_->forced[row] != 0 || users.empty()) continue;
      double mean = 0;
      for (const int user : users) {
        double& mine = way[at(user) * layers + row];
        const double uses = used[at(user) * layers + row];
        mine = step == 0 ? uses : 0.7 * mine + 0.3 * uses;
        mean += mine;
      }
      mean /= static_cast<double>(users.size());
      for (const int user : users) {
        const double off = way[at(user) * layers + row] - mean;
        norm += off * off;
      }
    }
    if (norm < 1e-9) break;
    const double length = boldness * static_cast<double>(best - bound) / norm;
    for (std::size_t row = 0; row < layers; ++row) {
      const auto& users = windows_->users[row];
      if (problem_->forced[row] != 0 || users.empty()) continue;
      gain_.clear();
      bool moves = false;
      for (const int user : users) {
        const std::size_t mine = at(user) * layers + row;
        const std::int64_t more = std::min(problem_->stop_cost, static_cast<std::int64_t>(length * way[mine]));
        moves = moves || more > 0;
        gain_.push_back(now[mine] + more);
      }
      if (!moves) continue;
      share_out(gain_, problem_->stop_cost);
      std::size_t k = 0;
      for (const int user : users) now[at(user) * layers + row] = gain_[k++];
    }
  }
  for (std::size_t row = 0; row < layers; ++row) {
    const auto& users = windows_->users[row];
    for (std::size_t k = 0; k < users.size(); ++k) price_[row][k] = kept[at(users[k]) * layers + row];
  }
  return bound_ = way_back();
}

}  // namespace latchwork::inline v0::planning
