#include "reading.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "text/words.hpp"

namespace latchwork::inline v0::knitting {
namespace {

bool is_stitch(Strand strand) {
  return strand != Strand::bare && strand != Strand::cast_on;
}
bool is_drawn(Strand strand) {
  return strand == Strand::face_loop || strand == Strand::back_loop;
}

class Reader {
 public:
  Reader(const Cloth& cloth, int rows, std::span<const std::int32_t> on_needles, std::span<const Ending> endings)
      : cloth_(cloth),
        rows_(rows),
        columns_(cloth.columns()),
        on_needles_(on_needles),
        endings_(endings),
        to_(static_cast<std::size_t>(columns_)),
        block_of_(static_cast<std::size_t>(columns_)),
        cover_(static_cast<std::size_t>(columns_)) {}

  Reading all(const std::function<void()>& tick) {
    reading_.cells.resize(static_cast<std::size_t>(rows_) * static_cast<std::size_t>(columns_));
    for (int row = 1; row <= rows_; ++row) {
      tick();
      for (int column = 0; column < columns_; ++column) read_cell(row, column);
    }
    for (const Ending& ending : endings_) read_ending(ending);
    for (int row = 0; row <= rows_; ++row) cross(row);
    std::ranges::stable_sort(reading_.faults, {},
                             [](const Fault& fault) { return std::tuple(fault.place.row, fault.place.column); });
    return std::move(reading_);
  }

 private:
  Cell& cell(int row, int column) {
    return reading_.cells[static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns_) +
                          static_cast<std::size_t>(column)];
  }

  void fault(int row, int column, std::string message) {
    reading_.faults.push_back({.move = -1, .place = place_of(std::max(row, 1), column), .message = std::move(message)});
  }

  void unreadable_at(int row, int column, const std::string& what) {
    cell(row, column) = unreadable;
    fault(row, column, fmt::format("row {}, column {}: {}; no cell describes that", row, column, what));
  }

  // Cells.

  void read_cell(int row, int column) {
    const std::int32_t here = cloth_.at(row, column);
    const Slot& slot = cloth_[here];
    if (!is_stitch(slot.strand)) {
      cell(row, column) = Cell::none;
      return;
    }
    cell(row, column) = slot.strand == Strand::face_loop   ? Cell::knit
                        : slot.strand == Strand::back_loop ? Cell::purl
                        : slot.strand == Strand::held      ? Cell::tuck
                                                           : Cell::slip;
    if (slot.strand == Strand::left_out) {
      return unreadable_at(row, column, "its strand was left out of the wale that goes on above it");
    }
    const int below = cloth_.row_of(slot.below);
    if (below != row - 1) {
      return unreadable_at(row, column, fmt::format("its strand is worked above that of row {}", below));
    }
    if (is_drawn(slot.strand)) close_floats(slot, row);
  }

  /// A loop closes the floats that lie between it and the loop that it is drawn through: behind a knit, before a purl.
  void close_floats(const Slot& loop, int row) {
    const Strand side = loop.strand == Strand::face_loop ? Strand::float_ws : Strand::float_rs;
    for (std::int32_t slot = loop.below; slot != no_slot && is_stitch(cloth_[slot].strand); slot = cloth_[slot].below) {
      const Strand strand = cloth_[slot].strand;
      if (is_drawn(strand)) return;
      if (strand == Strand::held || strand == side) continue;
      const int float_row = cloth_.row_of(slot);
      if (cell(float_row, cloth_.column_of(slot)) == unreadable) continue;
      unreadable_at(float_row, cloth_.column_of(slot),
                    fmt::format("its strand floats on the {}, but row {} closes it with a {}",
                                strand == Strand::float_rs ? "right side" : "wrong side", row,
                                loop.strand == Strand::face_loop ? "knit" : "purl"));
    }
  }

  void read_ending(const Ending& ending) {
    const int row = cloth_.row_of(ending.top);
    const int column = cloth_.column_of(ending.top);
    if (column == ending.column) return;
    fault(row, column,
          fmt::format("row {}, column {}: the stitch was moved to column {} and bound off there; no crossing describes "
                      "that",
                      row, column, ending.column));
  }

  // Crossings.

