#include "instructions/needles_in_work.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "instructions/words.hpp"
#include "latchwork/machine.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::writing {
namespace {

/// Neighbours, from step `first` on.
struct NeedleRun {
  int first = 0;
  int count = 1;
};

/// The steps of the needles that begin (or end) at a stop, as runs from the operator's left.
std::vector<NeedleRun> runs_of(const Plan& plan, const std::vector<Shaping>& shapings, bool on) {
  std::vector<int> steps;
  for (const Shaping& shaping : shapings) {
    if (shaping.on == on) steps.push_back(place_of(shaping.needle) - place_of(plan.leftmost));
  }
  std::sort(steps.begin(), steps.end());
  std::vector<NeedleRun> runs;
  for (const int step : steps) {
    if (!runs.empty() && runs.back().first + runs.back().count == step) {
      ++runs.back().count;
    } else {
      runs.push_back({step, 1});
    }
  }
  return runs;
}

const char* sides(std::size_t count) {
  return count == 1 ? "" : " at each side";
}

}  // namespace

NeedlesInWork::NeedlesInWork(const Plan& plan) : plan_(plan), works_(static_cast<std::size_t>(plan.columns), false) {
  for (const int column : plan.columns_on) works_[static_cast<std::size_t>(plan.columns - 1 - column)] = true;
  for (const Stop& stop : plan.stops) {
    for (const Reform& reform : stop.reforms) {
      re_forms_[reform.needle].push_back({reform.from_row, stop.row});
      into_cast_on_ = into_cast_on_ || reform.from_row == 0;
    }
    into_cast_on_ = into_cast_on_ || (stop.row == 0 && !stop.holds.empty());
  }
}

std::pair<std::vector<int>, std::vector<int>> NeedlesInWork::at_start() const {
  std::pair<std::vector<int>, std::vector<int>> on_and_off;
  for (int step = 0; step < plan_.columns; ++step) {
    (works_at(step) ? on_and_off.first : on_and_off.second).push_back(needle_at(step));
  }
  return on_and_off;
}

bool NeedlesInWork::any_at_end() const {
  std::set<int> in_work;
  for (const int column : plan_.columns_on) in_work.insert(needle_at(plan_.columns - 1 - column));
  for (const Stop& stop : plan_.stops) {
    for (const Shaping& shaping : stop.shapings) {
      if (shaping.on) {
        in_work.insert(shaping.needle);
      } else {
        in_work.erase(shaping.needle);
      }
    }
  }
  return !in_work.empty();
}

int NeedlesInWork::needle_at(int step) const {
  return needle_beside(plan_.leftmost, step);
}

bool NeedlesInWork::works_at(int step) const {
  return step >= 0 && step < plan_.columns && works_[static_cast<std::size_t>(step)];
}

/// The outermost needles in work; the first past the last where none is.
std::pair<int, int> NeedlesInWork::ends() const {
  const auto first = std::find(works_.begin(), works_.end(), true) - works_.begin();
  const auto after = std::find(works_.rbegin(), works_.rend(), true) - works_.rbegin();
  return {static_cast<int>(first), plan_.columns - 1 - static_cast<int>(after)};
}

/// Whether a later batch begins in the loop that this needle has after this row.
bool NeedlesInWork::goes_into(int needle, int row) const {
  const auto found = re_forms_.find(needle);
  return found != re_forms_.end() &&
         std::any_of(found->second.begin(), found->second.end(), [&](const Depth& d) { return d.from_row == row; });
}

/// Whether a later batch undoes that loop.
bool NeedlesInWork::goes_below(int needle, int row) const {
  const auto found = re_forms_.find(needle);
  return found != re_forms_.end() && std::any_of(found->second.begin(), found->second.end(),
                                                 [&](const Depth& d) { return d.from_row < row && d.row > row; });
}

std::vector<std::string> NeedlesInWork::shaped(const Stop& stop) {
  std::vector<std::string> told;
  join(stop, told);
  leave(stop, told);
  return told;
}

