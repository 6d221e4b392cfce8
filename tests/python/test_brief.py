"""The main job from Python: the same bytes as everywhere, and the examples that do it."""

import copy
import dataclasses
import json
import os
import pickle
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

import conftest
import latchwork as lw
import pytest

BRIEFS = sorted(path.parent for path in (conftest.EXAMPLES / "briefs").glob("*/panel.json"))
FILES = [
    "chart-operator.svg",
    "chart-rs.svg",
    "chart.txt",
    "instructions.txt",
    "page.html",
    "plan.json",
    "schematic.svg",
    "summary.txt",
]


def files_of(brief):
    return sorted(FILES + ["article.txt"] * (brief.article is not None))


PYTHON_EXAMPLES = conftest.EXAMPLES / "python"


def run_script(name, *arguments):
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path[1:])}
    return subprocess.run(
        [sys.executable, PYTHON_EXAMPLES / name, *arguments], env=environment, capture_output=True, text=True
    )


@pytest.fixture(scope="module", params=BRIEFS, ids=lambda path: path.name)
def done(request):
    """(folder, brief, job) of each example."""
    brief = lw.read_brief(request.param)
    return request.param, brief, lw.run(brief)


def test_there_are_examples_to_run():
    assert len(BRIEFS) >= 2


def test_a_brief_is_its_files(done):
    folder, brief, _ = done
    assert brief == lw.read_brief(str(folder))
    assert brief.panel == lw.read_panel((folder / "panel.json").read_bytes())
    assert brief.swatch == lw.read_swatch((folder / "swatch.csv").read_text(encoding="utf-8"))
    file = lw.read_machine((folder / "machine.json").read_text(encoding="utf-8"))
    assert (brief.machine, brief.effort) == (file.machine, file.effort)
    for twin in (copy.copy(brief), copy.deepcopy(brief), pickle.loads(pickle.dumps(brief))):
        assert twin == brief


def test_a_job_is_what_the_single_calls_give(done):
    _, brief, job = done
    grid = brief.panel.grid
    assert job.findings == lw.findings(grid, brief.machine)
    assert job.plan == lw.plan(grid, brief.machine, brief.effort)
    assert job.regular == lw.plan_regular(grid, brief.machine, brief.effort)
    assert job.verification == lw.verify(grid, job.plan) and job.verification.verified
    assert job.size == lw.size(brief.panel, brief.swatch)
    for twin in (copy.deepcopy(job), pickle.loads(pickle.dumps(job))):
        assert twin == job
    assert job.plan.status is lw.PlanStatus.optimal


def test_the_article_of_a_job_is_what_the_single_calls_give(done):
    _, brief, job = done
    assert (job.article is None) == (brief.article is None)
    if brief.article is None:
        return
    article = brief.own_article or lw.built_in_article(brief.article.article)
    request = copy.deepcopy(brief.article)
    request.design.needles = brief.machine.needles
    assert job.article.fit == lw.fit_article(article, request, brief.panel, brief.swatch)
    assert job.article.fit.targets == lw.targets(article, brief.article.choices)
    assert len(job.article.works) == len(job.article.fit.pieces) > 0
    seam_mm = (job.article.fit.targets.seam_least_mm + job.article.fit.targets.seam_greatest_mm) / 2
    works = []
    for piece, work in zip(job.article.fit.pieces, job.article.works):
        best = piece.fit.candidates[0]
        panel = lw.fitted_piece(piece.target, lw.panel_design(request, brief.panel), best, brief.swatch)
        assert work.fits and work.panels == piece.target.count * best.panels
        assert work.plan == lw.plan(panel.grid, brief.machine, brief.effort) and work.verification.verified
        works.append(lw.work_times(work.plan, brief.effort, work.panels))
        seam_mm += piece.target.count * (best.panels - 1) * best.height_mm
    for kind in dataclasses.fields(lw.WorkTimes):
        assert getattr(job.article.times, kind.name) == sum(getattr(work, kind.name) for work in works)
    assert job.article.seam_mm == pytest.approx(seam_mm)
    per_m = brief.article.seam_ms_per_m
    assert job.article.sewing_ms == round(job.article.seam_mm * per_m / 1000)
    assert ("without sewing up" in lw.summary(brief, job)) == (per_m == 0 and seam_mm > 0)
    assert ("of sewing up = " in lw.summary(brief, job)) == (per_m > 0 and seam_mm > 0)
    assert (job.article.yarn is None) == (brief.yarn is None)
    spoiled = copy.deepcopy(job)
    spoiled.article.works[0].panels += 1
    with pytest.raises(lw.Error) as caught:
        lw.summary(brief, spoiled)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "job.article.works[0]")


