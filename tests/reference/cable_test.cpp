#include <algorithm>
#include <array>
#include <functional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/crossing.hpp"
#include "latchwork/motif.hpp"
#include "reference.hpp"
#include "walk.hpp"

namespace cable_test {

// Cables as permutations and braids. Every value is read from check_values.json by its id; what is compared with it
// comes from the library: the crossings of its motifs, and its wales followed through them.

using namespace latchwork;
using latchwork_test::carried_up;
using latchwork_test::home_after;
using latchwork_test::inversions;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

// A knit tile with one crossing after each of its rows, then a plain row.
Grid crossed(int columns, std::vector<Crossing> crossings) {
  Grid grid(static_cast<int>(crossings.size()) + 1, columns);
  int row = 0;
  for (Crossing& crossing : crossings) {
    crossing.row = ++row;
    grid.cross(crossing);
  }
  return grid;
}

Crossing at(int column, int left, int right, Lean lean) {
  Crossing crossing;
  crossing.column = column;
  crossing.left = left;
  crossing.right = right;
  crossing.lean = lean;
  return crossing;
}

// n/m RC has n on the left, n/m LC has n on the right.
Crossing front_over_back(int front, int back, Lean lean) {
  return lean == Lean::right ? at(0, front, back, lean) : at(0, back, front, lean);
}

// Signed passings of single wales: left * right for each crossing, + for a right cross.
int writhe(const Grid& grid) {
  int out = 0;
  for (const Crossing& crossing : grid.crossings()) {
    out += (crossing.lean == Lean::right ? 1 : -1) * crossing.left * crossing.right;
  }
  return out;
}

// The braid of a three-column tile of 1/1 crossings under the standard map of B3 into SL(2,Z): a right cross at place
// 1-2 is s1 = [[1,1],[0,1]], at 2-3 s2 = [[1,0],[-1,1]], a left cross the inverse.
using Matrix = std::array<int, 4>;
Matrix times(const Matrix& a, const Matrix& b) {
  return {a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3]};
}
Matrix braid_matrix(const Grid& grid) {
  Matrix out = {1, 0, 0, 1};
  for (const Crossing& crossing : grid.crossings()) {
    const int sign = crossing.lean == Lean::right ? 1 : -1;
    out = times(out, crossing.column == 0 ? Matrix{1, sign, 0, 1} : Matrix{1, 0, -sign, 1});
  }
  return out;
}

}  // namespace

TEST_CASE("CB-02..08: a crossing repeated on the same stitches brings each wale home when arithmetic says",
          "[reference][cable]") {
  // Order of a cyclic shift of a+b places by a: (a+b)/gcd(a,b). Derived.
  const std::string id = GENERATE("CB-02", "CB-03", "CB-04", "CB-07", "CB-08");
  const Lean lean = GENERATE(Lean::left, Lean::right);
  INFO(reference_source(id));
  const nlohmann::json& inputs = reference_inputs(id);
  const Strip strip = rope(inputs.at("front"), inputs.at("back"), 6, lean);
  CHECK(home_after(strip.grid, 20) == reference(id).at("expected").get<int>());
}

TEST_CASE("CB-09: front over back is front times back single passings", "[reference][cable]") {
  // Each front strand passes each back strand once. Derived.
  INFO(reference_source("CB-09"));
  const nlohmann::json& inputs = reference_inputs("CB-09");
  for (const Lean lean : {Lean::left, Lean::right}) {
    const Strip strip = rope(inputs.at("front"), inputs.at("back"), 8, lean);
    CHECK(inversions(carried_up(strip.grid, 1)) == reference("CB-09").at("expected").get<int>());
  }
}

TEST_CASE("CB-10: the parity of a crossing's permutation is that of left times right", "[reference][cable]") {
  // sign = (-1)^(a*b). Derived.
  INFO(reference_source("CB-10"));
  const nlohmann::json& groups = reference_inputs("CB-10").at("crossings");
  const nlohmann::json& expected = reference("CB-10").at("expected");
  REQUIRE(groups.size() == expected.size());
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const Strip strip = rope(groups[i][0], groups[i][1], 6, Lean::right);
    CHECK((inversions(carried_up(strip.grid, 1)) % 2 == 0 ? 1 : -1) == expected[i].get<int>());
  }
}

