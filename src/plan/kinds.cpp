#include "plan/kinds.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <unordered_map>

#include "plan/few_kinds.hpp"
#include "plan/inputs.hpp"
#include "plan/kind_sets.hpp"
#include "plan/kind_ways.hpp"
#include "plan/limits.hpp"
#include "plan/prices.hpp"

namespace latchwork::inline v0::planning {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

struct Label {
  std::int64_t cost = 0;
  std::int64_t bound = 0;
  std::uint32_t parent = 0;
  int kinds = 0;  // number of the set of kinds used so far
  int free_from = 0;
};

constexpr std::size_t most_ways_at_once = 512;    // ways to take one stop that are followed up from one label
constexpr std::int64_t most_work = 20'000'000;    // when no other limit is set
constexpr std::int64_t most_begun = 500'000;      // before it
constexpr std::int64_t most_descent = 2'000'000;  // from one start
constexpr std::int64_t most_proof = 10'000'000;   // that there is none
constexpr std::size_t proof_width = std::size_t{1} << 16;
constexpr std::size_t first_width = 64;
constexpr std::size_t widening = 16;
constexpr std::size_t due_width = 1024;

class KindSearch {
 public:
  KindSearch(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, int most,
             const PlanOptions& options, Limits& limits)
      : problem_(problem),
        deeds_(deeds),
        at_row_(at_row),
        most_kinds_(at(most)),
        options_(options),
        limits_(limits),
        few_(problem, deeds, at_row, at(most), limits),
        allowance_(options.work_limit == 0 ? most_work : far) {}

  Solved run();

 private:
  void begin();
  bool start(const Solved& plain);
  bool take_start();
  Solved proven();
  void prepare();
  bool rule_out();
  std::size_t room_for_labels();
  /// What a label may do at a stop.
  enum class Choice { due, pool, any };
  bool pass(std::size_t width, Choice choice);
  void enter(int row);
  void stay(std::uint32_t index);
  void stop(std::uint32_t index, Choice choice);
  void stop_with_what_is_due(std::uint32_t index);
  bool repeat(std::uint32_t index, int kind);
  void follow(std::uint32_t index);
  bool heed();
  void add(std::int64_t cost, std::int64_t bound, std::uint32_t parent, int kinds, int free_from);
  void select(std::size_t width);
  void take_end();
  bool go_on();

  const Problem& problem_;
  Deeds& deeds_;
  const std::vector<std::vector<int>>& at_row_;
  std::size_t most_kinds_;
  const PlanOptions& options_;
  Limits& limits_;
  FewKinds few_;
  std::int64_t allowance_;  // work of its own
  std::int64_t counted_ = 0;

  Solved best_;
  std::set<int> pool_;  // kinds of good plans
  std::vector<FewKinds::AllWorks> starts_;
  KindSets sets_;
  Windows windows_;
  std::optional<Prices> prices_;
  std::optional<KindWays> ways_;
  std::int64_t work_ = 0;
  std::vector<std::int64_t> forced_after_;

  // One pass.
  int row_ = 0;
  bool complete_ = true;
  bool broken_off_ = false;
  std::int64_t left_out_ = far;  // least bound of what was left aside
  std::size_t most_next_ = 0;
  std::vector<Label> labels_;
  std::vector<Standing> standings_;
  std::vector<Label> next_;
  std::vector<Standing> next_standings_;
  std::vector<std::vector<std::uint32_t>> parents_;  // per row, of the labels kept
  std::vector<std::vector<Standing>> standings_at_;  // per row, of the labels kept

