#include "plan/few_kinds.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {

// What a schedule costs, stops that nothing needs left out, and its kinds; far when stops are too near each other.
FewKinds::Seen FewKinds::look(const AllWorks& works, std::set<int>* kinds) {
  std::vector<std::vector<int>> deeds = at_row_;
  std::vector<char> stops = problem_.forced;
  Seen seen{0, 0, 0};
  for (std::size_t lane = 0; lane < works.size(); ++lane) {
    const Lane& worked = problem_.lanes[lane];
    add_deeds(deeds_, worked, works[lane], deeds);
    for (const Work& work : works[lane]) {
      stops[at(work.stop)] = 1;
      if (work.hold) stops[at(worked.task(work.first).high - 1)] = 1;
      seen.cost += work.hold ? worked.hold : worked.batch_cost(work.first, work.stop);
      work_ += static_cast<std::int64_t>(worked.wales.size()) * (work.stop - worked.task(work.first).low + 2);
    }
  }
  int last = -1;
  bool apart = true;
  std::set<int> used;
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!stops[at(row)]) continue;
    ++seen.stops;
    seen.cost += problem_.stop_cost;
    const bool forced = is_forced(problem_, row) && (last < 0 || is_forced(problem_, last));
    apart = apart && (last < 0 || forced || row - last >= problem_.apart);
    last = row;
    used.insert(deeds_.kind(std::move(deeds[at(row)])));
  }
  if (kinds) kinds->insert(used.begin(), used.end());
  seen.kinds = used.size();
  if (!apart) seen.cost = far;
  work_ += problem_.rows + 1;
  return seen;
}

FewKinds::Seen FewKinds::look(const std::vector<char>& stops) {
  works_.resize(problem_.lanes.size());
  for (std::size_t lane = 0; lane < works_.size(); ++lane) {
    const Lane& worked = problem_.lanes[lane];
    Works mine = works_of(worked, stops);
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
  const Seen seen = look(works, kinds);
  if (seen.kinds > most_ || seen.cost >= best_.cost) return false;
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

FewKinds::AllWorks FewKinds::latest() const {
  AllWorks works(problem_.lanes.size());
  std::vector<int> standing(problem_.lanes.size(), 0);
  // From each stop on, the next is the last row at which every lane that must can still do what it is due.
  while (true) {
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

}  // namespace latchwork::inline v0::planning
