#include "plan/search.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

// A partial schedule up to some row. Its states stand in the layer's array: for each lane with a choice of states, what
// each costs more than the lane's cheapest.
struct Label {
  std::int64_t cost = 0;    // stops so far, and each lane's cheapest state
  std::int64_t bound = 0;   // with the way to go
  std::uint32_t order = 0;  // place among the layer's labels, earlier stops first
  std::uint32_t parent = 0;
  std::uint64_t hash = 0;
  std::uint32_t fate = 0;   // place in its row's list of fates
  signed char against = 0;  // the incumbent so far: -1 this one stops earlier, 0 the same, 1 later
  bool stopped = false;
};

constexpr std::size_t most_compared = 64;  // labels that each is held against; equal ones are always found

struct Origin {
  std::uint32_t parent;
  bool stopped;
};

// A lane that has something to choose before or after a row.
struct Part {
  int lane;
  int before;  // offset of its states in the labels of the layer below; -1: one state, at no extra cost
  int after;   // and in those of the layer above
  bool user;
};

class Search {
 public:
  Search(const Problem& problem, const Windows& windows, const Prices& prices, std::size_t width, Schedule& best,
         Fates* fates)
      : problem_(problem), windows_(windows), prices_(prices), width_(width), best_(best), fates_(fates) {}

  Pass run(const std::function<bool(std::int64_t, double)>& go_on);

 private:
  void enter(int row);
  void extend(const Label& label, std::size_t index, bool stops, int row);
  void select();
  bool prunable(const Label& label) const {
    return label.bound > best_.cost || (label.bound == best_.cost && label.against > 0);
  }
  void take_end();
  const Problem& problem_;
  const Windows& windows_;
  const Prices& prices_;
  std::size_t width_;
  Schedule& best_;
  Fates* fates_;
  Pass pass_;
  std::int64_t work_ = 0;

  int current_ = 0;                         // the row
  std::vector<std::int64_t> forced_after_;  // per row: cost of the forced stops above it
  std::vector<Part> parts_;
  std::vector<int> offset_;  // per lane, in the layer below; -1: none
  std::size_t size_ = 0;     // states a label holds, below and above
  std::size_t next_size_ = 0;
  std::int64_t settled_ = 0;  // way to go of the lanes above the row that have one state, and forced stops to come
  std::vector<Label> labels_;
  std::vector<std::int64_t> states_;
  std::vector<Label> next_;
  std::vector<std::int64_t> next_states_;
  std::vector<std::vector<Origin>> origins_;
  std::vector<std::int64_t> scratch_;
  std::vector<std::int64_t> ways_;  // scratch: per lane with a choice, its way to go
  std::vector<std::uint32_t> sorted_;
  std::vector<std::uint32_t> kept_;
  std::vector<char> dead_;
  std::vector<std::pair<int, int>> spans_;                 // where each lane's states stand in a label above the row
  std::unordered_map<std::uint64_t, std::uint32_t> same_;  // a label of each hash; looked up only, never walked
};

bool single(const Window& window) {
  return window.size() == 1 && window.held < 0;
}

// Which lanes have a choice below or above the row, and where their states go.
void Search::enter(int row) {
  parts_.clear();
  next_size_ = 0;
  settled_ = forced_after_[at(row)];
  const auto& users = windows_.users[at(row)];
  std::size_t user = 0;
  for (int lane = 0; lane < static_cast<int>(offset_.size()); ++lane) {
    const Window& above = windows_.lanes[at(lane)].layer[at(row) + 1];
    const bool uses = user < users.size() && users[user] == lane;
    if (uses) ++user;
    const int before = offset_[at(lane)];
    int after = -1;
    if (single(above)) {
      settled_ += *prices_.to_go(at(lane), row + 1);
    } else {
      after = static_cast<int>(next_size_);
      next_size_ += at(above.size());
    }
    const bool same_one = single(above) && windows_.lanes[at(lane)].layer[at(row)].has(above.low);
    if (before >= 0 || after >= 0 || uses || !same_one) parts_.push_back({lane, before, after, uses});
    offset_[at(lane)] = after;
  }
}

