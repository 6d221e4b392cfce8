/* What to choose from, through the C ABI, against figures worked out by hand: the default efforts but for stops of one
   second, so that two purls in neighbouring columns are done at a stop each. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "program.h"

/* A purl in row 2 of column 1 and one in row 4 of column 2. */
static const char sample[] = "kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk\n";

static latchwork_machine machine = LATCHWORK_MACHINE_INIT;
static latchwork_effort effort = LATCHWORK_EFFORT_INIT;
static latchwork_grid *grid = NULL;
static latchwork_plan *plan = NULL;

static void both_rhythms_are_told(void) {
  latchwork_two_rhythms rhythms = LATCHWORK_TWO_RHYTHMS_INIT;
  latchwork_plan *two = NULL;
  int64_t total = 0, plain = 0;
  checking = "two rhythms";
  OK(latchwork_grid_plan_two_rhythms(grid, &machine, &effort, NULL, &rhythms, &two, NULL));
  CHECK(rhythms.crossings_every == 0 && rhythms.crossings_first == 0);
  CHECK(rhythms.reforms_every == 2 && rhythms.reforms_first == 2); /* stops after rows 2 and 4 */
  OK(latchwork_plan_total_ms(two, &total, NULL));
  OK(latchwork_plan_total_ms(plan, &plain, NULL));
  CHECK(total == plain);
  latchwork_plan_destroy(two);
}

static void rhythms_keep_conditions(void) {
  latchwork_two_rhythms rhythms = LATCHWORK_TWO_RHYTHMS_INIT;
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  const int32_t closed[3] = {4, 5, 6};
  latchwork_plan *kept = NULL;
  int64_t total = 0, plain = 0;
  int32_t status = -1;
  checking = "rhythms under conditions";
  options.conditions = &conditions;
  conditions.closed_rows = closed;
  conditions.closed_rows_count = 1;
  OK(latchwork_plan_total_ms(plan, &plain, NULL));
  /* After rows 2 and 5: the upper purl takes a knit rung along. */
  OK(latchwork_grid_plan_regular(grid, &machine, &effort, &options, &kept, NULL));
  OK(latchwork_plan_total_ms(kept, &total, NULL));
  CHECK(total == plain + 4500);
  latchwork_plan_destroy(kept);
  OK(latchwork_grid_plan_two_rhythms(grid, &machine, &effort, &options, &rhythms, &kept, NULL));
  OK(latchwork_plan_total_ms(kept, &total, NULL));
  CHECK(total == plain + 4500 && rhythms.reforms_every == 3 && rhythms.reforms_first == 2);
  latchwork_plan_destroy(kept);
  conditions.closed_rows_count = 3; /* all that serve the upper purl */
  OK(latchwork_grid_plan_regular(grid, &machine, &effort, &options, &kept, NULL));
  OK(latchwork_plan_status(kept, &status, NULL));
  CHECK(status == LATCHWORK_PLAN_STATUS_INFEASIBLE);
  latchwork_plan_destroy(kept);
}

static void conditions_have_prices(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  latchwork_condition_price prices[3];
  const int32_t closed[1] = {2};
  size_t needed = 0;
  checking = "prices";
  options.conditions = &conditions;
  OK(latchwork_grid_condition_prices(grid, &machine, &effort, &options, NULL, 0, &needed, NULL));
  CHECK(needed == 0);
  conditions.max_kinds = 1;
  conditions.closed_rows = closed;
  conditions.closed_rows_count = 1;
  OK(latchwork_grid_condition_prices(grid, &machine, &effort, &options, prices, 3, &needed, NULL));
  CHECK(needed == 3);
  /* One kind: both purls at one stop, two knit rungs, a stop saved. Row 2 closed: one knit rung. */
  CHECK(prices[0].condition == LATCHWORK_CONDITION_MAX_KINDS && prices[0].price_ms == 9000 - 1000);
  CHECK(prices[1].condition == LATCHWORK_CONDITION_CLOSED_ROWS && prices[1].price_ms == 4500);
  CHECK(prices[1].status == LATCHWORK_PLAN_STATUS_OPTIMAL && prices[1].least_price_ms == 4500);
  CHECK(prices[1].most_price_ms == 4500);
  CHECK(prices[2].condition == LATCHWORK_CONDITION_ALL && prices[2].price_ms == 8000);
}

