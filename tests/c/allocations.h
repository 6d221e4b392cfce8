/* The C++ allocations of this program and of the library, counted and made to fail. */
#ifndef LATCHWORK_TESTS_ALLOCATIONS_H
#define LATCHWORK_TESTS_ALLOCATIONS_H

#ifdef __cplusplus
extern "C" {
#endif

void allocations_begin(long fail_at); /* counts from 0; the one numbered `fail_at` fails, -1: none */
long allocations_end(void);           /* how many were asked for since */

#ifdef __cplusplus
}
#endif

#endif
