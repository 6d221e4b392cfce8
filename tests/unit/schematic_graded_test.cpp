// One design in several sizes on one drawing.
#include <cstddef>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/schematic.hpp"
#include "schematic_lines.hpp"
#include "schematic_words.hpp"
#include "text.hpp"

namespace schematic_graded_test {

using namespace latchwork;
using latchwork_test::all_lines_of;
using latchwork_test::Approx;
using latchwork_test::check_layout;
using latchwork_test::holds;
using latchwork_test::refused_field;

namespace {

/// 25 stitches and 40 rows to 10 cm: a stitch is 4 mm wide, a row 2.5 mm high.
Swatch swatch() {
  return Swatch({{"plain", Counted::stitches, 25, 100, ""}, {"plain", Counted::rows, 40, 100, ""}});
}

/// Groups of 10 stitches between edges of one, 8 rows a repeat; a stitch and a row to each seam.
GradeRequest family(const char* texture = "plain") {
  GradeRequest out;
  out.design.groups = {{{Strip{"motif", texture, Grid(8, 10)}}, 1, 50}};
  out.design.edge = Strip{"edge", "plain", Grid(1, 1)};
  out.design.rows_step = 8;
  out.design.seam_left = out.design.seam_right = out.design.seam_bottom = out.design.seam_top = 1;
  out.sizes = {{"S", 200, 0, 195, 0}, {"M", 240, 0, 235, 0}, {"L", 320, 0, 275, 0}};
  return out;
}

/// Of a rectangle, whose corners go from the upper left down and round.
double width_of(const std::vector<OutlinePoint>& outline) {
  return outline.at(2).x_mm - outline.at(1).x_mm;
}

}  // namespace

TEST_CASE("all sizes of a family stand on one drawing, each measure as 4 (6, 8)", "[schematic][grading]") {
  // 5, 6 and 8 groups and an edge stitch a side, less two stitches in the seams: 50, 60, 80 stitches of 4 mm. 80, 96
  // and 112 rows less two: 195, 235 and 275 mm.
  const GradeRequest request = family();
  const Grading grading = grade(request, swatch());
  REQUIRE(grading.candidates.size() == 3);
  Schematic drawn = graded_schematic(request, grading, swatch());
  drawn.title = "pads";
  CHECK(drawn.sizes == std::vector<std::string>{"S", "M", "L"});
  REQUIRE(drawn.pieces.size() == 1);
  const SchematicPiece& piece = drawn.pieces[0];
  REQUIRE(piece.measures.size() == 2);
  CHECK(piece.measures[0].mm == Approx(200));
  CHECK(piece.measures[0].others_mm.at(0) == Approx(240));
  CHECK(piece.measures[0].others_mm.at(1) == Approx(320));
  CHECK(piece.measures[1].mm == Approx(195));
  REQUIRE(piece.others.size() == 2);
  CHECK(piece.notes.empty());
  CHECK(drawn.notes.empty());
  // To scale about one middle, on one lower edge.
  for (std::size_t i = 0; i < 2; ++i) {
    const std::vector<OutlinePoint>& other = piece.others[i];
    CHECK(width_of(other) == Approx(piece.measures[0].others_mm[i]));
    CHECK(other[1].x_mm + other[2].x_mm == Approx(piece.outline[1].x_mm + piece.outline[2].x_mm));
    CHECK(other[1].y_mm == Approx(piece.outline[1].y_mm).margin(1e-9));
    CHECK(other[3].y_mm - other[2].y_mm == Approx(piece.measures[1].others_mm[i]));
  }
  const std::string svg = schematic_svg(drawn);
  CHECK(holds(svg, ">a = 20 (24, 32) cm<"));
  CHECK(holds(svg, "Sizes: S (M, L); the first is drawn thick."));
  CHECK(holds(svg, "lw-other"));
  check_layout(svg);
  CHECK(holds(schematic_svg(graded_schematic(request, grading, swatch(), LengthUnit::inch)),
              ">a = 7 3/4 (9 1/2, 12 1/2) in<"));
}

TEST_CASE("panels of a family stand beside each other with their seams, alike measures once", "[schematic][grading]") {
  GradeRequest request = family();
  request.design.panels_least = request.design.panels_most = 3;
  request.sizes = {{"single", 600, 0, 395, 0}, {"double", 840, 0, 475, 0}};
  const Grading grading = grade(request, swatch());
  REQUIRE(grading.candidates.size() == 2);
  const Schematic drawn = graded_schematic(request, grading, swatch());
  REQUIRE(drawn.pieces.size() == 3);
  // 5 groups and two edge stitches, of which every seam takes one: 50 stitches, 200 mm, in all three; 70 in the other
  // size.
  REQUIRE(drawn.pieces[0].measures.size() == 2);
  CHECK(drawn.pieces[0].measures[0].mm == Approx(200));
  CHECK(drawn.pieces[0].measures[0].others_mm.at(0) == Approx(280));
  const SchematicMeasure& all = drawn.pieces[0].measures[1];
  CHECK(all.label == "all 3 panels, width at the cast-on");
  CHECK(all.mm == Approx(grading.candidates[0].width_mm));
  CHECK(all.others_mm.at(0) == Approx(grading.candidates[1].width_mm));
  CHECK(all.end.x_mm - all.start.x_mm == Approx(600));
  CHECK(drawn.pieces[1].measures.empty());
  REQUIRE(drawn.pieces[2].measures.size() == 1);
  CHECK(drawn.pieces[2].measures[0].label == "height");
  CHECK(!drawn.pieces[0].seam_left);
  CHECK((drawn.pieces[0].seam_right && drawn.pieces[1].seam_left && drawn.pieces[1].seam_right));
  CHECK(!drawn.pieces[2].seam_right);
  CHECK(drawn.notes.empty());
  // The larger size lies about the middle of all three, edge to edge as the drawn one does.
  for (std::size_t i = 0; i < 3; ++i) {
    const std::vector<OutlinePoint>& other = drawn.pieces[i].others.at(0);
    const double place = 200.0 * static_cast<double>(i);  // of the panel, on from the first
    CHECK(other[1].x_mm + place - drawn.pieces[0].outline[1].x_mm == Approx(-120 + 280.0 * static_cast<double>(i)));
    CHECK(width_of(other) == Approx(280));
  }
  const std::string svg = schematic_svg(drawn);
  CHECK(holds(svg, ">b = 60 (84) cm<"));
  CHECK(holds(svg, "b: all 3 panels, width at the cast-on, 60 (84) cm"));
  CHECK(holds(svg, "stroke-dasharray"));
  CHECK(all_lines_of(svg, "lw-seam").size() == 2);
  check_layout(svg);
}

TEST_CASE("a drawing says where its measures rest on another texture's gauge", "[schematic][grading][gauge]") {
  GradeRequest request = family("moss");
  request.design.substitutes = {{"moss", "plain"}};
  const Grading grading = grade(request, swatch());
  REQUIRE(grading.candidates.size() == 3);
  const Schematic drawn = graded_schematic(request, grading, swatch());
  REQUIRE(drawn.pieces[0].notes.size() == 1);  // once, not for each size
  CHECK(holds(drawn.pieces[0].notes[0], "Borrowed gauge: texture 'moss' is measured by the gauge of 'plain', as told"));
  const std::string svg = schematic_svg(drawn);
  CHECK(holds(svg, "Borrowed gauge:"));
  // Two pieces that say the same say it once.
  Schematic twice = drawn;
  twice.pieces.push_back(drawn.pieces[0]);
  const std::string both = schematic_svg(twice);
  CHECK(both.find(">Borrowed gauge:") != std::string::npos);
  CHECK(both.find(">Borrowed gauge:", both.find(">Borrowed gauge:") + 1) == std::string::npos);
  SizeOptions options;
  options.substitutes = request.design.substitutes;
  const Panel moss("pad", Strip{"moss", "moss", Grid(8, 10)});
  CHECK(schematic_piece(moss, swatch(), options).notes == drawn.pieces[0].notes);
}

TEST_CASE("a grading is drawn in cm or in inches, and in no other unit", "[schematic][grading][error]") {
  const GradeRequest request = family();
  const Grading grading = grade(request, swatch());
  for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::m, LengthUnit::foot, LengthUnit::yard}) {
    CHECK_THROWS_MATCHES(graded_schematic(request, grading, swatch(), unit), Error,
                         refused_field(ErrorCode::bad_argument, "unit"));
  }
  CHECK(graded_schematic(request, grading, swatch(), LengthUnit::inch).unit == LengthUnit::inch);
}

