#include <cstdint>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/motif.hpp"
#include "reference.hpp"
#include "walk.hpp"

namespace sides_test {

// Which side is seen, and what is mirrored from there.

using namespace latchwork;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

// A chart as the check values draw it: rows from the top, K and P from the left on the RS.
Grid drawn(const std::vector<std::string>& top_first) {
  std::string text;
  for (const std::string& row : top_first) {
    for (const char letter : row) text += letter == 'K' ? 'k' : 'p';
    text += '\n';
  }
  return Grid::from_text(text);
}

// Words for a row as it is worked by hand, from its right to its left as the worker sees it.
std::string words(const Grid& seen, int row) {
  std::string out;
  for (int x = seen.columns() - 1; x >= 0;) {
    const Cell cell = seen.at(row, x);
    int count = 0;
    for (; x >= 0 && seen.at(row, x) == cell; --x) ++count;
    if (!out.empty()) out += ", ";
    out += cell_letter(cell) + std::to_string(count);
  }
  return out;
}

Lean lean_of_first(const Grid& grid) {
  REQUIRE(grid.crossings().size() == 1);
  return grid.crossings()[0].lean;
}

std::string name_of(Lean lean) {
  return lean == Lean::right ? "RC" : "LC";
}

}  // namespace

TEST_CASE("CB-19: one mirror changes the lean of a crossing, a turn keeps it", "[reference][sides]") {
  // Strand direction vectors; the near strand decides the hand. Derived.
  INFO(reference_source("CB-19"));
  const nlohmann::json& value = reference("CB-19");
  REQUIRE(value.at("inputs").at("operation") ==
          nlohmann::json({"mirror left-right", "mirror top-bottom", "rotate 180", "turn fabric over"}));
  REQUIRE(value.at("inputs").at("crossing") == "RC");
  const Grid grid = rope(2, 1, 6, Lean::right).grid;
  std::vector<std::string> got;
  for (const Grid& view : {grid.mirrored(), grid.upside_down(), grid.half_turn(), grid.turned()}) {
    got.push_back(name_of(lean_of_first(view)));
  }
  CHECK(got == value.at("expected").get<std::vector<std::string>>());
}

TEST_CASE("CB-20: a right cross and a left cross side by side are their own mirror image", "[reference][sides]") {
  // A symmetric pair. Derived.
  INFO(reference_source("CB-20"));
  const nlohmann::json& value = reference("CB-20");
  const Grid pair = rope(2, 2, 4, Lean::right).grid.beside(rope(2, 2, 4, Lean::left).grid);
  const auto names = [](const Grid& grid) {
    std::vector<std::string> out;
    for (const Crossing& crossing : grid.crossings()) out.push_back(crossing_name(crossing));
    return out;
  };
  CHECK(names(pair) == value.at("inputs").at("chart_left_to_right").get<std::vector<std::string>>());
  CHECK(names(pair.mirrored()) == value.at("expected").get<std::vector<std::string>>());
  CHECK(pair.mirrored() == pair);
}

TEST_CASE("CH-02, CH-03: a wrong-side row is read from the other end with knit and purl exchanged",
          "[reference][sides]") {
  // Chart convention: vogueknitting.com pattern help. Published rule, derived examples. The wrong side is turned().
  INFO(reference_source("CH-02"));
  const Grid one = drawn({reference_input<std::string>("CH-02", "drawn_left_to_right")});
  CHECK(words(one.turned(), 1) == reference("CH-02").at("expected").get<std::string>());
  const Grid rib = drawn({reference_input<std::string>("CH-03", "drawn_left_to_right")});
  const nlohmann::json& expected = reference("CH-03").at("expected");
  CHECK(words(rib, 1) == expected[0].get<std::string>());
  CHECK(words(rib.turned(), 1) == expected[1].get<std::string>());
}

TEST_CASE("CH-05: moss is worked from this chart and is the moss motif", "[reference][sides]") {
  // The same convention. Published rule, derived example. Two rows, the bottom one first.
  INFO(reference_source("CH-05"));
  const auto rows = reference_input<std::vector<std::string>>("CH-05", "drawn");
  const nlohmann::json& expected = reference("CH-05").at("expected");
  const Grid grid = drawn({rows[1], rows[0]});
  CHECK(words(grid, 1) == expected[0].get<std::string>());
  CHECK(words(grid.turned(), 2) == expected[1].get<std::string>());
  const Grid motif = moss(2).grid;
  CHECK((motif == grid || motif == grid.rolled_up(1)));
}

TEST_CASE("CH-06: the purls of a chart are on these needles, counted from the operator's left", "[reference][sides]") {
  // The operator faces the purl side. Derived.
  INFO(reference_source("CH-06"));
  const auto cells = reference_input<std::string>("CH-06", "chart_cells_knit_side_left_to_right");
  const int columns = static_cast<int>(cells.size());
  const Grid grid = drawn({cells});
  for (const MachineClass machine_class : {MachineClass::standard, MachineClass::bulky}) {
    const Machine machine = Machine::generic(machine_class);
    std::vector<int> got;
    for (int counted = 1; counted <= columns; ++counted) {
      const int needle = needle_beside(leftmost_needle(machine, columns), counted - 1);
      for (int x = 0; x < columns; ++x) {
        if (needle_of(machine, columns, x) == needle && grid.at(1, x) == Cell::purl) got.push_back(counted);
      }
    }
    CHECK(got == reference("CH-06").at("expected").get<std::vector<int>>());
  }
}

TEST_CASE("CH-07: mirroring twice changes nothing, and mirroring and the order of rows do not interfere",
          "[reference][sides]") {
  // An involution. Derived; exhaustive on the 64 rows of six stitches, each over a row of its own opposite.
  INFO(reference_source("CH-07"));
  REQUIRE(reference("CH-07").at("expected").get<bool>());
  for (unsigned code = 0; code < 64; ++code) {
    std::vector<std::uint8_t> cells;
    for (unsigned i = 0; i < 12; ++i) cells.push_back(((i < 6 ? code : ~code) >> (i % 6) & 1U) != 0 ? 1 : 0);
    const Grid grid = Grid::from_cells(2, 6, cells);
    CHECK(grid.mirrored().mirrored() == grid);
    CHECK(grid.mirrored().upside_down() == grid.upside_down().mirrored());
    CHECK(grid.mirrored().rolled_up(1) == grid.rolled_up(1).mirrored());
  }
}

TEST_CASE("CH-08: what the operator moves left is shifted right on the knit side", "[reference][sides]") {
  // JIS L 0201:1995, home machine items 1090 and 1100. Published.
  INFO(reference_source("CH-08"));
  REQUIRE(reference_inputs("CH-08").at("operator_moves_stitch_to") == "left");
  const Machine machine;
  const int columns = 9;
  for (int x = 0; x + 1 < columns; ++x) {
    const int moved = needle_beside(needle_of(machine, columns, x), -1);
    const std::string direction = moved == needle_of(machine, columns, x + 1) ? "right" : "left";
    CHECK(direction == reference("CH-08").at("expected").get<std::string>());
  }
}

}  // namespace sides_test
