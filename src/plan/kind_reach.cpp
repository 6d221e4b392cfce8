#include "plan/kind_reach.hpp"

#include <algorithm>
#include <numeric>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr std::int64_t most_looked_through = 4'000'000;  // rungs of all batches
constexpr int most_looks = 200;                          // at batches, a question

}  // namespace

std::int64_t KindReach::prepare(const std::vector<std::vector<int>>& at_row, Limits& limits) {
  own_.assign(problem_.lanes.size(), 0);
  party_.assign(problem_.lanes.size(), 0);
  with_forced_.assign(problem_.lanes.size(), 1);
  std::int64_t rungs = 0;
  for (const Lane& lane : problem_.lanes) {
    for (const Task& task : lane.tasks) {
      const std::int64_t stops = std::max(0, task.last_stop - task.high + 1);
      rungs += std::ssize(lane.wales) * (1 + stops * (task.high - task.low + 2 + stops / 2));
    }
    if (rungs > most_looked_through) return 0;
  }
  std::vector<int> owner;                              // per deed: the lane that does it, -1: none
  std::vector<std::size_t> up(problem_.lanes.size());  // a lane that it shares a deed with, or itself
  std::iota(up.begin(), up.end(), std::size_t{0});
  const auto head = [&](std::size_t lane) {
    while (up[lane] != lane) lane = up[lane] = up[up[lane]];
    return lane;
  };
  const auto note = [&](const DeedList& list, int row, int lane) {
    for (const int deed : deeds_.of(list)) {
      if (at(deed) >= last_.size()) {
        last_.resize(at(deed) + 1, -1);
        owner.resize(last_.size(), -1);
      }
      last_[at(deed)] = std::max(last_[at(deed)], row);
      if (owner[at(deed)] >= 0) up[head(at(owner[at(deed)]))] = head(at(lane));
      owner[at(deed)] = lane;
    }
  };
  for (std::size_t lane = 0; lane < problem_.lanes.size(); ++lane) {
    if (limits.over()) return rungs;
    const Lane& worked = problem_.lanes[lane];
    for (int i = 0; i < worked.task_count(); ++i) {
      const Task& task = worked.task(i);
      for (int row = task.high; row <= task.last_stop; ++row) {
        if (worked.done_at(row) > i) note(deeds_.batch(worked, i, row), row, static_cast<int>(lane));
      }
      if (!task.by_hold) continue;
      note(deeds_.hold(worked, i), task.low - 1, static_cast<int>(lane));
      note(deeds_.release(worked, i), task.high - 1, static_cast<int>(lane));
    }
  }
  // What a lane does and a wale that is kept to a rhythm as well: such lanes are of one party.
  int forced = -1;
  for (const std::vector<int>& deeds : at_row) {
    for (const int deed : deeds) {
      if (at(deed) >= owner.size() || owner[at(deed)] < 0) continue;
      if (forced >= 0) up[head(at(owner[at(deed)]))] = head(at(forced));
      forced = owner[at(deed)];
    }
  }
  std::vector<int> size(own_.size(), 0);
  for (std::size_t lane = 0; lane < own_.size(); ++lane) {
    party_[lane] = head(lane);
    ++size[party_[lane]];
  }
  for (std::size_t lane = 0; lane < own_.size(); ++lane) {
    with_forced_[lane] = forced >= 0 && party_[lane] == head(at(forced)) ? 1 : 0;
    own_[lane] = size[party_[lane]] == 1 && with_forced_[lane] == 0 ? 1 : 0;
  }
  note_forced(at_row, owner);
  known_ = true;
  return rungs;
}

