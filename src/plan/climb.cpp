#include <algorithm>

#include "plan/index.hpp"
#include "plan/lone_way.hpp"
#include "plan/prices.hpp"
#include "plan/share.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr std::size_t lanes_between = 32;  // looks at the clock

// Places of all rows' users, row by row, where what differs from user to user stands; and all rows of each lane.
struct Places {
  explicit Places(const Windows& windows) : layers(windows.users.size()), place(windows.lanes.size() * layers, -1) {
    first.push_back(0);
    for (std::size_t row = 0; row < layers; ++row) {
      int next = first.back();
      for (const int user : windows.users[row]) place[at(user) * layers + row] = next++;
      first.push_back(next);
    }
  }
  std::size_t size() const { return at(first.back()); }
  std::size_t layers;
  std::vector<int> first;  // per row, and one past the last
  std::vector<int> place;  // per lane and row; -1: the lane has no use for a stop there
};

}  // namespace

std::int64_t Prices::climb(int steps, std::int64_t best, Limits* limits) {
  const Places places(*windows_);
  const std::size_t layers = places.layers;
  std::vector<std::int64_t> now(places.place.size(), 0);  // per lane and row
  std::vector<std::int64_t> mine(places.size());          // the same per place
  for (std::size_t row = 0; row < layers; ++row) {
    const auto& users = windows_->users[row];
    std::copy(price_[row].begin(), price_[row].end(), mine.begin() + places.first[row]);
    for (std::size_t k = 0; k < users.size(); ++k) now[at(users[k]) * layers + row] = price_[row][k];
  }
  std::vector<std::int64_t> kept = mine;
  std::vector<double> used(places.size(), 0.0);
  std::vector<int> set;                         // places at which `used` is 1
  std::vector<double> way(places.size(), 0.0);  // `used`, averaged over the steps
  std::vector<std::int64_t> worth;              // scratch: of a row's users
  std::vector<double> sum(layers);              // of a row's `way`; 0 at a forced stop
  LoneWay alone(problem_->rows);
  double boldness = 1.0;
  int since_better = 0;
  for (int step = 0; step < steps && bound_ < best; ++step) {
    if (limits && limits->over()) break;
    for (const int place : set) used[at(place)] = 0;
    set.clear();
    std::int64_t bound = forced_cost_;
    for (std::size_t lane = 0; lane < lanes_.size(); ++lane) {
      if (limits && lane % lanes_between == lanes_between - 1 && limits->over()) return bound_;
      const Lane& worked = problem_->lanes[lane];
      bound += alone.find(worked, now.data() + lane * layers);
      alone.follow([&](int stop) {
        const int place = places.place[lane * layers + at(stop)];
        if (place < 0) return;
        used[at(place)] = 1;
        set.push_back(place);
      });
      work_ += worked.task_count() + problem_->rows / 4;
    }
    if (bound > bound_) {
      bound_ = bound;
      kept = mine;
      since_better = 0;
    } else if (++since_better >= 8) {
      boldness /= 2;
      since_better = 0;
    }
    // Only what differs among a stop's users counts: their prices have a fixed sum.
    double norm = 0;
    if (step == 0) {
      way = used;
    } else {
      for (std::size_t i = 0; i < way.size(); ++i) way[i] = 0.7 * way[i] + 0.3 * used[i];
    }
    for (std::size_t row = 0; row < layers; ++row) {
      const std::size_t begin = at(places.first[row]);
      const std::size_t end = at(places.first[row + 1]);
      sum[row] = 0;
      if (problem_->forced[row] != 0) continue;
      for (std::size_t i = begin; i < end; ++i) sum[row] += way[i];
      if (sum[row] == 0) continue;
      const double mean = sum[row] / static_cast<double>(end - begin);
      for (std::size_t i = begin; i < end; ++i) norm += (way[i] - mean) * (way[i] - mean);
    }
    if (norm < 1e-9) break;
    const double length = boldness * static_cast<double>(best - bound) / norm;
    for (std::size_t row = 0; row < layers; ++row) {
      const std::size_t begin = at(places.first[row]);
      const std::size_t end = at(places.first[row + 1]);
      if (length * sum[row] < 1) continue;  // no price would move by as much as 1
      worth.clear();
      bool moves = false;
      for (std::size_t i = begin; i < end; ++i) {
        const double rise = length * way[i];  // may be past what an integer counts
        const std::int64_t more =
            rise < static_cast<double>(problem_->stop_cost) ? static_cast<std::int64_t>(rise) : problem_->stop_cost;
        moves = moves || more > 0;
        worth.push_back(mine[i] + more);
      }
      if (!moves) continue;
      share_out(worth, problem_->stop_cost);
      const auto& users = windows_->users[row];
      for (std::size_t k = 0; k < users.size(); ++k) {
        mine[begin + k] = worth[k];
        now[at(users[k]) * layers + row] = worth[k];
      }
    }
  }
  if (limits && limits->over()) return bound_;
  for (std::size_t row = 0; row < layers; ++row) {
    const std::size_t begin = at(places.first[row]);
    for (std::size_t k = 0; k < price_[row].size(); ++k) price_[row][k] = kept[begin + k];
  }
  take_down(nullptr);
  return bound_;
}

}  // namespace latchwork::inline v0::planning
