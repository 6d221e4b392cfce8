// Loops a second of simulate() and verify(), and how the time grows when the panel does, rows x1 to x16, and when hands
// go far below the needles.
// Times are medians of five runs, in processor time, which other work on the machine does not stretch.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <vector>

#include "far_hands.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "memory.hpp"
#include "soonest_plan.hpp"

using namespace latchwork;
using latchwork_test::kib_told_by;
using latchwork_test::peak_kib;

namespace {

/// 200 stitches: ropes of two sizes, a tuck rib, moss and garter between plain stitches, 24 rows a repeat.
Grid textured(int rows) {
  constexpr int columns = 200;
  Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 2; column + 2 < columns; ++column) {
      const int place = column % 20;
      if (place == 8 && row % 2 == 0) grid.set(row, column, Cell::purl);
      if (place == 8 && row % 2 == 1 && row > 1 && row < rows) grid.set(row, column, Cell::tuck);
      if (place >= 10 && place < 14 && (row + column) % 2 == 0) grid.set(row, column, Cell::purl);
      if (place >= 15 && place < 18 && row % 4 < 2) grid.set(row, column, Cell::purl);
    }
    for (int column = 0; column + 20 <= columns && row < rows; column += 20) {
      if (row % 8 == 0) grid.cross({.row = row, .column = column + 1, .left = 3, .right = 3, .lean = Lean::right});
    }
  }
  return grid;
}

/// The same with nothing to do by hand.
Grid plain(int rows) {
  return Grid(rows, 200);
}

template <class Call>
double median_seconds(Call call) {
  std::vector<double> seconds;
  for (int i = 0; i < 5; ++i) {
    const std::clock_t start = std::clock();
    call();
    seconds.push_back(static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  std::sort(seconds.begin(), seconds.end());
  return seconds[2];
}

bool table(const std::string& self, const char* name, Grid (*panel)(int)) {
  bool sound = true;
  double first = 0;
  for (const int times : {1, 2, 4, 8, 16}) {
    const Grid grid = panel(125 * times);
    const Plan made = latchwork_test::soonest_plan(grid, -100);
    const std::vector<Move> all = moves(made);
    const Bed bed{.leftmost = made.leftmost, .columns = made.columns};
    Fabric fabric;
    Verification verification;
    const double simulating = median_seconds([&] { fabric = simulate(bed, all); });
    const double verifying = median_seconds([&] { verification = verify(grid, made); });
    if (times == 1) first = verifying;
    sound = sound && verification.verified && fabric.grid == grid;
    std::printf(
        "%-9s 200 x %4d  x%-2d %8zu moves %8lld loops  simulate %8.2f ms %6.1f M loops/s  verify %8.2f ms  x%.1f  "
        "memory %7ld KiB\n",
        name, grid.rows(), times, all.size(), static_cast<long long>(fabric.loops), simulating * 1e3,
        static_cast<double>(fabric.loops) / simulating * 1e-6, verifying * 1e3, verifying / first,
        kib_told_by(self, std::string("peak ") + name + " " + std::to_string(grid.rows())));
  }
  return sound;
}

/// A tool goes into the lowest loop of a wale of so many rows, as often as it has rows: what walked down from the
/// needle each time would take sixteen times as long for four times the rows.
void tall_wale() {
  double first = 0;
  for (const int rows : {15'000, 60'000}) {
    const std::vector<Move> all = latchwork_test::tall_wale_moves(rows);
    const double seconds = median_seconds([&] { static_cast<void>(simulate({-1, 1}, all)); });
    if (first == 0) first = seconds;
    std::printf("a tool into the lowest loop, %6d rows, as many times  simulate %8.2f ms  x%.1f\n", rows, seconds * 1e3,
                seconds / first);
  }
}

/// A crossing of so many over as many, re-formed wale by wale: passings are as many as stitches squared.
void wide_crossing() {
  double first = 0;
  for (const int half : {200, 400, 800}) {
    const std::vector<Move> all = latchwork_test::wide_crossing_moves(half);
    const double seconds = median_seconds([&] { static_cast<void>(simulate({-half, 2 * half}, all)); });
    if (first == 0) first = seconds;
    std::printf("a crossing of %4d over %4d, re-formed wale by wale      simulate %8.2f ms  x%.1f\n", half, half,
                seconds * 1e3, seconds / first);
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc > 3 && std::string(argv[1]) == "peak") {  // for table(): KiB that verify() adds
    const Grid grid = (std::string(argv[2]) == "plain" ? plain : textured)(std::atoi(argv[3]));
    const Plan made = latchwork_test::soonest_plan(grid, -100);
    const long before = peak_kib();
    if (!verify(grid, made).verified) return 1;
    std::printf("%ld\n", peak_kib() - before);
    return 0;
  }
  tall_wale();
  wide_crossing();
  const bool sound = table(argv[0], "plain", plain) && table(argv[0], "textured", textured);
  if (!sound) std::puts("a fabric was not read back as its chart");
  return sound ? 0 : 1;
}