  /// Where each wale of `row` stands in the next row, or on the needles after the last; -1: it ends. True when any
  /// stands elsewhere than before.
  bool follow(int row) {
    std::ranges::fill(to_, -1);
    bool moved = false;
    for (int column = 0; column < columns_; ++column) {
      const std::int32_t below =
          row < rows_ ? cloth_[cloth_.at(row + 1, column)].below : on_needles_[static_cast<std::size_t>(column)];
      if (below == no_slot) continue;
      const std::int32_t from = below - cloth_.at(row, 0);
      if (from < 0 || from >= columns_) continue;  // worked out of order, which was told
      int& to = to_[static_cast<std::size_t>(from)];
      if (to >= 0) {
        throw Error(ErrorCode::internal, place_of(std::max(row, 1), from),
                    fmt::format("row {}, column {}: two loops are drawn through one", row, from));
      }
      to = column;
      moved = moved || from != column;
    }
    return moved;
  }

  struct Block {
    int first = 0, last = 0;
    Crossing crossing;
    bool read = false;
    std::int64_t expected = 0;  ///< passings
    std::int64_t found = 0;
    /// Who is on the operator's side: for left and right, left and centre, right and centre, how often each way.
    std::array<std::array<std::int64_t, 2>, 3> near{};
  };

  void cross(int row) {
    const auto& passings = cloth_.passings(row);
    const bool moved = follow(row);
    if (!moved && passings.empty()) return;
    split(row);
    passings.each([&](const Passing& passing) { count(row, passing); });
    for (Block& block : blocks_) {
      if (block.read) order(row, block);
    }
  }

  void no_crossing(int row, int first, int last, const char* why) {
    fault(row, first,
          fmt::format("after row {}, {}: {}; no crossing describes that", row, run_of("column", first, last), why));
  }

  /// Splits the row where no wale passes from one side to the other, and reads each piece's groups.
  void split(int row) {
    blocks_.clear();
    std::ranges::fill(block_of_, -1);
    std::ranges::fill(cover_, 0);
    for (int column = 0; column < columns_; ++column) {
      const int to = to_[static_cast<std::size_t>(column)];
      if (to < 0 || to == column) continue;
      ++cover_[static_cast<std::size_t>(std::min(column, to))];
      --cover_[static_cast<std::size_t>(std::max(column, to))];
    }
    int open = 0;
    int first = -1;
    for (int column = 0; column < columns_; ++column) {
      const int before = open;
      open += cover_[static_cast<std::size_t>(column)];
      if (before == 0 && open > 0) first = column;
      if (before == 0 || open > 0) continue;
      blocks_.push_back(groups(row, first, column));
      for (int inside = first; inside <= column; ++inside) {
        block_of_[static_cast<std::size_t>(inside)] = static_cast<int>(blocks_.size()) - 1;
      }
    }
  }

  Block groups(int row, int first, int last) {
    Block block;
    block.first = first;
    block.last = last;
    if (row == 0) {
      no_crossing(row, first, last, "stitches change places before the first row");
      return block;
    }
    const auto to = [this](int column) { return to_[static_cast<std::size_t>(column)]; };
    const auto strand = [this, row](int column) { return cloth_[cloth_.at(row, column)].strand; };
    const auto refuse = [&](const char* why) {
      no_crossing(row, first, last, why);
      return block;
    };
    const int width = last - first + 1;
    const int rightward = to(first) < 0 ? 0 : to(first) - first;
    const int leftward = to(last) < 0 ? 0 : last - to(last);
    Crossing& crossing = block.crossing;
    crossing = {.row = row, .column = first, .left = width - rightward, .right = width - leftward};
    crossing.centre = width - crossing.left - crossing.right;
    const char* const unlike = "stitches change places otherwise than as two groups round a centre";
    if (rightward < 1 || leftward < 1 || crossing.left < 1 || crossing.right < 1 || crossing.centre < 0) {
      return refuse(unlike);
    }
    const int centre = first + crossing.left;
    const int right = centre + crossing.centre;
    const bool bare = crossing.centre > 0 && !is_stitch(strand(centre));
    for (int column = first; column <= last; ++column) {
      if (strand(column) == Strand::held || strand(column) == Strand::float_rs || strand(column) == Strand::float_ws) {
        return refuse("a tuck or slip in this row takes part");
      }
      const bool in_centre = column >= centre && column < right;
      const bool stands = is_stitch(strand(column));
      if (in_centre && bare) {
        if (stands) return refuse("only a part of the centre is bare");
        if (to(column) >= 0 || stands_in_next(row, column + crossing.right - crossing.left)) {
          return refuse("the centre is bare only below");
        }
        continue;
      }
      const int expected = column + (column < centre ? rightward
                                     : in_centre     ? crossing.right - crossing.left
                                                     : -leftward);
      if (!stands || to(column) != expected) return refuse(unlike);
    }
    block.read = true;
    const std::int64_t l = crossing.left;
    const std::int64_t k = bare ? 0 : crossing.centre;
    const std::int64_t q = crossing.right;
    block.expected = l * q + l * k + k * q;
    return block;
  }

