#include "fit/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>
#include <utility>

#include "fit/ranking.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::fitting {
namespace {

constexpr std::size_t most_nearest = 3;
constexpr double loose_percent = 1000;  // else what no height meets would be looked for in ever wider panels

struct Bound {
  FitBound bound = FitBound::width;
  std::size_t group = 0;
};

std::vector<Bound> bounds_of(const FitRequest& request) {
  std::vector<Bound> out;
  if (request.tolerance_percent) {
    out.push_back({FitBound::width});
    out.push_back({FitBound::height});
  }
  for (std::size_t i = 0; i < request.groups.size(); ++i) out.push_back({FitBound::times, i});
  if (request.edge) out.push_back({FitBound::edge_columns});
  if (request.rows_step > 1 || request.rows_extra > 0) out.push_back({FitBound::rows});
  out.push_back({FitBound::panels});
  if (request.needles > 0) out.push_back({FitBound::needles});
  return out;
}

void loosen(Limits& limits, const Bound& bound) {
  switch (bound.bound) {
    case FitBound::width:
      limits.width_tolerance = loose_percent;
      return;
    case FitBound::height:
      limits.height_tolerance = loose_percent;
      return;
    case FitBound::times:
      limits.times[bound.group].least = std::min<Count>(limits.times[bound.group].least, 1);
      limits.times[bound.group].most = Grid::max_side;
      return;
    case FitBound::edge_columns:
      limits.edge = {0, Grid::max_side};
      return;
    case FitBound::rows:
      limits.rows_step = 1;
      limits.rows_extra = 0;
      return;
    case FitBound::panels:
      limits.panels = {1, FitRequest::max_panels};
      return;
    case FitBound::needles:
      limits.columns_most = Grid::max_side;
      return;
  }
}

std::string allowed(Count least, Count most, Count value) {
  const bool over = value > most;
  const Count limit = over ? most : least;
  return fmt::format("{} {} {} allowed", over ? "at most" : "at least", limit, limit == 1 ? "is" : "are");
}

// What a candidate does not keep of the request.
class Gives {
 public:
  Gives(const FitRequest& request, const FitCandidate& candidate) : request_(request), candidate_(candidate) {
    off_the_range(FitBound::width, width_target(request), candidate.width_mm, "narrower", "wider");
    off_the_range(FitBound::height, height_target(request), candidate.height_mm, "shorter", "taller");
    for (std::size_t i = 0; i < request.groups.size(); ++i) {
      const FitGroup& group = request.groups[i];
      count(FitBound::times, static_cast<int>(i), candidate.times[i], {group.least, group.most},
            latchwork::count_of(candidate.times[i], "repeat") + fmt::format(" of group {}", i + 1));
    }
    if (request.edge) {
      count(FitBound::edge_columns, -1, candidate.edge_columns, {request.edge_least, request.edge_most},
            latchwork::count_of(candidate.edge_columns, "edge column") + " a side");
    }
    whole_repeats();
    count(FitBound::panels, -1, candidate.panels, {request.panels_least, request.panels_most},
          latchwork::count_of(candidate.panels, "panel"));
    if (request.needles > 0 && candidate.columns > request.needles) {
      add(FitBound::needles, -1, candidate.columns, request.needles,
          fmt::format("{}: {}{}, the bed has {}", latchwork::count_of(candidate.panels, "panel"),
                      latchwork::count_of(candidate.columns, "column"), candidate.panels > 1 ? " each" : "",
                      latchwork::count_of(request.needles, "needle")));
    }
  }
  std::vector<FitGive> take() && { return std::move(out_); }

 private:
  void add(FitBound bound, int group, double value, double limit, std::string words) {
    out_.push_back({bound, group, value, limit, std::move(words)});
  }

  void count(FitBound bound, int group, Count value, Range range, const std::string& words) {
    if (value >= range.least && value <= range.most) return;
    add(bound, group, static_cast<double>(value), static_cast<double>(value > range.most ? range.most : range.least),
        words + "; " + allowed(range.least, range.most, value));
  }

  void off_the_range(FitBound bound, const Target& target, double mm, const char* less, const char* more) {
    const double percent = target.percent(mm);
    if (!request_.tolerance_percent || std::abs(percent) <= *request_.tolerance_percent) return;
    const double off = target.error_mm(mm);
    const double limit = std::copysign(target.nearer(mm) * *request_.tolerance_percent / 100, off);
    add(bound, -1, off, limit,
        fmt::format("{:.1f} mm {} than {} ({:.1f} %; at most {} % is allowed)", std::abs(off), off < 0 ? less : more,
                    target.least == target.most ? "wanted" : "the range", std::abs(percent),
                    *request_.tolerance_percent));
  }

