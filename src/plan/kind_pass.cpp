#include "plan/kind_pass.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <utility>

#include "plan/index.hpp"
#include "plan/inputs.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr std::size_t fewest_ways = 512;  // to take one stop that are followed up from one label; with more width more
constexpr int most_alike_compared = 64;   // labels that stand alike
constexpr int far_kind = std::numeric_limits<int>::max();

}  // namespace

bool KindMeter::go_on() {
  if (ended_) return false;
  limits_.now(bound_ms(problem_, best_.bound), best_.found() ? plan_ms(problem_, best_.cost) : -1, 0.5);
  ended_ = !limits_.go_on(work_ - counted_) || work_ > allowance_ || held_ > memory_;
  counted_ = work_;
  return !ended_;
}

KindPass::KindPass(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, std::size_t most,
                   Solved& best, KindMeter& meter)
    : problem_(problem),
      deeds_(deeds),
      at_row_(at_row),
      most_kinds_(most),
      best_(best),
      meter_(meter),
      reach_(problem, deeds) {}

bool KindPass::prepare() {
  chosen_.assign(problem_.lanes.size(), 0);
  windows_ = windows_of(problem_, &meter_.limits());
  meter_.add(static_cast<std::int64_t>(chosen_.size()) * problem_.rows);
  if (meter_.limits().over() || !meter_.go_on()) return false;
  prices_.emplace(problem_, windows_, &meter_.limits());
  if (!prices_->whole() || !meter_.go_on()) return false;
  ways_.emplace(problem_, deeds_, windows_, *prices_);
  forced_after_.assign(at(problem_.rows) + 1, 0);
  for (int row = problem_.rows; row > 0; --row) {
    forced_after_[at(row) - 1] = forced_after_[at(row)] + (is_forced(problem_, row) ? problem_.stop_cost : 0);
  }
  for (int i = 0; i < 8; ++i) {
    const std::int64_t before = prices_->work();
    prices_->ascend(&meter_.limits());
    meter_.add(prices_->work() - before);
    if (!meter_.go_on()) return false;
  }
  meter_.add(reach_.prepare(at_row_, meter_.limits()));
  return meter_.go_on();
}

void KindPass::enter(int row) {
  row_ = row;
  ways_->enter(row);
  next_.clear();
  next_standings_.clear();
}

void KindPass::add(std::int64_t cost, std::int64_t bound, std::uint32_t parent, int kinds, int free_from) {
  if (next_.size() >= most_next_) {
    complete_ = false;
    left_out_ = std::min(left_out_, bound);
    return;
  }
  next_.push_back({cost, bound, parent, kinds, std::max(row_ + 1, free_from)});
  next_standings_.insert(next_standings_.end(), chosen_.begin(), chosen_.end());
}

// A stop is made as chosen, and these are the kinds with it. With as many as there may be, each lane must come to its
// end with what they hold.
void KindPass::add_stop(std::int64_t cost, std::int64_t bound, std::uint32_t parent, int old, int kinds) {
  const std::span<const int> all = sets_.of(kinds);
  if (all.size() + (kinds == old ? 0 : reach_.forced_to_come(row_, all)) > most_kinds_) return;
  if (all.size() == most_kinds_) {
    for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
      // As the label below stood, it could; it still can where neither it nor the kinds have changed.
      if (kinds == old && chosen_[lane] == standing_of(parent)[lane]) continue;
      if (!reach_.can_end(lane, chosen_[lane], row_, all, nullptr)) {
        meter_.add(reach_.take_work());
        return;
      }
    }
    meter_.add(reach_.take_work());
  }
  add(cost, bound, parent, kinds, row_ + problem_.apart);
}

void KindPass::stay(std::uint32_t index) {
  const Label& label = labels_[index];
  const Standing* from = standing_of(index);
  std::int64_t bound = label.cost + forced_after_[at(row_)];
  for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
    chosen_[lane] = from[lane];
    const std::int64_t go = ways_->to_go(lane, from[lane]);
    if (go >= far) return;
    bound += go;
  }
  meter_.add(static_cast<std::int64_t>(chosen_.size()));
  if (bound < best_.cost) add(label.cost, bound, index, label.kinds, label.free_from);
}

