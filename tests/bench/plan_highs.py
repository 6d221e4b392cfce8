"""Plans against a general solver: the same panels, the same model, the same optimum.

    python3 tests/bench/plan_highs.py --bench PATH_TO_PLAN_BENCH [--seeds N]

latchwork_plan_bench plans the panels and tells them, with its totals and times. Here the model is made anew from each
panel, by the rules of the domain and in no way by the planner's code, and solved by HiGHS: the newest through highspy where
that is installed, else through scipy.optimize.milp. Two times of latchwork stand beside it, all in processor time on one
thread: "solve" is the search alone, from the problem laid out to the least schedule, and is what the first ratio compares with
HiGHS, whose model is made and handed over outside its time; "plan" is the whole of plan(), from grid to written plan, with a
ratio of its own. Exits with 1 when an optimum differs.
"""

import argparse
import collections
import json
import statistics
import subprocess
import sys
import time

try:
    import highspy
except ImportError:
    highspy = None
import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix


def wales_of(panel):
    """Each wale as (first row, [(cell, column), ...]) and the rows after which it is in a crossing."""
    rows = panel["cells"]
    width = len(rows[0])
    crossings = collections.defaultdict(list)
    for crossing in panel["crossings"]:
        crossings[crossing["row"]].append(crossing)
    running = [None] * width
    wales = []
    for row, letters in enumerate(rows, start=1):
        for column, letter in enumerate(letters):
            if letter == ".":
                running[column] = None
                continue
            if running[column] is None:
                running[column] = {"first": row, "cells": [], "crossed": set()}
                wales.append(running[column])
            running[column]["cells"].append((letter, column))
        for crossing in crossings[row]:
            c, l, k, q = (crossing[key] for key in ("column", "left", "centre", "right"))
            group = running[c : c + l + k + q]
            for wale in group:
                if wale is not None:
                    wale["crossed"].add(row)
            running[c : c + l + k + q] = group[l + k :] + group[l : l + k] + group[:l]
    return wales


def arcs_of(wale, panel):
    """Arcs (from row, to row, cost, stops used) of a wale that is made up to some row."""
    effort = panel["effort"]
    rows = panel["cells"]
    first = wale["first"]
    last = first + len(wale["cells"]) - 1
    cell = {first + i: c for i, (c, _) in enumerate(wale["cells"])}
    column = {first + i: c for i, (_, c) in enumerate(wale["cells"])}
    arcs = []
    for a in range(first - 1, last):
        if cell[a + 1] == "k":
            arcs.append((a, a + 1, 0, ()))
            continue  # a batch that starts under a knit only does more than it must
        if a >= first and cell[a] in "ts":
            continue
        cost = effort["batch"]
        for s in range(a + 1, min(last, a + panel["max_ladder"]) + 1):
            cost += effort["drop"] + effort[cell[s]]
            if cell[s] not in "ts":
                arcs.append((a, s, cost, (s,)))
            if s in wale["crossed"]:
                break
        b = a
        while b + 1 <= last and cell[b + 1] == "t":
            b += 1
        beside = any(
            0 <= c < len(rows[0]) and rows[r - 1][c] == "t"
            for r in range(a + 1, b + 1)
            for c in (column[r] - 1, column[r] + 1)
        )
        if b > a and b < last and cell[b + 1] == "k" and not beside:
            arcs.append((a, b + 1, effort["hold"], (a, b)))
    return first - 1, last, arcs


def fixed_cost(panel, wales):
    effort = panel["effort"]
    rows = len(panel["cells"])
    cost = rows * effort["row"]
    forced = set()
    for crossing in panel["crossings"]:
        forced.add(crossing["row"])
        lifted = crossing["left"] + crossing["right"]
        bare = crossing["centre"] and panel["cells"][crossing["row"] - 1][crossing["column"] + crossing["left"]] == "."
        stays = crossing["place"] == 0 and crossing["left"] == crossing["right"]
        if crossing["centre"] and not bare and not stays:
            lifted += crossing["centre"]
        cost += effort["crossing"] + effort["crossing_stitch"] * lifted
    for wale in wales:
        last = wale["first"] + len(wale["cells"]) - 1
        if wale["first"] > 1:
            forced.add(wale["first"] - 1)
            cost += effort["shaping"]
        if last < rows:
            forced.add(last)
            cost += effort["shaping"]
    return cost, forced


