#include <cmath>

#include "latchwork/error.hpp"
#include "latchwork/yarn.hpp"
#include "quantity/twofold.hpp"

namespace latchwork::inline v0 {

std::vector<YarnCategory> yarn_categories() {
  return {
      {0, "Lace", 33, 40, 1.5, 2.25},      {1, "Super fine", 27, 32, 2.25, 3.25}, {2, "Fine", 23, 26, 3.25, 3.75},
      {3, "Light", 21, 24, 3.75, 4.5},     {4, "Medium", 16, 20, 4.5, 5.5},       {5, "Bulky", 12, 15, 5.5, 8},
      {6, "Super bulky", 7, 11, 8, 12.75}, {7, "Jumbo", 1, 6, 12.75, 0},
  };
}

std::vector<YarnCategory> yarn_categories_at(const CountPerLength& gauge) {
  if (gauge.counted == Counted::rows) {
    Place place;
    place.field = "counted";
    throw Error(ErrorCode::bad_argument, place, "counted is rows; the classes of yarn go by stitches");
  }
  per_10cm(gauge);  // throws for what is no gauge
  const double over_4_in = (Twofold(gauge.count) * Twofold(508.0) / Twofold(5.0) / Twofold(gauge.length_mm)).nearest();
  const double whole = std::floor(over_4_in + 0.5);
  std::vector<YarnCategory> out = yarn_categories();
  std::erase_if(out,
                [&](const YarnCategory& each) { return whole < each.least_stitches || whole > each.most_stitches; });
  return out;
}

}  // namespace latchwork::inline v0