void KindPass::stop(std::uint32_t index, Choice choice, const std::set<int>& pool) {
  const Standing* from = standing_of(index);
  rest_.assign(chosen_.size() + 1, 0);
  for (std::size_t lane = chosen_.size(); lane-- > 0;) {
    const std::span<const Way> mine = ways_->of(lane, from[lane]);
    if (mine.empty()) return;
    rest_[lane] = rest_[lane + 1] + mine.front().cost + mine.front().to_go;
  }
  meter_.add(static_cast<std::int64_t>(chosen_.size()));
  const Label& label = labels_[index];
  if (label.cost + problem_.stop_cost + forced_after_[at(row_)] + rest_[0] >= best_.cost) return;
  const std::span<const int> old = sets_.of(label.kinds);
  const bool full = old.size() >= most_kinds_;
  // With one kind to come, what is due of each lane must come from the old ones or from it: see narrow().
  if (choice != Choice::any || old.size() + 1 >= most_kinds_) {
    for (const int kind : old) {
      if (kind >= 0 && !repeat(index, kind)) return;
    }
  }
  if (full) return;
  if (choice == Choice::any) {
    follow(index);
    return;
  }
  for (const int kind : pool) {
    if (!std::binary_search(old.begin(), old.end(), kind) && !repeat(index, kind)) return;
  }
}

// A stop of this kind. A deed at a row is one wale's alone, and what a lane may do there holds all of the less that it
// may: each lane that can do something of the kind does the most it can, or the kind is not made. Whether to go on.
bool KindPass::repeat(std::uint32_t index, int kind) {
  const std::span<const int> wanted = deeds_.deeds_of(kind);
  const auto is_wanted = [&](int deed) { return std::binary_search(wanted.begin(), wanted.end(), deed); };
  const std::vector<int>& forced = at_row_[at(row_)];
  meter_.add(1 + std::ssize(forced));
  if (wanted.empty() || reach_.last_row(kind) < row_ || !std::all_of(forced.begin(), forced.end(), is_wanted))
    return heed();
  const Label label = labels_[index];
  std::int64_t cost = label.cost + problem_.stop_cost;
  std::int64_t bound = cost + forced_after_[at(row_)];
  std::size_t done = forced.size();
  std::int64_t looks = 0;
  for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
    const Way* most = nullptr;
    for (const Way& way : ways_->of(lane, standing_of(index)[lane])) {
      ++looks;
      if (most && way.deeds.count <= most->deeds.count) continue;
      const std::span<const int> mine = deeds_.of(way.deeds);
      if (std::all_of(mine.begin(), mine.end(), is_wanted)) most = &way;
    }
    if (most) {
      cost += most->cost;
      bound += most->cost + most->to_go;
    }
    if (!most || bound + rest_[lane + 1] >= best_.cost) {
      meter_.add(looks);
      return heed();
    }
    done += most->deeds.count;
    chosen_[lane] = most->to;
  }
  meter_.add(looks);
  if (done == wanted.size()) add_stop(cost, bound, index, label.kinds, sets_.with(label.kinds, kind));
  return heed();
}

// The plain ways to take a stop: every lane does what is due, or only those do that cannot wait, or, where the stop is
// forced, only these or none.
void KindPass::stop_with_what_is_due(std::uint32_t index) {
  const Label label = labels_[index];
  const bool full = sets_.size(label.kinds) >= most_kinds_;
  std::vector<Standing> before;
  for (const bool all : {true, false}) {
    std::int64_t cost = label.cost + problem_.stop_cost;
    std::int64_t bound = cost + forced_after_[at(row_)];
    done_ = at_row_[at(row_)];
    for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
      const Standing from = standing_of(index)[lane];
      const std::span<const Way> mine = ways_->of(lane, from);
      if (mine.empty()) return;
      const Way* taken = &mine.front();
      const int rank = from < 0 ? 1 : all ? 2 : 0;  // of a hold, to end it; else to stay, to hold or to re-form
      const auto worth = [&](const Way& way) {
        const int what = way.to == from ? 0 : way.to < 0 ? 1 : 2;
        return rank == 2 ? what : rank == 1 ? (what > 0 ? 1 : 0) : (what == 0 ? 2 : what == 1 ? 0 : 1);
      };
      for (const Way& way : mine) {
        if (worth(way) > worth(*taken)) taken = &way;
      }
      cost += taken->cost;
      bound += taken->cost + taken->to_go;
      chosen_[lane] = taken->to;
      const std::span<const int> deeds = deeds_.of(taken->deeds);
      done_.insert(done_.end(), deeds.begin(), deeds.end());
    }
    meter_.add(std::ssize(chosen_) + std::ssize(done_));
    if (bound >= best_.cost || done_.empty() || (!all && chosen_ == before)) continue;
    before = chosen_;
    const int kinds = sets_.with(label.kinds, deeds_.kind(done_));
    if (!full || kinds == label.kinds) add_stop(cost, bound, index, label.kinds, kinds);
  }
}

