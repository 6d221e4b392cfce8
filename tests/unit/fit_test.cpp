#include "latchwork/fit.hpp"

#include <algorithm>
#include <cmath>
#include <stop_token>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "fit_request.hpp"
#include "latchwork/size.hpp"

namespace fit_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::candidates;
using latchwork_test::four_by_two_and_a_half;
using latchwork_test::numbers;
using latchwork_test::refused_field;
using latchwork_test::request;

TEST_CASE("a fit by another texture's gauge says so, as the fitted panel's size does", "[fit]") {
  FitRequest wanted = request(400, 300, 10);
  wanted.groups[0].strips.push_back(Strip{"waves", "waves", Grid(1, 4)});
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  const auto borrowed = [](const FitResult& found) {
    std::vector<std::string> textures;
    for (const Finding& each : found.findings) {
      if (each.code == FindingCode::borrowed_gauge) textures.push_back(each.place.field);
    }
    return textures;
  };
  wanted.substitutes = {{"waves", "moss"}};
  const FitResult found = fit(wanted, four_by_two_and_a_half());
  CHECK(borrowed(found) == std::vector<std::string>{"waves"});
  CHECK(found.findings.at(0).message.find("'moss'") != std::string::npos);
  const Panel panel = fitted(wanted, found.candidates.at(0));
  const SizeOptions options{.substitutes = wanted.substitutes};
  CHECK(found.findings == measuring_findings(panel, four_by_two_and_a_half(), options));
  // Also of what is nearest.
  wanted.needles = 3;
  CHECK(borrowed(fit(request(400, 300, 10), four_by_two_and_a_half())).empty());
  const FitResult none = fit(wanted, four_by_two_and_a_half());
  CHECK(none.candidates.empty());
  CHECK(none.findings == found.findings);
}

TEST_CASE("a target that can be met is met, and comes first", "[fit]") {
  // 10 columns a repeat are 40 mm, an edge column 4 mm at each side: 400 mm are 9 repeats and 5 edge columns a side.
  FitRequest wanted = request(400, 300, 10);
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = 1;
  wanted.edge_most = 6;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 10);
  FitCandidate best = numbers({9}, 5, 100, 120);
  best.width_mm = 400;
  best.height_mm = 300;
  CHECK(found[0] == best);
}

TEST_CASE("candidates come by error, with the errors of width and height", "[fit]") {
  FitRequest wanted = request(410, 301, 10);
  wanted.most = 4;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 4);
  CHECK(found[0].times[0] == 10);  // 400 mm: -10
  CHECK(found[0].rows == 120);     // 300 mm: -1
  CHECK(found[0].width_error_mm == -10);
  CHECK(found[0].height_error_mm == -1);
  CHECK(found[0].error == Approx(std::hypot(10.0 / 410, 1.0 / 301)).epsilon(1e-9));
  CHECK(found[1].rows == 121);  // 302.5 mm: +1.5
  CHECK(found[2].rows == 119);  // 297.5 mm: -3.5
  CHECK(found[3].rows == 122);  // 305 mm: +4
}

TEST_CASE("equal errors go to fewer columns, then fewer rows, then fewer edge columns", "[fit]") {
  // 42 mm lie half way between 10 and 11 columns, and 26.25 mm half way between 10 and 11 rows.
  FitRequest wanted = request(42, 26.25, 1);
  wanted.most = 4;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 4);
  for (std::size_t i = 0; i < 4; ++i) CHECK(found[i].error == found[0].error);
  CHECK(found[0].columns == 10);
  CHECK(found[0].rows == 10);
  CHECK(found[1].columns == 10);
  CHECK(found[1].rows == 11);
  CHECK(found[2].columns == 11);
  CHECK(found[2].rows == 10);
  CHECK(found[3].columns == 11);
  CHECK(found[3].rows == 11);

  // 2 columns a repeat: one edge column a side less is one repeat more of the same width.
  FitRequest edges = request(48, 25, 2);
  edges.edge = Strip{"edge", "edge", Grid(1, 1)};
  edges.edge_least = 0;
  edges.edge_most = 3;
  edges.most = 4;
  const std::vector<FitCandidate> same_width = candidates(edges);
  REQUIRE(same_width.size() == 4);
  for (int edge = 0; edge < 4; ++edge) {
    const FitCandidate& candidate = same_width[static_cast<std::size_t>(edge)];
    CHECK(candidate.edge_columns == edge);
    CHECK(candidate.times[0] == 6 - edge);
    CHECK(candidate.columns == 12);
  }
  // When only one is asked for, it is the same one: the tie is broken by the rule and not by what was met first.
  edges.most = 1;
  CHECK(candidates(edges) == std::vector<FitCandidate>{same_width[0]});
  wanted.most = 1;
  CHECK(candidates(wanted) == std::vector<FitCandidate>{found[0]});
}

