"""Charts and instructions."""

import re
import xml.etree.ElementTree as ElementTree

import latchwork as lw
import pytest


def texts(svg):
    return [element.text or "" for element in ElementTree.fromstring(svg).iter() if element.tag.endswith(("}text", "}title"))]


@pytest.mark.parametrize("side, words", [(lw.Side.right_side, "right side"), (lw.Side.operator_view, "operator")])
def test_a_chart_is_xml_with_a_title_that_says_its_side(panel, side, words):
    svg = lw.chart_svg(panel, side)
    root = ElementTree.fromstring(svg)
    assert root.tag == "{http://www.w3.org/2000/svg}svg"
    title = root.find("{http://www.w3.org/2000/svg}title")
    assert words in title.text.lower()
    assert words in lw.chart_text(panel, side).lower()
    assert lw.chart_svg(panel) == lw.chart_svg(panel=panel, side=lw.Side.right_side)
    assert lw.chart_text(panel) == lw.chart_text(panel, lw.Side.right_side)


def test_a_chart_marks_stops_names_needles_and_keeps_proportions(panel):
    machine = lw.Machine(leftmost=20)
    plan = lw.plan(panel.grid, machine)
    plain = lw.chart_svg(panel, lw.Side.operator_view)
    assert lw.chart_svg(panel, lw.Side.operator_view, plan=plan) != plain
    named = lw.chart_svg(panel, lw.Side.operator_view, machine=machine)
    assert named != plain and any("20" in text for text in texts(named))
    assert lw.chart_text(panel, lw.Side.operator_view, plan=plan, machine=machine) != lw.chart_text(panel)
    # Only the proportion counts.
    assert lw.chart_svg(panel, stitch_width_mm=2, stitch_height_mm=1) == lw.chart_svg(
        panel, stitch_width_mm=4, stitch_height_mm=2
    )
    assert lw.chart_svg(panel, stitch_width_mm=2, stitch_height_mm=1) != lw.chart_svg(panel)


def test_a_chart_leaves_the_commoner_loops_blank_or_those_asked_for():
    panel = lw.Panel("knits", lw.Strip("knits", "knits", lw.Grid.from_text("kkk\nkpk\n")))
    operator = lw.chart_svg(panel, lw.Side.operator_view)
    assert operator == lw.chart_svg(panel, lw.Side.operator_view, blank=lw.Blank.purl)
    assert operator != lw.chart_svg(panel, lw.Side.operator_view, blank=lw.Blank.knit)
    assert lw.chart_svg(panel) == lw.chart_svg(panel, blank=lw.Blank.knit)
    assert "A cell without a mark is a back loop, as it looks from here." in " ".join(texts(operator))


def test_a_chart_is_drawn_in_sheets_of_rows(panel):
    rows = panel.grid.rows
    low = lw.chart_svg(panel, last_row=rows // 2)
    assert f"rows 1 to {rows // 2}" in " ".join(texts(low))
    assert lw.chart_svg(panel, first_row=1, last_row=rows) == lw.chart_svg(panel)
    shown = lw.chart_text(panel, first_row=rows // 2 + 1)
    told = [int(row) for row in re.findall(r"(?m)^ +(\d+)    ", shown)]
    assert told == list(range(rows, rows // 2, -1))


def test_a_chart_is_drawn_in_sheets_of_columns():
    panel = lw.Panel("knits", lw.Strip("knits", "knits", lw.Grid.from_text("kkkkp\nkpkkk\n")))
    whole = [line[9:] for line in lw.chart_text(panel).splitlines() if re.match(r" +\d+      ", line)]
    left, right = (
        [line[9:] for line in lw.chart_text(panel, first_column=first, columns=count).splitlines()
         if re.match(r" +\d+      ", line)]
        for first, count in ((0, 2), (2, 0))
    )
    assert [a + b for a, b in zip(left, right, strict=True)] == whole and len(whole) == 2
    assert "columns 2 to 4" in " ".join(texts(lw.chart_svg(panel, first_column=2)))
    assert "needles L3 to L1" in " ".join(texts(lw.chart_svg(panel, lw.Side.operator_view, first_column=2)))
    assert lw.chart_svg(panel, first_column=0, columns=5) == lw.chart_svg(panel)


def test_names_are_escaped():
    panel = lw.Panel('<script>&"', lw.moss(2))
    assert "<script>" not in lw.chart_svg(panel) and any('<script>&"' in text for text in texts(lw.chart_svg(panel)))


def test_bad_options_are_refused(panel):
    for options, code in [
        (dict(stitch_width_mm=0), lw.ErrorCode.bad_argument),
        (dict(plan=lw.Plan(rows=1, columns=1)), lw.ErrorCode.size_mismatch),
        (dict(first_row=0), lw.ErrorCode.bad_argument),
        (dict(last_row=panel.grid.rows + 1), lw.ErrorCode.bad_argument),
        (dict(first_column=panel.grid.columns), lw.ErrorCode.bad_argument),
        (dict(columns=panel.grid.columns + 1), lw.ErrorCode.bad_argument),
    ]:
        for draw in (lw.chart_svg, lw.chart_text):
            with pytest.raises(lw.Error) as caught:
                draw(panel, **options)
            assert caught.value.code is code


def test_instructions_go_by_row_counter_and_name_needles(panel):
    machine = lw.Machine()
    plan = lw.plan(panel.grid, machine)
    words = lw.instructions(panel, plan, machine)
    assert lw.instructions(panel=panel, plan=plan, machine=machine) == words
    assert "RC" in words and ("COR" in words or "COL" in words)
    crossings = [step for stop in plan.stops for step in stop.crossings]
    blocks = {lw.needle_name(min(back.from_needle for back in step.returns)) for step in crossings}
    assert blocks and all(f"{block}-" in words for block in blocks)
    with pytest.raises(lw.Error) as caught:
        lw.instructions(lw.Panel("small", lw.moss(2)), plan, machine)
    assert caught.value.code is lw.ErrorCode.size_mismatch
