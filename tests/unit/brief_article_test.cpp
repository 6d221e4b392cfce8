#include "latchwork/brief.hpp"

#include <algorithm>
#include <filesystem>
#include <string>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/yarn_need.hpp"
#include "text.hpp"

namespace brief_article_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::put;
using latchwork_test::refused_field;
using latchwork_test::text_of;
namespace fs = std::filesystem;

TEST_CASE("a brief with an article tells how its panel makes it, and what that takes", "[brief][article]") {
  Brief brief = read_brief(example("harbour-cushion").string());
  REQUIRE(brief.article);
  CHECK_FALSE(brief.own_article);
  brief.article->design.edge_most = 4;
  const Job job = run(brief);
  REQUIRE(job.article);
  ArticleRequest wanted = *brief.article;
  wanted.design.needles = brief.machine.needles;
  CHECK(job.article->fit == fit_article(built_in_article("cushion cover"), wanted, brief.panel, brief.swatch));
  // Front and back of a seamed cover, which nothing fits, nor the panel as it stands: nothing is told of hours and
  // yarn.
  REQUIRE(job.article->works.size() == 2);
  CHECK_FALSE(job.article->works[0].fits);
  CHECK(job.article->works[1].plan == job.plan);
  CHECK(job.article->times == WorkTimes());
  CHECK(job.article->seam_mm == 0);
  CHECK(job.article->sewing_ms == 0);
  CHECK_FALSE(job.article->yarn);
  CHECK(job.article->panels.empty());
  const std::string told = summary(brief, job);
  CHECK(holds(told, "Article        cushion cover\n"));
  CHECK(holds(told, "Piece          front, back: 30.0 x 30.0 cm\n"));
  CHECK(holds(told, "nothing fits; nearest 1 panel of 87 columns x 128 rows"));
  CHECK(holds(told, "What fits      nothing: no hours and no yarn are told\n"));
  CHECK(holds(told, "To knit        nothing: no panel fits\n"));
  CHECK(holds(told, "article  no panel that fits 'front', 'back': no hours and no yarn are told for them\n"));
  CHECK_FALSE(holds(told, "In all"));
  CHECK_FALSE(holds(told, "Yarn in all"));
  CHECK(holds(told, "caution  Up to one year a baby sleeps on a firm flat surface"));
  const std::string page = page_html(brief, job);
  CHECK(holds(page, "<h3 id=\"article\">What it is for</h3>"));
  CHECK(holds(page, "<td class=\"name\">front, back</td><td data-label=\"Wanted\">30.0 x 30.0 cm</td>"));
  CHECK(holds(page, "visualfoodie.com"));
}

TEST_CASE("what fits is planned, knitted and reckoned; without an article nothing is said of one", "[brief][article]") {
  Brief brief = read_brief(example("cushion").string());
  REQUIRE(brief.article);
  const Job job = run(brief);
  REQUIRE(job.article);
  REQUIRE(job.article->works.size() == 1);
  const PieceWork& work = job.article->works[0];
  CHECK(work.fits);
  CHECK(work.verification.verified);
  CHECK(work.plan.rows == job.article->fit.pieces[0].fit.candidates.at(0).rows);
  CHECK(job.article->times == work_times(work.plan, brief.effort));
  CHECK(job.article->sewing_ms == 0);
  CHECK(holds(summary(brief, job), "the hours are without sewing up 160.0 cm of seams: no time for a metre of seam"));
  CHECK(holds(summary(brief, job), "2 pieces not made as this panel are in none of these figures"));
  const Folder folder("article");
  write_job(brief, job, folder.path.string());
  const std::string text = text_of(folder.path / "article.txt");
  // The panel is 36.9 x 38.5 cm: a stitch a side and a row at either end are sewn in.
  CHECK(holds(
      text, "  as it stands   35.9 x 37.8 cm between its seams (2 stitches and 2 rows of each panel go into them): "));
  CHECK(holds(text, ": 39.9 x 39.3 cm between its seams: "));
  CHECK(holds(summary(brief, job), "36.9 cm wide x 38.5 cm high, rested; "));
  CHECK(holds(summary(brief, job), "; the whole panel, with what seams will take\n"));
  CHECK(holds(text, "Where the figures come from\n  list 'covers, UK': britishwholesales.co.uk"));
  CHECK(holds(text, "Cautions\n  Up to one year"));
  brief.article.reset();
  const Job without = run(brief);
  CHECK_FALSE(without.article);
  CHECK_FALSE(holds(summary(brief, without), "Article"));
  CHECK_FALSE(holds(summary(brief, without), "seams"));
  write_job(brief, without, folder.path.string());
  CHECK_FALSE(fs::exists(folder.path / "article.txt"));
}

