#pragma once

#include <utility>
#include <vector>

#include "latchwork/move.hpp"

// Moves of hands that go far below the needles: nobody's plan, but what a simulation must bear.

namespace latchwork_test {

/// A tool goes into the lowest loop of one wale of so many rows, as often as it has rows. On a bed {-1, 1}.
inline std::vector<latchwork::Move> tall_wale_moves(int rows) {
  using latchwork::MoveKind;
  std::vector<latchwork::Move> moves = {{.kind = MoveKind::cast_on, .needle = -1, .last_needle = -1}};
  for (int row = 0; row < rows; ++row) moves.push_back({.kind = MoveKind::carriage});
  for (int row = 0; row < rows; ++row) {
    moves.push_back({.kind = MoveKind::tool_into, .needle = -1, .last_needle = -1, .row = 0});
  }
  return moves;
}

/// A crossing of so many over as many after row 2, re-formed wale by wale, and a row knitted. On a bed {-half, 2 *
/// half}.
inline std::vector<latchwork::Move> wide_crossing_moves(int half) {
  using latchwork::MoveKind;
  const auto needle = [half](int from_left) { return from_left < half ? from_left - half : from_left - half + 1; };
  const int last = needle(2 * half - 1);
  std::vector<latchwork::Move> moves = {{.kind = MoveKind::cast_on, .needle = -half, .last_needle = last}};
  for (int row = 0; row < 2; ++row) moves.push_back({.kind = MoveKind::carriage});
  moves.push_back({.kind = MoveKind::lift, .needle = -half, .last_needle = -1, .tool = 0});
  moves.push_back({.kind = MoveKind::lift, .needle = 1, .last_needle = last, .tool = 1});
  moves.push_back({.kind = MoveKind::put_back, .needle = 1, .last_needle = last, .tool = 0});
  moves.push_back({.kind = MoveKind::put_back, .needle = -half, .last_needle = -1, .tool = 1});
  for (int i = 0; i < 2 * half; ++i) {
    for (const auto& [kind, row] : {std::pair(MoveKind::tool_into, 1), std::pair(MoveKind::drop, 1),
                                    std::pair(MoveKind::draw_away, 2), std::pair(MoveKind::hang, 0)}) {
      moves.push_back({.kind = kind, .needle = needle(i), .last_needle = needle(i), .row = row});
    }
  }
  moves.push_back({.kind = MoveKind::carriage});
  return moves;
}

}  // namespace latchwork_test
