// The panels that an article's best fits are knitted of, as briefs of their own.
#include <algorithm>
#include <filesystem>
#include <set>
#include <string>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/file.hpp"
#include "latchwork/motif.hpp"
#include "runner_brief.hpp"
#include "text.hpp"

namespace brief_fitted_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::put;
using latchwork_test::refused_field;
using latchwork_test::runner;
using latchwork_test::text_of;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> folders_of(const Job& job) {
  std::vector<std::string> out;
  for (const FittedPanel& each : job.article.value().panels) out.push_back(each.folder);
  return out;
}

}  // namespace

TEST_CASE("a panel that fits is a brief of its own, which runs as any other", "[brief][article]") {
  const Brief brief = read_brief(example("cushion").string());
  const Job job = run(brief);
  REQUIRE(job.article.value().panels.size() == 1);
  const FittedPanel& told = job.article->panels[0];
  CHECK(told == FittedPanel{"fitted-front", "front", 0, 0, 1});
  const Brief own = fitted_brief(brief, job, 0);
  const FitCandidate& best = job.article->fit.pieces[0].fit.candidates.at(0);
  CHECK(own.panel.grid().rows() == best.rows);
  CHECK(own.panel.grid().columns() == best.columns);
  CHECK(own.panel.name() == brief.panel.name() + ": front, seams included");
  CHECK(own.machine == brief.machine);
  CHECK(own.effort == brief.effort);
  CHECK(own.swatch == brief.swatch);
  CHECK_FALSE(own.article);
  const Job made = run(own);
  CHECK(made.plan == job.article->works[0].plan);
  CHECK(made.verification.verified);
  const Folder folder("fitted");
  write_job(own, made, folder.path.string());
  CHECK(holds(text_of(folder.path / "page.html"), "<h1>" + own.panel.name() + "</h1>"));
  CHECK_FALSE(holds(text_of(folder.path / "summary.txt"), "Charts here"));
}

TEST_CASE("the page of an article says whose charts it has, and where the others are", "[brief][article]") {
  const Brief brief = read_brief(example("cushion").string());
  const Job job = run(brief);
  const std::string told = summary(brief, job);
  CHECK(holds(told,
              "Charts here    of the panel as it stands, 75 stitches x 112 rows, not of the panels that fit: those "
              "have a folder of their own\n"));
  CHECK(holds(told, "Folder         fitted-front: 1 to knit, for front\n"));
  const std::string page = page_html(brief, job);
  const std::string link = "<li><a href=\"fitted-front/page.html\">fitted-front</a>: 1 to knit, for front</li>";
  const std::size_t steps = page.find("<h2 id=\"steps\">");
  REQUIRE(steps != std::string::npos);
  CHECK(page.find(link) < steps);
  CHECK(page.find(link, steps) < page.find("<h3>Steps</h3>"));
  const Folder folder("whose-charts");
  write_job(brief, job, folder.path.string());
  CHECK(holds(text_of(folder.path / "article.txt"),
              "in folders beside this file\n  fitted-front: 1 to knit, for front\n"));
}

TEST_CASE("panels right of the middle are mirrored, and are panels of their own", "[brief][article]") {
  const auto panels = [](const Brief& brief) { return run(brief).article.value().panels; };
  const std::vector<FittedPanel> two = panels(runner(400, 2));
  REQUIRE(two.size() == 2);
  CHECK(two[0] == FittedPanel{"fitted-panel", "panel, left panel", 0, 0, 1});
  CHECK(two[1] == FittedPanel{"fitted-panel-mirrored", "panel, right panel, mirrored", 0, 1, 1});
  const std::vector<FittedPanel> five = panels(runner(900, 5));
  REQUIRE(five.size() == 2);
  CHECK(five[0] == FittedPanel{"fitted-panel", "panel, left and middle panels", 0, 0, 3});
  CHECK(five[1] == FittedPanel{"fitted-panel-mirrored", "panel, right panels, mirrored", 0, 4, 2});
  const Brief brief = runner(400, 2);
  const Job job = run(brief);
  CHECK(fitted_brief(brief, job, 1).panel.grid() == fitted_brief(brief, job, 0).panel.grid().mirrored());
  // One in the middle alone is as it is.
  CHECK(panels(runner(200, 1)) == std::vector<FittedPanel>{{"fitted-panel", "panel", 0, 0, 1}});
}

TEST_CASE("seams between the panels of a piece are told with the others", "[brief][article]") {
  const Brief brief = runner(900, 5);
  const Job job = run(brief);
  CHECK(job.article.value().seam_mm == 4 * 100);
  CHECK(fitted_brief(brief, job, 0).panel.name() == "runner: panel, left and middle panels, seams included");
  CHECK(holds(summary(brief, job), "Seams          between the panels of 'panel': 4 of 10.0 cm; in all 40.0 cm\n"));
}

