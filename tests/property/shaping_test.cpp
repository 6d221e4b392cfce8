#include "latchwork/shaping.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "random_grid.hpp"

namespace shaping_test {

using namespace latchwork;
using latchwork_test::Random;

namespace {

std::vector<EdgePoint> any_points(Random& random, int rows, int columns) {
  std::vector<EdgePoint> points(static_cast<std::size_t>(random.between(1, 5)));
  for (EdgePoint& point : points) point = {random.between(0, rows), random.between(0, 4 * columns) / 4.0};
  std::sort(points.begin(), points.end(), [](const EdgePoint& a, const EdgePoint& b) { return a.row < b.row; });
  return points;
}

/// The straight line through the points, written another way; at a step, where it was below.
double line_at(const std::vector<EdgePoint>& points, double row) {
  if (row <= points.front().row) return points.front().columns;
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (row > points[i].row) continue;
    const double share = (row - points[i - 1].row) / (points[i].row - points[i - 1].row);
    return points[i - 1].columns * (1 - share) + points[i].columns * share;
  }
  return points.back().columns;
}

Outline any_outline(Random& random, int rows, int columns) {
  for (;;) {
    const auto edge = [&] {
      EdgeShape out;
      out.points = any_points(random, rows, columns / 2);
      out.line = random.one_in(2) ? EdgeLine::curve : EdgeLine::straight;
      return out;
    };
    try {
      return outlined(rows, columns, edge(), edge(), random.between(1, 2));
    } catch (const Error& error) {
      if (error.code() != ErrorCode::bad_argument) throw;  // else a row has no stitch, or none above the row below
    }
  }
}

}  // namespace

TEST_CASE("an outline is never more than half a stitch from its line, and changes after allowed rows only",
          "[shaping][property]") {
  Random random(71);
  for (int i = 0; i < 3000; ++i) {
    const int rows = random.between(1, 60);
    const int step = random.between(1, 3);
    const std::vector<EdgePoint> points = any_points(random, rows, 20);
    const Outline outline = outlined(rows, 21, {.points = points}, {}, step);
    INFO("case " << i);
    for (int row = 1; row <= rows; ++row) {
      const int low = (row - 1) / step * step;
      const double middle = (low + std::min(low + step, rows)) / 2.0;
      const int first = outline.rows[static_cast<std::size_t>(row) - 1].first;
      REQUIRE(std::abs(first - line_at(points, middle)) <= 0.5 + 1e-9);
    }
    for (const ShapingStep& change : shaping_steps(outline)) REQUIRE(change.row % step == 0);
  }
}

TEST_CASE("a slope's decreases are spread as evenly as whole rows allow", "[shaping][property]") {
  // Even spacing, as in spacing.hpp: k decreases over n rows are n / k rows apart, rounded down or up.
  for (int rows = 2; rows <= 40; ++rows) {
    for (int columns = 1; columns < rows; ++columns) {
      const Outline outline = outlined(rows, columns + 1, {.points = {{0, 0}, {rows, double(columns)}}}, {});
      const std::vector<ShapingStep> steps = shaping_steps(outline);
      INFO(columns << " over " << rows << " rows");
      for (std::size_t i = 1; i < steps.size(); ++i) {
        const int gap = steps[i].row - steps[i - 1].row;
        REQUIRE((gap == rows / columns || gap == rows / columns + 1));
        REQUIRE(steps[i].left == 1);
      }
    }
  }
}

TEST_CASE("a curve stays between its neighbouring points, and its mirror image is its mirror image",
          "[shaping][property]") {
  Random random(72);
  for (int i = 0; i < 2000; ++i) {
    const int rows = random.between(1, 60);
    const std::vector<EdgePoint> points = any_points(random, rows, 20);
    const EdgeShape edge{.points = points, .line = EdgeLine::curve};
    const Outline outline = outlined(rows, 21, edge, {});
    const Outline mirrored = outlined(rows, 21, {}, edge);
    INFO("case " << i);
    for (int row = 1; row <= rows; ++row) {
      const auto at = static_cast<std::size_t>(row) - 1;
      REQUIRE(mirrored.rows[at].last == 20 - outline.rows[at].first);
      const auto above =
          std::find_if(points.begin(), points.end(), [&](const EdgePoint& p) { return p.row >= row - 0.5; });
      const double low = above == points.begin() ? points.front().columns : (above - 1)->columns;
      const double high = above == points.end() ? points.back().columns : above->columns;
      REQUIRE(outline.rows[at].first >= std::floor(std::min(low, high) + 0.5));
      REQUIRE(outline.rows[at].first <= std::floor(std::max(low, high) + 0.5));
    }
  }
}

