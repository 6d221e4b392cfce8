"""Fits of growing requests against the same search in NumPy, all combinations at once: medians of runs that take turns."""
import statistics
import time

import numpy

import latchwork as lw

MAX_SIDE, MAX_CELLS = lw.Grid.max_side, lw.Grid.max_cells
STEP, MOST = 24, 10
GAUGES = {"moss": (26.3, 38.1), "rope": (33.7, 36.9), "edge": (24.1, 39.7), "wave": (29.9, 41.3)}


def swatch():
    return lw.Swatch(
        [
            lw.Measurement(texture, counted, value, 100)
            for texture, values in GAUGES.items()
            for counted, value in zip((lw.Counted.stitches, lw.Counted.rows), values)
        ]
    )


def request(times, edges, panels=1, third=1):
    strip = lambda texture, columns: lw.Strip(texture, texture, lw.Grid(1, columns))
    return lw.FitRequest(
        width_mm=1234.5,
        height_mm=1789.1,
        groups=[
            lw.FitGroup([strip("moss", 5), strip("rope", 6)], 1, times),
            lw.FitGroup([strip("wave", 7)], 1, times),
            lw.FitGroup([strip("moss", 5)], 1, third),
        ],
        edge=strip("edge", 1),
        edge_most=edges,
        panels_most=panels,
        rows_step=STEP,
        most=MOST,
    )


def in_numpy(of):
    """The best, as (times, times, edge columns, rows), of one panel with the third group once."""
    n, m, edge = numpy.meshgrid(
        numpy.arange(1, of.groups[0].most + 1),
        numpy.arange(1, of.groups[1].most + 1),
        numpy.arange(1, of.edge_most + 1),
        indexing="ij",
    )
    n, m, edge = n.ravel(), m.ravel(), edge.ravel()
    columns = {"edge": 2 * edge, "moss": 5 * n + 5, "rope": 6 * n, "wave": 7 * m}
    total = sum(columns.values())
    widths = {texture: count * 100 / GAUGES[texture][0] for texture, count in columns.items()}
    width = sum(widths.values())
    per_row = sum(widths[texture] * (100 / GAUGES[texture][1]) for texture in columns) / width
    relative = (width - of.width_mm) / of.width_mm
    rows = numpy.arange(STEP, MAX_SIDE + 1, STEP)
    found, considered = [], 0
    for at in range(0, len(width), 1000):  # so that it stays in memory
        part = slice(at, at + 1000)
        height = per_row[part, None] * rows[None, :]
        error = numpy.hypot(relative[part, None], (height - of.height_mm) / of.height_mm)
        legal = total[part, None] * rows[None, :] <= MAX_CELLS
        error[~legal] = numpy.inf
        considered += int(legal.sum())
        best = numpy.argpartition(error, MOST, axis=None)[:MOST]
        i, j = numpy.unravel_index(best, error.shape)
        found += [
            (round(error[a, b] / 1e-12), total[at + a], rows[b], edge[at + a], n[at + a], m[at + a])
            for a, b in zip(i, j)
        ]
    found = [tuple(map(int, each)) for each in sorted(found)[:MOST]]
    return considered, [(each[4], each[5], each[3], each[2]) for each in found]


def once(call):
    start = time.perf_counter()
    result = call()
    return time.perf_counter() - start, result


def main():
    measured = swatch()
    print(f"{'request':34} {'combinations':>14} {'latchwork ms':>13} {'growth':>7} {'NumPy ms':>9} {'ratio':>8}")
    first = None
    for scale, times, edges in ((1, 20, 1), (4, 40, 1), (16, 40, 4)):
        of = request(times, edges)
        ours, theirs = [], []
        for _ in range(5):
            seconds, found = once(lambda: lw.fit(of, measured))
            ours.append(seconds)
            seconds, (considered, expected) = once(lambda: in_numpy(of))
            theirs.append(seconds)
        made = [(each.times[0], each.times[1], each.edge_columns, each.rows) for each in found.candidates]
        assert made == expected, (made, expected)
        mine, peer = statistics.median(ours), statistics.median(theirs)
        first = first or mine
        print(
            f"{f'two groups, x{scale}':34} {considered:14,} {mine * 1e3:13.2f} {mine / first:6.1f}x {peer * 1e3:9.1f}"
            f" {peer / mine:7.0f}x"
        )
    of = request(100, 6, panels=3, third=100)
    widths = of.groups[0].most * of.groups[1].most * of.groups[2].most * of.edge_most * of.panels_most
    mine = statistics.median(once(lambda: lw.fit(of, measured))[0] for _ in range(5))
    print(f"{'three groups, edges, 1 to 3 panels':34} {widths:14,} widths {mine * 1e3:6.2f}")


main()