static void a_front_gives_its_plans(void) {
  latchwork_front *front = NULL;
  latchwork_front_point points[2];
  latchwork_plan *last = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  int32_t proven = 0, equal = 0;
  size_t needed = 0;
  checking = "front";
  OK(latchwork_grid_plan_front(grid, &machine, &effort, NULL, &front, NULL));
  OK(latchwork_front_points(front, points, 2, &needed, NULL));
  CHECK(needed == 2 && points[0].kinds == 1 && points[1].kinds == 2);
  CHECK(points[0].total_ms == points[1].total_ms + 8000 && points[0].bound_ms == points[0].total_ms);
  CHECK(points[0].status == LATCHWORK_PLAN_STATUS_OPTIMAL);
  OK(latchwork_front_fewest_proven(front, &proven, NULL));
  CHECK(proven == 1);
  OK(latchwork_front_point_plan(front, 1, &last, NULL));
  OK(latchwork_plan_equal(last, plan, &equal, NULL));
  CHECK(equal == 1);
  latchwork_plan_destroy(last);
  CHECK(latchwork_front_point_plan(front, 2, &last, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "index") == 0);
  latchwork_front_destroy(front);
}

static int32_t stop_at_once(const latchwork_progress *progress, void *user_data) {
  (void)progress;
  ++*(int*)user_data;
  return 1;
}

static void a_stopped_front_proves_nothing(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_front *front = NULL;
  latchwork_front_point points[3];
  latchwork_grid *three = NULL;
  int32_t proven = -1;
  int heard = 0;
  size_t needed = 0;
  checking = "a stopped front";
  OK(latchwork_grid_from_text("kpkp\nkk.p\npk.k\n", 15, &three, NULL));
  OK(latchwork_grid_plan_front(three, &machine, NULL, NULL, &front, NULL));
  OK(latchwork_front_points(front, points, 3, &needed, NULL));
  CHECK(points[0].kinds == 2);
  OK(latchwork_front_fewest_proven(front, &proven, NULL));
  CHECK(proven == 1);
  latchwork_front_destroy(front);
  options.progress = stop_at_once;
  options.user_data = &heard;
  OK(latchwork_grid_plan_front(three, &machine, NULL, &options, &front, NULL));
  CHECK(heard > 0);
  OK(latchwork_front_points(front, points, 3, &needed, NULL));
  CHECK(needed == 1 && points[0].kinds == 2); /* as few stops as serve all */
  OK(latchwork_front_fewest_proven(front, &proven, NULL));
  CHECK(proven == 0);
  latchwork_front_destroy(front);
  latchwork_grid_destroy(three);
}

static void stops_say_why_they_are_there(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  latchwork_stop_reason reasons[2];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_period period = LATCHWORK_PERIOD_INIT;
  latchwork_plan *tall_plan = NULL;
  latchwork_grid *tall = NULL;
  size_t needed = 0;
  checking = "reasons";
  OK(latchwork_grid_stop_reasons(grid, &machine, &effort, plan, NULL, reasons, 2, &needed, NULL));
  CHECK(needed == 2 && reasons[0].row == 2 && reasons[1].row == 4);
  CHECK(reasons[0].cause == LATCHWORK_STOP_CAUSE_SAVING && reasons[0].saves_ms == 4500);
  CHECK(reasons[0].beside_ms == 9000 - 1000 && reasons[0].message[0] != '\0');
  CHECK(reasons[1].beside_ms == -1); /* the stop after row 2 lies below it */
  checking = "reasons under conditions";
  options.conditions = &conditions;
  conditions.max_depth = 1;
  OK(latchwork_grid_stop_reasons(grid, &machine, &effort, plan, &options, reasons, 2, &needed, NULL));
  CHECK(reasons[0].cause == LATCHWORK_STOP_CAUSE_HAND_CELLS && reasons[0].beside_ms == -1);
  CHECK(strstr(reasons[0].message, "at no other stop under the conditions") != NULL);
  /* Each alone leaves a plan, and both none: then no stop has a reason. */
  conditions.rows_apart = 3;
  CHECK(latchwork_grid_stop_reasons(grid, &machine, &effort, plan, &options, reasons, 2, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "plan") == 0);
  checking = "period";
  OK(latchwork_grid_repeated_up(grid, 5, 0, &tall, NULL));
  OK(latchwork_grid_plan(tall, &machine, &effort, NULL, &tall_plan, NULL));
  OK(latchwork_plan_period(tall_plan, &period, NULL));
  CHECK(period.rows == 6 && period.stops == 2 && period.times == 5);
  latchwork_plan_destroy(tall_plan);
  latchwork_grid_destroy(tall);
}