  void whole_repeats() {
    const int rest = candidate_.rows - request_.rows_extra;
    const int below = rest < 0 ? 0 : rest / request_.rows_step * request_.rows_step;
    if (rest >= 0 && rest == below) return;
    const bool down = rest >= 0 && below + request_.rows_extra > 0 && rest - below <= request_.rows_step / 2;
    const int limit = request_.rows_extra + (rest < 0 || down ? below : below + request_.rows_step);
    add(FitBound::rows, -1, candidate_.rows, std::max(limit, 1),
        request_.rows_extra == 0
            ? fmt::format("{}; a multiple of {} is allowed", latchwork::count_of(candidate_.rows, "row"),
                          request_.rows_step)
            : fmt::format("{}; {} and a multiple of {} are allowed", latchwork::count_of(candidate_.rows, "row"),
                          request_.rows_extra, request_.rows_step));
  }

  const FitRequest& request_;
  const FitCandidate& candidate_;
  std::vector<FitGive> out_;
};

/// How far the gives of a candidate go in all, as FitResult::nearest tells.
double overstep(const FitRequest& request, const FitCandidate& candidate, const std::vector<FitGive>& gives) {
  double out = 0;
  for (const FitGive& give : gives) {
    if (give.bound == FitBound::width || give.bound == FitBound::height) {
      const double percent =
          give.bound == FitBound::width ? candidate.width_error_percent : candidate.height_error_percent;
      out += (std::abs(percent) - request.tolerance_percent.value_or(0)) / 100;
    } else {
      out += std::abs(give.value - give.limit) / std::max(give.limit, 1.0);
    }
  }
  return out;
}

/// A loosened bound drawn in again: as far as `past` beyond what the request allows, each way, and no further than
/// `loose`.
void draw_in(Limits& limits, const Limits& asked, const Limits& loose, const Bound& bound, Count past) {
  const auto drawn = [&](const Range& of, const Range& to) {
    return Range{std::max(to.least, of.least - past), std::min(to.most, of.most + past)};
  };
  switch (bound.bound) {
    case FitBound::times:
      limits.times[bound.group] = drawn(asked.times[bound.group], loose.times[bound.group]);
      return;
    case FitBound::edge_columns:
      limits.edge = drawn(asked.edge, loose.edge);
      return;
    case FitBound::panels:
      limits.panels = drawn(asked.panels, loose.panels);
      return;
    case FitBound::needles:
      limits.columns_most = std::min(loose.columns_most, asked.columns_most + past);
      return;
    case FitBound::width:
    case FitBound::height:
    case FitBound::rows:
      return;
  }
}

/// How far a candidate is past one bound; 0 where it keeps it, and for bounds that are not drawn in.
Count past_bound(const Limits& asked, const FitCandidate& candidate, const Bound& bound) {
  const auto past = [](const Range& range, Count value) {
    return std::max({Count{0}, range.least - value, value - range.most});
  };
  switch (bound.bound) {
    case FitBound::times:
      return past(asked.times[bound.group], candidate.times[bound.group]);
    case FitBound::edge_columns:
      return past(asked.edge, candidate.edge_columns);
    case FitBound::panels:
      return past(asked.panels, candidate.panels);
    case FitBound::needles:
      return std::max<Count>(0, candidate.columns - asked.columns_most);
    case FitBound::width:
    case FitBound::height:
    case FitBound::rows:
      return 0;
  }
  return 0;
}

/// A choice of bounds, and the best under it.
struct Near {
  std::vector<std::size_t> bounds;  // by index, rising
  FitNearest of;
  double overstep = 0;
};

bool comes_before(const Near& a, const Near& b) {
  if (a.of.candidate.error != b.of.candidate.error) return a.of.candidate.error < b.of.candidate.error;
  if (a.bounds.size() != b.bounds.size()) return a.bounds.size() < b.bounds.size();
  if (a.overstep != b.overstep) return a.overstep < b.overstep;
  return ranks_before(a.of.candidate, b.of.candidate);
}

/// Every choice of so many out of so many things, in order.
class Choices {
 public:
  Choices(std::size_t size, std::size_t of) : of_(of), chosen_(size) {
    std::iota(chosen_.begin(), chosen_.end(), std::size_t{0});
  }
  const std::vector<std::size_t>& chosen() const { return chosen_; }

  /// False after the last.
  bool next() {
    for (std::size_t i = chosen_.size(); i-- > 0;) {
      if (chosen_[i] + (chosen_.size() - i) < of_) {
        ++chosen_[i];
        for (std::size_t k = i + 1; k < chosen_.size(); ++k) chosen_[k] = chosen_[k - 1] + 1;
        return true;
      }
    }
    return false;
  }

  /// How many there are; of a dozen things or so.
  double count() const {
    double out = 1;
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
      out = out * static_cast<double>(of_ - i) / static_cast<double>(i + 1);
    }
    return out;
  }

 private:
  std::size_t of_;
  std::vector<std::size_t> chosen_;
};

