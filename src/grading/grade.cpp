#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "grading/grader.hpp"
#include "grading/nearest.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grading.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

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

void require_constructions(const GradeRequest& request) {
  const std::int64_t edges = grading::edges_of(request.design);
  const std::int64_t panels = grading::panels_of(request.design);
  const std::int64_t fits = edges * panels * std::ssize(request.sizes);
  if (fits <= grading::most_fits) return;
  refuse(ErrorCode::too_large, "design.edge_most",
         fmt::format("{} edge widths and {} counts of panels in {} sizes are {} fits; at most {}", edges, panels,
                     request.sizes.size(), fits, grading::most_fits));
}

std::string none_together(const GradeRequest& request, const Grading& grading) {
  std::string out =
      "each size can be fitted, but no choice goes together in one construction with times and rows that grow with the "
      "sizes";
  if (!grading.complete) out += " as far as was looked";
  std::string gives;
  for (std::size_t i = 0; i < grading.nearest.size(); ++i) {
    for (const FitGive& give : grading.nearest[i].gives) {
      gives += fmt::format("{}size '{}' {}", gives.empty() ? "; they would with: " : "; ",
                           one_line(request.sizes[i].name), give.words);
    }
  }
  return out + gives;
}

}  // namespace

Grading grade(const GradeRequest& request, const Swatch& swatch, const FitOptions& options) {
  require_sizes(request.sizes);
  const auto count = static_cast<double>(request.sizes.size());
  // At least one construction, whatever the design says.
  const double constructions =
      static_cast<double>(grading::edges_of(request.design)) * static_cast<double>(grading::panels_of(request.design));
  grading::Progressing fits(options, (std::max(1.0, constructions) + 1) * count);
  Grading out;
  for (const GradeSize& size : request.sizes) out.names.push_back(size.name);

  // Which constructions there are is known from the request; that every size has one is asked first, for its reason.
  for (std::size_t i = 0; i < request.sizes.size(); ++i) {
    FitRequest design = request.design;
    design.most = 1;
    FitResult found = grading::fit_size(request, i, std::move(design), swatch, fits.next());
    if (i == 0) out.findings = std::move(found.findings);
    if (!found.candidates.empty()) continue;
    out.missing = static_cast<int>(i);
    out.nearest = std::move(found.nearest);
    out.nearest_complete = found.nearest_complete;
    out.message = fmt::format("nothing fits size '{}'", one_line(request.sizes[i].name));
    return out;
  }
  require_constructions(request);
  const grading::Order order(request.sizes);
  FitOptions watched;  // progress is told by the fits
  watched.stop = options.stop;
  fitting::Budget budget(watched, fitting::whole_budget);
  grading::Graded best = grading::best_of_constructions(request, swatch, order, fits, budget, true);
  out.candidates = std::move(best.candidates);
  out.complete = best.complete;
  if (out.candidates.empty()) {
    out.nearest_complete = out.complete;
    if (out.complete) {  // else a search under looser bounds would end as early
      fitting::Budget more(watched, fitting::whole_budget);
      out.nearest = grading::nearest_together(request, swatch, order, fits, more, out.nearest_complete);
    }
    out.message = none_together(request, out);
  }
  return out;
}

}  // namespace latchwork::inline v0
