#include "latchwork/move.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string_view>

#include "error/refuse.hpp"
#include "move/plan_step.hpp"

namespace latchwork::inline v0 {
namespace {

/// Plans may hold any numbers: sums are made in 64 bits and brought back here. What is out of range names no needle or
/// row that exists, which is for simulate() to say.
int narrowed(std::int64_t number) {
  return static_cast<int>(
      std::clamp<std::int64_t>(number, std::numeric_limits<int>::min() + 1, std::numeric_limits<int>::max() - 1));
}

/// The needle `steps` places to the operator's right, over the centre without a needle 0. Needle 0 leads nowhere.
int needle_to_the_right(int needle, std::int64_t steps) {
  if (needle == 0) return 0;
  const std::int64_t counted = (needle > 0 ? std::int64_t{needle} - 1 : std::int64_t{needle}) + steps;
  return narrowed(counted >= 0 ? counted + 1 : counted);
}

class Translation {
 public:
  explicit Translation(const Plan& plan, std::span<const std::int64_t> wanted = {}) : plan_(plan), wanted_(wanted) {}

  std::vector<PlanStep> steps() {
    all();
    return std::move(steps_);
  }

  std::vector<Move> all() {
    cast_on();
    // A plan is followed by the row counter: stops whose row is never read are never made, and stops that are out of
    // order in the list are made when their row comes.
    std::vector<const Stop*> stops;
    for (const Stop& stop : plan_.stops) {
      if (stop.row >= 0 && stop.row <= plan_.rows) stops.push_back(&stop);
    }
    std::ranges::stable_sort(stops, {}, &Stop::row);
    auto next = stops.begin();
    for (int row = 0; row <= plan_.rows; ++row) {
      if (row > 0) add({.kind = MoveKind::carriage});
      for (; next != stops.end() && (*next)->row == row; ++next) stop_at(**next);
    }
    return std::move(moves_);
  }

 private:
  void add(const Move& move) { moves_.push_back(move); }

  void cast_on() {
    const std::vector<int>& columns = plan_.columns_on;
    for (std::size_t first = 0; first < columns.size();) {
      std::size_t past = first + 1;
      while (past < columns.size() && std::int64_t{columns[past]} == std::int64_t{columns[past - 1]} + 1) ++past;
      add({.kind = MoveKind::cast_on,
           .needle = needle_of(columns[past - 1]),
           .last_needle = needle_of(columns[first])});
      first = past;
    }
  }

  /// RS column 0 is the operator's rightmost stitch.
  int needle_of(int column) const {
    return needle_to_the_right(plan_.leftmost, std::int64_t{plan_.columns} - 1 - column);
  }

  void stop_at(const Stop& stop) {
    each(stop, "releases", stop.releases, [this](int needle) { one(MoveKind::release, needle); });
    each(stop, "reforms", stop.reforms, [this](const Reform& reform) { re_form(reform); });
    each(stop, "crossings", stop.crossings, [this](const CrossingStep& step) { cross(step); });
    each(stop, "shapings", stop.shapings,
         [this](const Shaping& shaping) { one(shaping.on ? MoveKind::cast_on : MoveKind::bind_off, shaping.needle); });
    each(stop, "holds", stop.holds, [this](int needle) { one(MoveKind::hold, needle); });
  }

  /// Translates the steps of a list, and notes those that the wanted moves come from.
  template <class Item, class Translate>
  void each(const Stop& stop, std::string_view list, const std::vector<Item>& items, Translate&& translate) {
    for (std::size_t i = 0; i < items.size(); ++i) {
      while (!wanted_.empty() && wanted_.front() < std::ssize(moves_)) wanted_ = wanted_.subspan(1);
      translate(items[i]);
      if (!wanted_.empty() && wanted_.front() < std::ssize(moves_)) {
        steps_.push_back({static_cast<std::size_t>(&stop - plan_.stops.data()), list, i});
      }
    }
  }

  void one(MoveKind kind, int needle, int row = -1) {
    add({.kind = kind, .needle = needle, .last_needle = needle, .row = row});
  }

  void re_form(const Reform& reform) {
    one(MoveKind::tool_into, reform.needle, reform.from_row);
    one(MoveKind::drop, reform.needle, reform.from_row);
    for (std::size_t i = 0; i < reform.rungs.size(); ++i) {
      const int row = narrowed(std::int64_t{reform.from_row} + 1 + static_cast<std::int64_t>(i));
      switch (reform.rungs[i]) {
        case Cell::knit:
          one(MoveKind::draw_away, reform.needle, row);
          break;
        case Cell::purl:
          one(MoveKind::draw_toward, reform.needle, row);
          break;
        case Cell::tuck:
          one(MoveKind::rung_behind, reform.needle, row);
          break;
        case Cell::slip:
          // Which side the strand must lie on follows from the stitch that closes it. What this batch does not close,
          // the carriage will, with a knit.
          one(closed_by_purl(reform.rungs, i) ? MoveKind::rung_before : MoveKind::rung_aside, reform.needle, row);
          break;
        case Cell::none:
          break;  // nothing is done with this rung
      }
    }
    one(MoveKind::hang, reform.needle);
  }

