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
  std::uint32_t fate = 0;  // place in its row's list of fates
  int free_from = 0;       // the row from which a stop that is not forced is far enough from the one below
  bool stopped = false;
};

constexpr std::size_t most_compared = 32;  // labels that each is held against; equal ones are always found

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
  Search(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width, std::int64_t most,
         const std::vector<std::int64_t>& gain, int first, int last, Schedule& best, Limits& limits, Fates* fates)
      : problem_(problem),
        windows_(windows),
        prices_(prices),
        width_(width),
        most_(most),
        gain_(gain),
        first_(first),
        last_(last),
        best_(best),
        limits_(limits),
        fates_(fates) {}

  Pass run();

 private:
  void start();
  void enter(int row);
  void extend(const Label& label, std::size_t index, bool stops, int row);
  bool select();
  void take_end();
  bool go_on();
  Pass broken_off();

  const Problem& problem_;
  const Windows& windows_;
  Prices& prices_;
  std::size_t width_;
  std::int64_t most_;
  const std::vector<std::int64_t>& gain_;
  int first_;
  int last_;
  Schedule& best_;
  Limits& limits_;
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
  std::vector<std::int64_t> ways_;       // scratch: per lane with a choice, its way to go
  std::vector<std::int64_t> next_ways_;  // the same of each label above the row
  std::vector<std::uint32_t> sorted_;
  std::vector<std::uint32_t> kept_;
  std::vector<std::pair<int, int>> spans_;                 // where each lane's states stand in a label above the row
  std::unordered_map<std::uint64_t, std::uint32_t> same_;  // a label of each hash; looked up only, never walked
};

bool single(const Window& window) {
  return window.size() == 1 && window.held < 0;
}

// The one label to begin with. Above row 0 it is one for all: every lane stands wherever it can, at the cost at which
// its way to go comes to the same.
void Search::start() {
  labels_.assign(1, {});
  states_.clear();
  offset_.assign(windows_.lanes.size(), -1);
  prices_.look_from(first_);
  std::int64_t bound = first_ > 0 ? forced_after_[at(first_) - 1] : 0;
  for (std::size_t lane = 0; lane < offset_.size(); ++lane) {
    const Window& window = windows_.lanes[lane].layer[at(first_)];
    const std::int64_t* go = prices_.to_go(lane);
    if (single(window)) {
      bound += *go;
      continue;
    }
    offset_[lane] = static_cast<int>(states_.size());
    std::int64_t most = -1;
    for (int i = 0; i < window.size(); ++i) {
      if (go[i] < far) most = std::max(most, go[i]);
    }
    for (int i = 0; i < window.size(); ++i) states_.push_back(go[i] < far ? most - go[i] : far);
    bound += most;
  }
  size_ = states_.size();
  labels_.front().bound = bound;
}