/// Loosens one bound, then two, and so on, as FitResult::nearest tells.
class Loosening {
 public:
  Loosening(const FitRequest& request, Combination& combination, Budget& budget)
      : request_(request),
        combination_(combination),
        budget_(budget),
        asked_(limits_of(request)),
        bounds_(bounds_of(request)) {}

  std::vector<FitNearest> run() && {
    double from =
        0.5;  // of the share that is told: what fit() searched before is one half, and each size half the rest
    for (std::size_t size = 1; size <= bounds_.size() && goes_on(size); ++size) {
      Choices choices(size, bounds_.size());
      const double step = (1 - from) / 2 / choices.count();
      do {
        if (!is_enough(choices.chosen())) {
          budget_.stage(from, from + step);
          look(choices.chosen());
        }
        from += step;
      } while (!budget_.spent() && choices.next());
    }
    std::sort(found_.begin(), found_.end(), comes_before);
    keep_the_fewest();
    std::vector<FitNearest> out;
    out.reserve(std::min(found_.size(), most_nearest));
    for (Near& each : found_) {
      if (out.size() < most_nearest) out.push_back(std::move(each.of));
    }
    return out;
  }

 private:
  bool goes_on(std::size_t size) const { return !budget_.spent() && (size <= 2 || found_.size() < most_nearest); }

  static bool holds(const std::vector<std::size_t>& all, const std::vector<std::size_t>& some) {
    return std::includes(all.begin(), all.end(), some.begin(), some.end());
  }

  // Whether some of these bounds suffice for what is as near as was asked for.
  bool is_enough(const std::vector<std::size_t>& chosen) const {
    return std::any_of(found_.begin(), found_.end(), [&](const Near& each) {
      const bool near = std::none_of(each.bounds.begin(), each.bounds.end(), [&](std::size_t bound) {
        return bounds_[bound].bound == FitBound::width || bounds_[bound].bound == FitBound::height;
      });
      return near && holds(chosen, each.bounds);
    });
  }

  // Whether some of these bounds come as near.
  bool is_no_nearer(const std::vector<std::size_t>& chosen, double error) const {
    return std::any_of(found_.begin(), found_.end(), [&](const Near& each) {
      return each.of.candidate.error <= error && holds(chosen, each.bounds);
    });
  }

  void look(const std::vector<std::size_t>& chosen) {
    Limits limits = asked_;
    for (const std::size_t each : chosen) loosen(limits, bounds_[each]);
    std::vector<FitCandidate> best = search(request_, combination_, limits, 1, budget_);
    if (best.empty() || is_no_nearer(chosen, best.front().error)) return;
    Near out;
    out.bounds = chosen;
    out.of.candidate = std::move(best.front());
    draw_all_in(out, limits);
    out.of.gives = gives_of(request_, out.of.candidate);
    out.overstep = overstep(request_, out.of.candidate, out.of.gives);
    found_.push_back(std::move(out));
  }

  // Of equal errors the search takes the one that ranks first as a candidate; so each bound in turn is drawn in by
  // halving, as far as the error stays: what is allowed less finds no more.
  void draw_all_in(Near& near, Limits limits) {
    const Limits loose = limits;
    FitCandidate& found = near.of.candidate;
    for (const std::size_t index : near.bounds) {
      const Bound& bound = bounds_[index];
      Count least = 0;
      Count most = past_bound(asked_, found, bound);
      while (least < most && !budget_.spent()) {
        const Count middle = least + (most - least) / 2;
        Limits tried = limits;
        draw_in(tried, asked_, loose, bound, middle);
        std::vector<FitCandidate> best = search(request_, combination_, tried, 1, budget_);
        if (!budget_.spent() && !best.empty() && best.front().error == found.error) {
          found = std::move(best.front());
          most = past_bound(asked_, found, bound);
        } else {
          least = middle + 1;
        }
      }
      draw_in(limits, asked_, loose, bound, most);
    }
  }

  // Whoever would give up little and be off a little more is told so: the best of the fewest bounds is among the three.
  void keep_the_fewest() {
    if (found_.size() <= most_nearest) return;
    const auto fewest = std::min_element(found_.begin(), found_.end(), [](const Near& a, const Near& b) {
      return a.bounds.size() < b.bounds.size();  // the first of equal ones, which is the best
    });
    const auto last = found_.begin() + most_nearest - 1;
    if (fewest > last) std::iter_swap(fewest, last);
  }

  const FitRequest& request_;
  Combination& combination_;
  Budget& budget_;
  Limits asked_;
  std::vector<Bound> bounds_;
  std::vector<Near> found_;
};

}  // namespace

std::vector<FitGive> gives_of(const FitRequest& request, const FitCandidate& candidate) {
  return Gives(request, candidate).take();
}

std::vector<FitNearest> nearest(const FitRequest& request, Combination& combination, Budget& budget) {
  return Loosening(request, combination, budget).run();
}

}  // namespace latchwork::inline v0::fitting
