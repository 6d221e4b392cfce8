#include "plan/kinds.hpp"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "plan/few_kinds.hpp"
#include "plan/index.hpp"
#include "plan/inputs.hpp"
#include "plan/kind_pass.hpp"
#include "plan/limits.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr std::int64_t most_work = 20'000'000;     // where nobody limits it
constexpr std::int64_t most_begun_with = 500'000;  // before it
constexpr std::int64_t most_descent = 2'000'000;   // from one start
constexpr std::int64_t most_proof = 10'000'000;    // that there is none
constexpr std::size_t proof_width = std::size_t{1} << 16;
constexpr std::size_t first_pool_width = 64;
constexpr std::size_t pool_widening = 16;
constexpr std::size_t due_width = 1024;

class KindSearch {
 public:
  KindSearch(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, int most,
             const PlanOptions& options, Limits& limits, const Plan* plain)
      : problem_(problem),
        deeds_(deeds),
        at_row_(at_row),
        most_kinds_(at(most)),
        options_(options),
        limits_(limits),
        plain_(plain),
        few_(problem, deeds, at_row, at(most), limits),
        meter_(problem, best_, limits, is_unlimited(options) ? most_work : far, options.memory_limit),
        pass_(problem, deeds, at_row, at(most), best_, meter_) {}

  Solved run();

 private:
  using Choice = KindPass::Choice;

  void begin();
  Solved without_limit();
  bool start(const Solved& plain);
  bool take_start();
  Solved proven();
  bool settled() const;
  bool rule_out();

  const Problem& problem_;
  Deeds& deeds_;
  const std::vector<std::vector<int>>& at_row_;
  std::size_t most_kinds_;
  const PlanOptions& options_;
  Limits& limits_;
  const Plan* plain_;
  FewKinds few_;

  Solved best_;
  KindMeter meter_;
  KindPass pass_;
  std::set<int> pool_;  // kinds of good plans
  std::vector<FewKinds::AllWorks> starts_;
};

// The starts may have found a better one. Whether to go on.
bool KindSearch::take_start() {
  if (few_.best().cost < best_.cost) {
    best_.cost = few_.best().cost;
    best_.works = few_.best().works;
  }
  limits_.go_on(few_.take_work());  // none of the search's own allowance
  return meter_.go_on();
}

// Whether none can take less time than the best.
bool KindSearch::settled() const {
  return best_.found() && best_.bound > below(problem_, best_.cost);
}

Solved KindSearch::proven() {
  if (best_.proven && best_.found()) best_.bound = best_.cost;
  return best_;
}

// Whatever ends the search, there is a plan where one is cheap to have.
void KindSearch::begin() {
  FewKinds first(problem_, deeds_, at_row_, most_kinds_, limits_);
  FewKinds::AllWorks latest = first.find_any(most_begun_with);
  best_.cost = first.best().cost;
  best_.works = first.best().works;
  if (!latest.empty()) starts_.push_back(std::move(latest));
  limits_.go_on(first.take_work());
  meter_.go_on();
}

// The least schedule of any number of kinds.
Solved KindSearch::without_limit() {
  if (plain_ && plain_->status != PlanStatus::infeasible) {
    std::vector<char> stops = problem_.forced;
    for (const Stop& stop : plain_->stops) stops[at(stop.row)] = 1;
    Solved known;
    known.cost = cost_of(problem_, stops);
    known.proven = plain_->status == PlanStatus::optimal;
    const std::int64_t bound = (plain_->bound_ms - problem_.fixed_ms) * problem_.unit;
    known.bound = known.proven ? known.cost : std::min(known.cost, bound);
    known.works.reserve(problem_.lanes.size());
    const StopRows laid_out = stop_rows(std::move(stops));
    for (const Lane& lane : problem_.lanes) known.works.push_back(works_of(lane, laid_out).list);
    limits_.go_on(std::ssize(problem_.lanes) * problem_.rows);
    return known;
  }
  const Limits::Aside aside(limits_);
  return solve(problem_, options_, limits_, Late::has_none);
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
    if (settled()) break;
    few_.descend(works, most_descent);
    if (!take_start()) return false;
  }
  if (best_.found()) few_.consider(best_.works, &pool_);
  return true;
}