TEST_CASE("a fit that is the panel itself wants no files of its own", "[brief][article]") {
  Brief brief = runner(40, 1);  // an edge stitch each side, a rope, ground: 7 stitches of 4 mm, 4 of 3 mm
  brief.article->choices.measures = {{"width", 40, 40, ""}, {"height", 50, 50, ""}};
  const Job job = run(brief);
  REQUIRE(job.article.value().works.at(0).fits);
  CHECK(job.article->fit.pieces[0].fit.candidates.at(0).columns == brief.panel.grid().columns());
  CHECK(job.article->panels.empty());
  CHECK_FALSE(holds(summary(brief, job), "Charts here"));
}

TEST_CASE("folders are named safely after pieces, and no two alike", "[brief][article]") {
  Brief brief = runner(200, 1);
  Article own;
  own.name = "set";
  const char* const names[] = {"Mat/large", "mat large", "..", "Überwurf", "CON", ""};
  double width = 150;
  for (const char* name : names) {
    if (*name == '\0') continue;
    ArticlePiece piece;
    piece.name = name;
    piece.width = {{}, width, width, {}};
    piece.length = {{}, 100, 100, {}};
    own.pieces.push_back(piece);
    width += 64;  // two repeats, so that each is a panel of its own
  }
  brief.article->article = "set.json";
  brief.article->choices = {};
  brief.own_article = own;
  CHECK(folders_of(run(brief)) == std::vector<std::string>{"fitted-mat-large", "fitted-mat-large-2", "fitted-piece",
                                                           "fitted-berwurf", "fitted-con"});
}

TEST_CASE("pieces alike are knitted of one panel", "[brief][article]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  const Job job = run(brief);
  REQUIRE(job.article.value().panels.size() == 1);
  CHECK(job.article->panels[0] == FittedPanel{"fitted-front", "front, back", 0, 0, 2});
  const Brief own = fitted_brief(brief, job, 0);
  REQUIRE(own.yarn);
  CHECK(own.yarn->pieces == 1);
  CHECK(own.yarn->seam_mm == 0);
  // Which yarns knit which rows is known of the brief's panel only.
  Brief rows = brief;
  rows.panel = Panel("short", brief.panel.grid().sliced(1, 0, 96, brief.panel.grid().columns()),
                     {{1, 96, brief.panel.bands().front().strips}});
  rows.yarn->rows = {{1, 96, 0}};
  CHECK_FALSE(fitted_brief(rows, run(rows), 0).yarn);
}

TEST_CASE("the panel as it stands makes a piece that it is near enough to", "[brief][article]") {
  Brief brief = runner(41, 1);
  brief.article->choices.measures = {{"width", 41, 41, ""}, {"height", 50, 50, ""}};
  brief.article->design.tolerance_percent = 5;
  brief.article->design.rows_step = 30;  // of 30 or 60 rows nothing is within 5 %
  const Job near = run(brief);
  REQUIRE(near.article.value().works.size() == 1);
  CHECK(near.article->fit.pieces[0].fit.candidates.empty());
  CHECK(near.article->works[0].fits);
  CHECK(near.article->times == work_times(near.plan, brief.effort));
  CHECK(holds(summary(brief, near), "To knit        1 panel as it stands, "));
  brief.article->design.tolerance_percent = 2;
  const Job far = run(brief);
  CHECK_FALSE(far.article.value().works.at(0).fits);
  CHECK(far.article->times == WorkTimes());
}

TEST_CASE("open ends and broken repeats of the best fit are told", "[brief][article]") {
  Brief brief = runner(200, 1);
  CHECK_FALSE(holds(summary(brief, run(brief)), " of 4 rows"));
  brief.article->design.rows_step = 40;
  brief.article->design.rows_extra = 2;  // after row 2 of its repeat the rope is crossed
  const Job job = run(brief);
  const FitCandidate& best = job.article.value().fit.pieces[0].fit.candidates.at(0);
  const std::string told = summary(brief, job);
  CHECK(holds(told, "; 'rope 2/2 RC every 4' is 10 repeats and 2 of 4 rows\n"));
  CHECK(best.open_ends == holds(told, "its last row is open"));
  brief.article->design.rows_extra = 0;
  int open = 0;
  for (int extra = 1; extra <= 3; ++extra) {
    brief.article->design.rows_extra = extra;
    const Job other = run(brief);
    const bool is_open = other.article.value().fit.pieces[0].fit.candidates.at(0).open_ends;
    CHECK(holds(summary(brief, other), "its last row is open") == is_open);
    if (is_open) ++open;
  }
  CHECK(open > 0);
}

