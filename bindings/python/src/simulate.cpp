// Moves, simulation and verification. The data classes are Python's.

#include "latchwork/simulate.hpp"

#include "latchwork/move.hpp"
#include "watch.hpp"

namespace latchwork::python {

void bind_simulate(py::module_& m) {
  m.def("moves", without_gil(&moves), "plan"_a,
        "Every move of a plan from the cast-on to the last row, in order. Works for wrong plans too: it translates and "
        "does not judge. Raises Error too_large (rows).");
  m.def(
      "describe", [](const Move& move) { return describe(move); }, "move"_a, "The move for people.");
  m.def(
      "simulate",
      [](const Bed& bed, const std::vector<Move>& moves, const std::stop_source* stop,
         std::optional<py::function> progress) {
        Watch watch(stop, std::move(progress));
        const WatchOptions options{.stop = watch.token(), .progress = watch.progress()};
        const py::gil_scoped_release free;
        return simulate(bed, moves, options);
      },
      "bed"_a, "moves"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "Knits: executes the moves, right or wrong, on a bed that knows loops, strands and passings and nothing of "
      "charts, then reads the fabric back. A move that hands could not do is a fault, and the moves end there.\n\nThe "
      "GIL is "
      "free meanwhile; `stop` and `progress` as in plan(), but a stopped call raises Error cancelled. Raises Error "
      "bad_argument (leftmost, columns); too_large (columns; moves; more than 2^26 passings); cancelled.");
  m.def(
      "verify",
      [](const Grid& grid, const Plan& plan, const std::stop_source* stop, std::optional<py::function> progress) {
        const Grid own = grid;  // another thread may change the grid while the GIL is free
        Watch watch(stop, std::move(progress));
        const WatchOptions options{.stop = watch.token(), .progress = watch.progress()};
        const py::gil_scoped_release free;
        return verify(own, plan, options);
      },
      "grid"_a, "plan"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "Knits the plan and compares the fabric with the grid: the one way in which anything is called verified. A plan "
      "that makes the right cloth but tells a wrong carriage side, another crossing than the chart's, a stop at a row "
      "that "
      "the counter never reads, a column or wale that is not its needle's, or tools that do not carry their stitches, "
      "is "
      "not. The order in which the plan lists its stops is not compared, for moves() goes by the row counter; charts, "
      "instructions, sessions, rests and plan_period() take only stops that rise. Raises "
      "Error size_mismatch when the plan is for another size; bad_argument when its leftmost needle is 0; too_large, "
      "as "
      "simulate(); cancelled. `stop` and `progress` as in simulate().");
}

}  // namespace latchwork::python