TEST_CASE("the yarn of pieces that fit is that of their panels and seams", "[brief][article][yarn]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  const Job job = run(brief);
  REQUIRE(job.article);
  REQUIRE(job.article->panels.size() == 1);
  YarnRequest both = *brief.yarn;
  both.pieces = 2;
  both.seam_mm = 4 * 300;  // two sides, lower and upper
  const YarnNeed need = yarn_need(fitted_brief(brief, job, 0).panel, brief.swatch, both);
  CHECK(job.article->seam_mm == both.seam_mm);
  CHECK(job.article->sewing_ms == 12 * brief.article->seam_ms_per_m / 10);
  CHECK(job.article->times == work_times(job.article->works.at(0).plan, brief.effort, 2));
  REQUIRE(job.article->yarn);
  CHECK(job.article->yarn->estimates.at(0).weight_g == latchwork_test::Approx(need.estimates.at(0).weight_g));
  CHECK(job.article->yarn->estimates.at(0).spread_g == latchwork_test::Approx(need.estimates.at(0).spread_g));
  CHECK(job.article->yarn->estimates.at(0).shares.at(0).buy_g ==
        latchwork_test::Approx(need.estimates.at(0).shares.at(0).buy_g));
}

TEST_CASE("an article's hours are its panels' by kind of work, and sewing up by the metre", "[brief][article]") {
  Brief brief = read_brief(example("sampler").string());
  // Two pieces alike, and a seam of 1.25 m thrice.
  brief.own_article = read_article(R"({"format": "latchwork-article", "version": 1, "name": "panels", "pieces": [
      {"name": "panel", "count": 2, "width": {"least_mm": 100, "greatest_mm": 100},
       "length": {"least_mm": 100, "greatest_mm": 100}}],
      "seams": [{"name": "long", "count": 3, "length": {"least_mm": 1000, "greatest_mm": 1500}}]})");
  brief.article.emplace();
  brief.article->edge = 0;
  brief.article->seam_ms_per_m = 7;
  Job job = run(brief);
  CHECK(job.article->times == work_times(job.article->works.at(0).plan, brief.effort, 2));
  CHECK(job.article->seam_mm == 3750);
  CHECK(job.article->sewing_ms == 26);  // 26.25, to the nearest
  brief.article->seam_ms_per_m = 1'200'000;
  job = run(brief);
  CHECK(job.article->sewing_ms == 4'500'000);
  const std::string told = summary(brief, job);
  CHECK(holds(told, " + 1 h 15 min of sewing up = "));
  CHECK_FALSE(holds(told, "without sewing up"));
  CHECK(holds(page_html(brief, job), " + 1 h 15 min of sewing up = "));
  const Folder folder("sewing");
  write_job(brief, job, folder.path.string());
  const std::string text = text_of(folder.path / "article.txt");
  CHECK(holds(text, "Where the hours go\n  stops: "));
  CHECK(holds(text, "\n  sewing up: 1 h 15 min\n"));
  // Nothing that fits: nothing is told, of sewing up neither.
  brief.article->design.tolerance_percent = 0;
  brief.own_article->pieces[0].width.least_mm = brief.own_article->pieces[0].width.greatest_mm = 5;
  job = run(brief);
  CHECK(job.article->times == WorkTimes());
  CHECK(job.article->seam_mm == 0);
  CHECK(job.article->sewing_ms == 0);
  // Nothing to sew, nothing left out.
  brief.article->design.tolerance_percent.reset();
  brief.own_article->seams.clear();
  brief.article->seam_ms_per_m = 0;
  job = run(brief);
  CHECK(job.article->seam_mm == 0);
  CHECK_FALSE(holds(summary(brief, job), "sewing up"));
}