static void costs_may_move_so_far(void) {
  latchwork_tolerance tolerances[12];
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_plan *other = NULL;
  size_t needed = 0;
  checking = "tolerances";
  OK(latchwork_grid_plan_tolerances(grid, &machine, &effort, plan, NULL, tolerances, 12, &needed, NULL));
  CHECK(needed == 12 && tolerances[0].term == LATCHWORK_EFFORT_TERM_STOP &&
        tolerances[11].term == LATCHWORK_EFFORT_TERM_ROW);
  /* A stop more against two knit rungs of 4.5 s. */
  CHECK(tolerances[0].value_ms == 1000 && tolerances[0].least_ms == 0 && tolerances[0].most_ms == 9000);
  CHECK(tolerances[0].least_exact == 1 && tolerances[0].most_exact == 1 && tolerances[0].proven == 1);
  OK(latchwork_grid_plan(grid, &machine, NULL, NULL, &other, NULL));
  CHECK(latchwork_grid_plan_tolerances(grid, &machine, &effort, other, NULL, NULL, 0, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "plan") == 0);
  latchwork_plan_destroy(other);
}

/* Stops and rungs for nothing, so that a plan that minds no condition takes as long as one that does. */
static void a_plan_that_breaks_conditions_has_no_tolerances(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  const latchwork_crossing crossing = {4, 2, 1, 0, 1, LATCHWORK_LEAN_RIGHT, LATCHWORK_CENTRE_BETWEEN};
  const latchwork_kept_rhythm thirds = {3, 1, 1, 3, 6};
  latchwork_effort nothing = effort;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_tolerance tolerances[12];
  latchwork_condition_price price;
  latchwork_grid *six = NULL;
  latchwork_plan *near = NULL, *least = NULL;
  size_t needed = 0;
  checking = "tolerances under conditions";
  OK(latchwork_grid_from_text("kkkkkk\nkkkkkk\nkkkkkk\nkpkkkk\nkkkkkk\nkkkkkk\n", 42, &six, NULL));
  OK(latchwork_grid_cross(six, &crossing, NULL));
  nothing.stop = 0;
  OK(latchwork_grid_plan(six, &machine, &nothing, NULL, &near, NULL)); /* stops after rows 3 and 4 */
  nothing.drop = nothing.rung_knit = 0;
  conditions.rows_apart = 3;
  conditions.forced_exempt = 1;
  options.conditions = &conditions;
  OK(latchwork_grid_plan(six, &machine, &nothing, &options, &least, NULL));
  CHECK(latchwork_grid_plan_tolerances(six, &machine, &nothing, near, &options, NULL, 0, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "plan") == 0 && strstr(error.message, "nearer than 3 rows") != NULL);
  OK(latchwork_grid_plan_tolerances(six, &machine, &nothing, least, &options, tolerances, 12, &needed, NULL));
  CHECK(needed == 12 && tolerances[0].proven == 1);
  latchwork_plan_destroy(least);
  conditions.rows_apart = 1; /* asks nothing */
  OK(latchwork_grid_condition_prices(six, &machine, &nothing, &options, &price, 1, &needed, NULL));
  CHECK(needed == 0);
  conditions.rhythms = &thirds;
  conditions.rhythms_count = 1;
  OK(latchwork_grid_plan(six, &machine, &nothing, &options, &least, NULL));
  CHECK(latchwork_grid_plan_tolerances(six, &machine, &nothing, near, &options, NULL, 0, &needed, &error) ==
        LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "plan") == 0 && strstr(error.message, "their rhythm, every 3 rows from row 6") != NULL);
  OK(latchwork_grid_plan_tolerances(six, &machine, &nothing, least, &options, tolerances, 12, &needed, NULL));
  CHECK(needed == 12 && tolerances[0].proven == 1);
  latchwork_plan_destroy(near);
  latchwork_plan_destroy(least);
  latchwork_grid_destroy(six);
}

