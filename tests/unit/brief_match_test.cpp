#include "latchwork/brief.hpp"

#include <algorithm>
#include <filesystem>
#include <limits>
#include <string>
#include <vector>

#include "brief_folder.hpp"
#include "catch.hpp"
#include "latchwork/wale.hpp"
#include "text.hpp"

namespace brief_match_test {

using namespace latchwork;
using latchwork_test::example;
using latchwork_test::Folder;
using latchwork_test::holds;
using latchwork_test::refused_field;
using latchwork_test::rested_too;
using latchwork_test::sampler;
namespace fs = std::filesystem;

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

TEST_CASE("a job is told of with its own brief alone", "[brief][error]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  const Job job = run(brief);
  REQUIRE(job.yarn);
  REQUIRE(job.size->strips.size() > 2);
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
  spoiled.size->strips[1].band = 1'000'000;
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch, "job.size.strips[1]");
  spoiled = job;
  spoiled.size->strips.pop_back();
  const std::string last = "job.size.strips[" + std::to_string(spoiled.size->strips.size()) + "]";
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch, last);
  spoiled = job;
  spoiled.size->strips.push_back(spoiled.size->strips.back());
  refused_everywhere(brief, spoiled, ErrorCode::size_mismatch,
                     "job.size.strips[" + std::to_string(job.size->strips.size()) + "]");
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

