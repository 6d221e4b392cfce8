// Plans generated panels and tells, a JSON line each: the panel, the efforts, what the plan takes, and how long
// planning took (median). tests/bench/plan_highs.py reads the lines and solves the same panels by a general solver.
//   latchwork_plan_bench [SEEDS [KIND]]   how many panels of each random kind (5 unless said), and of which kind only

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "latchwork/grid.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "random.hpp"

using namespace latchwork;
using latchwork_test::Random;

namespace {

struct Instance {
  std::string kind;
  std::string name;
  Grid grid{1, 1};
  Effort effort;
  Machine machine;
};

Lean lean_of(Random& random) {
  return random.one_in(2) ? Lean::left : Lean::right;
}

Strip random_strip(Random& random) {
  switch (random.between(0, 7)) {
    case 0:
      return rope(3, 3, random.between(6, 9), lean_of(random));
    case 1:
      return rope(2, 2, random.between(4, 7), lean_of(random));
    case 2:
      return plait(2, random.between(4, 6));
    case 3:
      return tuck_rib(random.between(1, 3));
    case 4:
      return garter(random.between(1, 4), random.between(1, 4), random.between(2, 6));
    case 5:
      return moss(random.between(2, 6));
    case 6:
      return reverse(random.between(1, 3));
    default:
      return basket(random.between(2, 4), random.between(2, 6));
  }
}

// Ropes, plaits, ribs, garter, moss and basket side by side between knit edges.
Grid mixed_panel(Random& random, int columns, int rows) {
  std::vector<Strip> strips{stockinette(1)};
  int width = 2;
  while (width < columns) {
    Strip strip = random_strip(random);
    width += strip.grid.columns() + 1;
    strips.push_back(std::move(strip));
    strips.push_back(stockinette(1));
  }
  Grid grid = join_strips("mixed", rows, strips).grid();
  for (int column = 0; column < grid.columns(); ++column) {  // a rib cut off inside a stack is closed
    if (grid.at(rows, column) == Cell::tuck) grid.set(rows, column, Cell::knit);
  }
  return grid;
}

// The larger brief's kind of panel: mirrored, two rope sizes, a plait in the middle, tuck ribs, garter.
Grid brief_panel(int rows) {
  PanelParts parts;
  parts.rows = rows;
  parts.edge = stockinette(1);
  parts.left = {garter(2, 2, 6), stockinette(1), rope(3, 3, 8, Lean::right), reverse(2), tuck_rib(1), stockinette(1),
                tuck_rib(1),     reverse(2),     rope(2, 2, 4, Lean::left),  reverse(1)};
  parts.centre = plait(2, 4);
  return build_panel(parts).grid();
}

// Wales of their own: purl ribs of different rhythms, one a column.
Grid many_rhythms(Random& random, int columns, int rows) {
  Grid grid(rows, columns);
  for (int column = 1; column + 1 < columns; ++column) {
    const int period = random.between(2, 11);
    const int shift = random.between(0, period - 1);
    const int tall = random.between(1, (period + 1) / 2);
    for (int row = 1; row <= rows; ++row) {
      if ((row + shift) % period < tall) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

Grid random_cells(Random& random, int columns, int rows) {
  Grid grid(rows, columns);
  const int one_in = random.between(2, 6);
  for (int row = 1; row < rows; ++row) {
    for (int column = 1; column + 1 < columns; ++column) {
      if (random.one_in(one_in)) grid.set(row, column, random.one_in(4) ? Cell::tuck : Cell::purl);
    }
  }
  return grid;
}

// Purl ridges that travel a column every few rows.
Grid diagonals(Random& random, int columns, int rows) {
  Grid grid(rows, columns);
  const int slope = random.between(1, 4);
  const int period = random.between(5, 12);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 1; column + 1 < columns; ++column) {
      if ((column + row / slope) % period < 2) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

std::vector<Instance> instances(int seeds) {
  std::vector<Instance> out;
  const auto add = [&](const std::string& kind, const std::string& name, Grid grid, std::int64_t dearer = 1) {
    Instance instance{kind, name, std::move(grid), {}, {}};
    instance.effort.stop *= dearer;
    out.push_back(std::move(instance));
  };
  for (const int rows : {120, 240})
    add("brief", "mirrored brief, " + std::to_string(rows) + " rows", brief_panel(rows));
  for (int seed = 1; seed <= seeds; ++seed) {
    const auto named = [&](int columns, int rows) {
      return std::to_string(columns) + " x " + std::to_string(rows) + ", seed " + std::to_string(seed);
    };
    const auto random = [&](std::uint64_t salt) { return Random(salt * 1000 + static_cast<std::uint64_t>(seed)); };
    Random panel = random(1);
    const int columns = panel.between(40, 80);
    const int rows = panel.between(120, 300);
    add("panels", named(columns, rows), mixed_panel(panel, columns, rows));
    Random rhythms = random(2);
    add("many rhythms", named(18, 240), many_rhythms(rhythms, 18, 240));
    Random cells = random(3);
    add("random cells", named(60, 60), random_cells(cells, 60, 60));
    Random lines = random(4);
    add("diagonals", named(40, 160), diagonals(lines, 40, 160));
    Random dear = random(5);
    add("dear stops x20", named(40, 160), mixed_panel(dear, 40, 160), 20);
  }
  for (const int times : {1, 2, 4, 8, 16}) {
    add("growth", "brief x" + std::to_string(times), brief_panel(60 * times));
  }
  return out;
}

std::string letters(const Grid& grid, int row) {
  std::string text;
  for (int column = 0; column < grid.columns(); ++column) text += cell_letter(grid.at(row, column));
  return text;
}

nlohmann::ordered_json told(const Instance& instance, const Plan& plan, double median_us) {
  nlohmann::ordered_json json;
  json["kind"] = instance.kind;
  json["name"] = instance.name;
  for (int row = 1; row <= instance.grid.rows(); ++row) json["cells"].push_back(letters(instance.grid, row));
  json["crossings"] = nlohmann::ordered_json::array();
  for (const Crossing& crossing : instance.grid.crossings()) {
    json["crossings"].push_back({{"row", crossing.row},
                                 {"column", crossing.column},
                                 {"left", crossing.left},
                                 {"centre", crossing.centre},
                                 {"right", crossing.right},
                                 {"place", static_cast<int>(crossing.place)}});
  }
  const Effort& effort = instance.effort;
  json["effort"] = {{"stop", effort.stop},       {"batch", effort.batch},
                    {"drop", effort.drop},       {"k", effort.rung_knit},
                    {"p", effort.rung_purl},     {"t", effort.rung_tuck},
                    {"s", effort.rung_slip},     {"crossing", effort.crossing},
                    {"hold", effort.hold},       {"crossing_stitch", effort.crossing_stitch},
                    {"shaping", effort.shaping}, {"row", effort.row}};
  json["max_ladder"] = instance.machine.max_ladder;
  json["status"] = std::string(plan_status_name(plan.status));
  json["total_ms"] = plan.total_ms;
  json["bound_ms"] = plan.bound_ms;
  json["stops"] = plan.stops.size();
  json["plan_us"] = median_us;
  return json;
}

}  // namespace

int main(int argc, char** argv) {
  const int seeds = argc > 1 ? std::atoi(argv[1]) : 5;
  const std::string kind = argc > 2 ? argv[2] : "";
  for (const Instance& instance : instances(seeds)) {
    if (!kind.empty() && instance.kind != kind) continue;
    std::vector<double> times;
    Plan result;
    double spent = 0;
    while (times.empty() || (times.size() < 25 && spent < 2e5)) {
      PlanOptions options;
      options.work_limit = std::int64_t{4'000'000'000};  // a minute or less: what is not closed then is told so
      const auto begin = std::chrono::steady_clock::now();
      result = plan(instance.grid, instance.machine, instance.effort, options);
      const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - begin;
      times.push_back(took.count());
      spent += took.count();
    }
    std::sort(times.begin(), times.end());
    std::printf("%s\n", told(instance, result, times[times.size() / 2]).dump().c_str());
    std::fflush(stdout);
  }
}
