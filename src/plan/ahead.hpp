#pragma once

#include <cstdint>
#include <vector>

#include "plan/search.hpp"

namespace latchwork::inline v0::planning {

/// A stretch of rows looked through on its own: no way on from the decision at `row` costs less than the prices' ways
/// to go and `gain`.
struct Looked {
  int row = 0;
  int last = 0;  ///< looked through up to here
  std::int64_t gain = 0;
};

/// Stretches in which the rows are looked through.
struct Stretches {
  int depth = 0;  ///< rows of each
  int apart = 1;  ///< rows from the start of one to that of the next
};

/// How far the ways to go of all classes together stay above what the prices tell, from each row on. Where prices leave
/// a gap, it is spread over the rows; so a search that starts afresh every few rows, from wherever each class may
/// stand, sees a part of it, and a search from the cast-on, which knows what is still to come, need not follow what
/// cannot pay.
class Ahead {
 public:
  explicit Ahead(const Problem& problem) : gain_(static_cast<std::size_t>(problem.rows) + 1, 0) {}

  /// Looks through stretches, from the top down, with `width` labels a row; as far as a gain of `slack` is of use.
  /// Whether it came to the end.
  bool look(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width,
            const Stretches& stretches, std::int64_t slack, Limits& limits);

  /// Nothing is known: for other prices.
  void forget();

  /// Per row 0..R, after its decision. Falls from row to row.
  const std::vector<std::int64_t>& gain() const noexcept { return gain_; }
  /// Those that gain something, from the top.
  const std::vector<Looked>& looked() const noexcept { return looked_; }

 private:
  std::vector<std::int64_t> gain_;
  std::vector<Looked> looked_;
};

}  // namespace latchwork::inline v0::planning