TEST_CASE("CB-11: the six rearrangements of three columns come home after 1, 2 or 3 repeats", "[reference][cable]") {
  // "Permutation cardi", geekknitting.blogspot.com, April 2017. Published.
  INFO(reference_source("CB-11"));
  const nlohmann::json& permutations = reference_inputs("CB-11").at("permutations_of_3_columns");
  const nlohmann::json& expected = reference("CB-11").at("expected");
  REQUIRE(permutations.size() == 6);
  for (std::size_t i = 0; i < permutations.size(); ++i) {
    // Made of single crossings, by sorting neighbours: the wale wanted at each place is moved there from the right.
    const auto wanted = permutations[i].get<std::vector<int>>();
    std::vector<int> now = {1, 2, 3};
    std::vector<Crossing> crossings;
    for (std::size_t place = 0; place < 3; ++place) {
      auto from = std::find(now.begin(), now.end(), wanted[place]);
      for (; from != now.begin() + static_cast<std::ptrdiff_t>(place); --from) {
        std::iter_swap(from, from - 1);
        crossings.push_back(at(static_cast<int>(from - now.begin()) - 1, 1, 1, Lean::right));
      }
    }
    const Grid grid = crossed(3, crossings);
    std::vector<int> carried = carried_up(grid, 1);
    for (int& column : carried) ++column;
    CHECK(carried == wanted);
    CHECK(home_after(grid, 10) == expected[i].get<int>());
  }
}

TEST_CASE("CB-12: a three-group plait is home after three repeats and six crossings", "[reference][cable]") {
  // s1 s2^-1 permutes three strands in a 3-cycle; cables as permutations: Markande and Matsumoto, Bridges 2020.
  INFO(reference_source("CB-12"));
  const int stitches = GENERATE(1, 2, 3);
  const Lean lean = GENERATE(Lean::left, Lean::right);
  const Grid grid = plait(stitches, 4, lean).grid;
  const nlohmann::json& expected = reference("CB-12").at("expected");
  const int repeats = home_after(grid, 10);
  CHECK(repeats == expected[0].get<int>());
  CHECK(static_cast<int>(grid.repeated_up(repeats).crossings().size()) == expected[1].get<int>());
}

TEST_CASE("CB-13: the plait is never undone: the traces of its braid grow", "[reference][cable]") {
  // Image of (s1 s2^-1)^n in SL(2,Z); M. Cheng and R. Laugwitz, The Braids on Your Blanket, arXiv 2310.12192. Derived.
  INFO(reference_source("CB-13"));
  const nlohmann::json& powers = reference_inputs("CB-13").at("n");
  const nlohmann::json& expected = reference("CB-13").at("expected");
  for (std::size_t i = 0; i < powers.size(); ++i) {
    for (const Lean lean : {Lean::left, Lean::right}) {
      const Matrix matrix = braid_matrix(plait(1, 3, lean).grid.repeated_up(powers[i].get<int>()));
      CHECK(matrix[0] + matrix[3] == expected[i].get<int>());
    }
  }
}

TEST_CASE("CB-14: crossing 1-2, 2-3, 1-2 is the braid and the permutation of 2-3, 1-2, 2-3", "[reference][cable]") {
  // Artin's braid relation. Derived.
  INFO(reference_source("CB-14"));
  REQUIRE(reference("CB-14").at("expected").get<bool>());
  for (const Lean lean : {Lean::left, Lean::right}) {
    const Grid one = crossed(3, {at(0, 1, 1, lean), at(1, 1, 1, lean), at(0, 1, 1, lean)});
    const Grid other = crossed(3, {at(1, 1, 1, lean), at(0, 1, 1, lean), at(1, 1, 1, lean)});
    CHECK(carried_up(one, 1) == carried_up(other, 1));
    CHECK(braid_matrix(one) == braid_matrix(other));
    // (s1 s2)^3, a full twist of three strands, is -I: home as a permutation, not undone as a braid.
    const Grid twist = crossed(3, {at(0, 1, 1, lean), at(1, 1, 1, lean)}).repeated_up(3);
    CHECK(home_after(twist, 1) == 1);
    CHECK(braid_matrix(twist) == Matrix{-1, 0, 0, -1});
  }
}

