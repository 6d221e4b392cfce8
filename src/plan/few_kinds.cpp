#include "plan/few_kinds.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "plan/index.hpp"
#include "plan/rhythm.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr int most_dearer = 24;                   // 1.5 to the power of this is 16,000
constexpr int most_unchanged = 4;                 // times dearer without a stop less
constexpr std::int64_t dearer_work = 500'000;     // for each
constexpr std::int64_t unheeded = 200'000;        // rungs seen, wale by wale, between two looks at the clock
constexpr std::int64_t first_unheeded = 300'000;  // and before the first: some milliseconds, whatever the limits

}  // namespace

FewKinds::FewKinds(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, std::size_t most,
                   Limits& limits)
    : problem_(problem),
      deeds_(deeds),
      at_row_(at_row),
      most_(most),
      limits_(limits),
      unheeded_(limits.long_over() ? 0 : first_unheeded) {
  forced_sums_.reserve(at_row.size());
  for (const std::vector<int>& forced : at_row) forced_sums_.push_back(Deeds::sum_of(forced));
  only_own_ = at_row == deeds.forced();
}

// No fewer kinds than so many, by a look that takes no time: on a large panel few schedules have few, and only these
// are worth the numbering of their deeds. Not known beside wales that are kept to a rhythm: what one of them does,
// whose rungs are in its number, may be at another stop what a lane does.
std::size_t FewKinds::fewest_kinds(const AllWorks& works) {
  if (!only_own_) return 0;
  sums_ = forced_sums_;
  flags_ = problem_.forced;
  for (std::size_t lane = 0; lane < works.size(); ++lane) {
    const Lane& worked = problem_.lanes[lane];
    for (const Work& work : works[lane]) {
      flags_[at(work.stop)] = 1;
      if (work.hold) {
        const int last = worked.task(work.first).high - 1;
        flags_[at(last)] = 1;
        sums_[at(work.stop)] += deeds_.outline_of_hold(worked, work.first, false);
        sums_[at(last)] += deeds_.outline_of_hold(worked, work.first, true);
      } else {
        sums_[at(work.stop)] += deeds_.outline_of_batch(worked, work.first, work.stop);
      }
    }
    work_ += std::ssize(works[lane]);
  }
  std::size_t stops = 0;  // their sums first in sums_
  for (int row = 0; row <= problem_.rows; ++row) {
    if (flags_[at(row)]) sums_[stops++] = sums_[at(row)];
  }
  return different(stops);
}

// How many of the first sums are different.
std::size_t FewKinds::different(std::size_t count) {
  const auto end = sums_.begin() + static_cast<std::ptrdiff_t>(count);
  std::sort(sums_.begin(), end);
  return static_cast<std::size_t>(std::unique(sums_.begin(), end) - sums_.begin());
}

// What a schedule costs, stops that nothing needs left out, and how many sums its stops' deeds have: kinds, but for a
// chance that consider() does not leave to itself. far when stops are too near each other.
FewKinds::Seen FewKinds::look(const AllWorks& works) {
  if (out_of_time_) return {};
  sums_ = forced_sums_;
  flags_ = problem_.forced;
  Seen seen{0, 0, 0};
  for (std::size_t lane = 0; lane < works.size(); ++lane) {
    const Lane& worked = problem_.lanes[lane];
    if (!heed(works[lane], worked)) return {};
    for (const Work& work : works[lane]) {
      flags_[at(work.stop)] = 1;
      if (work.hold) {
        const int last = worked.task(work.first).high - 1;
        flags_[at(last)] = 1;
        sums_[at(work.stop)] += deeds_.hold(worked, work.first).sum;
        sums_[at(last)] += deeds_.release(worked, work.first).sum;
        seen.cost += worked.hold;
      } else {
        sums_[at(work.stop)] += deeds_.batch(worked, work.first, work.stop).sum;
        seen.cost += worked.batch_cost(work.first, work.stop);
      }
    }
    work_ += 4 * std::ssize(works[lane]);
  }
  int last = -1;
  bool far_enough = true;
  std::size_t stops = 0;  // their sums first in sums_
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!flags_[at(row)]) continue;
    seen.cost += problem_.stop_cost;
    const bool forced = is_forced(problem_, row) && (last < 0 || is_forced(problem_, last));
    far_enough = far_enough && (last < 0 || forced || row - last >= problem_.apart);
    last = row;
    sums_[stops++] = sums_[at(row)];
  }
  seen.stops = stops;
  seen.kinds = different(stops);
  if (!far_enough) seen.cost = far;
  work_ += problem_.rows + 1;
  return seen;
}

// Deeds are numbered when they are first seen, rung by rung, which on a large panel takes long. Whether there is time
// to look at a lane's.
bool FewKinds::heed(const std::vector<Work>& works, const Lane& lane) {
  for (const Work& work : works) {
    const int low = lane.task(work.first).low;
    unheeded_ -= std::ssize(lane.wales) * (work.hold ? 1 : work.stop - low + 2);
  }
  return heed();
}

