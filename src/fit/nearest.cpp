#include "fit/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iterator>
#include <numeric>
#include <optional>
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
  std::size_t variable = 0;  // of Ties, where the bound is that of its times
};

std::vector<Bound> bounds_of(const FitRequest& request, const Ties& ties) {
  std::vector<Bound> out;
  if (request.tolerance_percent) {
    out.push_back({FitBound::width});
    out.push_back({FitBound::height});
  }
  for (std::size_t i = 0; i < ties.first_of.size(); ++i) out.push_back({FitBound::times, i});
  if (request.edge) out.push_back({FitBound::edge_columns});
  if (request.rows_step > 1 || request.rows_extra > 0) out.push_back({FitBound::rows});
  out.push_back({FitBound::panels});
  if (request.needles > 0) out.push_back({FitBound::needles});
  return out;
}

constexpr Count whole = 1'000'000;            // how far something gives is counted in millionths
constexpr Count max_far = 1'000'000 * whole;  // from there on it is all one

/// What a limit of nothing, or a tolerance below one percent, would make too much of.
Count proportion(Count limit) {
  return std::max<Count>(limit, 1);
}

double proportion(const std::optional<double>& tolerance) {
  return std::max(tolerance.value_or(0), 1.0);
}

/// How far a count is past what is allowed.
Count far_past(const Range& allowed, Count value) {
  const Count limit = value > allowed.most ? allowed.most : allowed.least;
  if (value >= allowed.least && value <= allowed.most) return 0;
  return std::min((std::abs(value - limit) * whole + proportion(limit) - 1) / proportion(limit), max_far);
}

/// What counts are allowed when a bound gives so far, and no further than `loose`.
Range given(const Range& asked, const Range& loose, Count far) {
  const Count below = far * proportion(asked.least) / whole;
  const Count above = far * proportion(asked.most) / whole;
  return {std::max(asked.least - below, std::min(loose.least, asked.least)),
          std::min(asked.most + above, std::max(loose.most, asked.most))};
}

/// The percent that are allowed when a tolerance gives so far.
double given(const std::optional<double>& tolerance, Count far) {
  return tolerance.value_or(0) + proportion(tolerance) * (static_cast<double>(far) / static_cast<double>(whole));
}

/// How far a tolerance gives that takes so many percent: the least for which given() takes them.
Count far_past(const std::optional<double>& tolerance, double percent) {
  const double off = std::abs(percent);
  const double beyond = (off - tolerance.value_or(0)) / proportion(tolerance) * static_cast<double>(whole);
  if (beyond >= static_cast<double>(max_far)) return max_far;
  Count out = beyond > 0 ? static_cast<Count>(std::ceil(beyond)) : 0;
  while (off > given(tolerance, out)) ++out;  // doubles may be off by one
  while (out > 0 && off <= given(tolerance, out - 1)) --out;
  return out;
}

std::string allowed(Count least, Count most, Count value) {
  const bool over = value > most;
  const Count limit = over ? most : least;
  return fmt::format("{} {} {} allowed", over ? "at most" : "at least", limit, limit == 1 ? "is" : "are");
}

/// "group 1", "groups 1 and 3" where these are tied.
std::string groups_of(const Ties& ties, std::size_t variable) {
  std::vector<std::string> numbers;
  for (std::size_t i = 0; i < ties.variable_of.size(); ++i) {
    if (ties.variable_of[i] == variable) numbers.push_back(std::to_string(i + 1));
  }
  const std::string last = numbers.back();
  if (numbers.size() == 1) return "group " + last;
  numbers.pop_back();
  return fmt::format("groups {} and {}", joined(numbers), last);
}

