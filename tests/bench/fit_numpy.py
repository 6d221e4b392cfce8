"""Fits of growing requests against the same search in NumPy, in the same run: medians of runs that take turns, in
processor time.

Small requests against every combination at once; a big one against every width, each with the rows next to the target, and
then the widths that can still be among the best with all rows that can."""
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


def widths_in_numpy(of):
    """The best, as (panels, times, times, times, edge columns, rows), whatever the panels and groups."""
    by_texture = lambda n, m, k, edge, panels: {
        "edge": panels * 2 * edge - 2 * (panels - 1),  # a seam takes in one of either side
        "moss": panels * 5 * (n + k),
        "rope": panels * 6 * n,
        "wave": panels * 7 * m,
    }

    def measures(columns):
        widths = {texture: count * 100 / GAUGES[texture][0] for texture, count in columns.items()}
        width = sum(widths.values())
        return width, sum(widths[texture] * (100 / GAUGES[texture][1]) for texture in columns) / width

    def errors(width, per_row, rows):
        return numpy.hypot((width - of.width_mm) / of.width_mm, (per_row * rows - of.height_mm) / of.height_mm)

    n, m, k = (each.ravel() for each in numpy.meshgrid(*(numpy.arange(1, g.most + 1) for g in of.groups), indexing="ij"))
    near, parts = [], []
    for panels in range(1, of.panels_most + 1):
        for edge in range(1, of.edge_most + 1):
            width, per_row = measures(by_texture(n, m, k, edge, panels))
            below = numpy.maximum(numpy.floor(of.height_mm / per_row / STEP), 1) * STEP
            found = numpy.minimum(errors(width, per_row, below), errors(width, per_row, below + STEP))
            near.append(numpy.partition(found, MOST)[:MOST])
            parts.append((panels, edge, numpy.abs(width - of.width_mm) / of.width_mm))
    worst = numpy.partition(numpy.concatenate(near), MOST)[MOST - 1]
    best = []
    for panels, edge, relative in parts:
        for at in numpy.flatnonzero(relative <= worst + 1e-12):
            i, j, l = int(n[at]), int(m[at]), int(k[at])
            width, per_row = measures(by_texture(i, j, l, edge, panels))
            columns = 2 * edge + 11 * i + 7 * j + 5 * l
            first = int(of.height_mm * (1 - worst) / per_row / STEP)
            last = min(int(of.height_mm * (1 + worst) / per_row / STEP) + 1, MAX_SIDE // STEP, MAX_CELLS // columns // STEP)
            for step in range(max(first, 1), last + 1):
                error = round(float(errors(width, per_row, step * STEP)) / 1e-12)
                best.append((error, panels, columns, step * STEP, edge, i, j, l))
    return [(each[1], *each[5:], each[4], each[3]) for each in sorted(best)[:MOST]]


def once(call):
    start = time.process_time()
    result = call()
    return time.process_time() - start, result


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
    ours, theirs = [], []
    for _ in range(3):
        seconds, found = once(lambda: lw.fit(of, measured))
        ours.append(seconds)
        seconds, expected = once(lambda: widths_in_numpy(of))
        theirs.append(seconds)
    made = [(each.panels, *each.times, each.edge_columns, each.rows) for each in found.candidates]
    assert made == expected, (made, expected)
    mine, peer = statistics.median(ours), statistics.median(theirs)
    print(
        f"{'three groups, edges, 1 to 3 panels':34} {widths:14,} {mine * 1e3:13.2f} {'':7} {peer * 1e3:9.1f}"
        f" {peer / mine:7.0f}x  (widths, each with all rows)"
    )


main()