/* A panel too large to be read once the call is stopped. */
static void a_large_panel_may_have_no_certificate(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_certificate *certificate = (latchwork_certificate*)&options;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_grid *purl = NULL, *broad = NULL, *large = NULL;
  checking = "a large certificate";
  OK(latchwork_grid_from_text("kp\npk\n", 6, &purl, NULL));
  OK(latchwork_grid_repeated_across(purl, 100, 0, &broad, NULL));
  OK(latchwork_grid_repeated_up(broad, 3000, 0, &large, NULL));
  options.time_limit_ms = 1;
  CHECK(latchwork_grid_certify(large, &machine, NULL, 1, &options, &certificate, &error) == LATCHWORK_E_CANCELLED);
  CHECK(certificate == NULL && strcmp(error.field, "options") == 0);
  latchwork_grid_destroy(purl);
  latchwork_grid_destroy(broad);
  latchwork_grid_destroy(large);
}

/* A plan as a file could hold it: `rows` rows of 4 stitches, of a status and with these stops. */
static latchwork_plan *plan_of(const char *rows, const char *status, const char *stops) {
  static const char *const form =
      "{\"format\": \"latchwork-plan\", \"version\": 1, \"rows\": %s, \"columns\": 4, "
      "\"leftmost\": \"L2\", \"carriage_starts_right\": true, \"status\": \"%s\", "
      "\"total_ms\": 0, \"bound_ms\": 0, \"columns_on\": [], \"stops\": [%s]}";
  char text[1200];
  latchwork_plan *made = NULL;
  sprintf(text, form, rows, status, stops);
  OK(latchwork_read_plan(text, strlen(text), &made, NULL));
  return made;
}

#define HOLD_AFTER(row) "{\"row\": " #row ", \"carriage_right\": true, \"effort_ms\": 0, \"holds\": [\"L1\"]}"

/* Six rows with holds after rows 2, 4 and 6, of a status: a period of two rows, for a plan that is one. */
static int32_t period_of_holds(const char *status) {
  latchwork_period period = LATCHWORK_PERIOD_INIT;
  latchwork_plan *made = plan_of("6", status, HOLD_AFTER(2) ", " HOLD_AFTER(4) ", " HOLD_AFTER(6));
  OK(latchwork_plan_period(made, &period, NULL));
  latchwork_plan_destroy(made);
  return period.rows;
}

static void plans_whose_stops_do_not_rise_have_no_reasons_and_no_tolerances(void) {
  static const struct {
    const char *stops, *field;
    int32_t row;
  } spoiled[] = {{HOLD_AFTER(7), "stops[0].row", 7},
                 {HOLD_AFTER(4) ", " HOLD_AFTER(2), "stops[1].row", 2},
                 {HOLD_AFTER(3) ", " HOLD_AFTER(3), "stops[1].row", 3}};
  size_t i;
  checking = "stops that do not rise";
  for (i = 0; i < sizeof spoiled / sizeof spoiled[0]; ++i) {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    latchwork_stop_reason reasons[2];
    latchwork_plan *made = plan_of("6", "feasible", spoiled[i].stops);
    size_t needed = 77;
    CHECK(latchwork_grid_stop_reasons(grid, &machine, &effort, made, NULL, reasons, 2, &needed, &error) ==
          LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, spoiled[i].field) == 0 && error.row == spoiled[i].row && error.message[0] != '\0');
    CHECK(latchwork_grid_plan_tolerances(grid, &machine, &effort, made, NULL, NULL, 0, &needed, &error) ==
          LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, spoiled[i].field) == 0 && error.row == spoiled[i].row && error.message[0] != '\0');
    CHECK(needed == 0 || needed == 77);
    latchwork_plan_destroy(made);
  }
}

