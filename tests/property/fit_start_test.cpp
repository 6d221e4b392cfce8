// Where a vertical repeat begins, read off the panels of all starts, against fit().
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "fit_swatch.hpp"
#include "latchwork/fit.hpp"
#include "random.hpp"

namespace fit_start_test {

using namespace latchwork;
using latchwork_test::fit_swatch;
using latchwork_test::fit_texture;
using latchwork_test::Random;

namespace {

// The words of FitCandidate::start_row, read off the panel made with that start.
std::tuple<bool, std::int64_t, int> look_of(const FitRequest& request, FitCandidate candidate, int start_row) {
  candidate.start_row = start_row;
  const Panel panel = fitted(request, candidate);
  const Grid& grid = panel.grid();
  std::vector<const Strip*> strips;
  if (candidate.edge_columns > 0) strips.push_back(&*request.edge);
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    for (int n = 0; n < candidate.times[i]; ++n) {
      for (const Strip& strip : request.groups[i].strips) strips.push_back(&strip);
    }
  }
  if (candidate.edge_columns > 0) strips.push_back(&*request.edge);
  bool open = false;
  std::int64_t apart = 0;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    const StripSpan& span = panel.bands()[0].strips[i];
    std::vector<int> below;
    std::vector<int> above;
    for (int row = 1; row <= grid.rows(); ++row) {
      for (int column = span.column; column < span.column + span.columns; ++column) {
        const Cell cell = grid.at(row, column);
        const bool held = cell == Cell::tuck || cell == Cell::slip;
        if (held && row == grid.rows()) open = true;
        if (cell == Cell::knit || !strips[i]->grid.crossings().empty()) continue;
        below.push_back(row - 1);
        above.push_back(grid.rows() - row);
      }
    }
    for (const Crossing& crossing : grid.crossings()) {
      if (crossing.column < span.column || crossing.column >= span.column + span.columns) continue;
      below.push_back(crossing.row);
      above.push_back(grid.rows() - crossing.row);
      if (crossing.row == grid.rows()) open = true;
    }
    const auto cells = strips[i]->grid.cells();
    const bool plain = strips[i]->grid.crossings().empty() &&
                       std::all_of(cells.begin(), cells.end(), [](Cell cell) { return cell == Cell::knit; });
    if (plain) continue;
    apart +=
        below.empty()
            ? grid.rows()
            : std::abs(*std::min_element(below.begin(), below.end()) - *std::min_element(above.begin(), above.end()));
  }
  return {open, apart, start_row};
}

Strip random_motif(Random& random, int columns) {
  Grid grid(random.between(1, 8), columns);
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < columns; ++column) {
      if (random.one_in(9)) grid.set(row, column, static_cast<Cell>(random.between(1, 3)));
    }
  }
  if (columns > 1 && random.one_in(2)) {
    const int row = random.between(1, grid.rows());
    for (int column = 0; column < columns; ++column) grid.set(row, column, Cell::knit);
    grid.cross({.row = row, .column = 0, .left = 1, .right = columns - 1});
  }
  return {"s", fit_texture(random), grid};
}

}  // namespace

TEST_CASE("a repeat begins where trying all starts has it begin", "[fit][property]") {
  Random random(22);
  int moved = 0;
  for (int seed = 0; seed < 150; ++seed) {
    INFO("case " << seed);
    const Swatch swatch = fit_swatch(random);
    FitRequest request;
    request.width_mm = random.between(20, 120);
    request.height_mm = random.between(20, 90);
    for (int groups = random.between(1, 2); groups > 0; --groups) {
      FitGroup& group = request.groups.emplace_back();
      for (int i = random.between(1, 2); i > 0; --i) group.strips.push_back(random_motif(random, random.between(1, 3)));
      group.least = random.between(0, 1);
      group.most = 3;
    }
    if (random.one_in(2)) request.edge = random_motif(random, 1);
    request.rows_step = random.between(1, 24);
    request.rows_extra = random.between(0, 3);
    request.most = 2;
    request.vary_start = true;
    int cycle = request.edge ? request.edge->grid.rows() : 1;  // after which all strips stand as before
    for (const FitGroup& group : request.groups) {
      for (const Strip& strip : group.strips) cycle = std::lcm(cycle, strip.grid.rows());
    }
    for (const FitCandidate& each : fit(request, swatch).candidates) {
      std::tuple<bool, std::int64_t, int> best = look_of(request, each, 1);
      for (int row = 2; row <= cycle; ++row) best = std::min(best, look_of(request, each, row));
      CHECK(std::tuple(each.open_ends, each.imbalance_rows, each.start_row) == best);
      moved += each.start_row > 1 ? 1 : 0;
    }
  }
  CHECK(moved > 30);
}

}  // namespace fit_start_test
