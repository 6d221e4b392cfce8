// The drawing of a job whose brief names an article: its pieces as they are made.
#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/schematic.hpp"
#include "runner_brief.hpp"
#include "schematic_lines.hpp"
#include "schematic_words.hpp"
#include "text.hpp"

namespace brief_schematic_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

std::string drawing_of(const Brief& brief, const Job& job) {
  const Folder folder("schematic-of-pieces");
  write_job(brief, job, folder.path.string());
  return text_of(folder.path / "schematic.svg");
}

std::string cm(double mm) {
  const int tenths = static_cast<int>(mm + 0.5);
  return tenths % 10 == 0 ? std::to_string(tenths / 10)
                          : std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

}  // namespace

TEST_CASE("a piece sewn of panels is drawn as it is made, its seams dashed, each width told", "[brief][schematic]") {
  const Brief brief = runner(900, 5);
  const Job job = run(brief);
  const PieceFit& piece = job.article.value().fit.pieces.at(0);
  const FitCandidate& best = piece.fit.candidates.at(0);
  const std::string svg = drawing_of(brief, job);
  check_layout(svg);
  // Five panels and, apart from them, the panel whose charts are in the folder.
  CHECK(all_lines_of(svg, "lw-outline").size() == 6);
  CHECK(all_lines_of(svg, "lw-seam").size() == 4);
  const Size inner =
      size(fitted(panel_design(*brief.article, brief.panel), best, 1), brief.swatch, {.seam_left = 1, .seam_right = 1});
  CHECK(holds(svg, ": panel: panel 2 of 5, width at the cast-on, " + cm(inner.width_mm) + " cm"));
  CHECK(holds(svg, ": panel, all 5 panels, width at the cast-on, " + cm(best.width_mm) + " cm"));
  CHECK(holds(svg, "Dashed: a seam to the piece beside it."));
  CHECK(holds(svg, "Seams between panels: of &#39;panel&#39; 4 of 10.0 cm."));
  CHECK(holds(svg, ": the panel as it stands, height, 5 cm"));
  CHECK(page_html(brief, job).find("lw-seam") != std::string::npos);
}

TEST_CASE("pieces alike are drawn once, with the edges at which they are sewn", "[brief][schematic]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  const Job job = run(brief);
  const std::string svg = drawing_of(brief, job);
  check_layout(svg);
  const FitCandidate& best = job.article.value().fit.pieces.at(0).fit.candidates.at(0);
  CHECK(all_lines_of(svg, "lw-outline").size() == 2);
  CHECK(all_lines_of(svg, "lw-seam").empty());
  CHECK(holds(svg, "a: front and back, width at the cast-on, " + cm(best.width_mm) + " cm"));
  CHECK(holds(svg, "Edges that are sewn: of &#39;front&#39;, &#39;back&#39; left, right, lower and upper."));
  CHECK(holds(svg, "Measured between the seams"));
}

TEST_CASE("what nothing fits is not drawn, and is told; without any fit the panel is drawn alone",
          "[brief][schematic]") {
  Brief brief = runner(900, 5);
  brief.article->design.tolerance_percent = 0.01;
  const Job none = run(brief);
  REQUIRE(none.article.value().fit.pieces.at(0).fit.candidates.empty());
  Schematic alone;
  alone.title = "runner";
  alone.pieces = {schematic_piece(brief.panel, brief.swatch)};
  CHECK(drawing_of(brief, none) == schematic_svg(alone));
  // A panel that is the piece itself is not drawn twice.
  Brief own = runner(40, 1);
  own.article->choices.measures = {{"width", 40, 40, ""}, {"height", 50, 50, ""}};
  const Job made = run(own);
  REQUIRE(made.article.value().works.at(0).fits);
  CHECK(all_lines_of(drawing_of(own, made), "lw-outline").size() == 1);
}

TEST_CASE("more panels than a drawing shows are told, and the others drawn", "[brief][schematic]") {
  const Brief brief = runner(60 * 40, 60);
  const Job job = run(brief);
  REQUIRE(job.article.value().fit.pieces.at(0).fit.candidates.at(0).panels == 60);
  const std::string svg = drawing_of(brief, job);
  CHECK(all_lines_of(svg, "lw-outline").size() == 1);
  CHECK(holds(svg, "Not drawn: &#39;panel&#39; (60 panels)."));
}

}  // namespace brief_schematic_test
