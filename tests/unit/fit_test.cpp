#include "latchwork/fit.hpp"

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/size.hpp"

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

namespace {

// 25 stitches and 40 rows per 10 cm: a stitch is 4 mm wide, a row 2.5 mm high.
Swatch four_by_two_and_a_half() {
  std::vector<Measurement> out;
  for (const char* texture : {"stockinette", "edge", "rope", "moss"}) {
    for (int place = 0; place < 2; ++place) {
      out.push_back({texture, Counted::stitches, 25, 100, ""});
      out.push_back({texture, Counted::rows, 40, 100, ""});
    }
  }
  return Swatch(out);
}

FitRequest request(double width_mm, double height_mm, int repeat_columns) {
  FitRequest out;
  out.width_mm = width_mm;
  out.height_mm = height_mm;
  out.repeat = {stockinette(repeat_columns)};
  return out;
}

}  // namespace

TEST_CASE("a target that can be met is met, and comes first", "[fit]") {
  // 10 columns a repeat are 40 mm, an edge column 4 mm at each side: 400 mm are 9 repeats and 5 edge columns a side.
  FitRequest wanted = request(400, 300, 10);
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = 1;
  wanted.edge_most = 6;
  const std::vector<FitCandidate> found = fit(wanted, four_by_two_and_a_half());
  REQUIRE(found.size() == 10);
  CHECK(found[0] == FitCandidate{9, 5, 100, 120, 400, 300, 0, 0, 0});
}

TEST_CASE("candidates come by error, with the errors of width and height", "[fit]") {
  FitRequest wanted = request(410, 301, 10);
  wanted.most = 4;
  const std::vector<FitCandidate> found = fit(wanted, four_by_two_and_a_half());
  REQUIRE(found.size() == 4);
  CHECK(found[0].repeats == 10);  // 400 mm: -10
  CHECK(found[0].rows == 120);    // 300 mm: -1
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
  const std::vector<FitCandidate> found = fit(wanted, four_by_two_and_a_half());
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
  const std::vector<FitCandidate> same_width = fit(edges, four_by_two_and_a_half());
  REQUIRE(same_width.size() == 4);
  for (int edge = 0; edge < 4; ++edge) {
    const FitCandidate& candidate = same_width[static_cast<std::size_t>(edge)];
    CHECK(candidate.edge_columns == edge);
    CHECK(candidate.repeats == 6 - edge);
    CHECK(candidate.columns == 12);
  }
  // When only one is asked for, it is the same one: the tie is broken by the rule and not by what was met first.
  edges.most = 1;
  CHECK(fit(edges, four_by_two_and_a_half()) == std::vector<FitCandidate>{same_width[0]});
  wanted.most = 1;
  CHECK(fit(wanted, four_by_two_and_a_half()) == std::vector<FitCandidate>{found[0]});
}

