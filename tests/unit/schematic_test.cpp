#include "latchwork/schematic.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <limits>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "latchwork/shaping.hpp"
#include "schematic_words.hpp"
#include "text.hpp"

namespace schematic_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::check_layout;
using latchwork_test::holds;
using latchwork_test::number_after;
using latchwork_test::Rect;
using latchwork_test::refused;
using latchwork_test::refused_field;
using latchwork_test::words_on;

namespace {

/// 28 stitches and 42 rows per 10 cm.
Swatch swatch() {
  return Swatch({{"plain", Counted::stitches, 28, 100, "middle"}, {"plain", Counted::rows, 42, 100, "middle"}});
}
Panel plain(int rows, int columns, const std::string& name) {
  return Panel(name, Strip{"plain", "plain", Grid(rows, columns)});
}
/// 120 stitches by 220 rows with an armhole at each side.
Panel back() {
  const EdgeShape edge{.events = {{120, 5, 1, 1}, {122, 2, 2, 2}, {126, 1, 4, 6}}};
  return shaped(plain(220, 120, "back"), outlined(220, 120, edge, edge));
}
Schematic of(std::vector<SchematicPiece> pieces, std::string title = "sample") {
  Schematic out;
  out.title = std::move(title);
  out.pieces = std::move(pieces);
  return out;
}
Schematic three_sizes() {
  Schematic out = of({schematic_piece(back(), swatch())}, "pullover back");
  out.sizes = {"S", "M", "L"};
  for (SchematicMeasure& measure : out.pieces[0].measures) measure.others_mm = {measure.mm + 20, measure.mm + 45};
  out.notes = {"6 cm of ease are in the widths."};
  return out;
}
Schematic three_panels() {
  std::vector<SchematicPiece> pieces;
  for (int i = 0; i < 3; ++i) {
    pieces.push_back(schematic_piece(plain(400, 140, "panel " + std::to_string(i + 1)), swatch()));
    pieces.back().seam_left = i > 0;
    pieces.back().seam_right = i < 2;
  }
  return of(std::move(pieces), "blanket <of> \"three\" & more");
}

}  // namespace

TEST_CASE("a rectangle has its corners, its width and its height", "[schematic]") {
  const SchematicPiece piece = schematic_piece(plain(189, 126, "front"), swatch());
  REQUIRE(piece.outline.size() == 4);
  REQUIRE(piece.measures.size() == 2);
  CHECK(piece.measures[0].label == "width at the cast-on");
  CHECK(piece.measures[0].mm == Approx(450));
  CHECK(piece.measures[1].side == MeasureSide::right);
  CHECK(piece.measures[1].mm == Approx(450));
  const std::string svg = schematic_svg(of({piece}, "cushion front"));
  CHECK(holds(svg, "<title>cushion front: schematic, right side shown</title>"));
  CHECK(holds(svg, ">a = 45 cm<"));
  CHECK(holds(svg, ">b: height, 45 cm<"));
  check_layout(svg);
}

TEST_CASE("a shaped piece has its widths and the heights of its straight parts", "[schematic]") {
  // 5 + 2 + 2 + 6 stitches leave at each side: 90 of 120 are left. 120 rows are 285.7 mm, the last 74 are 176.2 mm.
  const SchematicPiece piece = schematic_piece(back(), swatch());
  REQUIRE(piece.measures.size() == 5);
  CHECK(piece.measures[0].mm == Approx(120 / 0.28));
  CHECK(piece.measures[1].label == "width at the last row");
  CHECK(piece.measures[1].mm == Approx(90 / 0.28));
  CHECK(piece.measures[2].mm == Approx(220 / 0.42));
  CHECK(piece.measures[3].label == "height to the first shaping");
  CHECK(piece.measures[3].mm == Approx(120 / 0.42));
  CHECK(piece.measures[4].mm == Approx(74 / 0.42));
  // Mirrored about its middle, as the shape is.
  for (const OutlinePoint& point : piece.outline) {
    CHECK(std::any_of(piece.outline.begin(), piece.outline.end(), [&](const OutlinePoint& other) {
      return std::abs(point.x_mm + other.x_mm - 120 / 0.28) < 1e-6 && std::abs(point.y_mm - other.y_mm) < 1e-6;
    }));
  }
  check_layout(schematic_svg(of({piece})));
}

