/* latchwork.h needs nothing before it, and may be included twice. */
#include <latchwork/latchwork.h>
#include <latchwork/latchwork.h>

int header_alone(void) { return LATCHWORK_OK; }
