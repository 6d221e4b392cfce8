#pragma once

#include <vector>

#include "latchwork/move.hpp"
#include "latchwork/simulate.hpp"

namespace latchwork_test {

/// Moves said one after another, as one would at the machine.
class HandMoves {
 public:
  HandMoves& cast_on(int needle, int last) { return range(latchwork::MoveKind::cast_on, needle, last); }
  HandMoves& bind_off(int needle) { return range(latchwork::MoveKind::bind_off, needle, needle); }
  HandMoves& pass(int times = 1) {
    for (int i = 0; i < times; ++i) moves_.push_back({.kind = latchwork::MoveKind::carriage});
    return *this;
  }
  HandMoves& hold(int needle) { return range(latchwork::MoveKind::hold, needle, needle); }
  HandMoves& release(int needle) { return range(latchwork::MoveKind::release, needle, needle); }
  HandMoves& into(int needle, int row) { return latch(latchwork::MoveKind::tool_into, needle, row); }
  HandMoves& drop(int needle, int row) { return latch(latchwork::MoveKind::drop, needle, row); }
  HandMoves& dropped(int needle, int row) { return into(needle, row).drop(needle, row); }
  HandMoves& behind(int needle, int row) { return latch(latchwork::MoveKind::rung_behind, needle, row); }
  HandMoves& before(int needle, int row) { return latch(latchwork::MoveKind::rung_before, needle, row); }
  HandMoves& aside(int needle, int row) { return latch(latchwork::MoveKind::rung_aside, needle, row); }
  HandMoves& toward(int needle, int row) { return latch(latchwork::MoveKind::draw_toward, needle, row); }
  HandMoves& away(int needle, int row) { return latch(latchwork::MoveKind::draw_away, needle, row); }
  HandMoves& hang(int needle) { return latch(latchwork::MoveKind::hang, needle, -1); }
  HandMoves& lift(int tool, int needle, int last) { return range(latchwork::MoveKind::lift, needle, last, tool); }
  HandMoves& back(int tool, int needle, int last) { return range(latchwork::MoveKind::put_back, needle, last, tool); }

  HandMoves& add(const latchwork::Move& move) {
    moves_.push_back(move);
    return *this;
  }

  const std::vector<latchwork::Move>& all() const { return moves_; }
  operator std::span<const latchwork::Move>() const { return moves_; }

 private:
  HandMoves& range(latchwork::MoveKind kind, int needle, int last, int tool = -1) {
    moves_.push_back({.kind = kind, .needle = needle, .last_needle = last, .row = -1, .tool = tool});
    return *this;
  }
  HandMoves& latch(latchwork::MoveKind kind, int needle, int row) {
    moves_.push_back({.kind = kind, .needle = needle, .last_needle = needle, .row = row});
    return *this;
  }

  std::vector<latchwork::Move> moves_;
};

}  // namespace latchwork_test
