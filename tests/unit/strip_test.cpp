#include "latchwork/strip.hpp"

#include <limits>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/motif.hpp"

namespace strip_test {

using namespace latchwork;
using latchwork_test::refused_field;

TEST_CASE("mirroring a strip exchanges the lean words in its name and keeps its texture", "[strip]") {
  struct Case {
    const char* name;
    const char* mirrored;
  };
  const Case cases[] = {
      {"rope 3/3 RC every 8", "rope 3/3 LC every 8"},
      {"LC", "RC"},
      {"RC and LC, RC", "LC and RC, LC"},
      {"2/1/2 RC, centre behind", "2/1/2 LC, centre behind"},
      {"ARC RCA RC2 xLC", "ARC RCA RC2 xLC"},  // no words of their own
      {"\xC3\xA9RC", "\xC3\xA9RC"},            // nor after a letter past ASCII
      {"R C", "R C"},
      {"", ""},
  };
  for (const Case& c : cases) {
    const Strip strip{c.name, "some texture with RC", Grid(2, 3)};
    CHECK(strip.mirrored().name == c.mirrored);
    CHECK(strip.mirrored().texture == strip.texture);
    CHECK(strip.mirrored().mirrored() == strip);
  }
}

TEST_CASE("mirroring and repeating a strip do so to its grid, and keep name and texture", "[strip]") {
  const Strip strip = rope(3, 2, 6, Lean::right);
  CHECK(strip.mirrored().grid == strip.grid.mirrored());
  CHECK(strip.repeated_across(3) == Strip{strip.name, strip.texture, strip.grid.repeated_across(3)});
  CHECK(strip.repeated_up(3) == Strip{strip.name, strip.texture, strip.grid.repeated_up(3)});
}

TEST_CASE("a strip filled up to a height is its repeats, cut at the top", "[strip]") {
  const Strip strip = wave(2, 3);
  const int repeat = strip.grid.rows();
  for (int rows = 1; rows <= 3 * repeat + 1; ++rows) {
    const Strip filled = strip.filled_up(rows);
    CHECK(filled.grid == strip.grid.repeated_up(4).sliced(1, 0, rows, strip.grid.columns()));
    CHECK(filled.name == strip.name);
    CHECK(filled.texture == strip.texture);
  }
  CHECK(strip.filled_up(repeat) == strip);
}

TEST_CASE("a height is refused below 1 and past the limit, but not because whole repeats would pass it",
          "[strip][error]") {
  const Strip strip{"tall", "tall", Grid(40'000, 1)};
  CHECK_THROWS_MATCHES(strip.filled_up(0), Error, refused_field(ErrorCode::bad_argument, "rows"));
  CHECK_THROWS_MATCHES(strip.filled_up(Grid::max_side + 1), Error, refused_field(ErrorCode::too_large, "rows"));
  CHECK_THROWS_MATCHES(strip.filled_up(std::numeric_limits<int>::max()), Error,
                       refused_field(ErrorCode::too_large, "rows"));
  CHECK(strip.filled_up(Grid::max_side).grid.rows() == Grid::max_side);
}

}  // namespace strip_test
