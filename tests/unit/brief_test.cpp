#include "latchwork/brief.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <thread>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/file.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/quantity.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/yarn_need.hpp"
#include "text.hpp"

namespace brief_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::refused_field;
using latchwork_test::sampler;
using latchwork_test::text_of;
namespace fs = std::filesystem;

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

TEST_CASE("the same brief gives the same job, byte for byte", "[brief]") {
  const Brief brief = sampler();
  CHECK(page_html(brief, run(brief)) == page_html(brief, run(brief)));
}

TEST_CASE("a texture that was not measured leaves out the size and nothing else, and is told", "[brief]") {
  Brief brief = sampler();
  brief.swatch =
      Swatch({{"stockinette", Counted::stitches, 15, 100, "left"}, {"stockinette", Counted::rows, 21, 100, "left"}});
  const Job whole = run(sampler());
  CHECK(whole.missing.empty());
  const Job job = run(brief);
  CHECK_FALSE(job.size);
  CHECK(job.plan == whole.plan);
  CHECK(job.findings == whole.findings);
  CHECK(job.verification.verified);
  std::set<std::string> textures;
  for (const Finding& finding : job.missing) {
    CHECK(finding.code == FindingCode::no_swatch);
    textures.insert(finding.place.field);
  }
  CHECK(textures.count("tuck rib 1") == 1);
  CHECK(textures.count("stockinette") == 0);
  // What one would write, and where: the columns of the swatch file.
  const std::string told = summary(brief, job);
  CHECK(holds(told, "Size           not known: no gauge of 'tuck rib 1'"));
  CHECK(holds(told, "missing  texture 'tuck rib 1' has no gauge: it was not measured."));
  CHECK(holds(told, "swatch.csv"));
  CHECK(holds(told, "Plan           verified"));
  const std::string page = page_html(brief, job);
  CHECK(holds(page, "id=\"steps\""));
  CHECK(holds(page, "id=\"operator\""));
  CHECK_FALSE(holds(page, "Sizes by strip"));
  CHECK_FALSE(holds(page, "id=\"schematic\""));
  Job spoiled = job;
  spoiled.size = whole.size;
  CHECK_THROWS_MATCHES(summary(brief, spoiled), Error, refused_field(ErrorCode::size_mismatch, "job.size"));
  spoiled = job;
  spoiled.missing.clear();
  CHECK_THROWS_MATCHES(summary(brief, spoiled), Error, refused_field(ErrorCode::bad_argument, "job.missing"));
  spoiled = whole;
  spoiled.size.reset();
  CHECK_THROWS_MATCHES(summary(sampler(), spoiled), Error, refused_field(ErrorCode::size_mismatch, "job.size"));
}

TEST_CASE("an article without its gauges is not fitted, and its cautions are told all the same", "[brief][article]") {
  Brief brief = read_brief(std::string(LATCHWORK_EXAMPLES_DIR) + "/briefs/cushion");
  REQUIRE(brief.article);
  brief.article->design.state = ClothState::washed;  // measured rested
  const Job job = run(brief);
  CHECK(job.size);
  CHECK_FALSE(job.article);
  CHECK_FALSE(job.missing.empty());
  CHECK(holds(summary(brief, job), "Article        cushion cover, not fitted: a gauge is missing, see below\n"));
  CHECK(holds(page_html(brief, job), "not fitted: a gauge is missing"));
  for (const Caution& caution : targets(built_in_article(brief.article->article), brief.article->choices).cautions) {
    CHECK(holds(summary(brief, job), caution.text));
  }
  CHECK(holds(summary(brief, job), "in the column 'state'"));
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
  CHECK(holds(page, "<tr><td>1-6, 8-13</td><td class=\"name\">stockinette</td><td class=\"n\">4</td>"));
  CHECK(holds(page, "<tr><td>1-6, 8-13</td><td class=\"name\">reverse</td>"));
  CHECK(holds(page, "<tr><td>7</td><td class=\"name\">stockinette</td><td class=\"n\">8</td>"));
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
  CHECK(holds(page_html(brief, job), "<th scope=\"row\">To buy</th>"));

  brief.yarn.reset();
  const Job without = run(brief);
  CHECK_FALSE(without.yarn);
  CHECK_FALSE(holds(summary(brief, without), "Yarn"));
}

TEST_CASE("a spread that no swatch tells is not told as 0", "[brief]") {
  Brief brief = sampler();
  std::vector<Measurement> once;
  for (const std::string& texture : brief.swatch.textures()) {
    once.push_back({texture, Counted::stitches, 15, 100, ""});
    once.push_back({texture, Counted::rows, 21, 100, ""});
  }
  brief.swatch = Swatch(once);
  CHECK(holds(summary(brief, run(brief)), "rested; spread not known\n"));
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
  CHECK(job.size->widest_columns == 25);
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
  CHECK(holds(page_html(brief, job), "<th scope=\"row\">Conditions</th>"));
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

}  // namespace brief_test
