#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

#include "error/refuse.hpp"
#include "fit/start.hpp"
#include "grading/grader.hpp"
#include "grading/nearest.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grading.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

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
    for (std::size_t before = 0; before < i; ++before) {
      if (sizes[before].name != sizes[i].name) continue;
      refuse(ErrorCode::bad_argument, field,
             fmt::format("{} is '{}', as sizes[{}].name is; a pattern tells sizes by their names", field,
                         shown(sizes[i].name), before));
    }
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

/// The names of a group's strips, each once.
std::string made_of(const FitGroup& group) {
  std::vector<std::string> names;
  for (const Strip& strip : group.strips) {
    std::string name = one_line(strip.name.empty() ? strip.texture : strip.name);
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
  }
  return joined(names, " + ");
}

std::vector<std::string> group_names(const std::vector<FitGroup>& groups) {
  std::vector<std::string> made;
  made.reserve(groups.size());
  for (const FitGroup& group : groups) made.push_back(made_of(group));
  std::vector<std::string> out = made;
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (std::count(made.begin(), made.end(), made[i]) > 1) out[i] += fmt::format(" (group {})", i + 1);
  }
  return out;
}

bool is_open(const Finding& finding) {
  return finding.code == FindingCode::open_crossing || finding.code == FindingCode::open_stack;
}

std::string nothing_fits(const std::string& size, const std::vector<FitNearest>& nearest, bool complete) {
  std::string out = fmt::format("nothing fits size '{}'", one_line(size));
  if (nearest.empty()) {
    return out + (complete ? ", nor would with any bounds loosened: all is wider or higher than a grid may be, or "
                             "nothing is left between the seams"
                           : ", nor comes near as far as was looked");
  }
  std::vector<std::string> gives;
  for (const FitGive& give : nearest.front().gives) gives.push_back(give.words);
  return out + "; it would with: " + joined(gives, "; ");
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
  out.groups = group_names(request.design.groups);

  // Which constructions there are is known from the request; that every size has one is asked first, for its reason.
  for (std::size_t i = 0; i < request.sizes.size(); ++i) {
    FitRequest design = request.design;
    design.most = 1;
    FitResult found = grading::fit_size(request, i, std::move(design), swatch, fits.next(), {}, true);
    if (i == 0) {
      std::copy_if(found.findings.begin(), found.findings.end(), std::back_inserter(out.findings),
                   [](const Finding& each) { return !is_open(each); });  // of that size by itself
    }
    if (!found.candidates.empty()) continue;
    out.missing = static_cast<int>(i);
    out.nearest = std::move(found.nearest);
    out.nearest_complete = found.nearest_complete;
    out.message = nothing_fits(request.sizes[i].name, out.nearest, out.nearest_complete);
    fits.end();
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
  for (std::size_t i = 0; i < out.candidates.size(); ++i) {
    const std::string whose = fmt::format("size '{}'", one_line(request.sizes[i].name));
    std::vector<Finding> open = fitting::open_findings(request.design, out.candidates[i], whose);
    std::move(open.begin(), open.end(), std::back_inserter(out.findings));
  }
  if (out.candidates.empty()) {
    out.nearest_complete = out.complete;
    if (out.complete) {  // else a search under looser bounds would end as early
      fitting::Budget more(watched, fitting::whole_budget);
      out.nearest = grading::nearest_together(request, swatch, order, fits, more, out.nearest_complete);
    }
    out.message = none_together(request, out);
  }
  fits.end();
  return out;
}

}  // namespace latchwork::inline v0
