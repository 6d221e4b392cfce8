#include "latchwork/fit.hpp"

#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "fit/budget.hpp"
#include "fit_request.hpp"
#include "latchwork/size.hpp"

namespace fit_refused_test {

using namespace latchwork;
using latchwork_test::candidates;
using latchwork_test::four_by_two_and_a_half;
using latchwork_test::numbers;
using latchwork_test::refused_field;
using latchwork_test::request;

TEST_CASE("a request out of its ranges is refused by field", "[fit][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  const auto refused = [](const char* field, auto change) {
    FitRequest wanted = request(400, 300, 10);
    wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
    change(wanted);
    INFO(field);
    CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, field));
    const std::string name = field;
    if (name.starts_with("width") || name.starts_with("height")) return;  // targets, of which no panel is made
    CHECK_THROWS_MATCHES(fitted(wanted, numbers({1}, 1, 12, 10)), Error, refused_field(ErrorCode::bad_argument, field));
  };
  for (const double width : {0.0, 0.99, -5.0, 1000000.5, nan, infinity}) {
    refused("width_mm", [&](FitRequest& r) { r.width_mm = width; });
    refused("height_mm", [&](FitRequest& r) { r.height_mm = width; });
  }
  for (const double most : {0.5, 299.0, -5.0, 1000000.5, nan, infinity}) {
    refused("width_most_mm", [&](FitRequest& r) { r.width_most_mm = most; });
    refused("height_most_mm", [&](FitRequest& r) { r.height_most_mm = most; });
  }
  for (const double percent : {-0.1, 100.5, nan, infinity}) {
    refused("tolerance_percent", [&](FitRequest& r) { r.tolerance_percent = percent; });
  }
  refused("groups", [](FitRequest& r) { r.groups.clear(); });
  refused("groups", [](FitRequest& r) { r.groups.resize(FitRequest::max_groups + 1, r.groups[0]); });
  refused("groups[1].strips", [](FitRequest& r) { r.groups.emplace_back(); });
  refused("groups[0].strips", [](FitRequest& r) { r.groups[0].strips.resize(2, stockinette(Grid::max_side)); });
  refused("groups[0].least", [](FitRequest& r) { r.groups[0].least = -1; });
  refused("groups[0].most", [](FitRequest& r) { r.groups[0].least = r.groups[0].most + 1; });
  refused("groups[0].most", [](FitRequest& r) { r.groups[0].most = Grid::max_side + 1; });
  refused("edge", [](FitRequest& r) { r.edge->grid = Grid(1, 2); });
  refused("edge_least", [](FitRequest& r) { r.edge_least = -1; });
  refused("edge_most", [](FitRequest& r) { r.edge_most = 0; });
  refused("edge_most", [](FitRequest& r) { r.edge_most = Grid::max_side + 1; });
  refused("panels_least", [](FitRequest& r) { r.panels_least = 0; });
  refused("panels_most", [](FitRequest& r) { r.panels_least = 2; });
  refused("panels_most", [](FitRequest& r) { r.panels_most = FitRequest::max_panels + 1; });
  for (const double stitches : {-0.5, 0.25, 1.5, nan}) {
    refused("seam_stitches", [&](FitRequest& r) { r.seam_stitches = stitches; });
  }
  refused("rows_step", [](FitRequest& r) { r.rows_step = 0; });
  refused("rows_extra", [](FitRequest& r) { r.rows_extra = -1; });
  refused("needles", [](FitRequest& r) { r.needles = -1; });
  refused("most", [](FitRequest& r) { r.most = 0; });
  refused("most", [](FitRequest& r) { r.most = FitRequest::max_candidates + 1; });
  for (const double seam : {-0.5, 0.25, 1000.5, nan, infinity}) {
    refused("seam_left", [&](FitRequest& r) { r.seam_left = seam; });
    refused("seam_right", [&](FitRequest& r) { r.seam_right = seam; });
    refused("seam_bottom", [&](FitRequest& r) { r.seam_bottom = seam; });
    refused("seam_top", [&](FitRequest& r) { r.seam_top = seam; });
  }
  FitRequest odd = request(400, 300, 10);
  odd.state = static_cast<ClothState>(9);
  CHECK_THROWS_MATCHES(candidates(odd), Error, refused_field(ErrorCode::bad_argument, "state"));
  odd.state.reset();
  odd.substitutes = {{"moss", ""}};
  CHECK_THROWS_MATCHES(candidates(odd), Error, refused_field(ErrorCode::bad_argument, "substitutes[0].use"));
}

TEST_CASE("a seam between panels has an edge column to take in, or is refused", "[fit][error]") {
  FitRequest wanted = request(400, 300, 10);
  wanted.panels_least = 2;
  wanted.panels_most = 3;
  wanted.seam_stitches = 1;
  wanted.edge.reset();
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "edge"));
  wanted.seam_stitches = 0;
  CHECK_FALSE(candidates(wanted).empty());
  // One panel needs no seam: those of two and three are passed over.
  wanted.seam_stitches = 1;
  wanted.panels_least = 1;
  for (const FitCandidate& each : candidates(wanted)) CHECK(each.panels == 1);
}

