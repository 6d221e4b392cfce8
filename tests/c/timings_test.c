/* Timed spells through the C ABI: read, fitted, tied, at zero and outlying, against figures worked out by hand. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "program.h"

static int near(double value, double wanted) { return fabs(value - wanted) <= 1e-9 * fabs(wanted); }

static latchwork_timings *read_good(const char *csv) {
  latchwork_timings *timings = NULL;
  OK(latchwork_read_timings(csv, strlen(csv), &timings, NULL));
  return timings;
}

static void spells_are_what_the_file_says(void) {
  latchwork_timings *timings = read_good("note,rows,stops,time,unit\n# a comment\nfirst,10,,0.7,min\n,20,3,2,h\n");
  latchwork_timings *again = NULL;
  latchwork_spell spells[2];
  size_t needed = 0;
  int32_t equal = 0;
  checking = "read_timings";
  OK(latchwork_timings_spells(timings, spells, 2, &needed, NULL));
  CHECK(needed == 2);
  CHECK(spells[0].rows == 10 && spells[0].stops == 0 && spells[0].time_ms == 42000 && spells[0].line == 3);
  CHECK(strcmp(spells[0].note, "first") == 0);
  CHECK(spells[1].rows == 20 && spells[1].stops == 3 && spells[1].time_ms == 7200000 && spells[1].line == 4);
  spells[0].line = 99; /* where a spell stood is no part of what it is */
  OK(latchwork_timings_create(spells, 2, &again, NULL));
  OK(latchwork_timings_equal(timings, again, &equal, NULL));
  CHECK(equal == 1);
  latchwork_timings_destroy(again);
  spells[1].note = NULL;
  OK(latchwork_timings_create(spells, 2, &again, NULL));
  OK(latchwork_timings_equal(timings, again, &equal, NULL));
  CHECK(equal == 1);
  latchwork_timings_destroy(again);
  latchwork_timings_destroy(timings);
}

static void what_is_wrong_is_told_with_line_and_field(void) {
  static const struct {
    const char *csv;
    int32_t code, line;
    const char *field;
  } table[] = {
      {"rows,time,unit\n10,40,s\n10,-1,s\n", LATCHWORK_E_BAD_VALUE, 3, "time"},
      {"rows,time,unit\n10,40,days\n", LATCHWORK_E_BAD_UNIT, 2, "unit"},
      {"rows,time,unit\n1e3,40,s\n", LATCHWORK_E_BAD_VALUE, 2, "rows"},
      {"rows,time\n10,40\n", LATCHWORK_E_MISSING_FIELD, 1, "unit"},
  };
  latchwork_spell idle = {0};
  latchwork_timings *timings = NULL;
  latchwork_effort_fit *fit = NULL;
  latchwork_effort defaults = LATCHWORK_EFFORT_INIT;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  size_t i;
  checking = "refused timings";
  for (i = 0; i < sizeof table / sizeof *table; ++i) {
    CHECK(latchwork_read_timings(table[i].csv, strlen(table[i].csv), &timings, &error) == table[i].code);
    CHECK(timings == NULL && error.line == table[i].line && strcmp(error.field, table[i].field) == 0);
  }
  idle.time_ms = 1000;
  CHECK(latchwork_timings_create(&idle, 1, &timings, &error) == LATCHWORK_E_BAD_VALUE);
  CHECK(timings == NULL && strcmp(error.field, "spells[0].time_ms") == 0);
  timings = read_good("rows,time,unit\n1,2,h\n");
  CHECK(latchwork_timings_fit_effort(timings, NULL, &fit, &error) == LATCHWORK_E_TOO_LARGE);
  CHECK(fit == NULL && strcmp(error.field, "effort.row") == 0);
  defaults.hold = -1;
  CHECK(latchwork_timings_fit_effort(timings, &defaults, &fit, &error) == LATCHWORK_E_BAD_ARGUMENT);
  CHECK(fit == NULL && strcmp(error.field, "defaults.hold") == 0);
  latchwork_timings_destroy(timings);
}

/* Rows 10, 20, 30 in 41, 79, 121 s: X'X = 1400 and X't = 5620 s, so a row takes 281/70 s; the squared residuals sum to
   133/49 s^2 over two degrees of freedom. */
