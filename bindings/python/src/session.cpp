// A plan's time by kind of work, sessions at the machine, rests.

#include "latchwork/session.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_session(py::module_& m) {
  const SessionOptions defaults;
  m.def(
      "work_times",
      [](const Plan& plan, const std::optional<Effort>& effort, Whole<"pieces"> pieces) {
        const py::gil_scoped_release free;
        return work_times(plan, effort.value_or(Effort{}), pieces);
      },
      "plan"_a, "effort"_a = py::none(), "pieces"_a = 1,
      "The time of `pieces` panels made by one plan, by kind of work, from its steps and these efforts; effort None is "
      "Effort(). An article of several plans takes the sums of theirs, field by field; sewing up is in none. Raises "
      "Error bad_argument (effort; pieces: 1..1000; field \"plan\", with the first of its findings, for one that is "
      "infeasible); too_large (field \"pieces\") for so much work that 64 bits do not "
      "hold it.");
  m.def(
      "sessions",
      [](const Plan& plan, const std::optional<Effort>& effort, Wide<"session_ms"> session_ms, Wide<"rest_ms"> rest_ms,
         Whole<"from_row"> from_row) {
        const py::gil_scoped_release free;
        return sessions(plan, effort.value_or(Effort{}),
                        {.session_ms = session_ms, .rest_ms = rest_ms, .from_row = from_row});
      },
      "plan"_a, "effort"_a = py::none(), py::kw_only(), "session_ms"_a = defaults.session_ms,
      "rest_ms"_a = defaults.rest_ms, "from_row"_a = defaults.from_row,
      "Where to stop for the day, in sessions as few and as even as good ends allow. A session may end after each "
      "stop in the second half of its length that leaves nothing in hold; where there is no such stop, after each "
      "row in its length that does; where there is none either, after the first such row past its length, so that it "
      "lasts longer. The panel's end counts as such a stop. Of all ways with the fewest sessions it is the one whose "
      "longest session is shortest, of these the one whose shortest is longest, of these the one whose first session "
      "is longest, then the second, and so on. A plan that is infeasible has none.\n"
      "\n"
      "Raises Error bad_argument (effort; field \"session_ms\", \"rest_ms\", \"from_row\", \"rows\", or "
      "\"stops[3].row\" for stops that do not rise within 0..rows); too_large for a plan of more rows than "
      "Grid.max_side, or of more work than 2^60 ms.");
  m.def(
      "rests",
      [](const Plan& plan, const std::optional<Effort>& effort, Wide<"session_ms"> session_ms, Wide<"rest_ms"> rest_ms,
         Whole<"from_row"> from_row) {
        const py::gil_scoped_release free;
        return rests(plan, effort.value_or(Effort{}),
                     {.session_ms = session_ms, .rest_ms = rest_ms, .from_row = from_row});
      },
      "plan"_a, "effort"_a = py::none(), py::kw_only(), "session_ms"_a = defaults.session_ms,
      "rest_ms"_a = defaults.rest_ms, "from_row"_a = defaults.from_row,
      "Where the hands rest within those sessions: after the stop at which the hand work since the last rest comes to "
      "`rest_ms`; 0: nowhere. Not at a session's end, nor inside a stop, however long. Raises as sessions().");
}

}  // namespace latchwork::python