  static bool closed_by_purl(std::span<const Cell> rungs, std::size_t from) {
    const auto closing = std::find_if(rungs.begin() + static_cast<std::ptrdiff_t>(from), rungs.end(),
                                      [](Cell cell) { return cell == Cell::knit || cell == Cell::purl; });
    return closing != rungs.end() && *closing == Cell::purl;
  }

  void cross(const CrossingStep& step) {
    std::vector<Move> returns;
    for (const GroupReturn& group : step.returns) {
      std::int64_t taken = 0;
      for (std::size_t i = 0; i < group.prongs.size(); ++i) {
        // The last tool takes what is left, also more than it can hold: what the plan says is what is done.
        const std::int64_t left = std::int64_t{group.stitches} - taken;
        const std::int64_t stitches =
            i + 1 == group.prongs.size() ? left : std::min<std::int64_t>(group.prongs[i], left);
        if (stitches < 1) continue;
        const auto range = [&](MoveKind kind, int needle) {
          return Move{.kind = kind,
                      .needle = needle_to_the_right(needle, taken),
                      .last_needle = needle_to_the_right(needle, taken + stitches - 1),
                      .row = -1,
                      .tool = tool_};
        };
        add(range(MoveKind::lift, group.from_needle));
        returns.push_back(range(MoveKind::put_back, group.to_needle));
        taken += stitches;
        ++tool_;
      }
    }
    moves_.insert(moves_.end(), returns.begin(), returns.end());
    tool_ = 0;
  }

  const Plan& plan_;
  std::span<const std::int64_t> wanted_;  // indices of moves whose steps are asked for, as far as they are to come
  std::vector<PlanStep> steps_;
  std::vector<Move> moves_;
  int tool_ = 0;
};

std::string needle_word(int needle) {
  if (needle == 0) return "0";
  return needle < 0 ? fmt::format("L{}", -std::int64_t{needle}) : fmt::format("R{}", needle);
}

std::string needles_words(const Move& move) {
  if (move.last_needle == move.needle) return "needle " + needle_word(move.needle);
  return fmt::format("needles {} to {}", needle_word(move.needle), needle_word(move.last_needle));
}

void require_rows(const Plan& plan) {
  if (plan.rows <= Grid::max_side) return;
  refuse(ErrorCode::too_large, "rows", fmt::format("a plan of {} rows; the limit is {}", plan.rows, Grid::max_side));
}

}  // namespace

std::vector<Move> moves(const Plan& plan) {
  require_rows(plan);
  return Translation(plan).all();
}

std::optional<PlanStep> step_of_move(const Plan& plan, std::int64_t move) {
  const std::vector<PlanStep> steps = steps_of_moves(plan, std::span(&move, 1));
  return steps.empty() ? std::nullopt : std::optional(steps.front());
}

std::vector<PlanStep> steps_of_moves(const Plan& plan, std::span<const std::int64_t> moves) {
  require_rows(plan);
  return Translation(plan, moves).steps();
}

std::string describe(const Move& move) {
  const std::string where = needles_words(move);
  switch (move.kind) {
    case MoveKind::cast_on:
      return where + ": cast on";
    case MoveKind::bind_off:
      return where + ": bind off";
    case MoveKind::carriage:
      return "one pass of the carriage";
    case MoveKind::hold:
      return where + ": put in hold";
    case MoveKind::release:
      return where + ": back to work";
    case MoveKind::tool_into:
      return fmt::format("{}: latch tool into the loop of row {}", where, move.row);
    case MoveKind::drop:
      return fmt::format("{}: drop the stitch down to the loop of row {}", where, move.row);
    case MoveKind::rung_behind:
      return fmt::format("{}: pass the tool behind the rung of row {}, which goes into the stitch", where, move.row);
    case MoveKind::rung_before:
      return fmt::format("{}: pass the tool in front of the rung of row {}, which stays on the right side", where,
                         move.row);
    case MoveKind::rung_aside:
      return fmt::format("{}: leave the rung of row {} on your side of the stitch", where, move.row);
    case MoveKind::draw_toward:
      return fmt::format("{}: draw the rung of row {} through, toward you", where, move.row);
    case MoveKind::draw_away:
      return fmt::format("{}: draw the rung of row {} through, away from you", where, move.row);
    case MoveKind::hang:
      return where + ": hang the loop from the latch tool";
    case MoveKind::lift:
      return fmt::format("{}: lift the stitches to pronged tool {}", where, std::int64_t{move.tool} + 1);
    case MoveKind::put_back:
      return fmt::format("{}: put back the stitches from pronged tool {}", where, std::int64_t{move.tool} + 1);
  }
  return fmt::format("move of unknown kind {}", static_cast<int>(move.kind));
}

}  // namespace latchwork::inline v0
