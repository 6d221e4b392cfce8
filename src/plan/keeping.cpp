#include "plan/keeping.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "plan/index.hpp"
#include "plan/rhythm.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::planning {
namespace {

bool same_works(const std::vector<Work>& one, const std::vector<Work>& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(), [](const Work& a, const Work& b) {
    return a.hold == b.hold && a.first == b.first && a.last == b.last && a.stop == b.stop;
  });
}

}  // namespace

Keeping::Keeping(const Problem& problem, const Grid& grid, const Wales& wales, const Machine& machine,
                 const Conditions& conditions)
    : problem_(problem),
      grid_(grid),
      wales_(wales),
      conditions_(conditions),
      starts_right_(machine.carriage_starts_right),
      closed_(at(problem.rows) + 1, 0),
      given_(conditions),
      deeds_(grid, wales),
      forced_deeds_(deeds_.forced()) {
  for (const int row : conditions.closed_rows) closed_[at(row)] = 1;
  if (conditions.rhythms.empty()) return;
  rest_ = problem;
  take_out(rest_, wales, conditions);  // refuses what is in two rhythms, whether given or to be found
  rest_ = problem;
  std::erase_if(given_.rhythms, [](const KeptRhythm& kept) { return !kept.rhythm; });
  groups_ = take_out(rest_, wales, given_);
  std::vector<std::size_t> lane_of(wales.all().size(), 0);
  for (std::size_t lane = 0; lane < problem.lanes.size(); ++lane) {
    for (const int wale : problem.lanes[lane].wales) lane_of[at(wale)] = lane;
  }
  for (const Group& group : groups_) {
    settled_.push_back(settle(group, *group.kept->rhythm, problem.rows));
    for (std::size_t i = 0; i < settled_.back().works.size(); ++i) {
      const std::size_t lane = lane_of[at(group.lanes[i].wales.front())];
      kept_.push_back({group.kept, lane, settled_.back().works[i]});
    }
  }
}

std::vector<Finding> Keeping::barred(const Machine& machine) const {
  std::vector<const Settled*> settled;
  settled.reserve(groups_.size());
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    if (settled_[g].cost >= far) return {off_rhythm(groups_[g], *groups_[g].kept->rhythm, wales_)};
    settled.push_back(&settled_[g]);
  }
  const Problem& rest = conditions_.rhythms.empty() ? problem_ : rest_;
  return pose(rest, grid_, wales_, machine, given_, groups_, settled).broken;
}

bool Keeping::may_stop(const std::vector<char>& worked) const {
  int last = -1;
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!is_forced(problem_, row) && worked[at(row)] == 0) continue;
    if (last >= 0 && row - last < conditions_.rows_apart && !(exempt(row) && exempt(last))) return false;
    last = row;
    if (exempt(row)) continue;
    if (conditions_.carriage_right_only && starts_right_ != (row % 2 == 0)) return false;
    if (closed_[at(row)] != 0) return false;
  }
  return true;
}

std::optional<Finding> Keeping::broken(const std::vector<std::vector<Work>>& works) {
  std::vector<AtRow> made(at(problem_.rows) + 1);
  for (std::size_t lane = 0; lane < works.size(); ++lane) {
    for (const Work& work : works[lane]) made[at(work.stop)].emplace_back(lane, work);
  }
  if (auto found = at_closed_row(made)) return found;
  if (auto found = too_near(made)) return found;
  if (auto found = off_its_rhythm(works)) return found;
  return too_many_kinds(made);
}

bool Keeping::stops(const std::vector<AtRow>& made, int row) const {
  return is_forced(problem_, row) || !made[at(row)].empty();
}