/// Several at once at an edge need the yarn, which is where the carriage is (common practice, no source).
bool NeedlesInWork::is_far(int run_first, int count, const Stop& stop) const {
  if (count < 2) return false;
  const auto [first, last] = ends();
  const int run_last = run_first + count - 1;
  const bool at_left = run_first <= first && run_last < last;
  const bool at_right = run_last >= last && run_first > first;
  return stop.carriage_right ? at_left : at_right;
}

void NeedlesInWork::tell_far(const std::vector<int>& needles, const std::vector<int>& among,
                             std::vector<std::string>& told) const {
  if (needles.empty()) return;
  told.back() += fmt::format(", {}with a length of yarn, as the carriage is at the other edge",
                             needles == among ? std::string() : needle_ranges(needles) + " ");
}

void NeedlesInWork::join(const Stop& stop, std::vector<std::string>& told) {
  const std::vector<NeedleRun> runs = runs_of(plan_, stop.shapings, true);
  const auto [first, last] = ends();
  std::vector<int> increased;
  std::vector<int> cast_on;
  std::vector<int> far;
  for (const NeedleRun& run : runs) {
    const bool at_edge = first <= last && (run.first + 1 == first || run.first - 1 == last);
    std::vector<int>& list = run.count == 1 && at_edge ? increased : cast_on;
    for (int step = run.first; step < run.first + run.count; ++step) {
      list.push_back(needle_at(step));
      if (is_far(run.first, run.count, stop)) far.push_back(needle_at(step));
    }
  }
  for (const NeedleRun& run : runs) std::fill_n(works_.begin() + run.first, run.count, true);
  const auto tell = [&](const std::vector<int>& needles, const std::string& what) {
    if (needles.empty()) return;
    const bool own_loop = std::any_of(needles.begin(), needles.end(), [&](int needle) {
      return goes_into(needle, stop.row) || std::count(stop.holds.begin(), stop.holds.end(), needle) > 0;
    });
    told.push_back(fmt::format("{}bring {} to work and cast on{}{}", what, needle_ranges(needles),
                               own_loop ? ", a loop of its own on " : "",
                               !own_loop             ? ""
                               : needles.size() == 1 ? "it"
                                                     : "each"));
  };
  tell(increased, fmt::format("increase 1{}: ", sides(increased.size())));
  tell(cast_on, "");
  tell_far(far, cast_on, told);
}

void NeedlesInWork::leave(const Stop& stop, std::vector<std::string>& told) {
  const std::vector<NeedleRun> runs = runs_of(plan_, stop.shapings, false);
  const auto [first, last] = ends();
  std::vector<int> far;
  for (const NeedleRun& run : runs) {
    for (int step = run.first; step < run.first + run.count && is_far(run.first, run.count, stop); ++step)
      far.push_back(needle_at(step));
  }
  for (const NeedleRun& run : runs) std::fill_n(works_.begin() + run.first, run.count, false);
  std::vector<std::string> moved;
  std::vector<int> decreased;
  std::vector<int> bound_off;
  for (const NeedleRun& run : runs) {
    const int to = run.first == first ? run.first + 1 : run.first - 1;
    const bool at_edge = run.first == first || run.first == last;
    // A stitch that was moved onto another is undone with it: then it is bound off by itself.
    if (run.count == 1 && at_edge && works_at(to) && !goes_below(needle_at(to), stop.row)) {
      decreased.push_back(needle_at(run.first));
      moved.push_back(fmt::format("{} to {}", needle_name(needle_at(run.first)), needle_name(needle_at(to))));
      into_moved_ = into_moved_ || goes_into(needle_at(to), stop.row);
    } else {
      for (int step = run.first; step < run.first + run.count; ++step) bound_off.push_back(needle_at(step));
    }
  }
  if (!decreased.empty()) {
    told.push_back(fmt::format("decrease 1{}: move the stitch on {} and put {} out of work", sides(decreased.size()),
                               joined(moved, ", that on "), needle_ranges(decreased)));
  }
  if (!bound_off.empty()) {
    told.push_back(fmt::format("bind off {} and put {} out of work", needle_ranges(bound_off),
                               bound_off.size() == 1 ? "it" : "them"));
    tell_far(far, bound_off, told);
  }
}

}  // namespace latchwork::inline v0::writing
