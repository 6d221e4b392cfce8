/* What people read of a small panel and its plan through the C ABI: charts, words, and which plans are not told. */
#include <stdlib.h>
#include <string.h>

#include "program.h"
#include "sample.h"

/* The plan's JSON with each `from` in it made `to`; the caller frees it. */
static char *plan_with(const char *from, const char *to) {
  size_t needed = 0, length = 0;
  char *text, *out, *at, *end;
  OK(latchwork_plan_write(plan, NULL, 0, &needed, NULL));
  text = malloc(needed);
  out = malloc(needed * (strlen(to) + 1));
  if (text == NULL || out == NULL) {
    free(text);
    free(out);
    return NULL;
  }
  OK(latchwork_plan_write(plan, text, needed, NULL, NULL));
  for (at = text; (end = strstr(at, from)) != NULL; at = end + strlen(from)) {
    memcpy(out + length, at, (size_t)(end - at));
    length += (size_t)(end - at);
    memcpy(out + length, to, strlen(to));
    length += strlen(to);
  }
  strcpy(out + length, at);
  free(text);
  return out;
}

static latchwork_plan *odd_plan(const char *from, const char *to) {
  latchwork_plan *odd = NULL;
  char *text = plan_with(from, to);
  if (text == NULL) return NULL;
  OK(latchwork_read_plan(text, strlen(text), &odd, NULL));
  free(text);
  return odd;
}

/* The plan without the group that its crossing puts back last. */
static latchwork_plan *plan_without_the_last_return(void) {
  latchwork_plan *odd = NULL;
  size_t needed = 0;
  char *text, *first, *second, *end;
  OK(latchwork_plan_write(plan, NULL, 0, &needed, NULL));
  text = malloc(needed);
  if (text == NULL) return NULL;
  OK(latchwork_plan_write(plan, text, needed, NULL, NULL));
  first = strstr(text, "\"returns\"");
  first = first == NULL ? NULL : strchr(first, '}');      /* the first group's end */
  second = first == NULL ? NULL : strchr(first + 1, '}'); /* the second's */
  CHECK(second != NULL);
  if (second != NULL) {
    end = second + 1;
    memmove(first + 1, end, strlen(end) + 1);
    OK(latchwork_read_plan(text, strlen(text), &odd, NULL));
  }
  free(text);
  return odd;
}

/* A plan is data, and a file may hold any number: what no words can tell is refused with its place, and what is counted
   stays within its number. */
static void odd_plans_are_refused_at_their_place(void) {
  static const struct {
    const char *from, *to, *field;
    int32_t row, column;
  } odd[] = {
      {"\"from_row\": 0", "\"from_row\": -2147483648", "stops[0].reforms[0].from_row", 2, 2},
      {"\"needle\": \"R1\"", "\"needle\": \"L2147483647\"", "stops[0].reforms[0].needle", 2, -1},
      {"\"pk\"", "\"pkp\"", "stops[0].reforms[0].rungs", 2, 2},
      {"\"row\": 2,\n", "\"row\": 2147483647,\n", "stops[0].row", 2147483647, -1},
      {"\"stitches\": 2", "\"stitches\": 2147483647", "stops[0].crossings[0].returns[0].stitches", 2, 1},
      {"\"carriage_right\": true", "\"carriage_right\": false", "stops[0].carriage_right", 2, -1},
      {"\"column\": 2", "\"column\": 3", "stops[0].reforms[0].column", 2, 2},
      {"\"wale\": 2", "\"wale\": 3", "stops[0].reforms[0].wale", 2, 2},
      {"0, 1, 2, 3, 4, 5]", "0, 1, 3, 4, 5]", "columns_on", 0, 2},
      {"\"reforms\": [",
       "\"reforms\": [{\"needle\": \"R1\", \"column\": 2, \"wale\": 2, \"from_row\": 0, \"rungs\": \"pk\"},",
       "stops[0].reforms[1].needle", 2, 2},
      {"\"crossings\": [", "\"shapings\": [{\"needle\": \"R1\", \"column\": 2, \"on\": true}], \"crossings\": [",
       "stops[0].shapings[0]", 2, 2},
  };
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL;
  latchwork_plan *wrong;
  latchwork_hand_work work = LATCHWORK_HAND_WORK_INIT;
  size_t i, needed = 0;
  checking = "odd plans";
  OK(latchwork_strip_create("rope", "rope", grid, &strip, NULL));
  OK(latchwork_panel_create("sample", strip, &panel, NULL));
  OK(latchwork_panel_instructions(panel, plan, &machine, NULL, 0, &needed, NULL));
  for (i = 0; i < sizeof odd / sizeof *odd; ++i) {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    wrong = odd_plan(odd[i].from, odd[i].to);
    CHECK(latchwork_panel_instructions(panel, wrong, &machine, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, odd[i].field) == 0);
    CHECK(error.row == odd[i].row && error.column == odd[i].column && error.message[0] != '\0');
    latchwork_plan_destroy(wrong);
  }
  /* A group that is lifted and never put back. */
  {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    wrong = plan_without_the_last_return();
    CHECK(latchwork_panel_instructions(panel, wrong, &machine, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, "stops[0].crossings[0].returns") == 0 && error.row == 2 && error.column == 1);
    latchwork_plan_destroy(wrong);
  }
  /* Two groups of 2^31 - 1 stitches. */
  wrong = odd_plan("\"stitches\": 2", "\"stitches\": 2147483647");
  OK(latchwork_plan_hand_work(wrong, NULL, &work, NULL));
  CHECK(work.stitches_crossed == 2147483647 && work.hand_ms == 65500 - 16000 + INT64_C(4000) * 2147483647);
  latchwork_plan_destroy(wrong);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
}