  // One stop of one label.
  struct Step {
    const std::vector<Way>* ways = nullptr;
    std::size_t next = 0;
    std::size_t done = 0;  // deeds of the lanes before
    std::int64_t cost = 0;
    std::int64_t bound = 0;
  };
  std::vector<Standing> chosen_;
  std::vector<int> done_;
  std::vector<std::int64_t> rest_;  // least bound of the lanes from this one on
  std::vector<Step> steps_;         // per lane
};

bool KindSearch::go_on() {
  if (broken_off_) return false;
  limits_.now(bound_ms(problem_, best_.bound), best_.found() ? plan_ms(problem_, best_.cost) : -1, 0.5);
  broken_off_ = !limits_.go_on(work_ - counted_) || work_ > allowance_;
  counted_ = work_;
  return !broken_off_;
}

// The starts may have found a better one. Whether to go on.
bool KindSearch::take_start() {
  if (few_.best().cost < best_.cost) {
    best_.cost = few_.best().cost;
    best_.works = few_.best().works;
  }
  limits_.go_on(few_.take_work());  // none of the search's own allowance
  return go_on();
}

void KindSearch::enter(int row) {
  row_ = row;
  ways_->enter(row);
  next_.clear();
  next_standings_.clear();
}

void KindSearch::add(std::int64_t cost, std::int64_t bound, std::uint32_t parent, int kinds, int free_from) {
  if (next_.size() >= most_next_) {
    complete_ = false;
    left_out_ = std::min(left_out_, bound);
    return;
  }
  next_.push_back({cost, bound, parent, kinds, std::max(row_ + 1, free_from)});
  next_standings_.insert(next_standings_.end(), chosen_.begin(), chosen_.end());
}

void KindSearch::stay(std::uint32_t index) {
  const Label& label = labels_[index];
  const Standing* from = standings_.data() + index * chosen_.size();
  std::int64_t bound = label.cost + forced_after_[at(row_)];
  for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
    chosen_[lane] = from[lane];
    const std::int64_t go = ways_->to_go(lane, from[lane]);
    if (go >= far) return;
    bound += go;
  }
  work_ += static_cast<std::int64_t>(chosen_.size());
  if (bound < best_.cost) add(label.cost, bound, index, label.kinds, label.free_from);
}

void KindSearch::stop(std::uint32_t index, Choice choice) {
  const Standing* from = standings_.data() + index * chosen_.size();
  rest_.assign(chosen_.size() + 1, 0);
  for (std::size_t lane = chosen_.size(); lane-- > 0;) {
    const std::vector<Way>& mine = ways_->of(lane, from[lane]);
    if (mine.empty()) return;
    rest_[lane] = rest_[lane + 1] + mine.front().cost + ways_->to_go(lane, mine.front().to);
  }
  work_ += static_cast<std::int64_t>(chosen_.size());
  const Label& label = labels_[index];
  if (label.cost + problem_.stop_cost + forced_after_[at(row_)] + rest_[0] >= best_.cost) return;
  const std::vector<int> old = sets_.of(label.kinds);  // sets grow meanwhile
  const bool full = old.size() >= most_kinds_;
  if (choice == Choice::any && !full) {
    follow(index);
    return;
  }
  for (const int kind : old) {
    if (!repeat(index, kind)) return;
  }
  if (full) return;
  for (const int kind : pool_) {
    if (!std::binary_search(old.begin(), old.end(), kind) && !repeat(index, kind)) return;
  }
}

// Whether to go on, asked where much may have been done since.
bool KindSearch::heed() {
  return !broken_off_ && (work_ - counted_ < Limits::often || go_on());
}

// A stop of this kind. A deed at a row is one wale's alone, and what a lane may do there holds all of the less that it
// may: each lane that can do something of the kind does the most it can, or the kind is not made. Whether to go on.
bool KindSearch::repeat(std::uint32_t index, int kind) {
  const std::vector<int>& wanted = deeds_.deeds_of(kind);
  const auto is_wanted = [&](int deed) { return std::binary_search(wanted.begin(), wanted.end(), deed); };
  const std::vector<int>& forced = at_row_[at(row_)];
  work_ += 1 + static_cast<std::int64_t>(forced.size());
  if (wanted.empty() || !std::all_of(forced.begin(), forced.end(), is_wanted)) return heed();
  const Label label = labels_[index];
  std::int64_t cost = label.cost + problem_.stop_cost;
  std::int64_t bound = cost + forced_after_[at(row_)];
  std::size_t done = forced.size();
  for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
    const Way* most = nullptr;
    for (const Way& way : ways_->of(lane, standings_[index * chosen_.size() + lane])) {
      ++work_;
      if (most && way.deeds.size() <= most->deeds.size()) continue;
      if (std::all_of(way.deeds.begin(), way.deeds.end(), is_wanted)) most = &way;
    }
    if (!most) return heed();
    cost += most->cost;
    bound += most->cost + ways_->to_go(lane, most->to);
    if (bound + rest_[lane + 1] >= best_.cost) return heed();
    done += most->deeds.size();
    chosen_[lane] = most->to;
  }
  if (done == wanted.size()) {
    const int kinds = sets_.with(label.kinds, kind);
    if (sets_.of(kinds).size() <= most_kinds_) add(cost, bound, index, kinds, row_ + problem_.apart);
  }
  return heed();
}

