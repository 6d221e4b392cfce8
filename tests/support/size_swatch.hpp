#pragma once

#include <string>
#include <vector>

#include "latchwork/gauge.hpp"
#include "latchwork/size.hpp"
#include "latchwork/strip.hpp"

namespace latchwork_test {

inline latchwork::Strip strip(const std::string& texture, int columns) {
  return {texture + " strip", texture, latchwork::Grid(1, columns)};
}

// Two places of each, so that the spread is known: mean +- half gives a sample standard deviation of half * sqrt(2).
inline void measure(std::vector<latchwork::Measurement>& out, const std::string& texture, double stitches, double rows,
                    double stitches_half = 0, double rows_half = 0) {
  for (const int sign : {-1, 1}) {
    out.push_back({texture, latchwork::Counted::stitches, stitches + sign * stitches_half, 100, ""});
    out.push_back({texture, latchwork::Counted::rows, rows + sign * rows_half, 100, ""});
  }
}

inline std::vector<std::string> messages(const latchwork::Size& size) {
  std::vector<std::string> out;
  for (const latchwork::Finding& each : size.findings) out.push_back(each.message);
  return out;
}

}  // namespace latchwork_test
