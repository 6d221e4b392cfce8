// Shaped pieces of an article: planned, knitted, reckoned and written in their shape.
#include <algorithm>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/shaping.hpp"
#include "runner_brief.hpp"
#include "schematic_lines.hpp"
#include "schematic_words.hpp"
#include "text.hpp"

namespace brief_shaped_test {

using namespace latchwork;
using latchwork_test::all_lines_of;
using latchwork_test::Approx;
using latchwork_test::check_layout;
using latchwork_test::DrawnPoint;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::refused_field;
using latchwork_test::rope_brief;
using latchwork_test::text_of;

namespace {

Brief sleeve() {
  return read_brief(example("lantern-sleeve").string());
}

/// The design that the job fits by.
FitRequest design_of(const Brief& brief) {
  return panel_design(*brief.article, brief.panel);
}

/// Edge, rope, ground, edge, for a piece that is narrower at the top: 4 mm a stitch, a rope's 3.
Brief tapered(double width_mm, double top_mm) {
  Brief out = rope_brief("tapered", 40);
  Article article;
  article.name = "tapered";
  const auto exactly = [](double mm) { return Extent{{}, mm, mm, {}}; };
  ArticlePiece piece;
  piece.name = "flap";
  piece.width = exactly(width_mm);
  piece.length = exactly(100);
  piece.shape = {{exactly(100), exactly(top_mm)}};
  article.pieces = {piece};
  out.own_article = article;
  ArticleRequest request;
  request.article = "tapered.json";
  request.groups = {{1, 2, 1, 6}};
  request.edge = 0;
  request.design.edge_least = 1;
  request.design.edge_most = 10;
  request.design.panels_least = request.design.panels_most = 1;
  request.design.rows_step = 4;
  request.design.tolerance_percent = 6;
  request.design.most = 12;
  out.article = request;
  return out;
}

}  // namespace

TEST_CASE("a shaped piece is planned, knitted and reckoned in its shape", "[brief][article][shaping]") {
  const Brief brief = sleeve();
  const Job job = run(brief);
  REQUIRE(job.article);
  const PieceFit& piece = job.article->fit.pieces.at(0);
  REQUIRE_FALSE(piece.fit.candidates.empty());
  const FitRequest design = design_of(brief);
  const Panel made = fitted_piece(piece.target, design, piece.fit.candidates[0], brief.swatch);
  const Panel straight = fitted(piece_request(piece.target, design), piece.fit.candidates[0]);
  CHECK(made.grid().at(1, 0) == Cell::none);
  CHECK(straight.grid().at(1, 0) == Cell::knit);
  // The plan is that of the shaped panel, and its cloth is read back as that panel.
  const PieceWork& work = job.article->works.at(0);
  CHECK(work.fits);
  CHECK(work.plan == plan(made.grid(), brief.machine, brief.effort));
  CHECK(verify(made.grid(), work.plan).verified);
  CHECK_FALSE(verify(straight.grid(), work.plan).verified);
  CHECK(job.article->times == work_times(work.plan, brief.effort, work.panels));
  CHECK(job.article->times.shapings_ms > 0);
  // Its measures are those that were asked for: 20 cm, 32 and 12, to a stitch of 3.6 mm.
  const FitRequest wanted = piece_request(piece.target, design);
  const Size size =
      latchwork::size(made, brief.swatch,
                      {.seam_left = wanted.seam_left, .seam_right = wanted.seam_right, .seam_top = wanted.seam_top});
  CHECK(size.cast_on.width_mm == Approx(200).margin(3.7));
  CHECK(size.width_mm == Approx(320).margin(320 * 0.05));
  CHECK(size.bind_off.width_mm == Approx(120).margin(2 * 3.6 + 3.7));
  CHECK(size.height_mm == Approx(420).margin(420 * 0.05));
  const std::string told = summary(brief, job);
  CHECK(holds(told, "then cut to its shape: 20.3 cm wide at the cast-on, 31.8 cm at its widest, in row 128"));
  CHECK_FALSE(holds(told, "before their shape is cut"));
}

TEST_CASE("each slope of an edge is told once, however slowly it goes", "[finding][shaping]") {
  const Brief brief = sleeve();
  const Brief own = fitted_brief(brief, run(brief), 0);
  const std::vector<Finding> found = findings(own.panel.grid(), own.machine);
  const auto count = [&](FindingCode code) {
    return std::count_if(found.begin(), found.end(), [&](const Finding& each) { return each.code == code; });
  };
  CHECK(count(FindingCode::wale_begins) == 2);  // one at each side
  CHECK(count(FindingCode::wale_ends) == 2);
}

TEST_CASE("a shaped panel is a brief of its own, with its chart, schematic and words", "[brief][article][shaping]") {
  const Brief brief = sleeve();
  const Job job = run(brief);
  REQUIRE(job.article->panels.size() == 1);
  CHECK(job.article->panels[0].count == 2);
  const Brief own = fitted_brief(brief, job, 0);
  const PieceFit& piece = job.article->fit.pieces.at(0);
  const Panel made = fitted_piece(piece.target, design_of(brief), piece.fit.candidates.at(0), brief.swatch);
  CHECK(own.panel.grid() == made.grid());
  const Folder folder("shaped-brief");
  write_brief(own, folder.path.string());
  CHECK(read_brief(folder.path.string()) == own);
  const Job done = run(own);
  CHECK(done.plan == job.article->works.at(0).plan);
  write_job(own, done, folder.path.string());
  CHECK(holds(text_of(folder.path / "instructions.txt"), "increase 1 at each side"));
  CHECK(holds(text_of(folder.path / "schematic.svg"), "width at the last row"));
}

TEST_CASE("the yarn of a shaped piece is that of the stitches that stand", "[brief][article][shaping][yarn]") {
  Brief brief = tapered(120, 60);
  YarnRequest request;
  request.yarns.resize(1);
  for (const char* texture : {"stockinette", "rope 2/2 every 4"}) {
    request.loops.push_back({texture, 100, 1000});
  }
  request.yarns[0].number = {YarnSystem::tex, 100, 1};
  brief.yarn = request;
  Brief straight = brief;
  straight.own_article->pieces[0].shape.clear();
  const Job shaped_job = run(brief);
  const Job straight_job = run(straight);
  REQUIRE(shaped_job.article->yarn);
  REQUIRE(straight_job.article->yarn);
  const double share =
      shaped_job.article->yarn->estimates.at(0).weight_g / straight_job.article->yarn->estimates.at(0).weight_g;
  CHECK(share < 0.85);  // three quarters of the cloth, and a few rows and stitches of both that are not
  CHECK(share > 0.65);
}

TEST_CASE("a candidate whose crossing the shape cuts is passed over, and the place is told",
          "[brief][article][shaping]") {
  const Brief brief = tapered(150, 90);
  const Job job = run(brief);
  const PieceFit& piece = job.article->fit.pieces.at(0);
  const FitRequest design = design_of(brief);
  // The first two are cut as shaped() says it; the third is knitted.
  REQUIRE(piece.fit.candidates.size() > 2);
  for (const std::size_t i : {0U, 1U}) {
    CHECK_THROWS_AS(fitted_piece(piece.target, design, piece.fit.candidates[i], brief.swatch), Error);
  }
  CHECK(job.article->works.at(0).fits);
  CHECK(job.article->works[0].plan.rows == piece.fit.candidates[2].rows);
  CHECK(job.article->works[0].verification.verified);
  const std::string told = summary(brief, job);
  CHECK(holds(told,
              "2 nearer cannot be made, the nearest, of 41 columns x 40 rows, since the edge cuts the 2/2 RC after "
              "row 38, columns 7 to 10"));
  CHECK(holds(told, "move the edge out by 1 column"));
  const Folder folder("shape-cut");
  write_job(brief, job, folder.path.string());
  CHECK(holds(text_of(folder.path / "article.txt"), "[cannot be made here: crossing cut]"));
  // Six per cent too narrow is allowed, so it bars no shape: the panel is whole where the piece is widest.
  CHECK(piece.fit.candidates[2].width_error_mm < -4);
}

TEST_CASE("where the shape cuts a crossing of every candidate nothing is reckoned", "[brief][article][shaping]") {
  Brief brief = tapered(120, 40);
  brief.article->design.edge_most = 1;
  brief.article->design.tolerance_percent = 20;
  const Job job = run(brief);
  REQUIRE_FALSE(job.article->fit.pieces.at(0).fit.candidates.empty());
  CHECK_FALSE(job.article->works.at(0).fits);
  CHECK(job.article->panels.empty());
  CHECK(job.article->times == WorkTimes());
  CHECK_FALSE(job.article->yarn);
  const std::string told = summary(brief, job);
  CHECK(holds(told, "its shape cannot be cut: the edge cuts the 2/2 RC after row "));
  CHECK(holds(told, "To knit        nothing: its shape cannot be cut\n"));
  CHECK(
      holds(told, "article  the shape of 'flap' cannot be cut, so that it is in none of these figures: the edge cuts"));
}

TEST_CASE("pieces of unlike shapes are told apart, those of one shape are knitted of one panel",
          "[brief][article][shaping]") {
  Brief brief = tapered(120, 80);
  ArticlePiece other = brief.own_article->pieces[0];
  other.name = "second";
  brief.own_article->pieces.push_back(other);
  const Job alike = run(brief);
  REQUIRE(alike.article->works.size() == 2);
  REQUIRE(alike.article->works[0].fits);
  CHECK(alike.article->panels.size() == 1);
  CHECK(alike.article->panels[0].pieces == "flap, second");
  CHECK(alike.article->works[0].plan == alike.article->works[1].plan);
  brief.own_article->pieces[1].shape.clear();
  const Job unlike = run(brief);
  CHECK(unlike.article->panels.size() == 2);
  CHECK(unlike.article->works[0].plan != unlike.article->works[1].plan);
  CHECK(holds(summary(brief, unlike), "Piece          second: 12.0 x 10.0 cm"));
}

TEST_CASE("of a shaped piece of three panels or more the outer ones are cut and the others stay whole",
          "[brief][article][shaping]") {
  struct Case {
    int panels;
    double width_mm;
    std::vector<std::string> folders;
    std::vector<std::string> places;
  };
  // 6 stitches and a rope's 4 between edges: a rope leans, so that its mirror image is another cloth.
  for (const Case& each :
       {Case{3, 300, {"", "-inner", "-mirrored"}, {"left outer panel", "middle panel", "right outer panel, mirrored"}},
        Case{4,
             400,
             {"", "-inner", "-inner-mirrored", "-mirrored"},
             {"left outer panel", "left inner panel", "right inner panel, mirrored", "right outer panel, mirrored"}},
        Case{5,
             500,
             {"", "-inner", "-inner-mirrored", "-mirrored"},
             {"left outer panel", "left inner and middle panels", "right inner panel, mirrored",
              "right outer panel, mirrored"}}}) {
    INFO(each.panels << " panels");
    Brief brief = tapered(each.width_mm, each.width_mm - 40);
    brief.article->design.panels_least = brief.article->design.panels_most = each.panels;
    YarnRequest yarn;
    yarn.yarns.resize(1);
    yarn.yarns[0].number = {YarnSystem::tex, 100, 1};
    for (const char* texture : {"stockinette", "rope 2/2 every 4"}) yarn.loops.push_back({texture, 100, 1000});
    brief.yarn = yarn;
    const Job job = run(brief);
    const ArticleJob& article = job.article.value();
    const PieceFit& piece = article.fit.pieces.at(0);
    REQUIRE_FALSE(piece.fit.candidates.empty());
    const PieceWork& work = article.works.at(0);
    REQUIRE(work.fits);
    CHECK(work.panels == each.panels);
    CHECK(work.inner == each.panels - 2);
    const auto best = std::find_if(
        piece.fit.candidates.begin(), piece.fit.candidates.end(),
        [&](const FitCandidate& of) { return of.rows == work.plan.rows && of.columns == work.plan.columns; });
    REQUIRE(best != piece.fit.candidates.end());
    const FitRequest design = design_of(brief);
    TargetPiece target = piece.target;
    const double lacks = std::max(-best->width_error_mm, 0.0);  // within the tolerance, and no bar
    target.width_least_mm -= lacks;
    target.width_greatest_mm += lacks;
    std::vector<Panel> made;
    for (int i = 0; i < each.panels; ++i) made.push_back(fitted_piece(target, design, *best, brief.swatch, i));
    // Left and right of the whole piece, and nowhere else.
    for (int i = 0; i < each.panels; ++i) {
      INFO("panel " << i + 1);
      const std::vector<RowSpan> rows = outline_of(made[static_cast<std::size_t>(i)].grid()).rows;
      CHECK((rows.back().first > 0) == (i == 0));
      CHECK((rows.back().last < best->columns - 1) == (i == each.panels - 1));
    }
    CHECK(made.back().grid() == made.front().grid().mirrored());
    CHECK(verify(made[0].grid(), work.plan).verified);
    CHECK(verify(made[1].grid(), work.inner_plan).verified);
    CHECK_FALSE(verify(made[1].grid(), work.plan).verified);
    CHECK(work.inner_verification.verified);
    // Hours: two outer ones and the others.
    const WorkTimes outer = work_times(work.plan, brief.effort, 2);
    const WorkTimes inner = work_times(work.inner_plan, brief.effort, each.panels - 2);
    CHECK(article.times.total_ms == outer.total_ms + inner.total_ms);
    CHECK(article.times.shapings_ms == outer.shapings_ms + inner.shapings_ms);
    CHECK(outer.shapings_ms > 0);
    // Yarn likewise, and the seams between them.
    CHECK(article.seam_mm == Approx((each.panels - 1) * best->height_mm));
    YarnRequest of_outer = yarn;
    of_outer.pieces = 2;
    of_outer.seam_mm = article.seam_mm;
    YarnRequest of_inner = yarn;
    of_inner.pieces = each.panels - 2;
    const double weight = yarn_need(made[0], brief.swatch, of_outer).estimates.at(0).weight_g +
                          yarn_need(made[1], brief.swatch, of_inner).estimates.at(0).weight_g;
    CHECK(article.yarn.value().estimates.at(0).weight_g == Approx(weight));
    // Each unlike panel is a brief of its own.
    REQUIRE(article.panels.size() == each.folders.size());
    std::int64_t count = 0;
    for (std::size_t i = 0; i < article.panels.size(); ++i) {
      const FittedPanel& told = article.panels[i];
      CHECK(told.folder == "fitted-flap" + each.folders[i]);
      CHECK(told.pieces == "flap, " + each.places[i]);
      CHECK(fitted_brief(brief, job, i).panel.grid() == made[static_cast<std::size_t>(told.panel)].grid());
      CHECK(fitted_brief(brief, job, i).panel.name() == "tapered: " + told.pieces + ", seams included");
      count += told.count;
    }
    CHECK(count == each.panels);
    const std::string told = summary(brief, job);
    CHECK(holds(told, "; the outer panels then cut to its shape"));
    CHECK(holds(told, "To knit        2 outer panels, "));
    CHECK(holds(told, each.panels == 3 ? "; 1 inner panel, " : " inner panels, "));
    // The drawing has all of them, shaped at the outer sides alone.
    const Folder folder("shaped-panels");
    write_job(brief, job, folder.path.string());
    const std::string svg = text_of(folder.path / "schematic.svg");
    check_layout(svg);
    CHECK(all_lines_of(svg, "lw-seam").size() == static_cast<std::size_t>(each.panels - 1));
    CHECK(holds(svg, "flap, all " + std::to_string(each.panels) + " panels, width at the last row, "));
    const std::vector<std::vector<DrawnPoint>> outlines = all_lines_of(svg, "lw-outline");
    REQUIRE(outlines.size() == static_cast<std::size_t>(each.panels) + 1);
    for (int i = 0; i < each.panels; ++i) {
      const std::vector<DrawnPoint>& outline = outlines[static_cast<std::size_t>(i)];
      std::set<double> places;
      for (const DrawnPoint& corner : outline) places.insert(corner.x);
      const bool is_rectangle = outline.size() == 4 && places.size() == 2;
      CHECK(is_rectangle == (i > 0 && i < each.panels - 1));
    }
    // A job whose inner plan is another's is refused.
    Job spoiled = job;
    spoiled.article->works[0].inner_plan = work.plan;
    CHECK_THROWS_AS(summary(brief, spoiled), Error);
    spoiled = job;
    spoiled.article->works[0].inner = 0;
    CHECK_THROWS_MATCHES(summary(brief, spoiled), Error,
                         refused_field(ErrorCode::bad_argument, "job.article.works[0]"));
  }
}

TEST_CASE("of panels that a shape leaves whole none is said to be cut", "[brief][shaping]") {
  for (const bool straight : {false, true}) {
    Brief brief = tapered(300, straight ? 300 : 260);
    brief.article->design.panels_least = brief.article->design.panels_most = 3;
    const Job job = run(brief);
    REQUIRE_FALSE(job.article.value().fit.pieces.at(0).fit.candidates.empty());
    CHECK(holds(summary(brief, job), "cut to its shape") != straight);
  }
}

TEST_CASE("a shape that takes an outer panel wholly bars its fits, and says where", "[brief][article][shaping]") {
  Brief brief = tapered(300, 40);
  brief.article->design.panels_least = brief.article->design.panels_most = 3;
  const Job job = run(brief);
  CHECK_FALSE(job.article.value().works.at(0).fits);
  CHECK(job.article->works[0].inner == 0);
  CHECK(job.article->seam_mm == 0);
  CHECK(job.article->panels.empty());
  CHECK(holds(summary(brief, job), "; its shape cannot be cut: "));
  Job spoiled = job;
  spoiled.article->works[0].inner_plan.rows = 1;
  CHECK_THROWS_MATCHES(summary(brief, spoiled), Error,
                       refused_field(ErrorCode::bad_argument, "job.article.works[0].inner_plan"));
}

}  // namespace brief_shaped_test
