#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/error.hpp"
#include "latchwork/grading.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int candidates_each = 300;

[[noreturn]] void refuse(ErrorCode code, const std::string& field, const std::string& message) {
  Place place;
  place.field = field;
  throw Error(code, place, message);
}

void require_sizes(const std::vector<GradeSize>& sizes) {
  if (sizes.empty() || sizes.size() > GradeRequest::max_sizes) {
    refuse(ErrorCode::bad_argument, "sizes",
           fmt::format("there are {} sizes; it must be 1..{}", sizes.size(), GradeRequest::max_sizes));
  }
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const std::string field = fmt::format("sizes[{}].name", i);
    if (sizes[i].name.find('\0') != std::string::npos || utf8_error(sizes[i].name) != std::string_view::npos) {
      refuse(ErrorCode::bad_encoding, field, field + " holds a NUL, or a byte that is not UTF-8");
    }
    if (sizes[i].name.empty()) refuse(ErrorCode::bad_argument, field, field + " is empty");
  }
}

/// Of all constructions in all sizes; at least one, whatever the design says.
double fits_of(const GradeRequest& request) {
  const FitRequest& design = request.design;
  const double edges = design.edge ? static_cast<double>(design.edge_most) - design.edge_least + 1 : 1;
  const double panels = static_cast<double>(design.panels_most) - design.panels_least + 1;
  return std::max(1.0, edges * panels * static_cast<double>(request.sizes.size()));
}

void require_constructions(const GradeRequest& request) {
  constexpr std::int64_t most = 1000;
  const FitRequest& design = request.design;
  const std::int64_t edges = design.edge ? std::int64_t{design.edge_most} - design.edge_least + 1 : 1;
  const std::int64_t panels = std::int64_t{design.panels_most} - design.panels_least + 1;
  const std::int64_t fits = edges * panels * std::ssize(request.sizes);
  if (fits <= most) return;
  refuse(ErrorCode::too_large, "design.edge_most",
         fmt::format("{} edge widths and {} counts of panels in {} sizes are {} fits; at most {}", edges, panels,
                     request.sizes.size(), fits, most));
}

/// What fit() refuses, by the field of the request that it came from.
FitResult fit_size(const GradeRequest& request, std::size_t index, FitRequest of, const Swatch& swatch,
                   const FitOptions& options) {
  const GradeSize& size = request.sizes[index];
  of.width_mm = size.width_mm;
  of.width_most_mm = size.width_most_mm;
  of.height_mm = size.height_mm;
  of.height_most_mm = size.height_most_mm;
  of.most = candidates_each;
  try {
    return fit(of, swatch, options);
  } catch (const Error& error) {
    if (error.code() != ErrorCode::bad_argument && error.code() != ErrorCode::too_large) throw;
    Place place = error.place();
    const bool target = place.field.starts_with("width") || place.field.starts_with("height");
    const std::string owner = target ? fmt::format("sizes[{}].", index) : std::string("design.");
    place.field = owner + place.field;
    throw Error(error.code(), place, owner + error.what());
  }
}

/// Shares out what is told: to so many fits, one after another.
class Progressing {
 public:
  Progressing(const FitOptions& options, double fits) : options_(options), fits_(fits) {}
  FitOptions next() {
    FitOptions out;
    out.stop = options_.stop;
    if (options_.progress) {
      out.progress = [this, done = done_](const Progress& part) {
        Progress told = part;
        told.share = std::min(1.0, (done + part.share) / fits_);
        options_.progress(told);
      };
    }
    done_ += 1;
    return out;
  }
  /// These are not done.
  void passed_over(std::size_t fits) { done_ += static_cast<double>(fits); }

 private:
  const FitOptions& options_;
  double fits_;
  double done_ = 0;
};

using Candidates = std::vector<FitCandidate>;

double end_of(double least, double most) {
  return most == 0 ? least : most;
}

/// -1, 0, 1: how a later size stands to an earlier one. A range is as large as its middle.
int growth(double least, double most, double later_least, double later_most) {
  const double one = least + end_of(least, most);
  const double other = later_least + end_of(later_least, later_most);
  return one < other ? 1 : one > other ? -1 : 0;
}

bool goes_with(int growth, int before, int after) {
  return (growth < 0 || before <= after) && (growth > 0 || before >= after);
}

/// Candidates of neighbouring sizes that may stand beside each other.
struct Step {
  int wider = 0;
  int higher = 0;

  bool takes(const FitCandidate& before, const FitCandidate& after) const {
    if (!goes_with(higher, before.rows, after.rows)) return false;
    for (std::size_t group = 0; group < before.times.size(); ++group) {
      if (!goes_with(wider, before.times[group], after.times[group])) return false;
    }
    return true;
  }
};

/// A choice of one candidate for each size, by index.
struct Choice {
  double greatest = 0;
  double sum = 0;
  std::vector<std::size_t> of;
};

