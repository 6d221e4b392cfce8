#pragma once

// The panel, swatch and requests that the tests of a need of yarn reckon with.

#include <stdexcept>
#include <string>

#include "latchwork/motif.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork_test::yarn_sample {

using namespace latchwork;

inline constexpr int plain_columns = 10;
inline constexpr int rope_columns = 6;
inline constexpr int rows = 12;

// Ten plain stitches beside a rope of six.
inline Panel panel() {
  const Strip strips[] = {stockinette(plain_columns), rope(3, 3, 6, Lean::right)};
  return join_strips("sample", rows, strips);
}
inline std::string rope_texture() {
  return rope(3, 3, 6, Lean::right).texture;
}

inline Swatch swatch() {
  return Swatch({{"stockinette", Counted::stitches, 28, 100, ""},
                 {"stockinette", Counted::rows, 40, 100, ""},
                 {rope_texture(), Counted::stitches, 36, 100, ""},
                 {rope_texture(), Counted::rows, 40, 100, ""}});
}

// Nothing but the cloth, one yarn of 200 tex.
inline YarnRequest bare() {
  YarnRequest out;
  out.yarns = {{"main", {YarnSystem::tex, 200, 1}, 50}};
  out.cast_on_rows = out.bind_off_rows = 0;
  out.sureness = out.allowance = 0;
  return out;
}
inline YarnRequest by_loops() {
  YarnRequest out = bare();
  out.loops = {{"stockinette", 100, 1000}, {rope_texture(), 100, 1200}};
  return out;
}

inline const YarnEstimate& by(const YarnNeed& need, YarnRoute route) {
  for (const YarnEstimate& each : need.estimates) {
    if (each.route == route) return each;
  }
  throw std::runtime_error("no estimate by this route");
}

inline constexpr double cloth_m = (plain_columns * 0.010 + rope_columns * 0.012) * rows;  // of loops of 10 and 12 mm

}  // namespace latchwork_test::yarn_sample
