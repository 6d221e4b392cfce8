#include "latchwork/finding.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/shaping.hpp"

namespace finding_test {

using namespace latchwork;
using latchwork_test::refused_field;

namespace {

std::vector<Finding> of(FindingCode code, const Grid& grid, const Machine& machine = {}) {
  std::vector<Finding> all = findings(grid, machine);
  std::erase_if(all, [&](const Finding& finding) { return finding.code != code; });
  return all;
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// The box a finding covers: first and last row, first and last column.
std::vector<int> box(const Finding& finding) {
  return {finding.place.row, finding.last_row, finding.place.column, finding.last_column};
}

Grid roped(int rows, int columns, const std::vector<Crossing>& crossings) {
  Grid grid(rows, columns);
  for (const Crossing& crossing : crossings) grid.cross(crossing);
  return grid;
}

Crossing cross(int row, int column, int left, int right, int centre = 0) {
  return {.row = row, .column = column, .left = left, .centre = centre, .right = right};
}

}  // namespace

TEST_CASE("plain knitting on a bed that holds it has no findings", "[finding]") {
  CHECK(findings(Grid(10, 200), Machine{}).empty());
}

TEST_CASE("a panel wider than the bed is to be split where no crossing is cut", "[finding]") {
  Machine machine;
  machine.needles = 20;
  Grid grid(10, 30);
  grid.cross(cross(4, 13, 2, 2));  // the middle, column 15, lies inside this one
  const auto found = of(FindingCode::off_bed, grid, machine);
  REQUIRE(found.size() == 1);
  CHECK(found[0].severity == Severity::error);
  CHECK(found[0].value == 30);
  CHECK(found[0].limit == 20);
  CHECK(says(found[0].suggestion, "2 panels"));
  CHECK(says(found[0].suggestion, "column 13"));
  CHECK(of(FindingCode::off_bed, Grid(10, 20), machine).empty());
}

TEST_CASE("a panel is split in the fewest panels, though even ones would be more", "[finding]") {
  // Seams at columns 6, 9 and 17 only: parts of 9, 8 and 3 columns fit needles for 10, and a stitch more at each seam.
  Grid grid(4, 20);
  for (const auto& [column, left, right] : {std::array{0, 3, 3}, {6, 1, 2}, {9, 4, 4}, {17, 1, 2}}) {
    grid.cross(Crossing{.row = 2, .column = column, .left = left, .right = right});
  }
  Machine machine = Machine::generic(MachineClass::standard);
  machine.needles = 12;
  const std::vector<Finding> found = findings(grid, machine);
  REQUIRE(!found.empty());
  CHECK(found[0].code == FindingCode::off_bed);
  CHECK(says(found[0].suggestion, "3 panels, parted at the left of columns 9, 17"));
}

TEST_CASE("of very many cuts the first are named and the others counted", "[finding]") {
  Machine machine = Machine::generic(MachineClass::standard);
  machine.needles = 12;
  const std::vector<Finding> found = findings(Grid(1, 200), machine);
  REQUIRE(!found.empty());
  CHECK(says(found[0].suggestion, "20 panels"));
  CHECK(says(found[0].suggestion, "80 and 11 more"));
}

TEST_CASE("a panel locked together by crossings cannot be split", "[finding]") {
  Machine machine;
  machine.needles = 6;
  const auto found = of(FindingCode::off_bed, roped(3, 8, {cross(1, 0, 4, 4)}), machine);
  REQUIRE(found.size() == 1);
  CHECK(says(found[0].suggestion, "no split"));
}

TEST_CASE("a panel placed past the bed's end is told from which needle it fits", "[finding]") {
  Machine machine;
  machine.needles = 10;  // L5 to R5
  const auto [leftmost, bad, value, fits] = GENERATE(table<int, bool, int, std::string>({
      {-5, false, 0, ""},   // L5..L2
      {2, false, 0, ""},    // R2..R5
      {3, true, 6, "R2"},   // R3..R6
      {-6, true, 6, "L5"},  // L6..L3
  }));
  machine.leftmost = leftmost;
  const auto found = of(FindingCode::off_bed, Grid(3, 4), machine);
  CAPTURE(leftmost);
  REQUIRE(found.size() == (bad ? 1U : 0U));
  if (!bad) return;
  CHECK(found[0].value == value);
  CHECK(found[0].limit == 5);
  CHECK(says(found[0].suggestion, fits));
}

// Common practice, no source: tools come with 1, 2, 3 prongs; a wider group needs several.
TEST_CASE("a group wider than the widest tool hangs on several, and one too wide on none", "[finding]") {
  Machine machine;
  const auto two = of(FindingCode::no_tool, roped(4, 12, {cross(2, 1, 5, 5)}), machine);
  REQUIRE(two.size() == 1);
  CHECK(two[0].severity == Severity::advice);
  CHECK(two[0].value == 5);
  CHECK(two[0].limit == 3);
  CHECK(says(two[0].suggestion, "3 + 2 against 3 + 2"));

  machine.prongs = {2, 3};
  const auto none = of(FindingCode::no_tool, roped(4, 16, {cross(2, 1, 6, 6)}), machine);
  REQUIRE(none.size() == 1);
  CHECK(none[0].severity == Severity::error);
  CHECK(none[0].value == 6);

  machine.prongs = {};
  CHECK(of(FindingCode::no_tool, roped(4, 4, {cross(2, 1, 1, 1)}), machine).size() == 1);
  machine.prongs = {1, 2, 3};
  CHECK(of(FindingCode::no_tool, roped(4, 8, {cross(2, 1, 3, 3)}), machine).empty());
  CHECK(of(FindingCode::no_tool, roped(4, 8, {cross(2, 1, 1, 1)}), machine).empty());
}

TEST_CASE("the tools that would help are none that are at hand, and with them each group hangs on one", "[finding]") {
  const std::vector<std::vector<int>> kits = {{}, {1}, {2}, {3}, {4}, {1, 2}, {2, 3}, {1, 4}, {1, 2, 3}};
  for (const std::vector<int>& prongs : kits) {
    for (int left = 1; left <= 5; ++left) {
      for (int right = 1; right <= 5; ++right) {
        for (int centre = 0; centre <= 5; ++centre) {
          Machine machine;
          machine.prongs = prongs;
          const Grid grid = roped(4, 16, {cross(2, 0, left, right, centre)});
          const auto found = of(FindingCode::no_tool, grid, machine);
          if (found.empty()) continue;
          const std::string& helps = found[0].suggestion;
          CAPTURE(prongs, left, centre, right, helps);
          for (int size = 1; size <= 6; ++size) {
            const std::string named = std::to_string(size) + "-pronged";
            if (!says(helps, named + " tools") && !says(helps, named + " and ")) continue;
            CHECK(std::count(prongs.begin(), prongs.end(), size) == 0);
            machine.prongs.push_back(size);
          }
          const bool alike = left == right && right == centre;
          const bool third = says(helps, "stitch holder");
          CHECK((alike || !third));
          CHECK((third || of(FindingCode::no_tool, grid, machine).empty()));
          CHECK((found[0].limit == 0 || found[0].value > found[0].limit));
        }
      }
    }
  }
}

TEST_CASE("three groups of one size want a third tool, or something else for the centre", "[finding]") {
  Machine machine;  // of 1, 2 and 3 prongs
  const Grid threes = roped(4, 12, {cross(2, 1, 3, 3, 3)});
  const auto shared = of(FindingCode::no_tool, threes, machine);
  REQUIRE(shared.size() == 1);
  CHECK((shared[0].severity == Severity::advice && shared[0].value == 3 && shared[0].limit == 0));
  CHECK(says(shared[0].message,
             "lifts 3 + 3 stitches and 3 of the centre at once: a group needs several tools, with two of each tool at "
             "hand (1, 2, 3 prongs)"));
  CHECK(shared[0].suggestion ==
        "lift them on 3 against 3, the centre on 2 + 1, or have a third 3-pronged tool or a stitch holder at hand for "
        "the centre");

  const Grid twos = roped(4, 12, {cross(2, 1, 2, 2, 2)});
  machine.prongs = {2};
  const auto none = of(FindingCode::no_tool, twos, machine);
  REQUIRE(none.size() == 1);
  CHECK((none[0].severity == Severity::error && none[0].value == 2 && none[0].limit == 0));
  CHECK(says(none[0].message, "at once; two of each tool at hand (2 prongs) cannot carry them"));
  CHECK(none[0].suggestion ==
        "have 3-pronged tools at hand, or for the centre a third 2-pronged tool or a stitch holder, or cross fewer "
        "stitches");
  machine.prongs = {2, 3};
  CHECK(of(FindingCode::no_tool, twos, machine).empty());

  machine.prongs = {4};  // the centre is what has no tool
  const auto narrow = of(FindingCode::no_tool, roped(4, 12, {cross(2, 1, 4, 4, 2)}), machine);
  REQUIRE(narrow.size() == 1);
  CHECK(narrow[0].suggestion == "have 2-pronged tools at hand, or cross fewer stitches");

  machine.prongs = {20};  // wider than any tool is
  const auto wide = of(FindingCode::no_tool, roped(4, 60, {cross(2, 1, 21, 21)}), machine);
  REQUIRE(wide.size() == 1);
  CHECK((wide[0].value == 21 && wide[0].limit == 20 && wide[0].suggestion == "cross fewer stitches"));
}

TEST_CASE("of crossings told once, value, limit and help are those of the widest", "[finding]") {
  const auto both = of(FindingCode::no_tool, roped(8, 14, {cross(2, 1, 3, 3, 3), cross(6, 1, 5, 5)}));
  REQUIRE(both.size() == 1);
  CHECK((both[0].value == 5 && both[0].limit == 3));
  CHECK(says(both[0].suggestion, "have 5-pronged tools at hand"));
}

// Wider than 3/3 is hard on home machines: alessandrina.com, Dec 2014; estherkateblog, 2016.
TEST_CASE("a crossing that travels more than three stitches is tight, and a ladder beside it gives slack",
          "[finding]") {
  CHECK(of(FindingCode::tight_crossing, roped(4, 8, {cross(2, 1, 3, 3)})).empty());
  Grid grid = roped(4, 10, {cross(2, 1, 4, 4)});
  const auto tight = of(FindingCode::tight_crossing, grid);
  REQUIRE(tight.size() == 1);
  CHECK(tight[0].severity == Severity::warning);
  CHECK(tight[0].value == 4);
  CHECK(tight[0].limit == 3);
  CHECK(says(tight[0].message, "18.0 mm"));  // 4 x 4.5 mm
  CHECK(says(tight[0].suggestion, "ladder"));
  for (int row = 1; row <= 4; ++row) grid.set(row, 9, Cell::none);
  const auto eased = of(FindingCode::tight_crossing, grid);
  REQUIRE(eased.size() == 1);
  CHECK(eased[0].severity == Severity::advice);
  CHECK(says(eased[0].message, "slack"));
  // A centre is travelled over: 2/2/2 moves four places.
  CHECK(of(FindingCode::tight_crossing, roped(4, 8, {cross(2, 1, 2, 2, 2)}))[0].value == 4);
}

// Start with as many rows between crossings as stitches crossed (2/2: 4, 3/3: 6): alessandrina.com, Dec 2014.
TEST_CASE("crossings of four stitches follow each other after four rows, of six after six", "[finding][reference]") {
  const auto [group, interval, severity] = GENERATE(table<int, int, int>({
      {2, 4, -1},  // good
      {2, 3, 0},   // advice
      {2, 1, 1},   // warning: less than half
      {3, 6, -1},
      {3, 5, 0},
      {3, 2, 1},
  }));
  CAPTURE(group, interval);
  const auto found =
      of(FindingCode::short_interval, roped(12, 8, {cross(2, 1, group, group), cross(2 + interval, 1, group, group)}));
  REQUIRE(found.size() == (severity < 0 ? 0U : 1U));
  if (severity < 0) return;
  CHECK(static_cast<int>(found[0].severity) == severity);
  CHECK(found[0].value == interval);
  CHECK(found[0].limit == 2 * group);
  CHECK(found[0].place.row == 2 + interval);
}

TEST_CASE("the interval is counted along wales, not columns", "[finding]") {
  // The second crossing takes one wale of the first where it has gone to, and two that have not crossed.
  CHECK(of(FindingCode::short_interval, roped(8, 8, {cross(2, 0, 1, 2), cross(3, 2, 2, 1)})).size() == 1);
  // Beside it, not over it.
  CHECK(of(FindingCode::short_interval, roped(8, 8, {cross(2, 0, 1, 2), cross(3, 3, 2, 1)})).empty());
}

TEST_CASE("a crossing after the last row is open", "[finding]") {
  const auto found = of(FindingCode::open_crossing, roped(6, 4, {cross(6, 0, 2, 2)}));
  REQUIRE(found.size() == 1);
  CHECK(box(found[0]) == std::vector{6, 6, 0, 3});
  CHECK(of(FindingCode::open_crossing, roped(6, 4, {cross(5, 0, 2, 2)})).empty());
}

TEST_CASE("a stack that nothing closes is open, at the top and below a shaped edge", "[finding]") {
  const auto top = of(FindingCode::open_stack, Grid::from_text("ktk\nktk\nkkk"));
  REQUIRE(top.size() == 1);
  CHECK(top[0].severity == Severity::error);
  CHECK(box(top[0]) == std::vector{2, 3, 1, 1});
  CHECK(of(FindingCode::open_stack, Grid::from_text("k.kk\nkskk\nkkkk")).size() == 1);
  CHECK(of(FindingCode::open_stack, Grid::from_text("kpk\nktk\nkkk")).empty());
}

TEST_CASE("a tuck in row 1 holds the cast-on's loop, if there is one", "[finding]") {
  Machine machine;
  const Grid grid = Grid::from_text("kkk\nktk");
  CHECK(of(FindingCode::no_held_loop, grid, machine).empty());
  machine.cast_on_loops = false;
  const auto found = of(FindingCode::no_held_loop, grid, machine);
  REQUIRE(found.size() == 1);
  CHECK(found[0].severity == Severity::error);
  CHECK(of(FindingCode::no_held_loop, Grid::from_text("kkk\nktk\nkkk"), machine).empty());
}

// Normally at most four tucks in succession on one needle: study note after Spencer (scribd 465394887).
TEST_CASE("more than four tucks on one another are a high stack", "[finding][reference]") {
  CHECK(of(FindingCode::high_stack, Grid::from_text("kkk\nktk\nktk\nktk\nktk\nkkk")).empty());
  const auto found = of(FindingCode::high_stack, Grid::from_text("kkk\nktk\nktk\nktk\nktk\nktk\nkkk"));
  REQUIRE(found.size() == 1);
  CHECK(found[0].value == 5);
  CHECK(found[0].limit == 4);
  CHECK(box(found[0]) == std::vector{2, 6, 1, 1});
  CHECK(says(found[0].message, "5 tucks stand on one another from row 2 of column 1; the needle's hook takes 4"));
}

// Common practice, no source: a slip's strand passes the needle's hook, and only a tuck's lies in it.
TEST_CASE("a stack with a slip in it is called high by its limit, not by what a hook takes", "[finding]") {
  const std::string text = GENERATE("kkk\nksk\nksk\nksk\nksk\nksk\nkkk", "kkk\nktk\nktk\nksk\nktk\nktk\nkkk");
  const auto found = of(FindingCode::high_stack, Grid::from_text(text));
  REQUIRE(found.size() == 1);
  CHECK(found[0].value == 5);
  CHECK(says(found[0].message, "5 tucks or slips"));
  CHECK(says(found[0].message, "the limit is 4"));
  CHECK_FALSE(says(found[0].message, "hook"));
}

TEST_CASE("a stack that is too high and too deep is told to close after one number of rows, the stricter",
          "[finding]") {
  // Closed by a purl, so that it cannot be held.
  const auto [tuck_limit, max_ladder, rows] = GENERATE(table<int, int, std::string>({
      {4, 12, "after 4 rows"},
      {8, 5, "after 4 rows"},  // the ladder is the stricter: the closing purl is its fifth row
      {12, 2, "after 1 row"},
      {12, 12, "after 11 rows"},
  }));
  Machine machine;
  machine.tuck_limit = tuck_limit;
  machine.max_ladder = max_ladder;
  std::string text = "kkk\nkpk\n";
  for (int i = 0; i < 13; ++i) text += "ktk\n";
  const Grid grid = Grid::from_text(text + "kkk");
  const auto high = of(FindingCode::high_stack, grid, machine);
  const auto deep = of(FindingCode::out_of_reach, grid, machine);
  REQUIRE(high.size() == 1);
  REQUIRE(deep.size() == 1);
  CAPTURE(high[0].suggestion, deep[0].suggestion);
  CHECK(says(high[0].suggestion, rows));
  CHECK(says(deep[0].suggestion, rows));
  CHECK(says(deep[0].suggestion, "or allow ladders of 14 rows"));
  CHECK(high[0].limit == tuck_limit);
  CHECK(deep[0].limit == max_ladder);
}

TEST_CASE("a high stack that is held is not told to close for a ladder's sake", "[finding]") {
  Machine machine;
  machine.max_ladder = 3;
  const Grid grid = Grid::from_text("kkk\nktk\nktk\nktk\nktk\nktk\nkkk");
  CHECK(of(FindingCode::out_of_reach, grid, machine).empty());
  const auto high = of(FindingCode::high_stack, grid, machine);
  REQUIRE(high.size() == 1);
  CHECK(says(high[0].suggestion, "after 4 rows"));
}

// Keep a knit stitch at each end or the tuck slips off: Spencer, ch. 18.
TEST_CASE("tuck and slip at an edge or beside a ladder are errors, a purl there a warning", "[finding][reference]") {
  const auto [text, code, severity, count] = GENERATE(table<std::string, FindingCode, Severity, std::size_t>({
      {"kkk\ntkk\nkkk", FindingCode::tuck_at_edge, Severity::error, 1},
      {"kkk\nkks\nkkk", FindingCode::slip_at_edge, Severity::error, 1},
      {"kkk\nkkp\nkkk", FindingCode::purl_at_edge, Severity::warning, 1},
      {"k.kkk\nk.tkk\nk.kkk", FindingCode::tuck_at_edge, Severity::error, 1},
      {"kkkpkk\nkk.kkk", FindingCode::purl_at_edge, Severity::warning, 0},  // the ladder ends below
      {"kk.pkk\nkk.kkk", FindingCode::purl_at_edge, Severity::warning, 1},
      {"kkk\nktk\nkkk", FindingCode::tuck_at_edge, Severity::error, 0},
      {"kkk\nksk\nkkk", FindingCode::slip_at_edge, Severity::error, 0},
      {"kkk\nkpk\nkkk", FindingCode::purl_at_edge, Severity::warning, 0},
  }));
  CAPTURE(text);
  const auto found = of(code, Grid::from_text(text));
  REQUIRE(found.size() == count);
  if (count > 0) CHECK(found[0].severity == severity);
}

// Floats are normally at most six needles: textilethelp, 2020.
TEST_CASE("a float over more than six needles is long", "[finding][reference]") {
  CHECK(of(FindingCode::long_float, Grid::from_text("kkkkkkkk\nkssssssk\nkkkkkkkk")).empty());
  const auto found = of(FindingCode::long_float, Grid::from_text("kkkkkkkkk\nksssssssk\nkkkkkkkkk"));
  REQUIRE(found.size() == 1);
  CHECK(found[0].value == 7);
  CHECK(found[0].limit == 6);
  CHECK(box(found[0]) == std::vector{2, 2, 1, 7});
}

TEST_CASE("tucks side by side would carry one straight strand in hold", "[finding]") {
  const auto found = of(FindingCode::tucks_side_by_side, Grid::from_text("kkkkk\nkttkk\nkkkkk"));
  REQUIRE(found.size() == 1);
  CHECK(found[0].value == 2);
  CHECK(box(found[0]) == std::vector{2, 2, 1, 2});
  CHECK(of(FindingCode::tucks_side_by_side, Grid::from_text("kkkkk\nktktk\nkkkkk")).empty());
}

TEST_CASE("wales that begin and end inside the panel are shaping events", "[finding]") {
  const Grid grid = Grid::from_text("kkkk\nk.kk\nk.kk\nkkkk");
  const auto ends = of(FindingCode::wale_ends, grid);
  const auto begins = of(FindingCode::wale_begins, grid);
  REQUIRE(ends.size() == 1);
  REQUIRE(begins.size() == 1);
  CHECK(box(ends[0]) == std::vector{1, 1, 1, 1});
  CHECK(box(begins[0]) == std::vector{4, 4, 1, 1});
  CHECK(says(begins[0].message, "eyelet"));
  // A ladder from bottom to top is none.
  CHECK(of(FindingCode::wale_begins, Grid::from_text("k.k\nk.k")).empty());
  CHECK(of(FindingCode::wale_ends, Grid::from_text("k.k\nk.k")).empty());
}

TEST_CASE("a stack deeper than the greatest ladder is out of reach, unless it can be held", "[finding]") {
  Machine machine;
  machine.max_ladder = 3;
  const auto found = of(FindingCode::out_of_reach, Grid::from_text("kpk\nktk\nktk\nktk\nkkk"), machine);
  REQUIRE(found.size() == 1);
  CHECK(found[0].severity == Severity::error);
  CHECK(found[0].value == 4);
  CHECK(found[0].limit == 3);
  CHECK(box(found[0]) == std::vector{2, 5, 1, 1});
  CHECK(of(FindingCode::out_of_reach, Grid::from_text("kkk\nktk\nktk\nktk\nkkk"), machine).empty());  // by hold
  machine.max_ladder = 4;
  CHECK(of(FindingCode::out_of_reach, Grid::from_text("kpk\nktk\nktk\nktk\nkkk"), machine).empty());
  machine.cast_on_loops = false;
  CHECK(of(FindingCode::out_of_reach, Grid::from_text("kkk\nkpk"), machine).size() == 1);
}

TEST_CASE("an edge that is not knit all the way is told once for each side", "[finding]") {
  const auto found = of(FindingCode::no_edge_stitch, Grid::from_text("kkp\nkkk\npkk\nkkk\npkk"));
  REQUIRE(found.size() == 2);
  CHECK(box(found[0]) == std::vector{1, 3, 0, 0});
  CHECK(found[0].value == 2);
  CHECK(box(found[1]) == std::vector{5, 5, 2, 2});
  CHECK(of(FindingCode::no_edge_stitch, Grid::from_text("kpk\nkpk")).empty());
}

TEST_CASE("like findings that touch are told once, with their extent", "[finding]") {
  // Two tuck ribs side by side: the tucks of rows 2, 4 and 6 are one matter.
  const auto ribs = of(FindingCode::tucks_side_by_side, Grid::from_text("kkkk\nkttk\nkkkk\nkttk\nkkkk\nkttk\nkkkk"));
  REQUIRE(ribs.size() == 1);
  CHECK(box(ribs[0]) == std::vector{2, 6, 1, 2});
  CHECK(says(ribs[0].message, "3 such"));
  // Far apart across, they are two.
  CHECK(of(FindingCode::tucks_side_by_side, Grid::from_text("kkkkkkk\nkttkttk\nkkkkkkk")).size() == 2);
  // A rope's tight crossings are one matter however far apart.
  const auto rope = of(FindingCode::tight_crossing, roped(40, 10, {cross(8, 1, 4, 4), cross(38, 1, 4, 4)}));
  REQUIRE(rope.size() == 1);
  CHECK(box(rope[0]) == std::vector{8, 38, 1, 8});
}

TEST_CASE("findings come worst first, then by row and column", "[finding]") {
  const auto all = findings(Grid::from_text("pkt\nkkk\nttk\nkkk"), Machine{});
  REQUIRE(all.size() > 3);
  for (std::size_t i = 1; i < all.size(); ++i) {
    CHECK(all[i - 1].severity >= all[i].severity);
    if (all[i - 1].severity == all[i].severity) {
      CHECK(std::pair(all[i - 1].place.row, all[i - 1].place.column) <=
            std::pair(all[i].place.row, all[i].place.column));
    }
    CHECK(!all[i].message.empty());
    CHECK(!all[i].suggestion.empty());
  }
}

TEST_CASE("a panel without a single stitch cannot be knitted", "[finding]") {
  const std::vector<Finding> found = findings(Grid::from_text("...\n..."), Machine{});
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == FindingCode::no_stitch);
  CHECK(found[0].severity == Severity::error);
  CHECK((found[0].place.row == 1 && found[0].last_row == 2 && found[0].last_column == 2));
  CHECK(findings(Grid::from_text("...\n.k."), Machine{}).front().code != FindingCode::no_stitch);
}

TEST_CASE("cloth in two pieces is an error at the row that stands on nothing", "[finding]") {
  // Rows from the top down: row 3 shares no column with row 2.
  const std::vector<Finding> found = findings(Grid::from_text("..kk\n..kk\nkk..\nkk.."), Machine{});
  REQUIRE(!found.empty());
  const Finding& apart = found.front();
  CHECK(apart.code == FindingCode::two_pieces);
  CHECK(apart.severity == Severity::error);
  CHECK((apart.place.row == 3 && apart.last_row == 3 && apart.place.column == 2 && apart.last_column == 3));
  CHECK((apart.value == 0 && apart.limit == 1));
  CHECK(apart.message == "rows 2 and 3 have no column in common: they are two pieces");
  CHECK(!apart.suggestion.empty());
  const auto pieces = [](const char* text) {
    std::vector<int> rows;
    for (const Finding& finding : findings(Grid::from_text(text), Machine{})) {
      if (finding.code == FindingCode::two_pieces) rows.push_back(finding.place.row);
    }
    return rows;
  };
  CHECK(pieces("kk..\n..kk\nkk..") == std::vector<int>{2, 3});
  CHECK(pieces("kkkk\n....\nkkkk") == std::vector<int>{3});
  CHECK(pieces(".k.k\nk.k.") == std::vector<int>{2});  // ladders that change places
  CHECK(pieces("....\n.kkk\nkk..\n....").empty());     // one wale is enough; bare rows at the ends are no cloth
}

// Common practice, no source: several stitches at once are bound off or cast on with the yarn, which is where the
// carriage is. After even rows that is the operator's right, the left of the right side.
TEST_CASE("stitches bound off or cast on at once where the yarn is not are told", "[finding][shaping]") {
  const auto away = [](const EdgeShape& left, const EdgeShape& right, bool starts_right = true) {
    Machine machine;
    machine.carriage_starts_right = starts_right;
    const Panel panel("p", Strip{"p", "p", Grid(12, 20)});
    std::vector<Finding> out;
    for (Finding& each : findings(shaped(panel, outlined(12, 20, left, right)).grid(), machine)) {
      if (each.code == FindingCode::yarn_away) out.push_back(std::move(each));
    }
    return out;
  };
  const EdgeShape after_4{.events = {{4, 3}}};
  const EdgeShape after_5{.events = {{5, 3}}};
  CHECK(away(after_4, {}).empty());
  CHECK(away({}, after_5).empty());
  CHECK(away(after_4, after_5).empty());  // a row later, as is usual
  REQUIRE(away({}, after_4).size() == 1);
  const Finding right = away(after_4, after_4).at(0);
  CHECK(right.severity == Severity::warning);
  CHECK(right.place.row == 4);
  CHECK(right.place.column == 17);
  CHECK(right.last_column == 19);
  CHECK(right.value == 3);
  CHECK(right.message.find("bound off at the right edge, the operator's left, after row 4") != std::string::npos);
  CHECK(away(after_5, after_5).at(0).place.column == 0);
  // The carriage starts on the left: the other way round.
  CHECK(away(after_4, after_5, false).size() == 2);
  CHECK(away(after_5, after_4, false).empty());
  // Cast on; one at a time may be moved or made at either edge.
  const EdgeShape joins{.start = 3, .events = {{4, -3}}};
  CHECK(away({}, joins).at(0).message.find("cast on at the right edge") != std::string::npos);
  CHECK(away(joins, {}).empty());
  const EdgeShape singles{.events = {{4, 1, 1, 3}}};
  CHECK(away(singles, singles).empty());
}

TEST_CASE("every finding code has a name, and other numbers have none", "[finding]") {
  for (int code = 1; code <= 39; ++code) {
    CAPTURE(code);
    CHECK(!finding_name(static_cast<FindingCode>(code)).empty());
  }
  CHECK(finding_name(FindingCode::tuck_at_edge) == "tuck_at_edge");
  CHECK(finding_name(static_cast<FindingCode>(0)).empty());
  CHECK(finding_name(static_cast<FindingCode>(42)).empty());
}

TEST_CASE("a machine out of its ranges is refused with the field", "[finding][machine][error]") {
  const auto [field, spoil] = GENERATE(table<std::string, void (*)(Machine&)>({
      {"machine.needles", [](Machine& m) { m.needles = 1; }},
      {"machine.needles", [](Machine& m) { m.needles = 4001; }},
      {"machine.pitch_mm", [](Machine& m) { m.pitch_mm = 0; }},
      {"machine.pitch_mm", [](Machine& m) { m.pitch_mm = 50.5; }},
      {"machine.leftmost", [](Machine& m) { m.leftmost = -4001; }},
      {"machine.prongs[1]", [](Machine& m) { m.prongs = {1, 0}; }},
      {"machine.prongs[0]", [](Machine& m) { m.prongs = {21}; }},
      {"machine.prongs", [](Machine& m) { m.prongs.assign(21, 1); }},
      {"machine.prongs[2]", [](Machine& m) { m.prongs = {2, 3, 2}; }},
      {"machine.comfortable_crossing", [](Machine& m) { m.comfortable_crossing = 0; }},
      {"machine.tuck_limit", [](Machine& m) { m.tuck_limit = 0; }},
      {"machine.float_limit", [](Machine& m) { m.float_limit = -1; }},
      {"machine.max_ladder", [](Machine& m) { m.max_ladder = 0; }},
  }));
  Machine machine;
  spoil(machine);
  CAPTURE(field);
  CHECK_THROWS_MATCHES(findings(Grid(2, 2), machine), Error, refused_field(ErrorCode::bad_argument, field));
}

}  // namespace finding_test
