// Pieces that are sewn together, on one drawing: read back from the SVG.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/shaping.hpp"
#include "schematic_lines.hpp"
#include "schematic_words.hpp"
#include "text.hpp"

namespace schematic_sewn_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

constexpr double reading = 0.03;  // numbers of the page have two decimals

SchematicPiece rectangle(double width_mm, double height_mm, const std::string& name = "") {
  SchematicPiece out;
  out.name = name;
  out.outline = {{0, height_mm}, {0, 0}, {width_mm, 0}, {width_mm, height_mm}};
  return out;
}

/// Sewn to each other from the left to the right.
Schematic sewn(std::vector<SchematicPiece> pieces) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    pieces[i].seam_left = i > 0;
    pieces[i].seam_right = i + 1 < pieces.size();
  }
  Schematic out;
  out.title = "sewn";
  out.pieces = std::move(pieces);
  return out;
}

SchematicMeasure width(const std::string& label, double from_mm, double to_mm) {
  return {label, MeasureSide::bottom, {from_mm, 0}, {to_mm, 0}, to_mm - from_mm, {}};
}

struct Reached {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
};
Reached reached(const std::vector<DrawnPoint>& line) {
  Reached out;
  for (const DrawnPoint& point : line) {
    out.left = std::min(out.left, point.x);
    out.right = std::max(out.right, point.x);
    out.top = std::min(out.top, point.y);
    out.bottom = std::max(out.bottom, point.y);
  }
  return out;
}

}  // namespace

TEST_CASE("pieces sewn together stand edge to edge, with the seam dashed between them", "[schematic]") {
  Schematic drawing = sewn({rectangle(150, 300, "left"), rectangle(200, 300, "middle"), rectangle(140, 300, "right")});
  drawing.pieces[0].measures = {width("width", 0, 150), width("all, width", 0, 490)};
  drawing.pieces[1].measures = {width("width", 0, 200)};
  drawing.pieces[2].measures = {width("width", 0, 140)};
  const std::string svg = schematic_svg(drawing);
  check_layout(svg);
  const std::vector<std::vector<DrawnPoint>> outlines = all_lines_of(svg, "lw-outline");
  REQUIRE(outlines.size() == 3);
  const Reached left = reached(outlines[0]);
  const Reached middle = reached(outlines[1]);
  const Reached right = reached(outlines[2]);
  const double scale = (left.bottom - left.top) / 300;
  CHECK(middle.left == Approx(left.right).margin(reading));
  CHECK(right.left == Approx(middle.right).margin(reading));
  CHECK(left.right - left.left == Approx(150 * scale).margin(2 * reading));
  CHECK(middle.right - middle.left == Approx(200 * scale).margin(2 * reading));
  CHECK(right.right - left.left == Approx(490 * scale).margin(2 * reading));
  // The seams are where the sides meet, as high as they are but for the strokes of the outline.
  const std::vector<std::vector<DrawnPoint>> seams = all_lines_of(svg, "lw-seam");
  REQUIRE(seams.size() == 2);
  for (const auto& [seam, x] : {std::pair{seams[0], middle.left}, std::pair{seams[1], right.left}}) {
    CHECK(reached(seam).left == Approx(x).margin(reading));
    CHECK(reached(seam).right == Approx(x).margin(reading));
    CHECK(reached(seam).top == Approx(left.top).margin(1));
    CHECK(reached(seam).bottom == Approx(left.bottom).margin(1));
  }
  // What lay under them is taken away: a dashed line on a whole one would be whole.
  CHECK(all_lines_of(svg, "lw-seam-ground") == seams);
  CHECK(holds(svg, "Dashed: a seam to the piece beside it."));
  // Widths beside one another on one line, that of all below them, over all three.
  const std::vector<DrawnMeasure> measures = measures_on(svg);
  REQUIRE(measures.size() == 4);
  CHECK(measures[1].letter == "b");
  CHECK(measures[1].cm == 49);
  CHECK(std::min(measures[1].from, measures[1].to) == Approx(left.left).margin(reading));
  CHECK(std::max(measures[1].from, measures[1].to) == Approx(right.right).margin(reading));
  CHECK(std::min(measures[2].from, measures[2].to) == Approx(middle.left).margin(reading));
  CHECK(std::max(measures[3].from, measures[3].to) == Approx(right.right).margin(reading));
  const std::vector<Rect> words = words_on(svg);
  CHECK(words.at(0).y == words.at(3).y);  // "a", "b", "left", "c"
  CHECK(words.at(0).y == words.at(5).y);
  CHECK(words.at(0).y < words.at(1).y);
  CHECK(holds(svg, ">a: left, width, 15 cm<"));
  CHECK(holds(svg, ">b: all, width, 49 cm<"));  // not of the left one alone
}

TEST_CASE("a seam to a piece that is not drawn is inside its own side", "[schematic]") {
  for (const bool is_left : {true, false}) {
    Schematic drawing;
    drawing.pieces = {rectangle(200, 300)};
    (is_left ? drawing.pieces[0].seam_left : drawing.pieces[0].seam_right) = true;
    const std::string svg = schematic_svg(drawing);
    const Reached outline = reached(all_lines_of(svg, "lw-outline").at(0));
    const std::vector<std::vector<DrawnPoint>> seams = all_lines_of(svg, "lw-seam");
    REQUIRE(seams.size() == 1);
    const double x = seams[0].at(0).x;
    CHECK(x > outline.left);
    CHECK(x < outline.right);
    CHECK((x < (outline.left + outline.right) / 2) == is_left);
    CHECK(all_lines_of(svg, "lw-seam-ground").empty());
  }
}

