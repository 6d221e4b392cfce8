#include <bit>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/file.hpp"
#include "latchwork/motif.hpp"
#include "random_grid.hpp"

using namespace latchwork;
using latchwork_test::any_grid;
using latchwork_test::Random;

namespace {

/// A text of every kind of character, and every length that matters.
std::string any_text(Random& random) {
  static const std::vector<std::string> characters = {"a",
                                                      "Z",
                                                      " ",
                                                      "\"",
                                                      "\\",
                                                      "/",
                                                      "\n",
                                                      "\t",
                                                      "\r",
                                                      std::string(1, '\0'),
                                                      "\x01",
                                                      "\x7F",
                                                      "'",
                                                      "<",
                                                      "&",
                                                      "{",
                                                      "[",
                                                      ",",
                                                      ":",
                                                      "\xC3\xA9",
                                                      "\xE7\xB7\xA8",
                                                      "\xEF\xBB\xBF",
                                                      "\xF0\x9F\xA7\xB6"};
  std::string text;
  for (int i = random.between(0, 12); i > 0; --i) {
    text += characters[static_cast<std::size_t>(random.between(0, static_cast<int>(characters.size()) - 1))];
  }
  return text;
}

template <class Item, class Make>
std::vector<Item> some(Random& random, Make&& make) {
  std::vector<Item> items;
  for (int i = random.between(0, 3); i > 0; --i) items.push_back(make(random));
  return items;
}

/// A panel over a random grid, cut at random into bands and strips.
Panel any_panel(Random& random) {
  const Grid grid = any_grid(random);
  std::vector<Band> bands;
  for (int row = 1; row <= grid.rows();) {
    Band band{row, random.between(1, grid.rows() + 1 - row), {}};
    for (int column = 0; column < grid.columns();) {
      const int columns = random.between(1, grid.columns() - column);
      band.strips.push_back({any_text(random), any_text(random), column, columns, random.between(1, 1000)});
      column += columns;
    }
    row += band.rows;
    bands.push_back(std::move(band));
  }
  Panel panel(any_text(random), grid, std::move(bands));
  if (random.one_in(2)) panel.set_axis_half_columns(random.between(1, 2 * grid.columns() - 1));
  return panel;
}

MachineFile any_machine(Random& random) {
  MachineFile file;
  Machine& machine = file.machine;
  machine.name = any_text(random);
  machine.needles = random.between(2, 4000);
  do {
    machine.pitch_mm = std::bit_cast<double>(random.next() >> 2);  // half of all positive doubles
  } while (!(machine.pitch_mm > 0 && machine.pitch_mm <= 50));
  machine.leftmost = random.between(-4000, 4000);
  machine.prongs = some<int>(random, [](Random& r) { return r.between(1, 20); });
  machine.comfortable_crossing = random.between(1, 4000);
  machine.tuck_limit = random.between(1, 65536);
  machine.float_limit = random.between(1, 4000);
  machine.max_ladder = random.between(1, 65536);
  machine.cast_on_loops = random.one_in(2);
  machine.carriage_starts_right = random.one_in(2);
  Effort& effort = file.effort;
  for (std::int64_t* cost :
       {&effort.stop, &effort.batch, &effort.drop, &effort.rung_knit, &effort.rung_purl, &effort.rung_tuck,
        &effort.rung_slip, &effort.crossing, &effort.crossing_stitch, &effort.hold, &effort.shaping, &effort.row}) {
    *cost = random.between(0, 3'600'000);
  }
  return file;
}

/// Reading what was written gives an equal value, and writing that gives the same bytes.
template <class Value, class Read>
void check_round_trip(const Value& value, Read&& read) {
  const std::string text = write(value);
  CAPTURE(text);
  const Value back = read(text);
  REQUIRE(back == value);
  REQUIRE(write(back) == text);
}

constexpr std::uint64_t rounds = 1500;

}  // namespace

TEST_CASE("what is written is read back equal: grids", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_grid(random), read_grid);
  }
}

TEST_CASE("what is written is read back equal: strips", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(Strip{any_text(random), any_text(random), any_grid(random)}, read_strip);
  }
}

TEST_CASE("what is written is read back equal: panels", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_panel(random), read_panel);
  }
}

TEST_CASE("what is written is read back equal: machines and efforts", "[file][property]") {
  for (std::uint64_t seed = 1; seed <= rounds; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    check_round_trip(any_machine(random), read_machine);
  }
}

TEST_CASE("a text that is cut short anywhere is refused", "[file][property]") {
  Random random(1);
  const std::string text = write(any_panel(random));
  for (std::size_t length = 0; length + 2 < text.size(); ++length) {  // but for the last brace's newline
    CAPTURE(length);
    REQUIRE_THROWS_AS(read_panel(std::string_view(text).substr(0, length)), Error);
  }
}

TEST_CASE("a text with a byte spoiled anywhere is refused, or gives a value that is written and read again",
          "[file][property]") {
  Random random(2);
  const std::string text = write(any_panel(random));
  for (std::size_t at = 0; at < text.size(); ++at) {
    std::string spoiled = text;
    spoiled[at] = static_cast<char>(random.next());
    CAPTURE(at, spoiled);
    try {
      const Panel panel = read_panel(spoiled);
      REQUIRE(read_panel(write(panel)) == panel);
    } catch (const Error& error) {
      REQUIRE(error.place().line > 0);
    }
  }
}
