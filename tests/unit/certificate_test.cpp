#include "latchwork/certificate.hpp"

#include <algorithm>
#include <functional>
#include <stdexcept>
#include <stop_token>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"

namespace certificate_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

// DEVELOPERS.md's example: one purl in row 1 below a crossing after row 2.
Grid example() {
  Grid grid = Grid::from_text("kkkkkk\nkkkkkk\nkkkkkk\nkkpkkk\n");
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2});
  return grid;
}

}  // namespace

TEST_CASE("the example's certificate is what its page works out", "[certificate]") {
  const Grid grid = example();
  const Certificate certificate = certify(grid, {}, {}, 81'500);
  CHECK(certificate.forced == std::vector<int>{2});
  REQUIRE(certificate.classes.size() == 1);
  CHECK(certificate.classes[0].wales == std::vector<int>{2});
  CHECK(certificate.classes[0].least == 19'500 * certificate.unit);
  CHECK(certificate.branches.empty());
  // Hand work 34.5 s; the crossing's own 15 s and 4 stitches of 4 s; four rows of 4 s.
  CHECK(certificate.bound_ms == 34'500 + 31'000 + 16'000);
  const CertificateCheck check = check_certificate(grid, {}, {}, certificate);
  CHECK(check == CertificateCheck{true, 81'500, {}, "holds"});
}

TEST_CASE("each way of spoiling a certificate is refused at its place", "[certificate][error]") {
  const Grid grid = example();
  const Certificate sound = certify(grid, {}, {}, 81'500);
  struct Spoiling {
    std::string field;
    std::function<void(Certificate&)> spoil;
  };
  const std::vector<Spoiling> spoilings = {
      {"unit", [](Certificate& c) { c.unit = 0; }},
      {"unit", [](Certificate& c) { c.unit = 7; }},  // past rows + 2, sums could overflow
      {"forced[0]", [](Certificate& c) { c.forced.clear(); }},
      {"forced[0]", [](Certificate& c) { c.forced = {3}; }},
      {"forced[1]",
       [](Certificate& c) {
         c.forced = {2, 3};
       }},
      {"classes", [](Certificate& c) { c.classes.clear(); }},
      {"classes[0].wales", [](Certificate& c) { c.classes[0].wales.clear(); }},
      {"classes[0].wales[0]", [](Certificate& c) { c.classes[0].wales = {9}; }},
      {"classes[0].wales[0]", [](Certificate& c) { c.classes[0].wales = {-1}; }},
      {"classes[0].wales[0]", [](Certificate& c) { c.classes[0].wales = {1}; }},  // all knit
      {"classes[0].wales[1]",
       [](Certificate& c) {
         c.classes[0].wales = {2, 2};
       }},
      {"classes[1].wales[0]", [](Certificate& c) { c.classes.push_back(c.classes[0]); }},
      {"classes[0].prices[0]",
       [](Certificate& c) {
         c.classes[0].prices = {{-1, 5}};
       }},
      {"classes[0].prices[0]",
       [](Certificate& c) {
         c.classes[0].prices = {{5, 5}};
       }},
      {"classes[0].prices[0]",
       [](Certificate& c) {
         c.classes[0].prices = {{2, 5}};
       }},  // a forced stop
      {"classes[0].prices[0]",
       [](Certificate& c) {
         c.classes[0].prices = {{1, 0}};
       }},
      {"classes[0].prices[0]",
       [](Certificate& c) {
         c.classes[0].prices = {{1, 15'000 * 6 + 1}};
       }},
      {"classes[0].prices[1]",
       [](Certificate& c) {
         c.classes[0].prices = {{1, 5}, {1, 5}};
       }},
      {"classes[0].least", [](Certificate& c) { c.classes[0].prices.clear(); }},
      {"classes[0].least", [](Certificate& c) { c.classes[0].least += 1; }},
      {"bound_ms", [](Certificate& c) { c.bound_ms = -1; }},
      {"bound_ms", [](Certificate& c) { c.bound_ms += 1; }},
      {"bound_ms", [](Certificate& c) { c.bound_ms = INT64_MAX; }},
      {"branches[0]",
       [](Certificate& c) {
         c.branches = {{1, -1, false, BranchEnd::bound, -1}};
       }},
      {"branches[0].by",
       [](Certificate& c) {
         c.branches = {{0, -1, false, BranchEnd::bound, 0}};
       }},
      {"branches[0].by",
       [](Certificate& c) {
         c.branches = {{0, -1, false, BranchEnd::dominated, 0}};
       }},
      {"branches[0].end",
       [](Certificate& c) {
         c.branches = {{0, -1, false, static_cast<BranchEnd>(9), -1}};
       }},
      {"branches[1]",
       [](Certificate& c) {
         c.branches = {{0, -1, false, BranchEnd::kept, -1}};
       }},
      {"branches[1]",
       [](Certificate& c) {
         c.branches = {{0, -1, false, BranchEnd::bound, -1}, {1, 0, false, BranchEnd::bound, -1}};
       }},
  };
  for (const Spoiling& spoiling : spoilings) {
    Certificate spoiled = sound;
    spoiling.spoil(spoiled);
    CAPTURE(spoiling.field);
    REQUIRE(spoiled != sound);
    const CertificateCheck check = check_certificate(grid, {}, {}, spoiled);
    CHECK(!check.holds);
    CHECK(check.bound_ms == 0);
    CHECK(check.place.field == spoiling.field);
    CHECK(check.message.starts_with(spoiling.field + ": "));
  }
}

TEST_CASE("a gap is closed by branches, and a branch cut without cause is refused", "[certificate]") {
  const Instance in = instance_of("co-prime periods", 1);
  const Plan least = plan(in.grid, in.machine, in.effort);
  REQUIRE(least.status == PlanStatus::optimal);
  const Certificate sound = certify(in.grid, in.machine, in.effort, least.total_ms);
  REQUIRE(check_certificate(in.grid, in.machine, in.effort, sound).holds);
  REQUIRE(!sound.branches.empty());
  int cut = 0;
  for (std::size_t i = 0; i < sound.branches.size(); ++i) {
    CAPTURE(i);
    Certificate spoiled = sound;
    Branch& branch = spoiled.branches[i];
    if (branch.end == BranchEnd::kept) {
      branch.end = BranchEnd::bound;
      ++cut;
    } else {
      branch.end = BranchEnd::kept;
      branch.by = -1;
    }
    CHECK(!check_certificate(in.grid, in.machine, in.effort, spoiled).holds);
  }
  CHECK(cut > 0);
}

TEST_CASE("a branch from which a wale can no longer be made is dominated by any, and what follows is still looked at",
          "[certificate]") {
  // A ladder of one row: past row 1 without a stop the purl of row 1 is lost, and of three classes it is the second.
  const Grid grid = Grid::from_text("kkkkkk\nkkkkpk\nkpkkkk\nkkkpkk\n");
  const Machine machine{.max_ladder = 1};
  Certificate claim = certify(grid, machine, {}, plan(grid, machine).total_ms);
  REQUIRE(claim.classes.size() == 3);
  claim.bound_ms += 60'000;
  claim.branches = {
      {0, -1, false, BranchEnd::kept, -1}, {1, 0, true, BranchEnd::kept, -1}, {1, 0, false, BranchEnd::dominated, 1}};
  CertificateCheck check = check_certificate(grid, machine, {}, claim);
  CHECK(!check.holds);
  CHECK(check.place.field == "branches[3]");
  CHECK(check.place.row == 2);
  // The same in a stretch.
  claim.stretches = {{0, 1, {claim.branches[1], claim.branches[2]}}};
  claim.stretches[0].branches[0].below = claim.stretches[0].branches[1].below = -1;
  claim.stretches[0].branches[1].by = 0;
  check = check_certificate(grid, machine, {}, claim);
  CHECK(!check.holds);
  CHECK(check.place.field == "stretches[0].branches[2]");
}

TEST_CASE("what could take too long to be counted is refused before it is planned, proven or checked",
          "[certificate][plan][error]") {
  Effort greatest;
  for (std::int64_t* effort :
       {&greatest.stop, &greatest.batch, &greatest.drop, &greatest.rung_knit, &greatest.crossing, &greatest.row}) {
    *effort = 3'600'000;
  }
  const Grid grid(65'536, 100);
  Certificate claim;
  claim.rows = grid.rows();
  claim.columns = grid.columns();
  const auto refused = refused_field(ErrorCode::too_large, "effort");
  CHECK_THROWS_MATCHES(plan(grid, {}, greatest), Error, refused);
  CHECK_THROWS_MATCHES(plan_regular(grid, {}, greatest), Error, refused);
  CHECK_THROWS_MATCHES(certify(grid, {}, greatest, 1), Error, refused);
  CHECK_THROWS_MATCHES(check_certificate(grid, {}, greatest, claim), Error, refused);
}

TEST_CASE("a certificate is for one size of panel, and for panels that can be made", "[certificate][error]") {
  const Certificate certificate = certify(example(), {}, {}, 81'500);
  CHECK_THROWS_MATCHES(check_certificate(Grid(4, 5), {}, {}, certificate), Error,
                       refused_field(ErrorCode::size_mismatch, "certificate"));
  CHECK_THROWS_MATCHES(certify(example(), {}, {}, -1), Error, refused_field(ErrorCode::bad_argument, "total_ms"));
  CHECK_THROWS_AS(certify(Grid(4, 300), {}, {}, 1), Error);  // wider than the bed
  // An open stack: no plan, so a certificate says nothing, and is refused.
  Grid open(3, 3);
  open.set(3, 1, Cell::tuck);
  Certificate claim;
  claim.rows = claim.columns = 3;
  claim.classes = {{{1}, {}, 0}};
  const CertificateCheck check = check_certificate(open, {}, {}, claim);
  CHECK(!check.holds);
  CHECK(check.place.field == "classes[0].least");
  CHECK(check.place.column == 1);
}

TEST_CASE("the check of a certificate tells how far it is, never less than before and at last all",
          "[certificate][limits]") {
  const auto kind = GENERATE(as<std::string>(), "co-prime periods", "panels");  // with branches, and without
  const Instance in = instance_of(kind, 1);
  Certificate certificate = certify(in.grid, in.machine, in.effort, plan(in.grid, in.machine, in.effort).total_ms);
  CAPTURE(kind);
  CHECK(certificate.branches.empty() == (kind == "panels"));
  std::vector<double> shares;
  WatchOptions options;
  options.progress = [&](const Progress& progress) {
    CHECK(progress.bound_ms == 0);
    CHECK(progress.best_ms == 0);
    shares.push_back(progress.share);
  };
  CHECK(check_certificate(in.grid, in.machine, in.effort, certificate, options) ==
        check_certificate(in.grid, in.machine, in.effort, certificate));
  CHECK(shares.size() > 10);
  CHECK(shares.size() < 300);  // a listener does not slow it down
  CHECK(std::is_sorted(shares.begin(), shares.end()));
  CHECK(shares.front() < 0.1);
  // What was still to be told is told at once at the end: little where the steps were counted rightly.
  CHECK(shares.at(shares.size() - 2) > 0.95);
  CHECK(shares.back() == 1.0);
  // One that is found wrong on the way is done, too.
  certificate.classes.back().least += 1;
  CHECK(!check_certificate(in.grid, in.machine, in.effort, certificate, options).holds);
  CHECK(shares.back() == 1.0);
}

TEST_CASE("wherever the check of a certificate is asked to stop, it ends with an error",
          "[certificate][limits][error]") {
  const Instance in = instance_of("co-prime periods", 1);
  const Certificate certificate =
      certify(in.grid, in.machine, in.effort, plan(in.grid, in.machine, in.effort).total_ms);
  int all = 0;
  WatchOptions options;
  options.progress = [&](const Progress&) { ++all; };
  REQUIRE(check_certificate(in.grid, in.machine, in.effort, certificate, options).holds);
  REQUIRE(all > 10);
  for (int last = 0; last < all; last += std::max(1, all / 16)) {  // 0: asked before it began
    CAPTURE(last);
    std::stop_source source;
    int told = 0;
    options.stop = source.get_token();
    options.progress = [&](const Progress&) {
      if (++told == last) source.request_stop();
    };
    if (last == 0) source.request_stop();
    CHECK_THROWS_MATCHES(check_certificate(in.grid, in.machine, in.effort, certificate, options), Error,
                         refused_field(ErrorCode::cancelled, ""));
    CHECK(told == last);
  }
  options.stop = {};
  options.progress = [](const Progress&) { throw std::runtime_error("enough"); };
  CHECK_THROWS_AS(check_certificate(in.grid, in.machine, in.effort, certificate, options), std::runtime_error);
}

TEST_CASE("a proof's branches stay within the memory that it may have, and what is left holds",
          "[certificate][limits]") {
  const Instance in = instance_of("co-prime periods", 1);
  const Plan least = plan(in.grid, in.machine, in.effort);
  REQUIRE(least.status == PlanStatus::optimal);
  bool whole = false;
  bool cut = false;
  for (std::int64_t bytes = 1'000; bytes <= 64'000'000; bytes *= 2) {
    PlanOptions options;
    options.memory_limit = bytes;
    const Certificate made = certify(in.grid, in.machine, in.effort, least.total_ms, options);
    CAPTURE(bytes);
    std::size_t branches = made.branches.size();
    for (const Stretch& stretch : made.stretches) branches += stretch.branches.size();
    CHECK(branches * sizeof(Branch) <= static_cast<std::size_t>(bytes));
    CHECK(made.bound_ms <= least.total_ms);
    CHECK(check_certificate(in.grid, in.machine, in.effort, made).holds);
    (made.bound_ms == least.total_ms ? whole : cut) = true;
  }
  CHECK(whole);
  CHECK(cut);
}

TEST_CASE("wherever a proof is ended, its certificate holds", "[certificate][limits][long]") {
  const Grid grid = latchwork_test::distinct_panel(40, 400, 3);
  const std::int64_t total = plan(grid, Machine{}).total_ms;
  // By the clock, in the midst of one step or another; and by the caller, between two.
  for (const int limit : {1, 2, 4, 8, 16}) {
    PlanOptions options;
    options.time_limit_ms = limit;
    const Certificate certificate = certify(grid, {}, {}, total, options);
    CHECK(certificate.bound_ms <= total);
    CHECK(check_certificate(grid, {}, {}, certificate).holds);
  }
  std::stop_source before;
  before.request_stop();
  PlanOptions at_once;
  at_once.stop = before.get_token();
  const Certificate begun = certify(grid, {}, {}, total, at_once);
  CHECK(begun.bound_ms > 0);
  CHECK(begun.bound_ms <= total);
  CHECK(check_certificate(grid, {}, {}, begun).holds);
  for (const int heard : {1, 2}) {
    std::stop_source source;
    int told = 0;
    PlanOptions options;
    options.stop = source.get_token();
    options.progress = [&](const Progress&) {
      if (++told == heard) source.request_stop();
    };
    const Certificate certificate = certify(grid, {}, {}, total, options);
    CHECK(certificate.bound_ms <= total);
    CHECK(check_certificate(grid, {}, {}, certificate).holds);
  }
}

TEST_CASE("a panel too large to be read once the call is stopped has no certificate", "[certificate][limits][error]") {
  Grid grid(6'000, 200);
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = row % 2; column < grid.columns(); column += 2) grid.set(row, column, Cell::purl);
  }
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  CHECK_THROWS_MATCHES(certify(grid, Machine{}, {}, 1, options), Error, refused_field(ErrorCode::cancelled, "options"));
}

}  // namespace certificate_test
