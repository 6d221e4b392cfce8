#include "latchwork/brief.hpp"

#include <chrono>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>
#include <map>
#include <string>
#include <thread>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/file.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/quantity.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/yarn_need.hpp"
#include "text.hpp"

using namespace latchwork;
using latchwork_test::holds;
using latchwork_test::refused_field;
namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void put(const fs::path& path, const std::string& text) {
  std::ofstream file(path, std::ios::binary);
  file << text;
}

fs::path example(const std::string& name) {
  return fs::path(LATCHWORK_EXAMPLES_DIR) / "briefs" / name;
}

/// A folder of its own for one test, gone afterwards.
struct Folder {
  fs::path path;
  explicit Folder(const std::string& name) : path(fs::temp_directory_path() / ("latchwork-" + name)) {
    fs::remove_all(path);
    fs::create_directories(path);
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
};

Brief sampler() {
  return read_brief(example("sampler").string());
}

}  // namespace

TEST_CASE("each example brief gives the outputs that stand beside it, verified", "[brief]") {
  const std::string name = GENERATE(as<std::string>(), "sampler", "cushion", "harbour-cushion");
  INFO(name << ": sh tests/golden/renew.sh writes them anew; read the difference before it is kept");
  const Brief brief = read_brief(example(name).string());
  const Job job = run(brief);
  CHECK(job.verification.verified);
  CHECK(job.plan.status == PlanStatus::optimal);
  CHECK(job.plan.total_ms == job.plan.bound_ms);
  CHECK(job.regular_verification.verified);
  CHECK(job.regular.total_ms >= job.plan.total_ms);
  const fs::path expected = example(name) / "expected";
  CHECK(summary(brief, job) == text_of(expected / "summary.txt"));
  CHECK(instructions(brief.panel, job.plan, brief.machine) == text_of(expected / "instructions.txt"));
  CHECK(write(job.plan) == text_of(expected / "plan.json"));
  // Charts and pages stand beside some only: a picture of each would make long differences.
  const std::map<std::string, std::vector<std::string>> drawn = {
      {"sampler", {"chart-operator.svg", "chart-rs.svg", "chart.txt", "page.html", "schematic.svg"}},
      {"cushion", {"article.txt", "chart-rs.svg"}},
      {"harbour-cushion", {"article.txt", "chart.txt"}}};
  const Folder folder("outputs");
  write_job(brief, job, folder.path.string());
  for (const std::string& file : drawn.at(name)) {
    INFO(file);
    CHECK(text_of(folder.path / file) == text_of(expected / file));
  }
}

TEST_CASE("a job is written as eight files that hold what the functions give", "[brief]") {
  const Folder folder("job");
  const Brief brief = sampler();
  const Job job = run(brief);
  const fs::path out = folder.path / "new" / "deep";
  write_job(brief, job, out.string());
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(out)) names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  CHECK(names == std::vector<std::string>{"chart-operator.svg", "chart-rs.svg", "chart.txt", "instructions.txt",
                                          "page.html", "plan.json", "schematic.svg", "summary.txt"});
  CHECK(text_of(out / "summary.txt") == summary(brief, job));
  CHECK(text_of(out / "page.html") == page_html(brief, job));
  CHECK(text_of(out / "instructions.txt") == instructions(brief.panel, job.plan, brief.machine));
  CHECK(read_plan(text_of(out / "plan.json")) == job.plan);
  CHECK(holds(text_of(out / "chart-operator.svg"), "wrong side (WS)"));
}

TEST_CASE("the same brief gives the same job, byte for byte", "[brief]") {
  const Brief brief = sampler();
  CHECK(page_html(brief, run(brief)) == page_html(brief, run(brief)));
}

TEST_CASE("a brief without a file is refused with the file's name", "[brief][error]") {
  const std::string missing = GENERATE(as<std::string>(), "panel.json", "swatch.csv", "machine.json");
  const Folder folder("missing");
  for (const char* name : {"panel.json", "swatch.csv", "machine.json"}) {
    if (name != missing) fs::copy_file(example("sampler") / name, folder.path / name);
  }
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused_field(ErrorCode::io, missing));
  fs::create_directory(folder.path / missing);  // a folder in its place is no better
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, refused_field(ErrorCode::io, missing));
}