TEST_CASE("a piece is drawn as large as size() says, in its state and between its seams", "[schematic]") {
  // Two bands of two textures, one without a gauge; the upper decreases a stitch at each side.
  std::vector<Measurement> measurements;
  for (const auto& [state, stitches, rows] :
       {std::tuple{ClothState::rested, 20.0, 30.0}, std::tuple{ClothState::washed, 23.0, 31.0}}) {
    measurements.push_back({"a", Counted::stitches, stitches, 100, "", "", state});
    measurements.push_back({"a", Counted::rows, rows, 100, "", "", state});
    measurements.push_back({"edge", Counted::stitches, stitches - 3, 100, "", "", state});
    measurements.push_back({"edge", Counted::rows, rows + 4, 100, "", "", state});
  }
  const Swatch swatch(measurements);
  const Strip strips[] = {{"edge", "edge", Grid(10, 4)}, {"b", "b", Grid(10, 30)}, {"edge", "edge", Grid(10, 4)}};
  const Panel low = join_strips("low", 10, strips);
  const EdgeShape edge{.events = {{12, 1, 2, 1}, {16, 1, 2, 1}}};
  const Panel panel = shaped(Panel("high", Strip{"a", "a", Grid(10, 38)}).above(low), outlined(20, 38, edge, edge));
  const std::vector<SizeOptions> cases = {
      {.substitutes = {{"b", "a"}}},
      {.state = ClothState::rested, .substitutes = {{"b", "a"}}},
      {.substitutes = {{"b", "a"}}, .seam_left = 1.5, .seam_right = 4, .seam_bottom = 2, .seam_top = 0.5},
      {.substitutes = {{"b", "a"}}, .seam_left = 1, .seam_bottom = 10},  // the lower band is in the seam
      {.substitutes = {{"b", "a"}}, .seam_right = 0.5, .seam_top = 13},
  };
  for (const SizeOptions& options : cases) {
    INFO(&options - cases.data());
    const Size size = latchwork::size(panel, swatch, options);
    const SchematicPiece piece = schematic_piece(panel, swatch, options);
    double widest = 0;
    double highest = 0;
    for (const SchematicMeasure& each : piece.measures) {
      if (each.side == MeasureSide::bottom || each.side == MeasureSide::top) widest = std::max(widest, each.mm);
      if (each.label == "height") highest = each.mm;
    }
    CHECK(widest == Approx(size.width_mm));
    CHECK(highest == Approx(size.height_mm));
    const auto by_y = [](const OutlinePoint& a, const OutlinePoint& b) { return a.y_mm < b.y_mm; };
    const auto [bottom, top] = std::minmax_element(piece.outline.begin(), piece.outline.end(), by_y);
    CHECK(bottom->y_mm == 0);
    CHECK(top->y_mm == Approx(size.height_mm));
    check_layout(schematic_svg(of({piece})));
  }
  CHECK_THROWS_MATCHES(schematic_piece(panel, swatch), Error, refused_field(ErrorCode::no_gauge, "b"));
  CHECK_THROWS_MATCHES(schematic_piece(panel, swatch, {.substitutes = {{"b", "a"}}, .seam_left = 0.25}), Error,
                       refused_field(ErrorCode::bad_argument, "seam_left"));
  // From row 17 up there are 34 stitches.
  Place place;
  place.row = 17;
  place.field = "seam_left";
  CHECK_THROWS_MATCHES(schematic_piece(panel, swatch, {.substitutes = {{"b", "a"}}, .seam_left = 18, .seam_right = 17}),
                       Error, refused(ErrorCode::bad_argument, place));
}

