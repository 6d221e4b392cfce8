#include "latchwork/panel.hpp"

#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/motif.hpp"

namespace panel_test {

using namespace latchwork;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

Place place_of(int row, int column, const char* field) {
  Place place;
  place.row = row;
  place.column = column;
  place.field = field;
  return place;
}

StripSpan span_of(const Strip& strip, int column) {
  return {strip.name, strip.texture, column, strip.grid.columns(), strip.grid.rows()};
}

/// Bands and strips cover every cell once.
void check_cover(const Panel& panel) {
  int row = 1;
  for (const Band& band : panel.bands()) {
    CHECK(band.row == row);
    int column = 0;
    for (const StripSpan& strip : band.strips) {
      CHECK(strip.column == column);
      CHECK(strip.columns >= 1);
      column += strip.columns;
    }
    CHECK(column == panel.grid().columns());
    row += band.rows;
  }
  CHECK(row == panel.grid().rows() + 1);
}

}  // namespace

TEST_CASE("a strip is a panel of one band", "[panel]") {
  const Strip strip = rope(3, 3, 8, Lean::right);
  const Panel panel("sample", strip);
  CHECK(panel.name() == "sample");
  CHECK(panel.grid() == strip.grid);
  REQUIRE(panel.bands().size() == 1);
  CHECK(panel.bands()[0] == Band{1, 8, {span_of(strip, 0)}});
  CHECK_FALSE(panel.axis_half_columns().has_value());
  check_cover(panel);
}

TEST_CASE("joined strips stand side by side from the left, each filled up to the rows", "[panel]") {
  const std::vector<Strip> strips = {garter(2, 2, 3), tuck_rib(), rope(2, 2, 6, Lean::left)};
  const Panel panel = join_strips("three", 9, strips);
  CHECK(panel.grid() ==
        strips[0].filled_up(9).grid.beside(strips[1].filled_up(9).grid).beside(strips[2].filled_up(9).grid));
  REQUIRE(panel.bands().size() == 1);
  CHECK(panel.bands()[0] == Band{1, 9, {span_of(strips[0], 0), span_of(strips[1], 3), span_of(strips[2], 4)}});
  CHECK_FALSE(panel.axis_half_columns().has_value());
  check_cover(panel);
}

TEST_CASE("built in one call: edge, left half, centre, mirrored half, mirrored edge", "[panel]") {
  const Strip edge = stockinette(1);
  const std::vector<Strip> left = {garter(1, 1, 2), rope(2, 1, 4, Lean::right)};
  const Strip centre = plait(1, 4);
  const Panel panel = build_panel({.name = "full", .rows = 16, .edge = edge, .left = left, .centre = centre});
  const auto full = [](const Strip& strip) { return strip.filled_up(16).grid; };
  const Grid by_hand = full(edge)
                           .beside(full(left[0]))
                           .beside(full(left[1]))
                           .beside(full(centre))
                           .beside(full(left[1]).mirrored())
                           .beside(full(left[0]).mirrored())
                           .beside(full(edge).mirrored());
  CHECK(panel.grid() == by_hand);
  REQUIRE(panel.bands().size() == 1);
  CHECK(panel.bands()[0] == Band{1,
                                 16,
                                 {span_of(edge, 0), span_of(left[0], 1), span_of(left[1], 3), span_of(centre, 6),
                                  span_of(left[1].mirrored(), 9), span_of(left[0].mirrored(), 12), span_of(edge, 14)}});
  CHECK(panel.bands()[0].strips[4].name == "rope 2/1 LC every 4");
  CHECK(panel.bands()[0].strips[4].texture == "rope 2/1 every 4");
  CHECK(panel.axis_half_columns() == 15);  // the middle of 15 columns
  check_cover(panel);
}

TEST_CASE("without a centre the axis is the line after the left half", "[panel]") {
  const std::vector<Strip> left = {reverse(2), rope(1, 1, 4, Lean::left)};
  const Panel panel = build_panel({.name = "line", .rows = 8, .edge = stockinette(), .left = left});
  CHECK(panel.grid().columns() == 10);
  CHECK(panel.grid().mirrored() == panel.grid());
  CHECK(panel.axis_half_columns() == 10);
  REQUIRE(panel.bands()[0].strips.size() == 6);
  CHECK(panel.bands()[0].strips[2] == StripSpan{"rope 1/1 LC every 4", "rope 1/1 every 4", 3, 2, 4});
  CHECK(panel.bands()[0].strips[3] == StripSpan{"rope 1/1 RC every 4", "rope 1/1 every 4", 5, 2, 4});
  check_cover(panel);
}