TEST_CASE("a panel whose outermost column would have no stitch at all is refused", "[fit][error]") {
  Grid ladder(2, 3);
  for (int row = 1; row <= 2; ++row) ladder.set(row, 0, Cell::none);
  const Strip bare{"ladder", "stockinette", ladder};
  FitRequest wanted = request(400, 300, 10);
  wanted.edge = Strip{"edge", "stockinette", Grid(2, 1)};
  wanted.groups = {{{bare}, 0, 4}, {{stockinette(4)}, 1, 40}};
  CHECK_FALSE(candidates(wanted).empty());  // edge columns stand outside
  wanted.edge_least = 0;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "groups[0].strips"));
  // From the other side too, past what may stand 0 times; behind what always stands it is inside.
  std::swap(wanted.groups[0], wanted.groups[1]);
  CHECK_FALSE(candidates(wanted).empty());  // its last column has stitches
  wanted.groups[1].strips[0].grid = ladder.mirrored();
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "groups[1].strips"));
  wanted.groups.push_back({{stockinette(4)}, 0, 40});
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "groups[1].strips"));
  wanted.groups[2].least = 1;
  CHECK_FALSE(candidates(wanted).empty());
  Grid none(2, 1);
  for (int row = 1; row <= 2; ++row) none.set(row, 0, Cell::none);
  wanted.edge->grid = none;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "edge"));
}

TEST_CASE("a texture without a gauge is refused by name, also the edge's, unless another stands in", "[fit][error]") {
  FitRequest wanted = request(400, 300, 10);
  wanted.groups.push_back({{reverse(1)}});
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::no_gauge, "reverse"));
  wanted.substitutes = {{"reverse", "moss"}};
  CHECK(candidates(wanted)[0].columns == 101);
  wanted.groups.pop_back();
  wanted.edge = garter();
  const std::string texture = wanted.edge->texture;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::no_gauge, texture));
  wanted.edge.reset();
  wanted.state = ClothState::washed;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::no_gauge, "stockinette"));
}

TEST_CASE("an outermost column without a stitch is refused by the group that counts", "[fit][error]") {
  Grid bare(1, 2);
  bare.set(1, 1, Cell::none);
  FitRequest wanted = request(400, 100, 10);
  wanted.groups.push_back({{Strip{"bare", "stockinette", bare}}, 0, 0, 0});  // as often as the first: once at least
  CHECK_THROWS_MATCHES(fit(wanted, four_by_two_and_a_half()), Error,
                       refused_field(ErrorCode::bad_argument, "groups[1].strips"));
  wanted.groups[1].as_group = -1;  // never
  CHECK_FALSE(candidates(wanted).empty());
}

TEST_CASE("a candidate that is not the request's is refused by field", "[fit][error]") {
  FitRequest wanted = request(400, 300, 10);
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.rows_step = 4;
  const FitCandidate good = numbers({3}, 2, 34, 9);
  CHECK(fitted(wanted, good).grid().columns() == 34);
  const auto refused = [&](const char* field, auto change) {
    FitCandidate bad = good;
    change(bad);
    INFO(field);
    CHECK_THROWS_MATCHES(fitted(wanted, bad), Error, refused_field(ErrorCode::bad_argument, field));
  };
  refused("times", [](FitCandidate& c) { c.times.clear(); });
  refused("times", [](FitCandidate& c) { c.times.push_back(1); });
  refused("times[0]", [](FitCandidate& c) { c.times[0] = -1; });
  refused("times[0]", [](FitCandidate& c) { c.times[0] = Grid::max_side + 1; });
  refused("edge_columns", [](FitCandidate& c) { c.edge_columns = Grid::max_side + 1; });
  refused("edge_columns", [](FitCandidate& c) { c.edge_columns = -1; });
  refused("edge_columns", [](FitCandidate& c) {  // the seam between takes one
    c.panels = 2;
    c.edge_columns = 0;
    c.columns = 30;
  });
  refused("columns", [](FitCandidate& c) { c.columns = 33; });
  refused("columns", [](FitCandidate& c) { c = numbers({0}, 0, 0, 9); });
  refused("columns", [](FitCandidate& c) { c = numbers({Grid::max_side}, 0, 10 * Grid::max_side, 9); });
  refused("panels", [](FitCandidate& c) { c.panels = 0; });
  refused("panels", [](FitCandidate& c) { c.panels = FitRequest::max_panels + 1; });
  refused("start_row", [](FitCandidate& c) { c.start_row = 0; });
  refused("start_row", [](FitCandidate& c) { c.start_row = Grid::max_side + 1; });
  refused("rows", [](FitCandidate& c) { c.rows = 0; });
  refused("rows", [](FitCandidate& c) { c.rows = Grid::max_side + 1; });
  CHECK_THROWS_MATCHES(fitted(wanted, good, 1), Error, refused_field(ErrorCode::bad_argument, "panel"));
  CHECK_THROWS_MATCHES(fitted(wanted, good, -1), Error, refused_field(ErrorCode::bad_argument, "panel"));
  FitRequest no_edge = wanted;
  no_edge.edge.reset();
  CHECK_THROWS_MATCHES(fitted(no_edge, good), Error, refused_field(ErrorCode::bad_argument, "edge_columns"));
}

