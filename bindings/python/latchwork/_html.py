"""Tables for notebooks. Small, escaped, and each says which side it shows."""

from __future__ import annotations

from html import escape
from itertools import groupby
from typing import TYPE_CHECKING

from . import _core
from ._quantity import Duration
from ._words import count_of, extent

if TYPE_CHECKING:
    from ._data import Size
    from ._plan import Plan, Reform, Stop

_MOST_ROWS = 60  # a table longer than this is cut, and says so


def _table(caption: str, head: list[str], rows: list[list[str]], note: str = "") -> str:
    """An HTML table; every text is escaped here and nowhere else."""
    out = [f"<table><caption>{escape(caption)}</caption><thead><tr>"]
    out += [f'<th scope="col">{escape(text)}</th>' for text in head]
    out.append("</tr></thead><tbody>")
    for row in rows[:_MOST_ROWS]:
        out.append("<tr>" + "".join(f"<td>{escape(text)}</td>" for text in row) + "</tr>")
    out.append("</tbody></table>")
    if len(rows) > _MOST_ROWS:
        note = f"Not shown: {count_of(len(rows) - _MOST_ROWS, 'more row')}. {note}".strip()
    if note:
        out.append(f"<p>{escape(note)}</p>")
    return "".join(out)


def _time(milliseconds: int) -> str:
    """As summaries and instructions have it; a plan may be wrong, and is still shown."""
    if not 0 <= milliseconds <= 10**12:  # what rounded_duration_text() takes
        return f"{milliseconds} ms"
    return _core.rounded_duration_text(Duration(milliseconds))


def _needle(needle: int) -> str:
    return _core.needle_name(needle) if needle else "(none)"  # a plan may be wrong, and is still shown


def _reforms(reforms: list[Reform]) -> str:
    """Like neighbours together: "L3 L2 from row 4: p k p"."""
    parts = []
    for (from_row, rungs), group in groupby(reforms, key=lambda reform: (reform.from_row, list(reform.rungs))):
        needles = " ".join(_needle(reform.needle) for reform in group)
        parts.append(f"{needles} from row {from_row}: {' '.join(_core.cell_letter(rung) for rung in rungs)}")
    return "; ".join(parts)


_seen_from_behind = {"left": "right", "centre": "centre", "right": "left"}


def _crossings(stop: Stop) -> str:
    """Groups, too, as the operator sees them: the right side's left one is at the right."""
    parts = []
    for step in stop.crossings:
        order = ", ".join(
            f"{_seen_from_behind[back.group.name]} {back.stitches} from {_needle(back.from_needle)} on {_needle(back.to_needle)}"
            for back in step.returns
        )
        parts.append(f"{_core.crossing_name(step.crossing)} ({f'put back {order}' if order else 'nothing put back'})")
    return "; ".join(parts)


def _others(stop: Stop) -> str:
    parts = []
    for word, needles in (("release", stop.releases), ("hold", stop.holds)):
        if needles:
            parts.append(f"{word} {' '.join(map(_needle, needles))}")
    for shaping in stop.shapings:
        parts.append(f"{'begin' if shaping.on else 'end'} {_needle(shaping.needle)}")
    return "; ".join(parts)


def plan_table(plan: Plan) -> str:
    """One line a stop, all as the operator sees it but for the names of crossings."""
    caption = (
        f"Plan, {plan.status.name}{plan._regular()}: {extent(plan.columns, plan.rows)}, {count_of(len(plan.stops), 'stop')}, "
        f"{_time(plan.total_ms)} in all, at least {_time(plan.bound_ms)}{' by any rhythm' if plan.rhythm else ''}. "
        "Needles, left and right in the operator's view (wrong side); crossings named as on the right side."
    )
    rows = [
        [
            str(stop.row),
            "COR" if stop.carriage_right else "COL",
            _reforms(stop.reforms),
            _crossings(stop),
            _others(stop),
            _time(stop.effort_ms),
        ]
        for stop in plan.stops
    ]
    note = "; ".join(finding.message for finding in plan.findings)
    return _table(caption, ["RC", "carriage", "re-form", "cross", "needles", "time"], rows, note)


def _spread(mm: float) -> str:
    """To a tenth; what is less is not told as none."""
    return "0" if mm == 0 else f"{mm:.1f}" if mm >= 0.05 else "under 0.1"


def size_table(size: Size) -> str:
    """Strip by strip from the bottom band's left on the right side, then the whole."""
    spread = f"+/- {_spread(size.width_margin_mm)} x {_spread(size.height_margin_mm)} mm at {100 * size.level:g} %"
    if not size.spread_known:
        spread = f"{spread} or more" if size.width_spread_mm or size.height_spread_mm else "spread not known"
    caption = (
        f"Size: {size.width_mm:.0f} mm x {size.height_mm:.0f} mm "
        f"({spread}); strips from the left on the right side."
    )
    rows = [
        [
            str(strip.band + 1),
            strip.name,
            strip.texture,
            str(strip.columns),
            str(strip.rows),
            f"{strip.width_mm:.1f}",
            f"{strip.height_mm:.1f}",
        ]
        for strip in size.strips
    ]
    head = ["band", "strip", "texture", "columns", "rows", "width mm", "height mm"]
    return _table(caption, head, rows, "; ".join(finding.message for finding in size.findings))