// With one kind to come, a lane that nobody else does the work of comes to its end with the old kinds and with what it
// does now, if this is the new kind. Whether a way is left.
bool KindPass::narrow(Choosing& lane, std::span<const int> old) {
  if (!reach_.on_its_own(lane.lane)) return true;
  for (std::size_t k = 0; k < lane.ways.size(); ++k) {
    const Way& way = lane.ways[k];
    const DeedList* more = way.deeds.count > 0 ? &way.deeds : nullptr;
    if (!reach_.can_end(lane.lane, way.to, row_, old, more)) lane.allowed &= ~(1U << k);
  }
  return lane.allowed != 0;
}

// The lanes that have several ways to take the stop, in choosing_; the others take theirs. Whether each has any.
bool KindPass::choose(std::uint32_t index, bool last_kind) {
  const Label& label = labels_[index];
  const std::span<const int> old = sets_.of(label.kinds);
  choosing_.clear();
  done_ = at_row_[at(row_)];
  Choosing all;
  all.cost = label.cost + problem_.stop_cost;
  all.bound = all.cost + forced_after_[at(row_)];
  for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
    Choosing mine;
    mine.lane = lane;
    mine.ways = ways_->of(lane, standing_of(index)[lane]);
    mine.allowed = (1U << mine.ways.size()) - 1;
    if (last_kind && !narrow(mine, old)) return false;
    if ((mine.allowed & (mine.allowed - 1)) != 0) {
      choosing_.push_back(mine);
      continue;
    }
    const Way& only = mine.ways[static_cast<std::size_t>(std::countr_zero(mine.allowed))];
    chosen_[lane] = only.to;
    all.cost += only.cost;
    all.bound += only.cost + only.to_go;
    const std::span<const int> deeds = deeds_.of(only.deeds);
    done_.insert(done_.end(), deeds.begin(), deeds.end());
  }
  std::int64_t rest = 0;
  for (std::size_t k = choosing_.size(); k-- > 0;) {
    Choosing& mine = choosing_[k];
    mine.rest = rest;
    const Way& cheapest = mine.ways[static_cast<std::size_t>(std::countr_zero(mine.allowed))];
    rest += cheapest.cost + cheapest.to_go;
  }
  // What the first begins with; where none chooses, what is done in all.
  if (choosing_.empty()) choosing_.push_back(all);
  choosing_.front().cost = all.cost;
  choosing_.front().bound = all.bound;
  choosing_.front().done = done_.size();
  meter_.add(reach_.take_work());
  return all.bound + rest < best_.cost;
}

// A whole stop, of the deeds in done_.
void KindPass::take(const Label& label, std::uint32_t index, bool repeated, std::int64_t cost, std::int64_t bound) {
  if (done_.empty()) return;               // a stop with nothing to do
  meter_.add(32 + 2 * std::ssize(done_));  // most are of a kind that is not known yet
  const int kinds = sets_.with(label.kinds, deeds_.kind(done_));
  if (!repeated || kinds != label.kinds) add_stop(cost, bound, index, label.kinds, kinds);
}

// A stop of any kind, or of any new kind where the old ones were repeated: lane by lane, depth first, each way cheapest
// first. Under every way that is not cut there is a whole one that is not, so that steps are no more than ways times
// lanes; only time may end it sooner.
void KindPass::follow(std::uint32_t index) {
  const Label label = labels_[index];
  const bool last_kind = sets_.size(label.kinds) + 1 >= most_kinds_;
  if (!choose(index, last_kind)) return;
  if (choosing_.front().ways.empty()) {
    take(label, index, last_kind, choosing_.front().cost, choosing_.front().bound);
    return;
  }
  std::size_t followed = 0;
  for (std::size_t k = 0; heed();) {
    Choosing& mine = choosing_[k];
    meter_.add(1);
    if (mine.next == mine.ways.size()) {
      if (k == 0) return;
      --k;
      continue;
    }
    const std::size_t number = mine.next++;
    if ((mine.allowed >> number & 1U) == 0) continue;
    const Way& way = mine.ways[number];
    const std::int64_t cost = mine.cost + way.cost;
    const std::int64_t bound = mine.bound + way.cost + way.to_go;
    const std::int64_t least = bound + mine.rest;
    const bool enough = followed >= most_ways_;
    if (least >= best_.cost || enough) {
      if (enough && least < best_.cost) {
        complete_ = false;
        left_out_ = std::min(left_out_, least);
      }
      mine.next = mine.ways.size();  // the others cost no less
      continue;
    }
    const std::span<const int> deeds = deeds_.of(way.deeds);
    done_.resize(mine.done);
    done_.insert(done_.end(), deeds.begin(), deeds.end());
    chosen_[mine.lane] = way.to;
    if (k + 1 == choosing_.size()) {
      ++followed;
      take(label, index, last_kind, cost, bound);
      continue;
    }
    Choosing& then = choosing_[++k];
    then.next = 0;
    then.done = done_.size();
    then.cost = cost;
    then.bound = bound;
  }
}