void Search::extend(const Label& label, std::size_t index, bool stops, int row) {
  Label child;
  child.cost = label.cost + (stops ? problem_.stop_cost : 0);
  child.bound = settled_;
  child.parent = static_cast<std::uint32_t>(index);
  child.order = label.order * 2 + (stops ? 0 : 1);
  child.stopped = stops;
  child.against = label.against;
  if (child.against == 0 && !best_.stops.empty()) {
    const bool incumbent = best_.stops[at(row)] != 0;
    if (incumbent != stops) child.against = stops ? -1 : 1;
  }
  if (fates_) {
    child.fate = static_cast<std::uint32_t>(fates_->back().size());
    fates_->back().push_back({static_cast<std::uint32_t>(index), stops});
  }
  const std::size_t begin = next_states_.size();
  next_states_.resize(begin + next_size_);
  const std::int64_t zero = 0;
  ways_.clear();
  for (const Part& part : parts_) {
    const auto& windows = windows_.lanes[at(part.lane)];
    const Window& a = windows.layer[at(row)];
    const Window& b = windows.layer[at(row) + 1];
    const std::int64_t* from = part.before >= 0 ? states_.data() + index * size_ + at(part.before) : &zero;
    std::int64_t* to = part.after >= 0 ? next_states_.data() + begin + at(part.after) : scratch_.data();
    if (stops && part.user) {
      stop(problem_.lanes[at(part.lane)], row, a, from, b, to);
    } else {
      stay(a, from, b, to);
    }
    work_ += b.size();
    // With more done, what follows costs no more: a state is worth no less than the ones below it.
    for (int i = b.states() - 1; i > 0; --i) to[i - 1] = std::min(to[i - 1], to[i]);
    std::int64_t least = far;
    for (int i = 0; i < b.size(); ++i) least = std::min(least, to[i]);
    if (least >= far) {
      next_states_.resize(begin);
      return;  // this lane can no longer be made
    }
    child.cost += least;
    if (part.after < 0) continue;
    const std::int64_t* go = prices_.to_go(at(part.lane), row + 1);
    std::int64_t way = far;
    for (int i = 0; i < b.size(); ++i) {
      if (to[i] < far) {
        to[i] -= least;
        way = std::min(way, to[i] + go[i]);
      }
    }
    child.bound += way;
    ways_.push_back(way);
  }
  child.bound += child.cost;
  if (child.bound >= far || prunable(child)) {
    next_states_.resize(begin);
    return;
  }
  // A state through which the bound passes the incumbent is of no use: without it more labels are equal, or beaten.
  std::size_t k = 0;
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const Part& part : parts_) {
    if (part.after < 0) continue;
    const int size = windows_.lanes[at(part.lane)].layer[at(row) + 1].size();
    std::int64_t* to = next_states_.data() + begin + at(part.after);
    const std::int64_t* go = prices_.to_go(at(part.lane), row + 1);
    const std::int64_t most = best_.cost - child.bound + ways_[k++];
    for (int i = 0; i < size; ++i) {
      if (to[i] < far && to[i] + go[i] > most) to[i] = far;
      hash = (hash ^ static_cast<std::uint64_t>(to[i])) * 0x100000001b3U;
      hash ^= hash >> 29;
    }
  }
  child.hash = hash;
  next_.push_back(child);
}

// Whether x with its states is as cheap as y whatever follows: the margin y would need to lose; below 0 when not.
std::int64_t margin(const Label& x, const std::int64_t* xs, const Label& y, const std::int64_t* ys,
                    const std::vector<std::pair<int, int>>& spans) {
  std::int64_t cost = x.cost;
  for (const auto& [begin, end] : spans) {
    std::int64_t most = 0;
    for (int i = begin; i < end; ++i) {
      if (ys[i] < far) most = std::max(most, xs[i] - ys[i]);
    }
    cost += most;  // far when x cannot stand where y can
    if (cost > y.cost) return -1;
  }
  return y.cost - cost;
}

