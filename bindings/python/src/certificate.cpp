// Certificates. The Certificate class and its parts are Python's.

#include "latchwork/certificate.hpp"

#include "latchwork/plan.hpp"
#include "planning.hpp"
#include "watch.hpp"

namespace latchwork::python {

void bind_certificate(py::module_& m) {
  m.def(
      "certify",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, Wide<"total_ms"> total_ms,
         const std::stop_source* stop, std::optional<py::function> progress, Wide<"options.work_limit"> work_limit,
         Wide<"options.time_limit_ms"> time_limit_ms, Wide<"options.memory_limit"> memory_limit) {
        const Grid own = grid;  // another thread may change the grid while the GIL is free
        const Planning planning(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, {});
        const py::gil_scoped_release free;
        return certify(own, machine, effort.value_or(Effort{}), total_ms, planning.options());
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "total_ms"_a, "stop"_a = py::none(),
      "progress"_a = py::none(), "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0,
      "A proof that no plan by the planner's rules (see plan()) takes less than `total_ms`, for check_certificate(): "
      "hand in the total of an optimal "
      "plan, or the bound of a feasible one. When that cannot be proven (a lower total is possible, or the call is "
      "stopped or limited), a certificate of the greatest bound that prices alone were found to prove; when prices "
      "prove more than `total_ms`, of that. It looks at no conditions: conditions only take plans away. The other "
      "arguments are those of plan(); `memory_limit` is as much again "
      "for "
      "the branches of the proof. Its lists become Python objects when they are first asked for, as a plan's stops "
      "do.\n"
      "\n"
      "Raises Error bad_argument (machine, effort, options, total_ms; grid, when it cannot be scheduled at all), "
      "too_large; cancelled when stopped or limited before the panel was read, as a large one may be.");
  m.def(
      "check_certificate",
      [](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const Certificate& certificate,
         const std::stop_source* stop, std::optional<py::function> progress) {
        const Grid own = grid;
        Watch watch(stop, std::move(progress));
        const WatchOptions options{.stop = watch.token(), .progress = watch.progress()};
        const py::gil_scoped_release free;
        return check_certificate(own, machine, effort.value_or(Effort{}), certificate, options);
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), "certificate"_a, "stop"_a = py::none(),
      "progress"_a = py::none(),
      "Checks every word of a certificate, in whole numbers, against classes, ways and costs that it makes itself "
      "from the grid; it uses none of the planner's code: what both use is Wales, which follows the loops, and the "
      "library's checks of its arguments. What does not hold is told, not raised. A plan that "
      "verify() finds to make the panel, and whose hand_work() comes to `bound_ms`, is then a least one of those that "
      "keep the planner's rules. `stop` and "
      "`progress` as in verify().\n"
      "\n"
      "Raises Error bad_argument (machine, effort), size_mismatch (another panel's certificate), too_large (totals; "
      "branches kept in two rows that would take more than a gibibyte), cancelled.");
}

}  // namespace latchwork::python
