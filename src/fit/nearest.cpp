#include "fit/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "fit/ranking.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::fitting {
namespace {

constexpr std::size_t most_nearest = 3;

struct Bound {
  FitBound bound = FitBound::width;  // which stands for both directions
  std::size_t group = 0;
};

std::vector<Bound> bounds_of(const FitRequest& request) {
  std::vector<Bound> out;
  if (request.tolerance_percent) out.push_back({FitBound::width});
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
    case FitBound::height:
      limits.tolerance_percent.reset();
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

/// Every choice of `size` out of `of` things, in order: advances `chosen`, or is false after the last.
bool next_choice(std::vector<std::size_t>& chosen, std::size_t of) {
  for (std::size_t i = chosen.size(); i-- > 0;) {
    if (chosen[i] + (chosen.size() - i) < of) {
      ++chosen[i];
      for (std::size_t k = i + 1; k < chosen.size(); ++k) chosen[k] = chosen[k - 1] + 1;
      return true;
    }
  }
  return false;
}

}  // namespace

std::vector<FitNearest> nearest(const FitRequest& request, Combination& combination, Budget& budget) {
  const std::vector<Bound> bounds = bounds_of(request);
  std::vector<FitCandidate> found;
  for (std::size_t size = 1; size <= bounds.size() && found.empty() && !budget.spent(); ++size) {
    std::vector<std::size_t> chosen(size);
    for (std::size_t i = 0; i < size; ++i) chosen[i] = i;
    do {
      Limits limits = limits_of(request);
      for (const std::size_t each : chosen) loosen(limits, bounds[each]);
      const std::vector<FitCandidate> best = search(request, combination, limits, 1, budget);
      found.insert(found.end(), best.begin(), best.end());
    } while (!budget.spent() && next_choice(chosen, bounds.size()));
  }
  std::sort(found.begin(), found.end(), ranks_before);
  if (found.size() > most_nearest) found.resize(most_nearest);
  std::vector<FitNearest> out;
  out.reserve(found.size());
  for (FitCandidate& candidate : found) {
    std::vector<FitGive> gives = Gives(request, candidate).take();
    out.push_back({std::move(candidate), std::move(gives)});
  }
  return out;
}

}  // namespace latchwork::inline v0::fitting
