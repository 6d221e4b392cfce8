// Which articles measure what is wanted.
#include <algorithm>

#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

latchwork_fit_request request_default() {
  return fit_request_out({});
}

}  // namespace

namespace latchwork::c {

latchwork_fit_options fit_options_in(const latchwork_fit_options* options) {
  const latchwork_fit_options defaults = LATCHWORK_FIT_OPTIONS_INIT;
  return options == nullptr ? defaults : struct_in(options, defaults, "options");
}

latchwork_fit_request fit_request_out(const FitRequest& from) {
  latchwork_fit_request to = LATCHWORK_FIT_REQUEST_INIT;
  to.width_mm = from.width_mm;
  to.width_most_mm = from.width_most_mm;
  to.height_mm = from.height_mm;
  to.height_most_mm = from.height_most_mm;
  to.edge_least = from.edge_least;
  to.edge_most = from.edge_most;
  to.panels_least = from.panels_least;
  to.panels_most = from.panels_most;
  to.rows_step = from.rows_step;
  to.rows_extra = from.rows_extra;
  to.vary_start = from.vary_start ? 1 : 0;
  to.needles = from.needles;
  to.most = from.most;
  to.state = from.state ? static_cast<int32_t>(*from.state) : LATCHWORK_CLOTH_STATE_MOST_FINISHED;
  to.tolerance_percent = from.tolerance_percent.value_or(LATCHWORK_NO_TOLERANCE);
  to.seam_stitches = from.seam_stitches;
  to.seam_left = from.seam_left;
  to.seam_right = from.seam_right;
  to.seam_bottom = from.seam_bottom;
  to.seam_top = from.seam_top;
  return to;
}

int as_group_in(std::int32_t tied, std::int32_t as_group, const std::string& field) {
  if (!flag(tied, (field + ".tied").c_str())) {
    require_zero(as_group, field + ".as_group");
    return -1;
  }
  if (as_group < 0) {
    refuse((field + ".as_group").c_str(), std::to_string(as_group) + "; it must be the index of an earlier group");
  }
  return as_group;
}

FitRequest fit_request_in(const latchwork_fit_request* request, const std::string& name) {
  const latchwork_fit_request from = struct_in(request, request_default(), name.c_str());
  FitRequest to;
  to.width_mm = from.width_mm;
  to.width_most_mm = from.width_most_mm;
  to.height_mm = from.height_mm;
  to.height_most_mm = from.height_most_mm;
  if (from.tolerance_percent != LATCHWORK_NO_TOLERANCE) to.tolerance_percent = from.tolerance_percent;
  for (const latchwork_fit_group& group : array_in(from.groups, from.group_count, (name + ".groups").c_str())) {
    const std::string field = name + ".groups[" + std::to_string(to.groups.size()) + "]";
    to.groups.push_back({strips_in(group.strips, group.strip_count, (field + ".strips").c_str()), group.least,
                         group.most, as_group_in(group.tied, group.as_group, field)});
  }
  if (from.edge != nullptr) to.edge = from.edge->value;
  to.edge_least = from.edge_least;
  to.edge_most = from.edge_most;
  to.panels_least = from.panels_least;
  to.panels_most = from.panels_most;
  to.seam_stitches = from.seam_stitches;
  to.rows_step = from.rows_step;
  to.rows_extra = from.rows_extra;
  to.vary_start = flag(from.vary_start, (name + ".vary_start").c_str());
  to.needles = from.needles;
  to.most = from.most;
  to.state = cloth_state_in(from.state, (name + ".state").c_str());
  to.substitutes = substitutes_in(from.substitutes, from.substitute_count, (name + ".substitutes").c_str());
  to.seam_left = from.seam_left;
  to.seam_right = from.seam_right;
  to.seam_bottom = from.seam_bottom;
  to.seam_top = from.seam_top;
  return to;
}

latchwork_fit_candidate fit_candidate_out(const FitCandidate& from) {
  latchwork_fit_candidate to = {};
  to.panels = from.panels;
  std::copy(from.times.begin(), from.times.end(), to.times);  // a request has no more groups than there is room for
  to.edge_columns = from.edge_columns;
  to.columns = from.columns;
  to.rows = from.rows;
  to.start_row = from.start_row;
  to.open_ends = from.open_ends ? 1 : 0;
  to.imbalance_rows = from.imbalance_rows;
  to.width_mm = from.width_mm;
  to.height_mm = from.height_mm;
  to.width_error_mm = from.width_error_mm;
  to.height_error_mm = from.height_error_mm;
  to.width_error_percent = from.width_error_percent;
  to.height_error_percent = from.height_error_percent;
  to.error = from.error;
  return to;
}

std::vector<latchwork_fit_give> fit_gives_out(const FitNearest& nearest) {
  std::vector<latchwork_fit_give> gives;
  gives.reserve(nearest.gives.size());
  for (const FitGive& from : nearest.gives) {
    gives.push_back({from.words.c_str(), from.value, from.limit, static_cast<int32_t>(from.bound), from.group});
  }
  return gives;
}

// What fitted() reads.
FitCandidate fit_candidate_in(const latchwork_fit_candidate* candidate, const FitRequest& request) {
  const latchwork_fit_candidate& from = given(candidate, "candidate");
  FitCandidate to;
  to.panels = from.panels;
  const std::size_t groups = std::min<std::size_t>(request.groups.size(), LATCHWORK_FIT_REQUEST_MAX_GROUPS);
  to.times.assign(from.times, from.times + groups);
  to.edge_columns = from.edge_columns;
  to.columns = from.columns;
  to.rows = from.rows;
  to.start_row = from.start_row;
  return to;
}

}  // namespace latchwork::c

