#include "certificate/ways.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <utility>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0::checking {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

bool stacked(Cell cell) {
  return cell == Cell::tuck || cell == Cell::slip;
}

std::int64_t rung(Cell cell, const Effort& effort) {
  switch (cell) {
    case Cell::knit:
      return effort.drop + effort.rung_knit;
    case Cell::purl:
      return effort.drop + effort.rung_purl;
    case Cell::tuck:
      return effort.drop + effort.rung_tuck;
    default:
      return effort.drop + effort.rung_slip;
  }
}

bool tuck_at(const Grid& grid, int row, int column) {
  return column >= 0 && column < grid.columns() && grid.at(row, column) == Cell::tuck;
}

/// A wale by its index, and a row after which it is in a crossing.
using Crossed = std::pair<int, int>;

std::vector<Piece> pieces_of(const Grid& grid, const Wale& wale, int index, const std::vector<Crossed>& crossed,
                             const Machine& machine, const Effort& effort) {
  std::vector<Piece> pieces;
  const auto cell = [&](int row) { return grid.at(row, wale.column_at(row)); };
  for (int row = wale.row; row <= wale.last_row(); ++row) {
    if (cell(row) == Cell::knit) continue;
    Piece piece;
    piece.low = row;
    bool hold = cell(row) == Cell::tuck;
    for (; row <= wale.last_row() && stacked(cell(row)); ++row) {
      const int column = wale.column_at(row);
      hold = hold && cell(row) == Cell::tuck && !tuck_at(grid, row, column - 1) && !tuck_at(grid, row, column + 1);
      piece.rungs += rung(cell(row), effort);
    }
    piece.high = row;
    const bool closed = row <= wale.last_row();
    const bool loop = piece.low > wale.row || machine.cast_on_loops;
    if (closed && loop) {
      piece.rungs += rung(cell(row), effort);
      piece.hold = hold && cell(row) == Cell::knit;
      // Up to the greatest ladder and the end of the wale, and past no crossing of its own.
      int last = std::min(wale.last_row(), piece.low - 1 + machine.max_ladder);
      const auto barrier = std::lower_bound(crossed.begin(), crossed.end(), Crossed{index, piece.low});
      if (barrier != crossed.end() && barrier->first == index) last = std::min(last, barrier->second);
      piece.last = last >= piece.high ? last : -1;
    }
    pieces.push_back(piece);
  }
  return pieces;
}

}  // namespace

Common common_of(const Grid& grid, const Wales& wales, const Machine& machine, const Effort& effort, Pulse& pulse) {
  const auto rows = static_cast<std::int64_t>(grid.rows());
  const std::int64_t dearest =
      effort.drop + std::max({effort.rung_knit, effort.rung_purl, effort.rung_tuck, effort.rung_slip});
  const std::int64_t a_cell =
      effort.batch + dearest + effort.hold + effort.shaping + effort.crossing + effort.crossing_stitch;
  Common common;
  common.most = rows * grid.columns() * a_cell + (rows + 1) * (effort.stop + effort.row + 1);
  if (common.most > (std::int64_t{1} << 60) / (rows + 2)) {
    refuse(ErrorCode::too_large, "effort",
           fmt::format("a plan of {} rows of {} stitches at these efforts could take {} ms; a certificate is kept "
                       "to {} ms",
                       rows, grid.columns(), common.most, (std::int64_t{1} << 60) / (rows + 2)));
  }

  common.fixed = rows * effort.row;
  common.forced.assign(at(grid.rows()) + 1, 0);
  std::vector<Crossed> crossed;
  for (const Crossing& crossing : grid.crossings()) {
    const int end = crossing.column + crossing.width();
    for (int column = crossing.column; column < end; ++column) {
      if (const int wale = wales.at(crossing.row, column); wale >= 0) crossed.emplace_back(wale, crossing.row);
    }
    const int centre = crossing.column + crossing.left;
    const bool bare = crossing.centre > 0 && grid.at(crossing.row, centre) == Cell::none;
    const bool stays = crossing.place == Centre::front && crossing.left == crossing.right;
    const int lifted = crossing.left + crossing.right + (bare || stays ? 0 : crossing.centre);
    common.fixed += effort.crossing + lifted * effort.crossing_stitch;
    common.forced[at(crossing.row)] = 1;
  }
  std::sort(crossed.begin(), crossed.end());
  for (std::size_t i = 0; i < wales.all().size(); ++i) {
    const Wale& wale = wales.all()[i];
    pulse.step(wale.last_row() - wale.row + 1);
    if (wale.row > 1) {
      common.fixed += effort.shaping;
      common.forced[at(wale.row - 1)] = 1;
    }
    if (wale.last_row() < grid.rows()) {
      common.fixed += effort.shaping;
      common.forced[at(wale.last_row())] = 1;
    }
    common.pieces.push_back(pieces_of(grid, wale, static_cast<int>(i), crossed, machine, effort));
  }

  std::int64_t step = 0;
  for (const std::int64_t cost :
       {effort.stop, effort.batch, effort.hold, effort.drop + effort.rung_knit, effort.drop + effort.rung_purl,
        effort.drop + effort.rung_tuck, effort.drop + effort.rung_slip}) {
    step = std::gcd(step, cost);
  }
  common.step = std::max<std::int64_t>(1, step);
  return common;
}

