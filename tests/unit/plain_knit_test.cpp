#include "latchwork/plain_knit.hpp"

#include <limits>

#include "catch.hpp"

namespace plain_knit_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

TEST_CASE("a loop length gives the gauge that gives the loop length", "[plain_knit]") {
  for (const PlainState state : {PlainState::dry_relaxed, PlainState::wet_relaxed, PlainState::fully_relaxed}) {
    const PlainConstants constants = plain_constants_of(state);
    for (const double loop : {2.0, 9.5, 23.333}) {
      for (const Counted counted : {Counted::stitches, Counted::rows}) {
        const double per = plain_per_10cm(counted, loop, constants);
        CHECK(plain_loop_mm({counted, per, 100}, constants) == Approx(loop));
        CHECK(plain_loop_mm({counted, per / 2, 50}, constants) == Approx(loop));
      }
    }
  }
  CHECK(PlainConstants{} == plain_constants_of(PlainState::fully_relaxed));
}

TEST_CASE("what plain knit cannot be is refused with its field", "[plain_knit][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const CountPerLength stitches{Counted::stitches, 28, 100};
  const CountPerLength rows{Counted::rows, 40, 100};
  const YarnNumber yarn{YarnSystem::tex, 100, 1};
  CHECK_THROWS_MATCHES(plain_constants_of(static_cast<PlainState>(3)), Error,
                       refused_field(ErrorCode::bad_argument, "state"));
  for (const double bad : {nan, 0.0, -1.0, 101.0}) {
    CHECK_THROWS_MATCHES(plain_loop_mm(stitches, {bad, 4}), Error, refused_field(ErrorCode::bad_argument, "courses"));
    CHECK_THROWS_MATCHES(plain_loop_mm(stitches, {5, bad}), Error, refused_field(ErrorCode::bad_argument, "wales"));
  }
  for (const double bad : {nan, 0.0, -1.0, 1001.0}) {
    CHECK_THROWS_MATCHES(plain_per_10cm(Counted::rows, bad, {}), Error,
                         refused_field(ErrorCode::bad_argument, "loop_mm"));
    CHECK_THROWS_MATCHES(tightness_factor(yarn, bad), Error, refused_field(ErrorCode::bad_argument, "loop_mm"));
    CHECK_THROWS_MATCHES(area_density_g_m2(stitches, rows, bad, yarn), Error,
                         refused_field(ErrorCode::bad_argument, "loop_mm"));
  }
  CHECK_THROWS_MATCHES(plain_loop_mm({Counted::rows, 40, 0}, {}), Error,
                       refused_field(ErrorCode::bad_argument, "length_mm"));
  CHECK_THROWS_MATCHES(plain_per_10cm(static_cast<Counted>(2), 5, {}), Error,
                       refused_field(ErrorCode::bad_argument, "counted"));
  CHECK_THROWS_MATCHES(area_density_g_m2(rows, rows, 5, yarn), Error,
                       refused_field(ErrorCode::bad_argument, "stitches"));
  CHECK_THROWS_MATCHES(area_density_g_m2(stitches, stitches, 5, yarn), Error,
                       refused_field(ErrorCode::bad_argument, "rows"));
  CHECK_THROWS_MATCHES(tightness_factor({YarnSystem::tex, 0, 1}, 5), Error,
                       refused_field(ErrorCode::bad_argument, "number"));
}

}  // namespace plain_knit_test