TEST_CASE("a slope is drawn as one line, within half a stitch of the edge", "[schematic]") {
  const Panel panel = plain(60, 40, "gore");
  const EdgeShape edge{.points = {{0, 0}, {60, 10}}};
  const SchematicPiece piece = schematic_piece(shaped(panel, outlined(60, 40, edge, {})), swatch());
  for (const OutlinePoint& point : piece.outline) {
    if (point.x_mm > 40) continue;  // the right side, straight up
    const double columns = point.x_mm * 0.28;
    const double row = point.y_mm * 0.42;
    INFO(columns << " columns in at row " << row);
    CHECK(std::abs(columns - row / 6) <= 0.5 + 1e-9);
  }
  CHECK(piece.outline.size() <= 10);
}

TEST_CASE("the widest row is measured where it is wider than both ends", "[schematic]") {
  const EdgeShape edge{.points = {{0, 20}, {60, 0}, {120, 20}}};
  const SchematicPiece piece = schematic_piece(shaped(plain(120, 80, "leaf"), outlined(120, 80, edge, edge)), swatch());
  const auto widest = std::find_if(piece.measures.begin(), piece.measures.end(),
                                   [](const SchematicMeasure& m) { return m.label == "width at the widest row"; });
  REQUIRE(widest != piece.measures.end());
  CHECK(widest->mm == Approx(80 / 0.28));
  check_layout(schematic_svg(of({piece})));
}

TEST_CASE("of a piece that steps out to its widest row one height is told once", "[schematic]") {
  const EdgeShape edge{.points = {{0, 20}, {60, 20}, {60, 0}, {120, 20}}};
  const SchematicPiece piece = schematic_piece(shaped(plain(120, 80, "urn"), outlined(120, 80, edge, edge)), swatch());
  std::vector<double> heights;
  for (const SchematicMeasure& each : piece.measures) {
    if (each.side == MeasureSide::left) heights.push_back(each.mm);
  }
  CHECK(std::count_if(heights.begin(), heights.end(), [](double mm) { return mm == Approx(60 / 0.42).margin(3); }) ==
        1);
  check_layout(schematic_svg(of({piece})));
}

TEST_CASE("several sizes are written as the drawn one and the others in brackets", "[schematic]") {
  const std::string svg = schematic_svg(three_sizes());
  CHECK(holds(svg, ">a = 42.9 (44.9, 47.4) cm<"));
  CHECK(holds(svg, ">c = 52.4<"));
  CHECK(holds(svg, ">(54.4, 56.9) cm<"));  // beside a height on a line of its own
  CHECK(holds(svg, ">Sizes: S (M, L); the first is drawn.<"));
  CHECK(holds(svg, "6 cm of ease are in the widths."));
  check_layout(svg);
}

TEST_CASE("measures in inches go to the quarter, halves up", "[schematic]") {
  Schematic schematic = of({schematic_piece(plain(720, 56, ""), swatch())}, "scarf");
  schematic.unit = LengthUnit::inch;
  struct Case {
    double mm;
    const char* text;
  };
  for (const Case& each : {Case{450.85, ">a = 17 3/4 in<"}, Case{25.4, ">a = 1 in<"}, Case{12.7, ">a = 1/2 in<"},
                           Case{3.175, ">a = 1/4 in<"}, Case{3.17, ">a = under 1/8 in<"}, Case{0, ">a = 0 in<"}}) {
    schematic.pieces[0].measures[0].mm = each.mm;
    CHECK(holds(schematic_svg(schematic), each.text));
  }
  schematic.unit = LengthUnit::cm;
  for (const Case& each : {Case{449.6, ">a = 45 cm<"}, Case{453.4, ">a = 45.3 cm<"}, Case{4.4, ">a = 0.4 cm<"},
                           Case{0.5, ">a = 0.1 cm<"}, Case{0.49, ">a = under 0.05 cm<"}}) {
    schematic.pieces[0].measures[0].mm = each.mm;
    CHECK(holds(schematic_svg(schematic), each.text));
  }
  check_layout(schematic_svg(schematic));
}

