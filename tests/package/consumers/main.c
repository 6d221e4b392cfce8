/* A C host: asks the version, makes a grid, and is refused a crossing that leaves it. */
#include <latchwork/latchwork.h>
#include <stdio.h>
#include <string.h>

int main(void) {
  latchwork_grid *grid = NULL;
  latchwork_error error = LATCHWORK_ERROR_INIT;
  if (latchwork_grid_create(4, 6, &grid, &error) != LATCHWORK_OK) return 1;
  if (latchwork_grid_set(grid, 9, 0, 1, &error) != LATCHWORK_E_OFF_GRID) return 2;
  printf("%s: %s\n", latchwork_version(), error.message);
  latchwork_grid_destroy(grid);
  return 0;
}
