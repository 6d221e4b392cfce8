/* A small panel planned, read, knitted and spoiled through the C ABI, against figures worked out by hand from the cost
   model and facts of the trade; callbacks. */
#include <stdlib.h>
#include <string.h>

#include "program.h"
#include "sample.h"

static void the_plan_costs_what_its_work_costs(void) {
  /* The purl lies below a crossing that its wale takes part in, so it is re-formed at or before that stop; the
     crossing's stop after row 2 is needed anyhow, and a stop of its own costs 15 s against one more rung. With the
     default efforts: stop 15 s, batch 12 s, two rungs dropped 1 s, a purl 2.5 s and a knit 4 s re-formed, crossing 15 s
     and four stitches lifted 16 s: 65.5 s of hand work; four rows 16 s. */
  latchwork_hand_work work = LATCHWORK_HAND_WORK_INIT;
  latchwork_stop stop;
  latchwork_reform reform;
  uint8_t rungs[2] = {9, 9};
  int32_t status = -1, on[6], every = -1, first = -1;
  int64_t total = 0, bound = 0;
  size_t needed = 0;
  checking = "plan";
  OK(latchwork_plan_status(plan, &status, NULL));
  OK(latchwork_plan_total_ms(plan, &total, NULL));
  OK(latchwork_plan_bound_ms(plan, &bound, NULL));
  CHECK(status == LATCHWORK_PLAN_STATUS_OPTIMAL && total == 81500 && bound == 81500);
  OK(latchwork_plan_hand_work(plan, NULL, &work, NULL));
  CHECK(work.stops == 1 && work.batches == 1 && work.crossings == 1 && work.holds == 0 && work.shapings == 0);
  CHECK(work.rungs_purl == 1 && work.rungs_knit == 1 && work.rungs_tuck == 0 && work.rungs_slip == 0);
  CHECK(work.stitches_crossed == 4 && work.hand_ms == 65500 && work.carriage_ms == 16000);
  OK(latchwork_plan_stops(plan, &stop, 1, &needed, NULL));
  CHECK(needed == 1 && stop.row == 2 && stop.carriage_right == 1 && stop.reforms == 1 && stop.crossings == 1);
  CHECK(stop.releases == 0 && stop.holds == 0 && stop.shapings == 0 && stop.effort_ms == 65500);
  OK(latchwork_plan_reforms(plan, 0, &reform, 1, &needed, NULL));
  CHECK(needed == 1 && reform.needle == 1 && reform.column == 2 && reform.from_row == 0 && reform.rungs == 2);
  OK(latchwork_plan_rungs(plan, 0, 0, rungs, 2, &needed, NULL));
  CHECK(needed == 2 && rungs[0] == LATCHWORK_CELL_PURL && rungs[1] == LATCHWORK_CELL_KNIT);
  OK(latchwork_plan_columns_on(plan, on, 6, &needed, NULL));
  CHECK(needed == 6 && on[0] == 0 && on[5] == 5);
  OK(latchwork_plan_rhythm(plan, &every, &first, NULL));
  CHECK(every == 0 && first == 0);
}

static void the_group_put_back_first_shows_in_front(void) {
  /* Common practice, no source: a right cross on the RS is made by first putting the operator's right-hand group on the
     left-hand needles. Columns 1 and 2 stand on R1 and R2, columns 3 and 4 on L2 and L1. */
  latchwork_crossing_step step;
  latchwork_group_return returns[2];
  int32_t prongs[2];
  size_t needed = 0;
  checking = "crossing step";
  OK(latchwork_plan_crossings(plan, 0, &step, 1, &needed, NULL));
  CHECK(needed == 1 && step.crossing.row == 2 && step.crossing.column == 1 && step.returns == 2);
  OK(latchwork_plan_returns(plan, 0, 0, returns, 2, &needed, NULL));
  CHECK(needed == 2 && returns[0].group == LATCHWORK_GROUP_NAME_LEFT && returns[1].group == LATCHWORK_GROUP_NAME_RIGHT);
  CHECK(returns[0].from_needle == 1 && returns[0].to_needle == -2 && returns[0].stitches == 2);
  CHECK(returns[1].from_needle == -2 && returns[1].to_needle == 1 && returns[1].prongs == 1);
  OK(latchwork_plan_prongs(plan, 0, 0, 0, prongs, 2, &needed, NULL));
  CHECK(needed == 1 && prongs[0] == 2);
}

