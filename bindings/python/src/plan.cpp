// Planning. The Plan class and its steps are Python's.

#include "latchwork/plan.hpp"

#include "planning.hpp"

namespace latchwork::python {

void bind_plan(py::module_& m) {
  py::class_<std::stop_source>(
      m, "StopSource",
      "Asks a long call to stop, from any thread: hand it to the call as `stop`. One source can "
      "stop several calls, and stays asked.")
      .def(py::init<>())
      .def("request_stop", &std::stop_source::request_stop, "Asks; False when that was done before.")
      .def("stop_requested", &std::stop_source::stop_requested, "Whether it was asked.")
      .def("__repr__", [](const std::stop_source& self) {
        return std::string("<latchwork.StopSource ") + (self.stop_requested() ? "asked to stop>" : "not asked>");
      });

  def_planning(
      m, "plan", Given::plans, &plan,
      "The least-effort plan for the grid read as a panel; effort None is Effort(). Exact: `optimal` unless stopped or "
      "limited: `work_limit` counts search steps, and gives the same plan on every machine; `time_limit_ms` goes by "
      "the clock, and is passed by no more than 20 ms, or 5 % of it where that is more, as far as the machine lets it "
      "be foreseen; a plan's stops become Python objects when they are first asked for, which takes 1 ms for some "
      "10,000 cells and is "
      "in no limit; `memory_limit` is "
      "bytes for the search's partial schedules, 0 for 1 GiB; 0: none. What cannot be scheduled gives status "
      "infeasible with findings, not an error. A batch starts right below a hand cell and passes no crossing of its "
      "wale; only tucks under a closing knit with no tuck beside them are held. These are the planner's rules: what is "
      "proven is proven of the plans that keep them, and one that does not may take less.\n"
      "\n"
      "The GIL is free meanwhile. `progress` is called with Progress now and then on this thread: when it returns "
      "False, or `stop` is asked, the best plan so far comes back with status `feasible`; what it raises, "
      "KeyboardInterrupt too, ends the call.\n"
      "\n"
      "Under `conditions` it is the least plan that keeps them; where nothing does, the findings name the condition "
      "and the place. With max_kinds the search is exact on small panels and else ends `feasible` with a bound.\n"
      "\n"
      "Raises Error bad_argument (machine, effort, options, conditions), too_large (effort; grid: kinds of wale, times "
      "rows + 1, past 2^25; options.conditions.max_kinds: nobody limits the search, and its own allowance ends before "
      "it has a plan or "
      "knows that there is none); cancelled when stopped, limited, or out of its memory, before that. A plan without "
      "conditions is had before any search, however short the limit; only a panel of more than 200,000 cells, a "
      "crossing counted as twenty, or one of which many wales begin or end inside it, is cancelled where it would be "
      "had too late, and where the call is stopped with some 400,000 cells still to be passed. Under conditions a few "
      "cheap plans are tried first (rows_apart: as few stops as serve all; a rhythm to be found: the likely ones, down "
      "to "
      "the densest; max_kinds: stops each as late as can be, else rhythms), and only where none of them keeps the "
      "conditions a limit ends in cancelled.");
  def_planning(
      m, "plan_regular", Given::plans, &plan_regular,
      "The best regular plan, with its rhythm: it stops after rows first, first + every, ... and does all that is "
      "due. Infeasible when no rhythm works. Under `conditions` the best of the rhythms whose stops and works keep "
      "them; where none does, the findings name the condition and the place. Arguments and errors as in plan(). "
      "Stopped or limited before any was tried, it takes the first that does, down to every row; where none of these "
      "keeps the conditions it raises Error cancelled.");
  m.def(
      "_late_list",
      [](const py::object& instance, const std::string& name) {
        return py::isinstance(instance, class_of<Plan>()) ? late_list<Plan>(instance, name)
                                                          : late_list<Certificate>(instance, name);
      },
      "instance"_a, "name"_a);
  m.def(
      "stop_kinds", without_gil(&stop_kinds), "plan"_a,
      "For each stop the number of its kind, from 0 in the order in which kinds first appear. Stops are of one kind "
      "when the same is done at them, whatever their row: the same needles released, re-formed to the same depth with "
      "the same rungs, the same crossings in the same columns, needles cast on, bound off and held.");
  m.def(
      "hand_work",
      [](const Plan& plan, const std::optional<Effort>& effort) {
        const py::gil_scoped_release free;
        return hand_work(plan, effort.value_or(Effort{}));
      },
      "plan"_a, "effort"_a = py::none(),
      "Counts and times of a plan under these efforts; effort None is Effort(). What a spoiled plan has below 0, rows "
      "or stitches of a group, counts as none; stitches crossed past 2**31 - 1 stay there. Raises Error bad_argument "
      "(effort).");
  m.def("plan_status_name", &plan_status_name, "status"_a, "\"optimal\", \"feasible\" or \"infeasible\".");
}

}  // namespace latchwork::python