def test_what_fits_an_article_is_a_brief_of_its_own(done, tmp_path):
    _, brief, job = done
    panels = job.article.panels if job.article else []
    assert bool(panels) == bool(job.article)
    for index, told in enumerate(panels):
        fitted = lw.fitted_brief(brief, job, index)
        piece = job.article.fit.pieces[told.piece]
        design = lw.panel_design(brief.article, brief.panel)
        best = piece.fit.candidates[0]
        assert fitted.panel.grid == lw.fitted_piece(piece.target, design, best, brief.swatch, told.panel).grid
        assert fitted.panel.name == f"{brief.panel.name}: {told.pieces}, seams included" and fitted.article is None
        assert (fitted.machine, fitted.effort, fitted.swatch) == (brief.machine, brief.effort, brief.swatch)
        assert told.count == sum(work.panels for work in job.article.works)  # of the examples: all alike
        own = lw.run(fitted)
        assert own.plan == job.article.works[told.piece].plan and own.verification.verified
        folder = tmp_path / told.folder
        lw.write_brief(fitted, folder)
        lw.write_job(fitted, own, folder)
        assert lw.read_brief(folder) == fitted
        assert f"Folder         {told.folder}: {told.count} to knit, for {told.pieces}\n" in lw.summary(brief, job)
        assert f'<a href="{told.folder}/page.html">' in lw.page_html(brief, job)
    for wrong in (len(panels), -1):
        with pytest.raises(lw.Error) as caught:
            lw.fitted_brief(brief, job, wrong)
        assert caught.value.code is lw.ErrorCode.bad_argument
        assert caught.value.field == ("index" if job.article else "brief.article")
        assert not job.article or f"index is {wrong};" in str(caught.value)


def test_where_nothing_fits_no_hours_and_no_yarn_are_told():
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "harbour-cushion")
    brief.article.design.edge_most = 4
    job = lw.run(brief)
    assert [work.fits for work in job.article.works] == [False, False]
    assert (job.article.times, job.article.sewing_ms) == (lw.WorkTimes(), 0)
    assert (job.article.yarn, job.article.panels) == (None, [])
    assert "What fits      nothing: no hours and no yarn are told\n" in lw.summary(brief, job)


def test_a_job_is_written_as_the_single_calls_say(done, tmp_path):
    folder, brief, job = done
    out = tmp_path / "out"
    lw.write_job(brief, job, out)
    names = files_of(brief)
    assert sorted(path.name for path in out.iterdir()) == names
    written = {name: (out / name).read_text(encoding="utf-8") for name in names}
    assert written["summary.txt"] == lw.summary(brief, job) and "verified" in written["summary.txt"]
    assert written["page.html"] == lw.page_html(brief, job)
    assert lw.read_plan(written["plan.json"]) == job.plan
    assert json.loads(written["plan.json"])["format"] == "latchwork-plan"
    expected = sorted((folder / "expected").iterdir())
    assert expected
    for path in expected:  # the same bytes as from C++
        assert written[path.name] == path.read_text(encoding="utf-8"), path.name
    for name in names:
        if name.endswith(".svg"):
            assert ElementTree.fromstring(written[name]).tag.endswith("svg")
    lw.write_job(brief, job, str(tmp_path / "again"))
    assert all((tmp_path / "again" / name).read_text(encoding="utf-8") == written[name] for name in names)