TEST_CASE("about a stitch, the last stitch is shared once and its strip becomes one of 2n - 1 columns", "[panel]") {
  const std::vector<Strip> left = {rope(2, 2, 4, Lean::right), moss(3)};
  const Panel panel = build_panel({.name = "stitch", .rows = 8, .left = left, .axis = Axis::stitch});
  CHECK(panel.grid().columns() == 13);
  CHECK(panel.grid().mirrored() == panel.grid());
  CHECK(panel.axis_half_columns() == 13);
  REQUIRE(panel.bands()[0].strips.size() == 3);
  CHECK(panel.bands()[0].strips[1] == StripSpan{"moss", "moss", 4, 5, 2});
  CHECK(panel.bands()[0].strips[2].name == "rope 2/2 LC every 4");
  check_cover(panel);
  const Panel one = build_panel({.name = "one stitch", .rows = 4, .left = {stockinette()}, .axis = Axis::stitch});
  CHECK(one.grid() == Grid(4, 1));
  check_cover(one);
}

TEST_CASE("an edge or a centre alone is a panel too", "[panel]") {
  const Panel edges = build_panel({.name = "edges", .rows = 3, .edge = garter(1, 1, 2)});
  CHECK(edges.grid().columns() == 4);
  check_cover(edges);
  const Panel centre = build_panel({.name = "centre", .rows = 3, .centre = moss(3)});
  CHECK(centre.grid() == moss(3).filled_up(3).grid);
  CHECK(centre.axis_half_columns() == 3);
  check_cover(centre);
  const Panel framed = build_panel({.name = "framed", .rows = 3, .edge = garter(1, 1, 2), .centre = moss(3)});
  CHECK(framed.grid().columns() == 7);
  check_cover(framed);
}

TEST_CASE("a centre that is its own mirror image makes a panel that is", "[panel]") {
  const std::vector<Strip> left = {tuck_rib(2), rope(3, 2, 6, Lean::left), basket(2, 3)};
  const Panel panel =
      build_panel({.name = "symmetric", .rows = 31, .edge = stockinette(2), .left = left, .centre = garter(2, 2, 3)});
  CHECK(panel.grid().mirrored() == panel.grid());
  CHECK(panel.mirrored() == panel);
  check_cover(panel);
}