TEST_CASE("a long name of a piece takes lines, and the piece keeps its share of the drawing", "[schematic]") {
  const auto width = [](const std::string& name) {
    Schematic schematic = of({schematic_piece(plain(40, 56, ""), swatch())}, "scarf");
    schematic.pieces[0].name = name;
    const std::string svg = schematic_svg(schematic);
    check_layout(svg);
    return svg.substr(svg.find("viewBox=\"0 0 "), 20);
  };
  const std::string narrow = width("front");
  CHECK(width(std::string(150, 'n')).substr(0, 16) == narrow.substr(0, 16));
  CHECK(width("one word and another, " + std::string(90, 'n') + " and so on").substr(0, 16) == narrow.substr(0, 16));
}

TEST_CASE("panels stand side by side with their seams, and any name is safe in the drawing", "[schematic]") {
  const std::string svg = schematic_svg(three_panels());
  CHECK(holds(svg, "blanket &lt;of&gt; &quot;three&quot; &amp; more"));
  CHECK(holds(svg, "stroke-dasharray"));
  CHECK(holds(svg, "Dashed: a seam to the piece beside it."));
  CHECK(holds(svg, ">f: panel 3, height, 95.2 cm<"));
  check_layout(svg);
}

TEST_CASE("pieces that do not fit beside each other stand in rows, all to one scale", "[schematic]") {
  std::vector<SchematicPiece> pieces;
  for (const int columns : {60, 120, 180, 240})
    pieces.push_back(schematic_piece(plain(100, columns, "piece"), swatch()));
  const std::string svg = schematic_svg(of(std::move(pieces)));
  check_layout(svg);
  CHECK(number_after(svg, "viewBox=\"0 0 ", 0) <= 400);
  // One path of four outlines: their first lines are as long as the pieces are wide.
  const std::size_t group = svg.find("lw-outline");
  std::vector<double> widths;
  for (std::size_t at = svg.find(" d=\"M", group); at < svg.find("</g>", group); at = svg.find(" d=\"M", at + 1)) {
    double least = 1e9;
    double most = -1e9;
    const std::size_t close = svg.find("/>", at);
    for (std::size_t c = at; c < close; ++c) {
      if (svg[c] != 'M' && svg[c] != 'L') continue;
      const double x = std::stod(svg.substr(c + 1));
      least = std::min(least, x);
      most = std::max(most, x);
    }
    widths.push_back(most - least);
  }
  REQUIRE(widths.size() == 4);
  for (std::size_t i = 1; i < 4; ++i) {
    CHECK(widths[i] == Approx(widths[0] * static_cast<double>(i + 1)).margin(0.05));
  }
}

TEST_CASE("many measures on every side, long names and thin pieces do not run into each other", "[schematic]") {
  SchematicPiece piece =
      schematic_piece(plain(4000, 6, "a name that is a good deal longer than the piece is wide"), swatch());
  for (const MeasureSide side : {MeasureSide::bottom, MeasureSide::top, MeasureSide::left, MeasureSide::right}) {
    for (int i = 0; i < 5; ++i) {
      piece.measures.push_back({"one more", side, {2.0 * i, 300.0 * i}, {20, 9000}, 100.0 * i, {}});
    }
  }
  check_layout(schematic_svg(of({piece, piece}, "two")));
}