def test_the_example_does_the_main_job_and_prints_what_stands_beside_it(done, tmp_path):
    folder, brief, job = done
    ran = run_script("main_job.py", folder, tmp_path)
    assert ran.returncode == 0, ran.stderr
    summary = (folder / "expected/summary.txt").read_text(encoding="utf-8")
    assert ran.stdout.startswith(summary) and summary == lw.summary(brief, job)
    assert len(ran.stdout[len(summary) :].splitlines()) == len(job.plan.stops)
    fitted = [panel.folder for panel in job.article.panels] if job.article else []
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted(files_of(brief) + fitted)
    for name in fitted:
        assert lw.read_brief(tmp_path / name) and (tmp_path / name / "page.html").is_file()
    expected = PYTHON_EXAMPLES / f"main_job.{folder.name}.expected.txt"
    if folder.name != "sampler":  # one small brief in full stands for all
        return
    if os.environ.get("LATCHWORK_RENEW") == "1":
        expected.write_text(ran.stdout, encoding="utf-8")
    assert ran.stdout == expected.read_text(encoding="utf-8")


def test_ten_lines_print_what_stands_beside_them():
    ran = run_script("ten_lines.py")
    assert ran.returncode == 0, ran.stderr
    assert ran.stdout == (PYTHON_EXAMPLES / "ten_lines.expected.txt").read_text(encoding="utf-8")


def test_the_example_of_timings_prints_what_stands_beside_it(tmp_path):
    ran = run_script("own_timings.py", PYTHON_EXAMPLES.parent / "timings/three-evenings.csv")
    assert ran.returncode == 0, ran.stderr
    expected = PYTHON_EXAMPLES / "own_timings.expected.txt"
    if os.environ.get("LATCHWORK_RENEW") == "1":
        expected.write_text(ran.stdout, encoding="utf-8")
    assert ran.stdout == expected.read_text(encoding="utf-8")
    spoiled = tmp_path / "spoiled.csv"
    spoiled.write_text("rows,time,unit\n10,40,days\n")
    ran = run_script("own_timings.py", spoiled)
    assert ran.returncode == 1 and ran.stderr.startswith("bad_unit: line 2, field unit: ")


def test_a_brief_that_is_not_there_is_told_by_file(tmp_path):
    with pytest.raises(lw.Error) as caught:
        lw.read_brief(tmp_path)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.io, "panel.json")
    ran = run_script("main_job.py", tmp_path, tmp_path)
    assert ran.returncode == 1 and ran.stderr.startswith("io: ")
    with pytest.raises(TypeError):
        lw.read_brief(3)


@pytest.mark.parametrize("name", ["panel.json", "machine.json", "swatch.csv"])
def test_a_file_of_100_mb_is_refused_by_its_name(name, tmp_path):
    for part in ("panel.json", "machine.json", "swatch.csv"):
        shutil.copy(BRIEFS[0] / part, tmp_path / part)
    os.truncate(tmp_path / name, 100_000_000)  # a hole
    with pytest.raises(lw.Error) as caught:
        lw.read_brief(tmp_path)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.too_large, name)


@pytest.mark.parametrize("folder", ["", "\0x", "out\0side"])
def test_a_folder_that_names_none_is_refused_as_that_argument(folder, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    brief = lw.read_brief(BRIEFS[0])
    for call in (lambda: lw.read_brief(folder), lambda: lw.write_job(brief, lw.Job(), folder)):
        with pytest.raises(lw.Error) as caught:
            call()
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "folder")
        assert str(caught.value).startswith("folder ")
    assert list(tmp_path.iterdir()) == []



def test_a_brief_can_be_put_together_from_its_parts_and_watched(panel, swatch):
    brief = lw.Brief(panel, swatch)
    assert (brief.machine, brief.effort) == (lw.Machine(), lw.Effort())
    told = []
    job = lw.run(brief, progress=told.append, stop=lw.StopSource(), work_limit=0)
    assert job.verification.verified and told
    brief.swatch = lw.Swatch()
    unmeasured = lw.run(brief)
    assert unmeasured.size is None and unmeasured.plan == job.plan and not job.missing
    assert {finding.code for finding in unmeasured.missing} == {lw.FindingCode.no_swatch}
    assert {finding.place.field for finding in unmeasured.missing} == {strip.texture for strip in job.size.strips}
    assert "Size           not known" in lw.summary(brief, unmeasured)
    brief.panel = panel.grid
    with pytest.raises(TypeError, match=r"Brief\.panel must be .*Panel, not .*Grid"):
        lw.run(brief)


