#pragma once

// What the tests of fits ask for, and of whom.

#include <utility>
#include <vector>

#include "latchwork/fit.hpp"
#include "latchwork/motif.hpp"

namespace latchwork_test {

using namespace latchwork;

// 25 stitches and 40 rows per 10 cm: a stitch is 4 mm wide, a row 2.5 mm high.
inline Swatch four_by_two_and_a_half() {
  std::vector<Measurement> out;
  for (const char* texture : {"stockinette", "edge", "rope", "moss"}) {
    for (int place = 0; place < 2; ++place) {
      out.push_back({texture, Counted::stitches, 25, 100, ""});
      out.push_back({texture, Counted::rows, 40, 100, ""});
    }
  }
  return Swatch(out);
}

inline FitRequest request(double width_mm, double height_mm, int repeat_columns) {
  FitRequest out;
  out.width_mm = width_mm;
  out.height_mm = height_mm;
  out.groups = {{{stockinette(repeat_columns)}, 1, 200}};
  return out;
}

inline std::vector<FitCandidate> candidates(const FitRequest& request,
                                            const Swatch& swatch = four_by_two_and_a_half()) {
  return fit(request, swatch).candidates;
}

// Panels, times of each group, edge columns, columns, rows: what fitted() reads.
inline FitCandidate numbers(std::vector<int> times, int edge_columns, int columns, int rows) {
  FitCandidate out;
  out.times = std::move(times);
  out.edge_columns = edge_columns;
  out.columns = columns;
  out.rows = rows;
  return out;
}

}  // namespace latchwork_test