TEST_CASE("a width with no room for its words has them beside it, right of every line", "[schematic]") {
  const SchematicPiece wide = schematic_piece(plain(189, 126, "front"), swatch());
  SchematicPiece thin = schematic_piece(plain(189, 6, "strap"), swatch());
  SchematicMeasure second = thin.measures[0];
  second.start.x_mm = second.end.x_mm / 2;
  thin.measures.push_back(second);
  for (const SchematicPiece& piece : {wide, thin}) {
    const std::string svg = schematic_svg(of({piece}));
    check_layout(svg);
    const std::size_t outline = svg.find("d=\"M", svg.find("<g class=\"lw-outline\"")) + 3;
    double left = 1e9;
    double right = 0;
    std::string corners = svg.substr(outline, svg.find('"', outline) - outline);
    std::replace_if(
        corners.begin(), corners.end(), [](char c) { return c == 'M' || c == 'L' || c == 'z'; }, ' ');
    std::istringstream numbers(corners);
    for (double x = 0, y = 0; numbers >> x >> y;) {
      left = std::min(left, x);
      right = std::max(right, x);
    }
    REQUIRE(left < right);
    const std::vector<Rect> words = words_on(svg);
    for (std::size_t i = 0; i < piece.measures.size(); ++i) {
      if (piece.measures[i].side != MeasureSide::bottom) continue;
      if (piece.name == "strap") {
        CHECK(words.at(i).x > right);
      } else {
        CHECK(words.at(i).x > left);
        CHECK(words.at(i).x + words.at(i).width < right);
      }
    }
  }
}

TEST_CASE("a schematic that cannot be drawn is refused with its field", "[schematic][error]") {
  const Schematic good = three_sizes();
  const auto refuses = [&](auto&& spoil, ErrorCode code, const char* field) {
    Schematic bad = good;
    spoil(bad);
    INFO(field);
    CHECK_THROWS_MATCHES(schematic_svg(bad), Error, refused_field(code, field));
  };
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const ErrorCode bad = ErrorCode::bad_argument;
  refuses([](Schematic& s) { s.pieces.clear(); }, bad, "pieces");
  refuses([](Schematic& s) { s.unit = LengthUnit::yard; }, bad, "unit");
  refuses([](Schematic& s) { s.title = "\xff"; }, ErrorCode::bad_encoding, "title");
  refuses([](Schematic& s) { s.sizes[1] = "\xff"; }, ErrorCode::bad_encoding, "sizes[1]");
  refuses([](Schematic& s) { s.notes[0] = "\xff"; }, ErrorCode::bad_encoding, "notes[0]");
  refuses([](Schematic& s) { s.pieces[0].name = "\xff"; }, ErrorCode::bad_encoding, "pieces[0].name");
  refuses([](Schematic& s) { s.pieces[0].measures[2].label = "\xff"; }, ErrorCode::bad_encoding,
          "pieces[0].measures[2].label");
  refuses([](Schematic& s) { s.pieces[0].outline.resize(2); }, bad, "pieces[0].outline");
  refuses([](Schematic& s) { s.pieces[0].outline.assign(3, {}); }, bad, "pieces[0].outline");
  refuses([](Schematic& s) { s.pieces[0].outline[1].x_mm = nan; }, bad, "pieces[0].outline[1].x_mm");
  refuses([](Schematic& s) { s.pieces[0].outline[0].y_mm = -infinity; }, bad, "pieces[0].outline[0].y_mm");
  refuses([](Schematic& s) { s.pieces[0].measures[0].mm = -1; }, bad, "pieces[0].measures[0].mm");
  refuses([](Schematic& s) { s.pieces[0].measures[0].start.x_mm = 2e6; }, bad, "pieces[0].measures[0].start.x_mm");
  refuses([](Schematic& s) { s.pieces[0].measures[1].end.y_mm = nan; }, bad, "pieces[0].measures[1].end.y_mm");
  refuses([](Schematic& s) { s.pieces[0].measures[1].side = static_cast<MeasureSide>(4); }, bad,
          "pieces[0].measures[1].side");
  refuses([](Schematic& s) { s.pieces[0].measures[1].others_mm.pop_back(); }, bad, "pieces[0].measures[1].others_mm");
  refuses([](Schematic& s) { s.pieces[0].measures[1].others_mm[0] = nan; }, bad, "pieces[0].measures[1].others_mm[0]");
  refuses([](Schematic& s) { s.pieces.resize(Schematic::max_pieces + 1); }, ErrorCode::too_large, "pieces");
  refuses([](Schematic& s) { s.sizes.resize(Schematic::max_sizes + 1); }, ErrorCode::too_large, "sizes");
  refuses([](Schematic& s) { s.pieces[0].outline.resize(Schematic::max_points + 1); }, ErrorCode::too_large,
          "pieces[0].outline");
  refuses([](Schematic& s) { s.pieces[0].measures.resize(Schematic::max_measures + 1); }, ErrorCode::too_large,
          "pieces[0].measures");
  CHECK_THROWS_MATCHES(schematic_piece(plain(2, 2, "none"), Swatch()), Error,
                       refused_field(ErrorCode::no_gauge, "plain"));
}

