#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

#include "grid/words.hpp"
#include "knit.hpp"
#include "labels.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/wale.hpp"
#include "reading.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace knitting;
using namespace labels;

std::string_view cell_word(Cell cell) {
  constexpr std::array<std::string_view, 5> words = {"knit", "purl", "tuck", "slip", "no stitch"};
  const auto index = static_cast<std::size_t>(cell);
  return index < words.size() ? words[index] : "a stitch that no cell describes";
}

struct Difference {
  Place place;
  std::string message;
  std::string expected{};  // in the cloth; none of a difference between plan and chart alone
  std::string found{};
};

bool comes_before(const Difference& one, const Difference& other) {
  return std::tuple(one.place.row, one.place.column) < std::tuple(other.place.row, other.place.column);
}

void keep_first(std::optional<Difference>& first, Difference other) {
  if (!first || comes_before(other, *first)) first = std::move(other);
}

/// Where a bare centre lies cannot be told from the fabric, so it is not compared.
Crossing told(Crossing crossing, const Grid& grid) {
  if (crossing.centre == 0 || bare_centre(crossing, grid.cells(), grid.columns())) crossing.place = Centre::between;
  return crossing;
}

std::optional<Difference> differing_cell(const Grid& grid, const Reading& reading) {
  const auto chart = grid.cells();
  const auto [one, other] = std::ranges::mismatch(chart, reading.cells);
  if (one == chart.end()) return {};
  const auto index = one - chart.begin();
  const Place place = place_of(static_cast<int>(index / grid.columns()) + 1, static_cast<int>(index % grid.columns()));
  return Difference{place,
                    fmt::format("row {}, column {}: the chart says {}, the fabric has {}", place.row, place.column,
                                cell_word(*one), cell_word(*other)),
                    std::string(cell_word(*one)), std::string(cell_word(*other))};
}

constexpr const char* no_crossing = "no crossing";

/// What no cell or crossing describes, against what the chart has there.
Difference undescribed(const Grid& grid, const Reading& reading, const Fault& fault) {
  const int row = fault.place.row;
  const int column = fault.place.column;
  const auto cell =
      static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(grid.columns()) + static_cast<std::size_t>(column);
  if (reading.cells[cell] == unreadable) {
    return {fault.place, fault.message, std::string(cell_word(grid.at(row, column))),
            std::string(cell_word(unreadable))};
  }
  std::string expected = no_crossing;
  for (const Crossing& crossing : grid.crossings()) {
    if (crossing.row == row && crossing.column == column) expected = crossing_name(crossing);
  }
  return {fault.place, fault.message, std::move(expected), "a passing that no crossing describes"};
}

std::optional<Difference> differing_crossing(const Grid& grid, const Reading& reading) {
  const auto chart = grid.crossings();
  const auto& fabric = reading.crossings;
  std::size_t i = 0;
  while (i < chart.size() && i < fabric.size() && told(chart[i], grid) == fabric[i]) ++i;
  const auto place_at = [](const Crossing& crossing) { return std::tuple(crossing.row, crossing.column); };
  const bool in_chart = i < chart.size() && (i == fabric.size() || place_at(chart[i]) <= place_at(fabric[i]));
  const bool in_fabric = i < fabric.size() && (i == chart.size() || place_at(fabric[i]) <= place_at(chart[i]));
  if (!in_chart && !in_fabric) return {};
  const Crossing& first = in_chart ? chart[i] : fabric[i];
  std::string expected = in_chart ? crossing_name(first) : no_crossing;
  std::string found = in_fabric ? crossing_name(fabric[i]) : no_crossing;
  std::string message = fmt::format("after row {}, column {}: the chart says {}, the fabric has {}", first.row,
                                    first.column, expected, found);
  return Difference{place_of(first.row, first.column), std::move(message), std::move(expected), std::move(found)};
}

/// The columns and wales that a stop names beside its needles: hosts show them.
void find_misnamed(const Plan& plan, const Stop& stop, const Wales& wales, std::optional<Difference>& first) {
  const auto misnamed = [&](int column, const std::string& what) {
    keep_first(first, {place_of(std::max(stop.row, 1), std::clamp(column, 0, plan.columns - 1)),
                       fmt::format("stop after row {}: {}", stop.row, what)});
  };
  for (const Reform& reform : stop.reforms) {
    if (!stands_on(plan, reform.column, reform.needle)) {
      misnamed(reform.column, fmt::format("the re-form of needle {} names column {}, which stands on another needle",
                                          needle_words(reform.needle), reform.column));
    } else if (stop.row >= 1 && reform.wale != wales.at(stop.row, reform.column)) {
      misnamed(reform.column, fmt::format("the re-form of column {} names wale {}; it is wale {}", reform.column,
                                          reform.wale, wales.at(stop.row, reform.column)));
    }
    // Rungs that nothing is done with are in no motion, past the ladder's top either. Of those that it has some may be
    // left untold: a rung that is left is a slip.
    if (std::ssize(reform.rungs) > std::int64_t{stop.row} - reform.from_row) {
      misnamed(reform.column,
               fmt::format("needle {}, dropped to row {}, has {} to re-form, not {}", needle_words(reform.needle),
                           reform.from_row, count_of(std::int64_t{stop.row} - reform.from_row, "rung"),
                           reform.rungs.size()));
    }
  }
  for (const Shaping& shaping : stop.shapings) {
    if (stands_on(plan, shaping.column, shaping.needle)) continue;
    misnamed(shaping.column, fmt::format("the shaping of needle {} names column {}, which stands on another needle",
                                         needle_words(shaping.needle), shaping.column));
  }
  for (const CrossingStep& step : stop.crossings) {
    for (const GroupReturn& group : step.returns) {
      std::optional<Mislabel> wrong = mislabelled_group(plan, step.crossing, group);
      if (!wrong) wrong = mislabelled_tools(group);
      if (wrong) misnamed(step.crossing.column, wrong->message);
    }
  }
}

