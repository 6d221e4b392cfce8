// What would have to give when nothing fits.
#include <string>
#include <vector>

#include "catch.hpp"
#include "fit/budget.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/size.hpp"

namespace fit_nearest_test {

using namespace latchwork;
using latchwork_test::Approx;

namespace {

// 25 stitches and 40 rows per 10 cm: a stitch is 4 mm wide, a row 2.5 mm high.
Swatch swatch() {
  return Swatch({{"stockinette", Counted::stitches, 25, 100, ""}, {"stockinette", Counted::rows, 40, 100, ""}});
}

FitRequest request(double width_mm, double height_mm) {
  FitRequest out;
  out.width_mm = width_mm;
  out.height_mm = height_mm;
  out.groups = {{{stockinette(10)}, 1, 20}};
  out.tolerance_percent = 1;
  return out;
}

std::vector<std::string> words(const FitNearest& of) {
  std::vector<std::string> out;
  out.reserve(of.gives.size());
  for (const FitGive& each : of.gives) out.push_back(each.words);
  return out;
}

}  // namespace

TEST_CASE("when something fits nothing has to give", "[fit]") {
  const FitResult found = fit(request(400, 100), swatch());
  CHECK_FALSE(found.candidates.empty());
  CHECK(found.nearest.empty());
  CHECK(found.nearest_complete);
}

TEST_CASE("when nothing fits what would have to give is told, what gives least first", "[fit]") {
  // 840 mm are 21 repeats, one more than the 20 that are allowed: 1 / 20. 20 are 40 mm narrow, 3.8 % beyond 1 %. Four
  // edge columns, where none are allowed, make 832 mm, which is near enough.
  FitRequest wanted = request(840, 100);
  wanted.edge = stockinette(1);
  wanted.edge_least = 0;
  wanted.edge_most = 0;
  const FitResult found = fit(wanted, swatch());
  CHECK(found.candidates.empty());
  CHECK(found.nearest_complete);
  REQUIRE(found.nearest.size() == 3);
  CHECK(words(found.nearest[0]) == std::vector<std::string>{"21 repeats of group 1; at most 20 are allowed"});
  CHECK(found.nearest[0].gives[0] == FitGive{FitBound::times, 0, 21, 20, words(found.nearest[0])[0]});
  CHECK(found.nearest[0].candidate.error == 0);
  CHECK(words(found.nearest[1]) ==
        std::vector<std::string>{"40.0 mm narrower than wanted (4.8 %; at most 1 % is allowed)"});
  CHECK(found.nearest[1].gives[0].value == Approx(-40));
  CHECK(found.nearest[1].gives[0].limit == Approx(-8.4));
  CHECK(words(found.nearest[2]) == std::vector<std::string>{"4 edge columns a side; at most 0 are allowed"});
  for (const FitNearest& each : found.nearest)
    CHECK(fitted(wanted, each.candidate).grid().columns() == each.candidate.columns);
}

TEST_CASE("needles, panels, rows and ranges have their words", "[fit]") {
  // 100 columns, on a bed of 90, in one panel.
  FitRequest wanted = request(400, 100);
  wanted.needles = 90;
  wanted.edge = stockinette(1);
  const auto first = [](const FitRequest& of) { return words(fit(of, swatch()).nearest.at(0)); };
  wanted.groups[0].least = wanted.groups[0].most = 10;
  wanted.edge_least = wanted.edge_most = 0;
  wanted.tolerance_percent.reset();
  CHECK(first(wanted) == std::vector<std::string>{"1 panel: 100 columns, the bed has 90 needles"});
  wanted.width_mm = 800;
  wanted.seam_stitches = 0;
  wanted.panels_least = wanted.panels_most = 2;
  CHECK(first(wanted) == std::vector<std::string>{"2 panels: 100 columns each, the bed has 90 needles"});
  wanted.needles = 0;
  wanted.panels_least = wanted.panels_most = 1;
  wanted.tolerance_percent = 0;
  const FitResult by_panels = fit(wanted, swatch());  // as far over as 20 repeats, which are in one panel
  REQUIRE(by_panels.nearest.size() == 3);
  CHECK(words(by_panels.nearest[1]) == std::vector<std::string>{"2 panels; at most 1 is allowed"});
  wanted.panels_least = wanted.panels_most = 3;
  CHECK(first(wanted) == std::vector<std::string>{"2 panels; at least 3 are allowed"});

  wanted = request(400, 205);  // 82 rows
  wanted.tolerance_percent = 0;
  wanted.rows_step = 8;
  CHECK(first(wanted) == std::vector<std::string>{"82 rows; a multiple of 8 is allowed"});
  CHECK(fit(wanted, swatch()).nearest[0].gives[0] ==
        FitGive{FitBound::rows, -1, 82, 80, "82 rows; a multiple of 8 is allowed"});
  wanted.rows_extra = 3;
  CHECK(first(wanted) == std::vector<std::string>{"82 rows; 3 and a multiple of 8 are allowed"});
  CHECK(fit(wanted, swatch()).nearest[0].gives[0].limit == 83);

  wanted = request(390, 100);
  wanted.groups[0].least = wanted.groups[0].most = 11;  // 440 mm
  wanted.width_most_mm = 425;
  wanted.rows_step = 42;  // 105 mm
  wanted.tolerance_percent = 0;
  const FitResult off = fit(wanted, swatch());
  REQUIRE(off.nearest.size() == 3);
  CHECK(words(off.nearest[0]) == std::vector<std::string>{"10 repeats of group 1; at least 11 are allowed",
                                                          "40 rows; a multiple of 42 is allowed"});
  CHECK(words(off.nearest[1]) ==
        std::vector<std::string>{"15.0 mm wider than the range (3.5 %; at most 0 % is allowed)",
                                 "40 rows; a multiple of 42 is allowed"});
  CHECK(words(off.nearest[2]) == std::vector<std::string>{"5.0 mm taller than wanted (5.0 %; at most 0 % is allowed)",
                                                          "10 repeats of group 1; at least 11 are allowed"});
  CHECK(off.nearest[2].gives[0].bound == FitBound::height);
}

TEST_CASE("where no single bound suffices pairs give", "[fit]") {
  // Two panels of 180 columns or more on a bed of 150 needles, whose seam takes an edge stitch where there is none.
  FitRequest wanted = request(840, 100);
  wanted.groups[0].least = 18;
  wanted.tolerance_percent.reset();
  wanted.needles = 150;
  wanted.panels_least = wanted.panels_most = 2;
  wanted.seam_stitches = 1;
  wanted.edge = stockinette(1);
  wanted.edge_least = wanted.edge_most = 0;
  const FitResult found = fit(wanted, swatch());
  CHECK(found.candidates.empty());
  REQUIRE_FALSE(found.nearest.empty());
  for (const FitNearest& each : found.nearest) CHECK(each.gives.size() == 2);
  double error = 0;
  for (const FitNearest& each : found.nearest) {
    CHECK(each.candidate.error >= error);
    error = each.candidate.error;
  }
}

TEST_CASE("a tolerance does not hide what pairs of bounds would do", "[fit]") {
  // 28 stitches and 40 rows per 10 cm: 1200 mm are 336 columns, and 450 mm are 180 rows; 182, or 20 of 9 mm, are 6 n
  // + 2.
  const Swatch measured({{"stockinette", Counted::stitches, 28, 100, ""}, {"stockinette", Counted::rows, 40, 100, ""}});
  FitRequest wanted = request(1200, 450);
  wanted.groups[0].most = 12;
  wanted.edge = stockinette(1);
  wanted.edge_most = 3;
  wanted.rows_step = 6;
  wanted.rows_extra = 2;
  wanted.needles = 200;
  const auto bounds = [](const FitNearest& of) {
    std::vector<FitBound> out;
    for (const FitGive& each : of.gives) out.push_back(each.bound);
    return out;
  };
  const FitResult found = fit(wanted, measured);
  CHECK(found.candidates.empty());
  REQUIRE(found.nearest.size() == 3);
  CHECK(bounds(found.nearest[0]) == std::vector{FitBound::rows, FitBound::panels});
  CHECK(found.nearest[0].candidate.error < 0.01);
  CHECK(bounds(found.nearest[1]) == std::vector{FitBound::height, FitBound::panels});
  CHECK(found.nearest[1].candidate.error < 0.015);
  CHECK(found.nearest[1].candidate.rows == 182);
  // What is told to give does: each request so mended has candidates as near.
  FitRequest mended = wanted;
  mended.panels_most = found.nearest[0].candidate.panels;
  mended.rows_step = 1;
  mended.rows_extra = 0;
  REQUIRE_FALSE(fit(mended, measured).candidates.empty());
  CHECK(fit(mended, measured).candidates[0].error == found.nearest[0].candidate.error);
  mended = wanted;
  mended.panels_most = found.nearest[1].candidate.panels;
  mended.tolerance_percent = 2;
  REQUIRE_FALSE(fit(mended, measured).candidates.empty());
  CHECK(fit(mended, measured).candidates[0].error == found.nearest[1].candidate.error);
}

TEST_CASE("bounds that give together come after one that gives less by itself", "[fit]") {
  // 75 columns as it stands, 0.3 % beyond the tolerance; and 76 by any two of 7, 5 and 3 columns: one of one more and
  // two of another less, which is 2 / 5 each.
  FitRequest wanted = request(76 * 4, 100);
  wanted.groups = {{{stockinette(7)}, 5, 5}, {{stockinette(5)}, 5, 5}, {{stockinette(3)}, 5, 5}};
  const FitResult found = fit(wanted, swatch());
  REQUIRE(found.nearest.size() == 3);
  CHECK(words(found.nearest[0]) ==
        std::vector<std::string>{"4.0 mm narrower than wanted (1.3 %; at most 1 % is allowed)"});
  for (std::size_t i = 1; i < 3; ++i) {
    CHECK(found.nearest[i].candidate.columns == 76);
    CHECK(found.nearest[i].gives.size() == 2);
  }
}

TEST_CASE("of equal nearest those that give least come first", "[fit]") {
  // 45 repeats of two groups alike: 20 of one, and the other at 25; neither 44 and 1 nor the other way round.
  FitRequest wanted = request(45 * 40, 100);
  wanted.groups = {{{stockinette(10)}, 1, 20}, {{stockinette(10)}, 1, 20}};
  const FitResult found = fit(wanted, swatch());
  REQUIRE(found.nearest.size() >= 2);
  CHECK(found.nearest[0].candidate.error == 0);
  CHECK(found.nearest[0].candidate.times == std::vector<int>{20, 25});
  CHECK(words(found.nearest[0]) == std::vector<std::string>{"25 repeats of group 2; at most 20 are allowed"});
  CHECK(found.nearest[1].candidate.times == std::vector<int>{25, 20});
  // 5 of 20 too many is less than 5 of 10, whichever group comes first.
  wanted.groups[0].most = 10;
  wanted.width_mm = 35 * 40;
  const FitResult shares = fit(wanted, swatch());
  REQUIRE(shares.nearest.size() >= 2);
  CHECK(shares.nearest[0].candidate.times == std::vector<int>{10, 25});
  CHECK(shares.nearest[1].candidate.times == std::vector<int>{15, 20});
}

TEST_CASE("a little beyond a tolerance comes before many times what is allowed", "[fit]") {
  // A rope of 11 columns: 36 x 11 + 2 x 2 = 400 columns are 1600 mm. At 0.5 % of 1632 mm, 408 columns, nothing of 1 to
  // 4 edge columns fits: 404 are 1 % narrow. With 6 edge columns a side it does, and with 50 and fewer ropes.
  FitRequest wanted = request(1632, 100);
  wanted.groups = {{{stockinette(11)}, 1, 36}};
  wanted.edge = stockinette(1);
  wanted.edge_least = 1;
  wanted.edge_most = 4;
  wanted.tolerance_percent = 0.5;
  const FitResult found = fit(wanted, swatch());
  CHECK(found.candidates.empty());
  REQUIRE(found.nearest.size() == 3);
  CHECK(words(found.nearest[0]) == std::vector<std::string>{"37 repeats of group 1; at most 36 are allowed"});
  CHECK(found.nearest[0].candidate.columns == 409);  // 37 x 11 + 2: within the tolerance, so that 1 / 36 is all
  CHECK(words(found.nearest[1]) == std::vector<std::string>{"5 edge columns a side; at most 4 are allowed"});
  CHECK(found.nearest[1].candidate.columns == 406);
  CHECK(words(found.nearest[2]) ==
        std::vector<std::string>{"16.0 mm narrower than wanted (1.0 %; at most 0.5 % is allowed)"});
}

TEST_CASE("tied groups give together", "[fit]") {
  // 10 columns either side of 4, three times at most: 64. 84 columns are four times.
  FitRequest wanted = request(84 * 4, 100);
  wanted.groups = {{{stockinette(10)}, 1, 3}, {{stockinette(4)}}, {{stockinette(10)}, 1, 3, 0}};
  const FitResult found = fit(wanted, swatch());
  REQUIRE_FALSE(found.nearest.empty());
  CHECK(words(found.nearest[0]) == std::vector<std::string>{"4 repeats of groups 1 and 3; at most 3 are allowed"});
  CHECK(found.nearest[0].gives[0].group == 0);
  CHECK(found.nearest[0].candidate.times == std::vector<int>{4, 1, 4});
}

TEST_CASE("three are told though one bound alone would do", "[fit]") {
  // One group of 300 columns, 1200 mm, that stands once: 360 mm too wide, and any other row count or repeat is further
  // off still.
  FitRequest wanted = request(840, 100);
  wanted.groups = {{{stockinette(300)}}};
  const FitResult found = fit(wanted, swatch());
  CHECK(found.nearest_complete);
  REQUIRE(found.nearest.size() == 3);
  const std::string wide = "360.0 mm wider than wanted (42.9 %; at most 1 % is allowed)";
  CHECK(words(found.nearest[0]) == std::vector<std::string>{wide});
  CHECK(words(found.nearest[1]) ==
        std::vector<std::string>{wide, "2.5 mm shorter than wanted (2.5 %; at most 1 % is allowed)"});
  CHECK(words(found.nearest[2]) ==
        std::vector<std::string>{wide, "2.5 mm taller than wanted (2.5 %; at most 1 % is allowed)"});
}

TEST_CASE("three are told however far off they are", "[fit]") {
  // 100 columns, 400 mm, for 4 mm, which is 99 times too wide; in one panel and row upward.
  FitRequest wanted = request(4, 100);
  wanted.groups = {{{stockinette(100)}}};
  const FitResult found = fit(wanted, swatch());
  CHECK(found.nearest_complete);
  REQUIRE(found.nearest.size() == 3);
  CHECK(words(found.nearest[0]) ==
        std::vector<std::string>{"396.0 mm wider than wanted (9900.0 %; at most 1 % is allowed)"});
  CHECK(found.nearest[0].candidate.rows == 40);
  for (const FitNearest& each : found.nearest) CHECK(each.candidate.columns == 100);
  // And where the height is: one row of 1000 mm for 1 mm.
  const Swatch coarse({{"stockinette", Counted::stitches, 25, 100, ""}, {"stockinette", Counted::rows, 0.1, 100, ""}});
  FitRequest low = request(400, 1);
  const FitResult tall = fit(low, coarse);
  REQUIRE(tall.nearest.size() == 3);
  CHECK(tall.nearest[0].candidate.rows == 1);
  CHECK(tall.nearest[0].gives[0].bound == FitBound::height);
}

TEST_CASE("what no grid can hold has nothing near it", "[fit]") {
  FitRequest wanted = request(840, 100);
  wanted.groups = {{{stockinette(40'000)}}, {{stockinette(40'000)}}};
  const FitResult found = fit(wanted, swatch());
  CHECK(found.candidates.empty());
  CHECK(found.nearest.empty());
  CHECK(found.nearest_complete);
}

TEST_CASE("a search for the nearest that is cut short says so", "[fit]") {
  // Eight groups of which the least are too many for the bed. Without it there are 40 to the power of 8 ways.
  FitRequest wanted = request(999.3, 99.9);
  wanted.groups = {8, {{stockinette(1)}, 1, 40}};
  wanted.tolerance_percent.reset();
  wanted.needles = 7;
  const FitResult found = fitting::fit_within(wanted, swatch(), 4'000'000);  // fit() stops at 400 million
  CHECK(found.candidates.empty());
  CHECK_FALSE(found.nearest_complete);
  REQUIRE(found.nearest.size() == 3);  // that there are any is told all the same
  CHECK(found.nearest[0].gives[0].bound == FitBound::needles);
}

TEST_CASE("three that are near are found where few rows, or few columns, make a grid", "[fit]") {
  const Swatch three({{"a", Counted::stitches, 20, 100, ""},
                      {"a", Counted::rows, 30, 100, ""},
                      {"b", Counted::stitches, 25, 100, ""},
                      {"b", Counted::rows, 40, 100, ""},
                      {"c", Counted::stitches, 30, 100, ""},
                      {"c", Counted::rows, 45, 100, ""}});
  const auto strip = [](int columns, const char* texture) { return Strip{"s", texture, Grid(1, columns)}; };
  const auto told = [&](const FitRequest& wanted) {
    const FitResult found = fit(wanted, three);
    CHECK(found.candidates.empty());
    CHECK(found.nearest_complete);
    REQUIRE(found.nearest.size() == 3);
    for (const FitNearest& each : found.nearest) CHECK_FALSE(each.gives.empty());
    return found.nearest;
  };
  // 65,535 rows or none: of 4096 columns at most a grid has so many. What gives least are the rows.
  FitRequest tall;
  tall.width_mm = 3000;
  tall.height_mm = 50;
  tall.rows_extra = 65'535;
  tall.rows_step = 18;
  tall.groups = {{{strip(50, "c")}, 10, 12},
                 {{strip(1, "a"), strip(5, "b")}, 0, 0, 0},
                 {{strip(1, "c")}, 10, 13},
                 {{strip(2, "c"), strip(5, "a")}, 1000, 1000}};
  const std::vector<FitNearest> rows = told(tall);
  CHECK(rows[0].gives.back().bound == FitBound::rows);
  CHECK(rows[0].candidate.height_mm == Approx(50).margin(2));
  // No legal row count at all that the seams leave something of, nor needles for one of each group.
  FitRequest low;
  low.width_mm = 4;
  low.height_mm = 29;
  low.needles = 29;
  low.panels_least = low.panels_most = 2;
  low.edge = strip(1, "a");
  low.edge_least = 2;
  low.edge_most = 3;
  low.rows_extra = 10;
  low.rows_step = 65'536;
  low.seam_right = 2;
  low.seam_bottom = 1000;
  low.seam_stitches = 0.5;
  low.groups = {{{strip(2, "b"), strip(5, "b")}, 60'000, 60'003},
                {{strip(5000, "b")}, 1, 2},
                {{strip(5000, "a"), strip(1, "b")}, 1, 2},
                {{strip(2, "c")}, 0, 1}};
  told(low);
  // As far off as a kilometre.
  FitRequest far;
  far.width_mm = 100'000;
  far.height_mm = 1'000'000;
  far.tolerance_percent = 1;
  far.needles = 30;
  far.panels_most = 2;
  far.edge = strip(1, "b");
  far.edge_most = 2;
  far.rows_step = 65'536;
  far.seam_stitches = 0.5;
  far.groups = {{{strip(30'000, "c"), strip(2, "a")}, 2, 2},
                {{strip(4, "c"), strip(3, "b")}, 1000, 1002, 0},
                {{strip(5000, "b"), strip(1, "c")}, 0, 100},
                {{strip(1, "b")}, 3, 6}};
  told(far);
}

TEST_CASE("what is nearest has no bare column outside either, and measures as its panel does", "[fit]") {
  const Strip ladder{"ladder", "stockinette", Grid::from_text(".k.")};
  FitRequest edged = request(12, 100);
  edged.groups = {{{ladder}, 1, 1}};
  edged.edge = stockinette(1);
  edged.edge_least = edged.edge_most = 1;
  edged.tolerance_percent = 1;
  FitRequest never = request(28, 100);
  never.groups = {{{ladder}, 0, 0}, {{stockinette(1)}, 4, 4}};
  never.tolerance_percent = 0.5;
  for (const FitRequest& wanted : {edged, never}) {
    const FitResult found = fit(wanted, swatch());
    REQUIRE(found.candidates.empty());
    CHECK(found.nearest.size() == 3);
    for (const FitNearest& each : found.nearest) {
      const Panel panel = fitted(wanted, each.candidate);
      CHECK(panel.grid().at(1, 0) != Cell::none);
      CHECK(panel.grid().at(1, panel.grid().columns() - 1) != Cell::none);
      CHECK(size(panel, swatch()).width_mm == each.candidate.width_mm);
    }
  }
}

TEST_CASE("the rows that are allowed are told as rows that a grid may have", "[fit]") {
  FitRequest wanted = request(40, 155'000);
  wanted.rows_step = wanted.rows_extra = 40'000;
  wanted.tolerance_percent = 0.001;
  bool told = false;
  for (const FitNearest& near : fit(wanted, swatch()).nearest) {
    for (const FitGive& give : near.gives) {
      if (give.bound != FitBound::rows) continue;
      CHECK(give.limit <= Grid::max_side);
      told = true;
    }
  }
  CHECK(told);
}

TEST_CASE("the share that is told never falls where nothing fits and starts vary", "[fit]") {
  FitRequest wanted = request(1000, 1000);
  wanted.groups[0].most = 2;
  wanted.vary_start = true;
  wanted.tolerance_percent = 1;
  double last = 0;
  FitOptions options;
  options.progress = [&](const Progress& progress) {
    CHECK(progress.share >= last);
    last = progress.share;
  };
  CHECK(fit(wanted, swatch(), options).candidates.empty());
  CHECK(last == 1);
}

}  // namespace fit_nearest_test
