"""Ten lines that embed latchwork: a rope cable is made, planned on a standard machine, and the plan verified."""

import latchwork as lw

rope = lw.rope(2, 2, 6, lw.Lean.right)
plan = lw.plan(rope.grid, lw.Machine.generic(lw.MachineClass.standard))
verification = lw.verify(rope.grid, plan)
print(f"{verification.message}: {plan.total_ms // 1000} seconds of work")