// Keeps the best labels that no other dominates.
void Search::select() {
  std::vector<std::uint32_t>& sorted = sorted_;
  sorted.resize(next_.size());
  for (std::uint32_t i = 0; i < sorted.size(); ++i) sorted[i] = i;
  std::sort(sorted.begin(), sorted.end(), [&](std::uint32_t a, std::uint32_t b) {
    return std::tie(next_[a].bound, next_[a].order) < std::tie(next_[b].bound, next_[b].order);
  });
  std::vector<std::pair<int, int>>& spans = spans_;
  spans.clear();
  for (const Part& part : parts_) {
    if (part.after < 0) continue;
    const Window& window = windows_.lanes[at(part.lane)].layer[at(current_) + 1];
    spans.emplace_back(part.after, part.after + window.size());
  }
  const auto states = [&](std::uint32_t i) { return next_states_.data() + i * next_size_; };

  std::vector<std::uint32_t>& kept = kept_;
  kept.clear();
  const auto end_by = [&](std::uint32_t loser, std::uint32_t winner) {
    if (!fates_) return;
    Fate& fate = fates_->back()[next_[loser].fate];
    fate.end = Fate::End::dominated;
    fate.by = next_[winner].fate;
  };
  std::vector<char>& dead = dead_;
  dead.assign(next_.size(), 0);
  const bool many = next_.size() > most_compared;  // else all are compared, equal ones too
  same_.clear();
  for (const std::uint32_t y : sorted) {
    if (prunable(next_[y])) continue;
    bool beaten = false;
    const auto beats = [&](std::uint32_t x) {
      work_ += static_cast<std::int64_t>(spans.size());
      const std::int64_t spare = margin(next_[x], states(x), next_[y], states(y), spans);
      if (spare > 0 || (spare == 0 && (fates_ || next_[x].order < next_[y].order))) {
        end_by(y, x);
        return true;
      }
      // As good and later: then y may take its place.
      if (spare == 0 && margin(next_[y], states(y), next_[x], states(x), spans) == 0) dead[x] = 1;
      return false;
    };
    std::uint32_t* equal = nullptr;
    if (many) {
      const auto [place, fresh] = same_.try_emplace(next_[y].hash, y);
      equal = fresh ? nullptr : &place->second;
    }
    if (equal && !dead[*equal]) beaten = beats(*equal);
    std::size_t looked = 0;
    for (std::size_t k = 0; !beaten && k < kept.size() && looked < most_compared; ++k) {
      if (dead[kept[k]]) continue;
      ++looked;
      beaten = beats(kept[k]);
    }
    if (beaten) continue;
    if (equal && dead[*equal]) *equal = y;
    if (kept.size() >= width_) {
      pass_.complete = false;
      pass_.bound = std::min(pass_.bound, next_[y].bound);
      break;  // the others' bounds are no lower
    }
    kept.push_back(y);
    if (fates_) fates_->back()[next_[y].fate].end = Fate::End::kept;
  }
  std::erase_if(kept, [&](std::uint32_t i) { return dead[i] != 0; });
  std::sort(kept.begin(), kept.end(),
            [&](std::uint32_t a, std::uint32_t b) { return next_[a].order < next_[b].order; });

  labels_.clear();
  states_.clear();
  auto& origins = origins_.emplace_back();
  for (std::uint32_t i = 0; i < kept.size(); ++i) {
    Label label = next_[kept[i]];
    label.order = i;
    labels_.push_back(label);
    origins.push_back({label.parent, label.stopped});
    states_.insert(states_.end(), states(kept[i]), states(kept[i]) + next_size_);
  }
}

// The best label at the end becomes the incumbent. Labels come earlier stops first.
void Search::take_end() {
  const Label* best = nullptr;
  for (const Label& label : labels_) {
    if (!best || label.cost < best->cost) best = &label;
  }
  if (!best) return;
  if (best->cost > best_.cost || (best->cost == best_.cost && best->against >= 0)) return;
  best_.cost = best->cost;
  best_.stops.assign(at(problem_.rows) + 1, 0);
  auto index = static_cast<std::size_t>(best - labels_.data());
  for (int row = problem_.rows; row >= 0; --row) {
    const Origin& origin = origins_[at(row)][index];
    best_.stops[at(row)] = origin.stopped ? 1 : 0;
    index = origin.parent;
  }
}

Pass Search::run(const std::function<bool(std::int64_t, double)>& go_on) {
  pass_.complete = true;
  labels_.assign(1, {});
  states_.clear();
  size_ = 0;
  offset_.assign(windows_.lanes.size(), -1);
  int widest = 1;
  for (const auto& lane : windows_.lanes) {
    for (const auto& window : lane.layer) widest = std::max(widest, window.size());
  }
  scratch_.resize(at(widest));
  forced_after_.assign(at(problem_.rows) + 1, 0);
  for (int row = problem_.rows; row > 0; --row) {
    forced_after_[at(row) - 1] = forced_after_[at(row)] + (is_forced(problem_, row) ? problem_.stop_cost : 0);
  }
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!go_on(work_, static_cast<double>(row) / (problem_.rows + 1))) {
      pass_.broken_off = true;
      pass_.complete = false;
      pass_.bound = prices_.bound();
      return pass_;
    }
    work_ = 0;
    current_ = row;
    enter(row);
    next_.clear();
    next_states_.clear();
    if (fates_) fates_->emplace_back();
    const bool forced = is_forced(problem_, row);
    const bool useful = !windows_.users[at(row)].empty();
    for (std::size_t i = 0; i < labels_.size(); ++i) {
      if (forced || useful) extend(labels_[i], i, true, row);
      if (!forced) extend(labels_[i], i, false, row);
    }
    select();
    size_ = next_size_;
  }
  take_end();
  pass_.bound = std::min(pass_.bound, best_.cost);
  return pass_;
}

}  // namespace

Pass search(const Problem& problem, const Windows& windows, const Prices& prices, std::size_t width, Schedule& best,
            const std::function<bool(std::int64_t, double)>& go_on, Fates* fates) {
  if (fates) fates->clear();
  return Search(problem, windows, prices, width, best, fates).run(go_on);
}

}  // namespace latchwork::inline v0::planning