static void plans_of_other_sizes_are_refused(void) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_period period = LATCHWORK_PERIOD_INIT;
  latchwork_plan *other = plan_of("7", "feasible", "");
  size_t needed = 0;
  checking = "sizes";
  CHECK(latchwork_grid_plan_tolerances(grid, &machine, &effort, other, NULL, NULL, 0, &needed, &error) ==
        LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "plan") == 0);
  error.field[0] = '\0';
  CHECK(latchwork_grid_stop_reasons(grid, &machine, &effort, other, NULL, NULL, 0, &needed, &error) ==
        LATCHWORK_E_SIZE_MISMATCH);
  CHECK(strcmp(error.field, "plan") == 0);
  latchwork_plan_destroy(other);
  other = plan_of("65536", "feasible", "");
  OK(latchwork_plan_period(other, &period, NULL));
  CHECK(period.rows == 0);
  latchwork_plan_destroy(other);
  CHECK(period_of_holds("feasible") == 2 && period_of_holds("infeasible") == 0);
  other = plan_of("2147483647", "feasible", "");
  CHECK(latchwork_plan_period(other, &period, &error) == LATCHWORK_E_TOO_LARGE && strcmp(error.field, "rows") == 0);
  latchwork_plan_destroy(other);
}

static void limits_may_be_as_great_as_their_numbers(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_plan *mine = NULL;
  int32_t equal = 0;
  checking = "limits";
  options.work_limit = options.time_limit_ms = options.memory_limit = INT64_MAX;
  OK(latchwork_grid_plan(grid, &machine, &effort, &options, &mine, NULL));
  OK(latchwork_plan_equal(mine, plan, &equal, NULL));
  CHECK(equal == 1);
  latchwork_plan_destroy(mine);
}

static void the_deepest_ladder_is_planned(void) {
  const int rows = LATCHWORK_GRID_MAX_SIDE;
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_machine deep = machine;
  latchwork_hand_work work = LATCHWORK_HAND_WORK_INIT;
  latchwork_grid *tall = NULL;
  latchwork_plan *mine = NULL;
  uint8_t *cells = calloc((size_t)rows, 3);
  int row;
  checking = "deep ladders";
  if (cells == NULL) return;
  for (row = 0; row < rows; ++row) cells[3 * row + 1] = LATCHWORK_CELL_PURL;
  OK(latchwork_grid_from_cells(rows, 3, cells, (size_t)rows * 3, &tall, NULL));
  deep.max_ladder = rows;
  options.time_limit_ms = 1;
  OK(latchwork_grid_plan(tall, &deep, NULL, &options, &mine, NULL));
  OK(latchwork_plan_hand_work(mine, NULL, &work, NULL));
  CHECK(work.rungs_purl == rows);
  latchwork_plan_destroy(mine);
  latchwork_grid_destroy(tall);
  free(cells);
}

/* Calls of many plans, each on a panel of so many purls that it is heard within a plan. */
enum { PRICES, FRONT, REASONS, TOLERANCES, RHYTHMS, CERTIFICATE, REGULAR, PLAN, MANY };

