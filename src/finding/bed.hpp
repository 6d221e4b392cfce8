#pragma once

#include <optional>

#include "latchwork/finding.hpp"

namespace latchwork::inline v0::seeking {

/// Whether the panel reaches past the bed where it is placed.
std::optional<Finding> off_bed(const Grid& grid, const Machine& machine);

}  // namespace latchwork::inline v0::seeking
