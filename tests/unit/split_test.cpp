#include "latchwork/split.hpp"

#include <algorithm>
#include <limits>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/session.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/size.hpp"
#include "latchwork/yarn_need.hpp"
#include "random.hpp"

namespace split_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::Random;
using latchwork_test::refused_field;

namespace {

Machine bed(int needles) {
  Machine machine;
  machine.needles = needles;
  return machine;
}

/// 4 knit, 6 of a rope, 4 knit, the rope's mirror image, 4 knit: 24 columns.
Panel two_ropes(int rows = 16) {
  const Strip right = rope(3, 3, 8, Lean::right);
  const Strip strips[] = {stockinette(4), right, stockinette(4), right.mirrored(), stockinette(4)};
  return join_strips("two ropes", rows, strips);
}

std::vector<SplitPart> parts(std::initializer_list<SplitPart> list) {
  return list;
}

/// All parts without their seams, side by side again.
Grid sewn(const Panel& panel, const std::vector<SplitPart>& found) {
  std::vector<Grid> pieces;
  for (const SplitPart& part : found) {
    const Grid grid = split_part(panel, part).grid();
    pieces.push_back(grid.sliced(1, part.seam_left, grid.rows(), grid.columns() - part.seam_left - part.seam_right));
  }
  Grid out = pieces.front();
  for (std::size_t i = 1; i < pieces.size(); ++i) out = out.beside(pieces[i]);
  return out;
}

}  // namespace

TEST_CASE("a panel wider than the bed is parted between its motifs, and seam stitches are added", "[split]") {
  const Panel panel = two_ropes();
  CHECK(split(panel, bed(24)) == parts({{0, 24, 0, 0}}));  // it fits as it is
  // In two: about the middle, in the plain strip, since the panel is its own mirror image.
  CHECK(split(panel, bed(23)) == parts({{0, 12, 0, 1}, {12, 12, 1, 0}}));
  CHECK(split(panel, bed(13)) == parts({{0, 12, 0, 1}, {12, 12, 1, 0}}));
  // In three: the ropes stay whole, the middle part is what the outer two leave.
  CHECK(split(panel, bed(12)) == parts({{0, 10, 0, 1}, {10, 4, 1, 1}, {14, 10, 1, 0}}));
  CHECK(split(panel, bed(11), 0) == parts({{0, 10, 0, 0}, {10, 4, 0, 0}, {14, 10, 0, 0}}));
  CHECK(split(panel, bed(20), 3) == parts({{0, 12, 0, 3}, {12, 12, 3, 0}}));
  for (const int needles : {8, 9, 11, 13, 20}) {
    CAPTURE(needles);
    const std::vector<SplitPart> found = split(panel, bed(needles));
    CHECK(sewn(panel, found) == panel.grid());
    for (std::size_t i = 0; i < found.size(); ++i) {
      const Panel part = split_part(panel, found[i]);
      CHECK(part.grid().columns() <= needles);
      const Panel other = split_part(panel, found[found.size() - 1 - i]);
      CHECK(part.grid() == other.grid().mirrored());  // the halves mirror each other
      for (const StripSpan& strip : part.bands().front().strips) {
        const bool whole = strip.texture != "rope 3/3 every 8" || strip.columns == 6 || strip.name == "seam";
        CHECK(whole);
      }
      // It can be made: the seam's stitch is the knit stitch that an edge wants.
      const Plan made = plan(part.grid(), bed(needles));
      CHECK(verify(part.grid(), made).verified);
    }
  }
}

TEST_CASE("sewn together the parts are as wide as the panel", "[split][size]") {
  const auto measured = [](const char* texture, Counted counted, double count) {
    Measurement out;
    out.texture = texture;
    out.counted = counted;
    out.count = count;
    out.length_mm = 100;
    return out;
  };
  const Swatch swatch({measured("stockinette", Counted::stitches, 26), measured("stockinette", Counted::rows, 38),
                       measured("rope 3/3 every 8", Counted::stitches, 34),
                       measured("rope 3/3 every 8", Counted::rows, 37)});
  const Panel panel = two_ropes();
  const double whole = size(panel, swatch).width_mm;
  for (const int seam : {1, 2}) {
    double width = 0;
    int knitted = 0;
    const std::vector<SplitPart> found = split(panel, bed(13), seam);
    REQUIRE(found.size() >= 2);
    for (const SplitPart& part : found) {
      const Panel own = split_part(panel, part);
      SizeOptions seams;
      seams.seam_left = part.seam_left;
      seams.seam_right = part.seam_right;
      width += size(own, swatch, seams).width_mm;
      knitted += own.grid().columns();
      CHECK(size(own, swatch).width_mm > size(own, swatch, seams).width_mm);
    }
    CHECK(width == Approx(whole));
    CHECK(knitted == panel.grid().columns() + 2 * seam * (static_cast<int>(found.size()) - 1));
  }
}

