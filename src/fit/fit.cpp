#include "latchwork/fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string_view>
#include <utility>
#include <vector>

#include "fit/budget.hpp"
#include "fit/combination.hpp"
#include "fit/nearest.hpp"
#include "fit/request.hpp"
#include "fit/search.hpp"
#include "fit/start.hpp"
#include "gauge/gauges.hpp"
#include "size/bands.hpp"

namespace latchwork::inline v0 {

namespace {

std::vector<std::string_view> textures_of(const FitRequest& request) {
  std::vector<std::string_view> out;
  if (request.edge) out.push_back(request.edge->texture);
  for (const FitGroup& group : request.groups) {
    for (const Strip& strip : group.strips) out.push_back(strip.texture);
  }
  return out;
}

}  // namespace

FitResult fit(const FitRequest& request, const Swatch& swatch, const FitOptions& options) {
  return fitting::fit_within(request, swatch, fitting::whole_budget, options);
}

FitResult fitting::fit_within(const FitRequest& request, const Swatch& swatch, Count budget_of_each,
                              const FitOptions& options, Loosened loosened, bool with_nearest) {
  fitting::require_request(request);
  const Gauges gauges(swatch, request.state, request.substitutes);
  fitting::Combination combination(request, gauges);
  FitResult out;
  fitting::Budget budget(options, budget_of_each);
  constexpr double searched = 0.5;  // of the share that is told
  budget.stage(0, searched);
  fitting::Limits limits = fitting::limits_of(request);
  if (loosened.width) limits.width_tolerance.reset();
  if (loosened.height) limits.height_tolerance.reset();
  out.candidates = fitting::search(request, combination, limits, request.most, budget);
  if (budget.spent()) {
    Place place;
    place.field = "groups";
    throw Error(ErrorCode::too_large, place,
                fmt::format("groups, edge columns and panels make too many combinations: {} parts of their widths and "
                            "heights were looked at; narrow their least and most",
                            budget_of_each));
  }
  out.findings = measuring_findings(textures_of(request), swatch, gauges);
  fitting::Starts starts(request);
  if (out.candidates.empty() && with_nearest) {
    fitting::Budget more(options, budget_of_each);
    fitting::Nearest found = fitting::nearest(request, combination, more);
    out.nearest = std::move(found.nearest);
    out.nearest_complete = found.complete;
    budget.stage(1, 1);
    for (FitNearest& each : out.nearest) starts.choose(each.candidate, budget);
  } else if (!out.candidates.empty()) {
    budget.stage(searched, 1);
    for (FitCandidate& candidate : out.candidates) starts.choose(candidate, budget);
    std::vector<Finding> open = fitting::open_findings(request, out.candidates.front(), "the best fit");
    std::move(open.begin(), open.end(), std::back_inserter(out.findings));
  }
  budget.tell(1);
  return out;
}

}  // namespace latchwork::inline v0
