#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "latchwork/grid.hpp"
#include "reference.hpp"
#include "walk.hpp"

namespace symmetry_test {

// Counts of symmetric charts that mathematics knows, found by putting every small chart through the library's views.

using namespace latchwork;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;
using latchwork_test::rolled_across;

namespace {

// The chart whose cells, row 1 first, are the bits of `code`: 1 is knit.
Grid chart(int rows, int columns, std::uint32_t code) {
  std::vector<std::uint8_t> cells;
  for (int i = 0; i < rows * columns; ++i) cells.push_back((code >> i & 1U) != 0 ? 0 : 1);
  return Grid::from_cells(rows, columns, cells);
}

std::uint32_t code_of(const Grid& grid) {
  std::uint32_t code = 0;
  unsigned i = 0;
  for (const Cell cell : grid.cells()) code |= (cell == Cell::knit ? 1U : 0U) << i++;
  return code;
}

// One chart of each class of tiles that are the same but for a shift.
std::vector<Grid> tiles_up_to_shift(int rows, int columns) {
  const std::uint32_t count = 1U << (rows * columns);
  std::vector<bool> seen(count);
  std::vector<Grid> out;
  for (std::uint32_t code = 0; code < count; ++code) {
    if (seen[code]) continue;
    out.push_back(chart(rows, columns, code));
    for (int x = 0; x < columns; ++x) {
      const Grid moved = rolled_across(out.back(), x);
      for (int y = 0; y < rows; ++y) seen[code_of(moved.rolled_up(y))] = true;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("SY-01: strips of stitches have just the seven kinds of frieze symmetry", "[reference][symmetry]") {
  // Frieze groups; Geometry Center note: 7 friezes, 17 wallpapers. Published. All 2 x 6 strips of knit and purl.
  INFO(reference_source("SY-01"));
  std::set<std::tuple<bool, bool, bool, bool>> kinds;
  for (std::uint32_t code = 0; code < 1U << 12; ++code) {
    const Grid strip = chart(2, 6, code);
    const Grid mirrored = strip.mirrored();
    const Grid upside_down = strip.upside_down();
    const Grid half_turn = strip.half_turn();
    bool upright_mirror = false, turn = false, glide = false;
    for (int x = 0; x < 6; ++x) {
      upright_mirror = upright_mirror || rolled_across(mirrored, x) == strip;
      turn = turn || rolled_across(half_turn, x) == strip;
      glide = glide || rolled_across(upside_down, x) == strip;
    }
    const bool level_mirror = upside_down == strip;
    kinds.insert({upright_mirror, level_mirror, turn, glide && !level_mirror});
  }
  CHECK(static_cast<int>(kinds.size()) == reference("SY-01").at("expected").get<int>());
}

TEST_CASE("SY-04: nine wallpaper groups are possible with stitches that are not square", "[reference][symmetry]") {
  // p1 p2 pm pg cm pmm pmg pgg cmm: no quarter and no third turns. Derived. All 4 x 4 tiles, told apart by which of
  // the library's views, moved, give the tile back: a mirror is a reflection whose move along its axis is a repeat.
  INFO(reference_source("SY-04"));
  std::map<std::string, int> found;
  for (const Grid& tile : tiles_up_to_shift(4, 4)) {
    std::vector<Grid> across;
    for (int x = 0; x < 4; ++x) across.push_back(rolled_across(tile, x));
    const auto moved = [&](int x, int y) { return across[static_cast<std::size_t>(x)].rolled_up(y); };
    const Grid mirrored = tile.mirrored();
    const Grid upside_down = tile.upside_down();
    const Grid half_turn = tile.half_turn();
    bool turn = false, upright_mirror = false, upright_glide = false, level_mirror = false, level_glide = false;
    for (int x = 0; x < 4; ++x) {
      for (int y = 0; y < 4; ++y) {
        const Grid at = moved(x, y);
        turn = turn || half_turn == at;
        if (mirrored == at) (moved(0, y) == tile ? upright_mirror : upright_glide) = true;
        if (upside_down == at) (moved(x, 0) == tile ? level_mirror : level_glide) = true;
      }
    }
    const bool glide = upright_glide || level_glide;
    std::string group;
    if (!turn) {
      group = upright_mirror || level_mirror ? (glide ? "cm" : "pm") : glide ? "pg" : "p1";
    } else if (upright_mirror && level_mirror) {
      group = glide ? "cmm" : "pmm";
    } else {
      group = upright_mirror || level_mirror ? "pmg" : glide ? "pgg" : "p2";
    }
    ++found[group];
  }
  std::string names;
  for (const char* group : {"p1", "p2", "pm", "pg", "cm", "pmm", "pmg", "pgg", "cmm"}) {
    INFO(group);
    CHECK(found[group] > 0);
  }
  CHECK(static_cast<int>(found.size()) == reference("SY-04").at("expected").get<int>());
}

TEST_CASE("SY-05, SY-06: of the 3 x 4 charts so many are symmetric, and so many differ", "[reference][symmetry]") {
  // Burnside: (4096 + 64 + 256 + 64) / 4. Derived.
  INFO(reference_source("SY-05"));
  int left_right = 0, top_bottom = 0, half = 0, both = 0, classes = 0;
  for (std::uint32_t code = 0; code < 1U << 12; ++code) {
    const Grid grid = chart(3, 4, code);
    const Grid mirrored = grid.mirrored();
    const Grid upside_down = grid.upside_down();
    const Grid half_turn = grid.half_turn();
    left_right += mirrored == grid ? 1 : 0;
    top_bottom += upside_down == grid ? 1 : 0;
    half += half_turn == grid ? 1 : 0;
    both += mirrored == grid && upside_down == grid ? 1 : 0;
    const bool first_of_its_class =
        code <= code_of(mirrored) && code <= code_of(upside_down) && code <= code_of(half_turn);
    classes += first_of_its_class ? 1 : 0;
  }
  CHECK(std::vector<int>{left_right, top_bottom, half, both} ==
        reference("SY-05").at("expected").get<std::vector<int>>());
  CHECK(classes == reference("SY-06").at("expected").get<int>());
}

TEST_CASE("SY-07: so many repeats of knit and purl differ by more than a shift", "[reference][symmetry]") {
  // From memory: OEIS A179043 for the squares. All tiles, put together when rolling one gives the other.
  INFO(reference_source("SY-07"));
  const auto sizes = reference_input<std::vector<std::string>>("SY-07", "repeat");
  const nlohmann::json& expected = reference("SY-07").at("expected");
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    INFO(sizes[i]);
    CHECK(static_cast<int>(tiles_up_to_shift(sizes[i][0] - '0', sizes[i][2] - '0').size()) == expected[i].get<int>());
  }
}

TEST_CASE("SY-08: the textures that look the same from behind are found by turning them", "[reference][symmetry]") {
  // The back: columns mirrored, knit and purl exchanged. Reversible if it is the front but for a shift. Derived.
  INFO(reference_source("SY-08"));
  for (const auto& [name, rows] : reference_inputs("SY-08").at("repeats").items()) {
    INFO(name);
    std::vector<std::uint8_t> cells;
    for (const auto& row : rows) {
      for (const auto& cell : row) cells.push_back(cell.get<int>() == 1 ? 0 : 1);
    }
    const Grid tile = Grid::from_cells(static_cast<int>(rows.size()), static_cast<int>(rows[0].size()), cells);
    bool reversible = false;
    for (int x = 0; x < tile.columns(); ++x) {
      for (int y = 0; y < tile.rows(); ++y) {
        reversible = reversible || rolled_across(tile.turned(), x).rolled_up(y) == tile;
      }
    }
    CHECK(reversible == reference("SY-08").at("expected").at(name).get<bool>());
  }
}

}  // namespace symmetry_test