// What a candidate does not keep of the request.
class Gives {
 public:
  Gives(const FitRequest& request, const FitCandidate& candidate) : request_(request), candidate_(candidate) {
    off_the_range(FitBound::width, width_target(request), candidate.width_mm, "narrower", "wider");
    off_the_range(FitBound::height, height_target(request), candidate.height_mm, "shorter", "taller");
    const Ties ties = ties_of(request.groups);
    for (std::size_t i = 0; i < ties.first_of.size(); ++i) {
      const std::size_t first = ties.first_of[i];
      const FitGroup& group = request.groups[first];
      count(FitBound::times, static_cast<int>(first), candidate.times[first], {group.least, group.most},
            fmt::format("{} of {}", latchwork::count_of(candidate.times[first], "repeat"), groups_of(ties, i)));
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
    const bool some_below = rest >= 0 && below + request_.rows_extra > 0;
    const int above = request_.rows_extra + (rest < 0 ? 0 : below + request_.rows_step);
    const bool down = some_below && (rest - below <= request_.rows_step / 2 || above > Grid::max_side);
    add(FitBound::rows, -1, candidate_.rows, down ? request_.rows_extra + below : std::max(above, 1),
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

/// A choice of bounds, and what is nearest when they give.
struct Near {
  std::vector<std::size_t> bounds;  // by index, rising
  FitCandidate candidate;
  Count far = 0;  // of the bound that gives most

  // Where more give, each is taken to give as much: else a little of everything would come before one that gives alone.
  Count in_all() const { return far * static_cast<Count>(bounds.size()); }
};

bool comes_before(const Near& a, const Near& b) {
  if (a.in_all() != b.in_all()) return a.in_all() < b.in_all();
  if (a.bounds.size() != b.bounds.size()) return a.bounds.size() < b.bounds.size();
  return ranks_before(a.candidate, b.candidate);
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
        ties_(ties_of(request.groups)),
        asked_(limits_of(request)),
        bounds_(bounds_of(request, ties_)) {
    // Where a group would be bare outside, an edge stands there always; and one that never stood still does not.
    FitRequest standing = request;
    for (const std::size_t first : ties_.first_of) standing.groups[first].most = Grid::max_side;
    edged_ = request.edge && bare_outside(standing);
    while (!request.edge) {
      const auto bare = bare_outside(standing);
      if (!bare) break;
      const std::size_t variable = ties_.variable_of[bare->group];
      standing.groups[ties_.first_of[variable]].most = 0;
      absent_.push_back(variable);
    }
  }

  Nearest run() && {
    double from =
        0.5;  // of the share that is told: what fit() searched before is one half, and each size half the rest
    for (std::size_t size = 1; size <= bounds_.size() && goes_on(size); ++size) {
      Choices choices(size, bounds_.size());
      const double step = (1 - from) / 2 / choices.count();
      do {
        budget_.stage(from, from + step);
        look(choices.chosen());
        from += step;
      } while (!budget_.spent() && choices.next());
    }
    std::sort(found_.begin(), found_.end(), comes_before);
    budget_.stage(from, 1);
    fill_up();
    Nearest out;
    out.complete = !budget_.spent();
    // What is told of a request that takes too long is worth less, but three that there are are told.
    if (!out.complete && found_.size() < most_nearest) {
      budget_.reserve();
      add_of_all();
    }
    out.nearest.reserve(std::min(found_.size(), most_nearest));
    for (Near& each : found_) {
      if (out.nearest.size() == most_nearest) break;
      std::vector<FitGive> gives = gives_of(request_, each.candidate);
      out.nearest.push_back({std::move(each.candidate), std::move(gives)});
    }
    return out;
  }

 private:
  // One candidate of each choice of bounds may be fewer than three: then others of theirs follow, at last of all there
  // are, however far off.
  void fill_up() {
    for (std::size_t size = 1; size <= bounds_.size() && found_.size() < most_nearest; ++size) {
      std::vector<Near> more;
      Choices choices(size, bounds_.size());
      do {
        take(limits_at(choices.chosen(), max_far), more);
      } while (!budget_.spent() && choices.next());
      add(std::move(more));
    }
    if (found_.size() < most_nearest) add_of_all();
  }

  // Of all there are, whatever they break.
  void add_of_all() {
    std::vector<std::size_t> all(bounds_.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    Limits none = limits_at(all, max_far);
    none.width_tolerance.reset();
    none.height_tolerance.reset();
    std::vector<Near> more;
    take(none, more);
    add(std::move(more));
  }

  // The best within the limits that are not among the found.
  void take(const Limits& limits, std::vector<Near>& more) {
    if (budget_.spent()) return;
    const auto known = [](const std::vector<Near>& in, const FitCandidate& of) {
      return std::any_of(in.begin(), in.end(), [&](const Near& each) { return each.candidate == of; });
    };
    const int most = static_cast<int>(most_nearest + found_.size());
    for (FitCandidate& each : search(request_, combination_, limits, most, budget_)) {
      if (known(found_, each) || known(more, each)) continue;
      Near near;
      near.bounds.resize(gives_of(request_, each).size());  // here only how many they are is looked at
      near.far = far_of(each);
      near.candidate = std::move(each);
      more.push_back(std::move(near));
    }
  }

  void add(std::vector<Near> more) {
    std::sort(more.begin(), more.end(), comes_before);
    std::move(more.begin(), more.end(), std::back_inserter(found_));
  }

  bool goes_on(std::size_t size) const { return !budget_.spent() && (size <= 2 || found_.size() < most_nearest); }

  // How far each of these bounds may give, for all of them to give less than some of them by themselves.
  Count far_to_look(const std::vector<std::size_t>& chosen) const {
    Count out = max_far;
    for (const Near& each : found_) {
      const bool is_part = std::includes(chosen.begin(), chosen.end(), each.bounds.begin(), each.bounds.end());
      if (is_part) out = std::min(out, (each.in_all() - 1) / static_cast<Count>(chosen.size()));
    }
    return out;
  }

  // What is allowed when all of these bounds give so far.
  Limits limits_at(const std::vector<std::size_t>& chosen, Count far) const {
    Limits out = asked_;
    const std::optional<double>& tolerance = request_.tolerance_percent;
    if (!tolerance && far < max_far) out.width_tolerance = out.height_tolerance = given(tolerance, far);
    for (const std::size_t index : chosen) {
      const Bound& bound = bounds_[index];
      switch (bound.bound) {
        case FitBound::width:
          out.width_tolerance = std::min(loose_percent, given(tolerance, far));
          break;
        case FitBound::height:
          out.height_tolerance = std::min(loose_percent, given(tolerance, far));
          break;
        case FitBound::times:
          if (std::find(absent_.begin(), absent_.end(), bound.variable) != absent_.end()) break;
          out.times[bound.variable] = given(asked_.times[bound.variable], {1, Grid::max_side}, far);
          break;
        case FitBound::edge_columns:
          out.edge = given(asked_.edge, {0, Grid::max_side}, far);
          break;
        case FitBound::rows:
          if (far < whole) break;
          out.rows_step = 1;
          out.rows_extra = 0;
          break;
        case FitBound::panels:
          out.panels = given(asked_.panels, {1, FitRequest::max_panels}, far);
          break;
        case FitBound::needles:
          out.columns_most = given(Range{0, asked_.columns_most}, {0, Grid::max_side}, far).most;
          break;
      }
    }
    if (edged_) out.edge = {std::max<Count>(out.edge.least, 1), std::max<Count>(out.edge.most, 1)};
    return out;
  }

  // How far the bound must give that must give most.
  Count far_of(const FitCandidate& candidate) const {
    Count out = std::max(far_past(request_.tolerance_percent, candidate.width_error_percent),
                         far_past(request_.tolerance_percent, candidate.height_error_percent));
    for (std::size_t i = 0; i < asked_.times.size(); ++i) {
      out = std::max(out, far_past(asked_.times[i], candidate.times[ties_.first_of[i]]));
    }
    out = std::max(out, far_past(asked_.edge, candidate.edge_columns));
    const Count rows = candidate.rows - asked_.rows_extra;
    if (rows < 0 || rows % asked_.rows_step != 0) out = std::max(out, whole);
    out = std::max(out, far_past(asked_.panels, candidate.panels));
    return std::max(out, far_past(Range{0, asked_.columns_most}, candidate.columns));
  }

  // Whether there is anything when these bounds give so far; then `near` is the best of it.
  bool finds(const std::vector<std::size_t>& chosen, Count far, Near& near) {
    std::vector<FitCandidate> best = search(request_, combination_, limits_at(chosen, far), 1, budget_);
    if (best.empty()) return false;
    near.far = far_of(best.front());
    near.candidate = std::move(best.front());
    return true;
  }

  // The further the bounds give the more is found, so the least that they must give is looked for by halving. What is
  // found may give less than was allowed; so one step less is tried too, which ends it soon where few values are left.
  void look(const std::vector<std::size_t>& chosen) {
    Near near;
    near.bounds = chosen;
    if (!finds(chosen, far_to_look(chosen), near)) return;
    Count none = 0;  // nothing fits when nothing gives
    while (near.far - none > 1 && !budget_.spent()) {
      if (!finds(chosen, near.far - 1, near)) break;
      const Count middle = none + (near.far - none) / 2;
      if (middle > none && !finds(chosen, middle, near)) none = middle;
    }
    found_.push_back(std::move(near));
  }

  const FitRequest& request_;
  Combination& combination_;
  Budget& budget_;
  Ties ties_;
  Limits asked_;
  std::vector<Bound> bounds_;
  bool edged_ = false;
  std::vector<std::size_t> absent_;  // variables of groups that stand no more often than asked: not at all
  std::vector<Near> found_;
};

}  // namespace

std::vector<FitGive> gives_of(const FitRequest& request, const FitCandidate& candidate) {
  return Gives(request, candidate).take();
}

Nearest nearest(const FitRequest& request, Combination& combination, Budget& budget) {
  return Loosening(request, combination, budget).run();
}

}  // namespace latchwork::inline v0::fitting