TEST_CASE("an outline that is not that of one piece is refused with the corner", "[schematic][error]") {
  struct Case {
    const char* why;
    std::vector<OutlinePoint> outline;
    int corner;  // -1: drawn
  };
  const std::vector<OutlinePoint> square = {{0, 0}, {100, 0}, {100, 100}, {0, 100}};
  const std::vector<Case> cases = {
      {"a square", square, -1},
      {"the other way round", {square.rbegin(), square.rend()}, -1},
      {"closed by hand", {{0, 0}, {100, 0}, {100, 100}, {0, 100}, {0, 0}}, -1},
      {"a corner told twice", {{0, 0}, {100, 0}, {100, 0.0004}, {100, 100}, {0, 100}}, -1},
      {"a corner on a straight edge", {{0, 0}, {50, 0}, {100, 0}, {100, 100}, {0, 100}}, -1},
      {"a slit a hundredth wide", {{0, 0}, {100, 0}, {100, 100}, {50.01, 100}, {50, 1}, {50, 100}, {0, 100}}, -1},
      {"a notch that ends a thousandth above the edge", {{0, 0}, {9, 0}, {9, 9}, {5, 0.001}, {0, 9}}, -1},
      {"a bow", {{0, 0}, {100, 100}, {100, 0}, {0, 100}}, 0},
      {"a bow that stands", {{0, 0}, {100, 0}, {0, 100}, {100, 100}}, 1},
      {"an edge through a corner", {{0, 0}, {100, 0}, {100, 100}, {50, 0}, {0, 100}}, 0},
      {"two corners in one place", {{0, 0}, {50, 50}, {100, 0}, {100, 100}, {50, 50}, {0, 100}}, 4},
      {"two edges on each other", {{0, 0}, {100, 0}, {100, 50}, {60, 50}, {60, 0}, {40, 0}, {40, 50}, {0, 50}}, 0},
      {"a thorn", {{0, 0}, {100, 0}, {100, 100}, {50, 100}, {50, 200}, {50, 100}, {0, 100}}, 5},
      {"back along an edge", {{0, 0}, {100, 0}, {50, 0}, {50, 100}}, 1},
      {"no area, though a millimetre across and up", {{0, 0}, {50, 50}, {100, 100}}, 0},
      {"a corner less than a thousandth short of an edge", {{0, 0}, {9, 0}, {9, 9}, {5, 0.0004}, {0, 9}}, 0},
      {"the far ends of the room", {{-1e6, -1e6}, {1e6, 1e6}, {1e6, -1e6}, {-1e6, 1e6}}, 0},
      {"a loop in a far edge", {{-1e6, -1e6}, {1e6, -1e6}, {1e6, 1e6}, {1, 1}, {2, 3}, {2, 1}, {1, 3}, {-1e6, 1e6}}, 3},
  };
  for (const Case& each : cases) {
    INFO(each.why);
    SchematicPiece piece;
    piece.outline = each.outline;
    const Schematic schematic = of({schematic_piece(plain(2, 4, "good"), swatch()), piece});
    if (each.corner < 0) {
      CHECK_NOTHROW(schematic_svg(schematic));
    } else {
      CHECK_THROWS_MATCHES(
          schematic_svg(schematic), Error,
          refused_field(ErrorCode::bad_argument, "pieces[1].outline[" + std::to_string(each.corner) + "]"));
    }
  }
}

