/* What every test program of one file has: its counts, and a grid from its letters. */
#ifndef LATCHWORK_TESTS_PROGRAM_H
#define LATCHWORK_TESTS_PROGRAM_H

#include <string.h>

#include "check.h"
#include <latchwork/latchwork.h>

int checks_failed = 0;
long checks_made = 0;
const char *checking = "";

#define OK(call) CHECK((call) == LATCHWORK_OK)

static inline latchwork_grid *grid_of(const char *text) {
  latchwork_grid *grid = NULL;
  OK(latchwork_grid_from_text(text, strlen(text), &grid, NULL));
  return grid;
}

static inline int checks_told(void) {
  printf("%ld checks, %d failed\n", checks_made, checks_failed);
  return checks_failed != 0;
}

/* A callback's memory. */
struct heard {
  int calls;
  int stop_at; /* the call that asks to stop; 0: never */
  int wrong;   /* a share fell, or passed 1 */
  double share;
};

static inline int32_t hear(const latchwork_progress *progress, void *user_data) {
  struct heard *heard = user_data;
  ++heard->calls;
  if (progress->struct_size != sizeof *progress || progress->share < heard->share || progress->share > 1.0) {
    heard->wrong = 1;
  }
  heard->share = progress->share;
  return heard->calls == heard->stop_at;
}

#endif
