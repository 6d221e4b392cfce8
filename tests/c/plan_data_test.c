/* A plan as data: needles in hold and back, wales that begin and end, where the panel stands; moves in words. Needles are
   those of DEVELOPERS.md, sides: three stitches stand on L2, L1, R1, column 0 on R1; four on L2..R2. */
#include <string.h>

#include "program.h"

static latchwork_plan *planned(const char *rows, const latchwork_machine *machine, const latchwork_effort *effort) {
  latchwork_grid *grid = grid_of(rows);
  latchwork_plan *plan = NULL;
  latchwork_verification knitted = LATCHWORK_VERIFICATION_INIT;
  OK(latchwork_grid_plan(grid, machine, effort, NULL, &plan, NULL));
  OK(latchwork_grid_verify(grid, plan, NULL, &knitted, NULL));
  CHECK(knitted.verified == 1);
  latchwork_grid_destroy(grid);
  return plan;
}

static void a_tuck_by_hold_has_its_needle_set_below_and_released_above(void) {
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  latchwork_hand_work work = LATCHWORK_HAND_WORK_INIT;
  latchwork_plan *plan = NULL;
  latchwork_stop stops[2];
  int32_t needles[2] = {0, 0};
  size_t needed = 0;
  checking = "holds";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_effort_default(&effort, NULL));
  effort.stop = 1000;
  plan = planned("kkk\nkkk\nktk\nktk\nkkk\n", &machine, &effort);
  OK(latchwork_plan_stops(plan, stops, 2, &needed, NULL));
  CHECK(needed == 2 && stops[0].row == 1 && stops[0].holds == 1 && stops[0].releases == 0);
  CHECK(stops[1].row == 3 && stops[1].holds == 0 && stops[1].releases == 1 && stops[1].reforms == 0);
  OK(latchwork_plan_holds(plan, 0, needles, 2, &needed, NULL));
  CHECK(needed == 1 && needles[0] == -1);
  OK(latchwork_plan_releases(plan, 0, needles, 2, &needed, NULL));
  CHECK(needed == 0);
  OK(latchwork_plan_releases(plan, 1, needles, 2, &needed, NULL));
  CHECK(needed == 1 && needles[0] == -1);
  CHECK(latchwork_plan_holds(plan, 2, needles, 2, &needed, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  OK(latchwork_plan_hand_work(plan, &effort, &work, NULL));
  CHECK(work.holds == 1 && work.batches == 0);
  latchwork_plan_destroy(plan);
}

/* `from` with the first `what` in it replaced by `with`; in `to`, which is large enough. */
static void replaced(char *to, const char *from, const char *what, const char *with) {
  const char *at = strstr(from, what);
  CHECK(at != NULL);
  if (at == NULL) at = from + strlen(from);
  memcpy(to, from, (size_t)(at - from));
  strcpy(to + (at - from), with);
  if (*at != '\0') strcat(to, at + strlen(what));
}

/* A rope beside a ladder, whose bare strands ease the crossing, and a tuck by hold, spoiled one step at a time. The panel
   of nine stands on L5..R4: column 8 on L5, column 0 on R4, the ladder on L2, the tuck on L4. */
static void spoiled_plans_of_eased_crossings_and_holds_are_found_out(void) {
  static const char *const rows =
      "kkkkk.kkk\nkkkkk.kkk\nkkkkk.ktk\nkkkkk.ktk\nx 1 2/2 R\nkkkkk.kkk\nkkkkk.kkk\nkkkkk.kkk\n";
  static const struct {
    const char *what, *with;
    int verified, needless, fault, row, column;
    const char *expected, *found;
  } spoilings[] = {
      {"\"releases\"", "\"releases\"", 1, 0, 0, 0, -1, "", ""},
      {"\"holds\": [\"L4\"]", "\"holds\": []", 0, 1, 0, 4, 7, "tuck", "knit"}, /* and its release is for nothing */
      {"\"holds\": [\"L4\"]", "\"holds\": [\"L3\"]", 0, 1, 0, 4, 6, "knit", "tuck"},
      {"\"holds\": [\"L4\"]", "\"holds\": [\"L4\", \"L2\"]", 0, 0, 1, 3, 5, "", ""}, /* the ladder has no stitch */
      {"\"releases\": [\"L4\"]", "\"releases\": [\"L4\", \"R4\"]", 1, 1, 0, 0, -1, "", ""},
      {"\"releases\": [\"L4\"]", "\"releases\": []", 0, 0, 0, 6, 7, "knit", "tuck"},
      {"\"to_needle\": \"R2\"", "\"to_needle\": \"L1\"", 0, 0, 1, 3, 1, "2/2 RC", "no crossing"},
  };
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  latchwork_plan *plan = NULL;
  latchwork_grid *grid = grid_of(rows);
  char text[8192];
  size_t needed = 0;
  size_t i;
  checking = "eased crossings and holds, spoiled";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_effort_default(&effort, NULL));
  effort.stop = 1000;
  plan = planned(rows, &machine, &effort);
  OK(latchwork_plan_write(plan, text, sizeof text, &needed, NULL));
  CHECK(needed <= sizeof text);
  latchwork_plan_destroy(plan);
  for (i = 0; i < sizeof spoilings / sizeof *spoilings; ++i) {
    char spoiled[8400];
    latchwork_verification told = LATCHWORK_VERIFICATION_INIT;
    latchwork_plan *wrong = NULL;
    replaced(spoiled, text, spoilings[i].what, spoilings[i].with);
    OK(latchwork_read_plan(spoiled, strlen(spoiled), &wrong, NULL));
    OK(latchwork_grid_verify(grid, wrong, NULL, &told, NULL));
    checking = spoilings[i].with;
    CHECK(told.verified == spoilings[i].verified && told.fault == spoilings[i].fault);
    CHECK(told.row == spoilings[i].row && told.column == spoilings[i].column);
    CHECK(strcmp(told.expected, spoilings[i].expected) == 0 && strcmp(told.found, spoilings[i].found) == 0);
    CHECK(told.needless == spoilings[i].needless);
    CHECK((told.needless_move >= 0) == (spoilings[i].needless > 0));
    CHECK((told.needless_message[0] != '\0') == (spoilings[i].needless > 0));
    if (told.verified && told.needless > 0) {
      CHECK(told.needless_column == 0 && strstr(told.message, "verified; one step is needless: ") == told.message);
      CHECK(strstr(told.message, told.needless_message) != NULL);
    }
    latchwork_plan_destroy(wrong);
  }
  latchwork_grid_destroy(grid);
}