// The plain ways to take a stop: every lane does what is due, or only those do that cannot wait, or, where the stop is
// forced, only these or none.
void KindSearch::stop_with_what_is_due(std::uint32_t index) {
  const Label label = labels_[index];
  const bool full = sets_.of(label.kinds).size() >= most_kinds_;
  std::vector<Standing> before;
  for (const bool all : {true, false}) {
    std::int64_t cost = label.cost + problem_.stop_cost;
    std::int64_t bound = cost + forced_after_[at(row_)];
    done_ = at_row_[at(row_)];
    for (std::size_t lane = 0; lane < chosen_.size(); ++lane) {
      const Standing from = standings_[index * chosen_.size() + lane];
      const std::vector<Way>& mine = ways_->of(lane, from);
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
      bound += taken->cost + ways_->to_go(lane, taken->to);
      chosen_[lane] = taken->to;
      done_.insert(done_.end(), taken->deeds.begin(), taken->deeds.end());
    }
    work_ += static_cast<std::int64_t>(chosen_.size() + done_.size());
    if (bound >= best_.cost || done_.empty() || (!all && chosen_ == before)) continue;
    before = chosen_;
    const int kinds = sets_.with(label.kinds, deeds_.kind(done_));
    if (full ? kinds == label.kinds : sets_.of(kinds).size() <= most_kinds_) {
      add(cost, bound, index, kinds, row_ + problem_.apart);
    }
  }
}

// A stop of any kind: lane by lane, depth first, each way cheapest first. Under every way that is not cut there is a
// whole one that is not, so that steps are no more than ways times lanes; only time may end it sooner.
void KindSearch::follow(std::uint32_t index) {
  const std::size_t lanes = chosen_.size();
  const Label label = labels_[index];
  const std::int64_t cost = label.cost + problem_.stop_cost;
  done_ = at_row_[at(row_)];
  std::size_t followed = 0;
  const auto step_to = [&](std::size_t lane, std::int64_t so_far, std::int64_t bound) {
    const Standing from = standings_[index * lanes + lane];
    steps_[lane] = {&ways_->of(lane, from), 0, done_.size(), so_far, bound};
  };
  const auto take = [&](std::int64_t whole, std::int64_t bound) {
    if (done_.empty()) return;  // a stop with nothing to do
    ++followed;
    work_ += static_cast<std::int64_t>(done_.size());
    const int kinds = sets_.with(label.kinds, deeds_.kind(done_));
    if (sets_.of(kinds).size() <= most_kinds_) add(whole, bound, index, kinds, row_ + problem_.apart);
  };
  if (lanes == 0) {
    take(cost, cost + forced_after_[at(row_)]);
    return;
  }
  steps_.resize(lanes);
  step_to(0, cost, cost + forced_after_[at(row_)]);
  for (std::size_t lane = 0; heed();) {
    Step& step = steps_[lane];
    ++work_;
    if (step.next == step.ways->size()) {
      if (lane == 0) return;
      --lane;
      continue;
    }
    const Way& way = (*step.ways)[step.next++];
    const std::int64_t so_far = step.cost + way.cost;
    const std::int64_t bound = step.bound + way.cost + ways_->to_go(lane, way.to);
    const std::int64_t least = bound + rest_[lane + 1];
    const bool enough = followed >= most_ways_at_once;
    if (least >= best_.cost || enough) {
      if (enough && least < best_.cost) {
        complete_ = false;
        left_out_ = std::min(left_out_, least);
      }
      step.next = step.ways->size();  // the others cost no less
      continue;
    }
    done_.resize(step.done);
    done_.insert(done_.end(), way.deeds.begin(), way.deeds.end());
    chosen_[lane] = way.to;
    if (lane + 1 == lanes) {
      take(so_far, bound);
    } else {
      step_to(++lane, so_far, bound);
    }
  }
}

