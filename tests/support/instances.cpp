#include "instances.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "latchwork/error.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/panel.hpp"
#include "random.hpp"

namespace latchwork_test {
namespace {

using namespace latchwork;

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

/// What would be left open at the top is closed.
void close_top(Grid& grid) {
  const int top = grid.rows();
  for (int column = 0; column < grid.columns(); ++column) {
    if (grid.at(top, column) == Cell::tuck || grid.at(top, column) == Cell::slip) grid.set(top, column, Cell::knit);
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
  close_top(grid);
  return grid;
}

// Wales of their own: purl ribs of different rhythms, one a column.
Grid many_rhythms(Random& random, int columns, int rows) {
  Grid grid(rows, columns + 2);
  for (int column = 1; column <= columns; ++column) {
    const int period = random.between(2, 11);
    const int shift = random.between(0, period - 1);
    const int tall = random.between(1, (period + 1) / 2);
    for (int row = 1; row <= rows; ++row) {
      if ((row + shift) % period < tall) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

// As many different wales as columns: a rhythm each, of which one row in six is left out.
Grid distinct_wales(Random& random, int columns, int rows) {
  Grid grid = many_rhythms(random, columns, rows);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 1; column <= columns; ++column) {
      if (grid.at(row, column) == Cell::purl && random.one_in(6)) grid.set(row, column, Cell::knit);
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

// Ribs whose periods have no common divisor, so that the whole repeats only after their product.
Grid coprime_ribs(Random& random, int columns, int rows) {
  constexpr std::array periods = {2, 3, 5, 7, 11, 13};
  Grid grid(rows, columns);
  for (int column = 1; column + 1 < columns; ++column) {
    const int period = periods[static_cast<std::size_t>(random.between(0, 5))];
    const int shift = random.one_in(2) ? 0 : random.between(0, period - 1);
    for (int row = 1; row <= rows; ++row) {
      if ((row + shift) % period == 0) grid.set(row, column, Cell::purl);
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

// Stacks of tucks and slips of many heights, closed by knit or purl, some of which a held needle can make.
Grid tuck_stacks(Random& random, int columns, int rows) {
  Grid grid(rows, columns);
  for (int column = 1; column + 1 < columns; column += random.between(1, 2)) {
    const int height = random.between(1, 4);
    const int gap = random.between(0, 6);
    const bool purl = random.one_in(2);
    const Cell cell = random.one_in(4) ? Cell::slip : Cell::tuck;
    int row = 1 + random.between(0, height + gap);
    while (row + height <= rows) {
      for (int i = 0; i < height; ++i) grid.set(row + i, column, cell);
      if (purl) grid.set(row + height, column, Cell::purl);
      row += height + 1 + gap + (random.one_in(8) ? 1 : 0);
    }
  }
  return grid;
}

// Wide ropes and plaits, each between ladders: the bare strands give it slack.
Grid eased_crossings(Random& random, int columns, int rows) {
  std::vector<Strip> strips{stockinette(2)};
  int width = 3;
  while (width < columns) {
    Strip strip = random.one_in(4)
                      ? plait(random.between(1, 3), random.between(4, 8))
                      : rope(random.between(2, 5), random.between(2, 5), random.between(5, 11), lean_of(random));
    width += strip.grid.columns() + 6;
    strips.push_back(ladder(random.between(1, 2)));
    strips.push_back(std::move(strip));
    strips.push_back(ladder(random.between(1, 2)));
    strips.push_back(random.one_in(2) ? garter(2, 2, 3) : stockinette(random.between(2, 4)));
  }
  strips.push_back(stockinette(1));
  return join_strips("eased", rows, strips).grid();
}

// Tucks of some rows under a knit row, their needles apart from each other and many alike; ropes beside ladders between
// them, after whose crossings holds begin or end as well.
Grid held_tucks(Random& random, int columns, int rows) {
  std::vector<Strip> strips{stockinette(2)};
  int width = 3;
  const int period = random.between(5, 8);
  while (width < columns) {
    Grid held(period, random.between(3, 7));
    const int height = random.between(1, std::min(4, period - 2));
    for (int column = 1; column + 1 < held.columns(); column += 2) {
      for (int row = 1; row <= height; ++row) held.set(row + 1, column, Cell::tuck);
    }
    width += held.columns() + 7;
    strips.push_back({"held tucks", "held tucks", std::move(held)});
    strips.push_back(ladder());
    strips.push_back(rope(2, 2, period, lean_of(random)));
    strips.push_back(ladder());
    strips.push_back(random.one_in(3) ? reverse(1) : stockinette(1));
  }
  strips.push_back(stockinette(2));
  Grid grid = join_strips("held", rows, strips).grid();
  close_top(grid);
  return grid;
}

}  // namespace

const std::vector<std::string>& spoil_kinds() {
  static const std::vector<std::string> kinds = [] {
    std::vector<std::string> all = instance_kinds();
    all.insert(all.end(), {"eased crossings", "holds"});
    return all;
  }();
  return kinds;
}

const std::vector<std::string>& instance_kinds() {
  static const std::vector<std::string> kinds = {"panels",           "many classes", "random",      "dear stops x20",
                                                 "co-prime periods", "diagonals",    "tuck stacks", "200 classes"};
  return kinds;
}

Instance instance_of(const std::string& kind, std::uint64_t seed, int rows) {
  Random random(seed * 1009 + 7);
  const int some = random.between(60, 400);
  if (rows == 0) rows = some;
  Instance out;
  out.kind = kind;
  if (kind == "panels") {
    out.grid = mixed_panel(random, random.between(40, 80), rows);
  } else if (kind == "many classes") {
    out.grid = many_rhythms(random, 18, rows);
  } else if (kind == "random") {
    out.grid = random_cells(random, 60, rows);
  } else if (kind == "dear stops x20") {
    out.grid = random.one_in(2) ? mixed_panel(random, 40, rows) : many_rhythms(random, 18, rows);
    out.effort.stop *= 20;
  } else if (kind == "co-prime periods") {
    out.grid = coprime_ribs(random, random.between(10, 40), rows);
    out.effort.stop *= random.between(1, 4);
  } else if (kind == "diagonals") {
    out.grid = diagonals(random, 40, rows);
  } else if (kind == "tuck stacks") {
    out.grid = tuck_stacks(random, random.between(10, 40), rows);
  } else if (kind == "200 classes") {
    out.grid = distinct_wales(random, 200, rows);
    out.machine.needles = 250;
  } else if (kind == "eased crossings") {
    out.grid = eased_crossings(random, random.between(40, 80), rows);
    out.machine.comfortable_crossing = 5;
  } else if (kind == "holds") {
    out.grid = held_tucks(random, random.between(40, 80), rows);
    out.effort.stop = 1000;
    out.effort.hold = 500;
  } else {
    throw std::out_of_range("no kind of instance: " + kind);
  }
  out.name = std::to_string(out.grid.columns()) + " x " + std::to_string(rows) + ", seed " + std::to_string(seed);
  return out;
}

Grid distinct_panel(int columns, int rows, std::uint64_t seed) {
  Random random(seed);
  return distinct_wales(random, columns, rows);
}

Grid stacked_panel(int columns, int rows, std::uint64_t seed) {
  Random random(seed);
  return tuck_stacks(random, columns, rows);
}

Grid brief_panel(int rows) {
  PanelParts parts;
  parts.rows = rows;
  parts.edge = stockinette(1);
  parts.left = {garter(2, 2, 6), stockinette(1), rope(3, 3, 8, Lean::right), reverse(2), tuck_rib(1), stockinette(1),
                tuck_rib(1),     reverse(2),     rope(2, 2, 4, Lean::left),  reverse(1)};
  parts.centre = plait(2, 4);
  return build_panel(parts).grid();
}

// A small panel with a bit of everything. What the grid refuses is left out.
Instance tiny_instance(std::uint64_t seed) {
  Random random(seed);
  Instance out;
  const int rows = random.between(1, 7);
  const int columns = random.between(1, 6);
  out.grid = Grid(rows, columns);
  const auto try_to = [](const auto& change) {
    try {
      change();
    } catch (const Error&) {
      // The grid keeps its rules: this change is not made.
    }
  };
  const int plainness = random.between(1, 5);
  const bool stacks = !random.one_in(3);
  const bool lacks = random.one_in(3);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      if (random.between(0, plainness) > 1) continue;
      const int kind = random.between(0, stacks ? 4 : 1);
      out.grid.set(row, column, kind <= 1 ? Cell::purl : kind <= 3 ? Cell::tuck : Cell::slip);
    }
  }
  if (random.one_in(2)) {  // a column of tucks that can be held
    const int column = random.between(0, columns - 1);
    for (int row = 1; row <= rows; ++row) out.grid.set(row, column, row % 3 == 0 ? Cell::knit : Cell::tuck);
    if (rows > 1) out.grid.set(rows, column, Cell::knit);
  }
  if (lacks) {
    const int column = random.between(0, columns - 1);
    const int from = random.between(1, rows);
    const int to = random.between(from, rows);
    for (int row = from; row <= to; ++row) out.grid.set(row, column, Cell::none);
  }
  for (int tries = random.between(0, 4); tries > 0; --tries) {
    Crossing crossing;
    crossing.row = random.between(1, rows);
    crossing.column = random.between(0, columns - 1);
    crossing.left = random.between(1, 2);
    crossing.right = random.between(1, 2);
    crossing.centre = random.one_in(3) ? 1 : 0;
    crossing.lean = random.one_in(2) ? Lean::left : Lean::right;
    if (crossing.centre > 0) crossing.place = static_cast<Centre>(random.between(0, 2));
    try_to([&] { out.grid.cross(crossing); });
  }
  out.machine.max_ladder = random.one_in(2) ? 12 : random.between(1, 5);
  out.machine.cast_on_loops = !random.one_in(5);
  const int efforts = random.between(0, 3);
  const auto cost = [&](std::int64_t usual) {
    switch (efforts) {
      case 0:
        return usual;
      case 1:
        return std::int64_t{random.between(0, 3)};  // ties
      case 2:
        return random.one_in(3) ? std::int64_t{0} : std::int64_t{random.between(0, 20'000)};
      default:
        return usual * random.between(0, 4);
    }
  };
  Effort& effort = out.effort;
  for (std::int64_t* field :
       {&effort.stop, &effort.batch, &effort.drop, &effort.rung_knit, &effort.rung_purl, &effort.rung_tuck,
        &effort.rung_slip, &effort.crossing, &effort.crossing_stitch, &effort.hold, &effort.shaping, &effort.row}) {
    *field = cost(*field);
  }
  return out;
}

}  // namespace latchwork_test
