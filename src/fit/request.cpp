#include "fit/request.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace latchwork::inline v0::fitting {
namespace {

constexpr double least_target_mm = 1;
constexpr double most_target_mm = 1'000'000;
constexpr double most_percent = 100;
constexpr double most_seam = 1000;  // as of SizeOptions

void require_target(const std::string& name, double least, double most) {
  if (!(least >= least_target_mm && least <= most_target_mm)) {
    refuse(name + "_mm",
           fmt::format("{}_mm is {}; it must be {}..{} mm", name, least, least_target_mm, most_target_mm));
  }
  if (most == 0 || (most >= least && most <= most_target_mm)) return;
  refuse(name + "_most_mm",
         fmt::format("{}_most_mm is {}; it must be 0 or {}..{} mm", name, most, least, most_target_mm));
}

void require_halves(std::string_view field, double value, double most) {
  if (value >= 0 && value <= most && 2 * value == std::floor(2 * value)) return;
  refuse(field, fmt::format("{} is {}; it must be 0..{}, whole or half", field, value, most));
}

void require_group(const FitGroup& group, std::size_t index) {
  const std::string field = fmt::format("groups[{}].", index);
  if (group.strips.empty()) refuse(field + "strips", field + "strips has none; it must have one or more");
  if (columns_of(group) > Grid::max_side) {
    refuse(field + "strips",
           fmt::format("{}strips is {} columns wide; the most is {}", field, columns_of(group), Grid::max_side));
  }
  require(field + "least", group.least, 0, Grid::max_side);
  require(field + "most", group.most, group.least, Grid::max_side);
  require_tie(field + "as_group", group.as_group, index);
}

/// The first row in which the column has no stitch; 0 where it has one in each.
int bare_row(const Grid& grid, int column) {
  for (int row = 1; row <= grid.rows(); ++row) {
    if (grid.at(row, column) == Cell::none) return row;
  }
  return 0;
}

int bare_row(const FitGroup& group, bool left) {
  const Grid& grid = left ? group.strips.front().grid : group.strips.back().grid;
  return bare_row(grid, left ? 0 : grid.columns() - 1);
}

/// A panel is as wide as its columns in every row: its outermost have a stitch in each.
void require_stitches_outside(const FitRequest& request) {
  if (request.edge) {  // also one that may stand 0 times: what is nearest may have it
    if (const int row = bare_row(request.edge->grid, 0); row > 0) {
      refuse("edge", fmt::format("edge has no stitch in row {}; a panel's outermost columns have one in each", row));
    }
  }
  if (request.edge && (request.edge_least > 0 || is_always_sewn(request))) return;
  if (const auto bare = bare_outside(request)) {
    const int row = bare_row(request.groups[bare->group], bare->left);
    refuse(fmt::format("groups[{}].strips", bare->group),
           fmt::format("groups[{}].strips: the {} column has no stitch in row {}, and may be a panel's outermost; give "
                       "an edge, one column or more",
                       bare->group, bare->left ? "first" : "last", row));
  }
}

}  // namespace

void refuse(std::string_view field, const std::string& message) {
  Place place;
  place.field = field;
  throw Error(ErrorCode::bad_argument, place, message);
}

void require(std::string_view field, Count value, Count least, Count most) {
  if (value >= least && value <= most) return;
  refuse(field, fmt::format("{} is {}; it must be {}..{}", field, value, least, most));
}

void require_tie(std::string_view field, int as_group, std::size_t index) {
  if (as_group >= -1 && as_group < static_cast<Count>(index)) return;
  refuse(field, fmt::format("{} is {}; it must be the index of an earlier group, or -1 for none", field, as_group));
}

void require_bounds(const FitRequest& request) {
  if (request.tolerance_percent && !(*request.tolerance_percent >= 0 && *request.tolerance_percent <= most_percent)) {
    refuse("tolerance_percent",
           fmt::format("tolerance_percent is {}; it must be 0..{}", *request.tolerance_percent, most_percent));
  }
  require("edge_least", request.edge_least, 0, Grid::max_side);
  require("edge_most", request.edge_most, request.edge_least, Grid::max_side);
  require("panels_least", request.panels_least, 1, FitRequest::max_panels);
  require("panels_most", request.panels_most, request.panels_least, FitRequest::max_panels);
  require_halves("seam_stitches", request.seam_stitches, 1);
  require("rows_step", request.rows_step, 1, Grid::max_side);
  require("rows_extra", request.rows_extra, 0, Grid::max_side);
  if (request.needles < 0) refuse("needles", fmt::format("needles is {}; it must be 0 or more", request.needles));
  require("most", request.most, 1, FitRequest::max_candidates);
  require_halves("seam_left", request.seam_left, most_seam);
  require_halves("seam_right", request.seam_right, most_seam);
  require_halves("seam_bottom", request.seam_bottom, most_seam);
  require_halves("seam_top", request.seam_top, most_seam);
}