TEST_CASE("CB-15: a wave takes back its twist, a rope keeps it", "[reference][cable]") {
  // Sum of signed passings: alternating leans cancel; the same lean twice is a full twist, 8 for 2/2. Derived.
  INFO(reference_source("CB-15"));
  const Strip alternating = wave(2, 4);
  REQUIRE(alternating.grid.crossings().size() == reference_inputs("CB-15").at("crossings").size());
  CHECK(writhe(alternating.grid) == reference("CB-15").at("expected").get<int>());
  CHECK(home_after(alternating.grid, 5) == 1);
  const Grid twisted = rope(2, 2, 4, Lean::right).grid.repeated_up(2);
  CHECK(writhe(twisted) == 8);
  CHECK(home_after(twisted, 5) == 1);
}

TEST_CASE("CB-16, CB-17: the front stitches of a 2/1 cross travel to the side that names it", "[reference][cable]") {
  // R. Gibbs, How to understand cable symbols; T3B and T3F of a designer's abbreviation sheet. Published.
  const std::string id = GENERATE("CB-16", "CB-17");
  INFO(reference_source(id));
  const nlohmann::json& inputs = reference_inputs(id);
  const Lean lean = id == "CB-16" ? Lean::right : Lean::left;
  const Crossing crossing = front_over_back(2, 1, lean);
  CHECK(crossing_name(crossing) == inputs.at("crossing").get<std::string>());
  const auto below = inputs.at("row_below_left_to_right_RS").get<std::vector<std::string>>();
  std::vector<std::string> above;
  for (const int column : carried_up(crossed(3, {crossing}), 1))
    above.push_back(below[static_cast<std::size_t>(column)]);
  CHECK(above == reference(id).at("expected").get<std::vector<std::string>>());
}

TEST_CASE("CB-18: the older names of crossings, by what is held, are these n/m names", "[reference][cable]") {
  // R. Gibbs, How to understand cable symbols; a designer's abbreviation sheet. Published: held at the Back crosses
  // Right, held at the Front crosses Left, T purls the stitches behind. In our grids those purls are cells, so our name
  // has no P.
  INFO(reference_source("CB-18"));
  const auto names = reference_input<std::vector<std::string>>("CB-18", "old_name");
  const auto expected = reference("CB-18").at("expected").get<std::vector<std::string>>();
  REQUIRE(names.size() == expected.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    // Worked from the right of the chart: held at the back, the stitches on the right pass behind. An odd number has
    // the greater half in front.
    const int stitches = names[i][1] - '0';
    const int front = (stitches + 1) / 2;
    const bool purled = names[i][0] == 'T';
    const Lean lean = names[i][2] == 'B' ? Lean::right : Lean::left;
    const Crossing crossing = front_over_back(front, stitches - front, lean);
    std::string name = expected[i];
    CHECK((name.find('P') != std::string::npos) == purled);
    name.erase(std::remove(name.begin(), name.end(), 'P'), name.end());
    CHECK(crossing_name(crossing) == name);
  }
}

TEST_CASE("CB-22: the longest way home of a rearrangement of n strands is Landau's", "[reference][cable]") {
  // From memory: OEIS A000793. Every way to part n columns into groups is tried, each group turning round by one
  // crossing of one stitch over the others.
  INFO(reference_source("CB-22"));
  const nlohmann::json& strands = reference_inputs("CB-22").at("strands");
  const nlohmann::json& expected = reference("CB-22").at("expected");
  for (std::size_t i = 0; i < strands.size(); ++i) {
    const int n = strands[i].get<int>();
    int longest = 0;
    std::vector<int> groups;
    const std::function<void(int, int)> part = [&](int left, int most) {
      if (left == 0) {
        Grid grid(1, n);
        int column = 0;
        for (const int group : groups) {
          Crossing crossing = at(column, 1, group - 1, Lean::right);
          crossing.row = 1;
          if (group > 1) grid.cross(crossing);
          column += group;
        }
        longest = std::max(longest, home_after(grid, 40));
        return;
      }
      for (int group = std::min(left, most); group >= 1; --group) {
        groups.push_back(group);
        part(left - group, group);
        groups.pop_back();
      }
    };
    part(n, n);
    CHECK(longest == expected[i].get<int>());
  }
}

}  // namespace cable_test