/* The purl of column 2 from one row up: its two rungs come a row higher, and the upper one does not hang there. */
static void a_move_that_cannot_be_made_hides_no_difference(void) {
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_plan *wrong = odd_plan("\"from_row\": 0", "\"from_row\": 1");
  latchwork_move moves[64];
  size_t needed = 0;
  checking = "verify";
  OK(latchwork_grid_verify(grid, wrong, NULL, &verification, NULL));
  CHECK(verification.verified == 0 && verification.row == 1 && verification.column == 2 && verification.wale == 2);
  CHECK(strcmp(verification.expected, "purl") == 0 && strcmp(verification.found, "knit") == 0);
  CHECK(verification.fault == 1 && verification.fault_row == 2 && verification.fault_column == 2);
  CHECK(strstr(verification.fault_message, "no rung of row 3 hangs there") != NULL);
  CHECK(strstr(verification.message, verification.fault_message) != NULL);
  OK(latchwork_plan_moves(wrong, moves, 64, &needed, NULL));
  CHECK(needed <= 64 && verification.fault_move > 0 && moves[verification.fault_move].row == 3);
  latchwork_plan_destroy(wrong);
}

/* The machine instructions of a grid's own plan; the caller frees them. */
static char *words_of(const char *cells) {
  latchwork_grid *chart = grid_of(cells);
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL;
  latchwork_plan *made = NULL;
  char *words;
  size_t needed = 0;
  OK(latchwork_strip_create("sample", "sample", chart, &strip, NULL));
  OK(latchwork_panel_create("sample", strip, &panel, NULL));
  OK(latchwork_grid_plan(chart, &machine, NULL, NULL, &made, NULL));
  OK(latchwork_panel_instructions(panel, made, &machine, NULL, 0, &needed, NULL));
  words = malloc(needed);
  if (words != NULL) OK(latchwork_panel_instructions(panel, made, &machine, words, needed, NULL, NULL));
  latchwork_plan_destroy(made);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
  latchwork_grid_destroy(chart);
  return words;
}

static void words_tell_cast_on_sweep_and_decrease(void) {
  char *words = words_of(
      "kkkkk.\n"
      "kkkkkk\n"
      "kkpkkk\n");
  checking = "words";
  CHECK(words != NULL);
  if (words == NULL) return;
  CHECK(strstr(words, "Cast on L3-R3 (6 needles, each with a loop of its own). Set RC 000, COR.") != NULL);
  CHECK(strstr(words, "one at a time, in the order listed: one sweep of the bed from your left") != NULL);
  CHECK(strstr(words, "decrease 1: move the stitch on L3 to L2 and put L3 out of work") != NULL);
  free(words);
  words = words_of("kkkkk\nkkkkk\n");
  CHECK(words != NULL && strstr(words, "a loop of its own") == NULL);
  CHECK(words != NULL && strstr(words, "Bind off, or take the panel off on waste yarn.") != NULL);
  free(words);
  words = words_of(".....\n.....\nkkkkk\n"); /* bound off after row 1: nothing is left to knit or take off */
  CHECK(words != NULL && strstr(words, "bind off L3-R2 and put them out of work.\n") != NULL);
  CHECK(words != NULL && strstr(words, "the panel ends here. Nothing is knitted in rows 2 to 3.\n") != NULL);
  CHECK(words != NULL && strstr(words, "waste yarn") == NULL);
  free(words);
}