TEST_CASE("what a reader refuses is told with the file's name before the field", "[brief][error]") {
  const Folder folder("spoiled");
  for (const char* name : {"panel.json", "swatch.csv", "machine.json"}) {
    fs::copy_file(example("sampler") / name, folder.path / name);
  }
  put(folder.path / "machine.json", "{\"format\": \"latchwork-machine\", \"version\": 1,\n \"needles\": 1}\n");
  try {
    read_brief(folder.path.string());
    FAIL("a bed of one needle was taken");
  } catch (const Error& error) {
    CHECK(error.place().line == 2);
    CHECK(error.place().field == "machine.json: needles");
    CHECK(std::string(error.what()).starts_with("machine.json: "));
  }
  put(folder.path / "machine.json", "");
  try {
    read_brief(folder.path.string());
    FAIL("an empty machine file was taken");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::bad_syntax);
    CHECK(error.place().field == "machine.json");
  }
}

TEST_CASE("a texture that was not measured stops the job with its name", "[brief][error]") {
  Brief brief = sampler();
  brief.swatch =
      Swatch({{"stockinette", Counted::stitches, 15, 100, "left"}, {"stockinette", Counted::rows, 21, 100, "left"}});
  CHECK_THROWS_MATCHES(run(brief), Error, refused_field(ErrorCode::no_gauge, "tuck rib 1"));
}

TEST_CASE("a job cannot be written where a file stands in the folder's place", "[brief][error]") {
  const Folder folder("blocked");
  const fs::path file = folder.path / "taken";
  put(file, "something else");
  const Brief brief = sampler();
  const Job job = run(brief);
  CHECK_THROWS_MATCHES(write_job(brief, job, file.string()), Error, refused_field(ErrorCode::io, "folder"));
  CHECK(text_of(file) == "something else");
  fs::create_directories(folder.path / "half" / "plan.json");
  CHECK_THROWS_MATCHES(write_job(brief, job, (folder.path / "half").string()), Error,
                       refused_field(ErrorCode::io, "plan.json"));
  for (const auto& entry : fs::directory_iterator(folder.path / "half")) {
    CHECK(entry.path().extension() != ".part");
  }
}

TEST_CASE("a folder's name that names none is refused as that argument", "[brief][error]") {
  const Brief brief = sampler();
  const Job job = run(brief);
  for (const std::string& name : {std::string(), std::string("out\0side", 8)}) {
    CHECK_THROWS_MATCHES(read_brief(name), Error, refused_field(ErrorCode::bad_argument, "folder"));
    CHECK_THROWS_MATCHES(write_job(brief, job, name), Error, refused_field(ErrorCode::bad_argument, "folder"));
  }
  CHECK_FALSE(fs::exists("out"));
}

TEST_CASE("the page's sizes name the rows of each strip's bands, each strip told once", "[brief]") {
  Brief brief = sampler();
  const std::string one_band = page_html(brief, run(brief));
  CHECK_FALSE(holds(one_band, "<th>Rows</th>"));
  const std::vector<Strip> rib{stockinette(4), reverse(4)};
  const std::vector<Strip> plain{stockinette(8)};
  const Panel lower = join_strips("p", 6, rib);
  brief.panel = lower.above(join_strips("p", 1, plain).above(lower));
  const std::string page = page_html(brief, run(brief));
  CHECK(holds(page, "<th>Rows</th><th>Strip</th><th class=\"n\">Columns</th>"));
  CHECK(holds(page, "<tr><td>1-6, 8-13</td><td>stockinette</td><td class=\"n\">4</td>"));
  CHECK(holds(page, "<tr><td>1-6, 8-13</td><td>reverse</td>"));
  CHECK(holds(page, "<tr><td>7</td><td>stockinette</td><td class=\"n\">8</td>"));
}

