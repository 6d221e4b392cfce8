#include "fit/start.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <numeric>

#include "text/words.hpp"

namespace latchwork::inline v0::fitting {

Ends::Ends(const Strip& strip) {
  const Grid& grid = strip.grid;
  const auto height = static_cast<std::size_t>(grid.rows());
  const auto columns = static_cast<std::size_t>(grid.columns());
  std::vector<bool> crossed(height, false);
  std::vector<bool> other(height, false);
  open_last_.assign(height, false);
  for (const Crossing& crossing : grid.crossings()) crossed[static_cast<std::size_t>(crossing.row - 1)] = true;
  for (std::size_t row = 0; row < height; ++row) {
    for (const Cell cell : grid.cells().subspan(row * columns, columns)) {
      if (cell != Cell::knit) other[row] = true;
      if (cell == Cell::tuck || cell == Cell::slip) open_last_[row] = true;
    }
  }
  for (std::size_t row = 0; row < height; ++row) {
    if (crossed[row]) open_last_[row] = true;
  }

  // Rows below a crossing after row r are r, those below a cell in row r are r - 1.
  const bool has_crossings = !grid.crossings().empty();
  const std::vector<bool>& marks = has_crossings ? crossed : other;
  const Count first_counts = has_crossings ? 1 : 0;
  below_.assign(height, -1);
  above_.assign(height, -1);
  if (std::none_of(marks.begin(), marks.end(), [](bool mark) { return mark; })) return;
  Count up = 0;
  Count down = 0;
  for (std::size_t n = 0; n < 2 * height; ++n) {  // twice round, since what is looked for may lie beyond the seam
    const std::size_t from_top = height - 1 - n % height;
    up = marks[from_top] ? 0 : up + 1;
    below_[from_top] = up + first_counts;
    const std::size_t from_bottom = n % height;
    down = marks[from_bottom] ? 0 : down + 1;
    above_[from_bottom] = down;
  }
}

Ends::Look Ends::look(Count start_row, Count rows) const {
  const auto first = static_cast<std::size_t>((start_row - 1) % repeat());
  const auto last = static_cast<std::size_t>((start_row - 1 + rows - 1) % repeat());
  Look out;
  out.open = open_last_[last];                      // a tuck in row 1 is held with the cast-on's loop
  if (below_[first] < 0) return out;                // nothing to balance
  const bool falls_outside = above_[last] >= rows;  // the last mark lies below row 1, so no row has one
  out.apart = falls_outside ? rows : std::abs(below_[first] - above_[last]);
  return out;
}

Starts::Starts(const FitRequest& request) : request_(request) {
  for (const FitGroup& group : request.groups) {
    std::vector<Ends>& ends = groups_.emplace_back();
    ends.reserve(group.strips.size());
    for (const Strip& strip : group.strips) ends.emplace_back(strip);
  }
  if (request.edge) edge_.emplace_back(*request.edge);
}

void Starts::choose(FitCandidate& candidate, Budget& budget) {
  const auto [found, is_new] = known_.try_emplace({candidate.rows, candidate.edge_columns > 0, candidate.times});
  Chosen& chosen = found->second;
  if (is_new) {
    std::vector<Standing> strips;
    Count cycle = 1;  // after which all strips begin as before
    const auto stand = [&](const Ends& ends, Count times) {
      strips.push_back({&ends, times});
      cycle = std::min<Count>(std::lcm(cycle, ends.repeat()), Grid::max_side);
    };
    for (std::size_t i = 0; i < groups_.size(); ++i) {
      if (candidate.times[i] == 0) continue;
      for (const Ends& ends : groups_[i]) stand(ends, candidate.times[i]);
    }
    if (candidate.edge_columns > 0) stand(edge_.front(), 2);
    const Count last = request_.vary_start ? cycle : 1;
    for (Count row = 1; row <= last; ++row) {
      budget.take(2 * std::ssize(strips));
      if (budget.spent()) {
        Place place;
        place.field = "vary_start";
        throw Error(ErrorCode::too_large, place,
                    fmt::format("vary_start: {} rows of {} strips to begin with take too much work for each of the "
                                "candidates; ask for fewer of these",
                                cycle, strips.size()));
      }
      const Chosen here = at(row, candidate.rows, strips);
      if (row == 1 || here < chosen) chosen = here;
    }
  }
  candidate.start_row = static_cast<int>(chosen.row);
  candidate.imbalance_rows = chosen.imbalance;
  candidate.open_ends = chosen.open;
}

Starts::Chosen Starts::at(Count row, Count rows, const std::vector<Standing>& strips) {
  Chosen out;
  out.row = row;
  for (const Standing& strip : strips) {
    const Ends::Look look = strip.ends->look(row, rows);
    out.open = out.open || look.open;
    out.imbalance += strip.times * look.apart;
  }
  return out;
}

std::vector<Finding> open_findings(const FitRequest& request, const FitCandidate& candidate, const std::string& whose) {
  std::vector<Finding> out;
  if (!candidate.open_ends) return out;
  bool crossed = false;
  bool held = false;
  const auto look = [&](const Strip& strip) {
    const Grid& grid = strip.grid;
    const int last = (candidate.start_row - 1 + candidate.rows - 1) % grid.rows() + 1;
    for (const Crossing& crossing : grid.crossings()) crossed = crossed || crossing.row == last;
    for (int column = 0; column < grid.columns(); ++column) {
      held = held || grid.at(last, column) == Cell::tuck || grid.at(last, column) == Cell::slip;
    }
  };
  for (std::size_t i = 0; i < request.groups.size(); ++i) {
    if (candidate.times[i] == 0) continue;
    for (const Strip& strip : request.groups[i].strips) look(strip);
  }
  if (candidate.edge_columns > 0) look(*request.edge);
  const auto add = [&](FindingCode code, Severity severity, const char* what) {
    Finding& finding = out.emplace_back();
    finding.code = code;
    finding.severity = severity;
    finding.place.row = finding.last_row = candidate.rows;
    finding.message = fmt::format("{}, of {}, ends with {}", whose, count_of(candidate.rows, "row"), what);
    finding.suggestion = request.vary_start ? "allow other row counts: another rows_extra, or a smaller rows_step"
                                            : "let the repeat begin elsewhere (vary_start), or change rows_extra";
  };
  if (crossed)
    add(FindingCode::open_crossing, Severity::warning, "a crossing after the last row, which no row knits back");
  if (held) add(FindingCode::open_stack, Severity::error, "a tuck or slip in the last row, which nothing closes");
  return out;
}

}  // namespace latchwork::inline v0::fitting