TEST_CASE("a panel in parts is reckoned part by part: its hours, its yarn and its seams", "[split][session][yarn]") {
  const Panel panel = two_ropes(24);
  const Machine machine = bed(13);
  const std::vector<SplitPart> found = split(panel, machine);
  REQUIRE(found.size() == 2);
  const int seams = static_cast<int>(found.size()) - 1;
  Swatch swatch({{"stockinette", Counted::stitches, 26, 100, ""},
                 {"stockinette", Counted::rows, 38, 100, ""},
                 {"rope 3/3 every 8", Counted::stitches, 34, 100, ""},
                 {"rope 3/3 every 8", Counted::rows, 38, 100, ""}});
  YarnRequest request;
  request.yarns = {{"main", {YarnSystem::tex, 200}, 50}};
  request.loops = {{"stockinette", 100, 900}, {"rope 3/3 every 8", 100, 1000}};
  request.sureness = 0;
  request.allowance = 0;
  const YarnNeed whole = yarn_need(panel, swatch, request);
  REQUIRE(whole.estimates.size() == 1);

  // A seam joins two parts over the panel's height; its yarn is asked for once.
  const double seam_mm = seams * size(panel, swatch).height_mm;
  double grams = 0;
  WorkTimes times;
  int crossings = 0;
  for (const SplitPart& part : found) {
    const Panel own = split_part(panel, part);
    request.seam_mm = part.column == 0 ? seam_mm : 0;
    grams += yarn_need(own, swatch, request).estimates.at(0).weight_g;
    const Plan made = plan(own.grid(), machine);
    REQUIRE(verify(own.grid(), made).verified);
    const WorkTimes each = work_times(made);
    times.crossings_ms += each.crossings_ms;
    times.carriage_ms += each.carriage_ms;
    times.total_ms += each.total_ms;
    crossings += hand_work(made).crossings;
  }
  // Two columns more, of knit, with their cast-on and bind-off; and three times the seam.
  const double more_mm = 2 * seams * (24 + 2) * 9.0 + 3 * seam_mm;
  CHECK(grams == Approx(whole.estimates[0].weight_g + more_mm * 200 / 1e6));
  CHECK(crossings == static_cast<int>(panel.grid().crossings().size()));
  CHECK(times.carriage_ms == 2 * 24 * Effort{}.row);
  const Plan wide = plan(panel.grid(), bed(24));  // on a bed that holds it
  CHECK(times.crossings_ms == work_times(wide).crossings_ms);
  CHECK(times.total_ms > work_times(wide).total_ms);
}

TEST_CASE("what is not its own mirror image is parted as evenly as its motifs allow", "[split]") {
  const Strip strips[] = {rope(3, 3, 8, Lean::right), reverse(2),    rope(3, 3, 8, Lean::right), reverse(2),
                          rope(3, 3, 8, Lean::right), stockinette(3)};
  const Panel panel = join_strips("three ropes", 8, strips);  // lines at 6, 8, 14, 16, 22 and in the plain strip
  CHECK(split(panel, bed(24)) == parts({{0, 14, 0, 1}, {14, 11, 1, 0}}));
  CHECK(split(panel, bed(12)) == parts({{0, 8, 0, 1}, {8, 8, 1, 1}, {16, 9, 1, 0}}));
  // A panel that stands on the bed's right half has that many needles.
  Machine right = bed(40);
  right.leftmost = 1;
  CHECK(split(panel, right) == split(panel, bed(20)));
  right.leftmost = -3;
  CHECK(split(panel, right) == split(panel, bed(23)));
}

