"""Articles: what comes with the library, a host's own, and what they come to."""

import latchwork as lw
import pytest


@pytest.fixture
def mat():
    """A quilted mat of a host's own: strips side by side, filled, shaped at its top. Invented."""
    width = lw.Extent([lw.LengthTerm("width")], over=["strips"])
    return lw.Article(
        name="mat",
        measures=["width", "height"],
        lists=[
            lw.SizeList(
                "ours",
                "invented",
                lw.SourceMark.practice,
                lw.SizeOf.filling,
                [
                    lw.ArticleSize(
                        "one", [lw.NamedMeasure("width", 620, 620, "62 cm"), lw.NamedMeasure("height", 320, 340, "32-34 cm")]
                    )
                ],
            )
        ],
        inputs=[lw.ArticleInput("fringe", "below the mat", 0, 100)],
        counts=[lw.ArticleCount("strips", "side by side", 1, 10)],
        closures=[lw.Closure("lap", lw.ClosureKind.overlap, 30, 40, "invented")],
        rules=[lw.FillingRule("snug", "invented", lw.SourceMark.practice, 20, 20)],
        pieces=[
            lw.ArticlePiece(
                "strip",
                across="strips",
                width=width,
                length=lw.Extent([lw.LengthTerm("height"), lw.LengthTerm("overlap"), lw.LengthTerm("fringe", -1)]),
                upper=lw.EdgeUse.closure,
                shape=[lw.ShapePoint(lw.Extent([lw.LengthTerm("height", 0.5)]), lw.Extent(least_mm=50, greatest_mm=60))],
            )
        ],
        seams=[lw.ArticleSeam("between", between=["strips"], length=lw.Extent([lw.LengthTerm("height")]))],
        cautions=[lw.Caution("Not by the stove.", "invented", lw.SourceMark.practice)],
    )


@pytest.fixture
def choices():
    return lw.ArticleChoices(
        "ours", "one", "snug", "lap", [lw.NamedMeasure("fringe", 10, 10)], [lw.NamedCount("strips", 3)]
    )


def test_articles_come_with_the_library_and_are_files():
    assert lw.article_names() == [
        "cushion cover",
        "blanket of panels",
        "scarf",
        "bag panel",
        "straight garment pieces",
    ]
    for name in lw.article_names():
        article = lw.built_in_article(name)
        assert article.name == name and article.cautions
        assert lw.read_article(lw.write(article)) == article
        assert lw.read_article(lw.write(article).encode()) == article
    with pytest.raises(lw.Error) as caught:
        lw.built_in_article("hat")
    assert caught.value.code is lw.ErrorCode.bad_argument
    assert caught.value.field == "name" and "'scarf'" in str(caught.value)


def test_a_blanket_is_shared_out_and_sewn_where_its_panels_meet():
    choices = lw.ArticleChoices(measures=[lw.NamedMeasure("width", 1200, 1200), lw.NamedMeasure("height", 1500, 1500)])
    choices.counts = [lw.NamedCount("across", 3), lw.NamedCount("up", 1)]
    made = lw.targets(lw.built_in_article("blanket of panels"), choices)
    free, seamed = lw.EdgeUse.free, lw.EdgeUse.seamed
    assert [(piece.name, piece.left, piece.right) for piece in made.pieces] == [
        ("panel, left", free, seamed),
        ("panel, middle", seamed, seamed),
        ("panel, right", seamed, free),
    ]
    assert {(piece.width_least_mm, piece.length_greatest_mm) for piece in made.pieces} == {(400, 1500)}
    assert made.seams == (lw.TargetSeam("side by side", 2, 1500, 1500),)
    assert made.seam_least_mm == made.seam_greatest_mm == 3000


def test_a_hosts_article_is_reckoned_by_the_same_rules(mat, choices):
    made = lw.targets(mat, choices)
    # By hand: 20 off 620 and off 320 to 340; the lap is 30 to 40, the fringe 10.
    point = lw.TargetPoint(150, 160, 50, 60)
    left, middle, right = made.pieces
    assert middle == lw.TargetPiece(
        "strip, middle", 1, 200, 200, 320, 350, lw.EdgeUse.seamed, lw.EdgeUse.seamed, upper=lw.EdgeUse.closure, shape=(point,)
    )
    assert left.left is lw.EdgeUse.free and right.right is lw.EdgeUse.free
    assert made.seams == (lw.TargetSeam("between", 2, 300, 320),)
    assert made.filling == (lw.NamedMeasure("width", 620, 620), lw.NamedMeasure("height", 320, 340))
    assert made.cautions == tuple(mat.cautions)
    assert made.sources[0] == "list 'ours': invented (common practice)"
    assert lw.read_article(lw.write(mat)) == mat