TEST_CASE("a brief with yarns tells what it takes and what to buy, and one without says nothing of it",
          "[brief][yarn]") {
  Brief brief = read_brief(example("harbour-cushion").string());
  REQUIRE(brief.yarn);
  brief.yarn->pieces = 12;
  const Job job = run(brief);
  const YarnNeed need = yarn_need(brief.panel, brief.swatch, *brief.yarn);
  REQUIRE(job.yarn);
  CHECK(*job.yarn == need);
  REQUIRE(need.estimates.size() == 2);
  const int balls = need.estimates.at(static_cast<std::size_t>(need.decides)).shares[0].balls;
  CHECK(balls > 5);
  CHECK(holds(summary(brief, job), "Decided by     " + need.why + "\n"));
  CHECK(holds(summary(brief, job), std::to_string(balls) + " balls of 25 g"));
  CHECK(holds(summary(brief, job), "12 panels"));
  CHECK(holds(page_html(brief, job), "<dt>To buy</dt>"));

  brief.yarn.reset();
  const Job without = run(brief);
  CHECK_FALSE(without.yarn);
  CHECK_FALSE(holds(summary(brief, without), "Yarn"));
}

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
  // Front and back of a seamed cover, which nothing fits: two of the panel as it stands.
  REQUIRE(job.article->works.size() == 2);
  CHECK_FALSE(job.article->works[0].fits);
  CHECK(job.article->works[1].plan == job.plan);
  CHECK(job.article->hand_ms == 2 * hand_work(job.plan, brief.effort).hand_ms);
  YarnRequest both = *brief.yarn;
  both.pieces = 2;
  both.seam_mm = 4 * 300;  // two sides, lower and upper
  const YarnNeed need = yarn_need(brief.panel, brief.swatch, both);
  REQUIRE(job.article->yarn);
  CHECK(job.article->yarn->estimates.at(0).weight_g == latchwork_test::Approx(need.estimates.at(0).weight_g));
  CHECK(job.article->yarn->estimates.at(0).spread_g == latchwork_test::Approx(need.estimates.at(0).spread_g));
  CHECK(job.article->yarn->estimates.at(0).shares.at(0).buy_g ==
        latchwork_test::Approx(need.estimates.at(0).shares.at(0).buy_g));
  const std::string told = summary(brief, job);
  CHECK(holds(told, "Article        cushion cover\n"));
  CHECK(holds(told, "Piece          front, back: 30.0 x 30.0 cm\n"));
  CHECK(holds(told, "nothing fits; nearest 1 panel of 89 columns x 128 rows"));
  CHECK(holds(told, "caution  Up to one year a baby sleeps on a firm flat surface"));
  const std::string page = page_html(brief, job);
  CHECK(holds(page, "<h3 id=\"article\">What it is for</h3>"));
  CHECK(holds(page, "<td>front, back</td><td>30.0 x 30.0 cm</td>"));
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
  CHECK(job.article->hand_ms == hand_work(work.plan, brief.effort).hand_ms);
  CHECK(holds(summary(brief, job), "2 pieces not made as this panel are in none of these figures"));
  const Folder folder("article");
  write_job(brief, job, folder.path.string());
  const std::string text = text_of(folder.path / "article.txt");
  CHECK(holds(text, "  as it stands   35.9 x 37.8 cm"));
  CHECK(holds(text, "Where the figures come from\n  list 'covers, UK': britishwholesales.co.uk"));
  CHECK(holds(text, "Cautions\n  Up to one year"));
  brief.article.reset();
  const Job without = run(brief);
  CHECK_FALSE(without.article);
  CHECK_FALSE(holds(summary(brief, without), "Article"));
  write_job(brief, without, folder.path.string());
  CHECK_FALSE(fs::exists(folder.path / "article.txt"));
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
  choose("strap.json", R"(, "choices": {"rule": "snug"})");
  refused(ErrorCode::bad_argument, "article.json: choices.rule");
  choose("strap.json", R"(, "groups": [{"first": 1, "last": 40}])");
  refused(ErrorCode::bad_argument, "article.json: groups[0].last");
  choose("strap.json", R"(, "made": ["handle"])");
  refused(ErrorCode::bad_argument, "article.json: made[0]");
  choose("strap.json", R"(, "design": {"rows_step": 0})");
  refused(ErrorCode::bad_value, "article.json: design.rows_step");
  put(folder.path / "strap.json", R"({"format": "latchwork-article", "version": 1, "name": "bag strap"})");
  choose("strap.json", "");
  refused(ErrorCode::bad_argument, "strap.json: pieces");
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
  refused(ErrorCode::bad_argument, "job.article", [](Job& of) { of.article->hand_ms -= 1; });
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

