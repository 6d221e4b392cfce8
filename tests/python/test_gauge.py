"""Swatches, gauges and size."""

import collections
import copy
import csv
import html.parser
import pathlib
import pickle
import statistics

import latchwork as lw
import numpy as np
import pytest
import scipy.stats as stats
from hypothesis import given
from hypothesis import strategies as st

CSV = """texture,counted,count,length,unit,place
# rested two days
moss,stitches,30,10,cm,left
moss,stitches,31,100,mm,right
moss,rows,20,2,in,middle
"""


def test_a_swatch_is_read_with_its_units():
    swatch = lw.read_swatch(CSV)
    assert [m.length_mm for m in swatch.measurements] == [100.0, 100.0, 50.8]  # 1 in is 25.4 mm exactly (SI brochure)
    assert swatch.measurements[0] == lw.Measurement("moss", lw.Counted.stitches, 30, 100, "left", line=3)
    gauge = swatch.gauge("moss")
    assert gauge.texture == "moss" and gauge.stitches.places == 2 and gauge.rows.places == 1
    assert gauge.stitches.per_10cm == pytest.approx(30.5)
    assert gauge.stitches.spread == pytest.approx(statistics.stdev([30, 31]))
    assert gauge.rows.per_10cm == pytest.approx(20 * 100 / 50.8)
    assert swatch.textures() == ["moss"] and swatch.has("moss") and not swatch.has("garter")
    with pytest.raises(lw.Error) as caught:
        swatch.gauge(texture="garter")
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.no_gauge, "garter")


@pytest.mark.parametrize(
    "text, code, line",
    [
        (CSV + "moss,rows,20,2,oz,\n", lw.ErrorCode.bad_unit, 6),
        (CSV + "moss,rows,twenty,2,in,\n", lw.ErrorCode.bad_value, 6),
        ("texture,counted\n", lw.ErrorCode.missing_field, 1),
        (b"texture,counted,count,length,unit\n\xff,rows,1,1,mm\n", lw.ErrorCode.bad_encoding, 2),
    ],
)
def test_bad_swatch_files_are_refused_with_their_line(text, code, line):
    with pytest.raises(lw.Error) as caught:
        lw.read_swatch(csv=text)
    assert (caught.value.code, caught.value.line) == (code, line)


@pytest.mark.parametrize("inches", ["in", "inch", "inches", "\u2033"])
def test_a_unit_of_a_swatch_file_is_spelled_as_in_a_quantity(inches):
    swatch = lw.read_swatch(f"texture,counted,count,length,unit\nmoss,rows,28,4,{inches}\n")
    assert swatch.measurements[0].length_mm == 101.6


texts = st.text(st.characters(blacklist_categories=("Cs",), blacklist_characters="\0"), min_size=1, max_size=12)
measurements = st.lists(
    st.builds(
        lw.Measurement,
        texture=texts,
        counted=st.sampled_from(lw.Counted),
        count=st.floats(0.1, 10_000),
        length_mm=st.floats(1, 10_000),
        place=texts | st.just(""),
        swatch=st.text("abcé, \"", max_size=12),
        state=st.sampled_from(lw.ClothState),
    ),
    max_size=6,
)


@given(measurements)
def test_what_is_written_is_read_back_equal(values):
    swatch = lw.Swatch(values)
    assert lw.read_swatch(lw.write(swatch)) == swatch
    assert list(swatch.measurements) == values
    for twin in (copy.copy(swatch), copy.deepcopy(swatch), pickle.loads(pickle.dumps(swatch)), lw.Swatch(tuple(values))):
        assert twin == swatch and twin is not swatch


BRIEFS = pathlib.Path(__file__).parents[2] / "examples/briefs"
# Millimetres exactly: SI brochure, and the inch of 1959.
MILLIMETRES = {"mm": 1.0, "cm": 10.0, "in": 25.4}


def densities_by_hand(text):
    """Per 10 cm by texture and by what was counted, read with Python's csv and nothing of ours. One state a texture."""
    lines = (line for line in text.splitlines() if line.strip() and not line.startswith("#"))
    found = collections.defaultdict(list)
    for row in csv.DictReader(lines):
        length_mm = float(row["length"]) * MILLIMETRES[row["unit"]]
        found[row["texture"], row["counted"]].append(float(row["count"]) / length_mm * 100)
    return found