@pytest.mark.parametrize(
    "change, field",
    [
        (lambda a, c: setattr(c, "list", ""), "choices.list"),
        (lambda a, c: setattr(c, "size", "two"), "choices.size"),
        (lambda a, c: setattr(c, "rule", "loose"), "choices.rule"),
        (lambda a, c: setattr(c, "closure", ""), "choices.closure"),
        (lambda a, c: c.measures.clear(), "choices.measures"),
        (lambda a, c: c.measures.append(lw.NamedMeasure("girth", 1, 1)), "choices.measures[1].name"),
        (lambda a, c: c.measures.__setitem__(0, lw.NamedMeasure("fringe", 10, float("nan"))), "choices.measures[0].greatest_mm"),
        (lambda a, c: c.counts.__setitem__(0, lw.NamedCount("strips", 11)), "choices.counts[0].count"),
        (lambda a, c: a.pieces[0].width.terms.append(lw.LengthTerm("girth")), "pieces[0].width.terms[1].of"),
        (lambda a, c: setattr(a.pieces[0].shape[0].width, "least_mm", 70), "pieces[0].shape[0].width.greatest_mm"),
        (lambda a, c: setattr(a.pieces[0], "count", 0), "pieces[0].count"),
        (lambda a, c: a.rules.clear(), "lists[0].of"),
    ],
)
def test_what_cannot_be_reckoned_is_refused_with_its_field(mat, choices, change, field):
    change(mat, choices)
    with pytest.raises(lw.Error) as caught:
        lw.targets(mat, choices)
    assert caught.value.code is lw.ErrorCode.bad_argument
    assert caught.value.field == field
    if not field.startswith("choices"):
        with pytest.raises(lw.Error) as caught:
            lw.write(mat)
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_value, field)


def test_a_scarf_goes_by_its_wearer_and_a_cover_by_the_insert_that_is_there():
    scarf = lw.built_in_article("scarf")
    choices = lw.ArticleChoices("by the wearer", "as long as the wearer is tall")
    choices.measures = [lw.NamedMeasure("width", 200, 200), lw.NamedMeasure("wearer's height", 1720, 1720)]
    assert lw.targets(scarf, choices).pieces[0].length_least_mm == 1720
    assert scarf.lists[0].sizes[0].measures[0].of == "wearer's height"
    cushion = lw.built_in_article("cushion cover")
    mine = lw.ArticleChoices(rule="insert 2 in larger", closure="seam", measures_of_filling=True)
    mine.measures = [lw.NamedMeasure("width", 450, 450), lw.NamedMeasure("height", 450, 450)]
    assert lw.targets(cushion, mine).pieces[0].width_least_mm == pytest.approx(450 - 50.8)
    mine.measures[1] = lw.NamedMeasure("height", 500, 500)
    with pytest.raises(lw.Error, match="is for squares; this is oblong") as refused:
        lw.targets(cushion, mine)
    assert refused.value.field == "choices.rule"
    assert [rule.name for rule in cushion.rules if rule.oblongs_only] == ["oblong insert 1 in larger"]


def test_a_graded_rule_knows_its_own_sizes_and_no_others():
    cushion = lw.built_in_article("cushion cover")
    choices = lw.ArticleChoices("inserts, US", "18 x 18 in", "graded", "seam")
    assert lw.targets(cushion, choices).pieces[0].width_least_mm == pytest.approx(17 * 25.4)  # aloriam.com
    choices = lw.ArticleChoices(rule="graded", closure="seam", measures_of_filling=True)
    choices.measures = [lw.NamedMeasure("width", 304.8, 304.8), lw.NamedMeasure("height", 304.8, 304.8)]
    with pytest.raises(lw.Error) as caught:
        lw.targets(cushion, choices)
    assert caught.value.field == "choices.rule" and "304.8" in str(caught.value)