// Of labels that stand alike with the same kinds the cheapest; of the rest the most promising, as many of each number
// of kinds used.
void KindSearch::select(std::size_t width) {
  std::vector<std::uint32_t> sorted(next_.size());
  for (std::uint32_t i = 0; i < sorted.size(); ++i) sorted[i] = i;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [&](std::uint32_t a, std::uint32_t b) { return next_[a].bound < next_[b].bound; });
  const std::size_t lanes = chosen_.size();
  const auto standing = [&](std::uint32_t i) { return next_standings_.data() + i * lanes; };
  const auto hash_of = [&](std::uint32_t i) {
    std::uint64_t hash = 0xcbf29ce484222325U ^ static_cast<std::uint64_t>(next_[i].kinds);
    for (std::size_t k = 0; k < lanes; ++k) {
      hash = (hash ^ static_cast<std::uint64_t>(static_cast<std::uint32_t>(standing(i)[k]))) * 0x100000001b3U;
      hash ^= hash >> 29;
    }
    return hash;
  };
  std::unordered_multimap<std::uint64_t, std::uint32_t> same;  // looked up only
  std::vector<std::size_t> taken(most_kinds_ + 1, 0);
  const std::size_t share = std::max<std::size_t>(1, width / (most_kinds_ + 1));
  std::vector<std::uint32_t> kept;
  for (const std::uint32_t i : sorted) {
    const std::uint64_t hash = hash_of(i);
    const auto [begin, end] = same.equal_range(hash);
    bool beaten = false;
    for (auto other = begin; other != end && !beaten; ++other) {
      const std::uint32_t k = other->second;
      beaten = next_[k].kinds == next_[i].kinds && next_[k].free_from <= next_[i].free_from &&
               std::equal(standing(k), standing(k) + lanes, standing(i));
    }
    work_ += static_cast<std::int64_t>(lanes);
    if (beaten) continue;
    same.emplace(hash, i);
    std::size_t& mine = taken[sets_.of(next_[i].kinds).size()];
    if (mine >= share) {
      complete_ = false;
      left_out_ = std::min(left_out_, next_[i].bound);
      continue;
    }
    ++mine;
    kept.push_back(i);
  }
  labels_.clear();
  standings_.clear();
  auto& parents = parents_.emplace_back();
  for (const std::uint32_t i : kept) {
    labels_.push_back(next_[i]);
    parents.push_back(next_[i].parent);
    standings_.insert(standings_.end(), standing(i), standing(i) + lanes);
  }
  standings_at_.push_back(standings_);
}

void KindSearch::take_end() {
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

// Whether it came to an end.
bool KindSearch::pass(std::size_t width, Choice choice) {
  complete_ = true;
  left_out_ = far;
  labels_.assign(1, {});
  standings_.assign(chosen_.size(), 0);
  parents_.clear();
  standings_at_.clear();
  int stuck = -1;
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!go_on()) return false;
    enter(row);
    const bool forced = is_forced(problem_, row);
    const bool useful = !windows_.users[at(row)].empty();
    for (std::uint32_t i = 0; i < labels_.size(); ++i) {
      if (forced || (useful && row >= labels_[i].free_from)) {
        if (choice == Choice::due) {
          stop_with_what_is_due(i);
        } else {
          stop(i, choice);
        }
      }
      if (!forced) stay(i);
      if (!heed()) return false;
    }
    select(width);
    if (labels_.empty() && stuck < 0) stuck = row;
  }
  take_end();
  if (!best_.found()) best_.stuck = stuck;
  return true;
}

Solved KindSearch::proven() {
  if (best_.proven && best_.found()) best_.bound = best_.cost;
  return best_;
}

// Labels that a row may keep within half the memory that is allowed: what each did, and how its lanes stand, is kept
// for every row. The other half is for one row's ways on, of which no more are made than it holds.
std::size_t KindSearch::room_for_labels() {
  constexpr std::int64_t usual = std::int64_t{1} << 30;
  const auto half = static_cast<std::size_t>(options_.memory_limit > 0 ? options_.memory_limit : usual) / 2;
  const std::size_t states = chosen_.size() * sizeof(Standing);
  most_next_ = std::max<std::size_t>(64, half / (sizeof(Label) + states + 2 * sizeof(std::uint64_t) + 40));
  // No wider than the search's allowance of work can fill.
  constexpr std::size_t most_kept = std::size_t{1} << 24;
  const std::size_t kept = std::min(most_kept, half / sizeof(Standing));
  return std::max<std::size_t>(1, kept / (at(problem_.rows) + 1) / (chosen_.size() + 1));
}

// Whatever ends the search, there is a plan where one is cheap to have.
void KindSearch::begin() {
  FewKinds first(problem_, deeds_, at_row_, most_kinds_, limits_);
  FewKinds::AllWorks latest = first.find_any(most_begun);
  best_.cost = first.best().cost;
  best_.works = first.best().works;
  if (!latest.empty()) starts_.push_back(std::move(latest));
  limits_.go_on(first.take_work());
  go_on();
}

// What the search begins with: good schedules, some of few kinds, and their kinds. Whether to go on.
bool KindSearch::start(const Solved& plain) {
  if (few_.consider(plain.works, &pool_) && plain.cost <= best_.cost) {
    best_.cost = plain.cost;  // of equals the plan without the limit
    best_.works = plain.works;
  }
  // Where the plain search was ended there is no time for more.
  if (!take_start()) return false;
  few_.try_rhythms(pool_, starts_);
  if (!take_start()) return false;
  if (best_.found()) few_.consider(best_.works, &pool_);
  for (FewKinds::AllWorks& works : few_.with_few_stops(plain.works, options_)) starts_.push_back(std::move(works));
  if (!take_start()) return false;
  // The best of each start, before anything is searched for: most panels have no plan of few kinds by chance.
  starts_.insert(starts_.begin(), plain.works);
  for (const FewKinds::AllWorks& works : starts_) {
    if (best_.found() && best_.cost <= best_.bound) break;
    few_.descend(works, most_descent);
    if (!take_start()) return false;
  }
  if (best_.found()) few_.consider(best_.works, &pool_);
  return true;
}

