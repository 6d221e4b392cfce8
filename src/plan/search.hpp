#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "plan/limits.hpp"
#include "plan/prices.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {

/// Rows 0..R after which to stop, as flags, and their cost: hand work and one unit a stop.
struct Schedule {
  std::vector<char> stops;
  std::int64_t cost = far;
  std::vector<std::vector<Work>> works{};  ///< at these stops, one list a lane, where they are known; else empty
};

/// What one pass of the search found.
struct Pass {
  std::int64_t bound = far;  ///< no schedule that was not found costs less, or else it costs more than `most`
  bool complete = false;     ///< nothing was left aside for want of width
  bool broken_off = false;   ///< a limit was reached
  int stuck = -1;            ///< the row past which no label could be carried on; -1: some came to the end
};

/// What became of one label, for a proof that others can follow.
struct Fate {
  std::uint32_t from = 0;  ///< label of the row below, counted among those kept
  bool stop = false;
  enum class End : std::uint8_t { kept, bound, dominated } end = End::bound;
  std::uint32_t by = 0;  ///< dominated: a kept one's place in the row's list
};

/// Every label that was made, of which no more than `room`: what needs more is broken off.
struct Fates {
  std::vector<std::vector<Fate>> rows;  ///< per row that was looked through, by `from`, a stop first
  std::size_t told = 0;
  std::size_t room = 0;

  void tell(const Fate& fate) {
    rows.back().push_back(fate);
    ++told;
  }
  bool full() const { return told > room; }
};

/// Looks for schedules that cost `most` or less, going up the rows with at most `width` partial schedules (labels) a
/// row, the most promising by their bound: the prices' ways to go, and from each row on at least `gain` more (per row
/// 0..R). A label is dropped when its bound passes `most`, or when another is at least as good whatever follows. The
/// best schedule found, if any, goes to `best`; of equal ones it is the one whose first differing row has a stop. With
/// `fates`, writes there what became of each label, as far as there is room.
Pass search(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width, std::int64_t most,
            const std::vector<std::int64_t>& gain, Schedule& best, Limits& limits, Fates* fates = nullptr);

/// The same for rows first..last (first > 0) alone, each class starting wherever it can, at the cost at which its way
/// to go comes to the same. The pass's bound is what every way on from there costs, at least, above the prices' ways to
/// go; beyond `slack` it does not matter how much.
Pass look_ahead(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width, std::int64_t slack,
                const std::vector<std::int64_t>& gain, int first, int last, Limits& limits, Fates* fates = nullptr);

/// The most states that a label holds after some row.
std::size_t states_of_label(const Windows& windows);

/// Labels that one row of the search may keep within the options' memory, where a label holds so many states.
std::size_t greatest_width(const PlanOptions& options, std::size_t states, int rows);

}  // namespace latchwork::inline v0::planning