void KindReach::note_forced(const std::vector<std::vector<int>>& at_row, const std::vector<int>& owner) {
  for (std::size_t row = 0; row < at_row.size(); ++row) {
    std::vector<int> forced;
    for (const int deed : at_row[row]) {
      if (at(deed) >= last_.size()) last_.resize(at(deed) + 1, -1);
      last_[at(deed)] = std::max(last_[at(deed)], static_cast<int>(row));
      if (at(deed) < owner.size() && owner[at(deed)] >= 0) continue;
      if (at(deed) >= only_forced_.size()) only_forced_.resize(at(deed) + 1, 0);
      only_forced_[at(deed)] = 1;
      forced.push_back(deed);
    }
    if (forced.empty()) continue;
    std::sort(forced.begin(), forced.end());
    const auto [place, fresh] = forced_.try_emplace(std::move(forced), static_cast<int>(forced_.size()));
    if (fresh) last_forced_.push_back(0);
    last_forced_[at(place->second)] = static_cast<int>(row);
  }
}

std::size_t KindReach::forced_to_come(int row, std::span<const int> kinds) {
  std::size_t missing = 0;
  for (const int last : last_forced_) {
    if (last > row) ++missing;
  }
  if (missing == 0) return 0;
  if (forced_by_.size() < at(deeds_.kind_count())) forced_by_.resize(at(deeds_.kind_count()), -2);
  seen_.clear();
  for (const int kind : kinds) {
    if (kind < 0) continue;
    int& mine = forced_by_[at(kind)];
    if (mine == -2) {
      std::vector<int> forced;
      for (const int deed : deeds_.deeds_of(kind)) {
        if (at(deed) < only_forced_.size() && only_forced_[at(deed)]) forced.push_back(deed);
      }
      const auto place = forced_.find(forced);
      mine = place == forced_.end() ? -1 : place->second;
    }
    if (mine < 0 || last_forced_[at(mine)] <= row || std::count(seen_.begin(), seen_.end(), mine) > 0) continue;
    seen_.push_back(mine);
    --missing;
  }
  return missing;
}

void KindReach::forget_kinds(int first) {
  last_kind_.resize(std::min(last_kind_.size(), at(first)));
  forced_by_.resize(std::min(forced_by_.size(), at(first)));
}

int KindReach::last_row(int kind) {
  if (!known_) return problem_.rows;
  if (at(kind) >= last_kind_.size()) last_kind_.resize(at(deeds_.kind_count()), -1);
  int& last = last_kind_[at(kind)];
  if (last >= 0) return last;
  last = problem_.rows;
  for (const int deed : deeds_.deeds_of(kind)) {
    last = std::min(last, at(deed) < last_.size() ? std::max(0, last_[at(deed)]) : 0);
  }
  return last;
}

bool KindReach::can_end(std::size_t lane, Standing standing, int row, std::span<const int> kinds,
                        const DeedList* more) {
  const Lane& worked = problem_.lanes[lane];
  kinds_ = kinds;
  more_ = more;
  looks_left_ = most_looks;
  ++work_;
  if (standing >= 0) return ends(worked, standing, row);
  return ends(worked, -standing, std::max(row, worked.task(-1 - standing).high - 1));  // released, it is one more done
}

// Whatever may be held may be made, and what takes long to see as well.
bool KindReach::ends(const Lane& lane, int done, int row) {
  if (done >= lane.task_count()) return true;
  const Task& task = lane.task(done);
  if (task.by_hold) return true;
  for (int stop = task.last_stop; stop >= std::max(task.high, row + 1); --stop) {
    if (lane.done_at(stop) <= done) continue;
    if (--looks_left_ <= 0) return true;
    ++work_;
    if (holds(deeds_.batch(lane, done, stop)) && ends(lane, lane.done_at(stop), stop)) return true;
  }
  return false;
}

// The wales of a lane are always worked together, so that the first tells for all.
bool KindReach::holds(const DeedList& list) const {
  const int deed = deeds_.of(list).front();
  if (more_) {
    const auto& more = deeds_.of(*more_);  // a hold may be among them
    if (std::find(more.begin(), more.end(), deed) != more.end()) return true;
  }
  return std::any_of(kinds_.begin(), kinds_.end(), [&](int kind) {
    if (kind < 0) return false;
    const std::span<const int> all = deeds_.deeds_of(kind);
    return std::binary_search(all.begin(), all.end(), deed);
  });
}

}  // namespace latchwork::inline v0::planning
