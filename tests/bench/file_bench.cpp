// JSON read and write, per MB and as the text grows from x1 to x16, beside a plain parse of the same text in the same
// run by the JSON library that is underneath (nlohmann_json), which only builds its tree and checks nothing of ours.
// Medians of processor time, which other work on the machine does not stretch.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <ctime>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <vector>

#include "latchwork/file.hpp"
#include "random.hpp"

namespace {

using namespace latchwork;
using latchwork_test::Random;

constexpr int runs = 7;

template <class Work>
double milliseconds(Work&& work) {
  const std::clock_t start = std::clock();
  work();
  return static_cast<double>(std::clock() - start) * 1000 / CLOCKS_PER_SEC;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

/// Knit and purl at random, and a crossing wherever `one_in` says.
Grid grid_of(int rows, int columns, int one_in) {
  Random random(7);
  std::vector<std::uint8_t> cells(static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns));
  for (auto& cell : cells) cell = static_cast<std::uint8_t>(random.between(0, 1));
  Grid grid = Grid::from_cells(rows, columns, cells);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 0; column + 4 <= columns; column += 4) {
      if (random.one_in(one_in)) grid.cross({.row = row, .column = column, .left = 2, .right = 2});
    }
  }
  return grid;
}

/// A stop every few rows with work on many needles.
Plan plan_of(int stops) {
  Random random(8);
  Plan plan;
  plan.rows = 6 * stops;
  plan.columns = 80;
  plan.leftmost = -40;
  for (int i = 1; i <= stops; ++i) {
    Stop stop;
    stop.row = 6 * i;
    for (int column = 0; column < 80; column += 4) {
      const int needle = column < 40 ? 40 - column : 39 - column;
      stop.reforms.push_back({.needle = needle, .column = column, .wale = column, .from_row = 6 * i - 6});
      for (int rung = 0; rung < 6; ++rung) stop.reforms.back().rungs.push_back(static_cast<Cell>(random.between(0, 2)));
    }
    CrossingStep step;
    step.crossing = {.row = 6 * i, .column = 10, .left = 3, .right = 3};
    step.returns = {{GroupName::left, 3, -13, -10, {3}}, {GroupName::right, 3, -10, -13, {3}}};
    stop.crossings.push_back(step);
    plan.stops.push_back(stop);
  }
  return plan;
}

/// Of a value that is so many times as large as that of the first call, whose times `first` keeps.
template <class Value, class Read>
void measure(const char* name, int times, const Value& value, Read&& read, std::pair<double, double>& first) {
  const std::string text = write(value);
  const double megabytes = static_cast<double>(text.size()) / 1e6;
  std::vector<double> writing, reading, parsing, ratios;
  for (int run = 0; run < runs; ++run) {
    std::size_t seen = 0;
    writing.push_back(milliseconds([&] { seen += write(value).size(); }));
    reading.push_back(milliseconds([&] { seen += read(text) == value ? 1U : 0U; }));
    parsing.push_back(milliseconds([&] { seen += nlohmann::json::parse(text).size(); }));
    ratios.push_back(reading.back() / parsing.back());
    if (seen <= text.size()) std::puts("the text was not read back equal");
  }
  const double wrote = median(writing);
  const double read_in = median(reading);
  if (times == 1) first = {wrote, read_in};
  std::printf(
      "%-28s x%-3d %8.2f MB  write %7.2f ms/MB x%-5.1f read %7.2f ms/MB x%-5.1f plain parse %7.2f ms/MB  read/parse "
      "%5.2f\n",
      name, times, megabytes, wrote / megabytes, wrote / first.first, read_in / megabytes, read_in / first.second,
      median(parsing) / megabytes, median(ratios));
}

}  // namespace

int main() {
  std::pair<double, double> first;
  for (const int times : {1, 2, 4, 8, 16})
    measure("grid, few crossings", times, grid_of(1000, 1000 * times, 400), read_grid, first);
  for (const int times : {1, 2, 4, 8, 16})
    measure("grid, crossings everywhere", times, grid_of(200, 200 * times, 2), read_grid, first);
  for (const int times : {1, 2, 4, 8, 16}) measure("plan", times, plan_of(50 * times), read_plan, first);
}
