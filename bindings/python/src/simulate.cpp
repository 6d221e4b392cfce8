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
      "charts, then reads the fabric back. A move that hands could not do is a fault, and the moves end there: "
      "nothing is read.\n"
      "\n"
      "The GIL is free meanwhile; `stop` and `progress` as in plan(), but a stopped call raises Error cancelled. "
      "Raises Error bad_argument (leftmost, columns); too_large (columns; moves; more than 2^26 passings); cancelled.");
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
      "that the counter never reads, a column or wale that is not its needle's, other needles cast on than the chart's "
      "in row 1, a crossing's groups in another order than its name says, one twice or not at all, or tools that do "
      "not carry their stitches, is not. Work that changes nothing does no harm: the plan is verified all the same, "
      "and `needless` tells how much of it there is. An infeasible plan is none: nothing is knitted, and it is not "
      "verified. The order in which the plan lists its stops is not compared, for moves() goes by the row counter; "
      "charts, instructions, sessions, rests and plan_period() take only stops that rise.\n"
      "\n"
      "What hands cannot do of a plan is left undone and knitted on to its end, so that it hides no difference of the "
      "cloth: a rung that does not hang on the ladder is passed over, a batch without a loop at its from_row is not "
      "begun, of a crossing of which some stitch cannot be lifted or put back nothing is done, a needle that cannot be "
      "cast on, bound off, held or released is let be, one left in hold without a stitch goes back before the carriage "
      "comes.\n"
      "\n"
      "Raises Error size_mismatch when the plan is for another size; bad_argument when its leftmost needle is 0; "
      "too_large, as simulate(); cancelled. `stop` and `progress` as in simulate().");
}

}  // namespace latchwork::python
