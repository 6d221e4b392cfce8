#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "latchwork/move.hpp"
#include "latchwork/simulate.hpp"
#include "reading.hpp"

namespace latchwork::inline v0::knitting {

/// Moves executed and the cloth read: what simulate() and verify() share.
struct Knitted {
  int rows = 0;
  std::int64_t loops = 0;
  std::optional<Fault> stuck;  ///< the moves ended here, and nothing was read
  Reading reading;
};

/// @throws Error bad_argument (columns, leftmost); too_large; cancelled; and what the progress callback throws.
Knitted knit(const Bed& bed, std::span<const Move> moves, const WatchOptions& options);

}  // namespace latchwork::inline v0::knitting