// Whether some of the lanes alone need more kinds: a schedule for all of them, seen at these, has no more kinds than it
// has in all, as long as nothing that these do is done by another, at whose stop it would be left out. So lanes of one
// party go together, and before all others those that do what is forced as well, which is never left out. Few lanes
// take a stop in few ways, so that all of them can be looked at.
bool KindSearch::rule_out() {
  const Limits::Aside aside(limits_);
  std::vector<std::size_t> order(problem_.lanes.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::vector<int> tasks(order.size(), 0);  // per party: the most of a lane
  for (std::size_t i = 0; i < order.size(); ++i) {
    int& most = tasks[pass_.party(i)];
    most = std::max(most, problem_.lanes[i].task_count());
  }
  const auto rank = [&](std::size_t lane) {
    return std::tuple(!pass_.with_forced(lane), -tasks[pass_.party(lane)], pass_.party(lane));
  };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  Problem part = problem_;
  part.lanes.clear();
  std::int64_t left = most_proof;
  for (std::size_t i = 0; i < order.size(); ++i) {
    part.lanes.push_back(problem_.lanes[order[i]]);
    if (i + 1 < order.size() && pass_.party(order[i + 1]) == pass_.party(order[i])) continue;
    if (!meter_.go_on()) return false;
    Solved best;
    KindMeter meter(part, best, limits_, left, options_.memory_limit);
    KindPass few(part, deeds_, at_row_, most_kinds_, best, meter);
    if (!few.prepare()) return false;
    if (!few.run(std::min(few.room(options_), proof_width), Choice::any) || !few.complete()) return false;
    left -= meter.work();
    if (best.found()) continue;
    best_.proven = true;
    best_.stuck = best.stuck;
    return true;
  }
  return false;
}

Solved KindSearch::run() {
  // Without the limit: a bound, and a plan that may keep it as it is.
  begin();
  if (limits_.over()) {  // to lay out the search for the other would take long
    for (int row = 0; row <= problem_.rows; ++row) best_.bound += is_forced(problem_, row) ? problem_.stop_cost : 0;
    best_.bound = std::min(best_.bound, best_.cost);
    return best_;
  }
  const Solved plain = without_limit();
  best_.bound = std::min(plain.bound, best_.cost);
  if (!plain.found()) {
    best_.proven = plain.proven && !best_.found();
    best_.stuck = plain.stuck;
    return best_;
  }
  if (!start(plain)) return best_;
  best_.proven = settled();
  if (best_.proven) return proven();
  if (!pass_.prepare()) return best_;
  const std::size_t room = pass_.room(options_);
  if (!settled() && meter_.go_on()) pass_.run(std::min(room, due_width), Choice::due);
  if (best_.found()) few_.consider(best_.works, &pool_);
  if (!settled() && meter_.go_on()) pass_.run(std::min(room, first_pool_width), Choice::pool, pool_);
  if (!best_.found() && rule_out()) return best_;
  // All that may be done, as wide as the work that is left allows.
  for (std::size_t width = std::min(room, first_pool_width); !settled() && !best_.proven && !meter_.ended();) {
    const std::int64_t before = meter_.work();
    meter_.begin();
    if (!pass_.run(width, Choice::any)) break;
    best_.bound = std::max(best_.bound, std::min(pass_.left_out(), best_.cost));
    best_.proven = pass_.complete();
    std::int64_t limit = far;
    if (options_.work_limit > 0) limit = options_.work_limit - limits_.work();
    if (is_unlimited(options_)) limit = most_work - meter_.work();
    // No more than widens at once: a limit that is hardly one, times the width, has no room in a number.
    const auto times = std::min<std::size_t>(
        pool_widening,
        static_cast<std::size_t>(std::max<std::int64_t>(0, limit) / std::max<std::int64_t>(1, meter_.work() - before)));
    // Where rows are less than full, more than room() has a place.
    const std::size_t spare = width * std::min(pool_widening, meter_.times_room());
    const std::size_t most = std::max(room, spare);
    const std::size_t wider = std::min(most, width * times);
    best_.out_of_allowance = is_unlimited(options_) && width * times <= most;
    if (wider < width + width / 2) break;
    width = wider;
  }
  best_.out_of_allowance = best_.out_of_allowance || meter_.out_of_allowance();
  best_.proven = best_.proven || settled();
  return proven();
}

}  // namespace

Solved solve_kinds(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, int most,
                   const PlanOptions& options, Limits& limits, const Plan* plain) {
  return KindSearch(problem, deeds, at_row, most, options, limits, plain).run();
}

}  // namespace latchwork::inline v0::planning