TEST_CASE("an outline of many corners is looked at without comparing all edges", "[schematic]") {
  // A comb of 25,000 teeth: every edge stands beside all others. Compared in pairs that were five thousand million.
  constexpr int teeth = 25'000;
  SchematicPiece piece;
  piece.outline = {{teeth * 1.0, 0}, {0, 0}};
  for (int i = 0; i < teeth; ++i) {
    piece.outline.push_back({i + 0.25, 900});
    piece.outline.push_back({i + 0.75, 10});
  }
  CHECK_NOTHROW(schematic_svg(of({piece})));
  piece.outline[teeth + 1].y_mm = -5;  // one tooth bites through the edge along the bottom
  CHECK_THROWS_MATCHES(schematic_svg(of({piece})), Error,
                       refused_field(ErrorCode::bad_argument, "pieces[0].outline[0]"));
}

TEST_CASE("a panel whose rows have no column in common has no one outline", "[schematic][error]") {
  Place place;
  place.row = 3;
  place.field = "grid";
  const Grid grid = Grid::from_text("...kkk\n...kkk\nkkk...\nkkk...\n");
  CHECK_THROWS_MATCHES(schematic_piece(Panel("two", Strip{"plain", "plain", grid}), swatch()), Error,
                       latchwork_test::refused(ErrorCode::bad_argument, place));
}

TEST_CASE("a shaped back in three sizes is drawn as it was", "[schematic][golden]") {
  const std::string path = std::string(LATCHWORK_TESTS_DIR) + "/golden/schematic/back.svg";
  const std::string written = schematic_svg(three_sizes());
  if (std::getenv("LATCHWORK_RENEW_GOLDEN") != nullptr) std::ofstream(path, std::ios::binary) << written;
  std::ifstream in(path, std::ios::binary);
  CHECK(std::string{std::istreambuf_iterator<char>(in), {}} == written);
}

TEST_CASE("a piece whose seams take all that a row stands on is refused at that row", "[schematic][error]") {
  const auto stepped = [](RowSpan below, RowSpan above) {
    Outline outline;
    outline.rows.assign(4, below);
    outline.rows.resize(8, above);
    return shaped(plain(8, 6, "steps"), outline);
  };
  const auto refused_row = [](const char* field) {
    Place place;
    place.row = 5;
    place.field = field;
    return latchwork_test::refused(ErrorCode::bad_argument, place);
  };
  CHECK_THROWS_MATCHES(schematic_piece(stepped({0, 1}, {1, 3}), swatch(), {.seam_left = 0.5, .seam_right = 0.5}), Error,
                       refused_row("seam_right"));
  CHECK_THROWS_MATCHES(schematic_piece(stepped({0, 2}, {2, 5}), swatch(), {.seam_left = 1, .seam_right = 1}), Error,
                       refused_row("seam_right"));
  const SchematicPiece stands = schematic_piece(stepped({0, 3}, {2, 5}), swatch(), {.seam_left = 0.5, .seam_right = 1});
  CHECK_FALSE(schematic_svg(of({stands})).empty());
}

TEST_CASE("a wide step between two slopes is measured: how high it is, and how wide below and above", "[schematic]") {
  Outline outline;
  for (int row = 1; row <= 120; ++row) {
    const int in = (row - 1) / 6 + (row > 60 ? 14 : 0);
    outline.rows.push_back({in, 119 - in});
  }
  const SchematicPiece piece = schematic_piece(shaped(plain(120, 120, "steps"), outline), swatch());
  const auto mm = [&](const std::string& label) {
    for (const SchematicMeasure& each : piece.measures) {
      if (each.label == label) return each.mm;
    }
    return -1.0;
  };
  const double stitch = mm("width at the cast-on") / 120;
  const double row = mm("height") / 120;
  CHECK(mm("width below the step") == Approx((120 - 2 * 9) * stitch));
  CHECK(mm("width above the step") == Approx((120 - 2 * 24) * stitch));
  CHECK(mm("height to the step") == Approx(60 * row));
  check_layout(schematic_svg(of({piece})));
}

}  // namespace schematic_test
