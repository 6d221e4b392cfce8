#include "latchwork/yarn_need.hpp"

#include <functional>
#include <limits>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "yarn_sample.hpp"

namespace yarn_need_refused_test {

using namespace latchwork;
using namespace latchwork_test::yarn_sample;
using latchwork_test::refused_field;

TEST_CASE("a yarn whose tex is out of range is named", "[yarn_need][error]") {
  YarnRequest request = by_loops();
  request.yarns.push_back({"fine", {YarnSystem::yards_per_pound, 1e-6, 1}, 0});
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), request), Error,
                       refused_field(ErrorCode::bad_argument, "yarns[1].number.number"));
}

TEST_CASE("a need that is too large names what makes it so", "[yarn_need][error]") {
  struct Case {
    const char* field;
    std::function<void(YarnRequest&)> change;
  };
  const auto thick = [](YarnRequest& r) { r.yarns[0].number = {YarnSystem::tex, 1e9, 1}; };
  const Case cases[] = {
      {"pieces", [&](YarnRequest& r) { thick(r), r.pieces = 10'000; }},
      {"seam_mm", [&](YarnRequest& r) { thick(r), r.seam_mm = 1e6; }},
      {"yarns[0].number", [&](YarnRequest& r) { thick(r), r.loops[0].length_mm = 1e9; }},
      {"yarns[0].ball_g", [&](YarnRequest& r) { thick(r), r.yarns[0].ball_g = 1e-3; }},
  };
  for (const Case& each : cases) {
    INFO(each.field);
    YarnRequest request = by_loops();
    each.change(request);
    CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), request), Error, refused_field(ErrorCode::too_large, each.field));
  }
}

TEST_CASE("a weighed swatch of which neither size nor stitches are known is refused", "[yarn_need][error]") {
  YarnRequest request = bare();
  request.weighed = {{"stockinette", 5, 0, 0, 0, 0, 0, 0}};
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), request), Error,
                       refused_field(ErrorCode::bad_argument, "weighed[0].width_mm"));
}

