#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/timings.hpp"

namespace timings_fit_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

namespace {

const TermFit& of(const EffortFit& fit, EffortTerm term) {
  return fit.terms.at(static_cast<std::size_t>(term));
}

}  // namespace

TEST_CASE("terms have the names of Effort's fields, states theirs", "[timings]") {
  CHECK(effort_term_name(EffortTerm::stop) == "stop");
  CHECK(effort_term_name(EffortTerm::crossing_stitch) == "crossing_stitch");
  CHECK(effort_term_name(EffortTerm::row) == "row");
  CHECK(effort_term_name(static_cast<EffortTerm>(12)).empty());
  CHECK(term_state_name(TermState::at_zero) == "at_zero");
  CHECK(term_state_name(TermState::no_data) == "no_data");
  CHECK(term_state_name(static_cast<TermState>(4)).empty());
}

TEST_CASE("without spells every term keeps its default, and it is said", "[timings]") {
  const Effort defaults{.stop = 1, .row = 2};
  const EffortFit fit = fit_effort(Timings(), defaults);
  CHECK(fit.effort == defaults);
  CHECK(fit.terms.size() == 12);
  for (const TermFit& term : fit.terms) {
    CHECK(term.state == TermState::no_data);
    CHECK_FALSE(term.standard_error_ms);
    CHECK(term.spells == 0);
  }
  CHECK(fit.outlying.empty());
  CHECK(fit.degrees_of_freedom == 0);
  CHECK_FALSE(fit.spread_ms);
}

