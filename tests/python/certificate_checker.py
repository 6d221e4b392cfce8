"""A second checker of certificates, in plain Python, from DEVELOPERS.md, "Rules of the plan" and "Certificates", alone.

It reads the files: a grid's ("latchwork-grid") and a certificate's ("latchwork-certificate"). Nothing of latchwork is
imported. Whole numbers only. `check` returns the bound that is proven; what does not hold raises Refused.
"""

import json
from math import gcd

NEVER = None  # no way


class Refused(Exception):
    pass


def insist(what, why):
    if not what:
        raise Refused(why)


def cheaper(a, b):
    return a if b is NEVER or (a is not NEVER and a <= b) else b


class Wale:
    def __init__(self, row, column):
        self.row, self.column, self.cells, self.columns, self.crossed = row, column, [], [], set()

    @property
    def last_row(self):
        return self.row + len(self.cells) - 1


class Panel:
    def __init__(self, grid, machine, effort):
        self.cells = grid["rows"][::-1]  # row 1 first
        self.rows, self.columns = len(self.cells), len(self.cells[0])
        self.machine, self.effort = machine, effort
        self.rung = {c: effort["drop"] + effort[f"rung_{n}"] for c, n in zip("kpts", ("knit", "purl", "tuck", "slip"))}
        self.follow_wales(grid.get("crossings", []))
        self.pieces = [self.pieces_of(wale) for wale in self.wales]

    def letter(self, row, column):
        return self.cells[row - 1][column] if 0 <= column < self.columns else "."

    def follow_wales(self, crossings):
        effort = self.effort
        self.fixed, self.forced = self.rows * effort["row"], set()
        running, found = [None] * self.columns, []
        for row in range(1, self.rows + 1):
            for column in range(self.columns):
                if self.letter(row, column) == ".":
                    running[column] = None
                    continue
                if running[column] is None:
                    running[column] = Wale(row, column)
                    found.append(running[column])
                running[column].cells.append(self.letter(row, column))
                running[column].columns.append(column)
            for crossing in (c for c in crossings if c["row"] == row):
                c, left, centre, right = crossing["column"], crossing["left"], crossing.get("centre", 0), crossing["right"]
                span = running[c : c + left + centre + right]
                for wale in span:
                    if wale is not None:
                        wale.crossed.add(row)
                running[c : c + len(span)] = span[left + centre :] + span[left : left + centre] + span[:left]
                bare = centre and self.letter(row, c + left) == "."
                stays = crossing.get("place") == "front" and left == right
                lifted = left + right + (0 if bare or stays else centre)
                self.fixed += effort["crossing"] + lifted * effort["crossing_stitch"]
                self.forced.add(row)
        self.wales = sorted(found, key=lambda wale: (wale.row, wale.column))
        for wale in self.wales:
            for row, at_all in ((wale.row - 1, wale.row > 1), (wale.last_row, wale.last_row < self.rows)):
                if at_all:
                    self.fixed += effort["shaping"]
                    self.forced.add(row)

    def pieces_of(self, wale):
        """(low, high, last row of a batch or None, by hold, rungs) from the lowest."""
        pieces, row = [], wale.row
        while row <= wale.last_row:
            cell = lambda r: wale.cells[r - wale.row]
            if cell(row) == "k":
                row += 1
                continue
            low, alone = row, True
            while row <= wale.last_row and cell(row) in "ts":
                column = wale.columns[row - wale.row]
                beside = "t" in (self.letter(row, column - 1), self.letter(row, column + 1))
                alone = alone and cell(row) == "t" and not beside
                row += 1
            last, hold, rungs = None, False, 0
            if row <= wale.last_row and (low > wale.row or self.machine["cast_on_loops"]):
                rungs = sum(self.rung[cell(r)] for r in range(low, row + 1))
                hold = row > low and alone and cell(row) == "k"
                reach = [
                    s
                    for s in range(row, min(wale.last_row, low - 1 + self.machine["max_ladder"]) + 1)
                    if not any(r in wale.crossed for r in range(low, s))
                ]
                last = max(reach, default=None)
            pieces.append((low, row, last, hold, rungs))
            row += 1
        return tuple(pieces)