static latchwork_fabric *knit(const latchwork_move *moves, size_t count) {
  latchwork_bed bed = LATCHWORK_BED_INIT;
  latchwork_fabric *fabric = NULL;
  bed.leftmost = -3;
  bed.columns = 6;
  OK(latchwork_simulate(&bed, moves, count, NULL, &fabric, NULL));
  return fabric;
}

static void spoiled_moves_make_another_fabric(void) {
  latchwork_move *moves;
  latchwork_fabric *fabric;
  latchwork_fault fault = LATCHWORK_FAULT_INIT;
  latchwork_grid *back = NULL;
  latchwork_crossing crossing;
  size_t count = 0, faults = 99, i, first_back = 0, lift = 0;
  int64_t loops = 0;
  int32_t equal = 0;
  checking = "moves";
  OK(latchwork_plan_moves(plan, NULL, 0, &count, NULL));
  moves = malloc(count * sizeof *moves);
  if (moves == NULL) return;
  OK(latchwork_plan_moves(plan, moves, count, NULL, NULL));

  fabric = knit(moves, count);
  OK(latchwork_fabric_faults(fabric, &faults, NULL));
  OK(latchwork_fabric_grid(fabric, &back, NULL));
  OK(latchwork_fabric_loops(fabric, &loops, NULL));
  CHECK(faults == 0 && back != NULL);
  CHECK(loops == 4 * 6 + 2); /* each row's six by the carriage, two rungs again by hand */
  OK(latchwork_grid_equal(grid, back, &equal, NULL));
  CHECK(equal == 1);
  latchwork_grid_destroy(back);
  latchwork_fabric_destroy(fabric);

  /* The two groups put back in the other order lean the other way. */
  for (i = count; i-- > 0;) {
    if (moves[i].kind == LATCHWORK_MOVE_KIND_PUT_BACK) first_back = i;
    if (moves[i].kind == LATCHWORK_MOVE_KIND_LIFT) lift = i;
  }
  CHECK(moves[first_back + 1].kind == LATCHWORK_MOVE_KIND_PUT_BACK);
  {
    const latchwork_move other = moves[first_back];
    moves[first_back] = moves[first_back + 1];
    moves[first_back + 1] = other;
  }
  fabric = knit(moves, count);
  OK(latchwork_fabric_grid(fabric, &back, NULL));
  CHECK(back != NULL);
  OK(latchwork_grid_crossings(back, &crossing, 1, NULL, NULL));
  CHECK(crossing.row == 2 && crossing.column == 1 && crossing.lean == LATCHWORK_LEAN_LEFT);
  latchwork_grid_destroy(back);
  latchwork_fabric_destroy(fabric);

  /* A group that was never lifted cannot be put back. */
  memmove(&moves[lift], &moves[lift + 1], (count - lift - 1) * sizeof *moves);
  fabric = knit(moves, count - 1);
  OK(latchwork_fabric_faults(fabric, &faults, NULL));
  OK(latchwork_fabric_grid(fabric, &back, NULL));
  CHECK(faults >= 1 && back == NULL);
  OK(latchwork_fabric_fault(fabric, 0, &fault, NULL));
  CHECK(fault.move >= (int64_t)lift && fault.message[0] != '\0');
  CHECK(latchwork_fabric_fault(fabric, faults, &fault, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  latchwork_fabric_destroy(fabric);

  moves[0].kind = 99;
  {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    latchwork_bed bed = LATCHWORK_BED_INIT;
    fabric = (latchwork_fabric*)moves;
    CHECK(latchwork_simulate(&bed, moves, 1, NULL, &fabric, &error) == LATCHWORK_E_BAD_ARGUMENT && fabric == NULL);
    CHECK(strcmp(error.field, "moves[0].kind") == 0);
  }
  free(moves);
}

static void a_plan_for_another_chart_is_not_verified(void) {
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_grid *other = NULL;
  checking = "verify";
  OK(latchwork_grid_verify(grid, plan, NULL, &verification, NULL));
  CHECK(verification.verified == 1 && verification.row == 0 && verification.column == -1);
  CHECK(strcmp(verification.message, "verified") == 0 && verification.loops == 26);
  CHECK(verification.wale == -1 && verification.fault == 0 && verification.fault_move == -1);
  CHECK(verification.expected[0] == '\0' && verification.found[0] == '\0' && verification.fault_message[0] == '\0');
  CHECK(verification.needless == 0 && verification.needless_move == -1 && verification.needless_row == 0);
  CHECK(verification.needless_column == -1 && verification.needless_message[0] == '\0');
  OK(latchwork_grid_copy(grid, &other, NULL));
  OK(latchwork_grid_set(other, 4, 5, LATCHWORK_CELL_PURL, NULL));
  OK(latchwork_grid_verify(other, plan, NULL, &verification, NULL));
  CHECK(verification.verified == 0 && verification.row == 4 && verification.column == 5);
  CHECK(verification.wale == 5 && verification.fault == 0);
  CHECK(strcmp(verification.expected, "purl") == 0 && strcmp(verification.found, "knit") == 0);
  latchwork_grid_destroy(other);
  OK(latchwork_grid_create(4, 5, &other, NULL));
  CHECK(latchwork_grid_verify(other, plan, NULL, &verification, NULL) == LATCHWORK_E_SIZE_MISMATCH);
  latchwork_grid_destroy(other);
}

static void a_panel_wider_than_the_bed_is_infeasible(void) {
  latchwork_grid *wide = NULL;
  latchwork_plan *none = NULL;
  latchwork_findings *findings = NULL;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  char text[1024];
  size_t needed = 0;
  size_t count = 0;
  int32_t status = -1;
  checking = "findings";
  OK(latchwork_grid_create(2, 201, &wide, NULL));
  OK(latchwork_grid_plan(wide, &machine, NULL, NULL, &none, NULL));
  OK(latchwork_plan_status(none, &status, NULL));
  CHECK(status == LATCHWORK_PLAN_STATUS_INFEASIBLE);
  OK(latchwork_plan_findings(none, &findings, NULL));
  OK(latchwork_findings_count(findings, &count, NULL));
  CHECK(count == 1);
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_OFF_BED && finding.severity == LATCHWORK_SEVERITY_ERROR);
  CHECK(finding.message[0] != '\0' && finding.suggestion[0] != '\0');
  OK(latchwork_findings_message(findings, 0, text, sizeof text, &needed, NULL));
  CHECK(needed == strlen(text) + 1 && strncmp(text, finding.message, sizeof finding.message - 4) == 0);
  OK(latchwork_findings_suggestion(findings, 0, text, sizeof text, &needed, NULL));
  CHECK(needed == strlen(text) + 1 && strncmp(text, finding.suggestion, sizeof finding.suggestion - 4) == 0);
  CHECK(latchwork_findings_message(findings, 1, text, sizeof text, NULL, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(latchwork_findings_suggestion(findings, 0, text, 3, &needed, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(latchwork_findings_get(findings, 1, &finding, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  latchwork_findings_destroy(findings);
  latchwork_plan_destroy(none);
  latchwork_grid_destroy(wide);
}

static void callbacks_are_told_and_can_stop(void) {
  latchwork_plan_options plan_options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_watch_options options = LATCHWORK_WATCH_OPTIONS_INIT;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_certificate *certificate = NULL;
  latchwork_certificate_check check = LATCHWORK_CERTIFICATE_CHECK_INIT;
  latchwork_bed bed = LATCHWORK_BED_INIT;
  latchwork_move pass = LATCHWORK_MOVE_INIT;
  latchwork_fabric *fabric = NULL;
  latchwork_plan *told = NULL;
  latchwork_grid *tall = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  struct heard heard = {0, 0, 0, 0.0};
  const struct heard silent = {0, 0, 0, 0.0};
  int32_t equal = 0, status = -1;
  checking = "callbacks";
  plan_options.progress = hear;
  plan_options.user_data = &heard;
  OK(latchwork_grid_plan(grid, &machine, NULL, &plan_options, &told, NULL));
  CHECK(heard.calls >= 1 && !heard.wrong && heard.share == 1.0);
  OK(latchwork_plan_equal(plan, told, &equal, NULL)); /* being told changes nothing */
  CHECK(equal == 1);
  latchwork_plan_destroy(told);
  plan_options.work_limit = -1;
  CHECK(latchwork_grid_plan(grid, &machine, NULL, &plan_options, &told, &error) == LATCHWORK_E_BAD_ARGUMENT);
  plan_options.work_limit = 0;
  plan_options.memory_limit = 1; /* enough for one schedule at a time, which this panel does not need more of */
  plan_options.time_limit_ms = 60000;
  OK(latchwork_grid_plan(grid, &machine, NULL, &plan_options, &told, NULL));
  OK(latchwork_plan_equal(plan, told, &equal, NULL));
  CHECK(equal == 1);
  latchwork_plan_destroy(told);
  plan_options.memory_limit = 0;
  plan_options.time_limit_ms = -1;
  CHECK(latchwork_grid_plan(grid, &machine, NULL, &plan_options, &told, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "options.time_limit_ms") == 0);
  plan_options.time_limit_ms = 0;

  /* Stopped at its first call, the search for a rhythm has tried only its first. */
  OK(latchwork_grid_repeated_up(grid, 3, 0, &tall, NULL));
  heard = silent;
  OK(latchwork_grid_plan_regular(tall, &machine, NULL, &plan_options, &told, NULL));
  CHECK(heard.calls > 1 && !heard.wrong);
  OK(latchwork_plan_status(told, &status, NULL));
  CHECK(status == LATCHWORK_PLAN_STATUS_OPTIMAL);
  latchwork_plan_destroy(told);
  heard = silent;
  heard.stop_at = 1;
  OK(latchwork_grid_plan_regular(tall, &machine, NULL, &plan_options, &told, NULL));
  CHECK(heard.calls == 2); /* and what it gives */
  OK(latchwork_plan_status(told, &status, NULL));
  CHECK(status != LATCHWORK_PLAN_STATUS_OPTIMAL);
  latchwork_plan_destroy(told);
  latchwork_grid_destroy(tall);

  options.progress = hear;
  options.user_data = &heard;
  heard = silent;
  OK(latchwork_grid_verify(grid, plan, &options, &verification, NULL));
  CHECK(verification.verified == 1 && heard.calls >= 1 && !heard.wrong && heard.share == 1.0);
  heard = silent;
  heard.stop_at = 1;
  CHECK(latchwork_grid_verify(grid, plan, &options, &verification, &error) == LATCHWORK_E_CANCELLED);
  CHECK(error.code == LATCHWORK_E_CANCELLED && heard.calls == 1);
  heard = silent;
  heard.stop_at = 1;
  fabric = (latchwork_fabric*)&error;
  CHECK(latchwork_simulate(&bed, &pass, 1, &options, &fabric, &error) == LATCHWORK_E_CANCELLED && fabric == NULL);

  OK(latchwork_grid_certify(grid, &machine, NULL, 81500, NULL, &certificate, NULL));
  heard = silent;
  OK(latchwork_grid_check_certificate(grid, &machine, NULL, certificate, &options, &check, NULL));
  CHECK(check.holds == 1 && heard.calls >= 2 && !heard.wrong && heard.share == 1.0);
  heard = silent;
  heard.stop_at = 1;
  CHECK(latchwork_grid_check_certificate(grid, &machine, NULL, certificate, &options, &check, &error) ==
        LATCHWORK_E_CANCELLED);
  CHECK(error.code == LATCHWORK_E_CANCELLED && heard.calls == 1);
  latchwork_certificate_destroy(certificate);
}

static void the_plan_is_certified(void) {
  /* The one wale with a purl is re-formed at the forced stop after row 2, for 12 s and two rungs, 3 s and 4.5 s: 19.5
     s, times 6 = rows + 2 units in a millisecond. */
  latchwork_certificate *certificate = NULL, *wrong = NULL;
  latchwork_certificate_check check = LATCHWORK_CERTIFICATE_CHECK_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_wale_class one;
  latchwork_stop_price price;
  int32_t rows = 0, columns = 0, forced = 0, wale = -1;
  int64_t bound = 0, unit = 0;
  size_t needed = 0;
  static const char claim[] =
      "{\"format\": \"latchwork-certificate\", \"version\": 1, \"rows\": 4, \"columns\": 6, \"bound_ms\": 82000,\n"
      " \"unit\": 6, \"forced\": [2], \"classes\": [{\"wales\": [2], \"least\": 117001}]}\n";
  checking = "certificate";
  OK(latchwork_grid_certify(grid, &machine, NULL, 81500, NULL, &certificate, NULL));
  OK(latchwork_certificate_rows(certificate, &rows, NULL));
  OK(latchwork_certificate_columns(certificate, &columns, NULL));
  OK(latchwork_certificate_bound_ms(certificate, &bound, NULL));
  OK(latchwork_certificate_unit(certificate, &unit, NULL));
  CHECK(rows == 4 && columns == 6 && bound == 81500 && unit == 6);
  OK(latchwork_certificate_forced(certificate, &forced, 1, &needed, NULL));
  CHECK(needed == 1 && forced == 2);
  OK(latchwork_certificate_classes(certificate, &one, 1, &needed, NULL));
  CHECK(needed == 1 && one.wales == 1 && one.prices == 1 && one.least == 117000);
  OK(latchwork_certificate_wales(certificate, 0, &wale, 1, NULL, NULL));
  OK(latchwork_certificate_prices(certificate, 0, &price, 1, NULL, NULL));
  CHECK(wale == 2 && price.row == 1 && price.price <= 90000 && price.price >= 27000);
  OK(latchwork_certificate_branches(certificate, NULL, 0, &needed, NULL));
  CHECK(needed == 0);
  CHECK(latchwork_certificate_wales(certificate, 1, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "index") == 0);
  OK(latchwork_grid_check_certificate(grid, &machine, NULL, certificate, NULL, &check, NULL));
  CHECK(check.holds == 1 && check.bound_ms == 81500 && strcmp(check.message, "holds") == 0);
  CHECK(check.row == 0 && check.column == -1 && check.field[0] == '\0');

  OK(latchwork_effort_default(&effort, NULL));
  effort.rung_purl -= 500; /* then a plan takes less, and what was proven is not true */
  OK(latchwork_grid_check_certificate(grid, &machine, &effort, certificate, NULL, &check, NULL));
  CHECK(check.holds == 0 && check.bound_ms == 0 && strcmp(check.field, "classes[0].least") == 0);
  OK(latchwork_read_certificate(claim, strlen(claim), &wrong, NULL));
  OK(latchwork_grid_check_certificate(grid, &machine, NULL, wrong, NULL, &check, NULL));
  CHECK(check.holds == 0 && strcmp(check.field, "classes[0].least") == 0);
  latchwork_certificate_destroy(wrong);
  CHECK(latchwork_grid_certify(grid, &machine, NULL, -1, NULL, &wrong, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "total_ms") == 0);
  latchwork_certificate_destroy(certificate);
}

/* What a callback was told as the best. */
struct bests {
  int calls;
  int wrong; /* it rose, or was there and no more */
  int64_t last;
};

static int32_t hear_best(const latchwork_progress *progress, void *user_data) {
  struct bests *bests = user_data;
  if (progress->best_ms < 0 ? bests->last >= 0 : bests->last >= 0 && progress->best_ms > bests->last) bests->wrong = 1;
  bests->last = progress->best_ms;
  ++bests->calls;
  return 0;
}

static void the_best_that_is_told_is_a_plan(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  latchwork_grid *tall = NULL;
  latchwork_plan *told = NULL;
  struct bests bests = {0, 0, -1};
  int64_t total = -1;
  checking = "best";
  conditions.max_kinds = 2;
  options.conditions = &conditions;
  options.progress = hear_best;
  options.user_data = &bests;
  options.work_limit = 1; /* what is cheap to have is there before anything is searched for */
  OK(latchwork_grid_repeated_up(grid, 3, 0, &tall, NULL));
  OK(latchwork_grid_plan(tall, &machine, NULL, &options, &told, NULL));
  OK(latchwork_plan_total_ms(told, &total, NULL));
  CHECK(bests.calls >= 1 && !bests.wrong && bests.last == total);
  latchwork_plan_destroy(told);
  latchwork_grid_destroy(tall);
}

static void what_binds_all_plans_binds_those_under_conditions(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  const latchwork_kept_rhythm any_rhythm = {1, 2, 2, 0, 0};
  latchwork_grid *tall = NULL;
  latchwork_plan *plain = NULL, *kept = NULL;
  int64_t of_all = 0, bound = 0, total = 0;
  checking = "bounds";
  options.work_limit = 1;
  OK(latchwork_grid_repeated_up(grid, 12, 0, &tall, NULL));
  OK(latchwork_grid_plan(tall, &machine, NULL, &options, &plain, NULL));
  OK(latchwork_plan_bound_ms(plain, &of_all, NULL));
  conditions.rhythms = &any_rhythm;
  conditions.rhythms_count = 1;
  options.conditions = &conditions;
  OK(latchwork_grid_plan(tall, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_bound_ms(kept, &bound, NULL));
  OK(latchwork_plan_total_ms(kept, &total, NULL));
  CHECK(of_all > 0 && of_all <= bound && bound <= total);
  latchwork_plan_destroy(kept);
  latchwork_plan_destroy(plain);
  latchwork_grid_destroy(tall);
}

static void conditions_are_kept_or_told(void) {
  /* On the right alone: the crossing stands after an even row, so nothing changes. Re-forms one row deep: the purl of
     row 1 wants a stop of its own after row 1, 15 s more, and its knit rung is saved, 4.5 s. Three rows apart: a stop
     after row 1 is then too near. */
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  const latchwork_kept_rhythm rhythm = {1, 2, 2, 2, 1}, any_rhythm = {1, 2, 2, 0, 0};
  latchwork_plan *kept = NULL;
  latchwork_findings *findings = NULL;
  latchwork_finding finding = LATCHWORK_FINDING_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  int64_t plain = 0, total = 0;
  int32_t equal = 0, status = -1, kinds[2] = {-1, -1};
  size_t needed = 0;
  checking = "conditions";
  options.conditions = &conditions;
  OK(latchwork_plan_total_ms(plan, &plain, NULL));
  conditions.carriage_right_only = 1;
  OK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_equal(plan, kept, &equal, NULL));
  CHECK(equal == 1);
  latchwork_plan_destroy(kept);
  conditions.max_depth = 1;
  conditions.carriage_right_only = 0;
  OK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_total_ms(kept, &total, NULL));
  CHECK(total == plain + 15000 - 4500);
  OK(latchwork_plan_stop_kinds(kept, kinds, 2, &needed, NULL));
  CHECK(needed == 2 && kinds[0] == 0 && kinds[1] == 1);
  latchwork_plan_destroy(kept);
  conditions.max_kinds = 1;
  OK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_findings(kept, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_TOO_MANY_KINDS);
  OK(latchwork_findings_get(findings, 1, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_TOO_DEEP);
  CHECK(strstr(finding.message, "only together with max_kinds") != NULL);
  latchwork_findings_destroy(findings);
  latchwork_plan_destroy(kept);
  conditions.max_kinds = 0;
  conditions.rows_apart = 3;
  OK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_status(kept, &status, NULL));
  CHECK(status == LATCHWORK_PLAN_STATUS_INFEASIBLE);
  OK(latchwork_plan_findings(kept, &findings, NULL));
  OK(latchwork_findings_get(findings, 0, &finding, NULL));
  CHECK(finding.code == LATCHWORK_FINDING_CODE_STOPS_TOO_NEAR && finding.row == 1 && finding.column == 2);
  latchwork_findings_destroy(findings);
  latchwork_plan_destroy(kept);
  conditions.max_depth = 0;
  conditions.rows_apart = 0;
  conditions.rhythms = &rhythm;
  conditions.rhythms_count = 1;
  OK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_total_ms(kept, &total, NULL));
  CHECK(total == plain + 15000 - 4500);
  latchwork_plan_destroy(kept);
  conditions.rhythms = &any_rhythm;
  OK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, NULL));
  OK(latchwork_plan_total_ms(kept, &total, NULL));
  CHECK(total == plain);
  latchwork_plan_destroy(kept);
  conditions.forced_exempt = 2;
  CHECK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "options.conditions.forced_exempt") == 0);
  conditions.forced_exempt = 0;
  conditions.rhythms = NULL;
  CHECK(latchwork_grid_plan(grid, &machine, NULL, &options, &kept, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "options.conditions.rhythms") == 0);
}

static void work_is_split_into_sessions(void) {
  /* Two plain rows of 4 s each and what lies between: the whole in one hour, and by kind of work. */
  latchwork_work_times times = LATCHWORK_WORK_TIMES_INIT;
  latchwork_session_options options = LATCHWORK_SESSION_OPTIONS_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  latchwork_session sessions[4];
  latchwork_rest rests[4];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  int64_t total = 0;
  int32_t rows = 0;
  size_t needed = 0;
  checking = "sessions";
  OK(latchwork_plan_total_ms(plan, &total, NULL));
  OK(latchwork_plan_rows(plan, &rows, NULL));
  OK(latchwork_plan_work_times(plan, NULL, 1, &times, NULL));
  CHECK(times.total_ms == total && times.carriage_ms == 4000 * (int64_t)rows && times.holds_ms == 0);
  CHECK(times.stops_ms + times.reforms_ms + times.crossings_ms + times.carriage_ms == total);
  OK(latchwork_plan_work_times(plan, NULL, 3, &times, NULL));
  CHECK(times.total_ms == 3 * total);
  CHECK(latchwork_plan_work_times(plan, NULL, 0, &times, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "pieces") == 0);
  OK(latchwork_session_options_default(&options, NULL));
  CHECK(options.session_ms == 3600000 && options.rest_ms == 1200000 && options.from_row == 0);
  OK(latchwork_plan_sessions(plan, NULL, &options, sessions, 4, &needed, NULL));
  CHECK(needed == 1 && sessions[0].from_row == 0 && sessions[0].to_row == rows && sessions[0].work_ms == total);
  OK(latchwork_plan_rests(plan, NULL, NULL, rests, 4, &needed, NULL));
  CHECK(needed == 0);
  /* A crossing that takes 50 s, and rows of 20 s: a minute is over at its stop, and the hands rest there. */
  OK(latchwork_effort_default(&effort, NULL));
  effort.row = 20000;
  effort.crossing = 50000;
  options.session_ms = 60000;
  OK(latchwork_plan_sessions(plan, &effort, &options, sessions, 4, &needed, NULL));
  CHECK(needed == 3 && sessions[0].from_row == 0 && sessions[2].to_row == rows);
  CHECK(sessions[0].to_row == sessions[1].from_row && sessions[1].to_row == sessions[2].from_row);
  CHECK(sessions[0].work_ms >= 60000 || sessions[1].work_ms >= 60000);
  options.session_ms = 3600000;
  options.rest_ms = 60000;
  OK(latchwork_plan_rests(plan, &effort, &options, rests, 4, &needed, NULL));
  CHECK(needed == 1 && rests[0].session == 0 && rests[0].row > 0 && rests[0].row < rows);
  CHECK(rests[0].hand_ms >= 60000);
  options.rest_ms = 0;
  OK(latchwork_plan_rests(plan, &effort, &options, rests, 4, &needed, NULL));
  CHECK(needed == 0);
  options.session_ms = 1;
  CHECK(latchwork_plan_sessions(plan, NULL, &options, sessions, 4, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "session_ms") == 0);
}

/* Every other cell is not knitted, so that each is a wale, and those of each row are a kind. */
static void too_many_kinds_of_wale_are_refused_at_the_first(void) {
  const int32_t rows = 1 << 13;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_grid *lace = NULL;
  latchwork_plan *none = NULL;
  int32_t row, column;
  checking = "too many kinds of wale";
  OK(latchwork_grid_create(rows, 8, &lace, NULL));
  for (row = 1; row <= rows; ++row) {
    for (column = 0; column < 8; ++column) {
      const int32_t cell = (row + column) % 2 == 0 ? LATCHWORK_CELL_NONE : LATCHWORK_CELL_PURL;
      OK(latchwork_grid_set(lace, row, column, cell, NULL));
    }
  }
  CHECK(latchwork_grid_plan(lace, &machine, NULL, NULL, &none, &error) == LATCHWORK_E_TOO_LARGE);
  CHECK(none == NULL && strcmp(error.field, "grid") == 0 && error.row == (1 << 25) / (rows + 1) + 1);
  latchwork_grid_destroy(lace);
}

int main(void) {
  checking = "make";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_grid_from_text(sample, strlen(sample), &grid, NULL));
  OK(latchwork_grid_plan(grid, &machine, NULL, NULL, &plan, NULL));
  the_plan_costs_what_its_work_costs();
  the_group_put_back_first_shows_in_front();
  spoiled_moves_make_another_fabric();
  a_plan_for_another_chart_is_not_verified();
  a_panel_wider_than_the_bed_is_infeasible();
  callbacks_are_told_and_can_stop();
  work_is_split_into_sessions();
  the_plan_is_certified();
  conditions_are_kept_or_told();
  the_best_that_is_told_is_a_plan();
  what_binds_all_plans_binds_those_under_conditions();
  too_many_kinds_of_wale_are_refused_at_the_first();
  latchwork_plan_destroy(plan);
  latchwork_grid_destroy(grid);
  return checks_told();
}
