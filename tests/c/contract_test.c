/* The contract that every function of latchwork.h keeps: good arguments work; NULL for any argument is told, by name,
   and changes nothing; each allocation may fail; what a handle type must have, it has.
   contract_test BRIEF OUT: a brief's folder to read, and a folder to write to. */
#include <stdlib.h>
#include <string.h>

#include "allocations.h"
#include "calls.h"
#include "check.h"
#include "world.h"

static const struct how as_it_is = {-1, -1, 0, 0};

/* Good arguments: OK, with and without an error to fill and a place for the size. */
static void works(const struct call *call) {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  struct how how = as_it_is;
  int i;
  error.code = 99;
  strcpy(error.message, "of an earlier call");
  CHECK(call->run(&how, &error) == LATCHWORK_OK);
  CHECK(error.code == LATCHWORK_OK && error.message[0] == '\0' && error.field[0] == '\0');
  CHECK(error.row == 0 && error.column == -1 && error.line == 0);
  if (error.code != LATCHWORK_OK) printf("  %s\n", error.message);
  CHECK(call->run(&how, NULL) == LATCHWORK_OK);
  for (i = 0; i < call->may_count; ++i) {
    how = as_it_is;
    how.null_at = call->may[i];
    CHECK(call->run(&how, &error) == LATCHWORK_OK);
  }
  if (call->has_buffer) {
    how = as_it_is;
    how.no_needed = 1;
    CHECK(call->run(&how, &error) == LATCHWORK_OK);
    how = as_it_is;
    how.small = 1;
    CHECK(call->run(&how, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, "capacity") == 0);
  }
}

