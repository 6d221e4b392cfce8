#include "hands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <optional>

#include "text/words.hpp"

namespace latchwork::inline v0::knitting {
namespace {

/// More passings than any cloth of a size that fits has; refuses what would only eat memory.
constexpr std::int64_t max_passings = std::int64_t{1} << 26;

/// Needles counted through, without the gap at 0.
std::int64_t counted(int needle) {
  return needle > 0 ? std::int64_t{needle} - 1 : std::int64_t{needle};
}

std::string needle_word(std::int64_t needle) {
  if (needle == 0) return "0";
  return needle < 0 ? fmt::format("L{}", -needle) : fmt::format("R{}", needle);
}

bool is_loop(Strand strand) {
  return strand == Strand::face_loop || strand == Strand::back_loop || strand == Strand::cast_on;
}

}  // namespace

Hands::Hands(const Bed& bed, int rows)
    : bed_(bed),
      cloth_(rows, bed.columns),
      top_(static_cast<std::size_t>(bed.columns), no_slot),
      held_(static_cast<std::size_t>(bed.columns), false),
      moving_at_(static_cast<std::size_t>(bed.columns), -1) {}

void Hands::execute(const Move& move, std::int64_t index) {
  move_ = index;
  const auto each = [&](auto&& action) {
    const auto [first, last] = columns_of(move);
    std::optional<Stuck> first_stuck;
    for (int column = first; column >= last; --column) {
      try {
        action(column);
      } catch (Stuck& here) {
        if (!first_stuck) first_stuck = std::move(here);
      }
    }
    if (first_stuck) throw Stuck(std::move(*first_stuck));
  };
  switch (move.kind) {
    case MoveKind::cast_on:
      return each([this](int column) { cast_on(column); });
    case MoveKind::bind_off:
      return each([this](int column) { bind_off(column); });
    case MoveKind::carriage:
      return carriage();
    case MoveKind::hold:
      return each([this](int column) { hold(column); });
    case MoveKind::release:
      return each([this](int column) { release(column); });
    case MoveKind::tool_into:
      return tool_into(column_of(move.needle), move.row);
    case MoveKind::drop:
      return drop(column_of(move.needle), move.row);
    case MoveKind::rung_behind:
      return take_rung(column_of(move.needle), move.row, Strand::held);
    case MoveKind::rung_before:
      return take_rung(column_of(move.needle), move.row, Strand::float_rs);
    case MoveKind::rung_aside:
      return take_rung(column_of(move.needle), move.row, Strand::float_ws);
    case MoveKind::draw_toward:
      return take_rung(column_of(move.needle), move.row, Strand::back_loop);
    case MoveKind::draw_away:
      return take_rung(column_of(move.needle), move.row, Strand::face_loop);
    case MoveKind::hang:
      return hang(column_of(move.needle));
    case MoveKind::lift:
      return lift(move);
    case MoveKind::put_back:
      return put_back(move);
  }
  stuck(row_, -1, fmt::format("a move of unknown kind {}; kinds are 0 to 14", static_cast<int>(move.kind)));
}

void Hands::finish() const {
  if (latch_.in != no_slot) {
    stuck(row_, latch_.column,
          fmt::format("the latch tool is still in the wale of needle {}", needle_of(latch_.column)));
  }
  for (const auto& [tool, stitches] : tools_) {
    const Moving& first = moving_[static_cast<std::size_t>(stitches.front())];
    stuck(row_, first.left_at,
          fmt::format("{} from needle {} still on pronged tool {}", count_of(std::ssize(stitches), "stitch", "es"),
                      needle_of(first.left_at), std::int64_t{tool} + 1));
  }
}

// Needles and columns.

void Hands::stuck(int row, int column, const std::string& message) const {
  throw Stuck{place_of(std::clamp(row, 1, std::max(row_, 1)), column), fmt::format("RC {}: {}", row_, message)};
}

std::string Hands::needle_of(int column) const {
  const std::int64_t place = counted(bed_.leftmost) + bed_.columns - 1 - column;
  return needle_word(place >= 0 ? place + 1 : place);
}

int Hands::column_of(int needle) const {
  if (needle == 0) stuck(row_, -1, "there is no needle 0; needles are L1, L2, ... and R1, R2, ...");
  const std::int64_t from_left = counted(needle) - counted(bed_.leftmost);
  if (from_left < 0 || from_left >= bed_.columns) {
    stuck(row_, -1,
          fmt::format("needle {} is not among the panel's needles {} to {}", needle_word(needle),
                      needle_of(bed_.columns - 1), needle_of(0)));
  }
  return static_cast<int>(bed_.columns - 1 - from_left);
}

/// Columns of a move's needles from the operator's left: they fall.
std::pair<int, int> Hands::columns_of(const Move& move) const {
  const int first = column_of(move.needle);
  const int last = column_of(move.last_needle);
  if (last > first) {
    stuck(row_, first,
          fmt::format("needles {} to {} run backwards", needle_word(move.needle), needle_word(move.last_needle)));
  }
  return {first, last};
}

void Hands::require_stitch(int column, const char* what) const {
  if (top_[static_cast<std::size_t>(column)] == no_slot) {
    stuck(row_, column, fmt::format("needle {} has no stitch {}", needle_of(column), what));
  }
}

// Beginning, ending, knitting.

void Hands::cast_on(int column) {
  std::int32_t& top = top_[static_cast<std::size_t>(column)];
  if (top != no_slot) {
    stuck(row_, column,
          fmt::format("needle {} already has a stitch; a cast-on would be its second", needle_of(column)));
  }
  const std::int32_t slot = cloth_.at(row_, column);
  if (cloth_[slot].strand != Strand::bare) {
    stuck(row_, column,
          fmt::format("needle {}: a stitch stands here in row {}; a cast-on straight above it is in no chart",
                      needle_of(column), row_));
  }
  cloth_[slot].strand = Strand::cast_on;
  top = slot;
}

void Hands::bind_off(int column) {
  require_stitch(column, "to bind off");
  if (latch_.in != no_slot && latch_.column == column) {
    stuck(row_, column, fmt::format("needle {}: the latch tool is still in the wale", needle_of(column)));
  }
  const auto here = static_cast<std::size_t>(column);
  endings_.push_back({top_[here], row_, column});
  top_[here] = no_slot;
  unhold(column);
  if (moving_at_[here] >= 0) moving_[static_cast<std::size_t>(std::exchange(moving_at_[here], -1))].column = -1;
}

void Hands::carriage() {
  finish();  // the carriage would run into the tool, or leave its stitch behind
  ++row_;
  int bare_in_hold = -1;
  for (int column = 0; column < cloth_.columns(); ++column) {
    const auto here = static_cast<std::size_t>(column);
    if (top_[here] == no_slot) {
      if (held_[here]) {
        if (bare_in_hold < 0) bare_in_hold = column;
        held_[here] = false;
        held_since_.erase(column);
      }
      continue;
    }
    const std::int32_t slot = cloth_.at(row_, column);
    cloth_[slot] = {.below = top_[here], .strand = held_[here] ? Strand::held : Strand::face_loop};
    top_[here] = slot;
    if (!held_[here]) ++loops_;
  }
  if (bare_in_hold >= 0) {
    stuck(
        row_, bare_in_hold,
        fmt::format("needle {} is in hold with no stitch; the strand would lie in its hook", needle_of(bare_in_hold)));
  }
}

// Hold.

void Hands::hold(int column) {
  require_stitch(column, "to be moved to or from hold");
  if (held_[static_cast<std::size_t>(column)]) {
    note(Needless::Kind::held_before, move_, column);
    return;
  }
  held_[static_cast<std::size_t>(column)] = true;
  held_since_[column] = {.row = row_, .move = move_};
}

void Hands::release(int column) {
  require_stitch(column, "to be moved to or from hold");
  if (!held_[static_cast<std::size_t>(column)]) {
    note(Needless::Kind::not_held, move_, column);
  } else if (!unhold(column)) {
    note(Needless::Kind::no_row_held, move_, column);
  }
}

/// Whether a row was knitted meanwhile; if not, what put the needle in hold was done for nothing.
bool Hands::unhold(int column) {
  held_[static_cast<std::size_t>(column)] = false;
  const auto since = held_since_.find(column);
  if (since == held_since_.end()) return true;
  const Held held = since->second;
  held_since_.erase(since);
  if (held.row < row_) return true;
  note(Needless::Kind::no_row_held, held.move, column);
  return false;
}

// What changes nothing.

void Hands::note(Needless::Kind kind, std::int64_t move, int column) {
  needless_.push_back({.kind = kind, .move = move, .row = row_, .column = column});
}

std::vector<Needless> Hands::needless() {
  for (const auto& [column, held] : held_since_) {
    if (held.row == row_) note(Needless::Kind::no_row_held, held.move, column);
  }
  held_since_.clear();
  std::ranges::stable_sort(needless_, {}, &Needless::move);
  return std::move(needless_);
}

Fault Hands::told(const Needless& step) const {
  const std::string needle = needle_of(step.column);
  std::string words;
  switch (step.kind) {
    case Needless::Kind::not_held:
      words = fmt::format("needle {} is not in hold, so that bringing it back changes nothing", needle);
      break;
    case Needless::Kind::held_before:
      words = fmt::format("needle {} is in hold already, so that putting it there changes nothing", needle);
      break;
    case Needless::Kind::no_row_held:
      words = fmt::format("needle {} is in hold for no row, so that putting it there changes nothing", needle);
      break;
    case Needless::Kind::re_formed_as_it_was:
      words = fmt::format("the wale on needle {} is re-formed as it was, which changes nothing", needle);
      break;
    case Needless::Kind::lifted_in_vain:
      words = fmt::format("what is lifted from needle {} on goes back as it was, which changes nothing", needle);
      break;
  }
  return {.move = step.move,
          .place = place_of(std::max(step.row, 1), step.column),
          .message = fmt::format("RC {}: {}", step.row, words)};
}

// The latch tool.

std::int32_t Hands::loop_of_row(int column, int row) {
  const std::int32_t slot = long_wales_.find(cloth_, top_[static_cast<std::size_t>(column)], row);
  if (slot == no_slot) {
    stuck(row, column, fmt::format("the wale on needle {} has no loop of row {}", needle_of(column), row));
  }
  if (!is_loop(cloth_[slot].strand)) {
    stuck(row, column,
          fmt::format("the wale on needle {} has no loop of row {}: that row's strand is {}", needle_of(column), row,
                      cloth_[slot].strand == Strand::held       ? "held"
                      : cloth_[slot].strand == Strand::left_out ? "left out"
                                                                : "a float"));
  }
  return slot;
}

void Hands::tool_into(int column, int row) {
  if (latch_.moving >= 0) {
    stuck(row_, latch_.column,
          fmt::format("the latch tool still holds the stitch dropped from needle {}", needle_of(latch_.column)));
  }
  require_stitch(column, "whose wale the latch tool could go into");
  latch_ = {};
  latch_.in = loop_of_row(column, row);
  latch_.column = column;
  latch_.from_row = row;
  latch_.move = move_;
}

void Hands::drop(int column, int row) {
  require_stitch(column, "to drop");
  if (latch_.in == no_slot || latch_.column != column) {
    stuck(row_, column,
          fmt::format("needle {}: no tool is in a loop of this wale, so the dropped stitch would run",
                      needle_of(column)));
  }
  if (latch_.moving >= 0 || latch_.from_row != row) {
    stuck(row_, column,
          fmt::format("needle {}: the latch tool is in the loop of row {}, so the stitch cannot ladder "
                      "to row {}",
                      needle_of(column), latch_.from_row, row));
  }
  std::vector<int> ladder(static_cast<std::size_t>(row_ - row), column);
  std::int32_t slot = top_[static_cast<std::size_t>(column)];
  while (slot != latch_.in) {
    const int slot_row = cloth_.row_of(slot);
    const int slot_column = cloth_.column_of(slot);
    if (slot_row > row) ladder[static_cast<std::size_t>(slot_row - row - 1)] = slot_column;
    if (cloth_[slot].by_row) long_wales_.drop(cloth_, slot, latch_.in);
    // It comes up again on the operator's side of all that it passes.
    if (cloth_[slot].passed && !cloth_.passings(slot_row).pass_near(slot_column, cloth_.columns())) {
      latch_.passes_as_before = false;
    }
    latch_.before.emplace_back(slot, cloth_[slot].strand);
    slot = std::exchange(cloth_[slot].below, no_slot);
    cloth_[cloth_.at(slot_row, slot_column)].strand = Strand::bare;
  }
  latch_.ladder = std::move(ladder);
  latch_.moving = lift_stitch(column);
}

void Hands::take_rung(int column, int row, Strand strand) {
  if (latch_.moving < 0 || latch_.column != column) {
    stuck(row, column, fmt::format("needle {}: the latch tool holds no stitch dropped from it", needle_of(column)));
  }
  const std::int64_t step = std::int64_t{row} - latch_.from_row - 1;
  if (step < 0 || step >= static_cast<std::int64_t>(latch_.ladder.size())) {
    stuck(row, column,
          fmt::format("needle {}: no rung of row {} hangs there; the ladder has rows {} to {}", needle_of(column), row,
                      std::int64_t{latch_.from_row} + 1, row_));
  }
  const std::int32_t slot = cloth_.at(row, latch_.ladder[static_cast<std::size_t>(step)]);
  if (cloth_[slot].strand != Strand::bare) {
    stuck(row, column, fmt::format("needle {}: the rung of row {} is already used", needle_of(column), row));
  }
  cloth_[slot].below = latch_.in;
  cloth_[slot].strand = strand;
  latch_.in = slot;
  if (is_loop(strand)) ++loops_;
}

void Hands::hang(int column) {
  if (latch_.moving < 0) {
    stuck(row_, column, fmt::format("nothing dropped is on the latch tool to hang on needle {}", needle_of(column)));
  }
  if (top_[static_cast<std::size_t>(column)] != no_slot) {
    stuck(row_, column,
          fmt::format("needle {} already has a stitch; the one on the latch tool would be its second",
                      needle_of(column)));
  }
  leave_rungs();
  if (column == latch_.column && hangs_as_before()) note(Needless::Kind::re_formed_as_it_was, latch_.move, column);
  moving_[static_cast<std::size_t>(latch_.moving)].top = latch_.in;
  place_stitch(latch_.moving, column);
  latch_ = {};
}

/// Whether the wale on the latch tool, which was worked to its top, is what was dropped.
bool Hands::hangs_as_before() const {
  if (!latch_.passes_as_before) return false;
  std::int32_t slot = latch_.in;
  for (const auto& [before, strand] : latch_.before) {
    if (slot != before || cloth_[slot].strand != strand) return false;
    slot = cloth_[slot].below;
  }
  return true;
}

/// Rungs that were not worked hang beside the wale: each keeps its place in it, between those below and above.
void Hands::leave_rungs() {
  std::vector<std::int32_t> left;
  for (std::size_t i = 0; i < latch_.ladder.size(); ++i) {
    const std::int32_t slot = cloth_.at(latch_.from_row + 1 + static_cast<int>(i), latch_.ladder[i]);
    if (cloth_[slot].strand == Strand::bare) left.push_back(slot);
  }
  // From the top down, each goes in above the first slot of a lower row.
  std::int32_t above = no_slot;
  std::int32_t below = latch_.in;
  while (!left.empty()) {
    if (below != no_slot && cloth_.row_of(below) > cloth_.row_of(left.back())) {
      above = std::exchange(below, cloth_[below].below);
      continue;
    }
    const std::int32_t slot = left.back();
    left.pop_back();
    cloth_[slot].below = below;
    cloth_[slot].strand = Strand::left_out;
    (above == no_slot ? latch_.in : cloth_[above].below) = slot;
    above = slot;
  }
}

// The pronged tools.

void Hands::lift(const Move& move) {
  const auto [first, last] = columns_of(move);
  if (move.tool < 0) stuck(row_, first, fmt::format("needle {} is lifted to no tool", needle_of(first)));
  if (tools_.contains(move.tool)) {
    stuck(row_, first,
          fmt::format("needle {} is lifted to pronged tool {}, which is full", needle_of(first),
                      std::int64_t{move.tool} + 1));
  }
  std::vector<int> lifted;
  for (int column = first; column >= last; --column) {
    require_stitch(column, "to lift");
    if (latch_.in != no_slot && latch_.column == column) {
      stuck(row_, column, fmt::format("needle {}: the latch tool is still in the wale", needle_of(column)));
    }
    lifted.push_back(lift_stitch(column));
  }
  tools_.emplace(move.tool, std::move(lifted));
}

void Hands::put_back(const Move& move) {
  const auto [first, last] = columns_of(move);
  const auto tool = tools_.find(move.tool);
  if (tool == tools_.end()) {
    stuck(row_, first,
          fmt::format("pronged tool {} has no stitch to put on needle {}", std::int64_t{move.tool} + 1,
                      needle_of(first)));
  }
  const std::vector<int> stitches = tool->second;
  const int needles = first - last + 1;
  if (stitches.size() != static_cast<std::size_t>(needles)) {
    stuck(row_, first,
          fmt::format("pronged tool {} has {} for {} from {}", std::int64_t{move.tool} + 1,
                      count_of(std::ssize(stitches), "stitch", "es"), count_of(needles, "needle"), needle_of(first)));
  }
  for (int column = first; column >= last; --column) {
    if (top_[static_cast<std::size_t>(column)] != no_slot) {
      stuck(row_, column,
            fmt::format("needle {} already has a stitch; the one on pronged tool {} would be its second",
                        needle_of(column), std::int64_t{move.tool} + 1));
    }
  }
  tools_.erase(tool);
  int column = first;
  for (const int stitch : stitches) place_stitch(stitch, column--);
  if (in_air_ > 0 || !recent_.empty()) return;
  // All that were lifted stand on needles again.
  const auto moved = [](const Moving& each) { return each.column != each.origin; };
  if (!std::ranges::any_of(moving_, moved)) note(Needless::Kind::lifted_in_vain, lift_began_, moving_.front().origin);
}

void Hands::uncross() {
  tools_.clear();
  if (in_air_ == 0) return;  // those moved before have found their needles
  for (Moving& stitch : moving_) {
    if (stitch.column < 0) continue;
    const auto here = static_cast<std::size_t>(stitch.column);
    top_[here] = no_slot;
    moving_at_[here] = -1;
  }
  for (const Moving& stitch : moving_) top_[static_cast<std::size_t>(stitch.origin)] = stitch.top;
  cloth_.passings(row_).take_back(recent_.size());
  passings_ -= std::ssize(recent_);
  moving_.clear();
  recent_.clear();
  in_air_ = 0;
}

// What passes what.

int Hands::lift_stitch(int column) {
  if (in_air_ == 0) {  // all stand on needles: orders are counted from here
    lift_began_ = move_;
    for (const Moving& stitch : moving_) {
      if (stitch.column >= 0) moving_at_[static_cast<std::size_t>(stitch.column)] = -1;
    }
    moving_.clear();
    recent_.clear();
    order_odd_.clear();
    put_back_since_ = interleaved_ = false;
  } else if (put_back_since_ && !interleaved_) {
    interleaved_ = true;
    for (const Passing& passing : recent_) note_order(passing);
  }
  const auto here = static_cast<std::size_t>(column);
  int index = moving_at_[here];
  if (index < 0) {
    index = static_cast<int>(moving_.size());
    moving_.push_back({.wale = cloth_.column_of(top_[here]), .origin = column});
  }
  Moving& stitch = moving_[static_cast<std::size_t>(index)];
  stitch.top = std::exchange(top_[here], no_slot);
  stitch.left_at = column;
  stitch.column = -1;
  moving_at_[here] = -1;
  ++in_air_;
  return index;
}

void Hands::place_stitch(int index, int column) {
  Moving& stitch = moving_[static_cast<std::size_t>(index)];
  // Those never lifted stand still: it passes the ones between where it was and where it goes.
  const auto [low, high] = std::minmax(stitch.left_at, column);
  for (int between = low + 1; between < high; ++between) {
    const auto here = static_cast<std::size_t>(between);
    if (top_[here] != no_slot && moving_at_[here] < 0) pass(stitch.wale, cloth_.column_of(top_[here]));
  }
  // Of those lifted it passes the ones already back, where the order has changed. Those still in the air pass it later.
  for (const Moving& other : moving_) {
    if (other.column < 0 || &other == &stitch) continue;
    const bool left_before = (stitch.origin < other.origin) != order_changed(stitch.wale, other.wale);
    if (left_before != (column < other.column)) pass(stitch.wale, other.wale);
  }
  const auto here = static_cast<std::size_t>(column);
  stitch.column = column;
  top_[here] = stitch.top;
  moving_at_[here] = index;
  put_back_since_ = true;
  --in_air_;
}

void Hands::pass(int near, int far) {
  if (++passings_ > max_passings) {
    throw Error(ErrorCode::too_large, place_of(std::max(row_, 1), near),
                fmt::format("row {}, column {}: more than {} passings of stitches", row_, near, max_passings));
  }
  const Passing passing{near, far};
  cloth_.passings(row_).add(passing);
  cloth_[cloth_.at(row_, near)].passed = true;
  cloth_[cloth_.at(row_, far)].passed = true;
  recent_.push_back(passing);
  if (interleaved_) note_order(passing);
}

void Hands::note_order(const Passing& passing) {
  const std::pair<int, int> pair = std::minmax(passing.near, passing.far);
  if (const auto [found, added] = order_odd_.insert(pair); !added) order_odd_.erase(found);
}

bool Hands::order_changed(int wale, int other) const {
  return interleaved_ && order_odd_.contains(std::minmax(wale, other));
}

}  // namespace latchwork::inline v0::knitting