TEST_CASE("a width that is as near as the best is not passed over for a row more or less", "[fit]") {
  // 420 mm lie half way between 10 and 11 repeats. One row in 40000 changes the error of either by less than a
  // millionth.
  FitRequest wanted = request(420, 100'000, 10);
  wanted.most = 2;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 2);
  CHECK(found[0].columns == 100);
  CHECK(found[1].columns == 110);
  CHECK(found[0].rows == 40'000);
  CHECK(found[1].rows == 40'000);
  CHECK(found[0].error == found[1].error);
}

TEST_CASE("no candidate has more cells, rows or columns than a grid may have", "[fit]") {
  FitRequest wanted = request(8192 * 4, 1'000'000, 8192);
  wanted.groups[0].most = Grid::max_side;
  CHECK(candidates(wanted)[0].rows == Grid::max_cells / 8192);
  wanted.groups = {{{stockinette(100)}}};
  CHECK(candidates(wanted)[0].rows == Grid::max_side);
  wanted = request(1'000'000, 100, 1);
  wanted.groups[0].most = Grid::max_side;
  CHECK(candidates(wanted)[0].columns == Grid::max_side);
}

TEST_CASE("rows are the extra rows and whole steps of the vertical repeat", "[fit]") {
  FitRequest wanted = request(40, 100, 1);
  wanted.rows_step = 8;
  wanted.rows_extra = 3;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 10);
  CHECK(found[0].rows == 43);  // 107.5 mm, +7.5; 35 rows are 87.5 mm, -12.5
  for (const FitCandidate& candidate : found) CHECK(candidate.rows % 8 == 3);
  // Down to the extra rows alone, when there are any; else to one step.
  wanted.height_mm = 1;
  CHECK(candidates(wanted)[0].rows == 3);
  wanted.rows_extra = 0;
  CHECK(candidates(wanted)[0].rows == 8);
}

TEST_CASE("what is wider than the bed is left out, and nothing may be left", "[fit]") {
  FitRequest wanted = request(400, 100, 10);
  wanted.groups.push_back({{stockinette(5)}});
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.needles = 47;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE_FALSE(found.empty());
  CHECK(found[0].times[0] == 4);
  CHECK(found[0].columns == 47);  // 1 + 40 + 5 + 1
  for (const FitCandidate& candidate : found) CHECK(candidate.columns <= 47);
  wanted.needles = 16;
  CHECK(candidates(wanted).empty());
  wanted.needles = 17;
  CHECK(candidates(wanted)[0].columns == 17);
}

TEST_CASE("without an edge there are no edge columns, whatever the bounds say", "[fit]") {
  FitRequest wanted = request(40, 25, 1);
  wanted.edge_least = 3;
  wanted.edge_most = 5;
  for (const FitCandidate& candidate : candidates(wanted)) CHECK(candidate.edge_columns == 0);
}

TEST_CASE("the panel of a candidate is edge, groups and mirrored edge, and measures as told", "[fit]") {
  FitRequest wanted;
  wanted.width_mm = 120;
  wanted.height_mm = 80;
  Strip cable = rope(2, 1, 4, Lean::right);
  cable.texture = "rope";
  wanted.groups = {{{stockinette(3), cable}, 1, 200}, {{stockinette(3)}}};
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = 2;
  wanted.edge_most = 2;
  wanted.rows_step = 4;
  const Swatch swatch = four_by_two_and_a_half();
  const std::vector<FitCandidate> found = candidates(wanted, swatch);
  REQUIRE_FALSE(found.empty());
  CHECK(found[0].columns == 31);  // 2 + 4 * 6 + 3 + 2: 124 mm; 25 would be 100 mm
  CHECK(found[0].rows == 32);
  const Panel panel = fitted(wanted, found[0]);
  CHECK(panel.name() == "4 + 1 repeats, 2 edge columns a side, 32 rows");
  CHECK(panel.grid().columns() == 31);
  CHECK(panel.grid().rows() == 32);
  REQUIRE(panel.bands().size() == 1);
  std::vector<std::string> textures;
  for (const StripSpan& span : panel.bands()[0].strips) textures.push_back(span.texture);
  CHECK(textures == std::vector<std::string>{"edge", "stockinette", "rope", "stockinette", "rope", "stockinette",
                                             "rope", "stockinette", "rope", "stockinette", "edge"});
  CHECK(panel.grid().crossings().size() == 4 * 8);
  const Size sized = size(panel, swatch);
  CHECK(sized.width_mm == found[0].width_mm);
  CHECK(sized.height_mm == found[0].height_mm);
}

TEST_CASE("tied groups stand as often as each other", "[fit]") {
  // 10 columns either side of a middle of 4: 24, 44, 64. Free, 34 and 54 are nearer to 38 and 58.
  FitRequest wanted = request(38 * 4, 100, 10);
  wanted.groups.push_back({{stockinette(4)}});
  wanted.groups.push_back({{stockinette(10)}, 5, 6, 0});  // its least and most are not what counts
  wanted.groups.push_back({{stockinette(1)}, 0, 0, 2});   // nor is that of a group tied to a tied one
  for (const FitCandidate& each : candidates(wanted)) {
    CHECK(each.times == std::vector<int>{each.times[0], 1, each.times[0], each.times[0]});
    CHECK(each.columns == 21 * each.times[0] + 4);
  }
  const FitCandidate best = candidates(wanted).at(0);
  CHECK(best.times[0] == 2);  // 46 columns are 8 over, 25 are 13 short
  CHECK(fitted(wanted, best).grid().columns() == 46);
  CHECK(size(fitted(wanted, best), four_by_two_and_a_half()).width_mm == best.width_mm);
  FitCandidate uneven = best;
  uneven.times[2] = 3;
  uneven.columns += 10;
  CHECK_THROWS_MATCHES(fitted(wanted, uneven), Error, refused_field(ErrorCode::bad_argument, "times[2]"));
  wanted.groups[0].most = 0;
  wanted.groups[0].least = 0;
  CHECK(candidates(wanted).at(0).times == std::vector<int>{0, 1, 0, 0});
  for (const auto& [group, as] : {std::pair(0, 0), std::pair(2, 2), std::pair(1, 3), std::pair(3, -2)}) {
    FitRequest bad = wanted;
    bad.groups[static_cast<std::size_t>(group)].as_group = as;
    CHECK_THROWS_MATCHES(fit(bad, four_by_two_and_a_half()), Error,
                         refused_field(ErrorCode::bad_argument, "groups[" + std::to_string(group) + "].as_group"));
  }
}

TEST_CASE("targets are not what panels are made of", "[fit]") {
  FitRequest wanted = request(400, 300, 10);
  const FitCandidate best = candidates(wanted).at(0);
  const Panel panel = fitted(wanted, best);
  wanted.width_mm = wanted.height_mm = 0;
  wanted.width_most_mm = -1;
  CHECK(fitted(wanted, best) == panel);
}

TEST_CASE("a best fit that ends open is told", "[fit]") {
  // 63 rows, of which each third is crossed: the last crossing comes after the last row, unless the repeat begins
  // higher.
  FitRequest wanted = request(160, 63 * 2.5, 4);
  Grid crossed(3, 4);
  crossed.cross({.row = 3, .column = 1, .left = 1, .right = 1});
  wanted.groups[0].strips = {Strip{"rope", "rope", crossed}};
  wanted.rows_step = 6;
  wanted.rows_extra = 3;
  const FitResult found = fit(wanted, four_by_two_and_a_half());
  REQUIRE_FALSE(found.candidates.empty());
  const FitCandidate& best = found.candidates[0];
  const std::vector<Finding> on_grid = findings(fitted(wanted, best).grid(), Machine{});
  const auto open = [](const Finding& each) {
    return each.code == FindingCode::open_crossing || each.code == FindingCode::open_stack;
  };
  CHECK(best.open_ends == std::any_of(on_grid.begin(), on_grid.end(), open));
  REQUIRE(best.open_ends);
  const auto told = std::find_if(found.findings.begin(), found.findings.end(), open);
  REQUIRE(told != found.findings.end());
  CHECK(told->code == FindingCode::open_crossing);
  CHECK(told->place.row == best.rows);
  CHECK(told->message.find("63 rows") != std::string::npos);
  wanted.vary_start = true;
  const FitResult begun = fit(wanted, four_by_two_and_a_half());
  CHECK_FALSE(begun.candidates[0].open_ends);
  CHECK(std::none_of(begun.findings.begin(), begun.findings.end(), open));
  // A tuck in the last row is told as what it is.
  wanted.vary_start = false;
  Grid tucked(3, 4);
  tucked.set(3, 1, Cell::tuck);
  wanted.groups[0].strips = {Strip{"moss", "moss", tucked}};
  const FitResult stack = fit(wanted, four_by_two_and_a_half());
  const auto held = std::find_if(stack.findings.begin(), stack.findings.end(), open);
  REQUIRE(held != stack.findings.end());
  CHECK(held->code == FindingCode::open_stack);
}

TEST_CASE("inside a range there is no error; outside it is the distance to the nearer end", "[fit]") {
  FitRequest wanted = request(390, 300, 10);
  wanted.width_most_mm = 450;
  wanted.height_most_mm = 304;
  wanted.most = 7;
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 7);
  // 400 and 440 mm wide, 300 and 302.5 mm high: the fewer columns first, then the fewer rows.
  CHECK(found[0].columns == 100);
  CHECK(found[0].rows == 120);
  CHECK(found[1].rows == 121);
  CHECK(found[2].columns == 110);
  for (int i = 0; i < 4; ++i) CHECK(found[static_cast<std::size_t>(i)].error == 0);
  CHECK(found[4].rows == 122);  // 305 mm: +1 of 304
  CHECK(found[4].height_error_mm == 1);
  CHECK(found[4].height_error_percent == Approx(100.0 / 304));
  CHECK(found[5].columns == 110);
  CHECK(found[6].rows == 119);  // 297.5 mm: -2.5 of 300
  CHECK(found[6].height_error_percent == Approx(-250.0 / 300));
  CHECK(found[6].width_error_percent == 0);
}