TEST_CASE("a panel is refused without rows, without strips, or with its axis through a crossing", "[panel][error]") {
  CHECK_THROWS_MATCHES(build_panel({.rows = 0, .left = {moss()}}), Error,
                       refused_field(ErrorCode::bad_argument, "rows"));
  CHECK_THROWS_MATCHES(build_panel({.rows = 4}), Error, refused_field(ErrorCode::bad_argument, "parts"));
  CHECK_THROWS_MATCHES(build_panel({.rows = 4, .left = {moss()}, .axis = static_cast<Axis>(2)}), Error,
                       refused_field(ErrorCode::bad_argument, "axis"));
  CHECK_THROWS_MATCHES(
      build_panel({.rows = 4, .edge = moss(3), .left = {rope(2, 2, 4, Lean::left)}, .axis = Axis::stitch}), Error,
      refused(ErrorCode::crossing_cut, 2, 3));
  CHECK_THROWS_MATCHES(build_panel({.rows = Grid::max_side + 1, .left = {moss()}}), Error,
                       refused_field(ErrorCode::too_large, "rows"));
  CHECK_THROWS_MATCHES(build_panel({.rows = 1, .left = {stockinette(40'000)}}), Error,
                       refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(join_strips("none", 4, {}), Error, refused_field(ErrorCode::bad_argument, "strips"));
  const std::vector<Strip> strips = {moss()};
  CHECK_THROWS_MATCHES(join_strips("none", -1, strips), Error, refused_field(ErrorCode::bad_argument, "rows"));
}

TEST_CASE("names that are not UTF-8 are refused where a panel is made, and the name is told", "[panel][error]") {
  const std::string broken = "caf\xE9";
  const auto refused_name = [](const char* field) { return refused_field(ErrorCode::bad_encoding, field); };
  CHECK_THROWS_MATCHES(Panel(broken, moss()), Error, refused_name("name"));
  CHECK_THROWS_MATCHES(Panel("p", Strip{broken, "moss", Grid(1, 1)}), Error, refused_name("strip.name"));
  CHECK_THROWS_MATCHES(Panel("p", Strip{"moss", broken, Grid(1, 1)}), Error, refused_name("strip.texture"));
  const auto bands = [](std::string name, std::string texture) {
    return std::vector<Band>{{1, 1, {{"a", "a", 0, 2, 1}}},
                             {2, 1, {{"a", "a", 0, 1, 1}, {std::move(name), std::move(texture), 1, 1, 1}}}};
  };
  CHECK_THROWS_MATCHES(Panel(broken, Grid(2, 2), bands("a", "a")), Error, refused_name("name"));
  CHECK_THROWS_MATCHES(Panel("p", Grid(2, 2), bands(broken, "a")), Error, refused_name("bands[1].strips[1].name"));
  CHECK_THROWS_MATCHES(Panel("p", Grid(2, 2), bands("a", broken)), Error, refused_name("bands[1].strips[1].texture"));
  const std::vector<Strip> strips = {moss(), {"moss", broken, Grid(1, 1)}};
  CHECK_THROWS_MATCHES(join_strips("p", 4, strips), Error, refused_name("bands[0].strips[1].texture"));
  CHECK_THROWS_MATCHES(build_panel({.name = broken, .rows = 4, .left = {moss()}}), Error, refused_name("name"));
  CHECK(Panel("café", moss()).name() == "café");
}

TEST_CASE("a NUL in a name is refused where a panel is made, for C would tell the name only up to there",
          "[panel][error]") {
  const std::string cut("ro\0pe", 5);
  CHECK_THROWS_MATCHES(Panel(cut, moss()), Error, refused_field(ErrorCode::bad_value, "name"));
  CHECK_THROWS_MATCHES(Panel("p", Strip{cut, "moss", Grid(1, 1)}), Error,
                       refused_field(ErrorCode::bad_value, "strip.name"));
  const std::vector<Strip> strips = {moss(), {"moss", cut, Grid(1, 1)}};
  CHECK_THROWS_MATCHES(join_strips("p", 4, strips), Error,
                       refused_field(ErrorCode::bad_value, "bands[0].strips[1].texture"));
}

TEST_CASE("many strips are joined as if each were put beside the last", "[panel]") {
  const std::vector<Strip> strips = {rope(2, 1, 4, Lean::left),
                                     tuck_rib(1),
                                     stockinette(),
                                     rope(1, 2, 3, Lean::right),
                                     moss(3),
                                     ladder(),
                                     plait(1, 2)};
  Grid expected = strips[0].filled_up(11).grid;
  for (std::size_t i = 1; i < strips.size(); ++i) expected = expected.beside(strips[i].filled_up(11).grid);
  CHECK(join_strips("many", 11, strips).grid() == expected);
}

TEST_CASE("bands must cover the grid exactly, and the first gap is told", "[panel][error]") {
  const auto strip = [](int column, int columns) { return StripSpan{"a", "a", column, columns, 1}; };
  struct Case {
    std::vector<Band> bands;
    ErrorCode code;
    Place place;
    const char* reason;
  };
  const Case cases[] = {
      {{}, ErrorCode::size_mismatch, place_of(1, -1, ""), "no band"},
      {{{1, 3, {strip(0, 5)}}}, ErrorCode::size_mismatch, place_of(4, -1, ""), "row 4 is not covered"},
      {{{1, 5, {strip(0, 5)}}}, ErrorCode::size_mismatch, place_of(4, -1, ""), "past the last row"},
      {{{2, 3, {strip(0, 5)}}}, ErrorCode::size_mismatch, place_of(2, -1, ""), "row 1 is not covered"},
      {{{1, 2, {strip(0, 5)}}, {2, 3, {strip(0, 5)}}}, ErrorCode::size_mismatch, place_of(2, -1, ""), "rows overlap"},
      {{{1, 2, {strip(0, 5)}}, {4, 1, {strip(0, 5)}}}, ErrorCode::size_mismatch, place_of(4, -1, ""), "a gap of rows"},
      {{{1, 4, {}}}, ErrorCode::size_mismatch, place_of(1, 0, ""), "no strip"},
      {{{1, 4, {strip(0, 2), strip(3, 2)}}}, ErrorCode::size_mismatch, place_of(1, 3, ""), "a gap of columns"},
      {{{1, 4, {strip(0, 3), strip(2, 3)}}}, ErrorCode::size_mismatch, place_of(1, 2, ""), "columns overlap"},
      {{{1, 4, {strip(0, 4)}}}, ErrorCode::size_mismatch, place_of(1, 4, ""), "the last column is not covered"},
      {{{1, 4, {strip(0, 6)}}}, ErrorCode::size_mismatch, place_of(1, 5, ""), "past the last column"},
      {{{1, 4, {strip(0, 2147483647), strip(2147483647, 2147483647)}}},
       ErrorCode::size_mismatch,
       place_of(1, 5, ""),
       "a sum past any integer"},
      {{{1, 0, {strip(0, 5)}}}, ErrorCode::bad_argument, place_of(1, -1, "rows"), "a band without rows"},
      {{{1, 4, {strip(0, 0), strip(0, 5)}}}, ErrorCode::bad_argument, place_of(1, 0, "columns"), "an empty strip"},
      {{{1, 4, {{"a", "a", 0, 5, 0}}}}, ErrorCode::bad_argument, place_of(1, 0, "repeat_rows"), "no repeat"},
  };
  for (const Case& c : cases) {
    INFO(c.reason);
    CHECK_THROWS_MATCHES(Panel("bad", Grid(4, 5), c.bands), Error, refused(c.code, c.place));
  }
  const Panel good("good", Grid(4, 5), {{1, 2, {strip(0, 5)}}, {3, 2, {strip(0, 2), strip(2, 3)}}});
  check_cover(good);
}

TEST_CASE("a panel above another carries its bands up, its own name, and the axis they share", "[panel]") {
  Panel lower = build_panel({.name = "lower", .rows = 6, .left = {moss(2)}});
  Panel upper = build_panel({.name = "upper", .rows = 4, .left = {garter(1, 1, 2)}});
  const Panel both = upper.above(lower);
  CHECK(both.name() == "upper");
  CHECK(both.grid() == upper.grid().above(lower.grid()));
  REQUIRE(both.bands().size() == 2);
  CHECK(both.bands()[0] == lower.bands()[0]);
  CHECK(both.bands()[1].row == 7);
  CHECK(both.bands()[1].rows == 4);
  CHECK(both.bands()[1].strips == upper.bands()[0].strips);
  CHECK(both.axis_half_columns() == 4);
  check_cover(both);
  upper.set_axis_half_columns(3);
  CHECK_FALSE(upper.above(lower).axis_half_columns().has_value());
  upper.set_axis_half_columns(std::nullopt);
  CHECK_FALSE(upper.above(lower).axis_half_columns().has_value());
  CHECK_THROWS_MATCHES(upper.above(Panel("wide", stockinette(5))), Error,
                       refused_field(ErrorCode::size_mismatch, "below"));
}

TEST_CASE("a mirrored panel has its strips, their lean words and its axis mirrored; twice gives it back", "[panel]") {
  const std::vector<Strip> strips = {garter(1, 1, 3), rope(2, 1, 4, Lean::right), stockinette(1)};
  Panel panel = join_strips("lopsided", 8, strips);
  panel.set_axis_half_columns(3);
  const Panel mirrored = panel.mirrored();
  CHECK(mirrored.grid() == panel.grid().mirrored());
  CHECK(mirrored.axis_half_columns() == 11);
  CHECK(mirrored.bands()[0].strips[0] == StripSpan{"stockinette", "stockinette", 0, 1, 1});
  CHECK(mirrored.bands()[0].strips[1] == StripSpan{"rope 2/1 LC every 4", "rope 2/1 every 4", 1, 3, 4});
  CHECK(mirrored.bands()[0].strips[2] == StripSpan{"garter 1/1", "garter 1/1", 4, 3, 2});
  CHECK(mirrored.mirrored() == panel);
  check_cover(mirrored);
}

TEST_CASE("an axis lies inside the panel: 1 to 2W - 1 half columns", "[panel][error]") {
  Panel panel("p", stockinette(3));
  panel.set_axis_half_columns(1);
  panel.set_axis_half_columns(5);
  const Panel before = panel;
  for (const int half_columns : {0, 6, -1}) {
    CHECK_THROWS_MATCHES(panel.set_axis_half_columns(half_columns), Error,
                         refused_field(ErrorCode::bad_argument, "axis_half_columns"));
  }
  CHECK(panel == before);
  panel.set_axis_half_columns(std::nullopt);
  CHECK_FALSE(panel.axis_half_columns().has_value());
}

TEST_CASE("a panel that ends inside a repeat is cut at the top, crossings with their rows", "[panel]") {
  const std::vector<Strip> strips = {rope(2, 2, 6, Lean::right)};  // crossings after rows 3, 9, 15 ..
  CHECK(join_strips("a", 8, strips).grid().crossings().size() == 1);
  CHECK(join_strips("b", 9, strips).grid().crossings().size() == 2);  // the second on the panel's edge: a finding
  CHECK(join_strips("c", 10, strips).grid().crossings().size() == 2);
}

}  // namespace panel_test