TEST_CASE("a grading that cannot be drawn is refused with its field", "[schematic][grading][error]") {
  const GradeRequest request = family();
  Grading grading = grade(request, swatch());
  const auto refused_at = [&](const char* field, const Grading& of, ErrorCode code = ErrorCode::bad_argument) {
    INFO(field);
    CHECK_THROWS_MATCHES(graded_schematic(request, of, swatch()), Error, refused_field(code, field));
  };
  refused_at("candidates", {});
  Grading fewer = grading;
  fewer.candidates.pop_back();
  refused_at("candidates", fewer);
  Grading more = grading;
  more.candidates[1].panels = 2;
  refused_at("panels", more);
  for (FitCandidate& candidate : more.candidates) candidate.panels = 51;
  refused_at("panels", more, ErrorCode::too_large);
  for (const int none : {0, -1}) {
    for (FitCandidate& candidate : more.candidates) candidate.panels = none;
    refused_at("panels", more);
  }
  CHECK_THROWS_MATCHES(graded_schematic(request, grading, Swatch()), Error,
                       refused_field(ErrorCode::no_gauge, "plain"));

  Schematic drawn = graded_schematic(request, grading, swatch());
  drawn.pieces[0].others.pop_back();
  CHECK_THROWS_MATCHES(schematic_svg(drawn), Error, refused_field(ErrorCode::bad_argument, "pieces[0].others"));
  drawn.pieces[0].others.push_back({{0, 0}, {10, 10}, {10, 0}, {0, 10}});
  CHECK_THROWS_MATCHES(schematic_svg(drawn), Error, refused_field(ErrorCode::bad_argument, "pieces[0].others[1][0]"));
  drawn.pieces[0].others[1] = {{0, 0}, {10, 10}};
  CHECK_THROWS_MATCHES(schematic_svg(drawn), Error, refused_field(ErrorCode::bad_argument, "pieces[0].others[1]"));
}

}  // namespace schematic_graded_test
