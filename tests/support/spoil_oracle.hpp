#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>
#include <vector>

#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"

namespace latchwork_test {

/// What a plan makes of a chart, told without knitting: its steps are applied to wales that carry cells, and what
/// passes what is looked up from the order of the returns. Written from DEVELOPERS.md, cells to batches, and for what
/// hands cannot do from simulate.hpp, verify(); knows nothing of moves, loops or strands. For plans that may be wrong.
class SpoilOracle {
 public:
  struct Verdict {
    bool same = false;
    bool impossible = false;                   ///< hands could not do all of a step, which was left undone
    std::optional<int> row;                    ///< first differing row, when the cloth is another
    std::optional<std::pair<int, int>> place;  ///< first differing row and column, where the oracle can tell
    int needless = 0;                          ///< steps that change nothing
  };

  SpoilOracle(const latchwork::Grid& grid, const latchwork::Plan& plan) : grid_(grid), plan_(plan) {}

  Verdict verdict() {
    work();
    Verdict verdict = compare();
    verdict.impossible = impossible_;
    verdict.needless = needless_;
    const bool rising = std::is_sorted(plan_.stops.begin(), plan_.stops.end(),
                                       [](const auto& one, const auto& other) { return one.row < other.row; });
    verdict.same = verdict.same && !impossible_ && !(in_vain_ && rising);
    return verdict;
  }

 private:
  using Cell = latchwork::Cell;
  struct Impossible {};
  static constexpr Cell left_out = static_cast<Cell>(99);
  static constexpr Cell slip_before = static_cast<Cell>(98);  ///< laid on the RS, for a purl that should close it

  struct OneWale {
    int begins = 0;           ///< its first cell is in the row above
    std::vector<int> column;  ///< by row from begins + 1
    std::vector<Cell> cell;
    bool ended = false;

    Cell& at(int row) { return cell[static_cast<std::size_t>(row - begins - 1)]; }
    int where(int row) const { return column[static_cast<std::size_t>(row - begins - 1)]; }
    bool in(int row) const { return row > begins && row <= begins + static_cast<int>(cell.size()); }
  };

  struct Pair {
    int passings = 0;
    int in_front = -1;  ///< wale that was in front on the RS at the last passing
  };
  using Pairs = std::map<std::pair<int, int>, Pair>;

  int column_of(int needle) const {
    if (needle == 0) throw Impossible();
    const auto counted = [](int n) { return n > 0 ? n - 1 : n; };
    const int column = plan_.columns - 1 - (counted(needle) - counted(plan_.leftmost));
    if (column < 0 || column >= plan_.columns) throw Impossible();
    return column;
  }

  int& wale_on(int column) { return on_[static_cast<std::size_t>(column)]; }
  OneWale& wale(int index) { return wales_[static_cast<std::size_t>(index)]; }
  int stitch_on(int needle) {
    const int column = column_of(needle);
    if (wale_on(column) < 0) throw Impossible();
    return column;
  }

  /// Does a step, or nothing of it: what stands on the needles is all that a step changes before it finds out.
  template <class Step>
  void tried(Step&& step) {
    const std::vector<int> before = on_;
    try {
      step();
    } catch (const Impossible&) {
      impossible_ = true;
      on_ = before;
    }
  }

  void begin(int row, int column) {
    if (wale_on(column) >= 0) throw Impossible();
    for (const OneWale& other : wales_) {
      if (other.in(row) && other.where(row) == column) throw Impossible();  // straight above a wale that ends
    }
    wale_on(column) = static_cast<int>(wales_.size());
    wales_.push_back({.begins = row, .column = {}, .cell = {}, .ended = false});
  }

  void work() {
    on_.assign(static_cast<std::size_t>(plan_.columns), -1);
    held_.assign(static_cast<std::size_t>(plan_.columns), false);
    held_after_.assign(static_cast<std::size_t>(plan_.columns), -1);
    for (const int column : plan_.columns_on) tried([&] { begin(0, column); });
    std::vector<latchwork::Stop> stops = plan_.stops;
    std::stable_sort(stops.begin(), stops.end(),
                     [](const auto& one, const auto& other) { return one.row < other.row; });
    for (int row = 0; row <= plan_.rows; ++row) {
      if (row > 0) pass();
      for (const latchwork::Stop& stop : stops) {
        if (stop.row == row) work_at(stop);
      }
    }
    for (int column = 0; column < plan_.columns; ++column) {
      if (held_[static_cast<std::size_t>(column)]) needless_ += held_in_vain(plan_.rows, column);
    }
  }