TEST_CASE("a request that cannot be reckoned is refused with its field", "[yarn_need][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  struct Case {
    const char* field;
    std::function<void(YarnRequest&)> spoil;
  };
  const Case cases[] = {
      {"yarns", [](YarnRequest& r) { r.yarns.clear(); }},
      {"yarns[0].ball_g", [&](YarnRequest& r) { r.yarns[0].ball_g = nan; }},
      {"yarns[0].number.number", [&](YarnRequest& r) { r.yarns[0].number.number = nan; }},
      {"yarns[0].number.plies", [](YarnRequest& r) { r.yarns[0].number.plies = 0; }},
      {"yarns[1].number.number",
       [](YarnRequest& r) {
         r.yarns.push_back({"unknown", {}, 0});
       }},
      {"yarns[0].number.number", [](YarnRequest& r) { r.yarns[0].number.number = 0, r.seam_mm = 1; }},
      {"rows[0].first",
       [](YarnRequest& r) {
         r.rows = {{0, 3, 0}};
       }},
      {"rows[0].last",
       [](YarnRequest& r) {
         r.rows = {{3, 2, 0}};
       }},
      {"rows[0].last",
       [](YarnRequest& r) {
         r.rows = {{1, 13, 0}};
       }},
      {"rows[1].yarn",
       [](YarnRequest& r) {
         r.rows = {{1, 0, 0}, {1, 0, 1}};
       }},
      {"weighed[0].texture",
       [](YarnRequest& r) {
         r.weighed = {{"", 1, 0, 0, 0, 1, 1, 0}};
       }},
      {"weighed[0].weight_g",
       [](YarnRequest& r) {
         r.weighed = {{"x", 0, 0, 0, 0, 1, 1, 0}};
       }},
      {"weighed[0].scale_g",
       [](YarnRequest& r) {
         r.weighed = {{"x", 1, -1, 0, 0, 1, 1, 0}};
       }},
      {"weighed[0].height_mm",
       [](YarnRequest& r) {
         r.weighed = {{"x", 1, 0, 5, 0, 1, 1, 0}};
       }},
      {"weighed[0].stitches",
       [](YarnRequest& r) {
         r.weighed = {{"x", 1, 0, 0, 0, 0, 1, 0}};
       }},
      {"weighed[0].tex",
       [&](YarnRequest& r) {
         r.weighed = {{"x", 1, 0, 0, 0, 1, 1, nan}};
       }},
      {"weighed[0].tex",
       [](YarnRequest& r) {
         r.yarns[0].number.number = 0, r.weighed = {{"x", 1, 0, 0, 0, 1, 1, 9}};
       }},
      {"weighed[0].state",
       [](YarnRequest& r) {
         r.weighed = {{"x", 1, 0, 0, 0, 1, 1, 0, static_cast<ClothState>(3)}};
       }},
      {"loops[0].stitches", [](YarnRequest& r) { r.loops[0].stitches = 0; }},
      {"loops[1].length_mm", [&](YarnRequest& r) { r.loops[1].length_mm = nan; }},
      {"loops[1].texture", [](YarnRequest& r) { r.loops[1].texture = "\xFF"; }},
      {"substitutes[0].use",
       [](YarnRequest& r) {
         r.substitutes = {{"x", ""}};
       }},
      {"substitutes[1].texture",
       [](YarnRequest& r) {
         r.substitutes = {{"x", "y"}, {"x", "z"}};
       }},
      {"plain.wales",
       [](YarnRequest& r) {
         r.plain = PlainConstants{5.5, 0};
       }},
      {"pieces", [](YarnRequest& r) { r.pieces = 0; }},
      {"cast_on_rows", [&](YarnRequest& r) { r.cast_on_rows = nan; }},
      {"bind_off_rows", [](YarnRequest& r) { r.bind_off_rows = -1; }},
      {"waste_rows", [](YarnRequest& r) { r.waste_rows = -1; }},
      {"waste_yarn", [](YarnRequest& r) { r.waste_yarn = 1; }},
      {"seam_mm", [&](YarnRequest& r) { r.seam_mm = nan; }},
      {"seam_ratio", [](YarnRequest& r) { r.seam_ratio = 0; }},
      {"seam_yarn", [](YarnRequest& r) { r.seam_yarn = -1; }},
      {"sureness", [](YarnRequest& r) { r.sureness = 7; }},
      {"allowance", [&](YarnRequest& r) { r.allowance = nan; }},
  };
  for (const Case& each : cases) {
    INFO(each.field);
    YarnRequest request = by_loops();
    each.spoil(request);
    CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), request), Error,
                         refused_field(ErrorCode::bad_argument, each.field));
  }
  YarnRequest gap = by_loops();
  gap.rows = {{1, 3, 0}, {5, 0, 0}};
  Place at;
  at.row = 4;
  at.field = "rows";
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), gap), Error, latchwork_test::refused(ErrorCode::bad_argument, at));
  YarnRequest huge = by_loops();
  huge.loops[0] = {"stockinette", 1, 1e9};
  huge.pieces = 10'000;
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), huge), Error, refused_field(ErrorCode::too_large, "pieces"));
  YarnRequest many = by_loops();
  many.yarns.resize(YarnRequest::max_yarns + 1, many.yarns[0]);
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), many), Error, refused_field(ErrorCode::too_large, "yarns"));
}

TEST_CASE("a number that is not known is 0 tex in one ply, so that a file can tell it", "[yarn_need][error]") {
  YarnRequest request = bare();
  request.yarns[0].number = {YarnSystem::metric, 0, 1};
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), request), Error,
                       refused_field(ErrorCode::bad_argument, "yarns[0].number.system"));
  request.yarns[0].number = {YarnSystem::tex, 0, -5};
  CHECK_THROWS_MATCHES(yarn_need(panel(), swatch(), request), Error,
                       refused_field(ErrorCode::bad_argument, "yarns[0].number.plies"));
}

}  // namespace yarn_need_refused_test
