#include "instructions/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <limits>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "grid/lifting.hpp"
#include "grid/words.hpp"
#include "instructions/words.hpp"
#include "latchwork/error.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/move.hpp"
#include "latchwork/wale.hpp"
#include "move/plan_step.hpp"
#include "plan/stops.hpp"
#include "simulate/knit.hpp"
#include "simulate/labels.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::writing {
namespace {

std::string indexed(std::string_view list, std::size_t index) {
  return fmt::format("{}[{}]", list, index);
}

std::string name_of(int needle) {
  return needle == 0 ? "0, which is none," : needle_name(needle);
}

class Checker {
 public:
  Checker(const Grid& grid, const Plan& plan) : grid_(grid), wales_(grid), plan_(plan) {}

  Checked check() {
    check_rhythm();
    const bool told = plan_.status != PlanStatus::infeasible;
    if (told || plan_.leftmost != 0) check_leftmost();
    if (!told) return {};
    if (const auto wrong = labels::miscast(grid_, plan_)) refuse(wrong->field, wrong->message, wrong->column);
    require_stops_rise(plan_);  // steps are followed from top to bottom
    for (index_ = 0; index_ < plan_.stops.size(); ++index_) check_stop(plan_.stops[index_]);
    return check_hands();
  }

 private:
  [[noreturn]] void refuse(std::string field, const std::string& message, int column = -1) const {
    Place place;
    place.row = row_;
    place.column = column;
    place.field = std::move(field);
    throw Error(ErrorCode::bad_argument, std::move(place), message);
  }

  /// At the stop that is looked at.
  [[noreturn]] void refuse_here(std::string_view field, const std::string& message, int column = -1) const {
    refuse(fmt::format("{}.{}", indexed("stops", index_), field),
           fmt::format("stop {}, after row {}: {}", index_ + 1, row_, message), column);
  }

  /// Steps from the panel's leftmost needle to the operator's right.
  std::int64_t step_of(int needle) const { return std::int64_t{place_of(needle)} - place_of(plan_.leftmost); }
  bool on_panel(int needle) const { return needle != 0 && step_of(needle) >= 0 && step_of(needle) < plan_.columns; }
  /// RS column of a needle of the panel; -1 for another.
  int column_of(int needle) const {
    return on_panel(needle) ? static_cast<int>(plan_.columns - 1 - step_of(needle)) : -1;
  }

  void check_leftmost() const {
    if (plan_.leftmost == 0) refuse("leftmost", "the plan's leftmost needle is 0; needles are ..., -2, -1, 1, 2, ...");
    if (std::int64_t{place_of(plan_.leftmost)} + plan_.columns <= std::numeric_limits<int>::max()) return;
    refuse("leftmost", fmt::format("the plan's leftmost needle is {}; {} from there pass every number",
                                   needle_name(plan_.leftmost), count_of(plan_.columns, "needle")));
  }

  void check_rhythm() const {
    if (!plan_.rhythm) return;
    for (const auto& [field, value] :
         {std::pair{"rhythm.every", plan_.rhythm->every}, std::pair{"rhythm.first", plan_.rhythm->first}}) {
      if (value >= 1 && value <= plan_.rows) continue;
      refuse(field, fmt::format("the plan's {} is {}; it may be 1 to {}", field, value, plan_.rows));
    }
  }

  void check_stop(const Stop& stop) {
    row_ = stop.row;
    if (stop.effort_ms < 0) {
      refuse_here("effort_ms", fmt::format("it takes {} ms; a time is 0 or more", stop.effort_ms));
    }
    if (stop.carriage_right != labels::carriage_right_at(plan_, row_)) {
      refuse_here("carriage_right", fmt::format("the carriage is told to be on the {}; it stands on the other side",
                                                stop.carriage_right ? "right" : "left"));
    }
    check_needles("releases", stop.releases);
    for (std::size_t i = 0; i < stop.reforms.size(); ++i) check_reform(indexed("reforms", i), stop.reforms[i]);
    check_worked_once(stop);
    for (std::size_t i = 0; i < stop.crossings.size(); ++i) check_step(indexed("crossings", i), stop.crossings[i]);
    check_crossed_once(stop);
    for (std::size_t i = 0; i < stop.shapings.size(); ++i) {
      const Shaping& shaping = stop.shapings[i];
      check_needle(indexed("shapings", i) + ".needle", shaping.needle);
      check_column(indexed("shapings", i) + ".column", shaping.needle, shaping.column);
    }
    check_needles("holds", stop.holds);
    check_once("releases", stop.releases);
    check_once("holds", stop.holds);
    held_.pass(stop);
    if (const auto wrong = held_.eased_in_vain(stop)) refuse_here(wrong->field, wrong->message, wrong->column);
  }

