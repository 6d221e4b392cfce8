#include <fmt/format.h>

#include "fit/request.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using fitting::Count;
using fitting::refuse;
using fitting::require;

void require_candidate(const FitRequest& request, const FitCandidate& candidate) {
  require("panels", candidate.panels, 1, FitRequest::max_panels);
  if (candidate.times.size() != request.groups.size()) {
    refuse("times", fmt::format("times are {}; there are {} groups", candidate.times.size(), request.groups.size()));
  }
  Count columns = 2 * static_cast<Count>(candidate.edge_columns);
  for (std::size_t i = 0; i < candidate.times.size(); ++i) {
    require(fmt::format("times[{}]", i), candidate.times[i], 0, Grid::max_side);
    columns += candidate.times[i] * fitting::columns_of(request.groups[i]);
  }
  const fitting::Ties ties = fitting::ties_of(request.groups);
  for (std::size_t i = 0; i < candidate.times.size(); ++i) {
    const std::size_t first = ties.first_of[ties.variable_of[i]];
    if (candidate.times[i] == candidate.times[first]) continue;
    refuse(fmt::format("times[{}]", i),
           fmt::format("times[{}] is {}; the group stands as often as groups[{}], {} times", i, candidate.times[i],
                       first, candidate.times[first]));
  }
  if (!fitting::can_be_sewn(request, candidate.panels)) {
    refuse("panels", fmt::format("panels are {}; a seam between them takes in {} edge columns, and no edge is given",
                                 candidate.panels, request.seam_stitches));
  }
  const Count edge_least = candidate.panels > 1 && request.seam_stitches > 0 ? 1 : 0;  // what a seam takes in
  require("edge_columns", candidate.edge_columns, edge_least, request.edge ? Grid::max_side : 0);
  if (columns != candidate.columns) {
    refuse("columns", fmt::format("columns is {}; its times and edge columns make {}", candidate.columns, columns));
  }
  require("columns", candidate.columns, 1, Grid::max_side);
  require("rows", candidate.rows, 1, Grid::max_side);
  require("start_row", candidate.start_row, 1, Grid::max_side);
}

Strip started(const Strip& strip, int start_row) {
  return {strip.name, strip.texture, strip.grid.rolled_up(1 - start_row)};
}

std::string name_of(const FitCandidate& candidate, int panel) {
  std::string repeats;
  for (const int times : candidate.times) repeats += (repeats.empty() ? "" : " + ") + std::to_string(times);
  repeats += candidate.times == std::vector<int>{1} ? " repeat" : " repeats";
  std::string out = fmt::format("{}, {} a side, {}", repeats, count_of(candidate.edge_columns, "edge column"),
                                count_of(candidate.rows, "row"));
  if (candidate.start_row > 1) out += fmt::format(" from row {}", candidate.start_row);
  if (candidate.panels > 1) out += fmt::format(", panel {} of {}", panel + 1, candidate.panels);
  return out;
}

}  // namespace

Panel fitted(const FitRequest& request, const FitCandidate& candidate, int panel) {
  fitting::require_design(request);
  require_candidate(request, candidate);
  require("panel", panel, 0, candidate.panels - 1);

  // An edge is one column wide, so its mirror image is itself.
  std::vector<Strip> strips;
  if (candidate.edge_columns > 0) {
    strips.push_back(started(*request.edge, candidate.start_row).repeated_across(candidate.edge_columns));
  }
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    std::vector<Strip> group;
    group.reserve(request.groups[i].strips.size());
    for (const Strip& strip : request.groups[i].strips) group.push_back(started(strip, candidate.start_row));
    for (int n = 0; n < candidate.times[i]; ++n) strips.insert(strips.end(), group.begin(), group.end());
  }
  if (candidate.edge_columns > 0) strips.push_back(Strip(strips.front()));
  Panel out = join_strips(name_of(candidate, panel), candidate.rows, strips);
  return 2 * panel > candidate.panels - 1 ? out.mirrored() : out;
}

}  // namespace latchwork::inline v0