TEST_CASE("an article of more work than can be counted is refused", "[brief][article][error]") {
  Brief brief = read_brief(example("sampler").string());
  brief.own_article = read_article(R"({"format": "latchwork-article", "version": 1, "name": "panels", "counts": [
      {"name": "many", "meaning": "how many", "least": 1, "greatest": 1000}], "pieces": [
      {"name": "panel", "count": 1000, "times": ["many"], "width": {"least_mm": 100, "greatest_mm": 100},
       "length": {"least_mm": 100, "greatest_mm": 100}}]})");
  brief.article.emplace();
  brief.article->edge = 0;
  brief.article->choices.counts = {{"many", 1000}};
  brief.effort.row = 3'600'000;
  const Job many = run(brief);
  CHECK(many.article->times.carriage_ms == 1'000'000LL * many.article->works.at(0).plan.rows * brief.effort.row);
  brief.article->seam_ms_per_m = -1;
  CHECK_THROWS_MATCHES(run(brief), Error, refused_field(ErrorCode::bad_argument, "seam_ms_per_m"));
  brief.article->seam_ms_per_m = ArticleRequest::max_seam_ms_per_m + 1;
  CHECK_THROWS_MATCHES(run(brief), Error, refused_field(ErrorCode::bad_argument, "seam_ms_per_m"));
  brief.article->seam_ms_per_m = ArticleRequest::max_seam_ms_per_m;
  // A million seams of 100 m, two hundred times: 2e10 m, at a day a metre.
  for (int i = 0; i < 200; ++i) {
    ArticleSeam seam{"seam " + std::to_string(i), 1000, {"many"}, {}, {}, {}};
    seam.length.least_mm = seam.length.greatest_mm = 1e5;
    brief.own_article->seams.push_back(seam);
  }
  CHECK_THROWS_MATCHES(run(brief), Error, refused_field(ErrorCode::too_large, "article.seam_ms_per_m"));
}

TEST_CASE("a brief's own article is read from its folder, and from nowhere else", "[brief][article]") {
  const Folder folder("own-article");
  fs::copy(example("sampler"), folder.path, fs::copy_options::recursive);
  const auto choose = [&](const std::string& article, const std::string& more) {
    put(folder.path / "article.json",
        "{\"format\": \"latchwork-article-choices\", \"version\": 1, \"article\": \"" + article + "\"" + more + "}");
  };
  put(folder.path / "strap.json",
      R"({"format": "latchwork-article", "version": 1, "name": "bag strap",
          "pieces": [{"name": "strap", "count": 2, "width": {"least_mm": 80, "greatest_mm": 90},
                      "length": {"least_mm": 600, "greatest_mm": 600}}]})");
  choose("strap.json", R"(, "edge": 0, "design": {"edge_least": 1, "edge_most": 6, "rows_step": 6})");
  const Brief brief = read_brief(folder.path.string());
  REQUIRE(brief.own_article);
  CHECK(brief.own_article->name == "bag strap");
  const Job job = run(brief);
  REQUIRE(job.article);
  CHECK(job.article->works.at(0).panels == 2);
  CHECK(job.article->works.at(0).verification.verified);
  CHECK(holds(summary(brief, job), "Article        bag strap\n"));

  const auto refused = [&](ErrorCode code, const std::string& field) {
    INFO(field);
    try {
      read_brief(folder.path.string());
      FAIL_CHECK("was read");
    } catch (const Error& error) {
      CHECK(error.code() == code);
      CHECK(error.place().field == field);
      CHECK(holds(error.what(), field.substr(0, field.find(':'))));
    }
  };
  for (const char* name : {"hat", "../strap.json", "/etc/strap.json", "", ".json"}) {
    choose(name, "");
    refused(ErrorCode::bad_argument, "article.json: article");
  }
  choose("belt.json", "");
  refused(ErrorCode::io, "belt.json");
  // A number stands in the second line here: what is refused of it is told with that.
  const auto told = [&](const std::string& line) {
    try {
      read_brief(folder.path.string());
      FAIL_CHECK("was read");
    } catch (const Error& error) {
      CHECK(error.place().line == 2);
      CHECK(holds(error.what(), line));
    }
  };
  choose("scarf", ",\n \"choices\": {\"measures\": [{\"name\": \"width\", \"least_mm\": 127, \"greatest_mm\": 5}]}");
  refused(ErrorCode::bad_argument, "article.json: choices.measures[0].greatest_mm");
  told("article.json: line 2, choices.measures[0].greatest_mm: width goes up to 5 mm");
  choose("scarf",
         ",\n \"choices\": {\"measures\": [{\"name\": \"width\", \"least_mm\": \"3 kg\", \"greatest_mm\": 5}]}");
  refused(ErrorCode::bad_unit, "article.json: choices.measures[0].least_mm");
  told("article.json: line 2, choices.measures[0].least_mm: ");
  choose("scarf", ",\n \"choices\": {\"counts\": [{\"name\": \"panels\", \"count\": 2}]}");
  refused(ErrorCode::bad_argument, "article.json: choices.measures");
  told("article.json: line 2, choices.measures: give ");
  choose("strap.json", ",\n \"made\": [\"handle\"]");
  told("article.json: line 2, made[0]: 'handle' is no piece here; there are 'strap'");
  choose("hat", "");
  try {
    read_brief(folder.path.string());
  } catch (const Error& error) {
    CHECK(error.place().line == 1);
  }
  choose("strap.json", R"(, "choices": {"rule": "snug"})");
  refused(ErrorCode::bad_argument, "article.json: choices.rule");
  choose("strap.json", R"(, "groups": [{"first": 1, "last": 40}])");
  refused(ErrorCode::bad_argument, "article.json: groups[0].last");
  choose("strap.json", R"(, "made": ["handle"])");
  refused(ErrorCode::bad_argument, "article.json: made[0]");
  choose("strap.json", R"(, "design": {"rows_step": 0})");
  refused(ErrorCode::bad_value, "article.json: design.rows_step");
  for (const char* ms : {"-1", "86400001", "1.5", "1e300", "99999999999999999999"}) {
    choose("strap.json", std::string(R"(, "seam_ms_per_m": )") + ms);
    refused(ErrorCode::bad_value, "article.json: seam_ms_per_m");
  }
  put(folder.path / "strap.json", R"({"format": "latchwork-article", "version": 1, "name": "bag strap"})");
  choose("strap.json", "");
  refused(ErrorCode::missing_field, "strap.json: pieces");
}