TEST_CASE("a tolerance leaves out what is further off in either direction", "[fit]") {
  FitRequest wanted = request(410, 300, 10);
  wanted.tolerance_percent = 2.5;
  wanted.most = 1000;
  // 400 mm are 2.44 % narrow, 440 mm 7.3 % wide. 117 to 123 rows are within 7.5 mm of 300.
  const std::vector<FitCandidate> found = candidates(wanted);
  REQUIRE(found.size() == 7);
  for (const FitCandidate& each : found) {
    CHECK(each.columns == 100);
    CHECK(std::abs(each.height_error_percent) <= 2.5);
  }
  wanted.width_mm = 400;
  wanted.tolerance_percent = 0;
  CHECK(candidates(wanted).size() == 1);
}

TEST_CASE("groups stand from the left, each its own times, and fewer of the first win a tie", "[fit]") {
  FitRequest wanted = request(200, 100, 4);
  wanted.groups = {{{stockinette(4)}, 1, 20}, {{Strip{"moss", "moss", Grid(1, 4)}}, 0, 20}, {{stockinette(2)}}};
  wanted.most = 3;
  const std::vector<FitCandidate> found = candidates(wanted);  // 50 columns: 12 repeats of both and the closing 2
  REQUIRE(found.size() == 3);
  CHECK(found[0].times == std::vector<int>{1, 11, 1});
  CHECK(found[1].times == std::vector<int>{2, 10, 1});
  CHECK(found[2].times == std::vector<int>{3, 9, 1});
  std::vector<std::string> textures;
  const Panel panel = fitted(wanted, found[1]);
  for (const StripSpan& span : panel.bands()[0].strips) textures.push_back(span.texture);
  std::vector<std::string> expected(2, "stockinette");
  expected.insert(expected.end(), 10, "moss");
  expected.emplace_back("stockinette");
  CHECK(textures == expected);
}