bool FewKinds::heed() {
  if (unheeded_ > 0) return true;
  unheeded_ = unheeded;
  out_of_time_ = out_of_time_ || limits_.over();
  return !out_of_time_;
}

// The numbers of all kinds of stop of a schedule.
std::set<int> FewKinds::kinds_of(const AllWorks& works) {
  std::vector<std::vector<int>> deeds = at_row_;
  for (std::size_t lane = 0; lane < works.size(); ++lane) add_deeds(deeds_, problem_.lanes[lane], works[lane], deeds);
  std::set<int> kinds;
  for (std::vector<int>& done : deeds) {
    work_ += 1 + std::ssize(done);
    if (!done.empty()) kinds.insert(deeds_.kind(std::move(done)));
  }
  return kinds;
}

FewKinds::Seen FewKinds::look(const std::vector<char>& stops) {
  works_.resize(problem_.lanes.size());
  const StopRows laid_out = stop_rows(stops);
  for (std::size_t lane = 0; lane < works_.size(); ++lane) {
    const Lane& worked = problem_.lanes[lane];
    Works mine = works_of(worked, laid_out);
    work_ += problem_.rows / 4 + worked.task_count();
    if (mine.cost >= far) return {};
    works_[lane] = std::move(mine.list);
  }
  return look(works_);
}

bool FewKinds::better(const Seen& a, const Seen& b) const {
  const auto key = [&](const Seen& seen) {
    const bool many = seen.kinds > most_;
    return std::tuple(seen.cost >= far, std::max(seen.kinds, most_), many ? seen.stops : 0, seen.cost);
  };
  return key(a) < key(b);
}

bool FewKinds::consider(const AllWorks& works, std::set<int>* kinds) {
  if (!kinds && fewest_kinds(works) > most_) return false;
  const Seen seen = look(works);
  if (out_of_time_) return false;
  const bool better = seen.kinds <= most_ && seen.cost < best_.cost;
  if (!better && !kinds) return false;
  const std::set<int> used = kinds_of(works);
  if (kinds) kinds->insert(used.begin(), used.end());
  if (!better || used.size() > most_) return false;
  best_.cost = seen.cost;
  best_.works = works;
  return true;
}

bool FewKinds::descend(const AllWorks& works, std::int64_t most_work) {
  std::vector<char> stops = problem_.forced;
  for (std::size_t lane = 0; lane < works.size(); ++lane) {
    for (const Work& work : works[lane]) {
      stops[at(work.stop)] = 1;
      if (work.hold) stops[at(problem_.lanes[lane].task(work.first).high - 1)] = 1;
    }
  }
  Seen now = look(stops);
  if (now.cost < far) consider(AllWorks(works_));
  const auto flip = [&](int row) { stops[at(row)] = stops[at(row)] ? 0 : 1; };
  const auto free = [&](int row) { return row >= 0 && row <= problem_.rows && !is_forced(problem_, row); };
  // Once round the rows without a better one ends it.
  int since = 0;
  for (int row = problem_.rows; since <= problem_.rows; row = row > 0 ? row - 1 : problem_.rows) {
    ++since;
    if (!free(row)) continue;
    for (const int other : {row, row - 1, row + 1}) {
      // The stop itself, or moved there.
      if (other != row && (!stops[at(row)] || !free(other) || stops[at(other)])) continue;
      flip(row);
      if (other != row) flip(other);
      const Seen then = look(stops);
      const bool taken = better(then, now);
      if (taken) {
        now = then;
        since = 0;
        if (now.kinds <= most_) consider(AllWorks(works_));
      } else {
        flip(row);
        if (other != row) flip(other);
      }
      most_work -= work_;
      if (!limits_.go_on(take_work())) return false;
      if (most_work <= 0) return true;
      if (taken) break;
    }
  }
  return true;
}

FewKinds::AllWorks FewKinds::latest() {
  AllWorks works(problem_.lanes.size());
  std::vector<int> standing(problem_.lanes.size(), 0);
  // From each stop on, the next is the last row at which every lane that must can still do what it is due.
  while (true) {
    unheeded_ -= std::ssize(works);
    if (!heed()) return {};
    int row = problem_.rows + 1;
    for (std::size_t lane = 0; lane < works.size(); ++lane) {
      const Lane& worked = problem_.lanes[lane];
      if (standing[lane] < worked.task_count()) row = std::min(row, worked.task(standing[lane]).last_stop);
    }
    if (row > problem_.rows) return works;
    bool moved = false;
    for (std::size_t lane = 0; row > 0 && lane < works.size(); ++lane) {
      const Lane& worked = problem_.lanes[lane];
      const int done = worked.done_at(row);
      if (standing[lane] >= worked.task_count() || done <= standing[lane]) continue;
      works[lane].push_back({false, standing[lane], done - 1, row});
      standing[lane] = done;
      moved = true;
    }
    if (!moved) return {};  // what only a held needle makes
  }
}