  /// Words count the needles in hold, to tell when the carriage knits again.
  void check_once(std::string_view list, const std::vector<int>& needles) const {
    std::set<int> seen;
    for (std::size_t i = 0; i < needles.size(); ++i) {
      if (seen.insert(needles[i]).second) continue;
      refuse_here(indexed(list, i), fmt::format("needle {} is named twice", needle_name(needles[i])),
                  column_of(needles[i]));
    }
  }

  /// Words tell a stop's re-forms by what is alike, not one after another, so that of two on a needle nobody could know
  /// which comes first. (Cloth does not show that a wale was worked once too often.)
  void check_worked_once(const Stop& stop) const {
    std::vector<bool> worked(static_cast<std::size_t>(plan_.columns), false);
    for (std::size_t i = 0; i < stop.reforms.size(); ++i) {
      const int column = column_of(stop.reforms[i].needle);
      const auto here = static_cast<std::size_t>(column);
      if (worked[here]) {
        refuse_here(indexed("reforms", i) + ".needle",
                    fmt::format("needle {} is re-formed twice", needle_name(stop.reforms[i].needle)), column);
      }
      worked[here] = true;
    }
  }

  /// The crossings after a row share no column, as on a chart: words name each by its columns, in no order.
  void check_crossed_once(const Stop& stop) const {
    std::vector<bool> crossed(static_cast<std::size_t>(plan_.columns), false);
    for (std::size_t i = 0; i < stop.crossings.size(); ++i) {
      const Crossing& crossing = stop.crossings[i].crossing;
      for (int column = crossing.column; column < crossing.column + crossing.width(); ++column) {
        const auto here = static_cast<std::size_t>(column);
        if (crossed[here]) {
          refuse_here(indexed("crossings", i) + ".crossing.column",
                      fmt::format("the stitch of column {} is crossed twice", column), column);
        }
        crossed[here] = true;
      }
    }
  }

  /// What hands cannot do no words can tell: the same hands try it as for verify(). A batch whose wale has no loop at
  /// the row where it starts, a needle without a stitch, tools with no needle free to put their stitches on.
  Checked check_hands() {
    const std::vector<Move> all = moves(plan_);
    const knitting::Tried tried = knitting::tried({.leftmost = plan_.leftmost, .columns = plan_.columns}, all);
    const std::optional<Fault>& fault = tried.impossible;
    if (!fault) {
      return {.needless = steps_of_moves(plan_, tried.needless),
              .first_needless = tried.first_needless ? tried.first_needless->message : std::string()};
    }
    const std::optional<PlanStep> step = step_of_move(plan_, fault->move);
    if (!step) {
      row_ = fault->place.row;
      refuse("stops", "hands cannot do this: " + fault->message, fault->place.column);
    }
    index_ = step->stop;
    row_ = plan_.stops[index_].row;
    refuse_here(indexed(step->list, step->index), "hands cannot do this: " + fault->message, fault->place.column);
  }

  void check_needle(const std::string& field, int needle) const {
    if (on_panel(needle)) return;
    refuse_here(field, fmt::format("needle {} is not among the panel's, {}", name_of(needle),
                                   needle_run(plan_.leftmost, plan_.columns)));
  }

  /// A needle of the panel, and the column told beside it.
  void check_column(const std::string& field, int needle, int column) const {
    if (labels::stands_on(plan_, column, needle)) return;
    refuse_here(field, fmt::format("needle {} has column {}, not {}", needle_name(needle), column_of(needle), column),
                column_of(needle));
  }

  void check_needles(std::string_view list, const std::vector<int>& needles) const {
    for (std::size_t i = 0; i < needles.size(); ++i) check_needle(indexed(list, i), needles[i]);
  }

  void check_reform(const std::string& field, const Reform& reform) const {
    check_needle(field + ".needle", reform.needle);
    const int column = column_of(reform.needle);
    const std::string needle = "needle " + needle_name(reform.needle);
    if (reform.from_row < 0 || reform.from_row >= row_) {
      refuse_here(field + ".from_row",
                  fmt::format("{} is dropped to row {}; {}", needle, reform.from_row,
                              row_ == 0 ? "nothing is knitted yet" : fmt::format("it may be 0 to {}", row_ - 1)),
                  column);
    }
    const int depth = row_ - reform.from_row;
    if (std::ssize(reform.rungs) != depth) {
      refuse_here(field + ".rungs",
                  fmt::format("{}, dropped to row {}, has {} to re-form, not {}", needle, reform.from_row,
                              count_of(depth, "rung"), reform.rungs.size()),
                  column);
    }
    for (std::size_t i = 0; i < reform.rungs.size(); ++i) {
      const auto rung = static_cast<int>(reform.rungs[i]);
      if (rung <= static_cast<int>(Cell::slip)) continue;
      refuse_here(
          fmt::format("{}.{}", field, indexed("rungs", i)),
          fmt::format("{}: rung {} is {}; a rung is knit (0), purl (1), tuck (2) or slip (3)", needle, i + 1, rung),
          column);
    }
    check_column(field + ".column", reform.needle, reform.column);
    if (const int wale = wales_.at(row_, column); reform.wale != wale) {
      refuse_here(field + ".wale",
                  wale < 0 ? fmt::format("{} is told to carry wale {}; there is no stitch", needle, reform.wale)
                           : fmt::format("{} carries wale {}, not {}", needle, wale, reform.wale),
                  column);
    }
  }