/* Whether the chart stays the same with the loops of `blank` unmarked. */
static int same_chart(const latchwork_panel *panel, const latchwork_chart_options *options, int32_t blank) {
  latchwork_chart_options other = *options;
  char one[20000], two[20000];
  other.blank = blank;
  OK(latchwork_panel_chart_svg(panel, options, one, sizeof one, NULL, NULL));
  OK(latchwork_panel_chart_svg(panel, &other, two, sizeof two, NULL, NULL));
  return strcmp(one, two) == 0;
}

static void charts_say_which_side_they_show(void) {
  latchwork_strip *strip = NULL;
  latchwork_panel *panel = NULL;
  latchwork_chart_options options = LATCHWORK_CHART_OPTIONS_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  char *right_side, *operator_view;
  size_t needed = 0;
  checking = "charts";
  OK(latchwork_strip_create("rope", "rope", grid, &strip, NULL));
  OK(latchwork_panel_create("sample", strip, &panel, NULL));
  OK(latchwork_panel_chart_svg(panel, NULL, NULL, 0, &needed, NULL));
  right_side = malloc(needed);
  OK(latchwork_panel_chart_svg(panel, NULL, right_side, needed, NULL, NULL));
  options.side = LATCHWORK_SIDE_OPERATOR_VIEW;
  options.plan = plan;
  options.machine = &machine;
  OK(latchwork_panel_chart_svg(panel, &options, NULL, 0, &needed, NULL));
  operator_view = malloc(needed);
  OK(latchwork_panel_chart_svg(panel, &options, operator_view, needed, NULL, NULL));
  CHECK(right_side != NULL && operator_view != NULL);
  if (right_side != NULL && operator_view != NULL) {
    CHECK(strstr(right_side, "<svg") != NULL && strstr(right_side, "L3") == NULL);
    CHECK(strstr(operator_view, "<svg") != NULL && strstr(operator_view, "L3") != NULL);
  }
  free(right_side);
  free(operator_view);
  /* Most loops are face loops on the RS: there knits go without a mark, and on the other side purls. */
  options.blank = LATCHWORK_BLANK_PURL;
  CHECK(same_chart(panel, &options, LATCHWORK_BLANK_COMMONER) == 1);
  CHECK(same_chart(panel, &options, LATCHWORK_BLANK_KNIT) == 0);
  options.blank = 3;
  CHECK(latchwork_panel_chart_svg(panel, &options, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "blank") == 0);
  options.blank = LATCHWORK_BLANK_COMMONER;
  options.first_row = 2;
  options.last_row = 1;
  CHECK(latchwork_panel_chart_svg(panel, &options, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "last_row") == 0);
  options.last_row = 2;
  options.reserved = 7;
  CHECK(latchwork_panel_chart_svg(panel, &options, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "options.reserved") == 0);
  options.reserved = 0;
  options.first_row = -1;
  CHECK(latchwork_panel_chart_text(panel, &options, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "first_row") == 0);
  options.first_row = 2;
  OK(latchwork_panel_chart_text(panel, &options, NULL, 0, &needed, NULL));
  OK(latchwork_panel_chart_svg(panel, &options, NULL, 0, &needed, NULL));
  right_side = malloc(needed);
  OK(latchwork_panel_chart_svg(panel, &options, right_side, needed, NULL, NULL));
  CHECK(right_side != NULL && strstr(right_side, ", row 2<") != NULL);
  free(right_side);
  options.first_column = 1;
  options.columns = 1;
  OK(latchwork_panel_chart_svg(panel, &options, NULL, 0, &needed, NULL));
  right_side = malloc(needed);
  OK(latchwork_panel_chart_svg(panel, &options, right_side, needed, NULL, NULL));
  CHECK(right_side != NULL && strstr(right_side, ", row 2, needle ") != NULL);
  free(right_side);
  options.columns = 1000;
  CHECK(latchwork_panel_chart_text(panel, &options, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "columns") == 0);
  options.columns = 0;
  options.side = 2;
  CHECK(latchwork_panel_chart_text(panel, &options, NULL, 0, &needed, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(strcmp(error.field, "side") == 0);
  latchwork_panel_destroy(panel);
  latchwork_strip_destroy(strip);
}

int main(void) {
  checking = "make";
  OK(latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL));
  OK(latchwork_grid_from_text(sample, strlen(sample), &grid, NULL));
  OK(latchwork_grid_plan(grid, &machine, NULL, NULL, &plan, NULL));
  charts_say_which_side_they_show();
  odd_plans_are_refused_at_their_place();
  a_move_that_cannot_be_made_hides_no_difference();
  words_tell_cast_on_sweep_and_decrease();
  latchwork_plan_destroy(plan);
  latchwork_grid_destroy(grid);
  return checks_told();
}