TEST_CASE("a panel that cannot be parted says from which column on", "[split][error]") {
  const Panel panel = two_ropes();
  const auto stuck = [&](int needles, int seam) {
    try {
      split(panel, bed(needles), seam);
    } catch (const Error& error) {
      CHECK(error.code() == ErrorCode::too_large);
      CHECK(error.place().field == "panel");
      return error.place().column;
    }
    FAIL("was parted");
    return -1;
  };
  CHECK(stuck(7, 1) == 4);  // the rope and a seam at each side are 8
  CHECK(stuck(5, 0) == 4);
  CHECK(split(panel, bed(6), 0).size() == 5);
  CHECK_THROWS_MATCHES(split(panel, bed(1)), Error, refused_field(ErrorCode::bad_argument, "machine.needles"));
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double seam : {-1.0, max_seam_stitches + 1.0, 0.5, 1.5, 1e-9, 9.999999, nan}) {
    INFO(seam);
    CHECK_THROWS_MATCHES(split(panel, bed(9), seam), Error, refused_field(ErrorCode::bad_argument, "seam_stitches"));
  }
  // A crossing that reaches over two strips holds them together.
  Grid grid(4, 12);
  grid.cross({.row = 2, .column = 5, .left = 1, .right = 1, .lean = Lean::left});
  const Panel bound("bound", grid, {{1, 4, {{"a", "t", 0, 6, 1}, {"b", "t", 6, 6, 1}}}});
  for (const SplitPart& part : split(bound, bed(6), 0)) CHECK(part.column != 6);
  CHECK_THROWS_AS(split_part(bound, {0, 6, 0, 0}), Error);
}

TEST_CASE("a part of your own choice may cut a strip, never a crossing", "[split]") {
  const Panel panel = two_ropes();
  const Panel part = split_part(panel, {2, 10, 2, 1});
  CHECK(part.name() == "two ropes, columns 2 to 11");
  CHECK(part.grid().columns() == 13);
  const std::vector<StripSpan>& strips = part.bands().front().strips;
  REQUIRE(strips.size() == 5);
  CHECK(strips[0] == StripSpan{"seam", "stockinette", 0, 2, 1});
  CHECK(strips[1] == StripSpan{"stockinette", "stockinette", 2, 2, 1});
  CHECK(strips[2].column == 4);
  CHECK(strips[4] == StripSpan{"seam", "stockinette", 12, 1, 1});
  CHECK_THROWS_AS(split_part(panel, {0, 7, 0, 1}), Error);
  const auto code = ErrorCode::bad_argument;
  CHECK_THROWS_MATCHES(split_part(panel, {-1, 7, 0, 0}), Error, refused_field(code, "part.column"));
  CHECK_THROWS_MATCHES(split_part(panel, {24, 1, 0, 0}), Error, refused_field(code, "part.column"));
  CHECK_THROWS_MATCHES(split_part(panel, {20, 5, 0, 0}), Error, refused_field(code, "part.columns"));
  CHECK_THROWS_MATCHES(split_part(panel, {20, 0, 0, 0}), Error, refused_field(code, "part.columns"));
  CHECK_THROWS_MATCHES(split_part(panel, {0, 4, -1, 0}), Error, refused_field(code, "part.seam_left"));
  CHECK_THROWS_MATCHES(split_part(panel, {0, 4, 0, 11}), Error, refused_field(code, "part.seam_right"));
}

TEST_CASE("a shaped edge is not sewn to nothing", "[split]") {
  Grid grid(4, 9);  // above row 2 the first three columns are bound off
  for (int row = 3; row <= 4; ++row) {
    for (int column = 0; column < 3; ++column) grid.set(row, column, Cell::none);
  }
  const Panel panel("shaped", grid, {{1, 4, {{"a", "t", 0, 2, 1}, {"b", "t", 2, 1, 1}, {"c", "t", 3, 6, 1}}}});
  CHECK(split(panel, bed(8), 0) == parts({{0, 5, 0, 0}, {5, 4, 0, 0}}));
  for (const SplitPart& part : split(panel, bed(6), 1)) CHECK(part.column != 3);  // a stitch on one side only
  const Panel left = split_part(panel, {0, 2, 0, 1});
  CHECK(left.grid().at(2, 2) == Cell::knit);
  CHECK(left.grid().at(3, 2) == Cell::none);
}

TEST_CASE("a panel with a motif in its middle is parted in an odd number, so that its halves mirror each other",
          "[split]") {
  const Panel panel = build_panel({.name = "p",
                                   .rows = 48,
                                   .left = {stockinette(2), reverse(2), rope(3, 3, 8, Lean::right), reverse(2)},
                                   .centre = garter(2, 2, 9)});  // 12 + 9 + 12 columns
  REQUIRE(panel.grid() == panel.grid().mirrored());
  const std::vector<SplitPart> made = split(panel, bed(23));
  REQUIRE(made.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(made[i].columns == made[2 - i].columns);
    CHECK(split_part(panel, made[i]).grid() == split_part(panel, made[2 - i]).grid().mirrored());
  }
}