// Whether one of the labels kept, from this one on, does as well: it stands so, is no dearer, may stop as soon, and
// may do as much.
bool KindPass::beaten(std::uint32_t index, int same) {
  const std::size_t lanes = chosen_.size();
  const Standing* mine = next_standings_.data() + index * lanes;
  for (int looked = 0; same >= 0 && looked < most_alike_compared; same = before_[at(same)], ++looked) {
    compared_ += static_cast<std::int64_t>(lanes / 4 + most_kinds_);
    const Label& other = labels_[at(same)];
    if (other.free_from <= next_[index].free_from && sets_.allows_all(other.kinds, next_[index].kinds) &&
        std::equal(mine, mine + lanes, standing_of(static_cast<std::uint32_t>(same)))) {
      return true;
    }
  }
  return false;
}

// Of labels that stand alike those that none does as well as; of these the most promising, as many of each number of
// kinds used. Whether to go on.
bool KindPass::select(std::size_t width) {
  std::vector<std::uint32_t> sorted(next_.size());
  for (std::uint32_t i = 0; i < sorted.size(); ++i) sorted[i] = i;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [&](std::uint32_t a, std::uint32_t b) { return next_[a].bound < next_[b].bound; });
  const std::size_t lanes = chosen_.size();
  std::vector<std::size_t> taken(most_kinds_ + 1, 0);
  const std::size_t share = std::max<std::size_t>(1, width / (most_kinds_ + 1));
  labels_.clear();
  standings_.clear();
  before_.clear();
  alike_.clear();
  auto& parents = parents_.emplace_back();
  for (const std::uint32_t i : sorted) {
    if (!meter_.heed() || !meter_.limits().go_past(std::exchange(compared_, 0))) return false;
    Label& label = next_[i];
    label.kinds = sets_.without(label.kinds, [&](int kind) { return reach_.last_row(kind) <= row_; });
    const Standing* standing = next_standings_.data() + i * lanes;
    std::uint64_t sum = 0;
    for (std::size_t k = 0; k < lanes; ++k) {
      sum = (sum ^ static_cast<std::uint32_t>(standing[k])) * 0x100000001b3U;
      sum ^= sum >> 29U;
    }
    sum >>= 1U;  // no key is the greatest
    meter_.add(std::ssize(chosen_));
    const auto place = static_cast<int>(labels_.size());
    const int same = alike_.add(sum, -1).first;
    if (beaten(i, same)) continue;
    std::size_t& mine = taken[sets_.size(label.kinds)];
    if (mine >= share) {
      complete_ = false;
      left_out_ = std::min(left_out_, label.bound);
      continue;
    }
    ++mine;
    before_.push_back(alike_.exchange(sum, place));
    labels_.push_back(label);
    parents.push_back(label.parent);
    standings_.insert(standings_.end(), standing, standing + lanes);
  }
  standings_at_.push_back(standings_);
  labels_kept_ += labels_.size();
  next_.clear();
  next_standings_.clear();
  return true;
}

std::size_t KindPass::held() const {
  const std::size_t states = chosen_.size() * sizeof(Standing);
  return deeds_.kind_bytes() + sets_.bytes() + labels_kept_ * (sizeof(std::uint32_t) + states) +
         (labels_.size() + next_.size()) * (sizeof(Label) + states);
}

bool KindPass::heed() {
  meter_.hold(held());
  return meter_.heed();
}