TEST_CASE("panels sewn together lose the seams' stitches, and their halves mirror each other", "[fit]") {
  // Edge 2, cable 4 and ground 2 ten times, edge 2: 64 columns. Seams take 1 stitch of each edge.
  FitRequest wanted = request(1000, 100, 1);
  Strip cable = rope(2, 2, 4, Lean::right);
  cable.texture = "rope";
  wanted.groups = {{{cable, stockinette(2)}, 10, 10}};
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = wanted.edge_most = 2;
  wanted.panels_most = 6;
  wanted.needles = 70;
  wanted.most = 1;
  const FitCandidate best = candidates(wanted)[0];
  CHECK(best.panels == 4);  // 4 * 64 - 6 = 250 stitches of 4 mm
  CHECK(best.columns == 64);
  CHECK(best.width_mm == Approx(1000));
  const Panel first = fitted(wanted, best, 0);
  CHECK(first.name() == "10 repeats, 2 edge columns a side, 40 rows, panel 1 of 4");
  CHECK(first.grid() == fitted(wanted, best, 1).grid());
  for (int panel = 2; panel < 4; ++panel) CHECK(fitted(wanted, best, panel).grid() == first.grid().mirrored());
  CHECK(first.grid().crossings().size() == 10 * 10);  // none is cut

  wanted.panels_least = wanted.panels_most = 3;
  const FitCandidate three = candidates(wanted)[0];
  CHECK(fitted(wanted, three, 1).grid() == first.grid());
  CHECK(fitted(wanted, three, 2).grid() == first.grid().mirrored());
  wanted.seam_stitches = 0.5;
  CHECK(candidates(wanted)[0].width_mm == Approx((3 * 64 - 2) * 4));
  wanted.seam_stitches = 0;
  CHECK(candidates(wanted)[0].width_mm == Approx(3 * 64 * 4));
  wanted.seam_left = 4;  // the whole edge, and half the cable
  CHECK(candidates(wanted)[0].width_mm == Approx((3 * 64 - 4) * 4));
}