TEST_CASE("a yarn file that is refused is told with its name", "[brief][yarn][error]") {
  const Folder folder("brief-yarn");
  fs::copy(example("sampler"), folder.path, fs::copy_options::recursive);
  put(folder.path / "yarn.json", R"({"format": "latchwork-yarn", "version": 1, "yarns": [{"number": "2/28"}]})");
  Place place;
  place.line = 1;
  place.character = 5;
  place.field = "yarn.json: yarns[0].number";
  CHECK_THROWS_MATCHES(read_brief(folder.path.string()), Error, latchwork_test::refused(ErrorCode::bad_unit, place));
}

TEST_CASE("a spread that no swatch tells is not told as 0", "[brief]") {
  Brief brief = sampler();
  std::vector<Measurement> once;
  for (const std::string& texture : brief.swatch.textures()) {
    once.push_back({texture, Counted::stitches, 15, 100, ""});
    once.push_back({texture, Counted::rows, 21, 100, ""});
  }
  brief.swatch = Swatch(once);
  CHECK(holds(summary(brief, run(brief)), "relaxed; spread not known\n"));
  once.push_back({once.front().texture, Counted::stitches, 16, 100, ""});
  brief.swatch = Swatch(once);
  CHECK(holds(summary(brief, run(brief)), ", or more\n"));
}

TEST_CASE("a shaped panel's size is that of its rows, and its chart's cells are a stitch wide", "[brief]") {
  // 20 stitches and 30 rows per 10 cm: 20 columns at the cast-on, 25 at the widest, 15 at the last row.
  Brief brief = sampler();
  brief.panel = Panel("leaf", Strip{"plain", "plain", Grid(30, 40)});
  const EdgeShape edge{.start = 10, .events = {{4, -1, 2, 5}, {20, 1, 2, 5}}};
  const EdgeShape straight{.start = 10, .events = {{22, 5}}};
  brief.panel = shaped(brief.panel, outlined(30, 40, edge, straight));
  brief.swatch = Swatch({{"plain", Counted::stitches, 20, 100, ""}, {"plain", Counted::rows, 30, 100, ""}});
  const Job job = run(brief);
  CHECK(job.size.widest_columns == 25);
  const std::string words = summary(brief, job);
  CHECK(holds(words, "12.5 cm wide at the widest row (10.0 cm at the cast-on, 7.5 cm at the last row) x 10.0 cm high"));
  const std::string page = page_html(brief, job);
  CHECK(holds(page, "12.5 cm wide at the widest row"));
  brief.panel = Panel("straight", Strip{"plain", "plain", Grid(30, 40)});
  CHECK(holds(summary(brief, run(brief)), "20.0 cm wide x 10.0 cm high"));
}

TEST_CASE("the page tells what cannot be made before its steps, though there is a plan", "[brief]") {
  Brief brief = sampler();
  brief.machine.prongs = {1};
  const Job job = run(brief);
  REQUIRE(job.plan.status != PlanStatus::infeasible);
  const std::string page = page_html(brief, job);
  const std::size_t steps = page.find("id=\"steps\"");
  const std::size_t told = page.find("Cannot be made on this machine as it stands", steps);
  REQUIRE(told != std::string::npos);
  CHECK(told < page.find("Abbreviations", steps));
  CHECK(page.find("have 2-pronged tools at hand", told) < page.find("Abbreviations", told));
}

TEST_CASE("a panel that cannot be made has no plan, and every output says so and why", "[brief]") {
  Brief brief = sampler();
  brief.machine.needles = 8;  // the panel has 11 stitches
  const Job job = run(brief);
  REQUIRE(job.plan.status == PlanStatus::infeasible);
  CHECK_FALSE(job.verification.verified);
  const std::string text = summary(brief, job);
  CHECK(holds(text, "cannot be made as it stands"));
  CHECK_FALSE(holds(text, "verified"));
  const std::string page = page_html(brief, job);
  CHECK(holds(page, "This panel cannot be made on this machine as it stands"));
  CHECK_FALSE(holds(page, "lw-stop\""));
  REQUIRE_FALSE(job.plan.findings.empty());
  CHECK(holds(text, job.plan.findings.front().message));
}