// Worked by hand: rows 10, 20, 30 in 41, 79, 121 s. X'X = 1400, X't = 5620 s, so a row takes 281/70 s; residuals
// 6/7, -9/7, 4/7 s, their squares sum to 133/49, over 2 degrees of freedom.
TEST_CASE("one cost is the least-squares slope, its error the spread over the root of the sum of squares",
          "[timings]") {
  const EffortFit fit = fit_effort(
      Timings({{.rows = 10, .time_ms = 41'000}, {.rows = 20, .time_ms = 79'000}, {.rows = 30, .time_ms = 121'000}}));
  const TermFit& row = of(fit, EffortTerm::row);
  CHECK(row.state == TermState::fitted);
  CHECK(row.estimate_ms == Approx(281'000.0 / 70).epsilon(1e-14));
  CHECK(row.value_ms == 4014);
  CHECK(fit.effort == Effort{.row = 4014});
  CHECK(row.spells == 3);
  CHECK(fit.rank == 1);
  CHECK(fit.degrees_of_freedom == 2);
  const double spread = 1000 * std::sqrt(133.0 / 98);
  REQUIRE(fit.spread_ms);
  CHECK(*fit.spread_ms == Approx(spread).epsilon(1e-12));
  REQUIRE(row.standard_error_ms);
  CHECK(*row.standard_error_ms == Approx(spread / std::sqrt(1400.0)).epsilon(1e-12));
}

TEST_CASE("a half of a millisecond goes up", "[timings]") {
  CHECK(fit_effort(Timings({{.rows = 2, .time_ms = 5}})).effort.row == 3);
  CHECK(fit_effort(Timings({{.rows = 4, .time_ms = 9}})).effort.row == 2);
}

// Stops and batches as 1 : 1, 30 s together. Of all splits, that nearest to 15 s and 12 s by relative changes:
// (a - 15) / 15^2 = (b - 12) / 12^2, a + b = 30: a = 15 + 3 * 225 / 369.
TEST_CASE("what was always done together is tied, fitted by its sum, and shared out nearest to the defaults",
          "[timings]") {
  const EffortFit fit = fit_effort(Timings({{.stops = 1, .batches = 1, .time_ms = 30'000},
                                            {.stops = 2, .batches = 2, .time_ms = 60'000},
                                            {.stops = 1, .batches = 1, .rows = 5, .time_ms = 50'000}}));
  const TermFit& stop = of(fit, EffortTerm::stop);
  const TermFit& batch = of(fit, EffortTerm::batch);
  CHECK(stop.state == TermState::tied);
  CHECK(batch.state == TermState::tied);
  CHECK(stop.tied_with == std::vector{EffortTerm::batch});
  CHECK(batch.tied_with == std::vector{EffortTerm::stop});
  CHECK_FALSE(stop.standard_error_ms);
  CHECK(stop.estimate_ms == Approx(15'000 + 3'000.0 * 225 / 369));
  CHECK(stop.estimate_ms + batch.estimate_ms == Approx(30'000));
  CHECK(of(fit, EffortTerm::row).state == TermState::fitted);
  CHECK(fit.effort.row == 4'000);
  CHECK(fit.rank == 2);
  CHECK(fit.degrees_of_freedom == 1);
}

TEST_CASE("sharing out leaves no cost below zero", "[timings]") {
  // 1 s for both, so 26 s less than the defaults: the nearest split would take the row below 0.
  const EffortFit fit =
      fit_effort(Timings({{.batches = 1, .rows = 1, .time_ms = 1'000}}), {.batch = 25'000, .row = 2'000});
  CHECK(of(fit, EffortTerm::batch).estimate_ms + of(fit, EffortTerm::row).estimate_ms == Approx(1'000));
  CHECK(fit.effort.batch == 0);
  CHECK(fit.effort.row == 1'000);
  CHECK(of(fit, EffortTerm::batch).state == TermState::tied);
}

TEST_CASE("ties of more than two columns are told, and only of those that take part", "[timings]") {
  // drops = rungs_knit + rungs_purl always, as in every real batch; stops vary by themselves.
  std::vector<Spell> spells;
  for (int i = 1; i <= 6; ++i) {
    const int knit = i * i % 5;
    spells.push_back({.stops = 1 + i % 2,
                      .drops = knit + i,
                      .rungs_knit = knit,
                      .rungs_purl = i,
                      .time_ms = (1 + i % 2) * 14'000 + knit * 4'700 + i * 3'100});
  }
  const EffortFit fit = fit_effort(Timings(spells));
  CHECK(of(fit, EffortTerm::drop).tied_with == std::vector{EffortTerm::rung_knit, EffortTerm::rung_purl});
  CHECK(of(fit, EffortTerm::rung_purl).tied_with == std::vector{EffortTerm::drop, EffortTerm::rung_knit});
  CHECK(of(fit, EffortTerm::stop).state == TermState::fitted);
  CHECK(fit.effort.stop == 14'000);
  CHECK(of(fit, EffortTerm::drop).estimate_ms + of(fit, EffortTerm::rung_knit).estimate_ms == Approx(4'700));
  CHECK(of(fit, EffortTerm::drop).estimate_ms + of(fit, EffortTerm::rung_purl).estimate_ms == Approx(3'100));
}

TEST_CASE("a cost that the timings want below zero is at zero, and it is said", "[timings]") {
  // More holds, less time: unbounded, a hold would cost less than nothing.
  const EffortFit fit = fit_effort(Timings({{.holds = 1, .rows = 10, .time_ms = 41'000},
                                            {.holds = 5, .rows = 10, .time_ms = 35'000},
                                            {.holds = 3, .rows = 20, .time_ms = 78'000}}));
  const TermFit& hold = of(fit, EffortTerm::hold);
  CHECK(hold.state == TermState::at_zero);
  CHECK(hold.value_ms == 0);
  CHECK(hold.estimate_ms == 0);
  CHECK_FALSE(hold.standard_error_ms);
  CHECK(hold.spells == 3);
  CHECK(of(fit, EffortTerm::row).estimate_ms == Approx((10 * 41'000.0 + 10 * 35'000 + 20 * 78'000) / 600));
  CHECK(fit.rank == 1);
}

TEST_CASE("a spell that does not fit the others is named by its line", "[timings]") {
  std::string csv = "stops,rows,time,unit,note\n";
  for (int i = 1; i <= 12; ++i) {
    csv += std::to_string(i % 4) + "," + std::to_string(10 + i) + ",";
    const int jitter = i * 37 % 11 - 5;
    csv += std::to_string(i % 4 * 15'000 + (10 + i) * 4'000 + 200 * jitter + (i == 7 ? 60'000 : 0)) + ",ms,\n";
  }
  const EffortFit fit = fit_effort(read_timings(csv));
  REQUIRE(fit.outlying.size() == 1);
  CHECK(fit.outlying[0].spell == 6);
  CHECK(fit.outlying[0].line == 8);
  CHECK(fit.outlying[0].residual_ms > 30'000);
  CHECK(fit.outlying[0].studentized > 20);
}

TEST_CASE("nothing is outlying in timings without noise, nor with too few degrees of freedom", "[timings]") {
  std::vector<Spell> exact;
  for (int i = 1; i <= 9; ++i) exact.push_back({.stops = i % 3, .rows = i, .time_ms = i % 3 * 15'000 + i * 4'000});
  CHECK(fit_effort(Timings(exact)).outlying.empty());
  const EffortFit two = fit_effort(Timings({{.rows = 1, .time_ms = 1}, {.rows = 1, .time_ms = 300'000}}));
  CHECK(two.degrees_of_freedom == 1);
  CHECK(two.outlying.empty());
  // The third spell alone says what a stop costs, however long it took.
  exact.push_back({.holds = 1, .time_ms = max_spell_ms / 100});
  CHECK(fit_effort(Timings(exact)).outlying.empty());
}

TEST_CASE("defaults out of range, and costs that come out above an effort's limit, are refused by field",
          "[timings][error]") {
  CHECK_THROWS_MATCHES(fit_effort(Timings(), {.drop = -1}), Error,
                       refused_field(ErrorCode::bad_argument, "defaults.drop"));
  CHECK_THROWS_MATCHES(fit_effort(Timings({{.rows = 1, .time_ms = 3'600'001}})), Error,
                       refused_field(ErrorCode::too_large, "effort.row"));
  CHECK(fit_effort(Timings({{.rows = 1, .time_ms = 3'600'000}})).effort.row == 3'600'000);
}

// The figures are NumPy's (numpy.linalg.lstsq on the first two columns that are free) and the split worked by hand.
TEST_CASE("a fit is described line by line", "[timings]") {
  const EffortFit fit =
      fit_effort(read_timings("stops,batches,holds,rows,time,unit\n"
                              "1,1,1,10,70,s\n"
                              "2,2,2,10,100,s\n"
                              "0,0,1,30,121,s\n"
                              "0,0,5,30,118,s\n"
                              "1,1,0,20,110,s\n"));
  CHECK(describe(fit) ==
        "Efforts from 5 timed spells: 2 costs free, 3 degrees of freedom, spread 1.231 s a spell.\n"
        "stop                16.906 s  tied with batch, from 3 spells\n"
        "batch               13.220 s  tied with stop, from 3 spells\n"
        "drop                 0.500 s  default, no spell has any\n"
        "rung_knit            4.000 s  default, no spell has any\n"
        "rung_purl            2.500 s  default, no spell has any\n"
        "rung_tuck            1.500 s  default, no spell has any\n"
        "rung_slip            1.500 s  default, no spell has any\n"
        "crossing            15.000 s  default, no spell has any\n"
        "crossing_stitch      4.000 s  default, no spell has any\n"
        "hold                 0.000 s  at zero, the least it may be, from 4 spells\n"
        "shaping              8.000 s  default, no spell has any\n"
        "row                  3.985 s  +- 0.028 s, from 5 spells\n"
        "Of tied terms the timings tell only what they cost together; that is shared out by the defaults. Spells in\n"
        "which one stands without the others, or in another proportion, tell them apart.\n");
  CHECK(describe(fit_effort(Timings()))
            .starts_with("Efforts from 0 timed spells: 0 costs free, 0 degrees of freedom. Too few spells to tell how "
                         "sure it is.\n"));
  EffortFit outlying;
  outlying.outlying = {{2, 0, 1'500, 4.25}, {3, 9, -2'000, -8}};
  CHECK(
      describe(outlying).ends_with("Outlying spells, which took part in the fit all the same:\n"
                                   "spell 3: 1.500 s longer than its work lets expect (4.2 standard deviations)\n"
                                   "line 9: 2.000 s shorter than its work lets expect (8.0 standard deviations)\n"));
}

}  // namespace timings_fit_test