TEST_CASE("a seam is as high as both sides are straight, wherever the pieces have their origins", "[schematic]") {
  // The left one's right side is 200 mm high and then slopes away; the right one begins elsewhere.
  SchematicPiece left;
  left.outline = {{0, 300}, {0, 0}, {100, 0}, {100, 200}, {40, 300}};
  SchematicPiece right;
  right.outline = {{50, 350}, {50, 50}, {250, 50}, {250, 350}};
  const std::string svg = schematic_svg(sewn({left, right}));
  const std::vector<std::vector<DrawnPoint>> outlines = all_lines_of(svg, "lw-outline");
  const Reached first = reached(outlines.at(0));
  const Reached second = reached(outlines.at(1));
  CHECK(second.left == Approx(first.right).margin(reading));
  CHECK(second.bottom == Approx(first.bottom).margin(reading));
  const Reached seam = reached(all_lines_of(svg, "lw-seam").at(0));
  CHECK(seam.left == Approx(first.right).margin(reading));
  CHECK(seam.bottom == Approx(first.bottom).margin(1));
  CHECK(seam.top == Approx(first.bottom - (first.bottom - first.top) * 2 / 3).margin(1));
}

TEST_CASE("names of many narrow pieces sewn together do not lie on each other", "[schematic]") {
  std::vector<SchematicPiece> pieces;
  for (int i = 1; i <= 40; ++i) pieces.push_back(rectangle(25, 600, "panel " + std::to_string(i) + " of 40"));
  pieces[0].measures = {width("width", 0, 25), width("all 40 panels, width", 0, 1000)};
  const std::string svg = schematic_svg(sewn(pieces));
  check_layout(svg);
  CHECK(holds(svg, ">panel<"));  // once over them all
  for (int i = 1; i <= 40; ++i) CHECK(holds(svg, ">" + std::to_string(i) + " of 40<"));
  CHECK(all_lines_of(svg, "lw-seam").size() == 39);
  // Beside the three lines of each measure, one from each name that stands higher than the first ones do.
  const std::size_t lines = all_lines_of(svg, "lw-dimension").size();
  CHECK(lines > 6);
  CHECK(lines < 6 + 40);
  const std::string few =
      schematic_svg(sewn({rectangle(250, 600, "panel 1 of 2"), rectangle(250, 600, "panel 2 of 2")}));
  CHECK(all_lines_of(few, "lw-dimension").empty());
}

TEST_CASE("measures of pieces sewn together do not run into each other", "[schematic]") {
  std::vector<SchematicPiece> pieces{rectangle(60, 400, "one"), rectangle(300, 400, "two"),
                                     rectangle(20, 400, "three")};
  for (SchematicPiece& piece : pieces) {
    const double wide = piece.outline[2].x_mm;
    for (const MeasureSide side : {MeasureSide::bottom, MeasureSide::top}) {
      piece.measures.push_back({"width", side, {0, 0}, {wide, 0}, wide, {}});
      piece.measures.push_back({"half", side, {0, 0}, {wide / 2, 0}, wide / 2, {}});
    }
    for (const MeasureSide side : {MeasureSide::left, MeasureSide::right}) {
      piece.measures.push_back({"height", side, {0, 0}, {0, 400}, 400, {}});
      piece.measures.push_back({"part", side, {0, 100}, {0, 150}, 50, {}});
    }
  }
  Schematic drawing = sewn(pieces);
  drawing.pieces.push_back(rectangle(200, 100, "another, which is sewn to none"));
  const std::string svg = schematic_svg(drawing);
  check_layout(svg);
  CHECK(all_lines_of(svg, "lw-seam").size() == 2);
  const std::vector<std::vector<DrawnPoint>> outlines = all_lines_of(svg, "lw-outline");
  const Reached last = reached(outlines.at(2));
  const Reached other = reached(outlines.at(3));
  CHECK((other.left > last.right || other.top > last.bottom));
}

TEST_CASE("what the names of pieces sewn together begin with stands once over them all", "[schematic]") {
  const auto drawn = [](double wide, const std::vector<std::string>& names) {
    std::vector<SchematicPiece> pieces;
    for (const std::string& name : names) pieces.push_back(rectangle(wide, 300, name));
    const std::string svg = schematic_svg(sewn(pieces));
    check_layout(svg);
    return svg;
  };
  const std::vector<std::string> cape{"cape back: panel 1 of 2", "cape back: panel 2 of 2"};
  const std::string wide = drawn(400, cape);
  CHECK(holds(wide, ">cape back<"));
  CHECK(holds(wide, ">panel 1 of 2<"));
  CHECK(holds(wide, ">panel 2 of 2<"));
  const std::string unlike = drawn(400, {"front", "back"});
  CHECK(holds(unlike, ">front<"));
  CHECK(holds(unlike, ">back<"));
  const std::string same = drawn(400, {"sleeve", "sleeve"});
  CHECK(holds(same, ">sleeve<"));
  CHECK(same.find(">sleeve<") == same.rfind(">sleeve<"));  // nothing is left to say of each
}

}  // namespace schematic_sewn_test