  void check_step(const std::string& field, const CrossingStep& step) const {
    const Crossing& crossing = step.crossing;
    const std::string inside = field + ".crossing.";
    for (const auto& [name, count, least] :
         {std::tuple{"left", crossing.left, 1}, std::tuple{"centre", crossing.centre, 0},
          std::tuple{"right", crossing.right, 1}}) {
      if (count >= least && count <= plan_.columns) continue;
      refuse_here(inside + name, fmt::format("a crossing's {} group is of {}; it may be of {} to {}", name,
                                             count_of(count, "stitch", "es"), least, plan_.columns));
    }
    const std::int64_t width = std::int64_t{crossing.left} + crossing.centre + crossing.right;
    if (crossing.column < 0 || crossing.column + width > plan_.columns) {
      refuse_here(inside + "column", fmt::format("a crossing of {} starts at column {}; the panel has columns 0 to {}",
                                                 count_of(width, "stitch", "es"), crossing.column, plan_.columns - 1));
    }
    if (row_ < 1 || crossing.row != row_) {
      refuse_here(inside + "row", fmt::format("its crossing is told to be after row {}", crossing.row),
                  crossing.column);
    }
    if (crossing.lean > Lean::right) {
      refuse_here(inside + "lean",
                  fmt::format("a lean is 0 (left) or 1 (right), not {}", static_cast<int>(crossing.lean)),
                  crossing.column);
    }
    if (crossing.place > Centre::behind) {
      refuse_here(
          inside + "place",
          fmt::format("a centre is 0 (in front), 1 (between) or 2 (behind), not {}", static_cast<int>(crossing.place)),
          crossing.column);
    }
    for (std::size_t i = 0; i < step.returns.size(); ++i) {
      check_group(fmt::format("{}.{}", field, indexed("returns", i)), step.returns[i], crossing);
    }
    if (const auto wrong = labels::mislabelled_returns(grid_, step)) {
      refuse_here(field + "." + wrong->field, wrong->message, wrong->column);
    }
  }

  void check_group(const std::string& field, const GroupReturn& group, const Crossing& crossing) const {
    std::optional<labels::Mislabel> wrong = labels::mislabelled_group(plan_, crossing, group);
    if (!wrong) wrong = labels::mislabelled_tools(group);
    if (wrong) refuse_here(field + "." + wrong->field, wrong->message, crossing.column);
    const bool lifted = group.group != GroupName::centre || lifting::centre_lifted(grid_, crossing) > 0;
    if (!lifted || !group.prongs.empty()) return;
    refuse_here(field + ".prongs",
                fmt::format("the {} group of a {} needs a tool that lifts it", labels::group_name(group.group),
                            crossing_name(crossing)),
                crossing.column);
  }

  const Grid& grid_;
  const Wales wales_;
  const Plan& plan_;
  std::size_t index_ = 0;  // of the stop that is looked at
  labels::InHold held_;
  int row_ = 0;  // its row; 0 before the first
};

}  // namespace

Checked check(const Panel& panel, const Plan& plan) {
  require_extent("plan", {.columns = plan.columns, .rows = plan.rows}, "panel", panel.grid());
  return Checker(panel.grid(), plan).check();
}

Plan without(const Plan& plan, const std::vector<PlanStep>& steps) {
  Plan out = plan;
  // From the last to the first, so that the places of the others stay.
  for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
    Stop& stop = out.stops[step->stop];
    const auto drop = [&](auto& list) { list.erase(list.begin() + static_cast<std::ptrdiff_t>(step->index)); };
    if (step->list == "releases") drop(stop.releases);
    if (step->list == "reforms") drop(stop.reforms);
    if (step->list == "crossings") drop(stop.crossings);
    if (step->list == "holds") drop(stop.holds);
  }
  return out;
}

}  // namespace latchwork::inline v0::writing