static void a_wale_that_begins_or_ends_is_shaped(void) {
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_plan *plan = NULL;
  latchwork_stop stops[2];
  latchwork_shaping shapings[2];
  size_t needed = 0;
  checking = "shapings";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  plan = planned("kkkk\nk.kk\nk.kk\nkkkk\n", &machine, NULL);
  OK(latchwork_plan_stops(plan, stops, 2, &needed, NULL));
  CHECK(needed == 2 && stops[0].row == 1 && stops[1].row == 3 && stops[0].shapings == 1 && stops[1].shapings == 1);
  OK(latchwork_plan_shapings(plan, 0, shapings, 2, &needed, NULL));
  CHECK(needed == 1 && shapings[0].needle == 1 && shapings[0].column == 1 && shapings[0].on == 0);
  OK(latchwork_plan_shapings(plan, 1, shapings, 2, &needed, NULL));
  CHECK(needed == 1 && shapings[0].needle == 1 && shapings[0].column == 1 && shapings[0].on == 1);
  latchwork_plan_destroy(plan);
}

static void a_plan_says_where_it_stands_and_from_which_side_it_starts(void) {
  int32_t right;
  checking = "placement";
  for (right = 0; right <= 1; ++right) {
    latchwork_machine machine = LATCHWORK_MACHINE_INIT;
    latchwork_plan *plan = NULL;
    latchwork_stop stop;
    int32_t columns = 0, leftmost = 0, starts = -1;
    OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_MID, &machine, NULL));
    machine.carriage_starts_right = right;
    if (right == 1) machine.leftmost = -7;
    plan = planned("kkk\nkpk\nkpk\n", &machine, NULL);
    OK(latchwork_plan_columns(plan, &columns, NULL));
    OK(latchwork_plan_leftmost(plan, &leftmost, NULL));
    OK(latchwork_plan_carriage_starts_right(plan, &starts, NULL));
    CHECK(columns == 3 && starts == right && leftmost == (right == 1 ? -7 : -2));
    OK(latchwork_plan_stops(plan, &stop, 1, NULL, NULL));
    CHECK(stop.row == 2 && stop.carriage_right == right); /* where it started, after an even row */
    latchwork_plan_destroy(plan);
  }
}