// Below a pass: where each lane may stand, and what its way to go costs at least.
void KindSearch::prepare() {
  chosen_.assign(problem_.lanes.size(), 0);
  windows_ = windows_of(problem_);
  work_ += static_cast<std::int64_t>(chosen_.size()) * problem_.rows;
  prices_.emplace(problem_, windows_);
  ways_.emplace(problem_, deeds_, windows_, *prices_);
  forced_after_.assign(at(problem_.rows) + 1, 0);
  for (int row = problem_.rows; row > 0; --row) {
    forced_after_[at(row) - 1] = forced_after_[at(row)] + (is_forced(problem_, row) ? problem_.stop_cost : 0);
  }
}

// Whether some of the lanes alone need more kinds: a schedule for all of them, seen at these, has no more kinds than it
// has in all. Few lanes take a stop in few ways, so that all of them can be looked at.
bool KindSearch::rule_out() {
  const Limits::Aside aside(limits_);
  std::vector<std::size_t> order(problem_.lanes.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return problem_.lanes[a].task_count() > problem_.lanes[b].task_count();
  });
  Problem part = problem_;
  part.lanes.clear();
  std::int64_t left = most_proof;
  for (const std::size_t lane : order) {
    if (!go_on()) return false;
    part.lanes.push_back(problem_.lanes[lane]);
    KindSearch few(part, deeds_, at_row_, static_cast<int>(most_kinds_), options_, limits_);
    few.allowance_ = left;
    few.prepare();
    if (!few.pass(std::min(few.room_for_labels(), proof_width), Choice::any) || !few.complete_) return false;
    left -= few.work_;
    if (few.best_.found()) continue;
    best_.proven = true;
    best_.stuck = few.best_.stuck;
    return true;
  }
  return false;
}

Solved KindSearch::run() {
  // Without the limit: a bound, and a plan that may keep it as it is.
  begin();
  const Solved plain = [&] {
    const Limits::Aside aside(limits_);
    return solve(problem_, options_, limits_);
  }();
  best_.bound = std::min(plain.bound, best_.cost);
  if (!plain.found()) {
    best_.proven = plain.proven && !best_.found();
    best_.stuck = plain.stuck;
    return best_;
  }
  if (!start(plain)) return best_;
  const auto settled = [&] { return best_.found() && best_.cost <= best_.bound; };
  best_.proven = settled();
  if (best_.proven) return proven();
  prepare();
  for (int i = 0; i < 8; ++i) {
    if (!go_on()) return best_;
    const std::int64_t before = prices_->work();
    prices_->ascend(&limits_);
    work_ += prices_->work() - before;
  }
  if (!go_on()) return best_;
  const std::size_t room = room_for_labels();
  if (!settled() && go_on()) pass(std::min(room, due_width), Choice::due);
  if (best_.found()) few_.consider(best_.works, &pool_);
  if (!settled() && go_on()) pass(std::min(room, first_width), Choice::pool);
  if (!best_.found() && rule_out()) return best_;
  // All that may be done, as wide as the work that is left allows.
  for (std::size_t width = std::min(room, first_width); !settled() && !best_.proven && !broken_off_;) {
    const std::int64_t before = work_;
    if (!pass(width, Choice::any)) break;
    best_.bound = std::max(best_.bound, std::min(left_out_, best_.cost));
    best_.proven = complete_;
    const std::int64_t limit = options_.work_limit > 0 ? options_.work_limit - limits_.work() : most_work - work_;
    // No more than widens at once: a limit that is hardly one, times the width, has no room in a number.
    const auto times = std::min<std::size_t>(
        widening,
        static_cast<std::size_t>(std::max<std::int64_t>(0, limit) / std::max<std::int64_t>(1, work_ - before)));
    const std::size_t wider = std::min(room, width * times);
    if (wider < 2 * width) break;
    width = wider;
  }
  best_.proven = best_.proven || settled();
  return proven();
}

}  // namespace

Solved solve_kinds(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, int most,
                   const PlanOptions& options, Limits& limits) {
  return KindSearch(problem, deeds, at_row, most, options, limits).run();
}

}  // namespace latchwork::inline v0::planning