TEST_CASE("size and yarn of a job are told with the state, the swatch and the yarns that they come of alone",
          "[brief][error]") {
  Brief brief = read_brief(example("harbour-cushion").string());
  brief.article.reset();
  brief.swatch = rested_too(brief.swatch, 0.5);
  PlanOptions quick;
  quick.work_limit = 1;  // how well it is planned is no matter
  const Job job = run(brief, quick);
  CHECK_NOTHROW(summary(brief, job));
  const auto refused_everywhere = [](const Brief& with, const Job& told, const char* field) {
    INFO(field);
    const Folder folder("stale");
    CHECK_THROWS_MATCHES(summary(with, told), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(page_html(with, told), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(write_job(with, told, folder.path.string()), Error,
                         refused_field(ErrorCode::bad_argument, field));
    CHECK(fs::is_empty(folder.path));
  };
  Brief other = brief;
  other.state = ClothState::rested;
  refused_everywhere(other, job, "job.size");
  other.state = ClothState::washed;  // what it was sized in, whether it says so or not
  CHECK_NOTHROW(summary(other, job));
  other = brief;
  std::vector<Measurement> halved(brief.swatch.measurements().begin(), brief.swatch.measurements().end());
  for (Measurement& each : halved) each.count /= 2;
  other.swatch = Swatch(halved);
  refused_everywhere(other, job, "job.size");
  other = brief;
  other.yarn->pieces = 12;
  refused_everywhere(other, job, "job.yarn");
  other = brief;
  other.yarn->allowance = 0.5;
  refused_everywhere(other, job, "job.yarn");
  Job spoiled = job;
  spoiled.size->width_mm += 1;
  refused_everywhere(brief, spoiled, "job.size");
  spoiled = job;
  spoiled.yarn->estimates.at(0).shares.at(0).buy_g /= 2;
  refused_everywhere(brief, spoiled, "job.yarn");
}

TEST_CASE("yarn of an article's pieces is told with the yarns that it comes of alone", "[brief][article][error]") {
  const Brief brief = read_brief(example("harbour-cushion").string());
  PlanOptions quick;
  quick.work_limit = 1;
  const Job job = run(brief, quick);
  REQUIRE(job.article);
  REQUIRE(job.article->yarn);
  CHECK_NOTHROW(summary(brief, job));
  Job spoiled = job;
  spoiled.article->yarn->estimates.at(0).shares.at(0).buy_g /= 2;
  CHECK_THROWS_MATCHES(summary(brief, spoiled), Error, refused_field(ErrorCode::bad_argument, "job.article"));
  Brief other = brief;
  other.yarn->seam_ratio = 10;  // of the article's seams; the brief's panel alone has none
  CHECK_THROWS_MATCHES(summary(other, job), Error, refused_field(ErrorCode::bad_argument, "job.article"));
}

TEST_CASE("a job whose ladders are deeper than the brief's machine allows is of another brief", "[brief][error]") {
  Brief brief = latchwork_test::sampler();
  const Job job = run(brief);
  CHECK_NOTHROW(summary(brief, job));
  brief.machine.max_ladder = 3;
  try {
    summary(brief, job);
    FAIL("it was told");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::bad_argument);
    CHECK(error.place().field.starts_with("job."));
    CHECK(error.place().field.ends_with(".rungs"));
  }
  CHECK_NOTHROW(summary(brief, run(brief)));
  brief.machine.cast_on_loops = false;
  CHECK_NOTHROW(summary(brief, run(brief)));
}

TEST_CASE("a job whose plan breaks the conditions that it names is not told of", "[brief][error]") {
  const Brief brief = latchwork_test::sampler();
  PlanOptions options;
  options.conditions.forced_exempt = true;
  options.conditions.rows_apart = 2;
  options.conditions.rhythms = {
      {.row = 1, .first_column = 0, .last_column = 1, .rhythm = Rhythm{.every = 4, .first = 2}}};
  const Job sound = run(brief, options);
  REQUIRE(sound.plan.status == PlanStatus::optimal);
  CHECK_NOTHROW(summary(brief, sound));
  const auto plan_refused = refused_field(ErrorCode::bad_argument, "job.plan");
  // A stop right below one that is exempt, though it does nothing.
  Job other = sound;
  other.conditions.rhythms.clear();
  CHECK_NOTHROW(summary(brief, other));
  std::vector<Stop>& stops = other.plan.stops;
  const auto lone = [&](const Stop& stop) {
    const auto near = [&](const Stop& each) { return each.row < stop.row && each.row > stop.row - 4; };
    return stop.row > 4 && !stop.crossings.empty() && std::none_of(stops.begin(), stops.end(), near);
  };
  const auto forced = std::find_if(stops.begin(), stops.end(), lone);
  REQUIRE(forced != stops.end());
  Stop idle;
  idle.row = forced->row - 1;
  idle.carriage_right = !forced->carriage_right;
  stops.insert(forced, idle);
  const HandWork work = hand_work(other.plan, brief.effort);
  other.plan.total_ms = work.hand_ms + work.carriage_ms;
  CHECK_THROWS_MATCHES(summary(brief, other), Error, plan_refused);
  other.conditions = {};
  CHECK_NOTHROW(summary(brief, other));
  // Wales out of their rhythm.
  other = sound;
  other.plan = other.unconditioned = plan(brief.panel.grid(), brief.machine, brief.effort);
  other.conditions = {};
  CHECK_NOTHROW(summary(brief, other));
  const auto by_hand = [](const Stop& stop) { return !stop.reforms.empty(); };
  const auto worked = std::find_if(other.plan.stops.begin(), other.plan.stops.end(), by_hand);
  REQUIRE(worked != other.plan.stops.end());
  const Wales wales(brief.panel.grid());
  const Wale& wale = wales.all()[static_cast<std::size_t>(worked->reforms.front().wale)];
  const int column = wale.columns.front();
  const Rhythm once{.every = brief.panel.grid().rows(), .first = 1};
  other.conditions.rhythms = {{.row = wale.row, .first_column = column, .last_column = column, .rhythm = once}};
  CHECK_THROWS_MATCHES(summary(brief, other), Error, plan_refused);
  other.conditions.rhythms[0].row = 1'000;
  CHECK_THROWS_MATCHES(summary(brief, other), Error,
                       refused_field(ErrorCode::bad_argument, "options.conditions.rhythms[0].row"));
}

TEST_CASE("a yarn's name of two lines is one line in the summary", "[brief][yarn]") {
  Brief brief = read_brief(example("harbour-cushion").string());
  brief.article.reset();
  brief.yarn->yarns[0].name = "wool\nnatural\x1b[31m";
  CHECK(summary(brief, run(brief)).find("wool?natural?[31m") != std::string::npos);
}

}  // namespace brief_match_test