TEST_CASE("panels whose seams would take more than edge columns are none", "[fit]") {
  FitRequest wanted = request(400, 100, 10);
  wanted.panels_least = wanted.panels_most = 2;
  wanted.seam_stitches = 0;
  CHECK(candidates(wanted)[0].times[0] == 5);
  wanted.seam_stitches = 0.5;
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = 0;
  for (const FitCandidate& each : candidates(wanted)) CHECK(each.edge_columns == 1);
}

TEST_CASE("numbers at the ends of their ranges make no infinite measure", "[fit]") {
  // The coarsest and finest gauges that a swatch may have.
  const Swatch coarse(
      {{"stockinette", Counted::stitches, 0.1, 10'000, ""}, {"stockinette", Counted::rows, 0.1, 10'000, ""}});
  const Swatch fine({{"stockinette", Counted::stitches, 10'000, 1, ""}, {"stockinette", Counted::rows, 10'000, 1, ""}});
  for (const Swatch* swatch : {&coarse, &fine}) {
    for (const double target : {1.0, 1'000'000.0}) {
      FitRequest wanted = request(target, target, Grid::max_side);
      wanted.groups.resize(FitRequest::max_groups, {{stockinette(Grid::max_side)}, 0, Grid::max_side});
      wanted.edge = stockinette(1);
      wanted.edge_least = 0;
      wanted.edge_most = Grid::max_side;
      wanted.panels_most = FitRequest::max_panels;
      wanted.most = 3;
      for (const FitCandidate& each : candidates(wanted, *swatch)) {
        CHECK(std::isfinite(each.error));
        CHECK(each.width_mm > 0);
        CHECK(each.height_mm > 0);
      }
    }
  }
}

TEST_CASE("a fit tells how far it is, and ends when it is asked to", "[fit]") {
  FitRequest wanted = request(1000, 1000, 1);
  wanted.groups = {4, {{stockinette(3)}, 0, 30}};
  FitOptions options;
  double last = 0;
  int told = 0;
  options.progress = [&](const Progress& progress) {
    CHECK(progress.share >= last);
    CHECK(progress.share <= 1);
    last = progress.share;
    ++told;
  };
  const FitResult whole = fit(wanted, four_by_two_and_a_half(), options);
  CHECK(last == 1);
  CHECK(told > 2);
  CHECK(whole == fit(wanted, four_by_two_and_a_half()));

  std::stop_source source;
  options.stop = source.get_token();
  options.progress = [&](const Progress& progress) {
    if (progress.share > 0) source.request_stop();
  };
  CHECK_THROWS_MATCHES(fit(wanted, four_by_two_and_a_half(), options), Error, refused_field(ErrorCode::cancelled, ""));
  struct Enough {};
  options = {};
  options.progress = [](const Progress&) { throw Enough{}; };
  CHECK_THROWS_AS(fit(wanted, four_by_two_and_a_half(), options), Enough);
  // Where nothing fits, too.
  wanted.needles = 2;
  last = 0;
  options.progress = [&](const Progress& progress) {
    CHECK(progress.share >= last);
    last = progress.share;
  };
  CHECK(fit(wanted, four_by_two_and_a_half(), options).candidates.empty());
  CHECK(last == 1);
}

}  // namespace fit_test
