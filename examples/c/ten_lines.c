/* Ten lines that embed latchwork: a rope cable is made, planned on a standard machine, and the plan verified. */
#include <latchwork/latchwork.h>
#include <stdio.h>

int main(void) {
  latchwork_machine machine = LATCHWORK_MACHINE_INIT;
  latchwork_verification verification = LATCHWORK_VERIFICATION_INIT;
  latchwork_strip *rope = NULL;
  latchwork_grid *grid = NULL;
  latchwork_plan *plan = NULL;
  int64_t ms = 0;
  latchwork_machine_generic(LATCHWORK_MACHINE_CLASS_STANDARD, &machine, NULL);
  latchwork_rope(2, 2, 6, LATCHWORK_LEAN_RIGHT, &rope, NULL); /* on failure *out is NULL, which every call refuses */
  latchwork_strip_grid(rope, &grid, NULL);
  latchwork_grid_plan(grid, &machine, NULL, NULL, &plan, NULL);
  latchwork_grid_verify(grid, plan, NULL, &verification, NULL);
  latchwork_plan_total_ms(plan, &ms, NULL);
  printf("%s: %d seconds of work\n", verification.message, (int)(ms / 1000));
  latchwork_plan_destroy(plan), latchwork_grid_destroy(grid), latchwork_strip_destroy(rope);
  return verification.verified ? 0 : 1;
}