static void one_cost_is_the_least_squares_slope(void) {
  latchwork_timings *timings = read_good("rows,time,unit\n10,41,s\n20,79,s\n30,121,s\n");
  latchwork_effort_fit *fit = NULL;
  latchwork_effort defaults = LATCHWORK_EFFORT_INIT, effort = LATCHWORK_EFFORT_INIT;
  latchwork_term_fit terms[12];
  int32_t spells = 0, rank = 0, degrees = 0;
  double spread = 0;
  size_t needed = 0;
  checking = "fit_effort";
  OK(latchwork_effort_default(&defaults, NULL));
  defaults.stop = 77;
  OK(latchwork_timings_fit_effort(timings, &defaults, &fit, NULL));
  latchwork_timings_destroy(timings);
  OK(latchwork_effort_fit_effort(fit, &effort, NULL));
  CHECK(effort.row == 4014 && effort.stop == 77 && effort.batch == defaults.batch);
  OK(latchwork_effort_fit_terms(fit, terms, 12, &needed, NULL));
  CHECK(needed == 12);
  CHECK(terms[11].term == LATCHWORK_EFFORT_TERM_ROW && terms[11].state == LATCHWORK_TERM_STATE_FITTED);
  CHECK(near(terms[11].estimate_ms, 281000.0 / 70) && terms[11].value_ms == 4014 && terms[11].spells == 3);
  CHECK(near(terms[11].standard_error_ms, 1000 * sqrt(133.0 / 98 / 1400)));
  CHECK(terms[0].state == LATCHWORK_TERM_STATE_NO_DATA && terms[0].value_ms == 77 && terms[0].standard_error_ms == -1);
  OK(latchwork_effort_fit_spells(fit, &spells, NULL));
  OK(latchwork_effort_fit_rank(fit, &rank, NULL));
  OK(latchwork_effort_fit_degrees_of_freedom(fit, &degrees, NULL));
  OK(latchwork_effort_fit_spread_ms(fit, &spread, NULL));
  CHECK(spells == 3 && rank == 1 && degrees == 2 && near(spread, 1000 * sqrt(133.0 / 98)));
  latchwork_effort_fit_destroy(fit);
}

static void ties_and_outlying_spells_are_told(void) {
  latchwork_timings *timings = read_good(
      "stops,batches,holds,rows,time,unit\n"
      "0,0,0,10,40.1,s\n"
      "1,1,0,10,69.9,s\n"
      "2,2,0,10,100.2,s\n"
      "0,0,0,20,79.8,s\n"
      "1,1,0,20,180,s\n"
      "2,2,0,20,140.1,s\n"
      "1,1,0,30,149.9,s\n");
  latchwork_effort_fit *fit = NULL;
  latchwork_term_fit terms[12];
  latchwork_outlying_spell outlying[7];
  int32_t tied[12];
  size_t needed = 0;
  char text[4096];
  checking = "ties";
  OK(latchwork_timings_fit_effort(timings, NULL, &fit, NULL));
  OK(latchwork_effort_fit_terms(fit, terms, 12, NULL, NULL));
  CHECK(terms[0].state == LATCHWORK_TERM_STATE_TIED && terms[0].tied_with == 1);
  CHECK(terms[1].state == LATCHWORK_TERM_STATE_TIED && terms[1].tied_with == 1);
  CHECK(terms[9].state == LATCHWORK_TERM_STATE_NO_DATA); /* a column of nothing but 0 */
  OK(latchwork_effort_fit_tied_with(fit, 0, tied, 12, &needed, NULL));
  CHECK(needed == 1 && tied[0] == LATCHWORK_EFFORT_TERM_BATCH);
  OK(latchwork_effort_fit_tied_with(fit, 11, NULL, 0, &needed, NULL));
  CHECK(needed == 0);
  CHECK(latchwork_effort_fit_tied_with(fit, 12, tied, 12, &needed, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  OK(latchwork_effort_fit_outlying(fit, outlying, 7, &needed, NULL));
  CHECK(needed == 1 && outlying[0].spell == 4 && outlying[0].line == 6 && outlying[0].residual_ms > 0);
  OK(latchwork_effort_fit_describe(fit, text, sizeof text, NULL, NULL));
  CHECK(strstr(text, "tied with batch") != NULL && strstr(text, "\nline 6: ") != NULL);
  latchwork_effort_fit_destroy(fit);
  latchwork_timings_destroy(timings);
}

int main(void) {
  spells_are_what_the_file_says();
  what_is_wrong_is_told_with_line_and_field();
  one_cost_is_the_least_squares_slope();
  ties_and_outlying_spells_are_told();
  return checks_told();
}
