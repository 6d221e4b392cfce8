#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <utility>

#include "bind.hpp"
#include "latchwork/plan.hpp"
#include "watch.hpp"

namespace latchwork::python {

/// The options of a call that plans, from its keyword arguments. Made and destroyed with the GIL held.
class Planning {
 public:
  Planning(const std::stop_source* stop, std::optional<py::function> progress, std::int64_t work_limit,
           std::int64_t time_limit_ms, std::int64_t memory_limit, const std::optional<Conditions>& conditions)
      : watch_(stop, std::move(progress)),
        options_{.stop = watch_.token(),
                 .progress = watch_.progress(),
                 .work_limit = work_limit,
                 .time_limit_ms = time_limit_ms,
                 .memory_limit = memory_limit,
                 .conditions = conditions.value_or(Conditions{})} {}
  const PlanOptions& options() const { return options_; }

 private:
  Watch watch_;
  PlanOptions options_;
};

/// What becomes of what a call gives.
enum class Given {
  few_objects,
  plans,  ///< as large as the grid: the time that it takes to put them by is kept back
};

/// Defines `call`, which takes grid, machine, effort, what is its own, and options. Own are the types of the keyword
/// arguments that are its own, before the others; `names` theirs. It plans from a copy of the grid, the GIL free:
/// another thread may change it meanwhile.
template <class... Own, class Call, class... Names>
void def_planning(py::module_& m, const char* name, Given given, Call call, const char* doc, const Names&... names) {
  static_assert(sizeof...(Own) == sizeof...(Names));
  m.def(
      name,
      [given, call](const Grid& grid, const Machine& machine, const std::optional<Effort>& effort, const Own&... own,
                    const std::stop_source* stop, std::optional<py::function> progress,
                    Wide<"options.work_limit"> work_limit, Wide<"options.time_limit_ms"> time_limit_ms,
                    Wide<"options.memory_limit"> memory_limit, const std::optional<Conditions>& conditions) {
        const std::int64_t time_ms =
            given == Given::plans ? less_time_for_objects(time_limit_ms, grid) : std::int64_t{time_limit_ms};
        const Planning planning(stop, std::move(progress), work_limit, time_ms, memory_limit, conditions);
        const Grid copy = grid;
        const py::gil_scoped_release free;
        return call(copy, machine, effort.value_or(Effort{}), own..., planning.options());
      },
      "grid"_a, "machine"_a, "effort"_a = py::none(), py::kw_only(), names..., "stop"_a = py::none(),
      "progress"_a = py::none(), "work_limit"_a = 0, "time_limit_ms"_a = 0, "memory_limit"_a = 0,
      "conditions"_a = py::none(), doc);
}

}  // namespace latchwork::python