// Which lanes have a choice below or above the row, and where their states go.
void Search::enter(int row) {
  parts_.clear();
  next_size_ = 0;
  prices_.look_from(row + 1);
  settled_ = forced_after_[at(row)] + gain_[at(row)];
  const auto& users = windows_.users[at(row)];
  std::size_t user = 0;
  for (int lane = 0; lane < static_cast<int>(offset_.size()); ++lane) {
    const Window& above = windows_.lanes[at(lane)].layer[at(row) + 1];
    const bool uses = user < users.size() && users[user] == lane;
    if (uses) ++user;
    const int before = offset_[at(lane)];
    int after = -1;
    if (single(above)) {
      settled_ += *prices_.to_go(at(lane));
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
  child.free_from = std::max(row + 1, stops ? row + problem_.apart : label.free_from);
  if (fates_) {
    child.fate = static_cast<std::uint32_t>(fates_->rows.back().size());
    fates_->tell({static_cast<std::uint32_t>(index), stops});
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
    const int states = b.states();
    std::int64_t least = far;
    for (int i = states - 1; i >= 0; --i) to[i] = least = std::min(least, to[i]);
    if (b.held >= 0) least = std::min(least, to[states]);
    if (least >= far) {
      next_states_.resize(begin);
      return;  // this lane can no longer be made
    }
    child.cost += least;
    if (part.after < 0) continue;
    const std::int64_t* go = prices_.to_go(at(part.lane));
    std::int64_t way = far;
    for (int i = 0; i < b.size(); ++i) {
      const std::int64_t cost = to[i];
      way = std::min(way, cost + go[i]);
      to[i] = cost < far ? cost - least : far;
    }
    if (way >= far) {
      next_states_.resize(begin);
      return;  // nor be finished
    }
    way -= least;
    child.bound += way;
    ways_.push_back(way);
  }
  child.bound += child.cost;
  if (child.bound > most_) {
    next_states_.resize(begin);
    return;
  }
  // A state through which the bound passes the incumbent is of no use: without it more labels are equal, or beaten.
  std::size_t k = 0;
  std::uint64_t hash = 0xcbf29ce484222325U ^ static_cast<std::uint64_t>(child.free_from);
  for (const Part& part : parts_) {
    if (part.after < 0) continue;
    const int size = windows_.lanes[at(part.lane)].layer[at(row) + 1].size();
    std::int64_t* to = next_states_.data() + begin + at(part.after);
    const std::int64_t* go = prices_.to_go(at(part.lane));
    const std::int64_t most = most_ - child.bound + ways_[k++];
    for (int i = 0; i < size; ++i) {
      if (to[i] < far && to[i] + go[i] > most) to[i] = far;
      hash = (hash ^ static_cast<std::uint64_t>(to[i])) * 0x100000001b3U;
      hash ^= hash >> 29;
    }
  }
  child.hash = hash;
  next_.push_back(child);
  next_ways_.insert(next_ways_.end(), ways_.begin(), ways_.end());
}

// Whether x might be as cheap as y whatever follows: a lane's ways to go differ by no more than its states do, and are
// one number each.
bool may_beat(std::int64_t spare, const std::int64_t* x_ways, const std::int64_t* y_ways, std::size_t lanes) {
  for (std::size_t k = 0; k < lanes && spare >= 0; ++k) {
    spare -= std::max<std::int64_t>(0, x_ways[k] - y_ways[k]);
  }
  return spare >= 0;
}

// Whether x with its states is as cheap as y whatever follows.
bool beats(std::int64_t spare, const std::int64_t* xs, const std::int64_t* ys,
           const std::vector<std::pair<int, int>>& spans) {
  for (const auto& [begin, end] : spans) {
    std::int64_t most = 0;  // far where x cannot stand and y can
    std::int64_t other = 0;
    int i = begin;
    for (; i + 1 < end; i += 2) {  // two chains: each waits for its own last maximum only
      most = std::max(most, xs[i] - ys[i]);
      other = std::max(other, xs[i + 1] - ys[i + 1]);
    }
    if (i < end) most = std::max(most, xs[i] - ys[i]);
    spare -= std::max(most, other);
    if (spare < 0) return false;
  }
  return true;
}

// Keeps the best labels that no other dominates. Whether to go on.
bool Search::select() {
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
  const auto ways = [&](std::uint32_t i) { return next_ways_.data() + i * spans.size(); };

  std::vector<std::uint32_t>& kept = kept_;
  kept.clear();
  const auto end_by = [&](std::uint32_t loser, std::uint32_t winner) {
    if (!fates_) return;
    Fate& fate = fates_->rows.back()[next_[loser].fate];
    fate.end = Fate::End::dominated;
    fate.by = next_[winner].fate;
  };
  const bool many = next_.size() > most_compared;  // else all are compared, equal ones too
  same_.clear();
  for (const std::uint32_t y : sorted) {
    if (work_ >= Limits::often && !go_on()) return false;
    bool beaten = false;
    const auto beaten_by = [&](std::uint32_t x) {
      work_ += static_cast<std::int64_t>(spans.size());
      if (next_[x].free_from > next_[y].free_from) return false;
      const std::int64_t spare = next_[y].cost - next_[x].cost;
      if (!may_beat(spare, ways(x), ways(y), spans.size()) || !beats(spare, states(x), states(y), spans)) return false;
      end_by(y, x);
      return true;
    };
    std::uint32_t* equal = nullptr;
    if (many) {
      const auto [place, fresh] = same_.try_emplace(next_[y].hash, y);
      equal = fresh ? nullptr : &place->second;
    }
    if (equal) beaten = beaten_by(*equal);
    for (std::size_t k = 0; !beaten && k < std::min(kept.size(), most_compared); ++k) beaten = beaten_by(kept[k]);
    if (beaten) continue;
    if (kept.size() >= width_) {
      pass_.complete = false;
      pass_.bound = std::min(pass_.bound, next_[y].bound);
      break;  // the others' bounds are no lower
    }
    kept.push_back(y);
    if (fates_) fates_->rows.back()[next_[y].fate].end = Fate::End::kept;
  }
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
  return true;
}

// The best label at the end is a schedule. Labels come earlier stops first.
void Search::take_end() {
  const Label* best = nullptr;
  for (const Label& label : labels_) {
    if (!best || label.cost < best->cost) best = &label;
  }
  if (!best) return;
  best_.cost = best->cost;
  best_.stops.assign(at(problem_.rows) + 1, 0);
  auto index = static_cast<std::size_t>(best - labels_.data());
  for (int row = problem_.rows; row >= 0; --row) {
    const Origin& origin = origins_[at(row)][index];
    best_.stops[at(row)] = origin.stopped ? 1 : 0;
    index = origin.parent;
  }
}

bool Search::go_on() {
  const std::int64_t work = work_;
  work_ = 0;
  return limits_.go_on(work);
}

Pass Search::broken_off() {
  pass_.broken_off = true;
  pass_.complete = false;
  pass_.bound = 0;
  return pass_;
}

Pass Search::run() {
  pass_.complete = true;
  int widest = 1;
  for (const auto& lane : windows_.lanes) {
    for (const auto& window : lane.layer) widest = std::max(widest, window.size());
  }
  scratch_.resize(at(widest));
  forced_after_.assign(at(problem_.rows) + 1, 0);
  for (int row = problem_.rows; row > 0; --row) {
    forced_after_[at(row) - 1] = forced_after_[at(row)] + (is_forced(problem_, row) ? problem_.stop_cost : 0);
  }
  start();
  const std::int64_t root = labels_.front().bound;
  if (first_ > 0) most_ += root;
  for (int row = first_; row <= last_; ++row) {
    current_ = row;
    enter(row);
    next_.clear();
    next_states_.clear();
    next_ways_.clear();
    if (fates_) fates_->rows.emplace_back();
    const bool forced = is_forced(problem_, row);
    const bool useful = !windows_.users[at(row)].empty();
    next_states_.reserve(2 * labels_.size() * next_size_);
    for (std::size_t i = 0; i < labels_.size(); ++i) {
      if (work_ >= Limits::often && !go_on()) return broken_off();
      if (forced || (useful && row >= labels_[i].free_from)) extend(labels_[i], i, true, row);
      if (!forced) extend(labels_[i], i, false, row);
      if (fates_ && fates_->full()) return broken_off();
    }
    if (first_ == 0) limits_.done(static_cast<double>(row) / (problem_.rows + 1));
    if (!select() || !go_on() || !limits_.go_past(std::ssize(windows_.lanes))) return broken_off();
    size_ = next_size_;
    if (labels_.empty() && pass_.stuck < 0) pass_.stuck = row;
  }
  if (first_ > 0) {
    pass_.bound = std::min(pass_.bound, most_ + 1);
    for (const Label& label : labels_) pass_.bound = std::min(pass_.bound, label.bound);
    pass_.bound -= root;
    return pass_;
  }
  take_end();
  return pass_;
}

}  // namespace

Pass search(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width, std::int64_t most,
            const std::vector<std::int64_t>& gain, Schedule& best, Limits& limits, Fates* fates) {
  return Search(problem, windows, prices, width, most, gain, 0, problem.rows, best, limits, fates).run();
}

Pass look_ahead(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width, std::int64_t slack,
                const std::vector<std::int64_t>& gain, int first, int last, Limits& limits, Fates* fates) {
  Schedule none;
  return Search(problem, windows, prices, width, slack, gain, first, last, none, limits, fates).run();
}

std::size_t states_of_label(const Windows& windows) {
  std::vector<std::size_t> states(windows.users.size() + 1, 0);
  for (const LaneWindows& lane : windows.lanes) {
    for (std::size_t layer = 0; layer < states.size(); ++layer) {
      if (!single(lane.layer[layer])) states[layer] += at(lane.layer[layer].size());
    }
  }
  return std::max<std::size_t>(1, *std::max_element(states.begin(), states.end()));
}

std::size_t greatest_width(const PlanOptions& options, std::size_t states, int rows) {
  // A row's labels and both ways on from each, and for every row below where each came from.
  const std::size_t label = 3 * (sizeof(Label) + states * sizeof(std::int64_t)) + 48;
  const std::size_t each = label + static_cast<std::size_t>(rows + 1) * sizeof(Origin);
  return std::max<std::size_t>(1, memory_of(options.memory_limit) / each);
}

}  // namespace latchwork::inline v0::planning