def model_of(panel):
    """(what is fixed, cost, bounds of columns, integrality, matrix, bounds of rows) of the path model; None when empty."""
    wales = wales_of(panel)
    fixed, forced = fixed_cost(panel, wales)
    classes = collections.Counter()
    for wale in wales:
        start, end, arcs = arcs_of(wale, panel)
        if any(cost for _, _, cost, _ in arcs) or any(c != "k" for c, _ in wale["cells"]):
            classes[(start, end, tuple(arcs))] += 1

    stop_rows = sorted({s for _, _, arcs in classes for arc in arcs for s in arc[3]} | forced)
    stop_index = {row: i for i, row in enumerate(stop_rows)}
    cost = [float(panel["effort"]["stop"])] * len(stop_rows)
    lower = [1.0 if row in forced else 0.0 for row in stop_rows]
    upper = [1.0] * len(stop_rows)
    integer = [1] * len(stop_rows)
    entries, low, high = [], [], []  # constraint rows
    for (start, end, arcs), wales_alike in sorted(classes.items()):
        first_arc = len(cost)
        base = len(low)
        for row in range(start, end + 1):  # what leaves minus what arrives
            value = 1.0 if row == start else -1.0 if row == end else 0.0
            low.append(value)
            high.append(value)
        users = collections.defaultdict(list)
        for i, (a, b, price, stops) in enumerate(arcs):
            cost.append(float(price * wales_alike))
            lower.append(0.0)
            upper.append(1.0)
            integer.append(0)
            entries.append((base + a - start, first_arc + i, 1.0))
            entries.append((base + b - start, first_arc + i, -1.0))
            # A wale may end a batch and be put in hold at one stop: two arcs, so each kind has its own constraint.
            for role, s in enumerate(reversed(stops)):
                users[s, role].append(first_arc + i)
        for (s, _), using in users.items():
            for arc in using:
                entries.append((len(low), arc, 1.0))
            entries.append((len(low), stop_index[s], -1.0))
            low.append(-np.inf)
            high.append(0.0)
    if not cost:
        return fixed, None
    rows_, columns_, values = zip(*entries) if entries else ((), (), ())
    matrix = coo_matrix((values, (rows_, columns_)), shape=(len(low), len(cost))).tocsc()
    return fixed, (np.array(cost), np.array(lower), np.array(upper), np.array(integer), matrix, np.array(low), np.array(high))


def by_scipy(model, time_limit):
    """Presolve off: with it, SciPy 1.10's HiGHS gives wrong optima on some tiny panels."""
    cost, lower, upper, integer, matrix, low, high = model
    options = {"presolve": False, "mip_rel_gap": 0.0, "time_limit": time_limit}
    constraints = LinearConstraint(matrix, low, high) if len(low) else ()
    begin = time.process_time()
    result = milp(cost, integrality=integer, bounds=Bounds(lower, upper), constraints=constraints, options=options)
    return None if result.x is None else round(result.fun), result.status == 0, time.process_time() - begin