/* NULL for each argument in turn. */
static void refuses_null(const struct call *call) {
  int i;
  CHECK(call->must_count > 0 || strcmp(call->name, "latchwork_error_codes") == 0);
  for (i = 0; i < call->must_count; ++i) {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    struct how how = as_it_is;
    how.null_at = call->must[i].at;
    CHECK(call->run(&how, &error) == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(error.code == LATCHWORK_E_BAD_ARGUMENT);
    CHECK(strcmp(error.field, call->must[i].name) == 0);
    if (strcmp(error.field, call->must[i].name) != 0) printf("  %s, not %s\n", error.field, call->must[i].name);
    CHECK(strstr(error.message, "NULL") != NULL);
    CHECK(call->run(&how, NULL) == LATCHWORK_E_BAD_ARGUMENT);
  }
}

/* Each allocation fails in turn, to the last; of a call that makes more than 300, about 300 spread over all; less by
   LATCHWORK_PART, for a sanitizer takes a hundred times as long over what is thrown. */
static long survives_no_memory(const struct call *call) {
  const char *part = getenv("LATCHWORK_PART");
  const long parts = part != NULL && atol(part) > 1 ? atol(part) : 1;
  struct how how = as_it_is;
  long total, n, step, failed = 0;
  allocations_begin(-1);
  CHECK(call->run(&how, NULL) == LATCHWORK_OK);
  total = allocations_end();
  step = 1 + total * parts / 300;
  for (n = 0; n < total; n += step) {
    latchwork_error error = LATCHWORK_ERROR_INIT;
    latchwork_status status;
    how.fail_at = n;
    status = call->run(&how, &error);
    CHECK(status == error.code);
    if (status == LATCHWORK_E_NO_MEMORY) ++failed;
    /* Beyond its own last allocation the call succeeds; some of those before can be done without. */
    CHECK(status == LATCHWORK_OK || status == LATCHWORK_E_NO_MEMORY);
    if (status != LATCHWORK_OK && status != LATCHWORK_E_NO_MEMORY) {
      printf("  allocation %ld: %d, %s\n", n, (int)status, error.message);
    }
  }
  how.fail_at = -1;
  CHECK(call->run(&how, NULL) == LATCHWORK_OK);
  return failed;
}

/* Make, copy, equal, destroy, over every type. */
#define HANDLE(type)                                                                                   \
  static void keep_##type(void) {                                                                      \
    latchwork_##type *copy = NULL;                                                                     \
    int32_t equal = -1;                                                                                \
    checking = "latchwork_" #type;                                                                     \
    CHECK(w.type != NULL && w.other_##type != NULL);                                                   \
    CHECK(latchwork_##type##_copy(w.type, &copy, NULL) == LATCHWORK_OK);                               \
    CHECK(copy != NULL && copy != w.type);                                                             \
    CHECK(latchwork_##type##_equal(w.type, copy, &equal, NULL) == LATCHWORK_OK && equal == 1);         \
    CHECK(latchwork_##type##_equal(copy, copy, &equal, NULL) == LATCHWORK_OK && equal == 1);           \
    CHECK(latchwork_##type##_equal(copy, w.other_##type, &equal, NULL) == LATCHWORK_OK && equal == 0); \
    latchwork_##type##_destroy(copy);                                                                  \
    latchwork_##type##_destroy(NULL);                                                                  \
    CHECK(latchwork_##type##_equal(w.type, w.type, &equal, NULL) == LATCHWORK_OK && equal == 1);       \
  }
HANDLES(HANDLE)
#undef HANDLE

static const struct {
  void (*keep)(void);
} handles[] = {
#define HANDLE(type) {keep_##type},
    HANDLES(HANDLE)
#undef HANDLE
};

/* What returns no status: nothing can go wrong in it. */
static void names(void) {
  int32_t code;
  checking = "names";
  CHECK(strcmp(latchwork_version(), "0.1.0") == 0);
  CHECK(strcmp(latchwork_error_name(LATCHWORK_OK), "ok") == 0);
  CHECK(strcmp(latchwork_error_name(LATCHWORK_E_OFF_GRID), "off_grid") == 0);
  CHECK(strcmp(latchwork_error_name(-1), "") == 0 && strcmp(latchwork_error_name(9999), "") == 0);
  for (code = 1; code <= LATCHWORK_E_CANCELLED; ++code) CHECK(latchwork_error_name(code)[0] != '\0');
  CHECK(strcmp(latchwork_finding_name(LATCHWORK_FINDING_CODE_OFF_BED), "off_bed") == 0);
  CHECK(strcmp(latchwork_cloth_state_name(LATCHWORK_CLOTH_STATE_OFF_MACHINE), "off the machine") == 0);
  CHECK(strcmp(latchwork_cloth_state_name(-1), "") == 0 && strcmp(latchwork_cloth_state_name(3), "") == 0);
  CHECK(strcmp(latchwork_finding_name(0), "") == 0 && strcmp(latchwork_finding_name(9999), "") == 0);
  CHECK(strcmp(latchwork_plan_status_name(LATCHWORK_PLAN_STATUS_OPTIMAL), "optimal") == 0);
  CHECK(strcmp(latchwork_plan_status_name(-1), "") == 0 && strcmp(latchwork_plan_status_name(256), "") == 0);
  CHECK(strcmp(latchwork_effort_term_name(LATCHWORK_EFFORT_TERM_RUNG_PURL), "rung_purl") == 0);
  CHECK(strcmp(latchwork_effort_term_name(-1), "") == 0 && strcmp(latchwork_effort_term_name(12), "") == 0);
  CHECK(strcmp(latchwork_effort_term_name(256), "") == 0 && strcmp(latchwork_term_state_name(256), "") == 0);
  CHECK(strcmp(latchwork_term_state_name(LATCHWORK_TERM_STATE_AT_ZERO), "at_zero") == 0);
  CHECK(strcmp(latchwork_term_state_name(-1), "") == 0 && strcmp(latchwork_term_state_name(4), "") == 0);
  CHECK(strcmp(latchwork_stop_cause_name(LATCHWORK_STOP_CAUSE_HAND_CELLS), "hand_cells") == 0);
  CHECK(strcmp(latchwork_stop_cause_name(-1), "") == 0 && strcmp(latchwork_stop_cause_name(256), "") == 0);
  CHECK(latchwork_cell_letter(LATCHWORK_CELL_KNIT) == 'k' && latchwork_cell_letter(LATCHWORK_CELL_NONE) == '.');
  CHECK(latchwork_cell_letter(-1) == '\0' && latchwork_cell_letter(5) == '\0' && latchwork_cell_letter(256) == '\0');
  CHECK(latchwork_cell_of('t') == LATCHWORK_CELL_TUCK && latchwork_cell_of('T') == -1);
}

int main(int argc, char **argv) {
  size_t i;
  long failed = 0;
  int line;
  if (argc != 3) return 2;
  line = world_make(argv[1], argv[2]);
  if (line != 0) return 2;
  for (i = 0; i < calls_count; ++i) {
    checking = calls[i].name;
    works(&calls[i]);
    refuses_null(&calls[i]);
    failed += survives_no_memory(&calls[i]);
  }
  checking = "allocations";
  CHECK(failed > 1000); /* else the library does not use our operator new, and nothing was shown */
  CHECK(sizeof handles / sizeof *handles == handles_count);
  for (i = 0; i < sizeof handles / sizeof *handles; ++i) handles[i].keep();
  names();
  world_free();
  printf("%lu calls, %ld allocations made to fail, %ld checks, %d failed\n", (unsigned long)calls_count, failed,
         checks_made, checks_failed);
  return checks_failed != 0;
}
