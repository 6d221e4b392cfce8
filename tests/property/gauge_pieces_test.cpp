#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/size.hpp"
#include "normal.hpp"
#include "random.hpp"

namespace gauge_pieces_test {

using namespace latchwork;
using latchwork_test::normal;
using latchwork_test::Random;

namespace {

struct Model {
  int swatches;
  int places;      // of each
  double between;  // standard deviations, stitches to 10 cm
  double within;
};

/// How many of `runs` panels, each knitted as a piece of its own, are as wide as the margin says.
int covered(const Model& model, int runs, std::uint64_t seed) {
  constexpr double true_gauge = 28;
  constexpr int columns = 56;
  Random random(seed);
  const Panel panel("plain", stockinette(columns).filled_up(2));
  int inside = 0;
  for (int run = 0; run < runs; ++run) {
    std::vector<Measurement> measurements = {{"stockinette", Counted::rows, 40, 100, ""}};
    for (int piece = 0; piece < model.swatches; ++piece) {
      const double its = true_gauge + model.between * normal(random);
      for (int place = 0; place < model.places; ++place) {
        const double count = its + model.within * normal(random);
        measurements.push_back({"stockinette", Counted::stitches, count, 100, "", "piece " + std::to_string(piece)});
      }
    }
    const Size told = size(panel, Swatch(measurements));
    // The panel's own gauge wanders as one place of one piece does.
    const double own = true_gauge + model.between * normal(random) + model.within * normal(random);
    inside += std::abs(told.width_mm - columns * 100 / own) <= told.width_margin_mm ? 1 : 0;
  }
  return inside;
}

}  // namespace

// Of margins at 95 % 95 in 100 are to hold. Two pieces may lie near each other by chance and then tell of no
// difference, so with two it is 90 in 100; were all places those of one swatch it would be 68.
TEST_CASE("margins hold as often as they say where swatches differ from each other", "[gauge][size][property]") {
  constexpr int runs = 4000;
  for (const Model& model :
       {Model{2, 5, 1, 0.25}, Model{3, 5, 1, 0.25}, Model{4, 3, 0.5, 0.5}, Model{6, 2, 0.2, 0.4}}) {
    CAPTURE(model.swatches, model.places, model.between, model.within);
    const double share = covered(model, runs, 71) / static_cast<double>(runs);
    CHECK(share > (model.swatches == 2 ? 0.89 : 0.92));
    CHECK(share < 0.985);
  }
}

}  // namespace gauge_pieces_test
