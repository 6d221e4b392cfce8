#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/wale.hpp"
#include "progress/pulse.hpp"

// The panel as the checker of certificates sees it, made from the grid alone. Nothing of the planner is used here.
//
// A wale's hand cells come in pieces, numbered from the lowest: a purl, or a stack with the cell that closes it. After
// the decision at row t (stop or not) a wale is at a place: 2i, its lowest i pieces are made; 2i + 1, its needle is
// held over piece i. A stop lets it be released, then re-formed, then held, all for one price.

namespace latchwork::inline v0::checking {

/// More than any cost; twice it, and any cost more, still fits.
inline constexpr std::int64_t never = std::int64_t{1} << 61;

struct Piece {
  int low = 1;
  int high = 1;
  int last = -1;      ///< latest row at which a batch from just below `low` may end; below `high`: none may
  bool hold = false;  ///< its needle may be held from row low - 1 to row high - 1
  std::int64_t rungs = 0;
  friend bool operator==(const Piece&, const Piece&) = default;
};

/// What all plans of the panel share, in milliseconds.
struct Common {
  std::int64_t fixed = 0;                  ///< crossings, shapings, carriage passes
  std::int64_t step = 1;                   ///< any two plans' totals differ by a multiple of this
  std::int64_t most = 0;                   ///< no total passes it; times rows + 2 it stays within 2^60
  std::vector<char> forced;                ///< per row 0..R: every plan stops there
  std::vector<std::vector<Piece>> pieces;  ///< per wale of Wales(grid).all()
};

/// A step of the pulse for each row of each wale.
/// @throws Error too_large, cancelled.
Common common_of(const Grid& grid, const Wales& wales, const Machine& machine, const Effort& effort, Pulse& pulse);

/// Values at places first, first + 1, ...
struct Places {
  int first = 0;
  std::vector<std::int64_t> value;
  std::int64_t at(int place) const {
    const int i = place - first;
    return i < 0 || i >= static_cast<int>(value.size()) ? never : value[static_cast<std::size_t>(i)];
  }
};

/// Places of a class after the decision at each row. Below the rows at which something of it can be made, and above
/// them, nothing changes: only those between are kept, so that all classes together take as much room as the panel.
struct RowsOfPlaces {
  int low = 0;
  std::vector<Places> rows;  ///< of low, low + 1, ...
  const Places& after(int row) const {
    return rows[static_cast<std::size_t>(std::clamp(row - low, 0, static_cast<int>(rows.size()) - 1))];
  }
};

/// The ways of a class of equal wales up the rows. Costs are for all of them, in 1/unit milliseconds.
class Ways {
 public:
  /// A class has pieces.
  Ways(const std::vector<Piece>& pieces, int rows, std::int64_t wales, std::int64_t unit, const Effort& effort);

  /// Places of use after the decision at `row`; before row 0 is decided, at -1, the one where nothing is made.
  int first(int row) const { return row < 0 ? 0 : first_[slot(row)]; }
  std::size_t count(int row) const {
    return row < 0 ? 1 : static_cast<std::size_t>(std::max(0, last_[slot(row)] - first_[slot(row)] + 1));
  }
  /// Cheapest ways to the places of the row below, on to those of `row`.
  void decided(std::span<const std::int64_t> before, int row, bool stop, std::span<std::int64_t> after) const;

  /// How many steps of the pulse to_end() and least() take: one for each row.
  std::int64_t rows() const { return high_ - low_ + 1; }
  /// Cheapest ways to the end from each place after the decision at each row, each stop costing `price[row]`.
  RowsOfPlaces to_end(const std::vector<std::int64_t>& price, Pulse& pulse) const;
  /// The cheapest from before row 0 is decided: after it, what is to come is `ahead`, of to_end().
  std::int64_t least(const RowsOfPlaces& ahead, std::int64_t price) const { return least(ahead.rows.front(), price); }
  /// The same, and what is to come above each row is not kept for it.
  std::int64_t least(const std::vector<std::int64_t>& price, Pulse& pulse) const;

 private:
  std::size_t slot(int row) const { return static_cast<std::size_t>(std::clamp(row, low_, high_) - low_); }
  void clear(Places& places, int row) const;  // to those of the row, none of them reached
  void to_end_from(int row, const Places& above, const std::vector<std::int64_t>& price, Places& here) const;
  std::int64_t least(const Places& after_row_0, std::int64_t price) const;
  std::int64_t batch_cost(int piece, int row) const;
  // Calls move(place, cost) for every place that a stop after `row` leads to, `place` itself among them.
  template <class Move>
  void moves(int place, int row, Move&& move) const;

  const std::vector<Piece>& pieces_;
  int low_;  // the rows at which something can be made, and one below
  int high_;
  std::int64_t batch_;
  std::int64_t hold_;
  // Per row from low_ to high_.
  std::vector<int> made_;            // pieces whose rows end there or lower; -1 inside a stack
  std::vector<std::int64_t> rungs_;  // of the rows above low_ to here
  std::vector<std::int64_t> below_;  // per piece: rungs_ of the row below it
  std::vector<int> first_, last_;    // lowest and highest place of use after its decision
};

}  // namespace latchwork::inline v0::checking