TEST_CASE("more combinations than can be looked at are refused", "[fit][error]") {
  FitRequest wanted = request(1'000'000, 1'000'000, 1);
  wanted.groups = {8, {{stockinette(1)}, 0, 60}};
  wanted.most = FitRequest::max_candidates;
  // 61 to the power of 8 ways: no budget is enough. fit() stops at 400 million parts, which is long under sanitizers.
  CHECK_THROWS_MATCHES(fitting::fit_within(wanted, four_by_two_and_a_half(), 4'000'000), Error,
                       refused_field(ErrorCode::too_large, "groups"));
  // What that is too little for is still within fit()'s own.
  wanted.groups.resize(3);
  CHECK_THROWS_AS(fitting::fit_within(wanted, four_by_two_and_a_half(), 4'000'000), Error);
  CHECK(fit(wanted, four_by_two_and_a_half()).candidates.size() == FitRequest::max_candidates);
}

TEST_CASE("starts that take too much work are refused, and not looked through for minutes", "[fit][error]") {
  FitRequest wanted = request(100'000, 100'000, 65'536);
  Grid tall(65'536, 1);
  tall.set(7, 0, Cell::purl);
  wanted.groups = {{std::vector<Strip>(20, {"tall", "stockinette", tall}), 1, 2000}};
  wanted.rows_step = 65'536;
  CHECK(candidates(wanted).size() >= 1);
  wanted.vary_start = true;
  wanted.most = 1000;
  CHECK_THROWS_MATCHES(fitting::fit_within(wanted, four_by_two_and_a_half(), 20'000'000), Error,
                       refused_field(ErrorCode::too_large, "vary_start"));
}

TEST_CASE("a panel whose outermost column lacks a stitch in some row is refused, for it is not as wide in each",
          "[fit][error]") {
  FitRequest wanted = request(40, 100, 10);
  wanted.groups = {{{Strip{"slant", "stockinette", Grid::from_text("kk.\n.kk")}}, 1, 1}};
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "groups[0].strips"));
  wanted.edge = Strip{"edge", "edge", Grid::from_text("k\n.")};
  wanted.edge_least = 1;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "edge"));
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  const FitCandidate best = candidates(wanted).at(0);
  CHECK(size(fitted(wanted, best), four_by_two_and_a_half()).width_mm == best.width_mm);
}

TEST_CASE("a bare column may stand at the side where every panel has a seam, which takes in an edge", "[fit]") {
  FitRequest wanted = request(40, 100, 10);
  wanted.groups = {{{Strip{"ladder", "stockinette", Grid::from_text(".k.")}}, 1, 10}};
  wanted.edge = Strip{"edge", "edge", Grid(1, 1)};
  wanted.edge_least = 0;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "groups[0].strips"));
  wanted.panels_least = wanted.panels_most = 2;
  wanted.seam_stitches = 1;
  for (const FitCandidate& each : candidates(wanted)) CHECK(each.edge_columns >= 1);
  CHECK_FALSE(candidates(wanted).empty());
}

TEST_CASE("a candidate of sewn panels without an edge is refused for its panels", "[fit][error]") {
  FitRequest wanted = request(40, 100, 10);
  wanted.edge.reset();
  wanted.panels_most = 3;
  wanted.seam_stitches = 1;
  FitCandidate two = numbers({1}, 0, 10, 40);
  two.panels = 2;
  CHECK_THROWS_MATCHES(fitted(wanted, two), Error, refused_field(ErrorCode::bad_argument, "panels"));
}

TEST_CASE("an edge without a stitch is refused also where it may not stand, for what is nearest may have it",
          "[fit][error]") {
  FitRequest wanted = request(113, 100, 3);
  wanted.edge = Strip{"edge", "edge", Grid::from_text(".")};
  wanted.edge_least = wanted.edge_most = 0;
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "edge"));
}

TEST_CASE("a bare column beside which a tied group always stands is not outermost", "[fit]") {
  FitRequest wanted = request(40, 100, 10);
  const Strip holey{"holey", "stockinette", Grid::from_text("kk\nk.")};
  wanted.groups = {{{holey}, 0, 20}, {{stockinette(2)}, 0, 20, 0}};
  CHECK_FALSE(candidates(wanted).empty());
  std::swap(wanted.groups[0].strips, wanted.groups[1].strips);  // now it is
  CHECK_THROWS_MATCHES(candidates(wanted), Error, refused_field(ErrorCode::bad_argument, "groups[1].strips"));
}

}  // namespace fit_refused_test