TEST_CASE("an article that is not the brief's is refused by all that tell of it", "[brief][article][error]") {
  const Brief brief = read_brief(example("cushion").string());
  const Job job = run(brief);
  const auto refused = [&](ErrorCode code, const char* field, auto&& change) {
    INFO(field);
    Job wrong = job;
    change(wrong);
    CHECK_THROWS_MATCHES(summary(brief, wrong), Error, refused_field(code, field));
    CHECK_THROWS_MATCHES(page_html(brief, wrong), Error, refused_field(code, field));
  };
  refused(ErrorCode::size_mismatch, "job.article", [](Job& of) { of.article.reset(); });
  refused(ErrorCode::bad_argument, "job.article.fit",
          [](Job& of) { of.article->fit.pieces[0].as_it_stands.width_mm += 1; });
  refused(ErrorCode::bad_argument, "job.article.fit", [](Job& of) { of.article->fit.targets.cautions.clear(); });
  refused(ErrorCode::size_mismatch, "job.article.works", [](Job& of) { of.article->works.clear(); });
  refused(ErrorCode::bad_argument, "job.article.works[0]", [](Job& of) { of.article->works[0].panels = 2; });
  refused(ErrorCode::size_mismatch, "job.article.works[0].plan", [](Job& of) { of.article->works[0].plan = of.plan; });
  refused(ErrorCode::bad_argument, "job.article.works[0].plan.total_ms",
          [](Job& of) { of.article->works[0].plan.total_ms += 1; });
  refused(ErrorCode::bad_argument, "job.article", [](Job& of) { of.article->times.stops_ms -= 1; });
  refused(ErrorCode::bad_argument, "job.article", [](Job& of) { of.article->sewing_ms += 1; });
  refused(ErrorCode::bad_argument, "job.article", [](Job& of) { of.article->seam_mm /= 2; });
  refused(ErrorCode::bad_argument, "job.article", [](Job& of) { of.article->notes.clear(); });
  refused(ErrorCode::bad_argument, "job.article.works[0].verification", [&](Job& of) {
    Plan& plan = of.article->works[0].plan;
    const auto worked =
        std::find_if(plan.stops.begin(), plan.stops.end(), [](const Stop& stop) { return !stop.reforms.empty(); });
    worked->reforms[0].rungs[0] = Cell::slip;
    plan.total_ms = hand_work(plan, brief.effort).hand_ms + hand_work(plan).carriage_ms;
    plan.bound_ms = 0;
  });
  Brief none = brief;
  none.article.reset();
  CHECK_THROWS_MATCHES(summary(none, job), Error, refused_field(ErrorCode::size_mismatch, "job.article"));
}

