// Plans: how they are made, and everything that is in them.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

Watch::Watch(latchwork_progress_call call, void* user_data)
    : source_(call == nullptr ? std::stop_source(std::nostopstate) : std::stop_source()),
      call_(call),
      user_data_(user_data) {}

std::function<void(const Progress&)> Watch::progress() {
  if (call_ == nullptr) return {};
  return [this](const Progress& progress) {
    const latchwork_progress told = {sizeof(latchwork_progress), progress.bound_ms, progress.best_ms, progress.share};
    if (call_(&told, user_data_) != 0) source_.request_stop();
  };
}

latchwork_watch_options watch_options_in(const latchwork_watch_options* options) {
  const latchwork_watch_options defaults = LATCHWORK_WATCH_OPTIONS_INIT;
  return options == nullptr ? defaults : struct_in(options, defaults, "options");
}

latchwork_plan_options plan_options_in(const latchwork_plan_options* options) {
  const latchwork_plan_options defaults = LATCHWORK_PLAN_OPTIONS_INIT;
  return options == nullptr ? defaults : struct_in(options, defaults, "options");
}

Conditions conditions_in(const latchwork_conditions* conditions) {
  const latchwork_conditions defaults = LATCHWORK_CONDITIONS_INIT;
  if (conditions == nullptr) return {};
  const latchwork_conditions from = struct_in(conditions, defaults, "options.conditions");
  Conditions to;
  to.carriage_right_only = flag(from.carriage_right_only, "options.conditions.carriage_right_only");
  to.rows_apart = from.rows_apart;
  to.max_depth = from.max_depth;
  to.max_kinds = from.max_kinds;
  to.forced_exempt = flag(from.forced_exempt, "options.conditions.forced_exempt");
  for (const latchwork_kept_rhythm& kept : array_in(from.rhythms, from.rhythms_count, "options.conditions.rhythms")) {
    KeptRhythm rhythm{kept.row, kept.first_column, kept.last_column, {}};
    if (kept.every != 0) rhythm.rhythm = Rhythm{kept.every, kept.first};
    to.rhythms.push_back(rhythm);
  }
  const auto closed = array_in(from.closed_rows, from.closed_rows_count, "options.conditions.closed_rows");
  to.closed_rows.assign(closed.begin(), closed.end());
  return to;
}

PlanOptions plan_options_of(const latchwork_plan_options& from, Watch& watch) {
  PlanOptions options;
  options.stop = watch.token();
  options.progress = watch.progress();
  options.work_limit = from.work_limit;
  options.time_limit_ms = from.time_limit_ms;
  options.memory_limit = from.memory_limit;
  options.conditions = conditions_in(from.conditions);
  return options;
}

}  // namespace latchwork::c

namespace {

using Planner = Plan (*)(const Grid&, const Machine&, const Effort&, const PlanOptions&);

latchwork_status make_plan(Planner planner, const latchwork_grid* grid, const latchwork_machine* machine,
                           const latchwork_effort* effort, const latchwork_plan_options* options, latchwork_plan** out,
                           latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_plan_options from = plan_options_in(options);
      Watch watch(from.progress, from.user_data);
      return planner(given(grid, "grid").value, machine_in(machine), effort_in(effort), plan_options_of(from, watch));
    });
  });
}

const Stop& stop_of(const latchwork_plan* plan, std::size_t stop) {
  return element(given(plan, "plan").value.stops, stop, "stop");
}

}  // namespace

const char* latchwork_plan_status_name(int32_t status) {
  if (status < 0 || status > static_cast<int32_t>(PlanStatus::infeasible)) return "";
  return plan_status_name(static_cast<PlanStatus>(status)).data();
}

latchwork_status latchwork_grid_plan(const latchwork_grid* grid, const latchwork_machine* machine,
                                     const latchwork_effort* effort, const latchwork_plan_options* options,
                                     latchwork_plan** out, latchwork_error* error) {
  return make_plan(plan, grid, machine, effort, options, out, error);
}

