#include "latchwork/session.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <string>
#include <vector>

#include "effort/check.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "plan/stops.hpp"
#include "session/check.hpp"
#include "session/ends.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr std::int64_t most_work_ms = std::int64_t{1} << 60;

[[noreturn]] void refuse(const std::string& field, std::int64_t value, const std::string& range,
                         ErrorCode code = ErrorCode::bad_argument) {
  Place place;
  place.field = field;
  throw Error(code, place, fmt::format("{} is {}; it must be {}", field, value, range));
}

void require(const Plan& plan, const SessionOptions& options) {
  const auto range = [](std::int64_t least, std::int64_t most) { return fmt::format("{}..{}", least, most); };
  if (plan.rows < 0) refuse("rows", plan.rows, range(0, Grid::max_side));
  if (plan.rows > Grid::max_side) refuse("rows", plan.rows, range(0, Grid::max_side), ErrorCode::too_large);
  require_stops_rise(plan);
  if (!sitting::is_session(options.session_ms)) {
    refuse("session_ms", options.session_ms, range(sitting::least_length_ms, sitting::most_length_ms));
  }
  if (!sitting::is_rest(options.rest_ms)) {
    refuse("rest_ms", options.rest_ms, "0 or " + range(sitting::least_length_ms, sitting::most_length_ms));
  }
  if (options.from_row < 0 || options.from_row > plan.rows) refuse("from_row", options.from_row, range(0, plan.rows));
}

/// The work of a row and of the stop after it, and how it leaves the bed.
struct RowWork {
  std::int64_t hand_ms = 0;
  bool stop = false;
  bool clear = true;
};

/// Hand work of one stop: its counts by the efforts, as hand_work() has them.
std::int64_t hand_ms_of(const Stop& stop, const Effort& effort) {
  Plan alone;
  alone.stops.push_back(stop);
  return hand_work(alone, effort).hand_ms;
}

/// Rows 0..R, each with its stop.
std::vector<RowWork> work_by_row(const Plan& plan, const Effort& effort) {
  std::vector<RowWork> rows(static_cast<std::size_t>(plan.rows) + 1);
  std::int64_t left = most_work_ms - plan.rows * effort.row;
  std::int64_t held = 0;
  std::size_t next = 0;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    RowWork& work = rows[row];
    bool brought_out = false;
    if (next < plan.stops.size() && plan.stops[next].row == static_cast<int>(row)) {
      const Stop& stop = plan.stops[next++];
      work.stop = true;
      work.hand_ms = hand_ms_of(stop, effort);
      if (work.hand_ms > left) {
        Place place;
        place.field = "plan";
        throw Error(ErrorCode::too_large, place, fmt::format("the plan's work is past {} ms", most_work_ms));
      }
      left -= work.hand_ms;
      held += std::ssize(stop.holds) - std::ssize(stop.releases);
      for (const CrossingStep& step : stop.crossings) brought_out = brought_out || step.ease;
    }
    work.clear = held <= 0 && !brought_out;
  }
  return rows;
}

/// Sessions and rests, one with the other.
class Sittings {
 public:
  Sittings(const Plan& plan, const Effort& effort, const SessionOptions& options)
      : plan_(plan), effort_(effort), options_(options) {
    check(effort);
    require(plan, options);
    if (plan.status == PlanStatus::infeasible) return;
    rows_ = work_by_row(plan, effort);
    int from = options.from_row;
    for (const std::size_t end : sitting::even_ends(ends(), options.session_ms)) {
      const int to = options.from_row + static_cast<int>(end);
      sit(from, to);
      from = to;
    }
  }

  std::vector<Session> sessions;
  std::vector<Rest> rests;

 private:
  const RowWork& work(int row) const { return rows_[static_cast<std::size_t>(row)]; }

  /// What lies before the first row is the first session's: a stop on the cast-on row.
  std::int64_t before(int from) const { return from == 0 ? work(0).hand_ms : 0; }

  sitting::Rows ends() const {
    sitting::Rows out;
    const auto count = static_cast<std::size_t>(plan_.rows - options_.from_row) + 1;
    out.spent.reserve(count);
    out.stop.reserve(count);
    out.clear.reserve(count);
    std::int64_t spent = 0;
    for (int row = options_.from_row; row <= plan_.rows; ++row) {
      if (row > options_.from_row) spent += effort_.row + work(row).hand_ms;
      if (row == options_.from_row + 1) spent += before(options_.from_row);
      out.spent.push_back(spent);
      out.stop.push_back(work(row).clear && work(row).stop ? 1 : 0);
      out.clear.push_back(work(row).clear ? 1 : 0);
    }
    return out;
  }

  void sit(int from, int to) {
    Session session;
    session.from_row = from;
    session.to_row = to;
    session.carriage_right = plan_.carriage_starts_right == (to % 2 == 0);
    session.clear = work(to).clear;
    session.hand_ms = before(from);
    std::int64_t since = 0;
    for (int row = from == 0 ? 0 : from + 1; row <= to; ++row) {
      if (row > 0) session.hand_ms += work(row).hand_ms;
      since += work(row).hand_ms;
      if (options_.rest_ms == 0 || since < options_.rest_ms || row == to) continue;
      rests.push_back({static_cast<int>(sessions.size()), row, since});
      since = 0;
    }
    session.work_ms = session.hand_ms + (to - from) * effort_.row;
    sessions.push_back(session);
  }

  const Plan& plan_;
  const Effort& effort_;
  const SessionOptions& options_;
  std::vector<RowWork> rows_;
};

}  // namespace

std::vector<Session> sessions(const Plan& plan, const Effort& effort, const SessionOptions& options) {
  return Sittings(plan, effort, options).sessions;
}

std::vector<Rest> rests(const Plan& plan, const Effort& effort, const SessionOptions& options) {
  return Sittings(plan, effort, options).rests;
}

}  // namespace latchwork::inline v0