TEST_CASE("a width that is as near as the best is not passed over for a row more or less", "[fit]") {
  // 420 mm lie half way between 10 and 11 repeats. One row in 40000 changes the error of either by less than a
  // millionth.
  FitRequest wanted = request(420, 100'000, 10);
  wanted.most = 2;
  const std::vector<FitCandidate> found = fit(wanted, four_by_two_and_a_half());
  REQUIRE(found.size() == 2);
  CHECK(found[0].columns == 100);
  CHECK(found[1].columns == 110);
  CHECK(found[0].rows == 40'000);
  CHECK(found[1].rows == 40'000);
  CHECK(found[0].error == found[1].error);
}

TEST_CASE("no candidate has more cells, rows or columns than a grid may have", "[fit]") {
  FitRequest wanted = request(8192 * 4, 1'000'000, 8192);
  wanted.repeats_most = Grid::max_side;
  CHECK(fit(wanted, four_by_two_and_a_half())[0].rows == Grid::max_cells / 8192);
  wanted.repeat = {stockinette(100)};
  wanted.repeats_most = 1;
  CHECK(fit(wanted, four_by_two_and_a_half())[0].rows == Grid::max_side);
  wanted = request(1'000'000, 100, 1);
  wanted.repeats_most = Grid::max_side;
  CHECK(fit(wanted, four_by_two_and_a_half())[0].columns == Grid::max_side);
}

TEST_CASE("rows are the extra rows and whole steps of the vertical repeat", "[fit]") {
  FitRequest wanted = request(40, 100, 1);
  wanted.rows_step = 8;
  wanted.rows_extra = 3;
  const std::vector<FitCandidate> found = fit(wanted, four_by_two_and_a_half());
  REQUIRE(found.size() == 10);
  CHECK(found[0].rows == 43);  // 107.5 mm, +7.5; 35 rows are 87.5 mm, -12.5
  for (const FitCandidate& candidate : found) CHECK(candidate.rows % 8 == 3);
  // Down to the extra rows alone, when there are any; else to one step.
  wanted.height_mm = 1;
  CHECK(fit(wanted, four_by_two_and_a_half())[0].rows == 3);
  wanted.rows_extra = 0;
  CHECK(fit(wanted, four_by_two_and_a_half())[0].rows == 8);
}

TEST_CASE("what is wider than the bed is left out, and nothing may be left", "[fit]") {
  FitRequest wanted = request(400, 100, 10);
  wanted.closing = {stockinette(5)};
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.needles = 47;
  const std::vector<FitCandidate> found = fit(wanted, four_by_two_and_a_half());
  REQUIRE_FALSE(found.empty());
  CHECK(found[0].repeats == 4);
  CHECK(found[0].columns == 47);  // 1 + 40 + 5 + 1
  for (const FitCandidate& candidate : found) CHECK(candidate.columns <= 47);
  wanted.needles = 16;
  CHECK(fit(wanted, four_by_two_and_a_half()).empty());
  wanted.needles = 17;
  CHECK(fit(wanted, four_by_two_and_a_half())[0].columns == 17);
}

TEST_CASE("without an edge there are no edge columns, whatever the bounds say", "[fit]") {
  FitRequest wanted = request(40, 25, 1);
  wanted.edge_least = 3;
  wanted.edge_most = 5;
  for (const FitCandidate& candidate : fit(wanted, four_by_two_and_a_half())) CHECK(candidate.edge_columns == 0);
}

TEST_CASE("the panel of a candidate is edge, repeats, closing and mirrored edge, and measures as told", "[fit]") {
  FitRequest wanted;
  wanted.width_mm = 120;
  wanted.height_mm = 80;
  Strip cable = rope(2, 1, 4, Lean::right);
  cable.texture = "rope";
  wanted.repeat = {stockinette(3), cable};
  wanted.closing = {stockinette(3)};
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = 2;
  wanted.edge_most = 2;
  wanted.rows_step = 4;
  const Swatch swatch = four_by_two_and_a_half();
  const std::vector<FitCandidate> found = fit(wanted, swatch);
  REQUIRE_FALSE(found.empty());
  CHECK(found[0].columns == 31);  // 2 + 4 * 6 + 3 + 2: 124 mm; 25 would be 100 mm
  CHECK(found[0].rows == 32);
  const Panel panel = fitted(wanted, found[0]);
  CHECK(panel.name() == "4 repeats, 2 edge columns a side, 32 rows");
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

TEST_CASE("a request out of its ranges is refused by field", "[fit][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  const auto refused = [](const char* field, auto change) {
    FitRequest wanted = request(400, 300, 10);
    wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
    change(wanted);
    INFO(field);
    CHECK_THROWS_MATCHES(fit(wanted, four_by_two_and_a_half()), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(fitted(wanted, {1, 1, 12, 10, 0, 0, 0, 0, 0}), Error,
                         refused_field(ErrorCode::bad_argument, field));
  };
  for (const double width : {0.0, 0.99, -5.0, 1000000.5, nan, infinity}) {
    refused("width_mm", [&](FitRequest& r) { r.width_mm = width; });
    refused("height_mm", [&](FitRequest& r) { r.height_mm = width; });
  }
  refused("repeat", [](FitRequest& r) { r.repeat.clear(); });
  refused("edge", [](FitRequest& r) { r.edge->grid = Grid(1, 2); });
  refused("edge_least", [](FitRequest& r) { r.edge_least = -1; });
  refused("edge_most", [](FitRequest& r) { r.edge_most = 0; });
  refused("edge_most", [](FitRequest& r) { r.edge_most = Grid::max_side + 1; });
  refused("repeats_least", [](FitRequest& r) { r.repeats_least = 0; });
  refused("repeats_most", [](FitRequest& r) { r.repeats_least = r.repeats_most + 1; });
  refused("rows_step", [](FitRequest& r) { r.rows_step = 0; });
  refused("rows_extra", [](FitRequest& r) { r.rows_extra = -1; });
  refused("needles", [](FitRequest& r) { r.needles = -1; });
  refused("most", [](FitRequest& r) { r.most = 0; });
  refused("most", [](FitRequest& r) { r.most = 10001; });
}

TEST_CASE("a texture without a gauge is refused by name, also the edge's", "[fit][error]") {
  FitRequest wanted = request(400, 300, 10);
  wanted.closing = {reverse(1)};
  CHECK_THROWS_MATCHES(fit(wanted, four_by_two_and_a_half()), Error, refused_field(ErrorCode::no_gauge, "reverse"));
  wanted.closing.clear();
  wanted.edge = garter();
  const std::string texture = wanted.edge->texture;
  CHECK_THROWS_MATCHES(fit(wanted, four_by_two_and_a_half()), Error, refused_field(ErrorCode::no_gauge, texture));
}

TEST_CASE("a candidate that is not the request's is refused by field", "[fit][error]") {
  FitRequest wanted = request(400, 300, 10);
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_most = 2;
  wanted.rows_step = 4;
  wanted.rows_extra = 1;
  const FitCandidate good{3, 2, 34, 9, 0, 0, 0, 0, 0};
  CHECK(fitted(wanted, good).grid().columns() == 34);
  const auto refused = [&](const char* field, auto change) {
    FitCandidate bad = good;
    change(bad);
    INFO(field);
    CHECK_THROWS_MATCHES(fitted(wanted, bad), Error, refused_field(ErrorCode::bad_argument, field));
  };
  refused("repeats", [](FitCandidate& c) { c.repeats = 0; });
  refused("repeats", [](FitCandidate& c) { c.repeats = 201; });
  refused("edge_columns", [](FitCandidate& c) { c.edge_columns = 3; });
  refused("edge_columns", [](FitCandidate& c) { c.edge_columns = 0; });
  refused("columns", [](FitCandidate& c) { c.columns = 33; });
  refused("rows", [](FitCandidate& c) { c.rows = 8; });
  refused("rows", [](FitCandidate& c) { c.rows = 0; });
  refused("rows", [](FitCandidate& c) { c.rows = -3; });
  refused("rows", [](FitCandidate& c) { c.rows = Grid::max_side + 1; });
  FitRequest no_edge = wanted;
  no_edge.edge.reset();
  CHECK_THROWS_MATCHES(fitted(no_edge, good), Error, refused_field(ErrorCode::bad_argument, "edge_columns"));
}