latchwork_status latchwork_grid_plan_regular(const latchwork_grid* grid, const latchwork_machine* machine,
                                             const latchwork_effort* effort, const latchwork_plan_options* options,
                                             latchwork_plan** out, latchwork_error* error) {
  return make_plan(plan_regular, grid, machine, effort, options, out, error);
}

latchwork_status latchwork_plan_copy(const latchwork_plan* plan, latchwork_plan** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(plan, "plan").value; }); });
}

latchwork_status latchwork_plan_equal(const latchwork_plan* plan, const latchwork_plan* other, int32_t* equal,
                                      latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(plan, "plan").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_plan_destroy(latchwork_plan* plan) {
  destroy(plan);
}

latchwork_status latchwork_plan_rows(const latchwork_plan* plan, int32_t* rows, latchwork_error* error) {
  return guarded(error, [&] { given(rows, "rows") = given(plan, "plan").value.rows; });
}

latchwork_status latchwork_plan_columns(const latchwork_plan* plan, int32_t* columns, latchwork_error* error) {
  return guarded(error, [&] { given(columns, "columns") = given(plan, "plan").value.columns; });
}

latchwork_status latchwork_plan_leftmost(const latchwork_plan* plan, int32_t* needle, latchwork_error* error) {
  return guarded(error, [&] { given(needle, "needle") = given(plan, "plan").value.leftmost; });
}

latchwork_status latchwork_plan_carriage_starts_right(const latchwork_plan* plan, int32_t* right,
                                                      latchwork_error* error) {
  return guarded(error, [&] { given(right, "right") = given(plan, "plan").value.carriage_starts_right ? 1 : 0; });
}

latchwork_status latchwork_plan_columns_on(const latchwork_plan* plan, int32_t* columns, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(columns, capacity, needed, "columns");
    room.take(given(plan, "plan").value.columns_on);
  });
}

latchwork_status latchwork_plan_total_ms(const latchwork_plan* plan, int64_t* ms, latchwork_error* error) {
  return guarded(error, [&] { given(ms, "ms") = given(plan, "plan").value.total_ms; });
}

latchwork_status latchwork_plan_bound_ms(const latchwork_plan* plan, int64_t* ms, latchwork_error* error) {
  return guarded(error, [&] { given(ms, "ms") = given(plan, "plan").value.bound_ms; });
}

latchwork_status latchwork_plan_status(const latchwork_plan* plan, int32_t* status, latchwork_error* error) {
  return guarded(error, [&] { given(status, "status") = static_cast<int32_t>(given(plan, "plan").value.status); });
}

latchwork_status latchwork_plan_rhythm(const latchwork_plan* plan, int32_t* every, int32_t* first,
                                       latchwork_error* error) {
  return guarded(error, [&] {
    const std::optional<Rhythm>& rhythm = given(plan, "plan").value.rhythm;
    given(every, "every");
    given(first, "first");
    *every = rhythm ? rhythm->every : 0;
    *first = rhythm ? rhythm->first : 0;
  });
}

latchwork_status latchwork_plan_findings(const latchwork_plan* plan, latchwork_findings** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(plan, "plan").value.findings; }); });
}

latchwork_status latchwork_plan_stops(const latchwork_plan* plan, latchwork_stop* stops, size_t capacity,
                                      size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(stops, capacity, needed, "stops");
    room.take(given(plan, "plan").value.stops, [](const Stop& stop) {
      return latchwork_stop{stop.row,
                            stop.carriage_right ? 1 : 0,
                            count_of(stop.releases),
                            count_of(stop.reforms),
                            count_of(stop.crossings),
                            count_of(stop.shapings),
                            count_of(stop.holds),
                            stop.effort_ms};
    });
  });
}

latchwork_status latchwork_plan_releases(const latchwork_plan* plan, size_t stop, int32_t* needles, size_t capacity,
                                         size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(needles, capacity, needed, "needles");
    room.take(stop_of(plan, stop).releases);
  });
}