namespace {

const FitResult& result_in(const latchwork_fit_result* fit_result) {
  return given(fit_result, "fit_result").value;
}

}  // namespace

latchwork_status latchwork_fit_request_default(latchwork_fit_request* request, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(request, "request").take(request_default()); });
}

latchwork_status latchwork_fit(const latchwork_fit_request* request, const latchwork_swatch* swatch,
                               const latchwork_fit_options* options, latchwork_fit_result** out,
                               latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_fit_options how = fit_options_in(options);
      Watch watch(how.progress, how.user_data);
      return fit(fit_request_in(request, "request"), given(swatch, "swatch").value, {watch.token(), watch.progress()});
    });
  });
}

latchwork_status latchwork_fit_result_copy(const latchwork_fit_result* fit_result, latchwork_fit_result** out,
                                           latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return result_in(fit_result); }); });
}

latchwork_status latchwork_fit_result_equal(const latchwork_fit_result* fit_result, const latchwork_fit_result* other,
                                            int32_t* equal, latchwork_error* error) {
  return guarded(error, [&] { given(equal, "equal") = result_in(fit_result) == given(other, "other").value ? 1 : 0; });
}

void latchwork_fit_result_destroy(latchwork_fit_result* fit_result) {
  destroy(fit_result);
}

latchwork_status latchwork_fit_result_candidates(const latchwork_fit_result* fit_result,
                                                 latchwork_fit_candidate* candidates, size_t capacity, size_t* needed,
                                                 latchwork_error* error) {
  return guarded(error, [&] {
    Room room(candidates, capacity, needed, "candidates");
    room.take(result_in(fit_result).candidates, fit_candidate_out);
  });
}

latchwork_status latchwork_fit_result_nearest(const latchwork_fit_result* fit_result,
                                              latchwork_fit_candidate* candidates, size_t capacity, size_t* needed,
                                              latchwork_error* error) {
  return guarded(error, [&] {
    Room room(candidates, capacity, needed, "candidates");
    room.take(result_in(fit_result).nearest, [](const FitNearest& from) { return fit_candidate_out(from.candidate); });
  });
}

latchwork_status latchwork_fit_result_gives(const latchwork_fit_result* fit_result, size_t index,
                                            latchwork_fit_give* gives, size_t capacity, size_t* needed,
                                            latchwork_error* error) {
  return guarded(error, [&] {
    Room room(gives, capacity, needed, "gives");
    room.take(fit_gives_out(element(result_in(fit_result).nearest, index, "index")));
  });
}

latchwork_status latchwork_fit_result_nearest_complete(const latchwork_fit_result* fit_result,
                                                       int32_t* nearest_complete, latchwork_error* error) {
  return guarded(error,
                 [&] { given(nearest_complete, "nearest_complete") = result_in(fit_result).nearest_complete ? 1 : 0; });
}

latchwork_status latchwork_fit_result_findings(const latchwork_fit_result* fit_result, latchwork_findings** out,
                                               latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return result_in(fit_result).findings; }); });
}

latchwork_status latchwork_fitted(const latchwork_fit_request* request, const latchwork_fit_candidate* candidate,
                                  int32_t panel, latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const FitRequest wanted = fit_request_in(request, "request");
      return fitted(wanted, fit_candidate_in(candidate, wanted), panel);
    });
  });
}