def flap_of_panels(panels, shaped, swatch):
    """Plain knit between edges, made into a flap 24 cm wide and 10 high, if shaped 20 cm wide at its top."""
    strips = [lw.stockinette(1), lw.stockinette(4), lw.stockinette(1)]
    brief = lw.Brief(lw.join_strips("flap", 40, strips), swatch)
    width, length, narrow = (lw.Extent(least_mm=mm, greatest_mm=mm) for mm in (240, 100, 200))
    shape = [lw.ShapePoint(length, narrow)] if shaped else []
    brief.own_article = lw.Article("flap", pieces=[lw.ArticlePiece("flap", width=width, length=length, shape=shape)])
    brief.article = lw.ArticleRequest("flap.json", groups=[lw.StripRun(1, 1, 1, 20)], edge=0)
    brief.article.design.panels_least = brief.article.design.panels_most = panels
    return brief


def plain_swatch():
    counts = ((lw.Counted.stitches, 25), (lw.Counted.rows, 40))
    return lw.Swatch([lw.Measurement("stockinette", counted, count, 100) for counted, count in counts])


def test_panels_of_a_piece_are_told_and_drawn_with_their_seams(tmp_path):
    brief = flap_of_panels(3, False, plain_swatch())
    job = lw.run(brief)
    (work,) = job.article.works
    assert (work.panels, work.inner, work.inner_plan) == (3, 0, lw.Plan())
    assert job.article.seam_mm == pytest.approx(200)
    line = "Seams          between the panels of 'flap': 2 of 10.0 cm; in all 20.0 cm\n"
    assert line in lw.summary(brief, job)
    lw.write_job(brief, job, tmp_path)
    drawn = (tmp_path / "schematic.svg").read_text(encoding="utf-8")
    best = job.article.fit.pieces[0].fit.candidates[0]
    assert best.width_mm == pytest.approx(4 * (21 + 20 + 21))  # a stitch of each edge goes into a seam
    for told in ("flap: panel 1 of 3, width at the cast-on, 8.4 cm", "flap: panel 2 of 3, width at the cast-on, 8 cm"):
        assert told in drawn
    assert "flap, all 3 panels, width at the cast-on, 24.8 cm" in drawn
    assert "Dashed: a seam to the piece beside it." in drawn and "stroke-dasharray" in drawn
    root = ElementTree.fromstring(drawn)
    groups = {group.get("class"): group for group in root.iter("{http://www.w3.org/2000/svg}g")}
    (seams,) = groups["lw-seam"]
    assert seams.get("d").count("M") == 2
    assert len(groups["lw-outline"]) == 4  # and the panel whose charts stand beside


@pytest.mark.parametrize("panels", [3, 4, 5])
def test_of_a_shaped_piece_the_inner_panels_have_a_plan_of_their_own(panels, tmp_path):
    brief = flap_of_panels(panels, True, plain_swatch())
    job = lw.run(brief)
    (work,) = job.article.works
    assert work.fits and (work.panels, work.inner) == (panels, panels - 2)
    assert work.verification.verified and work.inner_verification.verified
    outer = lw.work_times(work.plan, brief.effort, 2)
    inner = lw.work_times(work.inner_plan, brief.effort, panels - 2)
    assert outer.shapings_ms > 0 == inner.shapings_ms
    assert job.article.times.total_ms == outer.total_ms + inner.total_ms
    middle = "middle panel" if panels == 3 else "inner panels"  # plain: its mirror image is itself
    assert [panel.pieces for panel in job.article.panels] == [
        "flap, left outer panel",
        f"flap, {middle}",
        "flap, right outer panel, mirrored",
    ]
    assert [panel.count for panel in job.article.panels] == [1, panels - 2, 1]
    for index, told in enumerate(job.article.panels):
        own = lw.fitted_brief(brief, job, index)
        cut = [span.first > 0 or span.last < own.panel.grid.columns - 1 for span in lw.outline_of(own.panel.grid).rows]
        assert any(cut) == (index != 1)
        assert lw.run(own).verification.verified
    lw.write_job(brief, job, tmp_path)
    drawn = (tmp_path / "schematic.svg").read_text(encoding="utf-8")
    assert f"flap, all {panels} panels, width at the last row" in drawn
    assert pickle.loads(pickle.dumps(job)) == job
    spoiled = copy.deepcopy(job)
    spoiled.article.works[0].inner_plan = work.plan
    with pytest.raises(lw.Error):
        lw.summary(brief, spoiled)