// Of the leftmost wale worked there, else of what forces the stop.
int Keeping::column_of(const AtRow& made, int row) const {
  int column = grid_.columns();
  for (const auto& [lane, work] : made) {
    for (const int wale : problem_.lanes[lane].wales) column = std::min(column, wales_.all()[at(wale)].column_at(row));
  }
  if (column < grid_.columns()) return column;
  for (const Crossing& crossing : grid_.crossings()) {
    if (crossing.row == row) column = std::min(column, crossing.column);
  }
  for (const Wale& wale : wales_.all()) {
    if (wale.row > 1 && wale.row - 1 == row) column = std::min(column, wale.column);
    if (wale.last_row() == row) column = std::min(column, wale.columns.back());
  }
  return column;
}

std::optional<Finding> Keeping::at_closed_row(const std::vector<AtRow>& made) const {
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!stops(made, row) || exempt(row)) continue;
    if (closed_[at(row)] != 0) {
      return finding_at(FindingCode::row_closed, row, column_of(made[at(row)], row),
                        fmt::format("closed_rows: there is a stop after row {}", row), "open the row");
    }
    if (conditions_.carriage_right_only && starts_right_ != (row % 2 == 0)) {
      return finding_at(FindingCode::carriage_side, row, column_of(made[at(row)], row),
                        fmt::format("carriage_right_only: the stop after row {} is on the left", row),
                        "allow both sides, or start the carriage on the other");
    }
  }
  return {};
}

std::optional<Finding> Keeping::too_near(const std::vector<AtRow>& made) const {
  int last = -1;
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!stops(made, row)) continue;
    if (last >= 0 && row - last < conditions_.rows_apart && !(exempt(row) && exempt(last))) {
      Finding finding = finding_at(FindingCode::stops_too_near, row, column_of(made[at(row)], row),
                                   fmt::format("rows_apart: the stop after row {} comes {} after the one below; {} are "
                                               "asked for",
                                               row, count_of(row - last, "row"), conditions_.rows_apart),
                                   "ask for fewer rows between stops");
      finding.value = row - last;
      finding.limit = conditions_.rows_apart;
      return finding;
    }
    last = row;
  }
  return {};
}

std::optional<Finding> Keeping::off_its_rhythm(const std::vector<std::vector<Work>>& works) const {
  for (const Kept& kept : kept_) {
    if (same_works(works[kept.lane], kept.works)) continue;
    const Rhythm& rhythm = *kept.rhythm->rhythm;
    return finding_at(
        FindingCode::off_rhythm, kept.rhythm->row, kept.rhythm->first_column,
        fmt::format("rhythms: the wales of row {}, {}, are worked at other stops than in their rhythm, "
                    "every {} from row {}",
                    kept.rhythm->row, run_of("column", kept.rhythm->first_column, kept.rhythm->last_column),
                    count_of(rhythm.every, "row"), rhythm.first),
        "another rhythm, or none, for them");
  }
  return {};
}

std::optional<Finding> Keeping::too_many_kinds(const std::vector<AtRow>& made) {
  if (conditions_.max_kinds == 0) return {};
  std::set<int> kinds;
  for (int row = 0; row <= problem_.rows; ++row) {
    if (!stops(made, row)) continue;
    std::vector<int> done = forced_deeds_[at(row)];
    for (const auto& [lane, work] : made[at(row)]) {
      const std::span<const int> more = deeds_.of(deeds_.batch(problem_.lanes[lane], work.first, row));
      done.insert(done.end(), more.begin(), more.end());
    }
    kinds.insert(deeds_.kind(std::move(done)));
    const auto count = static_cast<int>(kinds.size());
    if (count <= conditions_.max_kinds) continue;
    Finding finding = finding_at(FindingCode::too_many_kinds, row, column_of(made[at(row)], row),
                                 fmt::format("max_kinds: up to the stop after row {} there are {} of stop; {} may be",
                                             row, count_of(count, "kind"), conditions_.max_kinds),
                                 "allow more kinds of stop");
    finding.value = count;
    finding.limit = conditions_.max_kinds;
    return finding;
  }
  return {};
}

}  // namespace latchwork::inline v0::planning
