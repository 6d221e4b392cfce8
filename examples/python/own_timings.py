"""Your own efforts from a file of timed work, and how long a panel takes by them.

python3 own_timings.py TIMINGS_CSV
"""

import pathlib
import sys

import latchwork as lw


def main(timings_file: str) -> None:
    timings = lw.read_timings(pathlib.Path(timings_file).read_bytes())
    fit = lw.fit_effort(timings)
    print(lw.describe(fit))

    odd = {one.spell for one in fit.outlying}  # look at each before it is left out: here its note says why
    for spell in sorted(odd):
        print(f"Left out: line {timings.spells[spell].line}, {timings.spells[spell].note}")
    fit = lw.fit_effort(lw.Timings([spell for i, spell in enumerate(timings.spells) if i not in odd]))
    print(lw.describe(fit))

    strips = [lw.stockinette(), lw.reverse(3), lw.rope(2, 2, 6, lw.Lean.right), lw.reverse(3), lw.stockinette()]
    panel = lw.join_strips("rope band", 48, strips)
    machine = lw.Machine.generic(lw.MachineClass.bulky)
    plan = lw.plan(panel.grid, machine, fit.effort)
    for whose, effort in (("the default efforts", lw.Effort()), ("your own", fit.effort)):
        work = lw.hand_work(plan, effort)
        minutes = (work.hand_ms + work.carriage_ms) / 60_000
        print(f"{len(plan.stops)} stops, {minutes:.1f} minutes by {whose}")
    # The machine file of a brief takes them: lw.write(lw.MachineFile(machine, fit.effort))


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    try:
        main(sys.argv[1])
    except lw.Error as error:
        sys.exit(f"{error.code.name}: {error}")
