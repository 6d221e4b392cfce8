"""How well calls keep a time limit in Python: milliseconds over the limit, by the clock, the median of five. A plan's stops
become objects when they are first asked for, which is in no limit: how long that takes is told below each panel."""
import statistics
import time

import latchwork

LIMITS = (1, 20, 100, 400)


def panel(columns, rows):
    """Purls in a third of all cells, in no order: each wale of its own kind, between knit edges."""
    grid = latchwork.Grid(rows, columns)
    drawn = 1
    for row in range(1, rows + 1):
        for column in range(1, columns - 1):
            drawn = (drawn * 1103515245 + 12345) & 0x7FFFFFFF
            if (drawn >> 16) % 3 == 0:
                grid.set(row, column, latchwork.Cell.purl)
    return grid


def over(call, limit):
    began = time.perf_counter()
    try:
        call(time_limit_ms=limit)
    except latchwork.Error as error:
        # Of a plan that was cut short a longer search may find a better one, which then has no tolerances.
        if error.code not in (latchwork.ErrorCode.cancelled, latchwork.ErrorCode.bad_argument):
            raise
    return max(0.0, 1000 * (time.perf_counter() - began) - limit)


def main():
    machine = latchwork.Machine()
    few = latchwork.Conditions(rows_apart=3, max_kinds=4)
    rhythm = latchwork.Conditions(rhythms=[latchwork.KeptRhythm(1, 0, 20)])
    print(f"{'ms over the limit':28}{'panel':14}" + "".join(f"{limit:>9} ms" for limit in LIMITS))
    for columns, rows in ((60, 120), (180, 400), (190, 1000), (200, 2000)):
        grid = panel(columns, rows)
        mine = latchwork.plan(grid, machine, work_limit=1)
        began = time.perf_counter()
        mine.stops  # noqa: B018
        made = 1000 * (time.perf_counter() - began)
        calls = {
            "plan": lambda **limit: latchwork.plan(grid, machine, **limit),
            "plan, apart 3, kinds 4": lambda **limit: latchwork.plan(grid, machine, conditions=few, **limit),
            "plan, open rhythm": lambda **limit: latchwork.plan(grid, machine, conditions=rhythm, **limit),
            "plan_regular": lambda **limit: latchwork.plan_regular(grid, machine, **limit),
            "plan_front": lambda **limit: latchwork.plan_front(grid, machine, **limit),
            "front, open rhythm": lambda **limit: latchwork.plan_front(grid, machine, conditions=rhythm, **limit),
            "prices, apart 3, kinds 4": lambda **limit: latchwork.condition_prices(grid, machine, conditions=few, **limit),
            "plan_two_rhythms": lambda **limit: latchwork.plan_two_rhythms(grid, machine, **limit),
            "plan_tolerances": lambda **limit: latchwork.plan_tolerances(grid, machine, plan=mine, **limit),
            "certify": lambda **limit: latchwork.certify(grid, machine, total_ms=mine.total_ms, **limit),
            "stop_reasons": lambda **limit: latchwork.stop_reasons(grid, machine, plan=mine, **limit),
        }
        for name, call in calls.items():
            times = [statistics.median(over(call, limit) for _ in range(5)) for limit in LIMITS]
            print(f"{name:28}{f'{columns} x {rows}':14}" + "".join(f"{ms:12.1f}" for ms in times), flush=True)
        began = time.perf_counter()
        latchwork.hand_work(mine)
        read = 1000 * (time.perf_counter() - began)
        rungs = sum(len(reform.rungs) for stop in mine.stops for reform in stop.reforms)
        print(f"  (the stops of a plan of {rungs} rungs are made in {made:.1f} ms; handed in and counted it is in {read:.1f})")


if __name__ == "__main__":
    main()
