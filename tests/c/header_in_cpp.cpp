// latchwork.h is C++ too, as old as C++11, and its names have C linkage.
#include <latchwork/latchwork.h>

int main() {
  latchwork_error error = LATCHWORK_ERROR_INIT;
  latchwork_effort effort = LATCHWORK_EFFORT_INIT;
  return latchwork_effort_default(&effort, &error) == LATCHWORK_OK && effort.stop > 0 ? 0 : 1;
}
