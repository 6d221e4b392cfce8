#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "latchwork/move.hpp"
#include "latchwork/simulate.hpp"
#include "reading.hpp"

namespace latchwork::inline v0::knitting {

/// What is done about a move that hands cannot make. `passed_over` is for the moves of a plan, whose steps stand each
/// for itself: what can be done of such a step is done, the rest is left, and the knitting goes on. A batch without its
/// loop to start from is left whole, and so is a crossing of which some stitch cannot be lifted or put back.
enum class Impossible : std::uint8_t { ends_all, passed_over };

/// Moves executed and the cloth read: what simulate() and verify() share.
struct Knitted {
  int rows = 0;
  std::int64_t loops = 0;
  std::optional<Fault> stuck;  ///< the first move that could not be made; where that ends all, nothing was read
  std::int64_t needless = 0;   ///< steps that changed nothing, and the first of them
  std::optional<Fault> first_needless;
  Reading reading;
};

/// @throws Error bad_argument (columns, leftmost); too_large; cancelled; and what the progress callback throws.
Knitted knit(const Bed& bed, std::span<const Move> moves, Impossible impossible, const WatchOptions& options);

/// Moves tried without reading the cloth.
struct Tried {
  std::optional<Fault> impossible;     ///< the first that hands cannot make; the moves end there
  std::vector<std::int64_t> needless;  ///< of each step that changes nothing the first move, rising
  std::optional<Fault> first_needless;
};

/// @throws Error as knit().
Tried tried(const Bed& bed, std::span<const Move> moves);

}  // namespace latchwork::inline v0::knitting
