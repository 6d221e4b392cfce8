/* The panel and plan that several programs try. Each program has its own. */
#ifndef LATCHWORK_TESTS_SAMPLE_H
#define LATCHWORK_TESTS_SAMPLE_H

#include <stddef.h>

#include "latchwork/latchwork.h"

/* One purl below a 2/2 RC over columns 1..4 after row 2. Six columns stand on L3..R3, so column 2 is on R1. */
static const char sample[] =
    "kkkkkk\n"
    "kkkkkk\n"
    "x 1 2/2 R\n"
    "kkkkkk\n"
    "kkpkkk\n";

static latchwork_machine machine = LATCHWORK_MACHINE_INIT;
static latchwork_grid *grid = NULL;
static latchwork_plan *plan = NULL;

#endif
