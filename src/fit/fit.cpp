#include "latchwork/fit.hpp"

#include <fmt/format.h>

#include "fit/budget.hpp"
#include "fit/combination.hpp"
#include "fit/nearest.hpp"
#include "fit/request.hpp"
#include "fit/search.hpp"
#include "fit/start.hpp"
#include "gauge/gauges.hpp"

namespace latchwork::inline v0 {

FitResult fit(const FitRequest& request, const Swatch& swatch, const FitOptions& options) {
  return fitting::fit_within(request, swatch, fitting::whole_budget, options);
}

FitResult fitting::fit_within(const FitRequest& request, const Swatch& swatch, Count budget_of_each,
                              const FitOptions& options) {
  fitting::require_request(request);
  const Gauges gauges(swatch, request.state, request.substitutes);
  fitting::Combination combination(request, gauges);
  FitResult out;
  fitting::Budget budget(options, budget_of_each);
  constexpr double searched = 0.5;  // of the share that is told
  budget.stage(0, searched);
  out.candidates = fitting::search(request, combination, fitting::limits_of(request), request.most, budget);
  if (budget.spent()) {
    Place place;
    place.field = "groups";
    throw Error(ErrorCode::too_large, place,
                fmt::format("groups, edge columns and panels make too many combinations: {} parts of their widths and "
                            "heights were looked at; narrow their least and most",
                            budget_of_each));
  }
  fitting::Starts starts(request);
  budget.stage(searched, 1);
  for (FitCandidate& candidate : out.candidates) starts.choose(candidate, budget);
  if (out.candidates.empty()) {
    fitting::Budget more(options, budget_of_each);
    out.nearest = fitting::nearest(request, combination, more);
    out.nearest_complete = !more.spent();
    for (FitNearest& each : out.nearest) starts.choose(each.candidate, budget);
  }
  budget.tell(1);
  return out;
}

}  // namespace latchwork::inline v0