FewKinds::AllWorks FewKinds::find_any(std::int64_t most_work) {
  AllWorks late = latest();
  work_ += problem_.rows;
  if (late.empty() || consider(late)) return late;
  AllWorks works(problem_.lanes.size());
  if (put_in_rhythm(works, 1, 1) < far && consider(works)) return late;  // each as soon as can be
  if (out_of_time_) return late;
  std::set<int> stops;
  for (const std::vector<Work>& mine : late) {
    for (const Work& work : mine) stops.insert(work.stop);
  }
  // Hardly fewer stops than these will do, and a rhythm has them this far apart.
  const int most = stops.size() > 1 ? (problem_.rows - 1) / (static_cast<int>(stops.size()) - 1) : problem_.rows;
  for (int every = most; every >= 1; --every) {
    for (int first = 1; first <= std::min(latest_first(), every); ++first) {
      if (put_in_rhythm(works, every, first) < far && consider(works)) return late;
      most_work -= work_;
      if (!limits_.go_on(take_work()) || most_work <= 0) return late;
    }
  }
  return late;
}

// The last row at which the first stop of a rhythm may be.
int FewKinds::latest_first() const {
  int latest = problem_.rows;
  for (const Lane& lane : problem_.lanes) {
    for (const Task& task : lane.tasks) {
      if (task.by_batch()) latest = std::min(latest, task.last_stop);
    }
  }
  return latest;
}

// What these works cost, without stops; far when one cannot be made in the rhythm.
std::int64_t FewKinds::put_in_rhythm(AllWorks& works, int every, int first) {
  work_ += 1 + static_cast<std::int64_t>(works.size()) * (problem_.rows / every + 1);
  std::int64_t cost = 0;
  for (std::size_t lane = 0; lane < works.size(); ++lane) {
    Works mine = works_in_rhythm(problem_.lanes[lane], {every, first}, problem_.rows);
    if (mine.cost >= far) return far;
    works[lane] = std::move(mine.list);
    cost += mine.cost;
  }
  return cost;
}

void FewKinds::try_rhythms(std::set<int>& kinds, std::vector<AllWorks>& starts) {
  const int latest = latest_first();
  std::vector<std::tuple<std::int64_t, int, int>> cheapest;
  AllWorks works(problem_.lanes.size());
  for (int every = problem_.rows; every >= 1; --every) {
    for (int first = 1; first <= std::min(latest, every + latest / 2); ++first) {
      const std::int64_t cost = put_in_rhythm(works, every, first);
      if (cost < far) {
        consider(works);
        cheapest.emplace_back(cost, every, first);
      }
      if (!limits_.go_on(take_work())) return;
    }
  }
  std::sort(cheapest.begin(), cheapest.end());
  for (std::size_t i = 0; i < std::min<std::size_t>(4, cheapest.size()); ++i) {
    put_in_rhythm(works, std::get<1>(cheapest[i]), std::get<2>(cheapest[i]));
    consider(works, &kinds);
    starts.push_back(works);
  }
}

std::vector<FewKinds::AllWorks> FewKinds::with_few_stops(const AllWorks& plain, const PlanOptions& options) {
  std::vector<AllWorks> found;
  Seen least = look(plain);
  Problem dear = problem_;
  const std::int64_t step = problem_.step_ms;  // what totals differ by: it is to divide a stop still
  std::int64_t stop_ms = std::max(step, problem_.stop_cost / problem_.unit);
  std::size_t stops = least.stops;
  int unchanged = 0;
  for (int i = 0; i < most_dearer && unchanged < most_unchanged && limits_.go_on(take_work()); ++i) {
    stop_ms += std::max(step, stop_ms / 2 / step * step);
    if (stop_ms > far / 4 / problem_.unit / problem_.unit) break;  // unit: rows + 2
    dear.stop_cost = stop_ms * problem_.unit + 1;
    PlanOptions own = options;
    own.progress = {};
    own.work_limit = dearer_work;
    if (options.work_limit > 0) {
      own.work_limit = std::clamp(options.work_limit - limits_.work(), std::int64_t{1}, dearer_work);
    }
    Limits limits(own, limits_);
    Solved solved = solve(dear, own, limits, Late::has_none);
    work_ += limits.work();
    if (!solved.found()) continue;
    consider(solved.works);
    const Seen seen = look(solved.works);
    unchanged = seen.stops < stops ? 0 : unchanged + 1;
    stops = std::min(stops, seen.stops);
    if (seen.kinds >= least.kinds) continue;
    least = seen;
    found.push_back(std::move(solved.works));
  }
  return found;
}

}  // namespace latchwork::inline v0::planning