static latchwork_status call_of(int which, const latchwork_grid *panel, const latchwork_plan *mine,
                                const latchwork_plan_options *options, size_t *needed) {
  latchwork_two_rhythms rhythms = LATCHWORK_TWO_RHYTHMS_INIT;
  latchwork_front *front = NULL;
  latchwork_plan *two = NULL;
  latchwork_certificate *certificate = NULL;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_status status = LATCHWORK_OK;
  switch (which) {
    case PRICES:
      return latchwork_grid_condition_prices(panel, &machine, &effort, options, NULL, 0, needed, NULL);
    case FRONT:
      status = latchwork_grid_plan_front(panel, &machine, &effort, options, &front, NULL);
      if (status == LATCHWORK_OK) OK(latchwork_front_points(front, NULL, 0, needed, NULL));
      latchwork_front_destroy(front);
      return status;
    case REASONS:
      return latchwork_grid_stop_reasons(panel, &machine, &effort, mine, options, NULL, 0, needed, NULL);
    case TOLERANCES:
      return latchwork_grid_plan_tolerances(panel, &machine, &effort, mine, options, NULL, 0, needed, NULL);
    case RHYTHMS:
      status = latchwork_grid_plan_two_rhythms(panel, &machine, &effort, options, &rhythms, &two, NULL);
      latchwork_plan_destroy(two);
      return status;
    case CERTIFICATE:
      status = latchwork_grid_certify(panel, &machine, &effort, 1, options, &certificate, NULL);
      latchwork_certificate_destroy(certificate);
      return status;
    default:
      status = which == PLAN ? latchwork_grid_plan(panel, &machine, &effort, options, &two, NULL)
                             : latchwork_grid_plan_regular(panel, &machine, &effort, options, &two, NULL);
      if (status == LATCHWORK_OK) OK(latchwork_grid_verify(panel, two, NULL, &verification, NULL));
      CHECK(status != LATCHWORK_OK || verification.verified);
      latchwork_plan_destroy(two);
      return status;
  }
}

static void calls_of_many_plans_are_told_and_can_stop(void) {
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  latchwork_tolerance tolerances[12];
  latchwork_stop_reason reasons[64];
  latchwork_grid *tall = NULL;
  latchwork_plan *mine = NULL;
  size_t needed = 0, i;
  const int at[] = {1, 2, 3, 0}; /* 0: in the midst */
  int which, all;
  checking = "many plans";
  OK(latchwork_grid_repeated_up(grid, 4, 0, &tall, NULL));
  OK(latchwork_grid_plan(tall, &machine, &effort, NULL, &mine, NULL));
  options.progress = hear;
  for (which = 0; which < MANY; ++which) {
    struct heard heard = {0, 0, 0, 0.0};
    options.conditions = which == PRICES ? &conditions : NULL;
    conditions.rows_apart = 2;
    options.user_data = &heard;
    options.work_limit = 100000;
    OK(call_of(which, tall, mine, &options, &needed));
    CHECK(heard.calls >= (which > TOLERANCES ? 1 : 3) && !heard.wrong && heard.share == 1.0);
    /* Asked to stop at any word, it ends soon: each plan that was to come is heard of once more, at most. */
    all = heard.calls;
    for (i = 0; i < sizeof at / sizeof *at; ++i) {
      heard.calls = 0;
      heard.share = 0;
      heard.stop_at = at[i] > 0 ? at[i] : 1 + all / 2;
      if (heard.stop_at > all) continue;
      OK(call_of(which, tall, mine, &options, &needed));
      CHECK(heard.calls >= heard.stop_at && heard.calls <= heard.stop_at + 24 && !heard.wrong && heard.share == 1.0);
    }
    options.progress = NULL;
    options.work_limit = 0;
    options.time_limit_ms = 60000;
    OK(call_of(which, tall, mine, &options, &needed));
    options.progress = hear;
    options.time_limit_ms = 0;
  }
  /* Stopped at the first word, what is not known is said so. */
  {
    struct heard heard = {0, 1, 0, 0.0};
    latchwork_condition_price price[2];
    latchwork_grid *large = NULL;
    options.conditions = NULL;
    options.user_data = &heard;
    OK(latchwork_grid_stop_reasons(tall, &machine, &effort, mine, &options, reasons, 64, &needed, NULL));
    CHECK(heard.calls >= 1 && reasons[0].least_saves_ms <= reasons[0].saves_ms); /* a plan is had without a search */
    CHECK(needed > 1 && reasons[1].cause == LATCHWORK_STOP_CAUSE_UNKNOWN);
    heard.calls = 0;
    OK(latchwork_grid_plan_tolerances(tall, &machine, &effort, mine, &options, tolerances, 12, &needed, NULL));
    for (i = 0; i < needed; ++i) CHECK(!tolerances[i].least_exact || tolerances[i].least_ms <= tolerances[i].value_ms);
    CHECK(!tolerances[0].least_exact && !tolerances[0].most_exact);
    heard.calls = 0;
    options.conditions = &conditions;
    OK(latchwork_grid_condition_prices(tall, &machine, &effort, &options, price, 2, &needed, NULL));
    /* what is had without a search, of so small a panel */
    CHECK(needed == 2 && price[0].total_ms > 0 && price[1].total_ms == price[0].total_ms);
    CHECK(price[0].least_price_ms <= price[0].price_ms && price[0].price_ms <= price[0].most_price_ms);
    OK(latchwork_grid_create(1100, 200, &large, NULL));
    OK(latchwork_grid_set(large, 7, 7, LATCHWORK_CELL_PURL, NULL));
    heard.calls = 0;
    OK(latchwork_grid_condition_prices(large, &machine, &effort, &options, price, 2, &needed, NULL));
    CHECK(needed == 2 && price[0].total_ms == -1 && price[0].price_ms == -1);
    CHECK(price[0].status == LATCHWORK_PLAN_STATUS_FEASIBLE && price[1].total_ms == -1);
    latchwork_grid_destroy(large);
  }
  latchwork_plan_destroy(mine);
  latchwork_grid_destroy(tall);
}