def test_an_article_that_lacks_a_gauge_is_not_fitted_and_its_cautions_are_told():
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "cushion")
    brief.article.design.state = lw.ClothState.washed  # measured rested
    job = lw.run(brief)
    assert job.size is not None and job.article is None and job.missing
    told = lw.summary(brief, job)
    assert "not fitted: a gauge is missing" in told and "column 'state'" in told
    made = lw.targets(lw.built_in_article(brief.article.article), brief.article.choices)
    assert made.cautions and all(caution.text in told for caution in made.cautions)


def test_the_conditions_that_were_asked_are_told(panel, swatch):
    asked = lw.Conditions(rows_apart=2, forced_exempt=True, max_depth=9)
    brief = lw.Brief(panel, swatch)
    job = lw.run(brief, conditions=asked)
    assert job.conditions == asked and lw.run(brief).conditions == lw.Conditions()
    assert "Conditions     stops 2 rows apart or more (these do not bind" in lw.summary(brief, job)
    free = lw.run(brief)
    assert job.unconditioned == free.unconditioned == free.plan
    assert "\nTheir price    " in lw.summary(brief, job) and "Their price" not in lw.summary(brief, free)
    job.unconditioned.bound_ms = -1
    with pytest.raises(lw.Error) as refused:
        lw.summary(brief, job)
    assert (refused.value.code, refused.value.field) == (lw.ErrorCode.bad_argument, "job.unconditioned.bound_ms")


def test_a_folder_whose_name_is_no_text_is_an_error_with_words(tmp_path):
    with pytest.raises(lw.Error) as caught:
        lw.read_brief(tmp_path / "a\udcff")
    assert caught.value.code is lw.ErrorCode.io and "a?" in str(caught.value)


def test_a_job_is_told_of_with_its_own_brief_alone(done, tmp_path):
    _, brief, job = done
    spoiled = copy.deepcopy(job)
    strips = [dataclasses.replace(spoiled.size.strips[0], band=10**6), *spoiled.size.strips[1:]]
    spoiled.size = dataclasses.replace(spoiled.size, strips=tuple(strips))
    other = copy.deepcopy(job)
    other.plan.rows += 1
    for wrong, field in ((spoiled, "job.size.strips[0]"), (other, "job.plan")):
        for call in (lw.summary, lw.page_html, lambda b, j: lw.write_job(b, j, tmp_path)):
            with pytest.raises(lw.Error) as caught:
                call(brief, wrong)
            assert (caught.value.code, caught.value.field) == (lw.ErrorCode.size_mismatch, field)
    assert not list(tmp_path.iterdir())


def test_size_and_yarn_are_told_with_the_state_swatch_and_yarns_that_they_come_of():
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "harbour-cushion")
    brief.article = None
    washed = list(brief.swatch.measurements)
    half = [dataclasses.replace(each, count=each.count / 2) for each in washed]
    brief.swatch = lw.Swatch(washed + [dataclasses.replace(each, state=lw.ClothState.rested) for each in half])
    job = lw.run(brief, work_limit=1)
    assert lw.summary(brief, job)
    yarn = dataclasses.replace(brief.yarn, pieces=12)
    for stale, field in (
        (dataclasses.replace(brief, state=lw.ClothState.rested), "job.size"),
        (dataclasses.replace(brief, swatch=lw.Swatch(half)), "job.size"),
        (dataclasses.replace(brief, yarn=yarn), "job.yarn"),
    ):
        for call in (lw.summary, lw.page_html):
            with pytest.raises(lw.Error) as caught:
                call(stale, job)
            assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, field)


