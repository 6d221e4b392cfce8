#include "latchwork/spacing.hpp"

#include <climits>
#include <string>
#include <vector>

#include "catch.hpp"

namespace spacing_test {

using namespace latchwork;
using latchwork_test::refused_field;

TEST_CASE("shaping in even rows only: every gap is even, and what is left over is said", "[spacing]") {
  const Spacing spacing = spaced_evenly(41, 7, SpacingEnds::in_the_round, 2);
  CHECK(spacing.gaps == std::vector<int>{4, 6, 6, 6, 6, 6, 6});
  CHECK(spacing.positions == std::vector<int>{4, 10, 16, 22, 28, 34, 40});
  CHECK(spacing.rest == 1);
  CHECK(spacing_text(spacing, Counted::rows) == "every 4th row 1 time, every 6th row 6 times; 1 row over");
}

TEST_CASE("a spacing in words: in the round, flat, with half ends", "[spacing]") {
  struct Case {
    int length, events;
    SpacingEnds ends;
    int step;
    std::string words;
  };
  const Case cases[] = {
      {5, 5, SpacingEnds::in_the_round, 1, "every stitch 5 times"},
      {8, 5, SpacingEnds::in_the_round, 1, "every stitch 2 times, every 2nd stitch 3 times"},
      {63, 3, SpacingEnds::in_the_round, 1, "every 21st stitch 3 times"},
      {33, 3, SpacingEnds::in_the_round, 1, "every 11th stitch 3 times"},
      {9, 3, SpacingEnds::in_the_round, 1, "every 3rd stitch 3 times"},
      {336, 3, SpacingEnds::in_the_round, 1, "every 112th stitch 3 times"},
      {120, 10, SpacingEnds::flat, 1, "1 gap of 10 stitches, 10 gaps of 11 stitches"},
      {2, 1, SpacingEnds::flat, 1, "2 gaps of 1 stitch"},
      {10, 1, SpacingEnds::half_ends, 1, "after 5 stitches; 5 stitches after the last"},
      {21, 4, SpacingEnds::half_ends, 1, "after 3 stitches, then every 5th stitch 3 times; 3 stitches after the last"},
  };
  for (const Case& each : cases) {
    INFO(each.length << ", " << each.events);
    CHECK(spacing_text(spaced_evenly(each.length, each.events, each.ends, each.step), Counted::stitches) == each.words);
  }
}

TEST_CASE("the longest length is spread without overflow", "[spacing]") {
  const Spacing all = spaced_evenly(max_spacing, max_spacing);
  CHECK(all.positions.back() == max_spacing);
  CHECK(all.longer_times == 0);
  CHECK(spaced_evenly(max_spacing, 999'999, SpacingEnds::half_ends).positions.back() == max_spacing - 1);
}

TEST_CASE("a spacing that cannot be is refused with its field", "[spacing][error]") {
  struct Case {
    int length, events, ends, step;
    const char* field;
  };
  const Case cases[] = {{0, 1, 0, 1, "length"},        {max_spacing + 1, 1, 0, 1, "length"},
                        {INT_MIN, 1, 0, 1, "length"},  {10, 0, 0, 1, "events"},
                        {10, INT_MIN, 0, 1, "events"}, {10, INT_MAX, 1, 1, "events"},
                        {10, 11, 0, 1, "events"},      {10, 10, 1, 1, "events"},
                        {10, 10, 2, 1, "events"},      {1, 1, 1, 1, "events"},
                        {10, 6, 0, 2, "events"},       {10, 1, 3, 1, "ends"},
                        {10, 1, 0, 0, "step"},         {10, 1, 0, 11, "step"}};
  for (const Case& each : cases) {
    INFO(each.length << ", " << each.events << ", " << each.ends << ", " << each.step);
    CHECK_THROWS_MATCHES(spaced_evenly(each.length, each.events, static_cast<SpacingEnds>(each.ends), each.step), Error,
                         refused_field(ErrorCode::bad_argument, each.field));
  }
  CHECK_THROWS_MATCHES(spacing_text(spaced_evenly(8, 3), static_cast<Counted>(2)), Error,
                       refused_field(ErrorCode::bad_argument, "counted"));
}

TEST_CASE("a spacing that nothing spread is not put into words past the longest length", "[spacing][error]") {
  Spacing made = spaced_evenly(20, 3);
  made.every = made.step = INT_MAX;
  CHECK_THROWS_MATCHES(spacing_text(made, Counted::rows), Error, refused_field(ErrorCode::bad_argument, "every"));
  made.every = 1;
  CHECK_THROWS_MATCHES(spacing_text(made, Counted::rows), Error, refused_field(ErrorCode::bad_argument, "step"));
}

}  // namespace spacing_test
