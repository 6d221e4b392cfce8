#include "latchwork/plain_knit.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string_view>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double least_constant = 0.1;
constexpr double most_constant = 100;
constexpr double least_loop_mm = 0.1;
constexpr double most_loop_mm = 1000;

void require(std::string_view field, double value, double least, double most) {
  if (value >= least && value <= most) return;  // false for NaN
  refuse(std::string(field), fmt::format("{} is {}; it must be {}..{}", field, value, least, most));
}

double constant_of(Counted counted, const PlainConstants& constants) {
  require("courses", constants.courses, least_constant, most_constant);
  require("wales", constants.wales, least_constant, most_constant);
  if (counted == Counted::stitches) return constants.wales;
  if (counted == Counted::rows) return constants.courses;
  refuse("counted", fmt::format("counted is {}; it must be 0 (stitches) or 1 (rows)", static_cast<int>(counted)));
}

}  // namespace

PlainConstants plain_constants_of(PlainState state) {
  switch (state) {
    case PlainState::dry_relaxed:
      return {5.0, 3.8};
    case PlainState::wet_relaxed:
      return {5.3, 4.1};
    case PlainState::fully_relaxed:
      return {5.5, 4.2};
  }
  refuse("state", fmt::format("state is {}; it must be 0..2", static_cast<int>(state)));
}

double plain_loop_mm(const CountPerLength& gauge, const PlainConstants& constants) {
  return 100 * constant_of(gauge.counted, constants) / per_10cm(gauge);  // 10 cm of 10 mm each
}

double plain_per_10cm(Counted counted, double loop_mm, const PlainConstants& constants) {
  require("loop_mm", loop_mm, least_loop_mm, most_loop_mm);
  return 100 * constant_of(counted, constants) / loop_mm;
}

double tightness_factor(const YarnNumber& yarn, double loop_mm) {
  require("loop_mm", loop_mm, least_loop_mm, most_loop_mm);
  return std::sqrt(yarn_tex(yarn)) / loop_mm;
}

double area_density_g_m2(const CountPerLength& stitches, const CountPerLength& rows, double loop_mm,
                         const YarnNumber& yarn) {
  if (stitches.counted != Counted::stitches) refuse("stitches", "stitches holds a count of rows");
  if (rows.counted != Counted::rows) refuse("rows", "rows holds a count of stitches");
  require("loop_mm", loop_mm, least_loop_mm, most_loop_mm);
  // Loops per m2 are 100 times those of both 10 cm; each is loop_mm long, and a mm weighs tex * 1e-6 g.
  return per_10cm(stitches) * per_10cm(rows) * loop_mm * yarn_tex(yarn) * 1e-4;
}

}  // namespace latchwork::inline v0
