#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <tuple>
#include <vector>

#include "brief/sheets.hpp"
#include "catch.hpp"
#include "chart_picture.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"

namespace page_sheets_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

// A point is 1/72 inch (CSS Values 3, 6.2); that smaller print than 7 points tires is common practice, no source.
constexpr double points_per_mm = 72 / 25.4;
constexpr double least_points = 7;

/// All numbers that follow a word.
std::vector<double> numbers_after(const std::string& text, const std::string& word) {
  std::vector<double> all;
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    all.push_back(std::stod(text.substr(at + word.size(), 20)));
  }
  return all;
}

/// Strips of 1, 2, 3 columns under names of their own, in bands of so many rows.
Panel striped(int rows, int columns, int band_rows) {
  const auto band = [&](int height, int number) {
    std::vector<Strip> strips;
    int left = columns;
    for (int i = 0; left > 0; ++i) {
      const int wide = std::min(left, 1 + (i + number) % 3);
      strips.push_back(strip_of("strip " + std::to_string(i % 7), wide, 4));
      left -= wide;
    }
    return join_strips("Sample", height, strips);
  };
  Panel panel = band(std::min(rows, band_rows), 0);
  for (int number = 1; panel.grid().rows() < rows; ++number) {
    panel = band(std::min(rows - panel.grid().rows(), band_rows), number).above(panel);
  }
  return panel;
}

Plan stops_every(const Panel& panel, int step) {
  Plan plan;
  plan.rows = panel.grid().rows();
  plan.columns = panel.grid().columns();
  plan.leftmost = -panel.grid().columns() / 2;
  for (int row = step; row <= plan.rows; row += step) {
    Stop stop;
    stop.row = row;
    plan.stops.push_back(stop);
  }
  return plan;
}

/// The rows that a sheet's title tells; all of them where it tells none.
std::pair<int, int> rows_told(const std::string& title, int rows) {
  std::pair told{1, rows};
  const std::size_t at = title.find(", rows ");
  if (at != std::string::npos) std::sscanf(title.c_str() + at, ", rows %d to %d", &told.first, &told.second);
  return told;
}

/// What of a picture stands in groups of that name: words, in order, with their heights.
std::vector<std::pair<double, std::string>> words_and_heights(const std::string& svg, const std::string& group) {
  std::vector<std::pair<double, std::string>> out;
  for (const auto& [point, words] : texts(svg, group)) out.emplace_back(point.y, words);
  return out;
}

}  // namespace

TEST_CASE("on every sheet of paper no word is smaller than 7 points, and sheets fit and are even", "[brief]") {
  const auto [columns, rows, band_rows] = GENERATE(table<int, int, int>({{5, 10, 400},
                                                                         {5, 400, 400},
                                                                         {19, 330, 330},
                                                                         {20, 318, 8},
                                                                         {69, 129, 129},
                                                                         {75, 40, 10},
                                                                         {120, 61, 61},
                                                                         {200, 10, 10},
                                                                         {200, 130, 65}}));
  INFO(columns << " columns, " << rows << " rows");
  const Panel panel = striped(rows, columns, band_rows);
  const Plan plan = stops_every(panel, 2);
  ChartOptions back = seen_from(Side::operator_view);
  ChartOptions front = seen_from(Side::right_side);
  back.plan = front.plan = &plan;
  const report::BothCharts charts = report::chart_sheets(panel, back, front);
  CHECK(charts.operator_view.sheets.size() == charts.right_side.sheets.size());
  for (const report::ChartSheets* chart : {&charts.operator_view, &charts.right_side}) {
    // A4 is 210 mm x 297 mm (ISO 216); the page keeps 12 mm at each edge.
    const double paper_width = (chart->wide ? 297 : 210) - 24;
    const double paper_height = (chart->wide ? 210 : 297) - 24;
    std::vector<std::pair<int, int>> shown;  // rows, those of parts of the columns once
    std::size_t parts = 0;
    for (const auto& sheet : chart->sheets) {
      const double scale = chart->mm_per_unit;
      const std::vector<double> box = numbers_after(sheet.cells.svg, "viewBox=\"0 0 ");
      REQUIRE(box.size() == 1);
      CHECK(box[0] == Approx(sheet.cells.width));
      CHECK(sheet.cells.width * scale <= paper_width + 1e-6);
      CHECK(sheet.cells.height * scale < paper_height);
      const std::vector<double> fonts = numbers_after(sheet.cells.svg, "font-size=\"");
      REQUIRE(fonts.size() >= 3);
      // What stays in sight beside cells that scroll says the same of each row at the same height.
      CHECK(sheet.rows.height == sheet.cells.height);
      for (const char* group : {"rows", "stop-mark", "strip-rows"}) {
        CHECK(words_and_heights(sheet.rows.svg, group) == words_and_heights(sheet.cells.svg, group));
      }
      CHECK(*std::min_element(fonts.begin(), fonts.end()) * scale * points_per_mm >= least_points);
      const std::pair told = rows_told(sheet.title, rows);
      if (shown.empty() || shown.back() != told) shown.push_back(told);
      if (shown.size() == 1) ++parts;
    }
    CHECK(chart->sheets.size() == parts * shown.size());
    CHECK(parts == (columns > 125 ? 2U : 1U));  // two millimetres a cell: no more have room on A4 laid across
    int next = 1;
    int fewest = rows;
    int most = 0;
    for (const auto& [first, last] : shown) {
      CHECK(first == next);
      next = last + 1;
      fewest = std::min(fewest, last - first + 1);
      most = std::max(most, last - first + 1);
    }
    CHECK(next == rows + 1);
    CHECK(most - fewest <= 3);
  }
}

