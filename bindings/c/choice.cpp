// What to choose from: rhythms, prices of conditions, fronts; why stops are there, and how far costs may move.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

latchwork_status latchwork_grid_plan_two_rhythms(const latchwork_grid* grid, const latchwork_machine* machine,
                                                 const latchwork_effort* effort, const latchwork_plan_options* options,
                                                 latchwork_two_rhythms* rhythms, latchwork_plan** out,
                                                 latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      StructRoom room(rhythms, "rhythms");
      const latchwork_plan_options from = plan_options_in(options);
      Watch watch(from.progress, from.user_data);
      TwoRhythms two = plan_two_rhythms(given(grid, "grid").value, machine_in(machine), effort_in(effort),
                                        plan_options_of(from, watch));
      room.take({sizeof(latchwork_two_rhythms), two.crossings.every, two.crossings.first, two.reforms.every,
                 two.reforms.first});
      return std::move(two.plan);
    });
  });
}

latchwork_status latchwork_grid_condition_prices(const latchwork_grid* grid, const latchwork_machine* machine,
                                                 const latchwork_effort* effort, const latchwork_plan_options* options,
                                                 latchwork_condition_price* prices, size_t capacity, size_t* needed,
                                                 latchwork_error* error) {
  return guarded(error, [&] {
    Room room(prices, capacity, needed, "prices");
    const latchwork_plan_options from = plan_options_in(options);
    Watch watch(from.progress, from.user_data);
    room.take(condition_prices(given(grid, "grid").value, machine_in(machine), effort_in(effort),
                               plan_options_of(from, watch)),
              [](const ConditionPrice& price) {
                return latchwork_condition_price{static_cast<int32_t>(price.condition),
                                                 static_cast<int32_t>(price.status),
                                                 price.total_ms,
                                                 price.price_ms,
                                                 price.least_price_ms,
                                                 price.most_price_ms};
              });
  });
}

latchwork_status latchwork_grid_plan_front(const latchwork_grid* grid, const latchwork_machine* machine,
                                           const latchwork_effort* effort, const latchwork_plan_options* options,
                                           latchwork_front** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_plan_options from = plan_options_in(options);
      Watch watch(from.progress, from.user_data);
      return plan_front(given(grid, "grid").value, machine_in(machine), effort_in(effort),
                        plan_options_of(from, watch));
    });
  });
}

latchwork_status latchwork_front_copy(const latchwork_front* front, latchwork_front** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(front, "front").value; }); });
}

latchwork_status latchwork_front_equal(const latchwork_front* front, const latchwork_front* other, int32_t* equal,
                                       latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(front, "front").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_front_destroy(latchwork_front* front) {
  destroy(front);
}

latchwork_status latchwork_front_points(const latchwork_front* front, latchwork_front_point* points, size_t capacity,
                                        size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(points, capacity, needed, "points");
    room.take(given(front, "front").value.points, [](const FrontPoint& point) {
      return latchwork_front_point{point.kinds, static_cast<int32_t>(point.plan.status), point.plan.total_ms,
                                   point.plan.bound_ms};
    });
  });
}

latchwork_status latchwork_front_point_plan(const latchwork_front* front, size_t index, latchwork_plan** out,
                                            latchwork_error* error) {
  return guarded(error,
                 [&] { fill(out, [&] { return element(given(front, "front").value.points, index, "index").plan; }); });
}

latchwork_status latchwork_front_fewest_proven(const latchwork_front* front, int32_t* proven, latchwork_error* error) {
  return guarded(error, [&] { given(proven, "proven") = given(front, "front").value.fewest_proven ? 1 : 0; });
}

latchwork_status latchwork_front_findings(const latchwork_front* front, latchwork_findings** out,
                                          latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(front, "front").value.findings; }); });
}

latchwork_status latchwork_grid_stop_reasons(const latchwork_grid* grid, const latchwork_machine* machine,
                                             const latchwork_effort* effort, const latchwork_plan* plan,
                                             const latchwork_plan_options* options, latchwork_stop_reason* reasons,
                                             size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(reasons, capacity, needed, "reasons");
    const latchwork_plan_options from = plan_options_in(options);
    Watch watch(from.progress, from.user_data);
    room.take(stop_reasons(given(grid, "grid").value, machine_in(machine), effort_in(effort), given(plan, "plan").value,
                           plan_options_of(from, watch)),
              [](const StopReason& reason) {
                latchwork_stop_reason to{};
                to.row = reason.row;
                to.cause = static_cast<int32_t>(reason.cause);
                to.place_row = reason.place.row;
                to.place_column = reason.place.column;
                to.saves_ms = reason.saves_ms;
                to.least_saves_ms = reason.least_saves_ms;
                to.beside_ms = reason.beside_ms;
                cut(to.message, reason.message);
                return to;
              });
  });
}

const char* latchwork_stop_cause_name(int32_t cause) {
  if (cause < 0 || cause > static_cast<int32_t>(StopCause::unknown)) return "";
  return stop_cause_name(static_cast<StopCause>(cause)).data();
}

latchwork_status latchwork_plan_period(const latchwork_plan* plan, latchwork_period* period, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(period, "period");
    const Period found = plan_period(given(plan, "plan").value);
    room.take({sizeof(latchwork_period), found.from_row, found.last_row, found.rows, found.times, found.stops});
  });
}

latchwork_status latchwork_grid_plan_tolerances(const latchwork_grid* grid, const latchwork_machine* machine,
                                                const latchwork_effort* effort, const latchwork_plan* plan,
                                                const latchwork_plan_options* options, latchwork_tolerance* tolerances,
                                                size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(tolerances, capacity, needed, "tolerances");
    const latchwork_plan_options from = plan_options_in(options);
    Watch watch(from.progress, from.user_data);
    room.take(plan_tolerances(given(grid, "grid").value, machine_in(machine), effort_in(effort),
                              given(plan, "plan").value, plan_options_of(from, watch)),
              [](const Tolerance& tolerance) {
                latchwork_tolerance to{};
                to.term = static_cast<int32_t>(tolerance.term);
                to.value_ms = tolerance.value_ms;
                to.least_ms = tolerance.least_ms;
                to.most_ms = tolerance.most_ms;
                to.least_exact = tolerance.least_exact ? 1 : 0;
                to.most_exact = tolerance.most_exact ? 1 : 0;
                to.proven = tolerance.proven ? 1 : 0;
                return to;
              });
  });
}