  /// 1 for a hold that saw no row, up to the counter's reading.
  int held_in_vain(int row, int column) const { return held_after_[static_cast<std::size_t>(column)] == row ? 1 : 0; }

  void pass() {
    for (int column = 0; column < plan_.columns; ++column) {
      const bool held = held_[static_cast<std::size_t>(column)];
      if (wale_on(column) < 0) {
        impossible_ = impossible_ || held;
        held_[static_cast<std::size_t>(column)] = false;
        continue;
      }
      wale(wale_on(column)).column.push_back(column);
      wale(wale_on(column)).cell.push_back(held ? Cell::tuck : Cell::knit);
    }
  }

  void work_at(const latchwork::Stop& stop) {
    const auto hold = [&](int needle, bool held) {
      const int column = stitch_on(needle);
      const auto here = static_cast<std::size_t>(column);
      if (held_[here] == held) {
        ++needless_;
        return;
      }
      held_[here] = held;
      if (held) held_after_[here] = stop.row;
      if (!held) needless_ += 2 * held_in_vain(stop.row, column);  // that it was put there, and brought back
    };
    for (const int needle : stop.releases) tried([&] { hold(needle, false); });
    for (const latchwork::Reform& reform : stop.reforms) tried([&] { re_form(stop.row, reform); });
    for (const latchwork::CrossingStep& step : stop.crossings) tried([&] { cross(stop.row, step); });
    for (const latchwork::Shaping& shaping : stop.shapings) tried([&] { shape(stop.row, shaping); });
    for (const int needle : stop.holds) tried([&] { hold(needle, true); });
    const bool any_held = std::find(held_.begin(), held_.end(), true) != held_.end();
    for (const latchwork::CrossingStep& step : stop.crossings) in_vain_ = in_vain_ || (step.ease && any_held);
  }

  void shape(int row, const latchwork::Shaping& shaping) {
    if (shaping.on) return begin(row, column_of(shaping.needle));
    const int column = stitch_on(shaping.needle);
    if (held_[static_cast<std::size_t>(column)]) needless_ += held_in_vain(row, column);
    held_[static_cast<std::size_t>(column)] = false;
    OneWale& ending = wale(wale_on(column));
    ending.ended = true;
    if (ending.in(row) && ending.where(row) != column) moved_and_ended_.insert(row);
    wale_on(column) = -1;
  }

  void re_form(int stop_row, const latchwork::Reform& reform) {
    const int index = wale_on(stitch_on(reform.needle));
    OneWale& worked = wale(index);
    const int from = reform.from_row;
    const bool has_loop =
        from == worked.begins || (worked.in(from) && (worked.at(from) == Cell::knit || worked.at(from) == Cell::purl));
    if (!has_loop) throw Impossible();
    const std::vector<Cell> cells_before = worked.cell;
    bool passes_as_before = true;
    for (int row = from + 1; row <= stop_row; ++row) worked.at(row) = left_out;
    for (std::size_t i = 0; i < reform.rungs.size(); ++i) {
      const int row = from + 1 + static_cast<int>(i);
      if (reform.rungs[i] == Cell::none) continue;
      if (row > stop_row) {
        impossible_ = true;  // it does not hang there; those below are worked
        break;
      }
      const bool purl_closes = reform.rungs[i] == Cell::slip && closing(reform.rungs, i + 1) == Cell::purl;
      worked.at(row) = purl_closes ? slip_before : reform.rungs[i];
    }
    // What it passes on its way up is in front of it on the RS.
    for (auto& [boundary, pairs] : pairs_) {
      if (boundary <= from || boundary > stop_row) continue;
      for (auto it = pairs.begin(); it != pairs.end();) {
        const auto& [one, other] = it->first;
        if (one != index && other != index) {
          ++it;
        } else if (it->second.passings % 2 == 0) {
          passes_as_before = passes_as_before && it->second.passings == 0;
          it = pairs.erase(it);
        } else {
          passes_as_before = passes_as_before && it->second.passings == 1 && it->second.in_front != index;
          it->second = {.passings = 1, .in_front = one == index ? other : one};
          ++it;
        }
      }
    }
    if (worked.cell == cells_before && passes_as_before) ++needless_;
  }

  /// The first loop from there on; none where nothing closes what lies below.
  static Cell closing(const std::vector<Cell>& cells, std::size_t from) {
    for (std::size_t i = from; i < cells.size(); ++i) {
      if (cells[i] == Cell::knit || cells[i] == Cell::purl) return cells[i];
    }
    return Cell::none;
  }

