#include "grid/lifting.hpp"

namespace latchwork::inline v0::lifting {

bool bare_centre(const Grid& grid, const Crossing& crossing) {
  return crossing.centre > 0 && grid.at(crossing.row, crossing.column + crossing.left) == Cell::none;
}

int centre_lifted(const Grid& grid, const Crossing& crossing) {
  const bool stays = crossing.place == Centre::front && crossing.left == crossing.right;
  return stays || bare_centre(grid, crossing) ? 0 : crossing.centre;
}

int stitches_lifted(const Grid& grid, const Crossing& crossing) {
  return crossing.left + centre_lifted(grid, crossing) + crossing.right;
}

}  // namespace latchwork::inline v0::lifting