class Ways:
    """A class of wales up the rows. A place is ("made", i) or ("held", i); costs are of all its wales, in units."""

    def __init__(self, panel, pieces, count, unit):
        self.pieces, self.rows = pieces, panel.rows
        self.batch = panel.effort["batch"] * count * unit
        self.hold = panel.effort["hold"] * count * unit
        self.made, self.rungs = [0], [0]
        for row in range(1, panel.rows + 1):
            inside = next((p for p in pieces if p[0] <= row <= p[1]), None)
            self.made.append(None if inside and row < inside[1] else sum(1 for p in pieces if p[1] <= row))
            more = panel.rung["k"] if not inside else inside[4] if row == inside[1] else 0
            self.rungs.append(self.rungs[-1] + more * count * unit)

    def can_stand(self, place, row):
        """Whether a wale can be there after the row's decision at all."""
        kind, i = place
        if kind == "held":
            return self.pieces[i][3] and self.pieces[i][0] - 1 <= row
        return i == 0 or (self.pieces[i - 1][1] - 1 if self.pieces[i - 1][3] else self.pieces[i - 1][1]) <= row

    def by_stop(self, place, row):
        """Every place that a stop after the row leads to, and its cost: release, then a batch, then a hold."""
        kind, i = place
        if kind == "held":
            if self.pieces[i][1] - 1 != row:
                return [(place, 0)]
            ends = [(i + 1, 0)]  # and no batch: the row is a tuck of this wale
        else:
            ends = [(i, 0)]
            made = self.made[row]
            if made is not None and i < made and self.pieces[i][2] is not None and row <= self.pieces[i][2]:
                ends.append((made, self.batch + self.rungs[row] - self.rungs[self.pieces[i][0] - 1]))
        found = []
        for j, cost in ends:
            found.append((("made", j), cost))
            if j < len(self.pieces) and self.pieces[j][3] and self.pieces[j][0] - 1 == row:
                found.append((("held", j), cost + self.hold))
        return found

    def decided(self, before, row, stop):
        after = {}
        for place, paid in before.items():
            for to, cost in self.by_stop(place, row) if stop else [(place, 0)]:
                after[to] = cheaper(after.get(to), paid + cost)
        return after

    def to_end(self, price):
        """Per row, the cheapest way to the end from every place after its decision; and from before row 0's."""
        everywhere = [("made", i) for i in range(len(self.pieces) + 1)] + [("held", i) for i in range(len(self.pieces))]
        ahead = [None] * (self.rows + 1)
        here = {("made", len(self.pieces)): 0}
        for row in range(self.rows, -1, -1):
            ahead[row] = here
            below = {}
            for place in everywhere:
                best = here.get(place)
                for to, cost in self.by_stop(place, row):
                    if to in here:
                        best = cheaper(best, price.get(row, 0) + cost + here[to])
                if best is not NEVER:
                    below[place] = best
            here = below
        return ahead, here.get(("made", 0))


def check(grid_json, certificate_json, machine, effort):
    """machine and effort are dictionaries of the members of Machine and Effort."""
    panel, told = Panel(json.loads(grid_json), machine, effort), json.loads(certificate_json)
    insist((told["format"], told["version"]) == ("latchwork-certificate", 1), "format")
    insist((told["rows"], told["columns"]) == (panel.rows, panel.columns), "another panel")
    unit, classes, branches = told["unit"], told.get("classes", []), told.get("branches", [])
    stretches = told.get("stretches", [])
    insist(1 <= unit <= panel.rows + 2, "unit")
    insist(told.get("forced", []) == sorted(panel.forced), "forced")

    in_class, sold, ways, ahead, bound = set(), {}, [], [], 0
    for one in classes:
        wales = one.get("wales", [])
        insist(wales and all(0 <= w < len(panel.wales) for w in wales) and wales == sorted(set(wales)), "wales")
        insist(not in_class & set(wales), "a wale in two classes")
        insist(all(panel.pieces[w] and panel.pieces[w] == panel.pieces[wales[0]] for w in wales), "wales unalike")
        in_class |= set(wales)
        price = {p["row"]: p["price"] for p in one.get("prices", [])}
        insist(list(price) == sorted(price) and len(price) == len(one.get("prices", [])), "rows of prices")
        for row, paid in price.items():
            insist(0 <= row <= panel.rows and row not in panel.forced and paid > 0, "a price")
            sold[row] = sold.get(row, 0) + paid
            insist(sold[row] <= effort["stop"] * unit, "a stop sold for more than it costs")
        ways.append(Ways(panel, panel.pieces[wales[0]], len(wales), unit))
        to_end, least = ways[-1].to_end(price)
        insist(least is not NEVER and least == one["least"], "least")
        ahead.append(to_end)
        bound += least
    insist(in_class == {w for w, pieces in enumerate(panel.pieces) if pieces}, "a wale in no class")

    step = 0
    for cost in (effort["stop"], effort["batch"], effort["hold"], *panel.rung.values()):
        step = gcd(step, cost)
    step = step or 1
    insist(told["bound_ms"] >= 0, "bound_ms")
    above = told["bound_ms"] - panel.fixed - 1
    cut = above // step * step * unit if above >= 0 else -1
    stop = effort["stop"] * unit
    gain = [0] * (panel.rows + 1)  # per row: what is still to come above the ways to go
    above = panel.rows
    for stretch in stretches:
        insist(0 <= stretch["row"] < above and stretch["gain"] > 0, "a stretch")
        above = stretch["row"]
        to_go, start = stop * sum(1 for r in panel.forced if r > above), []
        for way, to_end in zip(ways, ahead):
            here = {place: cost for place, cost in to_end[above].items() if way.can_stand(place, above)}
            to_go += max(here.values())
            start.append({place: max(here.values()) - cost for place, cost in here.items()})
        climb(panel, stretch.get("branches", []), ways, ahead, stop, to_go + stretch["gain"] - 1, gain, above + 1, start)
        for row in range(above + 1):
            gain[row] = max(gain[row], stretch["gain"])
    if branches:
        climb(panel, branches, ways, ahead, stop, cut, gain, 0, [{("made", 0): 0} for _ in ways])
    else:
        insist(bound + stop * len(panel.forced) > cut, "the prices prove less")
    return told["bound_ms"]