namespace {
/// The sampler, with a tuck rib that one row in two leaves open, made to a piece of this length.
Brief sampler_of_length(double mm) {
  Brief brief = read_brief(example("sampler").string());
  brief.own_article = read_article(R"({"format": "latchwork-article", "version": 1, "name": "panels", "pieces": [
      {"name": "panel", "width": {"least_mm": 100, "greatest_mm": 100},
       "length": {"least_mm": 100, "greatest_mm": 100}}]})");
  brief.own_article->pieces[0].length.least_mm = brief.own_article->pieces[0].length.greatest_mm = mm;
  brief.article.emplace();
  brief.article->edge = 0;
  return brief;
}
bool bars(const std::vector<Finding>& found) {
  return std::any_of(found.begin(), found.end(), [](const Finding& each) { return each.severity == Severity::error; });
}
}  // namespace

TEST_CASE("of an article's fits the first that can be made is knitted, and why nearer ones are not is told",
          "[brief][article]") {
  int passed_over = 0;
  const std::string mark = "[cannot be made here: ";
  for (const double mm : {100.0, 104.5, 109.0, 113.5}) {
    const Brief brief = sampler_of_length(mm);
    const Job job = run(brief);
    const PieceFit& piece = job.article->fit.pieces.at(0);
    REQUIRE_FALSE(piece.fit.candidates.empty());
    const FitRequest wanted = piece_request(piece.target, panel_design(*brief.article, brief.panel));
    const auto first = std::find_if(
        piece.fit.candidates.begin(), piece.fit.candidates.end(),
        [&](const FitCandidate& each) { return !bars(findings(fitted(wanted, each).grid(), brief.machine)); });
    REQUIRE(first != piece.fit.candidates.end());
    const PieceWork& work = job.article->works.at(0);
    CHECK(work.plan.rows == first->rows);
    CHECK(work.verification.verified);
    const std::string told = summary(brief, job);
    CHECK_FALSE(holds(told, "which this machine cannot make"));
    // Of the others those that cannot be made are marked, each with what bars it.
    const auto barred = std::count_if(
        piece.fit.candidates.begin(), piece.fit.candidates.end(),
        [&](const FitCandidate& each) { return bars(findings(fitted(wanted, each).grid(), brief.machine)); });
    const Folder out("marked-others");
    write_job(brief, job, out.path.string());
    const std::string all = text_of(out.path / "article.txt");
    std::ptrdiff_t marked = 0;
    for (std::size_t at = all.find(mark); at != std::string::npos; at = all.find(mark, at + 1)) ++marked;
    CHECK(marked == barred);
    CHECK((barred == 0 || holds(all, mark + "open stack]") || holds(all, mark + "open crossing]")));
    const bool passed = first != piece.fit.candidates.begin();
    CHECK(holds(told, " nearer cannot be made, the nearest, of ") == passed);
    if (!passed) continue;
    ++passed_over;
    REQUIRE(job.article->panels.size() == 1);
    CHECK(fitted_brief(brief, job, 0).panel.grid() == fitted(wanted, *first).grid());
    CHECK(holds(told, findings(fitted(wanted, piece.fit.candidates[0]).grid(), brief.machine).at(0).message));
  }
  CHECK(passed_over > 0);
}

TEST_CASE("hours of what no machine makes are told as not known, and why", "[brief][article]") {
  Brief brief = sampler_of_length(104.5);
  brief.machine.needles = 8;
  brief.article->design.needles = 200;
  const Job job = run(brief);
  REQUIRE(job.article->works.at(0).fits);
  const Plan& plan = job.article->works[0].plan;
  REQUIRE(plan.status == PlanStatus::infeasible);
  const std::string told = summary(brief, job);
  CHECK(holds(told, ": not known: "));
  CHECK(holds(told, "cannot make: " + plan.findings.at(0).message));
  CHECK_FALSE(holds(told, "0 s by hand"));
}

TEST_CASE("the page keeps ranges of needles, crossings and counts on one line", "[brief]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  const std::string page = page_html(brief, run(brief));
  CHECK(holds(page, "<table class=\"steps\">"));
  CHECK(holds(page, "<span class=\"range\">L"));
  CHECK(holds(page, "cross\u00a0X1"));
  CHECK_FALSE(holds(page, "cross X1"));
  CHECK_FALSE(holds(page, " rows as 1"));
}

namespace {
/// The harbour cushion's panel as it stands, so many times, with or without a seam.
Brief harbour_panels(int count, bool sewn) {
  Brief brief = read_brief(example("harbour-cushion").string());
  brief.own_article = read_article(R"({"format": "latchwork-article", "version": 1, "name": "panels", "pieces": [
      {"name": "panel", "width": {"least_mm": 235, "greatest_mm": 235},
       "length": {"least_mm": 299, "greatest_mm": 299}}],
      "seams": [{"name": "side", "count": 2, "length": {"least_mm": 299, "greatest_mm": 299}}]})");
  brief.own_article->pieces[0].count = count;
  if (!sewn) brief.own_article->seams.clear();
  brief.article.emplace();
  brief.article->edge = 0;
  return brief;
}
PlanOptions quick() {
  PlanOptions out;
  out.work_limit = 1;  // how well it is planned is no matter
  return out;
}
}  // namespace