void require_request(const FitRequest& request) {
  require_target("width", request.width_mm, request.width_most_mm);
  require_target("height", request.height_mm, request.height_most_mm);
  require_design(request);
}

void require_design(const FitRequest& request) {
  if (request.groups.empty() || request.groups.size() > static_cast<std::size_t>(FitRequest::max_groups)) {
    refuse("groups", fmt::format("groups are {}; there must be 1..{}", request.groups.size(), FitRequest::max_groups));
  }
  for (std::size_t i = 0; i < request.groups.size(); ++i) require_group(request.groups[i], i);
  if (request.edge && request.edge->grid.columns() != 1) {
    refuse("edge", fmt::format("edge is {} columns wide; it must be 1", request.edge->grid.columns()));
  }
  require_bounds(request);
  if (!can_be_sewn(request, request.panels_least)) {
    refuse(
        "edge",
        fmt::format("edge is not given, and a seam between two of {} panels takes in {} of its columns; give one, or "
                    "set seam_stitches to 0",
                    request.panels_least, request.seam_stitches));
  }
  require_stitches_outside(request);
}

std::optional<BareOutside> bare_outside(const FitRequest& request) {
  const Ties ties = ties_of(request.groups);
  const auto counting = [&](std::size_t index) -> const FitGroup& {
    return request.groups[ties.first_of[ties.variable_of[index]]];
  };
  const std::size_t count = request.groups.size();
  for (const bool left : {true, false}) {
    std::vector<bool> passed(ties.first_of.size(), false);  // groups of that variable stand further out
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t group = left ? i : count - 1 - i;
      const std::size_t variable = ties.variable_of[group];
      if (passed[variable]) continue;
      passed[variable] = true;
      if (counting(group).most > 0 && bare_row(request.groups[group], left) > 0) return BareOutside{group, left};
      if (counting(group).least > 0) break;
    }
  }
  return std::nullopt;
}

bool is_always_sewn(const FitRequest& request) {
  return request.panels_least > 1 && request.seam_stitches > 0;
}

bool can_be_sewn(const FitRequest& request, Count panels) {
  return panels == 1 || request.seam_stitches == 0 || request.edge;
}

Count columns_of(const FitGroup& group) {
  Count columns = 0;
  for (const Strip& strip : group.strips) columns += strip.grid.columns();
  return columns;
}

SizeOptions measuring_of(const FitRequest& request, int panel, int panels) {
  SizeOptions out;
  out.state = request.state;
  out.substitutes = request.substitutes;
  out.seam_left = panel == 0 ? request.seam_left : request.seam_stitches;
  out.seam_right = panel == panels - 1 ? request.seam_right : request.seam_stitches;
  out.seam_bottom = request.seam_bottom;
  out.seam_top = request.seam_top;
  return out;
}

Ties ties_of(const std::vector<FitGroup>& groups) {
  Ties out;
  out.variable_of.reserve(groups.size());
  out.first_of.reserve(groups.size());
  for (std::size_t i = 0; i < groups.size(); ++i) {
    if (groups[i].as_group >= 0) {
      out.variable_of.push_back(out.variable_of[static_cast<std::size_t>(groups[i].as_group)]);
      continue;
    }
    out.variable_of.push_back(out.first_of.size());
    out.first_of.push_back(i);
  }
  return out;
}

Target width_target(const FitRequest& request) {
  return {request.width_mm, request.width_most_mm == 0 ? request.width_mm : request.width_most_mm};
}

Target height_target(const FitRequest& request) {
  return {request.height_mm, request.height_most_mm == 0 ? request.height_mm : request.height_most_mm};
}

Limits limits_of(const FitRequest& request) {
  Limits out;
  out.width_tolerance = out.height_tolerance = request.tolerance_percent;
  const Ties ties = ties_of(request.groups);
  out.times.reserve(ties.first_of.size());
  for (const std::size_t first : ties.first_of) {
    out.times.push_back({request.groups[first].least, request.groups[first].most});
  }
  if (request.edge) out.edge = {request.edge_least, request.edge_most};
  out.panels = {request.panels_least, request.panels_most};
  out.rows_step = request.rows_step;
  out.rows_extra = request.rows_extra;
  out.columns_most = request.needles > 0 ? std::min<Count>(request.needles, Grid::max_side) : Grid::max_side;
  return out;
}

}  // namespace latchwork::inline v0::fitting
