// What to choose from. The classes are Python's.

#include "latchwork/choice.hpp"

#include "latchwork/reason.hpp"
#include "watch.hpp"

namespace latchwork::python {

namespace {

/// What every planning call takes beside the grid, the machine and the efforts.
struct Asked {
  Watch watch;
  PlanOptions options;
  Asked(const std::stop_source* stop, std::optional<py::function> progress, std::int64_t work_limit,
        std::int64_t time_limit_ms, std::int64_t memory_limit, const std::optional<Conditions>& conditions)
      : watch(stop, std::move(progress)),
        options{.stop = watch.token(),
                .progress = watch.progress(),
                .work_limit = work_limit,
                .time_limit_ms = time_limit_ms,
                .memory_limit = memory_limit,
                .conditions = conditions.value_or(Conditions{})} {}
};

/// Plans from a copy of the grid, the GIL free: another thread may change it meanwhile.
template <class Call>
auto without_gil(const Grid& grid, Call&& call) {
  const Grid own = grid;
  const py::gil_scoped_release free;
  return call(own);
}

}  // namespace

void bind_choice(py::module_& m) {
  m.def(
      "plan_two_rhythms",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const std::stop_source* stop,
         std::optional<py::function> progress, Wide<"options.work_limit"> work_limit,
         Wide<"options.time_limit_ms"> time_limit_ms, Wide<"options.memory_limit"> memory_limit,
         const std::optional<Conditions>& conditions) {
        Asked asked(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, conditions);
        asked.options.time_limit_ms = less_time_for_objects(time_limit_ms, grid);
        return without_gil(grid, [&](const Grid& own) {
          return plan_two_rhythms(own, machine, effort.value_or(Effort{}), asked.options);
        });
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0, "conditions"_a = py::none(),
      "The best plan in two rhythms: crossings are made where the panel has them, which is every so many rows or at "
      "some of these; re-forms at the stops of a rhythm of their own, all that is due, the best of all by full "
      "enumeration. It takes no more than plan_regular(). Conditions are kept by all stops that are made, forced "
      "ones too. Arguments and errors as in plan_regular().");
  m.def(
      "condition_prices",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const std::stop_source* stop,
         std::optional<py::function> progress, Wide<"options.work_limit"> work_limit,
         Wide<"options.time_limit_ms"> time_limit_ms, Wide<"options.memory_limit"> memory_limit,
         const std::optional<Conditions>& conditions) {
        Asked asked(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, conditions);
        return without_gil(grid, [&](const Grid& own) {
          return condition_prices(own, machine, effort.value_or(Effort{}), asked.options);
        });
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0, "conditions"_a = py::none(),
      "The price of each condition that is asked, alone, and last of all together; `forced_exempt` goes with each. "
      "Each is a plan of its own; the work limit and the time limit are the whole call's. Stopped, or out of work or "
      "time, it tells the prices found so far, and of the others what is had without a search: first the plan under "
      "all conditions, which keeps each, then each alone, while the panel, read once for each, comes to no more than "
      "200,000 cells. What has no plan then says so by a total of -1. "
      "Arguments and errors as in plan().");
  m.def(
      "plan_front",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const std::stop_source* stop,
         std::optional<py::function> progress, Wide<"options.work_limit"> work_limit,
         Wide<"options.time_limit_ms"> time_limit_ms, Wide<"options.memory_limit"> memory_limit,
         const std::optional<Conditions>& conditions) {
        Asked asked(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, conditions);
        asked.options.time_limit_ms = less_time_for_objects(time_limit_ms, grid);
        return without_gil(
            grid, [&](const Grid& own) { return plan_front(own, machine, effort.value_or(Effort{}), asked.options); });
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0, "conditions"_a = py::none(),
      "Effort against different kinds of stop: plans of which none beats another in both, each proven or bounded. "
      "max_kinds of the conditions, where it is set, is the most kinds that are of interest. After the least plan it "
      "looks at one kind, at the most, then at the middle of what no proof settles: seconds on large panels. The work "
      "limit and the time limit are the whole call's, an eighth of what is left or more for each number of kinds; the "
      "same work limit gives the same front. Stopped, or out of work or time, the points found so far. "
      "Arguments and errors as in plan().");
  m.def(
      "stop_reasons",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const Plan& plan,
         const std::stop_source* stop, std::optional<py::function> progress, Wide<"options.work_limit"> work_limit,
         Wide<"options.time_limit_ms"> time_limit_ms, Wide<"options.memory_limit"> memory_limit,
         const std::optional<Conditions>& conditions) {
        Asked asked(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, conditions);
        return without_gil(grid, [&](const Grid& own) {
          return stop_reasons(own, machine, effort.value_or(Effort{}), plan, asked.options);
        });
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "plan"_a, "stop"_a = py::none(),
      "progress"_a = py::none(), "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0,
      "conditions"_a = py::none(),
      "The reason of each stop of a plan, in its order: what forces it, or what it saves, found exactly by planning "
      "again with its row closed. The other arguments are those of plan(); the work limit and the time "
      "limit are the whole call's: stopped, or out of work or time, the causes not yet found are `unknown`. Raises as "
      "plan(), and Error size_mismatch (plan) for a plan of another size, bad_argument (\"stops[3].row\") for stops "
      "that do not rise within its rows, before anything is planned.");
  m.def("stop_cause_name", &stop_cause_name, "cause"_a,
        "\"crossing\", \"shaping\", \"hand_cells\", \"saving\" or \"unknown\".");
  m.def(
      "plan_period", without_gil(&plan_period), "plan"_a,
      "Where a plan becomes periodic, as that of a panel repeated upward does: of all periods that are gone through at "
      "least twice, with a stop, the one that covers the most rows; then the shortest; then the lowest. An infeasible "
      "plan has none, and its stops are not looked at. Raises Error "
      "too_large (rows), above Grid.max_side rows; bad_argument (rows) below 0, and (\"stops[3].row\") "
      "for stops that do not rise within them.");
  m.def(
      "plan_tolerances",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const Plan& plan,
         const std::stop_source* stop, std::optional<py::function> progress, Wide<"options.work_limit"> work_limit,
         Wide<"options.time_limit_ms"> time_limit_ms, Wide<"options.memory_limit"> memory_limit,
         const std::optional<Conditions>& conditions) {
        Asked asked(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, conditions);
        return without_gil(grid, [&](const Grid& own) {
          return plan_tolerances(own, machine, effort.value_or(Effort{}), plan, asked.options);
        });
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "plan"_a, "stop"_a = py::none(),
      "progress"_a = py::none(), "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0,
      "conditions"_a = py::none(),
      "For every field of Effort, in its order, how far it may move before this plan, a least one under the "
      "conditions, is none. Exact, and an end that no search proves, or past which the times of all plans cannot be "
      "counted, is told by its flag, as is one not yet looked at when the call is stopped, or its work or time is "
      "over. Some tens of plans; the work limit and the time limit are the whole call's. The other arguments are "
      "those of plan(). Raises as plan(), and Error size_mismatch (plan) for a plan of another size, before anything "
      "is planned; bad_argument (plan) when another plan takes less, or the plan does not make this panel.");
}

}  // namespace latchwork::python
