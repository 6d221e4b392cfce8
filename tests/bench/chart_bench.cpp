// Charts: time and bytes per 10,000 cells, and growth from x1 to x16. Prints a table of medians of processor time,
// which other work on the machine does not stretch.
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <string>
#include <vector>

#include "latchwork/chart.hpp"
#include "latchwork/panel.hpp"
#include "random.hpp"

namespace {

/// Knit and purl at random with a 3/3 crossing on every sixth block: denser than panels are.
latchwork::Panel panel_of(int rows, int columns) {
  latchwork_test::Random random(42);
  latchwork::Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      if (random.one_in(2)) grid.set(row, column, latchwork::Cell::purl);
    }
  }
  for (int row = 4; row < rows; row += 8) {
    for (int column = 0; column + 6 <= columns; column += 12) {
      const auto lean = random.one_in(2) ? latchwork::Lean::left : latchwork::Lean::right;
      grid.cross({.row = row, .column = column, .left = 3, .right = 3, .lean = lean});
    }
  }
  return {"Measured", latchwork::Strip{"any", "any", grid}};
}

template <class Call>
double median_ms(Call&& call) {
  std::vector<double> times;
  for (int i = 0; i < 9; ++i) {
    const std::clock_t start = std::clock();
    call();
    times.push_back(static_cast<double>(std::clock() - start) * 1000 / CLOCKS_PER_SEC);
  }
  std::nth_element(times.begin(), times.begin() + 4, times.end());
  return times[4];
}

}  // namespace

int main() {
  std::printf("%-10s %9s %10s %12s %14s %8s\n", "chart", "cells", "ms", "ms/10k cells", "bytes/10k cells", "growth");
  for (const auto side : {latchwork::Side::right_side, latchwork::Side::operator_view}) {
    latchwork::ChartOptions options;
    options.side = side;
    double first = 0;
    for (const int scale : {1, 2, 4}) {
      const latchwork::Panel panel = panel_of(100 * scale, 100 * scale);
      const double tens = static_cast<double>(scale) * scale;  // of 10,000 cells
      std::size_t bytes = 0;
      const double ms = median_ms([&] { bytes = latchwork::chart_svg(panel, options).size(); });
      if (scale == 1) first = ms;
      std::printf("%-10s %9d %10.2f %12.2f %14.0f %7.1fx\n",
                  side == latchwork::Side::right_side ? "SVG, RS" : "SVG, WS", 10000 * scale * scale, ms, ms / tens,
                  static_cast<double>(bytes) / tens, ms / first);
    }
  }
  double first = 0;
  for (const int scale : {1, 2, 4}) {
    const latchwork::Panel panel = panel_of(100 * scale, 100 * scale);
    std::size_t bytes = 0;
    const double ms = median_ms([&] { bytes = latchwork::chart_text(panel).size(); });
    if (scale == 1) first = ms;
    const double tens = static_cast<double>(scale) * scale;
    std::printf("%-10s %9d %10.2f %12.2f %14.0f %7.1fx\n", "text, RS", 10000 * scale * scale, ms, ms / tens,
                static_cast<double>(bytes) / tens, ms / first);
  }
  return 0;
}