def test_a_file_that_is_refused_tells_line_and_field():
    text = '{"format": "latchwork-article", "version": 1, "name": "mat",\n "pieces": [{"name": "mat", "left": "glued"}]}'
    with pytest.raises(lw.Error) as caught:
        lw.read_article(text)
    assert (caught.value.code, caught.value.line) == (lw.ErrorCode.bad_value, 2)
    assert caught.value.field == "pieces[0].left"


def test_data_of_a_wrong_type_is_refused_with_the_path_to_it(mat, choices):
    mat.pieces[0].length.over = "strips"
    with pytest.raises(TypeError, match=r"Article\.pieces\[0\]\.length\.over must be a list, not str"):
        lw.targets(mat, choices)


def test_seams_go_on_into_a_need_of_yarn(mat, choices):
    panel = lw.join_strips("plain", 20, [lw.stockinette(30)])
    request = lw.YarnRequest(yarns=[lw.Yarn("main", lw.read_yarn_number("50 g = 250 m"), 50.0)])
    request.loops = [lw.MeasuredLoops("stockinette", 100, 1000)]
    request.sureness = request.allowance = 0.0
    (without,) = lw.yarn_need(panel, lw.Swatch(), request).estimates
    request.seam_mm = lw.targets(mat, choices).seam_greatest_mm
    (sewn,) = lw.yarn_need(panel, lw.Swatch(), request).estimates
    assert request.seam_mm == 640
    assert sewn.length_m - without.length_m == pytest.approx(0.640 * request.seam_ratio)


def test_a_measure_is_a_number_of_mm_or_a_text_with_its_unit():
    text = """{"format": "latchwork-article-choices", "version": 1, "article": "scarf",
 "choices": {"measures": [{"name": "width", "least_mm": "17 3/4 in", "greatest_mm": "%s"}]}}"""
    request = lw.read_article_request(text % "45.5 cm")
    assert request.choices.measures[0] == lw.NamedMeasure("width", 450.85, 455.0)
    assert lw.read_article_request(lw.write(request)) == request
    with pytest.raises(lw.Error) as caught:
        lw.read_article_request(text % "45.5")
    assert (caught.value.code, caught.value.line) == (lw.ErrorCode.bad_unit, 2)
    assert caught.value.field == "choices.measures[0].greatest_mm"


@pytest.mark.parametrize("width", [1057, 1170, 1226, 1399])
def test_panels_sewn_side_by_side_have_one_row_count_and_the_same_repeats(width):
    counted, measured = lw.Counted, []
    for texture, stitches, rows in (("stockinette", 28, 40), ("rope 2/2 every 6", 36, 42), ("garter 1/1", 26, 56)):
        measured += [lw.Measurement(texture, counted.stitches, stitches, 100)]
        measured += [lw.Measurement(texture, counted.rows, rows, 100)]
    swatch = lw.Swatch(measured)
    edge = lw.stockinette(1)
    strips = [edge, lw.stockinette(4), lw.rope(2, 2, 6, lw.Lean.left), lw.garter(1, 1, 6), edge]
    panel = lw.join_strips("runner", 60, strips)
    choices = lw.ArticleChoices(
        measures=[lw.NamedMeasure("width", width, width), lw.NamedMeasure("height", 1500, 1500)],
        counts=[lw.NamedCount("across", 3), lw.NamedCount("up", 1)],
    )
    design = lw.FitRequest(edge_least=1, edge_most=6, rows_step=6, tolerance_percent=3, seam_left=1, seam_right=1)
    request = lw.ArticleRequest("blanket of panels", choices, groups=[lw.StripRun(1, 2, 1, 40), lw.StripRun(3, 3, 0, 10)],
                                edge=0, design=design)
    found = lw.fit_article(lw.built_in_article(request.article), request, panel, swatch)
    best = [piece.fit.candidates[0] for piece in found.pieces]
    assert len(best) == 3 and found.message == ""
    assert len({(one.rows, one.panels, tuple(one.times)) for one in best}) == 1
    # No choice of all that fits has a lesser greatest error.
    own = lw.panel_design(request, panel)
    own.most = 10_000
    fits = [lw.fit_piece(piece.target, own, swatch).candidates for piece in found.pieces]
    alike = [{(one.rows, one.panels, tuple(one.times)) for one in each} for each in fits]
    least = min(
        max(next(one.error for one in each if (one.rows, one.panels, tuple(one.times)) == key) for each in fits)
        for key in set.intersection(*alike)
    )
    assert max(one.error for one in best) == least