TEST_CASE("a spoiled plan is never called verified", "[brief]") {
  const Brief brief = sampler();
  Job job = run(brief);
  job.plan.stops.pop_back();
  job.plan.total_ms = hand_work(job.plan, brief.effort).hand_ms + hand_work(job.plan).carriage_ms;
  job.plan.bound_ms = 0;
  job.verification = verify(brief.panel.grid(), job.plan);
  const std::string text = summary(brief, job);
  CHECK(holds(text, "NOT verified: " + job.verification.message));
}

TEST_CASE("a plan under conditions and the one without them share a time limit", "[brief][limits]") {
  Brief brief = sampler();
  brief.panel = Panel("p", Strip{"plain", "plain", latchwork_test::distinct_panel(24, 120, 3)});
  brief.swatch = Swatch({{"plain", Counted::stitches, 20, 100, ""}, {"plain", Counted::rows, 30, 100, ""}});
  PlanOptions options;
  options.conditions.max_depth = 8;
  REQUIRE(run(brief, options).unconditioned.status == PlanStatus::optimal);
  // Whoever is told of the first plan takes all the time there is. The second has 1 ms then, which is over when its
  // own first word was heard; with the whole limit anew it would be proven.
  options.time_limit_ms = 300;
  bool first = false;
  bool second = false;
  options.progress = [&](const Progress& progress) {
    const bool late = progress.share > 0.5;
    bool& heard = late ? second : first;
    if (!heard) std::this_thread::sleep_for(std::chrono::milliseconds(late ? 2 : options.time_limit_ms + 1));
    heard = true;
  };
  const Job job = run(brief, options);
  CHECK(first);
  CHECK(job.plan.status == PlanStatus::feasible);
  CHECK(job.unconditioned.status == PlanStatus::feasible);
  CHECK(job.verification.verified);
}

