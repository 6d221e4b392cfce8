#include <algorithm>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/move.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "reference.hpp"

namespace machine_test {

// What is done at the machine, as planned, and what comes of it, as simulated.

using namespace latchwork;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

CrossingStep& only_crossing(Plan& plan) {
  for (Stop& stop : plan.stops) {
    if (!stop.crossings.empty()) return stop.crossings[0];
  }
  FAIL("the plan has no crossing");
  throw std::logic_error("unreachable");
}

}  // namespace

TEST_CASE("CB-21: the group put back first travels to the operator's left for a right cross", "[reference][machine]") {
  // S. Guagliumi, machine cable notes: the group returned first shows on the knit side. The rule is published, the
  // direction follows from mirroring. The plan says which group goes first; the simulated cloth says what comes of it.
  const int front = GENERATE(1, 2, 3);
  INFO(reference_source("CB-21"));
  const nlohmann::json& results = reference_inputs("CB-21").at("knit_side_result");
  const nlohmann::json& expected = reference("CB-21").at("expected");
  REQUIRE(results.size() == expected.size());
  for (std::size_t i = 0; i < results.size(); ++i) {
    const Lean lean = results[i] == "RC" ? Lean::right : Lean::left;
    const Grid edge(6, 1);
    const Grid grid = edge.beside(rope(front, 2, 6, lean).grid).beside(edge);
    Plan planned = plan(grid, Machine{});
    CrossingStep& step = only_crossing(planned);
    REQUIRE(step.returns.size() == 2);
    const GroupReturn& first = step.returns[0];
    CHECK(first.stitches == front);
    CHECK((first.to_needle < first.from_needle ? "left" : "right") == expected[i].get<std::string>());
    CHECK(verify(grid, planned).verified);

    // Put back in the other order, the same needles make the cross that leans the other way.
    std::swap(step.returns[0], step.returns[1]);
    const Fabric other = simulate({planned.leftmost, planned.columns}, moves(planned));
    REQUIRE(other.grid);
    REQUIRE(other.grid->crossings().size() == 1);
    CHECK(other.grid->crossings()[0].lean != lean);
    CHECK_FALSE(verify(grid, planned).verified);
  }
}

TEST_CASE("CH-06 at the machine: the plan re-forms the needles that the mirrored chart names", "[reference][machine]") {
  // The operator faces the purl side. Derived.
  INFO(reference_source("CH-06"));
  std::string row;
  for (const char letter : reference_input<std::string>("CH-06", "chart_cells_knit_side_left_to_right")) {
    row += letter == 'K' ? 'k' : 'p';
  }
  const Grid grid = Grid::from_text(row + "\n" + row + "\n");
  const Plan planned = plan(grid, Machine{});
  std::vector<int> counted;
  for (const Stop& stop : planned.stops) {
    for (const Reform& reform : stop.reforms) {
      for (int place = 1; place <= grid.columns(); ++place) {
        if (needle_beside(planned.leftmost, place - 1) == reform.needle) counted.push_back(place);
      }
    }
  }
  std::sort(counted.begin(), counted.end());
  counted.erase(std::unique(counted.begin(), counted.end()), counted.end());
  CHECK(counted == reference("CH-06").at("expected").get<std::vector<int>>());
  CHECK(verify(grid, planned).verified);
}

}  // namespace machine_test