def assert_gauges_are_numpys(swatch, by_hand):
    assert {texture for texture, _ in by_hand} == set(swatch.textures())
    for (texture, counted), places in by_hand.items():
        density = getattr(swatch.gauge(texture), counted)
        assert density.places == len(places)
        assert density.per_10cm == pytest.approx(np.mean(places), rel=1e-14)
        # The sample standard deviation: n - 1 below; of one place nothing is known, and 0 stands for it.
        wanted = np.std(places, ddof=1) if len(places) > 1 else 0.0
        assert density.spread == pytest.approx(wanted, rel=1e-9, abs=1e-9)
        assert density.standard_error == pytest.approx(wanted / np.sqrt(len(places)), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("brief", sorted(path.parent.name for path in BRIEFS.glob("*/swatch.csv")))
def test_mean_and_spread_of_a_swatch_file_are_those_of_csv_and_numpy(brief):
    text = (BRIEFS / brief / "swatch.csv").read_text(encoding="utf-8")
    assert_gauges_are_numpys(lw.read_swatch(text), densities_by_hand(text))


@given(
    st.lists(
        st.tuples(
            st.sampled_from(["moss", 'a "quoted", one', "garter 2/2"]),
            st.sampled_from(["stitches", "rows"]),
            st.floats(1, 200),
            st.floats(1, 300),
            st.sampled_from(sorted(MILLIMETRES)),
        ),
        max_size=30,
    )
)
def test_any_swatch_has_the_means_and_spreads_of_csv_and_numpy(rows):
    rows = [row for row in rows if 1 <= row[3] * MILLIMETRES[row[4]] <= 10_000]
    # Each texture's stitches and rows once at least: a gauge wants both.
    rows += [(texture, counted, 30.0, 100.0, "mm") for texture in {row[0] for row in rows} for counted in ("stitches", "rows")]
    quoted = lambda text: '"' + text.replace('"', '""') + '"'  # noqa: E731
    text = "texture,counted,count,length,unit\n"
    text += "".join(f"{quoted(t)},{c},{count:f},{length:f},{unit}\n" for t, c, count, length, unit in rows)
    assert_gauges_are_numpys(lw.read_swatch(text), densities_by_hand(text))


def test_a_spread_that_is_not_known_is_told_once_for_all_textures():
    once = lw.Swatch([lw.Measurement(t, c, 30, 100) for t in ("moss", "reverse") for c in lw.Counted])
    size = lw.size(lw.join_strips("p", 4, [lw.moss(), lw.reverse()]), once)
    assert not size.spread_known and size.width_spread_mm == 0 and "spread not known" in size._repr_html_()
    (told,) = size.findings
    assert told.code is lw.FindingCode.unknown_spread and "textures 'moss', 'reverse'" in told.message
    twice = lw.Swatch([*once.measurements, *once.measurements])
    assert lw.size(lw.join_strips("p", 4, [lw.moss(), lw.reverse()]), twice).spread_known


def counted(counts, counted=lw.Counted.stitches, texture="moss", state=lw.ClothState.rested):
    return [lw.Measurement(texture, counted, count, 100, state=state) for count in counts]


def test_states_are_apart_and_shrinkage_lies_between_them():
    washed = lw.ClothState.washed
    before, after = [27, 28, 26.5], [30, 31, 30.5, 29]
    swatch = lw.Swatch(
        counted(before) + counted([40, 41], lw.Counted.rows)
        + counted(after, state=washed) + counted([44, 43], lw.Counted.rows, state=washed)
    )
    assert swatch.states("moss") == [lw.ClothState.rested, washed] and swatch.has("moss", lw.ClothState.rested)
    assert not swatch.has(texture="moss", state=lw.ClothState.off_machine)
    assert swatch.gauge("moss").state is washed and swatch.gauge("moss", state=lw.ClothState.rested).stitches.places == 3
    assert lw.cloth_state_name(lw.ClothState.off_machine) == "off the machine"
    (shrinkage,) = lw.shrinkages(swatch)
    q = np.mean(before) / np.mean(after)
    assert (shrinkage.texture, shrinkage.from_state, shrinkage.to_state) == ("moss", lw.ClothState.rested, washed)
    assert shrinkage.width_percent == pytest.approx(100 * (1 - q)) and shrinkage.error_known
    error = lambda places: stats.sem(places) / np.mean(places)  # noqa: E731
    assert shrinkage.width_error == pytest.approx(100 * q * np.hypot(error(before), error(after)))


@given(st.lists(st.integers(40, 70), min_size=1, max_size=12))
def test_the_odd_one_out_is_that_of_grubbs_with_scipys_student(halves):
    places = np.array(halves) / 2
    n = len(places)
    found = [f for f in lw.swatch_findings(lw.Swatch(counted(places))) if f.code is lw.FindingCode.odd_one_out]
    off = np.abs(places - places.mean())
    if n < 3 or places.std() == 0:
        assert not found
        return
    t = stats.t.isf(0.05 / (2 * n), n - 2)
    limit = (n - 1) / np.sqrt(n) * np.sqrt(t**2 / (n - 2 + t**2))
    far = off.max() / places.std(ddof=1)
    least = 1.5 if all(half % 2 == 0 for half in halves) else 1  # whole stitches, or halves
    if far > limit * (1 + 1e-6) and off.max() * n / (n - 1) > least + 1e-6:
        assert [f.place.field for f in found] == [f"measurements[{off.argmax()}]"]
    elif far < limit * (1 - 1e-6) or off.max() * n / (n - 1) < least - 1e-6:
        assert not found


def test_what_is_doubtful_in_a_swatch_is_told_with_its_place():
    swatch = lw.read_swatch("texture,counted,count,length,state\nmoss,rows,15,5 cm,washed\n")
    half, few, short = lw.swatch_findings(swatch=swatch)
    assert (half.code, few.code, short.code) == (
        lw.FindingCode.half_measured, lw.FindingCode.few_places, lw.FindingCode.short_measure
    )
    assert few.limit == lw.usual_places == 5 and short.limit == lw.usual_length_mm == 100 and short.place.line == 2


def test_margins_are_those_of_scipys_student_and_of_welch_and_satterthwaite(panel):
    textures = {strip.texture for band in panel.bands for strip in band.strips}
    rng = np.random.default_rng(11)
    measured = {(t, c): 30 + rng.normal(0, 0.4, n) for n, (t, c) in enumerate(
        [(t, c) for t in sorted(textures) for c in lw.Counted], start=2)}
    swatch = lw.Swatch([m for (t, c), counts in measured.items() for m in counted(counts, c, t)])
    size = lw.size(panel, swatch, level=0.9)
    parts = []
    for texture in textures:
        g = measured[texture, lw.Counted.stitches]
        width = sum(s.columns for s in size.strips if s.texture == texture) * 100 / g.mean()
        parts.append((width * g.std(ddof=1) / g.mean() * np.sqrt(1 + 1 / len(g)), len(g) - 1))
    spread = np.sqrt(sum(u**2 for u, _ in parts))
    freedom = int(spread**4 / sum(u**4 / nu for u, nu in parts))
    assert size.width_spread_mm == pytest.approx(spread)
    assert size.width_margin_mm == pytest.approx(stats.t.ppf(0.95, freedom) * spread, rel=1e-5)
    assert size.level == 0.9 and "at 90 %" in size._repr_html_()


def test_seams_states_and_substitutes_are_asked_for(swatch):
    plain = lw.join_strips("p", 40, [lw.stockinette(30)])
    assert lw.size(plain, swatch, seam_left=0.5, seam_right=1).width_mm == pytest.approx(28.5 / 30 * 100)
    assert lw.size(plain, swatch, seam_top=1, seam_bottom=1).seam_height_mm == pytest.approx(2 / 40 * 100)
    with pytest.raises(lw.Error) as caught:
        lw.size(plain, swatch, seam_left=0.3)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "seam_left")
    with pytest.raises(lw.Error) as caught:
        lw.size(plain, swatch, state=lw.ClothState.washed)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.no_gauge, "stockinette")
    wave = lw.join_strips("p", 40, [lw.Strip("w", "wave", lw.Grid(1, 30))])
    (missing,) = [f for f in lw.measuring_findings(wave, swatch) if f.severity is lw.Severity.error]
    assert missing.code is lw.FindingCode.no_swatch and missing.place.field == "wave"
    lent = lw.size(wave, swatch, substitutes=[lw.Substitute("wave", "stockinette")])
    assert lent.width_mm == pytest.approx(100) and lent.findings[-1].code is not None
    assert lw.FindingCode.borrowed_gauge in [f.code for f in lent.findings]