// Most stops that were thought of are in no schedule that was kept. Their sets have no use any more, and sets in no
// order: they go whenever they have doubled. Kinds are repeated in the order of their numbers, so that one which is
// forgotten and comes again comes later: they go only where the memory is nearly full.
void KindPass::forget() {
  constexpr std::size_t few = std::size_t{1} << 20;
  meter_.hold(held());
  const bool crowded = meter_.crowded();
  if (!crowded && sets_.bytes() < 2 * sets_kept_ + few) return;
  std::vector<int> moved;
  if (crowded) {
    std::vector<char> wanted(at(deeds_.kind_count() - first_kind_), 0);
    for (const Label& label : labels_) {
      for (const int kind : sets_.of(label.kinds)) {
        if (kind >= first_kind_) wanted[at(kind - first_kind_)] = 1;
      }
    }
    moved = deeds_.keep(first_kind_, wanted, meter_.limits());
    reach_.forget_kinds(first_kind_);
  }
  KindSets sets;
  for (Label& label : labels_) label.kinds = sets.like(sets_, label.kinds, crowded ? first_kind_ : far_kind, moved);
  sets_ = std::move(sets);
  sets_kept_ = sets_.bytes();
}

void KindPass::take_end() {
  const Label* end = nullptr;
  for (const Label& label : labels_) {
    if (!end || label.cost < end->cost) end = &label;
  }
  if (!end || end->cost >= best_.cost) return;
  best_.cost = end->cost;
  best_.works.assign(chosen_.size(), {});
  auto index = static_cast<std::size_t>(end - labels_.data());
  for (int row = problem_.rows; row >= 0; --row) {
    const std::size_t below = parents_[at(row)][index];
    for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
      const Standing to = standings_at_[at(row)][index * chosen_.size() + lane];
      const Standing from = row > 0 ? standings_at_[at(row) - 1][below * chosen_.size() + lane] : 0;
      if (to == from || from < 0) continue;
      const int done = to >= 0 ? to : -1 - to;
      // From the top down: a hold that is set at this stop comes after the batch.
      if (to < 0) best_.works[lane].push_back({true, done, done, row});
      if (done > from) best_.works[lane].push_back({false, from, done - 1, row});
    }
    index = below;
  }
  for (auto& works : best_.works) std::reverse(works.begin(), works.end());
}

bool KindPass::run(std::size_t width, Choice choice, const std::set<int>& pool) {
  complete_ = true;
  left_out_ = far;
  most_ways_ = std::max(fewest_ways, width);
  labels_.assign(1, {});
  standings_.assign(chosen_.size(), 0);
  parents_.clear();
  standings_at_.clear();
  sets_ = KindSets();
  sets_kept_ = labels_kept_ = 0;
  first_kind_ = deeds_.kind_count();
  int stuck = -1;
  for (int row = 0; row <= problem_.rows; ++row) {
    meter_.hold(held());
    if (!meter_.go_on()) return false;
    enter(row);
    const bool forced = is_forced(problem_, row);
    const bool useful = !windows_.users[at(row)].empty();
    for (std::uint32_t i = 0; i < labels_.size(); ++i) {
      if (forced || (useful && row >= labels_[i].free_from)) {
        if (choice == Choice::due) {
          stop_with_what_is_due(i);
        } else {
          stop(i, choice, pool);
        }
      }
      if (!forced) stay(i);
      if (!heed()) return false;
    }
    if (!select(width)) return false;
    forget();
    if (labels_.empty() && stuck < 0) stuck = row;
  }
  take_end();
  labels_.clear();
  forget();
  if (!best_.found()) best_.stuck = stuck;
  return true;
}

// Half of the memory is for the labels of all rows: what each did, and how its lanes stand. The other half is for one
// row's ways on, of which no more are made than it holds.
std::size_t KindPass::room(const PlanOptions& options) {
  const std::size_t half = memory_of(options.memory_limit) / 2;
  const std::size_t states = chosen_.size() * sizeof(Standing);
  most_next_ = std::max<std::size_t>(64, half / (sizeof(Label) + states + 2 * sizeof(std::uint64_t) + 40));
  std::size_t kept = half / sizeof(Standing);
  constexpr std::size_t by_allowance = std::size_t{1} << 24;  // more than the search's own allowance of work can fill
  if (is_unlimited(options)) kept = std::min(kept, by_allowance);
  return std::max<std::size_t>(1, kept / (at(problem_.rows) + 1) / (chosen_.size() + 1));
}

}  // namespace latchwork::inline v0::planning