Ways::Ways(const std::vector<Piece>& pieces, int rows, std::int64_t wales, std::int64_t unit, const Effort& effort)
    : pieces_(pieces),
      low_(std::max(0, pieces.front().low - 2)),
      high_(std::min(rows, std::max(pieces.back().last, pieces.back().high))),
      batch_(effort.batch * wales * unit),
      hold_(effort.hold * wales * unit) {
  const std::int64_t knit = (effort.drop + effort.rung_knit) * wales * unit;
  const int count = static_cast<int>(pieces.size());
  for (std::vector<int>* list : {&made_, &first_, &last_}) list->assign(slot(high_) + 1, 0);
  rungs_.assign(slot(high_) + 1, 0);
  int made = 0;
  int first = 0;
  int last = 0;
  // A place is of use while some later stop leads on from it, and from the first row after which it can be reached.
  const auto of_use = [&](int place, int row) {
    if (place == 2 * count) return true;
    const Piece& piece = pieces[at(place / 2)];
    if (place % 2 != 0) return piece.hold && piece.high - 1 > row;
    return piece.last > row || (piece.hold && piece.low - 1 > row);
  };
  const auto reached = [&](int place, int row) {
    if (place % 2 != 0) return pieces[at(place / 2)].hold && pieces[at(place / 2)].low - 1 <= row;
    const Piece& piece = pieces[at(place / 2 - 1)];
    return (piece.hold ? piece.high - 1 : piece.high) <= row;
  };
  for (int row = low_; row <= high_; ++row) {
    const std::size_t here = slot(row);
    if (row > low_) {
      rungs_[here] = rungs_[here - 1];
      if (made < count && row >= pieces[at(made)].low) {
        made_[here] = -1;
        if (row == pieces[at(made)].high) rungs_[here] += pieces[at(made++)].rungs * wales * unit;
      } else {
        rungs_[here] += knit;
      }
      if (made == count || row < pieces[at(made)].low) made_[here] = made;
    }
    while (!of_use(first, row)) ++first;
    for (bool higher = true; higher;) {
      higher = false;
      for (int place = last + 1; place <= std::min(last + 2, 2 * count) && !higher; ++place) {
        if (!reached(place, row)) continue;
        last = place;
        higher = true;
      }
    }
    first_[here] = first;
    last_[here] = last;
  }
  below_.reserve(pieces.size());
  for (const Piece& piece : pieces) below_.push_back(rungs_[slot(piece.low - 1)]);
}

std::int64_t Ways::batch_cost(int piece, int row) const {
  return batch_ + rungs_[slot(row)] - below_[at(piece)];
}

void Ways::clear(Places& places, int row) const {
  places.first = first(row);
  places.value.assign(count(row), never);
}

template <class Move>
void Ways::moves(int place, int row, Move&& move) const {
  std::int64_t cost = 0;
  const auto put = [&](int reached, std::int64_t paid) {
    move(reached, paid);
    const auto next = at(reached / 2);
    if (reached % 2 == 0 && next < pieces_.size() && pieces_[next].hold && pieces_[next].low - 1 == row) {
      move(reached + 1, paid + hold_);
    }
  };
  if (place % 2 != 0) {
    if (pieces_[at(place / 2)].high - 1 == row) {
      put(place + 1, cost);  // no batch ends here: the row is a tuck of this wale
    } else {
      move(place, cost);
    }
    return;
  }
  put(place, cost);
  const int made = made_[slot(row)];
  if (place / 2 < made && row <= pieces_[at(place / 2)].last) put(2 * made, batch_cost(place / 2, row));
}

void Ways::decided(std::span<const std::int64_t> before, int row, bool stop, std::span<std::int64_t> after) const {
  std::ranges::fill(after, never);
  const auto reach = [&, lowest = first(row)](int place, std::int64_t cost) {
    const int i = place - lowest;
    if (i < 0 || i >= static_cast<int>(after.size())) return;
    auto& value = after[at(i)];
    value = std::min(value, cost);
  };
  const int lowest_before = first(row - 1);
  for (std::size_t i = 0; i < before.size(); ++i) {
    const std::int64_t paid = before[i];
    if (paid >= never) continue;
    const int place = lowest_before + static_cast<int>(i);
    if (stop) {
      moves(place, row, [&](int reached, std::int64_t cost) { reach(reached, paid + cost); });
    } else {
      reach(place, paid);
    }
  }
}

// From what is to come above the row; at the topmost there is nothing to come.
void Ways::to_end_from(int row, const Places& above, const std::vector<std::int64_t>& price, Places& here) const {
  clear(here, row);
  for (std::size_t i = 0; i < here.value.size(); ++i) {
    const int place = here.first + static_cast<int>(i);
    if (row == high_) {
      here.value[i] = place == 2 * static_cast<int>(pieces_.size()) ? 0 : never;
      continue;
    }
    std::int64_t best = above.at(place);
    moves(place, row + 1, [&](int reached, std::int64_t cost) {
      if (above.at(reached) < never) best = std::min(best, price[at(row) + 1] + cost + above.at(reached));
    });
    here.value[i] = best;
  }
}

RowsOfPlaces Ways::to_end(const std::vector<std::int64_t>& price, Pulse& pulse) const {
  RowsOfPlaces all{low_, std::vector<Places>(slot(high_) + 1)};
  for (int row = high_; row >= low_; --row) {
    pulse.step();
    to_end_from(row, all.after(row + 1), price, all.rows[slot(row)]);
  }
  return all;
}

std::int64_t Ways::least(const std::vector<std::int64_t>& price, Pulse& pulse) const {
  Places above;
  Places here;
  for (int row = high_; row >= low_; --row) {
    pulse.step();
    to_end_from(row, above, price, here);
    std::swap(above, here);
  }
  return least(above, price.front());
}

std::int64_t Ways::least(const Places& after_row_0, std::int64_t price) const {
  std::int64_t best = after_row_0.at(0);
  moves(0, 0, [&](int reached, std::int64_t cost) {
    if (after_row_0.at(reached) < never) best = std::min(best, price + cost + after_row_0.at(reached));
  });
  return best;
}

}  // namespace latchwork::inline v0::checking
