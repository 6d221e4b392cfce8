/* Every function of latchwork.h as a call with good arguments; calls.c is written by make_calls.py. */
#ifndef LATCHWORK_TESTS_CALLS_H
#define LATCHWORK_TESTS_CALLS_H

#include <latchwork/latchwork.h>
#include <stddef.h>

/* How to call. */
struct how {
  int null_at;  /* the argument to make NULL; -1: none */
  long fail_at; /* the allocation within the call to let fail, from 0; -1: none */
  int small;    /* 1: one place less than is needed in the caller's buffer */
  int no_needed; /* 1: no place for the size, beside a buffer that is large enough */
};

struct call {
  const char *name;
  latchwork_status (*run)(const struct how *how, latchwork_error *error);
  int must_count; /* arguments that may not be NULL */
  struct {
    int at;
    const char *name;
  } must[10];
  int may_count; /* arguments that may */
  int may[4];
  int has_buffer; /* 1: fills a buffer of the caller's */
};

extern const struct call calls[];
extern const size_t calls_count;
extern const size_t handles_count;

#endif