TEST_CASE("the conditions that were asked of a plan are told beside it, with their price", "[brief]") {
  const auto rounded = [](std::int64_t ms) { return rounded_duration_text({ms}); };
  const Brief brief = sampler();
  CHECK_FALSE(holds(summary(brief, run(brief)), "Conditions"));
  PlanOptions options;
  options.conditions.rows_apart = 3;
  options.conditions.closed_rows = {5, 7};
  options.conditions.forced_exempt = true;
  options.conditions.max_depth = 8;
  options.conditions.rhythms = {
      {.row = 1, .first_column = 0, .last_column = 1, .rhythm = Rhythm{.every = 4, .first = 2}}};
  const Job job = run(brief, options);
  REQUIRE(job.plan.status == PlanStatus::optimal);
  CHECK(job.conditions == options.conditions);
  const std::string told = summary(brief, job);
  CHECK(holds(told,
              "Conditions     stops 3 rows apart or more; no stop after rows 5, 7 (these do not bind stops that "
              "crossings or shapings force); no re-form deeper than 8 rows; what stands in columns 0 to 1 in row 1 "
              "re-formed every 4 rows from RC 002\n"));
  CHECK(told.find("Conditions") == told.rfind("Conditions"));
  CHECK(holds(told, "proven to take the least hand work that keeps the conditions"));
  const Job plain = run(brief);
  CHECK(plain.unconditioned == plain.plan);
  CHECK(job.unconditioned == plain.plan);
  REQUIRE(job.plan.total_ms > plain.plan.total_ms);
  CHECK(holds(told, "Their price    " + rounded(job.plan.total_ms - plain.plan.total_ms) +
                        " more than the least plan without them, " + rounded(plain.plan.total_ms) + "\n"));
  CHECK(holds(page_html(brief, job), "<dt>Conditions</dt>"));
  Job kinds = job;
  kinds.conditions = {};
  // Not proven: within what the bounds leave open.
  kinds.conditions.rows_apart = 3;
  kinds.conditions.forced_exempt = true;
  kinds.unconditioned.status = PlanStatus::feasible;
  kinds.unconditioned.bound_ms -= 300'000;
  CHECK(holds(summary(brief, kinds), "more by the best plans found, with them and without; not proven: between " +
                                         rounded(job.plan.total_ms - plain.plan.total_ms) + " and " +
                                         rounded(job.plan.total_ms - plain.plan.total_ms + 300'000) + "\n"));
  kinds.unconditioned = kinds.plan;
  CHECK(holds(summary(brief, kinds), "Their price    nothing: no plan without them takes less\n"));
  kinds.unconditioned.total_ms += 1;
  CHECK_THROWS_MATCHES(summary(brief, kinds), Error,
                       refused_field(ErrorCode::bad_argument, "job.unconditioned.total_ms"));
  kinds.unconditioned = kinds.plan;
  PlanOptions impossible;
  impossible.conditions.carriage_right_only = true;
  impossible.conditions.closed_rows = {0, 1, 2, 3, 4, 5, 6, 7, 8};
  const Job none = run(brief, impossible);
  REQUIRE(none.plan.status == PlanStatus::infeasible);
  CHECK(holds(summary(brief, none),
              "Their price    no plan keeps them; without them the least plan takes " + rounded(plain.plan.total_ms)));
  kinds.conditions = {};
  kinds.conditions.max_kinds = 50;
  kinds.conditions.rhythms = {{.row = 1, .first_column = 2, .last_column = 2, .rhythm = {}}};
  CHECK(holds(summary(brief, kinds),
              "at most 50 kinds of stop; what stands in column 2 in row 1 re-formed in one "
              "rhythm\n"));
  // Conditions that the plan does not keep are not told as if it did.
  kinds.conditions = {};
  kinds.conditions.max_kinds = 1;
  CHECK_THROWS_MATCHES(summary(brief, kinds), Error, refused_field(ErrorCode::bad_argument, "job.plan"));
  kinds.conditions = {};
  kinds.conditions.carriage_right_only = true;
  kinds.plan = run(brief).plan;
  kinds.regular.status = PlanStatus::infeasible;
  kinds.regular_verification = {};
  const bool left = std::any_of(kinds.plan.stops.begin(), kinds.plan.stops.end(),
                                [](const Stop& stop) { return !stop.carriage_right; });
  REQUIRE(left);
  CHECK_THROWS_MATCHES(summary(brief, kinds), Error, refused_field(ErrorCode::bad_argument, "job.plan"));
}

TEST_CASE("a job is told of with its own brief alone", "[brief][error]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  const Job job = run(brief);
  REQUIRE(job.yarn);
  REQUIRE(job.size.strips.size() > 2);
  const auto refused_everywhere = [](const Brief& with, const Job& spoiled, ErrorCode code, const std::string& field) {
    INFO(field);
    const Folder folder("mismatch");
    CHECK_THROWS_MATCHES(summary(with, spoiled), Error, refused_field(code, field));
    CHECK_THROWS_MATCHES(page_html(with, spoiled), Error, refused_field(code, field));
    CHECK_THROWS_MATCHES(write_job(with, spoiled, folder.path.string()), Error, refused_field(code, field));
    CHECK(fs::is_empty(folder.path));
  };
  refused_everywhere(sampler(), job, ErrorCode::size_mismatch, "job.plan");
  Job spoiled = job;
  ++spoiled.regular.columns;
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch, "job.regular");
  spoiled = job;
  spoiled.regular.total_ms = std::numeric_limits<std::int64_t>::min();
  refused_everywhere(brief, spoiled, ErrorCode::bad_argument, "job.regular.total_ms");
  spoiled = job;
  spoiled.size.strips[1].band = 1'000'000;
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch, "job.size.strips[1]");
  spoiled = job;
  spoiled.size.strips.pop_back();
  const std::string last = "job.size.strips[" + std::to_string(spoiled.size.strips.size()) + "]";
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch, last);
  spoiled = job;
  spoiled.size.strips.push_back(spoiled.size.strips.back());
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch,
                     "job.size.strips[" + std::to_string(job.size.strips.size()) + "]");
  spoiled = job;
  spoiled.yarn.reset();
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch, "job.yarn");
  Brief two_yarns = brief;
  two_yarns.yarn->yarns.push_back(two_yarns.yarn->yarns.front());
  refused_everywhere(two_yarns, job, ErrorCode::size_mismatch, "job.yarn.estimates[0].shares");
  spoiled = job;
  spoiled.yarn->decides = 1 - spoiled.yarn->decides;
  refused_everywhere(brief, spoiled, ErrorCode::bad_argument, "job.yarn.decides");
  spoiled = job;
  spoiled.findings.emplace_back();
  spoiled.findings.back().severity = static_cast<Severity>(7);
  refused_everywhere(brief, spoiled, ErrorCode::bad_argument,
                     "job.findings[" + std::to_string(job.findings.size()) + "].severity");
}