def climb(panel, branches, ways, ahead, stop, cut, gain, first, start):
    def bound_of(paid, places, row):
        total, parts = gain[row] + paid + stop * sum(1 for r in panel.forced if r > row), []
        for mine, to_end in zip(places, ahead):
            sums = [paid + to_end[row][place] for place, paid in mine.items() if place in to_end[row]]
            if not sums:
                return NEVER, []
            parts.append(min(sums))
        return total + sum(parts), parts

    def left_out(paid, places, row):
        """Without the places from where every way on passes the cut."""
        bound, parts = bound_of(paid, places, row)
        if bound is NEVER:
            return places
        return [
            {p: c for p, c in mine.items() if p in to_end[row] and bound - part + c + to_end[row][p] <= cut}
            for mine, to_end, part in zip(places, ahead, parts)
        ]

    def as_good(x, y, row):
        bound, parts = bound_of(*y, row)
        if bound is NEVER:
            return True  # nothing follows from y
        lead = x[0] - y[0]
        for k, (mine, theirs) in enumerate(zip(x[1], y[1])):
            most = None
            for place, paid in theirs.items():
                to_go = ahead[k][row].get(place)
                if to_go is None or bound - parts[k] + paid + to_go > cut:
                    continue  # nothing of use goes on from there
                kind, i = place
                better = [c for (k2, j), c in mine.items() if k2 == kind and (j == i or (kind == "made" and j > i))]
                if not better:
                    return False
                most = max(min(better) - paid, most if most is not None else min(better) - paid)
            lead += most or 0
        return lead <= 0

    below = [(-1, 0, start)]
    at = 0
    for row in range(first, panel.rows + 1):
        kept, dominated = {}, []
        for index, paid, places in below:
            stopped = [way.decided(mine, row, True) for way, mine in zip(ways, places)]
            of_use = [
                {p: c for p, c in mine.items() if p in to_end[row]} for mine, to_end in zip(stopped, ahead)
            ] != [{p: c for p, c in mine.items() if p in to_end[row]} for mine, to_end in zip(places, ahead)]
            choices = [(True, paid + stop, stopped)] if row in panel.forced else [(False, paid, places)]
            listed = at < len(branches) and branches[at]["stop"]
            if row not in panel.forced and (of_use or listed):
                choices.insert(0, (True, paid + stop, stopped))
            for stops, cost, now in choices:
                insist(at < len(branches), "a branch is missing")
                told = branches[at]
                insist((told["row"], told["below"], told["stop"]) == (row, index, stops), f"branch {at}")
                insist(told["end"] in ("kept", "bound", "dominated"), f"end of branch {at}")
                insist(told["end"] == "dominated" or told["by"] == -1, f"by of branch {at}")
                if told["end"] == "kept":
                    kept[at] = (cost, left_out(cost, now, row))
                elif told["end"] == "dominated":
                    dominated.append((told["by"], (cost, now)))
                else:
                    bound, _ = bound_of(cost, now, row)
                    insist(bound is NEVER or bound > cut, f"the bound of branch {at}")
                at += 1
        for by, one in dominated:
            insist(by in kept and as_good(kept[by], one, row), f"dominated by {by}")
        below = [(index, *one) for index, one in kept.items()]
    insist(not below, "a schedule reaches the top with a lower total")
    insist(at == len(branches), "branches that continue nothing")