  /// A slip lies on the side that was told for it. Closed by the other stitch than that was told for, it is no cell.
  static void lay_floats(OneWale& wale) {
    for (std::size_t i = 0; i < wale.cell.size(); ++i) {
      Cell& cell = wale.cell[i];
      if (cell != Cell::slip && cell != slip_before) continue;
      const Cell other = cell == slip_before ? Cell::knit : Cell::purl;
      cell = closing(wale.cell, i + 1) == other ? left_out : Cell::slip;
    }
  }

  void cross(int row, const latchwork::CrossingStep& step) {
    struct Way {
      int wale, from, to, rank;
    };
    const auto beside = [](int needle, int steps) {
      if (needle == 0) throw Impossible();
      const int counted = (needle > 0 ? needle - 1 : needle) + steps;
      return counted >= 0 ? counted + 1 : counted;
    };
    std::vector<Way> ways;
    int rank = 0;
    for (const latchwork::GroupReturn& group : step.returns) {
      int stitches = 0;
      for (const int prongs : group.prongs) stitches += std::max(0, prongs);
      stitches = std::min(stitches, group.stitches);
      for (int i = 0; i < stitches; ++i) {
        const int from = stitch_on(beside(group.from_needle, i));
        ways.push_back({wale_on(from), from, column_of(beside(group.to_needle, i)), rank});
        wale_on(from) = -1;
      }
      ++rank;
    }
    for (int column = 0; column < plan_.columns; ++column) {
      if (wale_on(column) >= 0) ways.push_back({wale_on(column), column, column, -1});  // never lifted: already back
    }
    for (const Way& way : ways) {
      if (way.rank < 0) continue;
      if (wale_on(way.to) >= 0) throw Impossible();
      wale_on(way.to) = way.wale;
    }
    const auto lifted = [](const Way& way) { return way.rank >= 0; };
    const auto moved = [](const Way& way) { return way.from != way.to; };
    if (std::any_of(ways.begin(), ways.end(), lifted) && std::none_of(ways.begin(), ways.end(), moved)) ++needless_;
    for (const Way& one : ways) {
      for (const Way& other : ways) {
        if (one.from >= other.from || one.to <= other.to) continue;
        Pair& pair = pairs_[row][std::minmax(one.wale, other.wale)];
        ++pair.passings;
        pair.in_front = one.rank < other.rank ? one.wale : other.wale;
      }
    }
  }

  // Held against the chart.

  void differs(int row, int column) {
    const std::pair here(row, column);
    if (!first_ || here < *first_) first_ = here;
  }

  Verdict compare() {
    std::vector<std::vector<Cell>> cells(static_cast<std::size_t>(plan_.rows) + 1,
                                         std::vector<Cell>(static_cast<std::size_t>(plan_.columns), Cell::none));
    for (OneWale& one : wales_) {
      lay_floats(one);
      for (int row = one.begins + 1; one.in(row); ++row) {
        cells[static_cast<std::size_t>(row)][static_cast<std::size_t>(one.where(row))] = one.at(row);
      }
    }
    for (int row = 1; row <= plan_.rows; ++row) {
      for (int column = 0; column < plan_.columns; ++column) {
        if (cells[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] != grid_.at(row, column)) {
          differs(row, column);
        }
      }
    }
    for (int row = 0; row <= plan_.rows; ++row) compare_after(row);
    bool sure = true;
    for (const int row : moved_and_ended_) {
      if (!first_ || row <= first_->first) first_ = {row, 0};
      sure = sure && row != first_->first;
    }
    Verdict verdict;
    verdict.same = !first_;
    if (first_) verdict.row = first_->first;
    if (first_ && sure && !unsure_.contains(first_->first)) verdict.place = first_;
    return verdict;
  }