latchwork_status latchwork_plan_holds(const latchwork_plan* plan, size_t stop, int32_t* needles, size_t capacity,
                                      size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(needles, capacity, needed, "needles");
    room.take(stop_of(plan, stop).holds);
  });
}

latchwork_status latchwork_plan_reforms(const latchwork_plan* plan, size_t stop, latchwork_reform* reforms,
                                        size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(reforms, capacity, needed, "reforms");
    room.take(stop_of(plan, stop).reforms, [](const Reform& reform) {
      return latchwork_reform{reform.needle, reform.column, reform.wale, reform.from_row, count_of(reform.rungs)};
    });
  });
}

latchwork_status latchwork_plan_rungs(const latchwork_plan* plan, size_t stop, size_t reform, uint8_t* rungs,
                                      size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(rungs, capacity, needed, "rungs");
    room.take(element(stop_of(plan, stop).reforms, reform, "reform").rungs);
  });
}

latchwork_status latchwork_plan_crossings(const latchwork_plan* plan, size_t stop, latchwork_crossing_step* crossings,
                                          size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(crossings, capacity, needed, "crossings");
    room.take(stop_of(plan, stop).crossings, [](const CrossingStep& step) {
      return latchwork_crossing_step{crossing_out(step.crossing), count_of(step.returns), step.ease ? 1 : 0};
    });
  });
}

latchwork_status latchwork_plan_returns(const latchwork_plan* plan, size_t stop, size_t crossing,
                                        latchwork_group_return* returns, size_t capacity, size_t* needed,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    Room room(returns, capacity, needed, "returns");
    room.take(element(stop_of(plan, stop).crossings, crossing, "crossing").returns, [](const GroupReturn& group) {
      return latchwork_group_return{static_cast<int32_t>(group.group), group.stitches, group.from_needle,
                                    group.to_needle, count_of(group.prongs)};
    });
  });
}

latchwork_status latchwork_plan_prongs(const latchwork_plan* plan, size_t stop, size_t crossing, size_t group_return,
                                       int32_t* prongs, size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(prongs, capacity, needed, "prongs");
    const CrossingStep& step = element(stop_of(plan, stop).crossings, crossing, "crossing");
    room.take(element(step.returns, group_return, "group_return").prongs);
  });
}

latchwork_status latchwork_plan_shapings(const latchwork_plan* plan, size_t stop, latchwork_shaping* shapings,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(shapings, capacity, needed, "shapings");
    room.take(stop_of(plan, stop).shapings, [](const Shaping& shaping) {
      return latchwork_shaping{shaping.needle, shaping.column, shaping.on ? 1 : 0};
    });
  });
}

latchwork_status latchwork_plan_stop_kinds(const latchwork_plan* plan, int32_t* kinds, size_t capacity, size_t* needed,
                                           latchwork_error* error) {
  return guarded(error, [&] {
    Room room(kinds, capacity, needed, "kinds");
    room.take(stop_kinds(given(plan, "plan").value));
  });
}

latchwork_status latchwork_plan_hand_work(const latchwork_plan* plan, const latchwork_effort* effort,
                                          latchwork_hand_work* work, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(work, "work");
    const HandWork total = hand_work(given(plan, "plan").value, effort_in(effort));
    latchwork_hand_work to = LATCHWORK_HAND_WORK_INIT;
    to.stops = total.stops;
    to.batches = total.batches;
    to.crossings = total.crossings;
    to.holds = total.holds;
    to.shapings = total.shapings;
    to.rungs_knit = total.rungs_knit;
    to.rungs_purl = total.rungs_purl;
    to.rungs_tuck = total.rungs_tuck;
    to.rungs_slip = total.rungs_slip;
    to.stitches_crossed = total.stitches_crossed;
    to.hand_ms = total.hand_ms;
    to.carriage_ms = total.carriage_ms;
    room.take(to);
  });
}