TEST_CASE("random panels in random shapes: the shape reads back, and what can be planned is verified",
          "[shaping][property]") {
  Random random(73);
  const Machine machine = Machine::generic(MachineClass::standard);
  int planned = 0;
  int cut = 0;
  for (int i = 0; i < 250; ++i) {
    const int rows = random.between(2, 12);
    const int columns = random.between(3, 12);
    latchwork_test::RandomGridOptions options;
    options.rows = rows;
    options.columns = columns;
    options.one_in_ladder = 0;
    const Panel panel("any", Strip{"any", "any", latchwork_test::random_grid(random, options)});
    const Outline outline = any_outline(random, rows, columns);
    INFO("case " << i << "\n" << panel.grid().to_text());
    const std::vector<Finding> found = shape_findings(panel.grid(), outline);
    const bool cuts =
        std::any_of(found.begin(), found.end(), [](const Finding& f) { return f.severity == Severity::error; });
    cut += cuts ? 1 : 0;
    if (cuts) {
      try {
        static_cast<void>(shaped(panel, outline));
        FAIL("shaped, though it cuts");
      } catch (const Error& error) {
        const bool crossing = std::any_of(found.begin(), found.end(),
                                          [](const Finding& f) { return f.code == FindingCode::crossing_cut; });
        REQUIRE(error.code() == (crossing ? ErrorCode::crossing_cut : ErrorCode::bad_argument));
        REQUIRE((crossing || error.place().field == "outline"));
        REQUIRE(error.place().row >= 1);
      }
    } else {
      REQUIRE(shaped(panel, outline) == shaped(panel, outline, {.cut = CutWork::knit}));
    }
    const Panel out = shaped(panel, outline, {.cut = CutWork::knit});
    REQUIRE(outline_of(out.grid()) == outline);
    // What is left to tell is that crossings, which are kept, reach into the edge stitches.
    for (const Finding& told : shape_findings(out.grid(), outline)) {
      REQUIRE(told.code == FindingCode::column_cut);
      REQUIRE(told.last_column > told.place.column);
    }  // nothing is left to cut
    const Plan made = plan(out.grid(), machine, {});
    if (made.status == PlanStatus::infeasible) continue;
    ++planned;
    const Verification verification = verify(out.grid(), made);
    INFO(verification.message);
    REQUIRE(verification.verified);
  }
  CHECK(planned > 150);
  CHECK(cut > 20);
}

namespace {

enum class Fate { kept, falls_away, cut };

/// What becomes of a crossing, cell by cell. DOMAIN 4: its stitches have to be there in row r and in row r + 1, and
/// after row R it sits on the seam to the next copy. A panel has no copy, so that what it does after row R it does in
/// row R alone; but no grid holds a crossing on a seam whose row 1 lacks a stitch of it.
Fate fate_of(const Crossing& crossing, const Outline& outline) {
  const int rows = static_cast<int>(outline.rows.size());
  const auto there = [&](int row) {
    int count = 0;
    for (int x = crossing.column; x < crossing.column + crossing.width(); ++x) {
      const RowSpan& span = outline.rows[static_cast<std::size_t>(row) - 1];
      count += x >= span.first && x <= span.last ? 1 : 0;
    }
    return count;
  };
  const int all = crossing.width();
  const int own = there(crossing.row);
  if (crossing.row == rows) {
    if (own == 0) return Fate::falls_away;
    return own == all && there(1) == all ? Fate::kept : Fate::cut;
  }
  const int next = there(crossing.row + 1);
  if (own == 0 && next == 0) return Fate::falls_away;
  return own == all && next == all ? Fate::kept : Fate::cut;
}

}  // namespace