TEST_CASE("letters of strips keep clear of each other however narrow the strips are", "[brief]") {
  const int columns = GENERATE(7, 60, 200);
  const Panel panel = striped(10, columns, 10);
  const report::BothCharts charts =
      report::chart_sheets(panel, seen_from(Side::operator_view), seen_from(Side::right_side));
  const auto& chart = charts.right_side;
  REQUIRE(chart.sheets.size() == (columns > 125 ? 2U : 1U));
  const double font = report::font_mm / chart.mm_per_unit;
  const auto letters = texts(chart.sheets[0].cells.svg, "strips");
  const std::size_t told = letters.size() + (columns > 125 ? texts(chart.sheets[1].cells.svg, "strips").size() : 0);
  CHECK(told == panel.bands()[0].strips.size());
  for (std::size_t i = 0; i < letters.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      const Point a = letters[i].first;
      const Point b = letters[k].first;
      if (std::abs(a.y - b.y) >= font || std::abs(a.x - b.x) >= font * 0.75) continue;
      FAIL_CHECK(letters[i].second << " and " << letters[k].second << " touch at " << a.x << ", " << a.y);
    }
  }
}

TEST_CASE("a very wide panel is cut where no crossing is, or every crossing is whole on a sheet", "[brief]") {
  // One crossing in two hundred columns, over the middle; or crossings over every column, in one row or another.
  const bool everywhere = GENERATE(false, true);
  const int columns = 200;
  Grid grid(24, columns);
  std::vector<Crossing> all;
  for (int row = 2; row < 24; row += 2) {
    for (int column = everywhere ? 2 * (row % 4 / 2) : 97; column + 4 <= columns; column += everywhere ? 4 : columns) {
      all.push_back({.row = row, .column = column, .left = 2, .right = 2, .lean = Lean::right});
      grid.cross(all.back());
    }
  }
  const report::BothCharts charts =
      report::chart_sheets(panel_of(grid), seen_from(Side::operator_view), seen_from(Side::right_side));
  CHECK(charts.operator_view.sheets.size() == charts.right_side.sheets.size());
  std::vector<std::pair<int, int>> parts;
  for (const auto& sheet : charts.right_side.sheets) {
    std::pair<int, int> told;
    REQUIRE(std::sscanf(sheet.title.c_str() + sheet.title.find(", columns "), ", columns %d to %d", &told.first,
                        &told.second) == 2);
    parts.push_back(told);
    // The cells' own pitch, from two lines of the grid.
    CHECK(13 * 1.6 * charts.right_side.mm_per_unit >= report::least_cell_mm - 0.05);
    CHECK(holds(sheet.cells.svg, "cut-crossing") == everywhere);
  }
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].first == 0);
  CHECK(parts[1].second == columns - 1);
  if (!everywhere) CHECK(parts[0].second + 1 == parts[1].first);
  for (const Crossing& crossing : all) {
    CHECK(std::any_of(parts.begin(), parts.end(), [&](const auto& part) {
      return part.first <= crossing.column && crossing.column + 3 <= part.second;
    }));
  }
}