def test_one_or_two_wales_have_no_gauge_of_their_own(swatch):
    plain = lw.stockinette(8)
    rib = lw.Strip("rib", "moss", lw.Grid(1, 2))
    panel = lw.join_strips("p", 40, [plain, rib, plain, rib, plain])
    (told,) = [f for f in lw.size(panel, swatch).findings if f.code is lw.FindingCode.narrow_texture]
    assert told.severity is lw.Severity.advice and told.place.field == "moss"
    assert (told.place.column, told.last_column, told.value, told.limit) == (8, 9, 2, 3)
    assert "measure the repeat with its neighbours" in told.suggestion
    assert told in lw.measuring_findings(panel, swatch)
    edges = lw.join_strips("p", 40, [rib, plain, rib])
    assert all(f.code is not lw.FindingCode.narrow_texture for f in lw.size(edges, swatch).findings)


def test_swatches_compare_and_refuse_bad_measurements(swatch):
    assert lw.Swatch() == lw.Swatch([]) != swatch and swatch != 3
    assert repr(swatch) == "<latchwork.Swatch 8 measurements of 4 textures>"
    with pytest.raises(lw.Error) as caught:
        lw.Swatch([lw.Measurement("moss", lw.Counted.rows, 0, 100)])
    assert caught.value.code is lw.ErrorCode.bad_value and "count" in caught.value.field
    assert lw.Swatch.max_measurements > 1000 and lw.max_swatch_bytes > 1 << 20


