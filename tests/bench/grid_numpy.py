"""Mirror and repeat of large grids against NumPy's flip and tile: medians of runs that take turns, in processor
time, which other work on the machine does not stretch, and how the time grows from x1 to x16 cells."""
import statistics
import time

import numpy

import latchwork


def once(call):
    start = time.process_time()
    result = call()
    seconds = time.process_time() - start
    return seconds, result


def in_turn(ours, theirs, runs=9):
    mine, peers = [], []
    for _ in range(runs):
        seconds, made = once(ours)
        mine.append(seconds)
        seconds, expected = once(theirs)
        peers.append(seconds)
    assert numpy.array_equal(made.cells, expected)
    return statistics.median(mine), statistics.median(peers)


def main():
    print(f"{'operation':34} {'cells':>12} {'latchwork ms':>13} {'NumPy ms':>9} {'ratio':>6} {'growth':>8}")
    first = {}
    generator = numpy.random.default_rng(7)
    for side in (1000, 2000, 4000):
        cells = generator.integers(0, 2, (side, side), dtype=numpy.uint8)
        grid = latchwork.Grid.from_cells(cells)
        quarter = latchwork.Grid.from_cells(numpy.ascontiguousarray(cells[: side // 2, : side // 2]))
        quarter_cells = numpy.array(quarter.cells)
        for name, ours, theirs in (
            ("mirrored / flip", grid.mirrored, lambda: numpy.flip(cells, axis=1).copy()),
            ("upside_down / flip", grid.upside_down, lambda: numpy.flip(cells, axis=0).copy()),
            ("repeated 2 x 2 / tile", lambda: quarter.repeated_across(2).repeated_up(2),
             lambda: numpy.tile(quarter_cells, (2, 2))),
        ):
            mine, peer = in_turn(ours, theirs)
            growth = mine / first.setdefault(name, mine)
            print(f"{name:34} {side * side:12} {mine * 1e3:13.2f} {peer * 1e3:9.2f} {mine / peer:6.2f} {growth:7.1f}x")


main()