TEST_CASE("a key that would fill the sheet stands on its own, as large as on any, and the chart keeps its rows",
          "[brief]") {
  Grid grid(150, 40);
  int row = 1;
  for (int left = 1; left <= 6; ++left) {
    for (int right = 1; right <= 6; ++right, row += 2) {
      grid.cross({.row = row, .column = 0, .left = left, .right = right, .lean = Lean::right});
      grid.cross({.row = row, .column = 20, .left = left, .right = right, .lean = Lean::left});
    }
  }
  const report::BothCharts charts =
      report::chart_sheets(panel_of(grid), seen_from(Side::operator_view), seen_from(Side::right_side));
  for (const report::ChartSheets* chart : {&charts.operator_view, &charts.right_side}) {
    CHECK(chart->mm_per_unit * 16 >= report::fair_row_mm - 0.02);
    CHECK(std::count_if(chart->key.begin(), chart->key.end(),
                        [](const drawing::KeyPicture& entry) { return holds(entry.words, "6/6 left cross"); }) == 1);
    CHECK(chart->key.size() >= 36 * 2);  // one for each crossing
    for (const drawing::KeyPicture& entry : chart->key) {
      CHECK(entry.symbol.height >= 16);  // as high as a cell of the chart, or more
      CHECK(entry.symbol.svg.find("lw-grid") == std::string::npos);
    }
    for (const auto& sheet : chart->sheets) {
      CHECK(sheet.key.empty());
      CHECK(sheet.notes.back() == "The key stands on a sheet of its own.");
      CHECK(sheet.cells.height * chart->mm_per_unit <= 250);
    }
  }
}

TEST_CASE("the page prints its drawings at the scale they are drawn for", "[brief]") {
  const std::string path = std::string(LATCHWORK_EXAMPLES_DIR) + "/briefs/sampler";
  const Brief brief = read_brief(path);
  const std::string page = page_html(brief, run(brief));
  CHECK(holds(page, "width: var(--print-width)"));
  int drawings = 0;
  for (std::size_t at = page.find("<svg "); at != std::string::npos; at = page.find("<svg ", at + 1)) {
    const std::string svg = page.substr(at, page.find("</svg>", at) - at);
    const std::vector<double> width = numbers_after(svg, "--print-width:");
    if (!holds(svg, "<text ")) {  // a key's symbol
      CHECK(width.size() == 1);
      continue;
    }
    if (width.empty()) {  // row numbers and stops, for screens alone
      CHECK(page.substr(at - 18, 18) == "<div class=\"rows\">");
      continue;
    }
    const double scale = width[0] / numbers_after(svg, "viewBox=\"0 0 ").at(0);
    for (const double font : numbers_after(svg, "font-size=\"")) CHECK(font * scale * points_per_mm >= least_points);
    ++drawings;
  }
  CHECK(drawings == 3);  // the schematic and both charts
}

TEST_CASE("a crossing made before a sheet's first row keeps its marks: the row below is on another sheet", "[chart]") {
  Grid grid(6, 4);
  for (int row = 1; row <= 6; ++row) {
    for (int column = 0; column < 4; ++column) grid.set(row, column, Cell::purl);
  }
  grid.cross({.row = 2, .column = 0, .left = 3, .right = 1, .lean = Lean::right});  // little is seen of the one behind
  ChartOptions options = seen_from(Side::right_side, Blank::knit);
  const std::string note = "is as in the row below";
  const auto marks = [&] { return Picture(panel_of(grid), options).paths.at("crossing").size() - 3; };
  CHECK(holds(joined_words(chart_svg(panel_of(grid), options)), note));
  CHECK(marks() == 3);
  options.first_row = 3;
  CHECK_FALSE(holds(joined_words(chart_svg(panel_of(grid), options)), note));
  CHECK(marks() == 4);
}

}  // namespace page_sheets_test
