#include "latchwork/strip.hpp"

#include <fmt/format.h>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "names.hpp"

namespace latchwork::inline v0 {

Strip Strip::mirrored() const {
  return {mirrored_name(name), texture, grid.mirrored()};
}

Strip Strip::repeated_across(int times) const {
  return {name, texture, grid.repeated_across(times)};
}

Strip Strip::repeated_up(int times) const {
  return {name, texture, grid.repeated_up(times)};
}

Strip Strip::filled_up(int rows) const {
  if (rows < 1) refuse("rows", fmt::format("a strip of {} rows; at least 1", rows));
  if (rows > Grid::max_side) {
    refuse(ErrorCode::too_large, "rows", fmt::format("a strip of {} rows; the most is {}", rows, Grid::max_side));
  }
  const int whole = rows / grid.rows();
  const int rest = rows % grid.rows();
  if (whole == 0) return {name, texture, grid.sliced(1, 0, rest, grid.columns())};
  Grid repeats = grid.repeated_up(whole);
  if (rest > 0) repeats = grid.sliced(1, 0, rest, grid.columns()).above(repeats);
  return {name, texture, std::move(repeats)};
}

}  // namespace latchwork::inline v0