TEST_CASE("knit alone is parted where the panel is shaped, too", "[split]") {
  Outline outline;
  outline.rows = {{0, 29}, {0, 29}, {1, 28}, {2, 27}};
  const Panel panel = shaped(join_strips("p", 4, std::vector<Strip>{stockinette(30)}), outline);
  CHECK(split(panel, bed(16)) == parts({{0, 15, 0, 1}, {15, 15, 1, 0}}));
  // Bare strands inside the shape are a ladder's, which is a motif.
  const Strip strips[] = {stockinette(4), ladder(8), stockinette(4)};
  CHECK_THROWS_AS(split(join_strips("l", 4, strips), bed(9)), Error);
}

TEST_CASE("of all ways to part a panel it is the first by the written rule", "[split][property]") {
  struct Way {
    int count = 0;
    int unlike = 0;
    int widest = 0;
    std::vector<int> cuts;  // negated, so that wide parts come first
    auto key() const { return std::tuple(unlike, count, widest, cuts); }
  };
  const auto by_count = [](const Way& a, const Way& b) { return a.count < b.count; };
  int parted = 0;
  int even = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Strip> strips;
    for (int i = random.between(1, 4); i > 0; --i) {
      strips.push_back(random.one_in(2) ? stockinette(random.between(1, 3)) : reverse(random.between(1, 3)));
    }
    PanelParts wanted;
    wanted.name = "any";
    wanted.rows = 2;
    wanted.left = strips;
    const bool mirrors = random.one_in(2);
    const Panel panel = mirrors ? build_panel(wanted) : join_strips("any", 2, strips);
    const int width = panel.grid().columns();
    if (width > 14) continue;
    std::vector<int> lines;
    for (const StripSpan& strip : panel.bands().front().strips) {
      for (int at = 0; at < strip.columns; ++at) {
        if (at == 0 || strip.texture == "stockinette") lines.push_back(strip.column + at);
      }
    }
    lines.erase(lines.begin());
    const int needles = random.between(2, 9);
    const int seam = random.between(0, 1);
    std::vector<Way> ways;
    for (unsigned set = 0; set < 1U << lines.size(); ++set) {
      Way way;
      std::vector<int> ends{0};
      for (std::size_t i = 0; i < lines.size(); ++i) {
        if ((set >> i & 1U) != 0) ends.push_back(lines[i]);
      }
      ends.push_back(width);
      way.count = static_cast<int>(ends.size()) - 1;
      for (std::size_t i = 1; i < ends.size(); ++i) {
        const int seams = (i > 1 ? seam : 0) + (i + 1 < ends.size() ? seam : 0);
        way.widest = std::max(way.widest, ends[i] - ends[i - 1] + seams);
        if (i + 1 < ends.size()) way.cuts.push_back(-ends[i]);
        if (ends[i] + ends[ends.size() - 1 - i] != width) way.unlike = 1;
      }
      if (panel.grid() != panel.grid().mirrored()) way.unlike = 0;
      if (way.widest <= needles) ways.push_back(way);
    }
    if (ways.empty()) {
      CHECK_THROWS_AS(split(panel, bed(needles), seam), Error);
      continue;
    }
    // Parts that mirror each other may be one more than the fewest.
    const int fewest = std::min_element(ways.begin(), ways.end(), by_count)->count;
    std::erase_if(ways, [&](const Way& way) { return way.count > fewest + (way.unlike == 0 ? 1 : 0); });
    if (panel.grid() != panel.grid().mirrored()) {
      std::erase_if(ways, [&](const Way& way) { return way.count > fewest; });
    }
    const Way best =
        *std::min_element(ways.begin(), ways.end(), [](const Way& a, const Way& b) { return a.key() < b.key(); });
    std::vector<int> cuts;
    for (const SplitPart& part : split(panel, bed(needles), seam)) {
      if (part.column > 0) cuts.push_back(-part.column);
    }
    REQUIRE(cuts == best.cuts);
    parted += cuts.empty() ? 0 : 1;
    even += best.unlike == 0 && panel.grid() == panel.grid().mirrored() && !cuts.empty() ? 1 : 0;
  }
  CHECK(parted > 60);
  CHECK(even > 15);
}

}  // namespace split_test