  void compare_after(int row) {
    struct Step {
      int wale, from, to;
    };
    std::vector<Step> steps;
    for (int index = 0; index < static_cast<int>(wales_.size()); ++index) {
      const OneWale& one = wale(index);
      const int needle = static_cast<int>(std::find(on_.begin(), on_.end(), index) - on_.begin());
      const bool goes_on = row < plan_.rows ? one.in(row + 1) : needle < plan_.columns;
      if (!goes_on || (!one.in(row) && one.begins != row)) continue;
      const int to = row < plan_.rows ? one.where(row + 1) : needle;
      if (one.in(row)) steps.push_back({index, one.where(row), to});
    }
    Pairs pairs = pairs_.contains(row) ? pairs_.at(row) : Pairs{};
    std::set<int> explained;  // wales whose way the chart's crossings tell, rightly
    for (const latchwork::Crossing& crossing : grid_.crossings()) {
      if (crossing.row != row) continue;
      const std::optional<std::set<int>> members = made(crossing, steps, pairs);
      if (!members) {
        differs(row, crossing.column);
      } else {
        explained.insert(members->begin(), members->end());
      }
    }
    // What moves or passes besides: told at the first column of what hangs together.
    std::vector<std::pair<int, int>> spans;
    for (const Step& step : steps) {
      if (step.from != step.to && !explained.contains(step.wale)) {
        spans.emplace_back(std::min(step.from, step.to), std::max(step.from, step.to));
      }
    }
    std::sort(spans.begin(), spans.end());
    int reach = -1;
    for (const auto& [from, to] : spans) {
      if (from >= reach) differs(std::max(row, 1), from);
      reach = std::max(reach, to);
    }
    for (const auto& [pair, passed] : pairs) {
      if (explained.contains(pair.first) && explained.contains(pair.second)) continue;
      if (passed.passings == 1) continue;  // it moved, which was told
      for (const Step& step : steps) {
        if (step.wale == pair.first || step.wale == pair.second) differs(std::max(row, 1), step.from);
      }
      if (!first_ || first_->first >= row) unsure_.insert(std::max(row, 1));
    }
  }

  /// The wales of the chart's crossing, if just these changed places as it says, each pair once and in its order, with
  /// no tuck or slip among them.
  template <class Steps>
  std::optional<std::set<int>> made(const latchwork::Crossing& crossing, const Steps& steps, const Pairs& pairs) {
    using latchwork::Centre;
    using latchwork::Lean;
    const int c = crossing.column, l = crossing.left, k = crossing.centre, q = crossing.right;
    const auto group_of = [&](int column) { return column < c + l ? 0 : column < c + l + k ? 1 : 2; };
    std::map<int, int> group;  // by wale
    for (const auto& step : steps) {
      const bool from_inside = step.from >= c && step.from < c + crossing.width();
      const bool to_inside = step.to >= c && step.to < c + crossing.width();
      if (from_inside != to_inside) return {};
      if (!from_inside) continue;
      const int to = group_of(step.from) == 0   ? step.from + k + q
                     : group_of(step.from) == 1 ? step.from + q - l
                                                : step.from - k - l;
      const Cell cell = wale(step.wale).at(crossing.row);
      if (to != step.to || cell == Cell::tuck || cell == Cell::slip) return {};
      group[step.wale] = group_of(step.from);
    }
    const bool bare = k > 0 && grid_.at(crossing.row, c + l) == Cell::none;
    if (static_cast<int>(group.size()) != l + q + (bare ? 0 : k)) return {};
    // Rank from front to back.
    const int front = crossing.lean == Lean::right ? 0 : 2;
    std::map<int, int> depth = {{front, 1}, {2 - front, 3}};
    depth[1] = crossing.place == Centre::front ? 0 : crossing.place == Centre::between ? 2 : 4;
    std::set<int> members;
    for (const auto& [one, one_group] : group) {
      members.insert(one);
      for (const auto& [other, other_group] : group) {
        if (one >= other) continue;
        const auto found = pairs.find({one, other});
        const int passings = found == pairs.end() ? 0 : found->second.passings;
        if (passings != (one_group == other_group ? 0 : 1)) return {};
        if (passings == 1 && found->second.in_front != (depth[one_group] < depth[other_group] ? one : other)) return {};
      }
    }
    for (const auto& [pair, passed] : pairs) {
      if (passed.passings > 0 && group.contains(pair.first) != group.contains(pair.second)) return {};
    }
    return members;
  }

  const latchwork::Grid& grid_;
  const latchwork::Plan& plan_;
  std::vector<OneWale> wales_;
  std::vector<int> on_;  ///< wale on each column's needle, or -1
  std::vector<bool> held_;
  std::vector<int> held_after_;  ///< the row of a column's last hold
  int needless_ = 0;
  bool impossible_ = false;
  bool in_vain_ = false;        ///< crossed needles are to be knit back in a row for which the carriage is set to hold
  std::map<int, Pairs> pairs_;  ///< by the row after which they passed
  std::set<int> moved_and_ended_;
  std::set<int> unsure_;  ///< rows after which only the row of the difference is sure
  std::optional<std::pair<int, int>> first_;
};

}  // namespace latchwork_test