TEST_CASE("seams in a yarn of unknown number leave out the article's yarn, and a note says why",
          "[brief][article][yarn]") {
  Brief brief = harbour_panels(2, true);
  brief.yarn->yarns = {Yarn{"wool", {}, 0}};
  const Job job = run(brief, quick());
  REQUIRE(job.article);
  CHECK(job.article->works.at(0).fits);
  CHECK(job.yarn);  // without seams it is weighed
  CHECK_FALSE(job.article->yarn);
  const char* note =
      "the article's yarn is not reckoned: its seams cannot be weighed: the number of the yarn is not known";
  CHECK(std::count(job.article->notes.begin(), job.article->notes.end(), note) == 1);
  CHECK(holds(summary(brief, job), note));
  CHECK_FALSE(holds(summary(brief, job), "To buy in all"));
  // Nothing to sew: nothing that cannot be weighed.
  brief = harbour_panels(2, false);
  brief.yarn->yarns = {Yarn{"wool", {}, 0}};
  const Job flat = run(brief, quick());
  REQUIRE(flat.article);
  CHECK(flat.article->yarn);
  CHECK(holds(summary(brief, flat), "To buy in all  wool: "));
}

TEST_CASE("an article that takes more yarn than is reckoned has none, and a note says why", "[brief][article][yarn]") {
  Brief brief = harbour_panels(1000, false);
  for (WeighedSwatch& each : brief.yarn->weighed) each.weight_g = 1e6;
  const Job job = run(brief, quick());
  REQUIRE(job.article);
  CHECK(job.article->works.at(0).panels == 1000);
  CHECK(job.yarn);
  CHECK_FALSE(job.article->yarn);
  CHECK(holds(summary(brief, job), "article  the article's yarn is not reckoned: a need of "));
}

TEST_CASE("the others of a piece are its own, whatever another is called", "[brief][article]") {
  Brief brief = read_brief(example("sampler").string());
  brief.own_article = read_article(R"({"format": "latchwork-article", "version": 1, "name": "panels", "pieces": [
      {"name": "panel", "width": {"least_mm": 100, "greatest_mm": 100},
       "length": {"least_mm": 100, "greatest_mm": 100}},
      {"name": "panel, long", "width": {"least_mm": 100, "greatest_mm": 100},
       "length": {"least_mm": 300, "greatest_mm": 300}}]})");
  brief.article.emplace();
  brief.article->edge = 0;
  const Job job = run(brief, quick());
  REQUIRE(job.article);
  const Folder folder("others");
  write_job(brief, job, folder.path.string());
  const std::string text = text_of(folder.path / "article.txt");
  const std::size_t at = text.find("\npanel, long: ");
  REQUIRE(at != std::string::npos);
  const auto told = [](const FitCandidate& each) { return " columns x " + std::to_string(each.rows) + " rows ("; };
  const auto& all = job.article->fit.pieces.at(0).fit.candidates;
  const auto& all_long = job.article->fit.pieces.at(1).fit.candidates;
  REQUIRE(all.size() > 1);
  REQUIRE(all_long.size() > 1);
  for (const FitCandidate& each : all) {
    CHECK(holds(text.substr(0, at), told(each)));
    CHECK_FALSE(holds(text.substr(at), told(each)));
  }
  for (const FitCandidate& each : all_long) CHECK(holds(text.substr(at), told(each)));
}

TEST_CASE("of a yarn that knits no row there is nothing to buy: 0 g", "[brief][yarn]") {
  Brief brief = read_brief(example("harbour-cushion").string());
  brief.article.reset();
  brief.yarn->yarns.push_back(brief.yarn->yarns.front());
  brief.yarn->yarns.back().name = "unused";
  brief.yarn->rows = {{1, 0, 0}};
  const Job job = run(brief, quick());
  const std::string told = summary(brief, job);
  CHECK(holds(told, "\nTo buy         unused: 0 g\n"));
  CHECK_FALSE(holds(told, "under 0.1 g"));
  CHECK(holds(page_html(brief, job), "<td>unused: 0 g</td>"));
}

}  // namespace brief_article_test
