#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/reason.hpp"
#include "purl_panels.hpp"

namespace plan_told_test {

// What progress tells, of every call that plans and however it ends: its last word is share 1, the bound never falls,
// and the best never rises, nor is none again.

using namespace latchwork;
using latchwork_test::purls;
using latchwork_test::scattered;

namespace {

struct Call {
  std::string name;
  std::function<void(const PlanOptions&)> make;
};

/// `mine`: a plan of the panel, where it has one.
std::vector<Call> calls(const Grid& grid, const Machine& machine, const std::optional<Plan>& mine) {
  std::vector<Call> all = {
      {"plan", [=](const PlanOptions& options) { plan(grid, machine, {}, options); }},
      {"regular", [=](const PlanOptions& options) { plan_regular(grid, machine, {}, options); }},
      {"two rhythms", [=](const PlanOptions& options) { plan_two_rhythms(grid, machine, {}, options); }},
      {"prices", [=](const PlanOptions& options) { condition_prices(grid, machine, {}, options); }},
      {"front", [=](const PlanOptions& options) { plan_front(grid, machine, {}, options); }},
  };
  if (!mine) return all;
  all.push_back({"reasons", [=](const PlanOptions& options) { stop_reasons(grid, machine, {}, *mine, options); }});
  all.push_back({"certify", [=](const PlanOptions& options) { certify(grid, machine, {}, mine->total_ms, options); }});
  if (mine->status == PlanStatus::optimal) {
    const auto tolerances = [=](const PlanOptions& options) { plan_tolerances(grid, machine, {}, *mine, options); };
    all.push_back({"tolerances", tolerances});
  }
  return all;
}

void check_told(const Call& call, PlanOptions options) {
  CAPTURE(call.name);
  std::vector<Progress> told;
  options.progress = [&](const Progress& now) { told.push_back(now); };
  call.make(options);
  REQUIRE(!told.empty());
  for (std::size_t i = 1; i < told.size(); ++i) {
    const Progress& before = told[i - 1];
    CAPTURE(i, before.bound_ms, told[i].bound_ms, before.best_ms, told[i].best_ms);
    REQUIRE(before.share <= told[i].share);
    REQUIRE(before.bound_ms <= told[i].bound_ms);
    REQUIRE((before.best_ms < 0 || (told[i].best_ms >= 0 && told[i].best_ms <= before.best_ms)));
  }
  CHECK(told.back().share == 1.0);
}

/// Whole, out of work, and stopped at once.
void check_endings(const Call& call, const Conditions& conditions, bool stopped = true) {
  PlanOptions options;
  options.conditions = conditions;
  check_told(call, options);
  if (!stopped) return;
  options.work_limit = 1;
  check_told(call, options);
  options.work_limit = 30'000;
  check_told(call, options);
  std::stop_source source;
  source.request_stop();
  options.work_limit = 0;
  options.stop = source.get_token();
  check_told(call, options);
}

}  // namespace

TEST_CASE("a call that plans tells share 1 at its end, and what it told stays true", "[plan][choice][reason]") {
  for (const Grid& grid : {purls(), scattered(16, 10)}) {
    for (const Call& call : calls(grid, Machine{}, plan(grid, Machine{}))) {
      check_endings(call, {});
      check_endings(call, {.rows_apart = 2},
                    call.name != "regular" && call.name != "two rhythms" && call.name != "tolerances");
    }
    // Those that a front or prices go through.
    const Call prices = calls(grid, Machine{}, {})[3];
    check_endings(prices, {.carriage_right_only = true, .max_depth = 8, .max_kinds = 20, .closed_rows = {3}});
    const Call front = calls(grid, Machine{}, {})[4];
    check_endings(front, {.max_kinds = 2});
  }
  PlanOptions plain;  // a plan without stops has no reasons, and the call comes to its end
  check_told({"no stops",
              [](const PlanOptions& options) {
                const Grid knit(4, 4);
                CHECK(stop_reasons(knit, Machine{}, {}, plan(knit, Machine{}), options).empty());
              }},
             plain);
}

TEST_CASE("that there is no plan is told with share 1 as well", "[plan][choice]") {
  // Off the bed; a tuck that no closing stitch follows; every row closed; stops too far apart.
  const Machine narrow{.needles = 3};
  for (const Call& call : calls(purls(), narrow, {})) check_endings(call, {});
  for (const Call& call : calls(Grid::from_text("ktkk\nkkkk\n"), Machine{}, {})) {
    if (call.name == "prices") continue;
    check_endings(call, {});
  }
  for (const Call& call : calls(purls(), Machine{}, {})) {
    if (call.name == "prices") continue;  // they have a plan without
    check_endings(call, {.closed_rows = {0, 1, 2, 3, 4, 5, 6}});
    check_endings(call, {.rows_apart = 3, .max_depth = 1}, false);  // cut short that is an error
  }
}

}  // namespace plan_told_test