static void a_search_that_comes_to_no_end_says_so(void) {
  enum { ROWS = 60, COLUMNS = 20 };
  latchwork_plan_options options = LATCHWORK_PLAN_OPTIONS_INIT;
  latchwork_conditions conditions = LATCHWORK_CONDITIONS_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_grid *ribs = NULL;
  latchwork_plan *mine = NULL;
  uint8_t cells[ROWS * COLUMNS] = {0};
  uint32_t drawn = 1;
  int row, column;
  checking = "no end";
  /* Purls anywhere, one cell in eight: four kinds of stop may serve them, or none. */
  for (row = 1; row <= ROWS; ++row) {
    for (column = 1; column + 1 < COLUMNS; ++column) {
      drawn = (drawn * 1103515245u + 12345u) & 0x7fffffffu;
      if ((drawn >> 16) % 8 == 0) cells[(row - 1) * COLUMNS + column] = LATCHWORK_CELL_PURL;
    }
  }
  OK(latchwork_grid_from_cells(ROWS, COLUMNS, cells, sizeof cells, &ribs, NULL));
  options.conditions = &conditions;
  conditions.max_kinds = 4;
  CHECK(latchwork_grid_plan(ribs, &machine, NULL, &options, &mine, &error) == LATCHWORK_E_TOO_LARGE);
  CHECK(strcmp(error.field, "options.conditions.max_kinds") == 0);
  options.work_limit = 1000; /* the caller's */
  CHECK(latchwork_grid_plan(ribs, &machine, NULL, &options, &mine, &error) == LATCHWORK_E_CANCELLED);
  latchwork_grid_destroy(ribs);
}

int main(void) {
  checking = "make";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_effort_default(&effort, NULL));
  effort.stop = 1000;
  OK(latchwork_grid_from_text(sample, strlen(sample), &grid, NULL));
  OK(latchwork_grid_plan(grid, &machine, &effort, NULL, &plan, NULL));
  both_rhythms_are_told();
  rhythms_keep_conditions();
  conditions_have_prices();
  a_front_gives_its_plans();
  a_stopped_front_proves_nothing();
  stops_say_why_they_are_there();
  plans_of_other_sizes_are_refused();
  plans_whose_stops_do_not_rise_have_no_reasons_and_no_tolerances();
  limits_may_be_as_great_as_their_numbers();
  the_deepest_ladder_is_planned();
  costs_may_move_so_far();
  a_plan_that_breaks_conditions_has_no_tolerances();
  a_large_panel_may_have_no_certificate();
  calls_of_many_plans_are_told_and_can_stop();
  a_search_that_comes_to_no_end_says_so();
  latchwork_plan_destroy(plan);
  latchwork_grid_destroy(grid);
  return checks_told();
}