def test_seams_in_a_yarn_of_unknown_number_leave_out_the_articles_yarn():
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "harbour-cushion")
    brief.yarn.yarns = [lw.Yarn("wool")]
    job = lw.run(brief, work_limit=1)
    assert job.yarn is not None and job.article.seam_mm > 0 and job.article.yarn is None
    note = "the article's yarn is not reckoned: its seams cannot be weighed: the number of the yarn is not known"
    assert note in job.article.notes and f"article  {note}\n" in lw.summary(brief, job)


def test_unlike_swatches_of_one_texture_are_told():
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "sampler")
    told = list(brief.swatch.measurements)
    second = [dataclasses.replace(each, swatch="second", count=each.count * 1.3) for each in told]
    brief.swatch = lw.Swatch(told + [each for each in second if each.texture == "stockinette"])
    found = lw.measuring_findings(brief.panel, brief.swatch)
    unlike = [each.message for each in found if each.code == lw.FindingCode.unlike_swatches]
    words = lw.summary(brief, lw.run(brief))
    assert len(unlike) == 2 and all(f"swatch   {each}. What would help: " in words for each in unlike)


@pytest.mark.parametrize("name", ["yarn.json", "plan.json", "Plan.json"])
def test_an_own_article_has_no_name_that_a_brief_or_a_job_has_for_something_else(name, tmp_path):
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "sampler")
    brief.own_article = lw.built_in_article("scarf")
    brief.article = lw.ArticleRequest(name)
    with pytest.raises(lw.Error) as caught:
        lw.write_brief(brief, tmp_path)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "brief.article.article")
    assert not list(tmp_path.iterdir())


# The notebooks.

NOTEBOOKS = sorted(PYTHON_EXAMPLES.glob("*.ipynb"))


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_the_notebook_runs_and_shows_pictures_and_tables(path, tmp_path, monkeypatch):
    nbformat = conftest.needed("nbformat")
    nbclient = conftest.needed("nbclient")
    conftest.needed("ipykernel")
    # A kernel of the very Python that runs the tests, whichever others the machine knows.
    kernel = tmp_path / "kernels/latchwork"
    kernel.mkdir(parents=True)
    command = [sys.executable, "-m", "ipykernel_launcher", "-f", "{connection_file}"]
    (kernel / "kernel.json").write_text(json.dumps({"argv": command, "display_name": "tests", "language": "python"}))
    monkeypatch.setenv("JUPYTER_PATH", str(tmp_path))
    monkeypatch.setenv("IPYTHONDIR", str(tmp_path / "ipython"))
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join(sys.path[1:]))

    notebook = nbformat.read(path, as_version=4)
    nbformat.validate(notebook)
    assert all(not cell.get("outputs") for cell in notebook.cells)  # outputs are made, not kept
    # Beside the examples' briefs, where it may write.
    shutil.copytree(conftest.EXAMPLES / "briefs", tmp_path / "briefs")
    (tmp_path / "python").mkdir()
    resources = {"metadata": {"path": str(tmp_path / "python")}}
    nbclient.NotebookClient(notebook, kernel_name="latchwork", timeout=120, resources=resources).execute()
    shown = [output for cell in notebook.cells for output in cell.get("outputs", [])]
    kinds = [kind for output in shown for kind in output.get("data", {})]
    assert kinds.count("image/svg+xml") >= 2 and kinds.count("text/html") >= 2
    # What is plotted is seen, and the notebook of plans plots its stops and its front.
    plots = sum("plt.show()" in cell.source for cell in notebook.cells)
    assert kinds.count("image/png") == plots and (plots == 2 or path.stem != "net_loft_bolster")
    for output in shown:
        if "image/svg+xml" in output.get("data", {}):
            root = ElementTree.fromstring(output["data"]["image/svg+xml"])
            assert root.find("{http://www.w3.org/2000/svg}title").text
    printed = "".join(output["text"] for output in shown if output.output_type == "stream")
    assert "verified\n" in printed and printed.count("verified") >= 1
    expected = path.with_suffix(".expected.txt")
    if os.environ.get("LATCHWORK_RENEW") == "1":
        expected.write_text(printed, encoding="utf-8")
    assert printed == expected.read_text(encoding="utf-8")
    if path.stem == "main_job":
        brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "sampler")
        assert sorted(file.name for file in (tmp_path / "python/made").iterdir()) == files_of(brief)