TEST_CASE("a fitted brief of another job, or of none, is refused", "[brief][article][error]") {
  const Brief brief = runner(200, 1);
  const Job job = run(brief);
  CHECK_THROWS_MATCHES(fitted_brief(brief, job, 1), Error, refused_field(ErrorCode::bad_argument, "index"));
  CHECK_THROWS_MATCHES(fitted_brief(runner(300, 1), job, 0), Error,
                       refused_field(ErrorCode::bad_argument, "job.article.fit"));
  Brief none = brief;
  none.article.reset();
  CHECK_THROWS_MATCHES(fitted_brief(none, job, 0), Error, refused_field(ErrorCode::bad_argument, "brief.article"));
  Job without = job;
  without.article.reset();
  CHECK_THROWS_MATCHES(fitted_brief(brief, without, 0), Error, refused_field(ErrorCode::size_mismatch, "job.article"));
  const auto refused = [&](auto&& change) {
    Job wrong = job;
    change(wrong.article.value().panels.at(0));
    CHECK_THROWS_MATCHES(summary(brief, wrong), Error, refused_field(ErrorCode::bad_argument, "job.article"));
  };
  refused([](FittedPanel& panel) { panel.count += 1; });
  refused([](FittedPanel& panel) { panel.folder = "../elsewhere"; });
}

TEST_CASE("a brief that is written is read back equal", "[brief][file]") {
  for (const char* name : {"sampler", "cushion", "harbour-cushion"}) {
    CAPTURE(name);
    const Brief brief = read_brief(example(name).string());
    const Folder folder("written-brief");
    write_brief(brief, folder.path.string());
    CHECK(read_brief(folder.path.string()) == brief);
  }
  const Folder folder("written-brief");
  Brief brief = runner(200, 1);
  brief.own_article = built_in_article("blanket of panels");
  brief.article->article = "throw.json";
  brief.yarn = read_brief(example("harbour-cushion").string()).yarn;
  brief.substitutes = {{"lace, \"old\"", "stockinette"}, {"rope", "lace, \"old\""}};
  write_brief(brief, folder.path.string());
  CHECK(read_brief(folder.path.string()) == brief);
  brief.substitutes.clear();
  brief.yarn.reset();
  brief.article.reset();
  brief.own_article.reset();
  write_brief(brief, folder.path.string());
  CHECK(read_brief(folder.path.string()) == brief);
  CHECK_FALSE(fs::exists(folder.path / "yarn.json"));
  CHECK_FALSE(fs::exists(folder.path / "article.json"));
  CHECK_FALSE(fs::exists(folder.path / "substitutes.csv"));
}

TEST_CASE("a brief that cannot be written leaves the folder as it was", "[brief][file][error]") {
  const Folder folder("unwritten-brief");
  put(folder.path / "panel.json", "mine");
  Brief brief = runner(200, 1);
  brief.own_article = built_in_article("scarf");
  for (const char* name : {"scarf", "../throw.json", "panel.json", "article.json", "throw", ""}) {
    CAPTURE(name);
    brief.article->article = name;
    CHECK_THROWS_AS(write_brief(brief, folder.path.string()), Error);
  }
  brief.article->article = "panel.json";
  CHECK_THROWS_MATCHES(write_brief(brief, folder.path.string()), Error,
                       refused_field(ErrorCode::bad_argument, "brief.article.article"));
  brief.article->article = "throw.json";
  const auto refused_substitutes = [&](ErrorCode code, const char* field, const std::vector<Substitute>& list) {
    CAPTURE(field);
    brief.substitutes = list;
    CHECK_THROWS_MATCHES(write_brief(brief, folder.path.string()), Error, refused_field(code, field));
  };
  refused_substitutes(ErrorCode::bad_value, "brief.substitutes[0].texture", {{"", "moss"}});
  refused_substitutes(ErrorCode::bad_value, "brief.substitutes[1].use", {{"a", "moss"}, {"b", "b"}});
  refused_substitutes(ErrorCode::bad_value, "brief.substitutes[1].texture", {{"a", "moss"}, {"a", "b"}});
  refused_substitutes(ErrorCode::bad_encoding, "brief.substitutes[0].use", {{"a", "\xFF"}});
  refused_substitutes(ErrorCode::bad_value, "brief.substitutes[0].use", {{"a", std::string(257, 'x')}});
  refused_substitutes(ErrorCode::too_large, "brief.substitutes", std::vector<Substitute>(10'001));
  brief.substitutes.clear();
  fs::create_directory(folder.path / "machine.json");
  CHECK_THROWS_MATCHES(write_brief(brief, folder.path.string()), Error, refused_field(ErrorCode::io, "machine.json"));
  CHECK_THROWS_MATCHES(write_brief(brief, ""), Error, refused_field(ErrorCode::bad_argument, "folder"));
  CHECK(text_of(folder.path / "panel.json") == "mine");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 2);
}

}  // namespace brief_fitted_test
