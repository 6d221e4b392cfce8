// What to choose from. The classes are Python's.

#include "latchwork/choice.hpp"

#include "latchwork/reason.hpp"
#include "planning.hpp"

namespace latchwork::python {

void bind_choice(py::module_& m) {
  def_planning(
      m, "plan_two_rhythms", Given::plans, &plan_two_rhythms,
      "The best plan in two rhythms: crossings are made where the panel has them, which is every so many rows or at "
      "some of these; re-forms at the stops of a rhythm of their own, all that is due, the best of all by full "
      "enumeration. It takes no more than plan_regular(). Conditions are kept by all stops that are made, forced "
      "ones too. Arguments and errors as in plan_regular().");
  def_planning(
      m, "condition_prices", Given::few_objects, &condition_prices,
      "The price of each condition that is asked (rows_apart 1 asks nothing), alone, and last of all together; "
      "`forced_exempt` goes with each. "
      "Each is a plan of its own; the work limit and the time limit are the whole call's. Stopped, or out of work or "
      "time, it tells the prices found so far, and of the others what is had without a search: first the plan under "
      "all conditions, which keeps each, then each alone, while the panel, read once for each, comes to no more than "
      "150,000 cells. What has no plan then says so by a total of -1. "
      "Arguments and errors as in plan().");
  def_planning(
      m, "plan_front", Given::plans, &plan_front,
      "Effort against different kinds of stop: plans of which none beats another in both, each proven or bounded. "
      "max_kinds of the conditions, where it is set, is the most kinds that are of interest. After the least plan it "
      "looks at one kind, at the most, then at the middle of what no proof settles. Where neither work nor time "
      "is limited each number of kinds has an allowance of search of its own, a second or so: a panel with hundreds of "
      "kinds of stop takes minutes. The work limit and the time limit are the whole call's, an eighth of what is left "
      "or more for each number of kinds; the "
      "same work limit gives the same front. Stopped, or out of work or time, the points found so far. "
      "Arguments and errors as in plan().");
  def_planning<Plan>(
      m, "stop_reasons", Given::few_objects, &stop_reasons,
      "The reason of each stop of a plan, in its order: what forces it, or what it saves, found exactly by planning "
      "again with its row closed. The other arguments are those of plan(); the work limit and the time "
      "limit are the whole call's: stopped, or out of work or time, the causes not yet found are `unknown`. Raises as "
      "plan(), and Error size_mismatch (plan) for a plan of another size, bad_argument (\"stops[3].row\") for stops "
      "that do not rise within its rows, before anything is planned; bad_argument (plan) where nothing forces a stop "
      "and "
      "no plan does without it, because there is none for the panel under these conditions at all.",
      "plan"_a);
  m.def("stop_cause_name", &stop_cause_name, "cause"_a,
        "\"crossing\", \"shaping\", \"hand_cells\", \"saving\" or \"unknown\".");
  m.def(
      "plan_period", without_gil(&plan_period), "plan"_a,
      "Where a plan becomes periodic, as that of a panel repeated upward does: of all periods that are gone through at "
      "least twice, with a stop, the one that covers the most rows; then the shortest; then the lowest. An infeasible "
      "plan has none, and its stops are not looked at. Raises Error "
      "too_large (rows), above Grid.max_side rows; bad_argument (rows) below 0, and (\"stops[3].row\") "
      "for stops that do not rise within them.");
  def_planning<Plan>(
      m, "plan_tolerances", Given::few_objects, &plan_tolerances,
      "For every field of Effort, in its order, how far it may move before this plan, a least one under the "
      "conditions, is none. Exact, and an end that no search proves, or past which the times of all plans cannot be "
      "counted, is told by its flag, as is one not yet looked at when the call is stopped, or its work or time is "
      "over. Some tens of plans; the work limit and the time limit are the whole call's. The other arguments are "
      "those of plan(). Raises as plan(), and before anything is planned Error size_mismatch (plan) for a plan of "
      "another size and bad_argument (\"stops[3].row\") for stops that do not rise within its rows; bad_argument "
      "(plan) when the panel has no plan, another takes less, this one breaks a condition, or "
      "takes less than any by the planner's rules can (see plan()); and, unless the call is over by then, when it "
      "works "
      "the wales of a rhythm otherwise, or does not make this panel.",
      "plan"_a);
}

}  // namespace latchwork::python
