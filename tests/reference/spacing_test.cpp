#include "latchwork/spacing.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/shaping.hpp"
#include "reference.hpp"

namespace spacing_test {

// Even spacing. Every value is read from check_values.json by its id; what it is compared with comes from the library.

using namespace latchwork;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_source;

namespace {

using Numbers = std::vector<int>;

/// {every, every + 1} and how many times each: the form of the sources.
void check_times(const std::string& id, const Spacing& spacing) {
  INFO(reference_source(id));
  const nlohmann::json& expected = reference(id).at("expected");
  CHECK(Numbers{spacing.every, spacing.every + spacing.step} == expected.at("every").get<Numbers>());
  CHECK(Numbers{spacing.times, spacing.longer_times} == expected.at("times").get<Numbers>());
}

}  // namespace

TEST_CASE("EV-02: increase rows up a piece, the last in the last row", "[reference][spacing]") {
  // K. TenDyke, 2014.
  const Spacing spacing =
      spaced_evenly(reference_input<int>("EV-02", "rows"), reference_input<int>("EV-02", "increase_rows"));
  check_times("EV-02", spacing);
  CHECK(spacing.positions.back() == 108);
  CHECK(spacing_text(spacing, Counted::rows) == "every 9th row 2 times, every 10th row 9 times");
}

TEST_CASE("SZ-06: an outline widened evenly on both sides has so many increase rows", "[reference][spacing][shaping]") {
  // K. TenDyke, 2014: as many rows as it takes, whatever their number; here 100.
  INFO(reference_source("SZ-06"));
  const int start = reference_input<int>("SZ-06", "start");
  const int end = reference_input<int>("SZ-06", "end");
  const int each_side = (end - start) / reference_input<int>("SZ-06", "sides");
  EdgeShape edge;
  edge.start = each_side;
  edge.events = edge_events(spaced_evenly(100, each_side, SpacingEnds::flat), -1);
  const Outline outline = outlined(100, end, edge, edge);
  CHECK(outline.rows.front().last - outline.rows.front().first + 1 == start);
  CHECK(outline.rows.back().last - outline.rows.back().first + 1 == end);
  const std::vector<ShapingStep> steps = shaping_steps(outline);
  CHECK(meets_reference("SZ-06", static_cast<double>(steps.size())));
  for (const ShapingStep& step : steps) CHECK((step.left == -1 && step.right == -1));
}

TEST_CASE("SZ-06, EV-02, SZ-08: a piece in mm comes to the stitches and increase rows of the sources",
          "[reference][article][shaping]") {
  // K. TenDyke, 2014: from 38 to 60 stitches in 108 rows. Her last increase is in the last row; here half a gap lies
  // below the first and above the last, so that of her gaps one is shared out between the ends. Gauge ours: a stitch of
  // 4 mm, a row of 2.5.
  INFO(reference_source("SZ-06") << "; " << reference_source("EV-02"));
  const int start = reference_input<int>("SZ-06", "start");
  const int end = reference_input<int>("SZ-06", "end");
  const int rows = reference_input<int>("EV-02", "rows");
  const auto panel = [](int high, int wide) { return Panel("p", Strip{"p", "plain", Grid(high, wide)}); };
  const auto stitches = [](const RowSpan& span) { return span.last - span.first + 1; };
  const Swatch swatch({{"plain", Counted::stitches, 25, 100, ""}, {"plain", Counted::rows, 40, 100, ""}});
  TargetPiece sleeve;
  sleeve.width_least_mm = sleeve.width_greatest_mm = 4.0 * start;
  sleeve.length_least_mm = sleeve.length_greatest_mm = 2.5 * rows;
  sleeve.shape = {{2.5 * rows, 2.5 * rows, 4.0 * end, 4.0 * end}};
  const Outline outline = piece_outline(sleeve, panel(rows, end), swatch);
  CHECK(stitches(outline.rows.front()) == start);
  CHECK(stitches(outline.rows.back()) == end);
  const std::vector<ShapingStep> steps = shaping_steps(outline);
  CHECK(meets_reference("SZ-06", static_cast<double>(steps.size())));
  const auto every = reference("EV-02").at("expected").at("every").get<Numbers>();
  Numbers counts{0, 0};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    CHECK((steps[i].left == -1 && steps[i].right == -1));
    if (i == 0) continue;
    const int gap = steps[i].row - steps[i - 1].row;
    REQUIRE((gap == every[0] || gap == every[1]));
    ++counts[gap == every[0] ? 0 : 1];
  }
  const auto times = reference("EV-02").at("expected").at("times").get<Numbers>();
  CHECK(counts[0] <= times[0]);
  CHECK(counts[1] <= times[1]);
  const int ends = steps.front().row + rows - steps.back().row;
  CHECK((ends == every[0] || ends == every[1]));