def test_a_panel_is_the_sum_of_its_strips(panel, swatch):
    size = lw.size(panel, swatch)
    assert size.width_mm == pytest.approx(19 / 30 * 100) and size.height_mm == pytest.approx(16 / 40 * 100)
    assert size.least_height_mm == pytest.approx(size.greatest_height_mm) == pytest.approx(40)
    assert len(size.strips) == 9 and sum(strip.width_mm for strip in size.strips) == pytest.approx(size.width_mm)
    assert repr(size) == "<latchwork.Size 63.3 mm x 40.0 mm, 9 strips>"
    with pytest.raises(lw.Error) as caught:
        lw.size(panel, lw.Swatch())
    assert caught.value.code is lw.ErrorCode.no_gauge


def test_a_size_is_shown_as_a_table(panel, swatch):
    cells = []

    class Table(html.parser.HTMLParser):
        def handle_starttag(self, tag, attrs):
            cells.extend([tag] if tag in ("tr", "td") else [])

    size = lw.size(panel, swatch)
    Table().feed(size._repr_html_())
    assert cells.count("tr") == 10 and cells.count("td") == 63
    assert "from the left on the right side" in size._repr_html_()
    assert f"Size: {size.width_mm:.0f} mm x {size.height_mm:.0f} mm (" in size._repr_html_()  # of cloth in any state
    wavy = lw.Size(findings=(lw.Finding(message="a < b"),))
    assert "a &lt; b" in wavy._repr_html_()


def test_a_swatch_keeps_its_lines_through_a_pickle(swatch):
    read = lw.read_swatch(lw.write(swatch))
    lines = [measured.line for measured in read.measurements]
    assert lines[0] == 2 and sorted(lines) == lines
    again = pickle.loads(pickle.dumps(read))
    assert [measured.line for measured in again.measurements] == lines and again == read


@given(
    st.lists(st.lists(st.integers(40, 80), min_size=1, max_size=6), min_size=1, max_size=5),
)
def test_unlike_swatches_are_those_of_scipys_analysis_of_variance(pieces):
    """Halves of stitches, counted in several places of several swatches."""
    measured = [
        lw.Measurement("moss", lw.Counted.stitches, half / 2, 100.0, swatch=f"piece {i}")
        for i, piece in enumerate(pieces)
        for half in piece
    ]
    measured.append(lw.Measurement("moss", lw.Counted.rows, 40.0, 100.0))
    swatch = lw.Swatch(measured)
    means = [np.mean(piece) / 2 for piece in pieces]
    told = any(finding.code is lw.FindingCode.unlike_swatches for finding in lw.swatch_findings(swatch))
    density = swatch.gauge("moss").stitches
    assert density.swatches == len(pieces)
    if len(pieces) < 2 or all(len(piece) == 1 for piece in pieces):
        assert not told
        return
    if all(len(set(piece)) == 1 for piece in pieces):
        assert told == (max(means) - min(means) >= 0.5)
        return
    ratio, share = stats.f_oneway(*([half / 2 for half in piece] for piece in pieces))
    if abs(share - 0.05) < 1e-9:
        return
    assert told == (share < 0.05 and max(means) - min(means) >= 0.5)
    # No surer than all places as those of one piece, and the wider the more the pieces differ.
    halves = [half / 2 for piece in pieces for half in piece]
    if ratio <= 1:
        assert density.spread == pytest.approx(np.std(halves, ddof=1), rel=1e-9)
        assert density.freedom == len(halves) - 1
    else:
        assert density.freedom <= len(halves) - 1 + 1e-9
        assert density.standard_error >= np.std(halves, ddof=1) / np.sqrt(len(halves)) - 1e-12
