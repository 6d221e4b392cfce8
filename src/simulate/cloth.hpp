#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/error.hpp"
#include "latchwork/simulate.hpp"
#include "passings.hpp"

namespace latchwork::inline v0::knitting {

/// What a row's strand does where it passes one column.
enum class Strand : std::uint8_t {
  bare,       ///< nothing: a rung, or the ladder of a needle out of work
  face_loop,  ///< drawn through away from the operator: a knit on the RS
  back_loop,  ///< drawn through toward the operator: a purl on the RS
  cast_on,    ///< a loop of its own, made when this row was the last; the strand itself passes bare
  held,       ///< held with the loop below until the next loop of the wale is drawn through both
  float_rs,   ///< passes by uncaught on the RS
  float_ws,   ///< passes by uncaught on the operator's side
  left_out,   ///< hangs bare beside a wale that was re-formed without it
};

inline constexpr std::int32_t no_slot = -1;

/// One row's strand at one column, and what of the same wale lies just below it. Chains of `below` are the wales: they
/// step from row to row, a slot in each, and where they do not, a rung was taken out of order.
struct Slot {
  std::int32_t below = no_slot;
  Strand strand = Strand::bare;
  bool passed = false;  ///< its wale is in a passing between this row and the next
  bool by_row = false;  ///< from here down its wale is among the long ones that were looked through
};

/// The knitted cloth: slots row by row from the cast-on, and what passed after each row. Flat; linear in its size.
class Cloth {
 public:
  Cloth(int rows, int columns)
      : columns_(columns),
        slots_((static_cast<std::size_t>(rows) + 1) * static_cast<std::size_t>(columns)),
        passings_(static_cast<std::size_t>(rows) + 1) {}

  int columns() const noexcept { return columns_; }
  int row_of(std::int32_t slot) const noexcept { return slot / columns_; }
  int column_of(std::int32_t slot) const noexcept { return slot % columns_; }
  std::int32_t at(int row, int column) const noexcept { return row * columns_ + column; }

  Slot& operator[](std::int32_t slot) noexcept { return slots_[static_cast<std::size_t>(slot)]; }
  const Slot& operator[](std::int32_t slot) const noexcept { return slots_[static_cast<std::size_t>(slot)]; }

  /// What passed after `row`.
  Passings& passings(int row) noexcept { return passings_[static_cast<std::size_t>(row)]; }
  const Passings& passings(int row) const noexcept { return passings_[static_cast<std::size_t>(row)]; }

 private:
  int columns_;
  std::vector<Slot> slots_;
  std::vector<Passings> passings_;
};

/// Where a wale was bound off.
struct Ending {
  std::int32_t top = no_slot;
  int row = 0;
  int column = 0;
};

inline Place place_of(int row, int column) {
  Place place;
  place.row = row;
  place.column = column;
  return place;
}

}  // namespace latchwork::inline v0::knitting
