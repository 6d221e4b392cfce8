#include <algorithm>
#include <utility>

#include "grid/lifting.hpp"
#include "latchwork/plan.hpp"
#include "plan/kinds.hpp"

namespace latchwork::inline v0::planning {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

enum Deed : int { batch_deed, hold_deed, release_deed, crossing_deed, shaping_deed };

}  // namespace

int Deeds::number(std::vector<int> deed) {
  return deeds_.try_emplace(std::move(deed), static_cast<int>(deeds_.size())).first->second;
}

std::vector<int> Deeds::batch(const Lane& lane, int first, int row) {
  std::vector<int> out;
  for (const int index : lane.wales) {
    const Wale& wale = wales_->all()[at(index)];
    std::vector<int> deed = {batch_deed, wale.column_at(row)};
    for (int r = lane.task(first).low; r <= row; ++r) {
      deed.push_back(static_cast<int>(grid_->at(r, wale.column_at(r))));
    }
    out.push_back(number(std::move(deed)));
  }
  return out;
}

std::vector<int> Deeds::hold(const Lane& lane, int task) {
  std::vector<int> out;
  for (const int index : lane.wales) {
    out.push_back(number({hold_deed, wales_->all()[at(index)].column_at(lane.task(task).low)}));
  }
  return out;
}

std::vector<int> Deeds::release(const Lane& lane, int task) {
  std::vector<int> out;
  for (const int index : lane.wales) {
    out.push_back(number({release_deed, wales_->all()[at(index)].column_at(lane.task(task).low)}));
  }
  return out;
}

std::vector<std::vector<int>> Deeds::forced() {
  std::vector<std::vector<int>> out(at(grid_->rows()) + 1);
  for (const Crossing& crossing : grid_->crossings()) {
    const bool bare = crossing.centre > 0 && lifting::bare_centre(*grid_, crossing);
    out[at(crossing.row)].push_back(
        number({crossing_deed, crossing.column, crossing.left, crossing.centre, crossing.right,
                static_cast<int>(crossing.lean), static_cast<int>(crossing.place), bare ? 1 : 0}));
  }
  for (const Wale& wale : wales_->all()) {
    if (wale.row > 1) out[at(wale.row - 1)].push_back(number({shaping_deed, wale.column, 1}));
    if (wale.last_row() < grid_->rows()) {
      out[at(wale.last_row())].push_back(number({shaping_deed, wale.columns.back(), 0}));
    }
  }
  return out;
}

int Deeds::kind(std::vector<int> deeds) {
  std::sort(deeds.begin(), deeds.end());
  const auto [place, fresh] = kinds_.try_emplace(std::move(deeds), static_cast<int>(kinds_.size()));
  if (fresh) kinds_by_number_.push_back(&place->first);
  return place->second;
}

void add_deeds(Deeds& deeds, const Lane& lane, const std::vector<Work>& works, std::vector<std::vector<int>>& at_row) {
  const auto add = [&](int row, const std::vector<int>& done) {
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
  std::map<std::vector<std::vector<std::int64_t>>, int> numbers;
  std::vector<int> kinds;
  for (const Stop& stop : plan.stops) {
    std::vector<std::vector<std::int64_t>> deeds;
    for (const int needle : stop.releases) deeds.push_back({planning::release_deed, needle});
    for (const int needle : stop.holds) deeds.push_back({planning::hold_deed, needle});
    for (const Reform& reform : stop.reforms) {
      std::vector<std::int64_t> deed = {planning::batch_deed, reform.needle};
      for (const Cell rung : reform.rungs) deed.push_back(static_cast<std::int64_t>(rung));
      deeds.push_back(std::move(deed));
    }
    for (const CrossingStep& step : stop.crossings) {
      const Crossing& crossing = step.crossing;
      std::vector<std::int64_t> deed = {planning::crossing_deed,
                                        crossing.column,
                                        crossing.left,
                                        crossing.centre,
                                        crossing.right,
                                        static_cast<std::int64_t>(crossing.lean),
                                        static_cast<std::int64_t>(crossing.place)};
      for (const GroupReturn& back : step.returns) {
        deed.insert(deed.end(),
                    {static_cast<std::int64_t>(back.group), back.stitches, back.from_needle, back.to_needle});
      }
      deeds.push_back(std::move(deed));
    }
    for (const Shaping& shaping : stop.shapings) {
      deeds.push_back({planning::shaping_deed, shaping.needle, shaping.on ? 1 : 0});
    }
    std::sort(deeds.begin(), deeds.end());
    kinds.push_back(numbers.try_emplace(std::move(deeds), static_cast<int>(numbers.size())).first->second);
  }
  return kinds;
}

}  // namespace latchwork::inline v0