/// What a stop says of itself and no motion shows: the side of the carriage, what its crossings are called, its
/// columns, wales, rungs and tools. People are told it, so it is held against the chart as well.
std::optional<Difference> mislabelled(const Grid& grid, const Plan& plan) {
  const Wales wales(grid);
  std::optional<Difference> first;
  if (const auto wrong = miscast(grid, plan)) {
    first = Difference{place_of(1, std::clamp(wrong->column, 0, plan.columns - 1)), wrong->message};
  }
  const bool rising = std::ranges::is_sorted(plan.stops, {}, &Stop::row);
  InHold held;
  for (const Stop& stop : plan.stops) {
    if (stop.row < 0 || stop.row > plan.rows) {
      // moves() never makes it; a place is a row of the chart.
      keep_first(first, {place_of(std::clamp(stop.row, 1, plan.rows), -1),
                         fmt::format("stop after row {}: the row counter reads 0 to {}, so this stop is never made",
                                     stop.row, plan.rows)});
      continue;
    }
    if (stop.carriage_right != carriage_right_at(plan, stop.row)) {
      keep_first(first,
                 {place_of(stop.row, -1), fmt::format("stop after row {}: the plan has the carriage on the {}; it "
                                                      "stands on the other side",
                                                      stop.row, stop.carriage_right ? "right" : "left")});
    }
    find_misnamed(plan, stop, wales, first);
    held.pass(stop);
    if (const auto wrong = held.eased_in_vain(stop); wrong && rising) {
      keep_first(first,
                 {place_of(stop.row, wrong->column), fmt::format("stop after row {}: {}", stop.row, wrong->message)});
    }
    for (const CrossingStep& step : stop.crossings) {
      const auto chart = grid.crossings();
      const auto first_here = std::ranges::lower_bound(chart, stop.row, {}, &Crossing::row);
      const auto end_here = std::ranges::upper_bound(chart, stop.row, {}, &Crossing::row);
      const bool charted = std::any_of(first_here, end_here, [&](const Crossing& crossing) {
        Crossing named = step.crossing;
        if (crossing.centre == 0 || bare_centre(crossing, grid.cells(), grid.columns()))
          named.place = crossing.place;  // nobody can tell
        return crossing == named;
      });
      if (charted) {
        if (const auto wrong = mislabelled_returns(grid, step)) {
          keep_first(first, {place_of(stop.row, step.crossing.column),
                             fmt::format("stop after row {}: {}", stop.row, wrong->message)});
        }
        continue;
      }
      keep_first(first, {place_of(stop.row, step.crossing.column),
                         fmt::format("stop after row {}: the plan makes a {} after row {}, column {}; the chart has no "
                                     "such crossing there",
                                     stop.row, crossing_name(step.crossing), step.crossing.row, step.crossing.column)});
    }
  }
  return first;
}

/// The first place where the cloth is another than the chart's.
std::optional<Difference> differing_cloth(const Grid& grid, const Reading& reading) {
  // What no cell or crossing describes differs from any chart, and its message says more than a bare comparison: it
  // goes before a difference at the same place.
  std::optional<Difference> first;
  if (!reading.faults.empty()) first = undescribed(grid, reading, reading.faults.front());
  if (auto cell = differing_cell(grid, reading)) keep_first(first, std::move(*cell));
  if (auto crossing = differing_crossing(grid, reading)) keep_first(first, std::move(*crossing));
  return first;
}

std::string needless_words(const Verification& verification) {
  if (!verification.first_needless) return {};
  const std::string& first = verification.first_needless->message;
  if (verification.needless == 1) return "; one step is needless: " + first;
  return fmt::format("; {} are needless, the first: {}", count_of(verification.needless, "step"), first);
}

}  // namespace

Verification verify(const Grid& grid, const Plan& plan, const WatchOptions& options) {
  require_extent("plan", {.columns = plan.columns, .rows = plan.rows}, "grid", grid);
  Verification result;
  if (plan.status == PlanStatus::infeasible) {
    result.message = "there is no plan";
    return result;
  }
  const Bed bed{.leftmost = plan.leftmost, .columns = plan.columns};
  Knitted knitted = knit(bed, moves(plan), Impossible::passed_over, options);
  result.loops = knitted.loops;
  result.fault = std::move(knitted.stuck);
  result.needless = knitted.needless;
  result.first_needless = std::move(knitted.first_needless);
  std::optional<Difference> first = differing_cloth(grid, knitted.reading);
  if (first) {
    result.wale = Wales(grid).at(first->place.row, first->place.column);
    result.expected = std::move(first->expected);
    result.found = std::move(first->found);
    if (result.fault) first->message += "; left undone, for hands cannot do it: " + result.fault->message;
  } else if (result.fault) {
    first = Difference{
        result.fault->place,
        "hands cannot do this, though without it the fabric is the chart's: " + result.fault->message,
    };
  } else {
    first = mislabelled(grid, plan);
  }
  result.verified = !first;
  result.message = "verified" + needless_words(result);
  if (first) {
    result.difference = first->place;
    result.message = std::move(first->message);
  }
  return result;
}

}  // namespace latchwork::inline v0
