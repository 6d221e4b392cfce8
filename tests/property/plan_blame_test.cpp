#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace plan_blame_test {

// Why nothing keeps conditions, as it is told, against a brute force over all plans.

using namespace latchwork;
using namespace latchwork_test;

namespace {

using Names = std::set<std::string>;

const std::array<const char*, 6> names = {"closed_rows", "carriage_right_only", "rows_apart", "max_depth", "rhythms",
                                          "max_kinds"};

Conditions only(const Conditions& asked, const Names& left) {
  Conditions only;
  only.forced_exempt = asked.forced_exempt;
  if (left.contains("closed_rows")) only.closed_rows = asked.closed_rows;
  if (left.contains("carriage_right_only")) only.carriage_right_only = asked.carriage_right_only;
  if (left.contains("rows_apart")) only.rows_apart = asked.rows_apart;
  if (left.contains("max_depth")) only.max_depth = asked.max_depth;
  if (left.contains("rhythms")) only.rhythms = asked.rhythms;
  if (left.contains("max_kinds")) only.max_kinds = asked.max_kinds;
  return only;
}

/// The conditions that a finding names as one reason: its own, and those with which alone it bars the panel.
Names blamed_by(const Finding& finding) {
  Names blamed = {finding.message.substr(0, finding.message.find(':'))};
  const std::string with = " only together with ";
  const auto from = finding.message.find(with);
  if (from == std::string::npos) return blamed;
  const std::string others = finding.message.substr(from + with.size());
  for (const char* name : names) {
    if (others.find(name) != std::string::npos) blamed.insert(name);
  }
  return blamed;
}

bool is_hand_cell(Cell cell) {
  return cell == Cell::purl || cell == Cell::tuck || cell == Cell::slip;
}

/// Whether it tells a hand cell: alone, or in the box that findings like each other are told by.
bool tells_hand_cell(const Grid& grid, const Finding& finding) {
  for (int row = std::max(1, finding.place.row); row <= finding.last_row; ++row) {
    for (int column = finding.place.column; column <= finding.last_column; ++column) {
      if (is_hand_cell(grid.at(row, column))) return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("each condition that is blamed bars the panel, and without all of them there is a plan",
          "[plan][conditions][blame][property]") {
  int alone = 0;
  int together = 0;
  int several = 0;
  const int count = how_many(1500);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 14'000'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    Conditions asked = random_conditions(random, in);
    if (random.one_in(2)) asked.max_kinds = random.between(1, 2);
    if (random.one_in(3)) asked.closed_rows = {random.between(0, in.grid.rows())};
    PlanOptions options;
    options.conditions = asked;
    const Plan none = plan(in.grid, in.machine, in.effort, options);
    if (none.status != PlanStatus::infeasible) continue;
    if (plan(in.grid, in.machine, in.effort).status == PlanStatus::infeasible) continue;  // for no condition's sake
    const auto possible = [&](const Names& left) { return Brute{in, only(asked, left)}.any(); };
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops, asked.carriage_right_only,
            asked.rows_apart, asked.max_depth, asked.max_kinds, asked.closed_rows, asked.forced_exempt,
            asked.rhythms.size());
    std::set<Names> reasons;
    Names rest(names.begin(), names.end());
    for (const Finding& finding : none.findings) {
      CAPTURE(finding.message, finding.place.row, finding.place.column);
      REQUIRE(finding.message.find("left open") == std::string::npos);
      REQUIRE(!finding.suggestion.empty());
      const Names blamed = blamed_by(finding);
      reasons.insert(blamed);
      for (const std::string& name : blamed) rest.erase(name);
      // A stop that is forced is told at what forces it, and so is what bars the panel together with it.
      const bool forced = std::any_of(none.findings.begin(), none.findings.end(), [&](const Finding& other) {
        if (other.place != finding.place) return false;
        const auto says = [&](const char* words) { return other.message.find(words) != std::string::npos; };
        return says("C after row") || says("C, centre ") || says("the shaping after row");
      });
      const bool any_hand_cell = in.grid.to_text().find_first_of("pts") != std::string::npos;
      REQUIRE((finding.message.find(" such in ") != std::string::npos ||
               in.grid.at(std::max(1, finding.place.row), finding.place.column) != Cell::none));
      REQUIRE((forced || !any_hand_cell || tells_hand_cell(in.grid, finding)));
    }
    for (const Names& reason : reasons) {
      CAPTURE(std::vector<std::string>(reason.begin(), reason.end()));
      const auto under_it = possible(reason);
      if (!under_it) continue;  // too many plans to try
      REQUIRE_FALSE(*under_it);
      for (const std::string& name : reason) {
        Names fewer = reason;
        fewer.erase(name);
        REQUIRE(possible(fewer).value_or(true));
        // It is told of each.
        REQUIRE(std::any_of(none.findings.begin(), none.findings.end(), [&](const Finding& finding) {
          return finding.message.starts_with(name + ": ") && blamed_by(finding) == reason;
        }));
      }
      (reason.size() == 1 ? alone : together) += 1;
    }
    REQUIRE(possible(rest).value_or(true));
    several += reasons.size() > 1 ? 1 : 0;
  }
  CHECK(alone > count / 10);
  CHECK(together > count / 50);
  CHECK(several > count / 100);
}

}  // namespace plan_blame_test