  // knittingunplugged.com, 2016: 9 and 13 in at 5.5 stitches to the inch are 50 and 72 stitches.
  INFO(reference_source("SZ-08"));
  const auto inches = reference_input<std::vector<double>>("SZ-08", "width_in");
  const auto wanted = reference("SZ-08").at("expected").get<Numbers>();
  const Swatch inch({{"plain", Counted::stitches, reference_input<double>("SZ-08", "sts_per_in"), 25.4, ""},
                     {"plain", Counted::rows, 7, 25.4, ""}});
  sleeve.width_least_mm = sleeve.width_greatest_mm = 25.4 * inches[0];
  sleeve.length_least_mm = sleeve.length_greatest_mm = 25.4 * 12;
  sleeve.shape = {{25.4 * 11, 25.4 * 11, 25.4 * inches[1], 25.4 * inches[1]}};
  const Outline arm = piece_outline(sleeve, panel(84, wanted[1]), inch);
  CHECK(stitches(arm.rows.front()) == wanted[0]);
  CHECK(stitches(arm.rows.back()) == wanted[1]);
}

TEST_CASE("EV-03, EV-04: 51 stitches, four increases", "[reference][spacing]") {
  // woolpackyarn.com: the intervals, and the places from half an interval in.
  Numbers gaps =
      spaced_evenly(reference_input<int>("EV-03", "stitches"), reference_input<int>("EV-03", "increases")).gaps;
  std::sort(gaps.rbegin(), gaps.rend());
  INFO(reference_source("EV-03"));
  CHECK(gaps == reference("EV-03").at("expected").get<Numbers>());

  INFO(reference_source("EV-04"));
  const Spacing halves = spaced_evenly(reference_input<int>("EV-04", "stitches"),
                                       reference_input<int>("EV-04", "increases"), SpacingEnds::half_ends);
  CHECK(halves.positions == reference("EV-04").at("expected").get<Numbers>());
  CHECK(spacing_text(halves, Counted::stitches) ==
        "after 6 stitches, then every 13th stitch 3 times; 6 stitches after the last");
}

TEST_CASE("EV-05, EV-12, EV-13: increases and decreases in the round", "[reference][spacing]") {
  // woolpackyarn.com; neasesneedlework.com, which prints 6.25 for EV-12: the split is derived.
  check_times("EV-05",
              spaced_evenly(reference_input<int>("EV-05", "stitches"), reference_input<int>("EV-05", "increases")));
  check_times("EV-12",
              spaced_evenly(reference_input<int>("EV-12", "stitches"), reference_input<int>("EV-12", "decreases")));
  check_times("EV-13",
              spaced_evenly(reference_input<int>("EV-13", "stitches"), reference_input<int>("EV-13", "increases")));
}

TEST_CASE("EV-09, EV-10: across a flat row there is one gap more than events", "[reference][spacing]") {
  // knitabit.net, whose printed answer to EV-09 sums to 101 of 120 stitches: the expected value is the corrected one.
  for (const char* id : {"EV-09", "EV-10"}) {
    const Spacing spacing =
        spaced_evenly(reference_input<int>(id, "stitches"), reference_input<int>(id, "increases"), SpacingEnds::flat);
    check_times(id, spacing);
    CHECK(static_cast<int>(spacing.gaps.size()) == reference_input<int>(id, "gaps"));
  }
}

TEST_CASE("EV-14, EV-15, EV-17, EV-19: the gaps are those of Euclid's rhythms, up to rotation",
          "[reference][spacing]") {
  // G. Toussaint, 2005; EV-15, EV-17 and EV-19 from memory.
  for (const char* id : {"EV-14", "EV-15", "EV-17", "EV-19"}) {
    INFO(reference_source(id));
    Numbers gaps = spaced_evenly(reference_input<int>(id, "slots"), reference_input<int>(id, "onsets")).gaps;
    const Numbers expected = reference(id).at("expected").get<Numbers>();
    bool same = false;
    for (std::size_t i = 0; i < gaps.size(); ++i) {
      std::rotate(gaps.begin(), gaps.begin() + 1, gaps.end());
      same = same || gaps == expected;
    }
    CHECK(same);
  }
}

TEST_CASE("EV-20: one to eight events in eight slots are Bresenham's lines", "[reference][spacing]") {
  // N. Gradwohl, 2017: a slot is marked where the line steps up, the first always. Round a tube the end is the start.
  INFO(reference_source("EV-20"));
  const auto expected = reference("EV-20").at("expected").get<std::vector<Numbers>>();
  for (int events = 1; events <= 8; ++events) {
    Numbers marks(8, 0);
    for (const int position : spaced_evenly(8, events).positions) marks[static_cast<std::size_t>(position % 8)] = 1;
    CHECK(marks == expected[static_cast<std::size_t>(events) - 1]);
  }
}

TEST_CASE("EV-21: q (k - r) + (q + 1) r = n, and the gaps are those, for every n to 200", "[reference][spacing]") {
  // The division algorithm; Harris and Reingold, 2004.
  INFO(reference_source("EV-21"));
  for (int n = 1; n <= 200; ++n) {
    for (int k = 1; k <= n; ++k) {
      const Spacing spacing = spaced_evenly(n, k);
      const int q = n / k;
      const int r = n % k;
      const auto shorter = std::count(spacing.gaps.begin(), spacing.gaps.end(), q);
      const auto longer = std::count(spacing.gaps.begin(), spacing.gaps.end(), q + 1);
      if (spacing.every == q && spacing.times == k - r && spacing.longer_times == r && shorter == k - r &&
          longer == r && spacing.every * spacing.times + (spacing.every + 1) * spacing.longer_times == n) {
        continue;
      }
      INFO(n << " with " << k << " events");
      REQUIRE(false);
    }
  }
}

}  // namespace spacing_test