/// The least sum of errors of candidates none of which is off by more than `limit`; nothing where none go together.
std::optional<Choice> least_sum(const std::vector<Candidates>& sizes, const std::vector<Step>& steps, double limit) {
  constexpr double never = std::numeric_limits<double>::infinity();
  std::vector<std::vector<double>> sums(sizes.size());
  std::vector<std::vector<std::size_t>> from(sizes.size());
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    sums[i].assign(sizes[i].size(), never);
    from[i].assign(sizes[i].size(), 0);
    for (std::size_t c = 0; c < sizes[i].size(); ++c) {
      if (sizes[i][c].error > limit) continue;
      if (i == 0) {
        sums[0][c] = sizes[0][c].error;
        continue;
      }
      for (std::size_t before = 0; before < sizes[i - 1].size(); ++before) {
        const double sum = sums[i - 1][before] + sizes[i][c].error;
        if (sum < sums[i][c] && steps[i - 1].takes(sizes[i - 1][before], sizes[i][c])) {
          sums[i][c] = sum;
          from[i][c] = before;
        }
      }
    }
  }
  const auto best = std::min_element(sums.back().begin(), sums.back().end());
  if (best == sums.back().end() || *best == never) return std::nullopt;
  Choice choice;
  choice.sum = *best;
  choice.of.resize(sizes.size());
  choice.of.back() = static_cast<std::size_t>(best - sums.back().begin());
  for (std::size_t i = sizes.size() - 1; i > 0; --i) choice.of[i - 1] = from[i][choice.of[i]];
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    choice.greatest = std::max(choice.greatest, sizes[i][choice.of[i]].error);
  }
  return choice;
}

/// The choice whose greatest error is least, then whose sum is: by halving over the errors that occur.
std::optional<Choice> best_choice(const std::vector<Candidates>& sizes, const std::vector<Step>& steps) {
  std::set<double> errors;
  for (const Candidates& candidates : sizes) {
    for (const FitCandidate& candidate : candidates) errors.insert(candidate.error);
  }
  std::vector<double> limits(errors.begin(), errors.end());
  if (limits.empty() || !least_sum(sizes, steps, limits.back())) return std::nullopt;
  std::size_t low = 0;
  std::size_t high = limits.size() - 1;
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    if (least_sum(sizes, steps, limits[middle])) {
      high = middle;
    } else {
      low = middle + 1;
    }
  }
  return least_sum(sizes, steps, limits[low]);
}

}  // namespace

Grading grade(const GradeRequest& request, const Swatch& swatch, const FitOptions& options) {
  require_sizes(request.sizes);
  Progressing fits(options, fits_of(request) + static_cast<double>(request.sizes.size()));
  Grading grading;
  for (const GradeSize& size : request.sizes) grading.names.push_back(size.name);

  // Which constructions there are is known from the request; that every size has one is asked first, for its reason.
  for (std::size_t i = 0; i < request.sizes.size(); ++i) {
    FitResult found = fit_size(request, i, request.design, swatch, fits.next());
    if (!found.candidates.empty()) continue;
    grading.missing = static_cast<int>(i);
    grading.nearest = std::move(found.nearest);
    grading.nearest_complete = found.nearest_complete;
    grading.message = fmt::format("nothing fits size '{}'", one_line(request.sizes[i].name));
    return grading;
  }
  std::vector<Step> steps;
  for (std::size_t i = 1; i < request.sizes.size(); ++i) {
    const GradeSize& a = request.sizes[i - 1];
    const GradeSize& b = request.sizes[i];
    steps.push_back({growth(a.width_mm, a.width_most_mm, b.width_mm, b.width_most_mm),
                     growth(a.height_mm, a.height_most_mm, b.height_mm, b.height_most_mm)});
  }
  std::optional<Choice> best;
  require_constructions(request);
  const int edge_least = request.design.edge ? request.design.edge_least : 0;
  const int edge_most = request.design.edge ? request.design.edge_most : 0;
  for (int panels = request.design.panels_least; panels <= request.design.panels_most; ++panels) {
    for (int edge = edge_least; edge <= edge_most; ++edge) {
      FitRequest alike = request.design;
      alike.panels_least = alike.panels_most = panels;
      alike.edge_least = alike.edge_most = edge;
      std::vector<Candidates> sizes;
      for (std::size_t i = 0; i < request.sizes.size(); ++i) {
        sizes.push_back(fit_size(request, i, alike, swatch, fits.next()).candidates);
        if (!sizes.back().empty()) continue;
        fits.passed_over(request.sizes.size() - i - 1);
        break;
      }
      if (sizes.back().empty()) continue;
      const std::optional<Choice> choice = best_choice(sizes, steps);
      if (!choice) continue;
      if (best && std::pair(choice->greatest, choice->sum) >= std::pair(best->greatest, best->sum)) continue;
      best = choice;
      grading.candidates.clear();
      for (std::size_t i = 0; i < sizes.size(); ++i) grading.candidates.push_back(sizes[i][choice->of[i]]);
    }
  }
  if (!best) {
    grading.message = fmt::format(
        "each size can be fitted, but no choice from their {} best goes together in one construction with "
        "times and rows that grow with the sizes",
        candidates_each);
  }
  return grading;
}

}  // namespace latchwork::inline v0