TEST_CASE("what is called verified is so of this panel on this machine", "[brief][error]") {
  const Brief brief = sampler();
  const Job job = run(brief);
  const Grid& grid = brief.panel.grid();
  Brief plain = brief;
  plain.panel = Panel("Plain", Grid(grid.rows(), grid.columns()),
                      std::vector<Band>(brief.panel.bands().begin(), brief.panel.bands().end()));
  CHECK_THROWS_MATCHES(summary(plain, job), Error, refused_field(ErrorCode::bad_argument, "job.verification"));
  Brief moved = brief;
  moved.machine.leftmost = 5;
  CHECK_THROWS_MATCHES(page_html(moved, job), Error, refused_field(ErrorCode::bad_argument, "job.plan.leftmost"));
  Job spoiled = job;
  const auto worked = std::find_if(spoiled.plan.stops.begin(), spoiled.plan.stops.end(),
                                   [](const Stop& stop) { return !stop.reforms.empty(); });
  REQUIRE(worked != spoiled.plan.stops.end());
  worked->reforms[0].rungs[0] = Cell::slip;
  spoiled.plan.total_ms = hand_work(spoiled.plan, brief.effort).hand_ms + hand_work(spoiled.plan).carriage_ms;
  spoiled.plan.bound_ms = 0;
  CHECK_THROWS_MATCHES(summary(brief, spoiled), Error, refused_field(ErrorCode::bad_argument, "job.verification"));
  Brief other = brief;
  other.effort.stop += 1000;
  CHECK_THROWS_MATCHES(summary(other, job), Error, refused_field(ErrorCode::bad_argument, "job.plan.total_ms"));
  spoiled = job;
  spoiled.plan.bound_ms = spoiled.plan.total_ms + 1;
  CHECK_THROWS_MATCHES(summary(brief, spoiled), Error, refused_field(ErrorCode::bad_argument, "job.plan.bound_ms"));
  other = brief;
  other.machine.carriage_starts_right = !other.machine.carriage_starts_right;
  CHECK_THROWS_MATCHES(summary(other, job), Error,
                       refused_field(ErrorCode::bad_argument, "job.plan.carriage_starts_right"));
  other = brief;
  other.machine.prongs = {1};
  CHECK_THROWS_MATCHES(summary(other, job), Error, refused_field(ErrorCode::bad_argument, "job.findings"));
}

TEST_CASE("what cannot be written leaves the folder as it was", "[brief][error]") {
  const Brief brief = sampler();
  const Job job = run(brief);
  const Folder folder("delivery");
  put(folder.path / "chart-rs.svg", "from before");
  fs::create_directories(folder.path / "page.html");
  CHECK_THROWS_MATCHES(write_job(brief, job, folder.path.string()), Error, refused_field(ErrorCode::io, "page.html"));
  CHECK(text_of(folder.path / "chart-rs.svg") == "from before");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 2);
  fs::remove(folder.path / "page.html");
  write_job(brief, job, folder.path.string());
  CHECK(text_of(folder.path / "chart-rs.svg") != "from before");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 8);
}

TEST_CASE("a folder whose name is no text is named in the error as far as it is one", "[brief][error]") {
  CHECK_THROWS_MATCHES(read_brief("no\xFFwhere"), Error, refused_field(ErrorCode::io, "panel.json"));
  CHECK_THROWS_WITH(read_brief("no\xFFwhere"),
                    Catch::Matchers::StartsWith("panel.json: no?where") || Catch::Matchers::StartsWith("no?where"));
}

TEST_CASE("progress of the whole job never falls and ends near one", "[brief]") {
  const Brief brief = sampler();
  double last = 0;
  PlanOptions options;
  options.progress = [&](const Progress& progress) {
    CHECK(progress.share >= last);
    last = progress.share;
  };
  run(brief, options);
  CHECK(last <= 1.0);
  CHECK(last > 0.5);
}