static void moves_are_told_in_words(void) {
  static const struct {
    latchwork_move move;
    const char *words;
  } table[] = {
      {{LATCHWORK_MOVE_KIND_CAST_ON, -2, 3, -1, -1}, "needles L2 to R3: cast on"},
      {{LATCHWORK_MOVE_KIND_CARRIAGE, 0, 0, -1, -1}, "one pass of the carriage"},
      {{LATCHWORK_MOVE_KIND_DROP, -3, -3, 8, -1}, "needle L3: drop the stitch down to the loop of row 8"},
      {{LATCHWORK_MOVE_KIND_LIFT, 1, 2, -1, 0}, "needles R1 to R2: lift the stitches to pronged tool 1"},
      {{LATCHWORK_MOVE_KIND_PUT_BACK, -2, -1, -1, 0}, "needles L2 to L1: put back the stitches from pronged tool 1"},
      {{LATCHWORK_MOVE_KIND_HOLD, 4, 4, -1, -1}, "needle R4: put in hold"},
      {{LATCHWORK_MOVE_KIND_BIND_OFF, 4, 4, -1, -1}, "needle R4: bind off"},
  };
  size_t i;
  for (i = 0; i < sizeof table / sizeof *table; ++i) {
    char words[128] = "";
    checking = table[i].words;
    OK(latchwork_move_describe(&table[i].move, words, sizeof words, NULL, NULL));
    CHECK(strcmp(words, table[i].words) == 0);
  }
}

/* What a job holds is what the single calls give. */
static void a_job_is_what_the_single_calls_give(const char *folder) {
  latchwork_brief *brief = NULL;
  latchwork_job *job = NULL;
  latchwork_panel *panel = NULL;
  latchwork_swatch *swatch = NULL;
  latchwork_grid *grid = NULL;
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  latchwork_plan *made = NULL, *told = NULL;
  latchwork_findings *found = NULL, *told_found = NULL;
  latchwork_verification knitted = LATCHWORK_VERIFICATION_INIT;
  latchwork_size size = LATCHWORK_SIZE_INIT, told_size = LATCHWORK_SIZE_INIT;
  size_t strips = 0, told_strips = 99;
  int32_t equal = 0;
  checking = "job";
  OK(latchwork_read_brief(folder, &brief, NULL));
  OK(latchwork_brief_run(brief, NULL, &job, NULL));
  OK(latchwork_brief_panel(brief, &panel, NULL));
  OK(latchwork_brief_swatch(brief, &swatch, NULL));
  OK(latchwork_brief_machine(brief, &machine, NULL));
  OK(latchwork_brief_effort(brief, &effort, NULL));
  OK(latchwork_panel_grid(panel, &grid, NULL));

  OK(latchwork_grid_findings(grid, &machine, &found, NULL));
  OK(latchwork_job_findings(job, &told_found, NULL));
  OK(latchwork_findings_equal(found, told_found, &equal, NULL));
  CHECK(equal == 1);
  OK(latchwork_grid_plan(grid, &machine, &effort, NULL, &made, NULL));
  OK(latchwork_job_plan(job, &told, NULL));
  OK(latchwork_plan_equal(made, told, &equal, NULL));
  CHECK(equal == 1);
  latchwork_plan_destroy(made);
  latchwork_plan_destroy(told);
  OK(latchwork_grid_plan_regular(grid, &machine, &effort, NULL, &made, NULL));
  OK(latchwork_job_regular(job, &told, NULL));
  OK(latchwork_plan_equal(made, told, &equal, NULL));
  CHECK(equal == 1);
  OK(latchwork_job_regular_verification(job, &knitted, NULL));
  CHECK(knitted.verified == 1);
  OK(latchwork_panel_size(panel, swatch, NULL, &size, NULL));
  OK(latchwork_job_size(job, &told_size, NULL));
  CHECK(size.width_mm > 0 && size.width_mm == told_size.width_mm && size.height_mm == told_size.height_mm);
  OK(latchwork_panel_size_strips(panel, swatch, NULL, NULL, 0, &strips, NULL));
  OK(latchwork_job_size_strips(job, NULL, 0, &told_strips, NULL));
  CHECK(strips > 0 && strips == told_strips);

  latchwork_plan_destroy(told);
  latchwork_plan_destroy(made);
  latchwork_findings_destroy(told_found);
  latchwork_findings_destroy(found);
  latchwork_grid_destroy(grid);
  latchwork_swatch_destroy(swatch);
  latchwork_panel_destroy(panel);
  latchwork_job_destroy(job);
  latchwork_brief_destroy(brief);
}

int main(int argc, char **argv) {
  if (argc != 2) return 2;
  a_tuck_by_hold_has_its_needle_set_below_and_released_above();
  spoiled_plans_of_eased_crossings_and_holds_are_found_out();
  a_wale_that_begins_or_ends_is_shaped();
  a_plan_says_where_it_stands_and_from_which_side_it_starts();
  moves_are_told_in_words();
  a_job_is_what_the_single_calls_give(argv[1]);
  return checks_told();
}
