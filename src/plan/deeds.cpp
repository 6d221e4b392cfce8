#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <utility>

#include "error/refuse.hpp"
#include "grid/lifting.hpp"
#include "latchwork/plan.hpp"
#include "plan/index.hpp"
#include "plan/kinds.hpp"

namespace latchwork::inline v0::planning {
namespace {

enum Deed : int { batch_deed, hold_deed, release_deed, crossing_deed, shaping_deed };
constexpr int batch_and_hold_deed = 3;                     // of lists: no crossing is one
constexpr std::size_t most_wales = std::size_t{1} << 26U;  // what made() has room for in a key

// Spread over all bits, so that sums tell lists apart (finalizer of splitmix64, S. Vigna, public domain).
std::uint64_t mixed(std::uint64_t deed) {
  std::uint64_t x = deed * 0x9e3779b97f4a7c15U + 0x9e3779b97f4a7c15U;
  x = (x ^ x >> 30U) * 0xbf58476d1ce4e5b9U;
  x = (x ^ x >> 27U) * 0x94d049bb133111ebU;
  return x ^ x >> 31U;
}

// Neither is as great as 2^24.
std::uint64_t outline(int deed, int column, int depth) {
  return mixed(static_cast<std::uint64_t>(deed) << 48U | static_cast<std::uint64_t>(column) << 24U |
               static_cast<std::uint64_t>(depth));
}

}  // namespace

Deeds::Deeds(const Grid& grid, const Wales& wales) : grid_(&grid), wales_(&wales) {
  if (wales.all().size() < most_wales) return;
  refuse(ErrorCode::too_large, "options.conditions.max_kinds",
         fmt::format("a panel of {} wales; kinds of stop are told apart with fewer than {}", wales.all().size(),
                     most_wales));
}

int Deeds::step(int node, int symbol) {
  const auto [next, fresh] = steps_.add(key_of(node, symbol), nodes_);
  if (fresh) ++nodes_;
  return next;
}

int Deeds::number(std::span<const int> deed) {
  int node = 0;
  for (const int symbol : deed) node = step(node, symbol);
  return node;
}

std::uint64_t Deeds::sum_of(std::span<const int> deeds) {
  std::uint64_t sum = 0;
  for (const int deed : deeds) sum += mixed(static_cast<std::uint64_t>(deed));
  return sum;
}

std::uint64_t Deeds::outline_of_batch(const Lane& lane, int first, int row) const {
  std::uint64_t sum = 0;
  const int depth = row - lane.task(first).low + 1;
  for (const int wale : lane.wales) sum += outline(batch_deed, wales_->all()[at(wale)].column_at(row), depth);
  return sum;
}

std::uint64_t Deeds::outline_of_hold(const Lane& lane, int task, bool released) const {
  std::uint64_t sum = 0;
  const int row = lane.task(task).low;
  for (const int wale : lane.wales) {
    sum += outline(released ? release_deed : hold_deed, wales_->all()[at(wale)].column_at(row), 0);
  }
  return sum;
}

// Its list, made by make() where it is asked for the first time.
template <class Make>
DeedList Deeds::made(int what, const Lane& lane, int first, int row, Make make) {
  const auto wale = static_cast<std::uint64_t>(lane.wales.front());  // no other lane's
  const std::uint64_t place = static_cast<std::uint64_t>(first) << 18U | static_cast<std::uint64_t>(row);  // below 2^18
  const std::uint64_t key = static_cast<std::uint64_t>(what) << 62U | wale << 36U | place;
  const auto [index, fresh] = made_.add(key, static_cast<int>(lists_.size()));
  if (!fresh) return lists_[at(index)];
  const auto from = static_cast<std::uint32_t>(all_.size());
  for (const int wale_of : lane.wales) make(wales_->all()[at(wale_of)]);
  const auto count = static_cast<std::uint32_t>(all_.size()) - from;
  lists_.push_back({sum_of(std::span(all_).subspan(from, count)), from, count});
  return lists_.back();
}

DeedList Deeds::batch(const Lane& lane, int first, int row) {
  return made(batch_deed, lane, first, row, [&](const Wale& wale) {
    int node = step(step(0, batch_deed), wale.column_at(row));
    // A wale lies inside its grid, so that nothing is to be checked.
    const auto cells = grid_->cells();
    for (int r = lane.task(first).low; r <= row; ++r) {
      node = step(node, static_cast<int>(cells[at(r - 1) * at(grid_->columns()) + at(wale.column_at(r))]));
    }
    all_.push_back(node);
  });
}

DeedList Deeds::hold(const Lane& lane, int task) {
  return made(hold_deed, lane, task, 0, [&](const Wale& wale) {
    all_.push_back(number(std::array<int, 2>{hold_deed, wale.column_at(lane.task(task).low)}));
  });
}

DeedList Deeds::release(const Lane& lane, int task) {
  return made(release_deed, lane, task, 0, [&](const Wale& wale) {
    all_.push_back(number(std::array<int, 2>{release_deed, wale.column_at(lane.task(task).low)}));
  });
}

DeedList Deeds::batch_and_hold(const Lane& lane, int first, int row) {
  const DeedList worked = batch(lane, first, row);
  const DeedList held = hold(lane, lane.done_at(row));
  std::uint32_t next = 0;
  return made(batch_and_hold_deed, lane, first, row, [&](const Wale&) {
    all_.push_back(all_[worked.from + next]);
    all_.push_back(all_[held.from + next++]);
  });
}

std::vector<std::vector<int>> Deeds::forced() {
  std::vector<std::vector<int>> out(at(grid_->rows()) + 1);
  for (const Crossing& crossing : grid_->crossings()) {
    const bool bare = crossing.centre > 0 && lifting::bare_centre(*grid_, crossing);
    out[at(crossing.row)].push_back(
        number(std::array<int, 8>{crossing_deed, crossing.column, crossing.left, crossing.centre, crossing.right,
                                  static_cast<int>(crossing.lean), static_cast<int>(crossing.place), bare ? 1 : 0}));
  }
  for (const Wale& wale : wales_->all()) {
    if (wale.row > 1) out[at(wale.row - 1)].push_back(number(std::array<int, 3>{shaping_deed, wale.column, 1}));
    if (wale.last_row() < grid_->rows()) {
      out[at(wale.last_row())].push_back(number(std::array<int, 3>{shaping_deed, wale.columns.back(), 0}));
    }
  }
  return out;
}

int Deeds::kind(std::vector<int> deeds) {
  std::sort(deeds.begin(), deeds.end());
  return kinds_.add(deeds);
}

std::vector<int> Deeds::keep(int first, const std::vector<char>& wanted, Limits& limits) {
  std::vector<int> moved(wanted.size());
  NumberedLists kept;
  for (int kind = 0; kind < kinds_.count(); ++kind) {
    if (kind % 4096 == 0 && limits.over()) {
      std::iota(moved.begin(), moved.end(), first);
      return moved;
    }
    const bool stays = kind < first || wanted[at(kind - first)] != 0;
    const int place = stays ? kept.add(kinds_.of(kind)) : -1;
    if (kind >= first) moved[at(kind - first)] = place;
  }
  kinds_ = std::move(kept);
  return moved;
}

void add_deeds(Deeds& deeds, const Lane& lane, const std::vector<Work>& works, std::vector<std::vector<int>>& at_row) {
  const auto add = [&](int row, const DeedList& list) {
    const std::span<const int> done = deeds.of(list);
    at_row[at(row)].insert(at_row[at(row)].end(), done.begin(), done.end());
  };
  for (const Work& work : works) {
    if (work.hold) {
      add(work.stop, deeds.hold(lane, work.first));
      add(lane.task(work.first).high - 1, deeds.release(lane, work.first));
    } else {
      add(work.stop, deeds.batch(lane, work.first, work.stop));
    }
  }
}

}  // namespace latchwork::inline v0::planning