def test_the_main_job_is_twenty_lines():
    notebook = json.loads((PYTHON_EXAMPLES / "main_job.ipynb").read_text(encoding="utf-8"))
    code = ["".join(cell["source"]) for cell in notebook["cells"] if cell["cell_type"] == "code"]
    assert 0 < sum(bool(line.strip()) for text in code for line in text.splitlines()) <= 20


def test_a_brief_without_a_swatch_is_told_without_a_size(tmp_path):
    for name in ("panel.json", "machine.json"):
        shutil.copy(conftest.EXAMPLES / "briefs" / "cushion" / name, tmp_path / name)
    brief = lw.read_brief(tmp_path)
    assert brief.swatch == lw.Swatch()
    job = lw.run(brief)
    assert job.size is None and job.missing


def test_a_brief_names_whose_gauge_a_texture_borrows(tmp_path):
    for name in ("panel.json", "machine.json"):
        shutil.copy(conftest.EXAMPLES / "briefs" / "cushion" / name, tmp_path / name)
    lines = (conftest.EXAMPLES / "briefs" / "cushion" / "swatch.csv").read_text(encoding="utf-8").splitlines(True)
    swatch = "".join(line for line in lines if not line.startswith("reverse,"))
    (tmp_path / "swatch.csv").write_text(swatch, encoding="utf-8")
    barred = lw.run(lw.read_brief(tmp_path))
    assert barred.size is None and [each.place.field for each in barred.missing] == ["reverse"]
    (tmp_path / "substitutes.csv").write_text("texture,use\nreverse,stockinette\n", encoding="utf-8")
    brief = lw.read_brief(tmp_path)
    assert brief.substitutes == [lw.Substitute("reverse", "stockinette")]
    job = lw.run(brief)
    assert job.missing == [] and job.size == lw.size(brief.panel, brief.swatch, substitutes=brief.substitutes)
    borrowed = [each for each in job.size.findings if each.code == lw.FindingCode.borrowed_gauge]
    assert len(borrowed) == 1 and borrowed[0].message in lw.summary(brief, job)
    (tmp_path / "substitutes.csv").write_text("texture,use\nreverse,reverse\n", encoding="utf-8")
    with pytest.raises(lw.Error) as caught:
        lw.read_brief(tmp_path)
    assert (caught.value.field, caught.value.line) == ("substitutes.csv: use", 2)


def test_a_brief_says_which_cloth_its_sizes_are_of_and_how_long_one_sits(tmp_path):
    brief = lw.read_brief(conftest.EXAMPLES / "briefs" / "sampler")
    assert (brief.state, brief.session_ms, brief.rest_ms) == (None, 3_600_000, 1_200_000)
    assert " cm high, washed; " in lw.summary(brief, lw.run(brief))
    told = list(brief.swatch.measurements)
    rested = [dataclasses.replace(each, state=lw.ClothState.rested, count=each.count * 0.9) for each in told]
    brief.swatch = lw.Swatch(told + rested)
    assert " cm high, washed; " in lw.summary(brief, lw.run(brief))
    brief.state, brief.session_ms, brief.rest_ms = lw.ClothState.rested, 60_000, 0
    job = lw.run(brief)
    assert job.size == lw.size(brief.panel, brief.swatch, state=lw.ClothState.rested)
    sittings = lw.sessions(job.plan, brief.effort, session_ms=60_000, rest_ms=0)
    assert f"Sessions       {len(sittings)} of " in lw.summary(brief, job)
    lw.write_brief(brief, tmp_path)
    assert lw.read_brief(tmp_path) == brief and (tmp_path / "brief.json").exists()
    (tmp_path / "brief.json").write_text(
        '{"format": "latchwork-brief", "version": 1, "state": "damp"}', encoding="utf-8"
    )
    with pytest.raises(lw.Error) as caught:
        lw.read_brief(tmp_path)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_value, "brief.json: state")
    brief.rest_ms = 1
    with pytest.raises(lw.Error) as caught:
        lw.run(brief)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "brief.rest_ms")
