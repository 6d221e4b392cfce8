#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "cloth.hpp"
#include "latchwork/move.hpp"
#include "latchwork/simulate.hpp"
#include "long_wales.hpp"

namespace latchwork::inline v0::knitting {

/// Thrown by Hands for a move that hands could not do; it never leaves simulate().
struct Stuck {
  Place place;
  std::string message;
};

/// A step that changed nothing: its first move, by index, and where.
struct Needless {
  enum class Kind : std::uint8_t { not_held, held_before, no_row_held, re_formed_as_it_was, lifted_in_vain };
  Kind kind = Kind::not_held;
  std::int64_t move = 0;
  int row = 0;  ///< what the counter reads
  int column = 0;
};

/// Carriage, needles and tools at work on a cloth. Knows nothing of charts: it executes one move at a time and throws
/// Stuck when that cannot be done. What can be done of it is done: of a run of needles the others, and the carriage
/// passes by a needle that was held without a stitch. Stitches of a crossing that stay in the air are for
/// uncross() to put back.
class Hands {
 public:
  /// For `rows` passes of the carriage at most.
  Hands(const Bed& bed, int rows);

  /// `index` is the move's, for what is told of it.
  void execute(const Move& move, std::int64_t index);
  /// Nothing of a crossing is done of which some stitch could not be lifted or put back: all that was lifted since
  /// every stitch stood on a needle goes back where it stood.
  void uncross();
  /// After the last move: no stitch may be left on a tool.
  void finish() const;
  /// After the last move: what was done for nothing, by moves.
  std::vector<Needless> needless();
  /// "RC 12: needle R3 is not in hold, so that bringing it back changes nothing".
  Fault told(const Needless& step) const;

  const Cloth& cloth() const noexcept { return cloth_; }
  std::int64_t loops() const noexcept { return loops_; }
  /// The slot on each column's needle, or no_slot.
  std::span<const std::int32_t> on_needles() const noexcept { return top_; }
  std::span<const Ending> endings() const noexcept { return endings_; }

 private:
  /// A stitch that was lifted or dropped. While any is in the air, those put back are remembered too: a stitch put back
  /// later passes on the operator's side of those already back, from the order in which all stood before.
  struct Moving {
    std::int32_t top = no_slot;
    int wale = 0;     ///< its column in the last row
    int origin = 0;   ///< where it stood before the first was lifted
    int left_at = 0;  ///< where it was last lifted from
    int column = -1;  ///< where it is; -1: in the air
  };
  struct LatchTool {
    std::int32_t in = no_slot;  ///< the loop it is in, or the top of what it has drawn
    int column = -1;            ///< needle of the wale it is in
    int from_row = 0;
    int moving = -1;                                      ///< index into moving_ when the wale has been dropped
    std::vector<int> ladder;                              ///< columns of the rungs of rows from_row+1, from_row+2, ...
    std::int64_t move = 0;                                ///< with which it went in
    std::vector<std::pair<std::int32_t, Strand>> before;  ///< what was dropped, from the top down
    bool passes_as_before = true;                         ///< what it passes on its way up
  };
  /// A needle's hold: since which row and move.
  struct Held {
    int row = 0;
    std::int64_t move = 0;
  };

  [[noreturn]] void stuck(int row, int column, const std::string& message) const;
  std::string needle_of(int column) const;
  int column_of(int needle) const;
  std::pair<int, int> columns_of(const Move& move) const;

  void cast_on(int column);
  void bind_off(int column);
  void carriage();
  void tool_into(int column, int row);
  void drop(int column, int row);
  void take_rung(int column, int row, Strand strand);
  void hang(int column);
  void leave_rungs();
  void lift(const Move& move);
  void put_back(const Move& move);
  void hold(int column);
  void release(int column);
  bool unhold(int column);
  bool hangs_as_before() const;
  void note(Needless::Kind kind, std::int64_t move, int column);

  std::int32_t loop_of_row(int column, int row);
  void require_stitch(int column, const char* what) const;
  int lift_stitch(int column);
  void place_stitch(int index, int column);
  void pass(int near, int far);
  void note_order(const Passing& passing);
  bool order_changed(int wale, int other) const;

  Bed bed_;
  Cloth cloth_;
  LongWales long_wales_;
  int row_ = 0;
  std::int64_t loops_ = 0;
  std::int64_t passings_ = 0;
  std::vector<std::int32_t> top_;
  std::vector<bool> held_;
  std::map<int, Held> held_since_;  ///< of the needles in hold, by column
  std::vector<Ending> endings_;
  LatchTool latch_;
  std::map<int, std::vector<int>> tools_;  ///< pronged tools that are full: indices into moving_, operator's left first

  std::vector<Moving> moving_;
  std::vector<int> moving_at_;  ///< index into moving_ of the stitch on a column's needle, or -1
  int in_air_ = 0;
  std::int64_t move_ = 0;        ///< that is made
  std::int64_t lift_began_ = 0;  ///< the move with which the first stitch in the air was lifted
  std::vector<Needless> needless_;
  bool put_back_since_ = false;              ///< some stitch came back while others are still in the air
  bool interleaved_ = false;                 ///< and then another was lifted: passings must be looked up
  std::vector<Passing> recent_;              ///< of this time in the air
  std::set<std::pair<int, int>> order_odd_;  ///< pairs that have passed an odd number of times in it
};

}  // namespace latchwork::inline v0::knitting