namespace latchwork::inline v0 {

std::vector<int> stop_kinds(const Plan& plan) {
  std::map<std::vector<int>, int> numbers;  // by a stop's deeds, sorted, each with its length before it
  std::vector<int> kinds;
  kinds.reserve(plan.stops.size());
  std::vector<int> all;  // the deeds of a stop, one after the other
  std::vector<std::pair<std::size_t, std::size_t>> deeds;
  const auto deed = [&](const auto&... numbers_of_it) {
    deeds.emplace_back(all.size(), 0);
    (all.push_back(static_cast<int>(numbers_of_it)), ...);
  };
  const auto end = [&] { deeds.back().second = all.size(); };
  const auto less = [&](const auto& a, const auto& b) {
    const int* const from = all.data();
    return std::lexicographical_compare(from + a.first, from + a.second, from + b.first, from + b.second);
  };
  for (const Stop& stop : plan.stops) {
    all.clear();
    deeds.clear();
    for (const int needle : stop.releases) {
      deed(planning::release_deed, needle);
      end();
    }
    for (const int needle : stop.holds) {
      deed(planning::hold_deed, needle);
      end();
    }
    for (const Reform& reform : stop.reforms) {
      deed(planning::batch_deed, reform.needle);
      for (const Cell rung : reform.rungs) all.push_back(static_cast<int>(rung));
      end();
    }
    for (const CrossingStep& step : stop.crossings) {
      const Crossing& crossing = step.crossing;
      deed(planning::crossing_deed, crossing.column, crossing.left, crossing.centre, crossing.right, crossing.lean,
           crossing.place);
      for (const GroupReturn& back : step.returns) {
        all.insert(all.end(), {static_cast<int>(back.group), back.stitches, back.from_needle, back.to_needle});
      }
      end();
    }
    for (const Shaping& shaping : stop.shapings) {
      deed(planning::shaping_deed, shaping.needle, shaping.on ? 1 : 0);
      end();
    }
    if (!std::is_sorted(deeds.begin(), deeds.end(), less)) std::sort(deeds.begin(), deeds.end(), less);
    std::vector<int> key;
    key.reserve(all.size() + deeds.size());
    for (const auto& [first, last] : deeds) {
      key.push_back(static_cast<int>(last - first));
      key.insert(key.end(), all.data() + first, all.data() + last);
    }
    kinds.push_back(numbers.try_emplace(std::move(key), static_cast<int>(numbers.size())).first->second);
  }
  return kinds;
}

}  // namespace latchwork::inline v0