  bool stands_in_next(int row, int column) const {
    return row < rows_ ? is_stitch(cloth_[cloth_.at(row + 1, column)].strand)
                       : on_needles_[static_cast<std::size_t>(column)] != no_slot;
  }

  /// 0, 1, 2: left, centre, right group of the block's crossing.
  static int group_of(const Block& block, int column) {
    const int inside = column - block.first;
    return inside < block.crossing.left ? 0 : inside < block.crossing.left + block.crossing.centre ? 1 : 2;
  }

  void count(int row, const Passing& passing) {
    const int index = block_of_[static_cast<std::size_t>(passing.near)];
    const int other = block_of_[static_cast<std::size_t>(passing.far)];
    const int first = std::min(passing.near, passing.far);
    const int last = std::max(passing.near, passing.far);
    if (index < 0 || index != other) return no_crossing(row, first, last, "stitches pass and stay, or pass and end");
    Block& block = blocks_[static_cast<std::size_t>(index)];
    if (!block.read) return;
    const int near = group_of(block, passing.near);
    const int far = group_of(block, passing.far);
    if (near == far) {
      block.read = false;
      return no_crossing(row, first, last, "stitches of one group pass and stay");
    }
    // left+right 0, left+centre 1, right+centre 2; the first named is near: 0.
    const std::size_t pair = near + far == 2 ? 0 : near + far == 1 ? 1 : 2;
    const int first_named = pair == 2 ? 2 : 0;
    ++block.near[pair][near == first_named ? 0 : 1];
    ++block.found;
  }

  /// Order of the groups from front to back. Every pair of unlike groups has changed order, so it has passed at least
  /// once: if the count is right, each did exactly once.
  void order(int row, const Block& block) {
    if (block.found != block.expected) {
      return no_crossing(row, block.first, block.last, "two stitches pass each other more than once");
    }
    for (const auto& [one, two] : block.near) {
      if (one > 0 && two > 0)
        return no_crossing(row, block.first, block.last, "a group is torn between front and back");
    }
    Crossing crossing = block.crossing;
    const bool left_near = block.near[0][0] > 0;
    crossing.lean = left_near ? Lean::left : Lean::right;  // the one in front on the RS leans as the crossing
    if (block.near[1] != std::array<std::int64_t, 2>{}) {
      const bool before_left = block.near[1][0] > 0;
      const bool before_right = block.near[2][0] > 0;
      if (before_left != before_right) {
        const bool behind_front = left_near ? !before_right : !before_left;
        if (!behind_front) {
          return no_crossing(row, block.first, block.last, "the centre is before the front group and behind the other");
        }
      }
      crossing.place = before_left == before_right ? (before_left ? Centre::front : Centre::behind) : Centre::between;
    }
    reading_.crossings.push_back(crossing);
  }

  const Cloth& cloth_;
  int rows_;
  int columns_;
  std::span<const std::int32_t> on_needles_;
  std::span<const Ending> endings_;
  std::vector<int> to_;
  std::vector<int> block_of_;
  std::vector<int> cover_;
  std::vector<Block> blocks_;
  Reading reading_;
};

}  // namespace

Reading read(const Cloth& cloth, int rows, std::span<const std::int32_t> on_needles, std::span<const Ending> endings,
             const std::function<void()>& tick) {
  return Reader(cloth, rows, on_needles, endings).all(tick);
}

bool bare_centre(const Crossing& crossing, std::span<const Cell> cells, int columns) {
  if (crossing.centre == 0) return false;
  const std::size_t index = static_cast<std::size_t>(crossing.row - 1) * static_cast<std::size_t>(columns) +
                            static_cast<std::size_t>(crossing.column + crossing.left);
  return cells[index] == Cell::none;
}

}  // namespace latchwork::inline v0::knitting
