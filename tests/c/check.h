/* Checks that count what fails and go on, so that one run tells everything. */
#ifndef LATCHWORK_TESTS_CHECK_H
#define LATCHWORK_TESTS_CHECK_H

#include <stdio.h>

extern int checks_failed;
extern long checks_made;
extern const char *checking; /* what is being checked, for the message */

#define CHECK(condition)                                                               \
  do {                                                                                 \
    ++checks_made;                                                                     \
    if (!(condition)) {                                                                \
      ++checks_failed;                                                                 \
      printf("%s:%d: %s: CHECK(%s)\n", __FILE__, __LINE__, checking, #condition);      \
    }                                                                                  \
  } while (0)

#endif
