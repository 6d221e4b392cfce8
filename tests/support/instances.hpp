#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"

// Panels to plan, each from a seed: what the planner is measured and tried on. The same seed gives the same panel on
// every machine. All are invented; none is anybody's design.

namespace latchwork_test {

struct Instance {
  std::string kind;
  std::string name;  ///< "40 x 160, seed 3"
  latchwork::Grid grid{1, 1};
  latchwork::Machine machine;
  latchwork::Effort effort;
};

/// "panels", "many classes", "random", "dear stops x20", "co-prime periods", "diagonals", "tuck stacks", "200 classes".
const std::vector<std::string>& instance_kinds();

/// Those, and "eased crossings", whose wide ropes have slack from ladders beside them, and "holds", whose tucks it
/// takes least to make by needles in hold: what hands do in every way, for spoiling.
const std::vector<std::string>& spoil_kinds();

/// A panel of a kind, of so many rows; 0: 60 to 400 rows, by the seed. @throws std::out_of_range for no kind.
Instance instance_of(const std::string& kind, std::uint64_t seed, int rows = 0);

/// A panel of up to 7 rows x 6 columns, small enough for brute force, with a bit of everything: purls, stacks, what can
/// be held, lacking stitches, crossings; ladders of 1 to 12, cast-ons with and without loops, efforts with ties and
/// zeros.
Instance tiny_instance(std::uint64_t seed);

/// A designer's whole panel, 60 stitches wide or so: mirrored, two rope sizes, a plait, tuck ribs, garter.
latchwork::Grid brief_panel(int rows);
/// Tucks and slips in stacks of many heights in every wale.
latchwork::Grid stacked_panel(int columns, int rows, std::uint64_t seed);

/// So many columns, each a wale of its own kind, between knit edges.
latchwork::Grid distinct_panel(int columns, int rows, std::uint64_t seed);

}  // namespace latchwork_test