TEST_CASE("crossings of tiles in random shapes are kept, fall away or are cut, as counted cell by cell",
          "[shaping][property]") {
  Random random(74);
  int seen[2][3] = {};  // elsewhere, after the last row
  for (int i = 0; i < 1500; ++i) {
    latchwork_test::RandomGridOptions options;
    options.rows = random.between(2, 8);
    options.columns = random.between(4, 10);
    options.one_in_stack = 0;
    options.one_in_ladder = 0;
    options.one_in_crossing = 3;
    options.tile = true;
    const Panel panel("any", Strip{"any", "any", latchwork_test::random_grid(random, options)});
    const Outline outline = any_outline(random, options.rows, options.columns);
    INFO("case " << i << "\n" << panel.grid().to_text() << outline_text(outline));
    std::vector<Crossing> kept;
    std::vector<Crossing> cut;
    for (const Crossing& crossing : panel.grid().crossings()) {
      const Fate fate = fate_of(crossing, outline);
      ++seen[crossing.row == options.rows ? 1 : 0][static_cast<int>(fate)];
      if (fate == Fate::kept) kept.push_back(crossing);
      if (fate == Fate::cut) cut.push_back(crossing);
    }
    std::vector<Finding> told = shape_findings(panel.grid(), outline, {.edge_stitches = 0});
    std::erase_if(told, [](const Finding& each) { return each.code != FindingCode::crossing_cut; });
    REQUIRE(told.size() == cut.size());
    for (std::size_t k = 0; k < cut.size(); ++k) {
      REQUIRE((told[k].place.row == cut[k].row && told[k].place.column == cut[k].column));
      REQUIRE((told[k].value >= 1 && told[k].value <= cut[k].width() && told[k].limit == cut[k].width()));
    }
    const ShapeOptions plain{.edge_stitches = 0, .cut = CutWork::knit};
    const Panel out = shaped(panel, outline, plain);
    const std::vector<Crossing> left(out.grid().crossings().begin(), out.grid().crossings().end());
    REQUIRE(left == kept);
    // Knitted plain: the spans of what is cut, in their row and the one that follows; no other cell is changed.
    for (int row = 1; row <= options.rows; ++row) {
      for (int x = 0; x < options.columns; ++x) {
        const RowSpan& span = outline.rows[static_cast<std::size_t>(row) - 1];
        const bool taken = std::any_of(cut.begin(), cut.end(), [&](const Crossing& c) {
          return (c.row == row || c.row + 1 == row) && x >= c.column && x < c.column + c.width();
        });
        const Cell wanted = x < span.first || x > span.last ? Cell::none : taken ? Cell::knit : panel.grid().at(row, x);
        REQUIRE(out.grid().at(row, x) == wanted);
      }
    }
    if (cut.empty()) {
      REQUIRE(shaped(panel, outline, {.edge_stitches = 0}) == out);
      continue;
    }
    try {
      static_cast<void>(shaped(panel, outline, {.edge_stitches = 0}));
      FAIL("shaped, though it cuts");
    } catch (const Error& error) {
      REQUIRE(error.code() == ErrorCode::crossing_cut);
      REQUIRE((error.place().row == cut[0].row && error.place().column == cut[0].column));
    }
  }
  for (const auto& where : seen) {
    for (const int count : where) CHECK(count > 20);
  }
}

// Harris and Reingold, ACM Comput. Surv. 36, 2004: an even order has no two stretches as long whose counts differ by
// two.
TEST_CASE("words call gaps of two lengths spread evenly in just the orders in which no stretch has two more of one",
          "[shaping][property]") {
  for (int length = 2; length <= 11; ++length) {
    for (int bits = 1; bits + 1 < 1 << length; ++bits) {
      std::vector<int> gaps;
      for (int i = 0; i < length; ++i) gaps.push_back((bits >> i & 1) != 0 ? 3 : 2);
      bool even = true;
      for (int window = 1; window < length; ++window) {
        int least = 4 * length;
        int most = 0;
        for (int first = 0; first + window <= length; ++first) {
          int sum = 0;
          for (int i = first; i < first + window; ++i) sum += gaps[static_cast<std::size_t>(i)];
          least = std::min(least, sum);
          most = std::max(most, sum);
        }
        even = even && most - least < 2;
      }
      Outline outline;
      int column = 0;
      outline.rows.assign(1, {0, 20});
      for (const int gap : gaps) outline.rows.insert(outline.rows.end(), static_cast<std::size_t>(gap), {++column, 20});
      outline.rows.push_back({++column, 20});
      const std::string words = outline_text(outline);
      INFO(words);
      REQUIRE(words.find("3rd row") != std::string::npos);
      CHECK((words.find("spread evenly") != std::string::npos) == even);
    }
  }
}

}  // namespace shaping_test
