// The files of format version 1, as they were first written: a library of any later version reads them to equal values.
// LATCHWORK_RENEW_GOLDEN=1 in the environment writes them again; a person then reads the difference.
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include "catch.hpp"
#include "latchwork/article.hpp"
#include "latchwork/file.hpp"
#include "latchwork/motif.hpp"
#include "sample_article.hpp"

namespace file_golden_test {

using namespace latchwork;
using latchwork_test::refused_field;

namespace {

std::string path_of(const std::string& name) {
  return std::string(LATCHWORK_TESTS_DIR) + "/golden/file/" + name;
}

std::string text_of(const std::string& name) {
  std::ifstream in(path_of(name), std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// The golden file, written first when it is to be renewed.
std::string golden(const std::string& name, const std::string& written) {
  if (std::getenv("LATCHWORK_RENEW_GOLDEN") != nullptr) std::ofstream(path_of(name), std::ios::binary) << written;
  return text_of(name);
}

Grid every_cell() {
  Grid grid = Grid::from_text(
      "kkkkkkkk\n"
      "kpkkkkpk\n"
      "kt.kkksk\n"
      "ktkkkktk\n"
      "kkkkkkkk\n");
  grid.cross({.row = 1, .column = 0, .left = 2, .right = 1, .lean = Lean::left});
  grid.cross({.row = 1, .column = 3, .left = 2, .centre = 1, .right = 2, .lean = Lean::right, .place = Centre::front});
  grid.cross({.row = 5, .column = 2, .left = 1, .centre = 2, .right = 1, .lean = Lean::left, .place = Centre::behind});
  return grid;
}

Plan every_member() {
  Plan plan;
  plan.rows = 12;
  plan.columns = 7;
  plan.leftmost = -4;
  plan.columns_on = {0, 1, 2, 4, 5, 6};
  plan.total_ms = 171'500;
  plan.bound_ms = 170'000;
  plan.status = PlanStatus::feasible;
  plan.rhythm = Rhythm{.every = 6, .first = 6};
  Stop stop;
  stop.row = 6;
  stop.carriage_right = true;
  stop.releases = {-4, 1};
  stop.reforms = {{.needle = -3, .column = 5, .wale = 5, .from_row = 0, .rungs = {Cell::knit, Cell::tuck, Cell::purl}},
                  {.needle = 1, .column = 2, .wale = 2, .from_row = 4, .rungs = {Cell::slip, Cell::purl}}};
  stop.crossings = {
      {.crossing =
           {.row = 6, .column = 0, .left = 1, .centre = 1, .right = 1, .lean = Lean::right, .place = Centre::behind},
       .returns = {{GroupName::left, 1, 3, 1, {1}},
                   {GroupName::right, 1, 1, 3, {1}},
                   {GroupName::centre, 1, 2, 2, {2}}},
       .ease = true},
      {.crossing = {.row = 6, .column = 4, .left = 1, .right = 1, .lean = Lean::left},
       .returns = {{GroupName::right, 1, -2, -1, {}}, {GroupName::left, 1, -1, -2, {1}}},
       .ease = false}};
  stop.shapings = {{.needle = -1, .column = 3, .on = true}};
  stop.holds = {2};
  stop.effort_ms = 123'500;
  plan.stops = {stop, {}};
  plan.stops[1].row = 7;
  plan.stops[1].carriage_right = false;
  Finding finding;
  finding.code = FindingCode::tight_crossing;
  finding.severity = Severity::warning;
  finding.place.row = 6;
  finding.place.column = 0;
  finding.last_row = 6;
  finding.last_column = 2;
  finding.value = 4;
  finding.limit = 3;
  finding.message = "crossing after row 6 travels 4 stitches; 3 are comfortable";
  finding.suggestion = "a ladder beside it gives slack";
  plan.findings = {finding};
  return plan;
}

Certificate every_part() {
  Certificate certificate;
  certificate.rows = 12;
  certificate.columns = 7;
  certificate.bound_ms = 170'000;
  certificate.unit = 14;
  certificate.forced = {6};
  certificate.classes = {{{1, 5}, {{3, 700}, {4, 209'300}}, 1'400'000}, {{2}, {}, 42}};
  certificate.stretches = {{8, 5, {{9, -1, false, BranchEnd::kept, -1}, {10, 0, true, BranchEnd::bound, -1}}}};
  certificate.branches = {{0, -1, false, BranchEnd::kept, -1},
                          {1, 0, true, BranchEnd::bound, -1},
                          {1, 0, false, BranchEnd::kept, -1},
                          {2, 2, true, BranchEnd::dominated, 4},
                          {2, 2, false, BranchEnd::kept, -1}};
  return certificate;
}

}  // namespace

TEST_CASE("files of version 1 are read to the values they were written from, and written the same", "[file][golden]") {
  const Grid grid = every_cell();
  CHECK(golden("grid.json", write(grid)) == write(grid));
  CHECK(read_grid(text_of("grid.json")) == grid);

  const Strip strip{"lozenge \"small\"", "lozenge", grid};
  CHECK(golden("strip.json", write(strip)) == write(strip));
  CHECK(read_strip(text_of("strip.json")) == strip);

  MachineFile machine;
  machine.machine = {.name = "the one in the attic",
                     .needles = 141,
                     .pitch_mm = 6.5,
                     .leftmost = -12,
                     .prongs = {1, 2, 3, 7},
                     .comfortable_crossing = 4,
                     .tuck_limit = 3,
                     .float_limit = 5,
                     .max_ladder = 10,
                     .cast_on_loops = false,
                     .carriage_starts_right = false};
  machine.effort.stop = 20'000;
  CHECK(golden("machine.json", write(machine)) == write(machine));
  CHECK(read_machine(text_of("machine.json")) == machine);

  const Plan plan = every_member();
  CHECK(golden("plan.json", write(plan)) == write(plan));
  CHECK(read_plan(text_of("plan.json")) == plan);

  const Certificate certificate = every_part();
  CHECK(golden("certificate.json", write(certificate)) == write(certificate));
  CHECK(read_certificate(text_of("certificate.json")) == certificate);

  YarnRequest yarn;
  yarn.yarns = {{"oatmeal, coned", {YarnSystem::metric, 28, 2}, 0},
                {"moss", {YarnSystem::metres_per_100g, 350, 1}, 50}};
  yarn.rows = {{1, 12, 1}, {13, 0, 0}};
  yarn.weighed = {{"stockinette", 11.5, 0.1, 150, 160, 0, 0, 0, ClothState::washed},
                  {"lozenge", 9, 0.1, 0, 0, 42, 60, 71.5}};
  yarn.loops = {{"stockinette", 200, 2460}};
  yarn.substitutes = {{"edge", "stockinette"}};
  yarn.plain = plain_constants_of(PlainState::wet_relaxed);
  yarn.pieces = 2;
  yarn.seam_mm = 900;
  yarn.seam_yarn = 1;
  CHECK(golden("yarn.json", write(yarn)) == write(yarn));
  CHECK(read_yarn_request(text_of("yarn.json")) == yarn);

  const Article article = latchwork_test::sample_article();
  CHECK(golden("article.json", write(article)) == write(article));
  CHECK(read_article(text_of("article.json")) == article);
}

TEST_CASE("a plan with a rung that has no letter is not written, and the rung is told", "[file][error]") {
  Plan plan = every_member();
  plan.stops[0].reforms[1].rungs[1] = static_cast<Cell>(7);
  CHECK_THROWS_MATCHES(write(plan), Error, refused_field(ErrorCode::bad_value, "stops[0].reforms[1].rungs[1]"));
}

TEST_CASE("a panel by parts and the same panel in full are one panel", "[file][golden][panel]") {
  const Panel panel = read_panel(text_of("panel_parts.json"));
  CHECK(panel.grid().rows() == 24);
  CHECK(panel.bands().size() == 3);
  CHECK(golden("panel.json", write(panel)) == write(panel));
  CHECK(read_panel(text_of("panel.json")) == panel);
}

}  // namespace file_golden_test