def by_highspy(model, time_limit):
    """HiGHS through its own package, presolve on, one thread; presolve is part of solving and counted.

    Its own time limit goes by the clock, so that on a busy machine it gives up after little work: the limit here is asked
    between the nodes of its search, in processor time.
    """
    cost, lower, upper, integer, matrix, low, high = model
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(cost), len(low)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = cost, lower, upper
    lp.row_lower_, lp.row_upper_ = np.where(np.isinf(low), -highspy.kHighsInf, low), high
    lp.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = matrix.indptr, matrix.indices, matrix.data
    kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
    lp.integrality_ = [kinds[i] for i in integer]
    solver = highspy.Highs()
    for option, value in {"output_flag": False, "mip_rel_gap": 0.0, "threads": 1}.items():
        solver.setOptionValue(option, value)
    solver.passModel(lp)
    begin = time.process_time()

    def give_up(event):
        if time.process_time() - begin > time_limit:
            event.interrupt()

    solver.cbMipInterrupt += give_up
    solver.run()
    took = time.process_time() - begin
    done = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    found = solver.getInfo().objective_function_value
    return None if np.isinf(found) else round(found), done, took


def solve(panel, solver, time_limit):
    """Least total in milliseconds, whether proven, and seconds of processor time of the solver alone."""
    fixed, model = model_of(panel)
    if model is None:
        return fixed, True, 0.0
    total, proven, took = solver(model, time_limit)
    return None if total is None else fixed + total, proven, took


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    parser.add_argument("--bench", required=True, help="path of latchwork_plan_bench")
    parser.add_argument("--seeds", type=int, default=5)
    parser.add_argument("--rows", type=int, default=0, help="of so many rows each, with --kind; usually 60 to 400")
    parser.add_argument("--kind", default="", help="only panels of this kind")
    parser.add_argument("--solver", choices=("scipy", "highspy"), default="highspy" if highspy else "scipy")
    parser.add_argument("--time-limit", type=float, default=120.0, help="seconds of processor time for HiGHS on one panel (by the clock with SciPy)")
    arguments = parser.parse_args()

    rows = ["rows", str(arguments.rows)] if arguments.rows else []
    told = subprocess.run([arguments.bench, str(arguments.seeds), arguments.kind, *rows], check=True, capture_output=True, text=True).stdout
    solver = {"scipy": by_scipy, "highspy": by_highspy}[arguments.solver]
    table = collections.defaultdict(list)
    wrong = 0
    print(f"{'kind':16}{'panel':30}{'total h':>9}{'stops':>7}{'proven':>8}{'HiGHS ms':>11}{'solve ms':>10}{'ratio':>9}{'plan ms':>10}{'ratio':>9}")
    for line in told.splitlines():
        panel = json.loads(line)
        total, proven, took = solve(panel, solver, arguments.time_limit)
        took *= 1000
        alone, whole = panel["solve_us"] / 1000, panel["plan_us"] / 1000
        ratios = [took / max(mine, 0.001) for mine in (alone, whole)]  # the clock ticks in microseconds
        same = total == panel["total_ms"]
        note = "" if proven else "  (HiGHS not finished)"
        if proven and panel["status"] == "optimal" and not same:
            wrong += 1
            note = f"  DIFFERS: HiGHS {total} ms, latchwork {panel['total_ms']} ms"
        print(
            f"{panel['kind']:16}{panel['name']:30}{panel['total_ms'] / 3.6e6:9.2f}{panel['stops']:7}"
            f"{panel['status'] == 'optimal'!s:>8}{took:11.1f}{alone:10.3f}{ratios[0]:9.1f}{whole:10.3f}{ratios[1]:9.1f}{note}",
            flush=True,
        )
        table[panel["kind"]].append((took, alone, ratios[0], whole, ratios[1]))
    print()
    print(f"{'median of':16}{'panels':>8}{'HiGHS ms':>11}{'solve ms':>10}{'ratio':>9}{'least':>8}{'plan ms':>10}{'ratio':>9}")
    for kind, rows in table.items():
        took, alone, ratio, whole, whole_ratio = (statistics.median(values) for values in zip(*rows))
        least = min(row[2] for row in rows)
        print(f"{kind:16}{len(rows):8}{took:11.1f}{alone:10.3f}{ratio:9.1f}{least:8.1f}{whole:10.3f}{whole_ratio:9.1f}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
