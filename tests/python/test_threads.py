"""Other threads: they run during every long call, and may change what was handed to it."""

import dataclasses
import sys
import threading
import time

import latchwork as lw
import pytest


@pytest.fixture(scope="module")
def piece():
    """A panel with every texture that costs time, its brief and its job."""

    class Piece:
        left = [lw.reverse(2), lw.moss(4), lw.garter(2, 2, 3), lw.basket(2, 3), lw.tuck_rib(2), lw.rope(2, 2, 8, lw.Lean.left)]
        panel = lw.build_panel("piece", 96, edge=lw.stockinette(1), left=[*left, lw.stockinette(1)], centre=lw.basket(3, 4))
        tall = lw.build_panel("tall", 960, edge=lw.stockinette(1), left=left * 2, centre=lw.basket(3, 4))
        textures = {strip.texture for strip in panel.bands[0].strips}
        swatch = lw.Swatch([lw.Measurement(name, counted, 30, 100, "") for name in textures for counted in lw.Counted])
        brief = lw.Brief(panel, swatch)
        job = lw.run(brief)
        moves = lw.moves(job.regular)
        long_plan = lw.plan(tall.grid, lw.Machine())
        certificate = lw.certify(panel.grid, brief.machine, total_ms=job.plan.total_ms)
        request = lw.FitRequest(width_mm=20_000, height_mm=15_000, edge=lw.stockinette(1), edge_most=20_000)
        request.groups = [lw.FitGroup([lw.reverse(2)], 1, 30_000)]

    return Piece


CALLS = {
    "certify": lambda piece, _: lw.certify(piece.panel.grid, lw.Machine(), total_ms=piece.job.plan.total_ms),
    "chart_svg": lambda piece, _: lw.chart_svg(piece.tall),
    "chart_text": lambda piece, _: lw.chart_text(piece.tall),
    "check_certificate": lambda piece, _: lw.check_certificate(
        piece.panel.grid, lw.Machine(), certificate=piece.certificate
    ),
    "findings": lambda piece, _: lw.findings(piece.tall.grid, lw.Machine()),
    "fit": lambda piece, _: lw.fit(piece.request, piece.swatch),
    "fit_piece": lambda piece, _: lw.fit_piece(
        lw.TargetPiece("long", 1, 20_000, 20_000, 15_000, 15_000), piece.request, piece.swatch
    ),
    "grade": lambda piece, _: lw.grade(
        lw.GradeRequest(
            dataclasses.replace(piece.request, edge_most=3),
            [lw.GradeSize("S", 9_000, 0, 9_000, 0), lw.GradeSize("M", 10_000, 0, 10_000, 0)],
        ),
        piece.swatch,
    ),
    "hand_work": lambda piece, _: lw.hand_work(piece.long_plan),
    "instructions": lambda piece, _: lw.instructions(piece.panel, piece.job.plan, lw.Machine()),
    "moves": lambda piece, _: lw.moves(piece.job.plan),
    "page_html": lambda piece, _: lw.page_html(piece.brief, piece.job),
    "plan": lambda piece, _: lw.plan(piece.panel.grid, lw.Machine()),
    "plan_period": lambda piece, _: lw.plan_period(piece.job.plan),
    "plan_regular": lambda piece, _: lw.plan_regular(piece.panel.grid, lw.Machine()),
    "stop_kinds": lambda piece, _: lw.stop_kinds(piece.job.plan),
    "run": lambda piece, _: lw.run(piece.brief),
    "rests": lambda piece, _: lw.rests(piece.long_plan),
    "sessions": lambda piece, _: lw.sessions(piece.long_plan),
    "simulate": lambda piece, _: lw.simulate(
        lw.Bed(piece.job.regular.leftmost, piece.panel.grid.columns), piece.moves
    ),
    "stop_reasons": lambda piece, _: lw.stop_reasons(piece.panel.grid, lw.Machine(), plan=piece.job.plan),
    "plan_tolerances": lambda piece, _: lw.plan_tolerances(piece.panel.grid, lw.Machine(), plan=piece.job.plan),
    "plan_front": lambda piece, _: lw.plan_front(piece.panel.grid, lw.Machine(), work_limit=1000),
    "condition_prices": lambda piece, _: lw.condition_prices(
        piece.panel.grid, lw.Machine(), conditions=lw.Conditions(rows_apart=2)
    ),
    "verify": lambda piece, _: lw.verify(piece.panel.grid, piece.job.regular),
    "work_times": lambda piece, _: lw.work_times(piece.long_plan),
    "write": lambda piece, _: lw.write(piece.tall),
    "write_job": lambda piece, folder: lw.write_job(piece.brief, piece.job, folder),
}


@pytest.mark.parametrize("name", CALLS)
def test_another_thread_runs_during_a_long_call(piece, name, tmp_path):
    """The other thread can only count while the GIL is free, since the interpreter's own switching is turned off."""
    counted = 0
    done = threading.Event()
    started = threading.Event()

    def count():
        nonlocal counted
        started.set()
        while not done.is_set():
            counted += 1
            time.sleep(0)

    counter = threading.Thread(target=count)
    before = sys.getswitchinterval()
    counter.start()
    started.wait()
    try:
        sys.setswitchinterval(100)
        first = counted
        deadline = time.monotonic() + 20
        while counted - first <= 10 and time.monotonic() < deadline:  # neither line frees the GIL; a call may be too quick
            CALLS[name](piece, tmp_path)
        seen = counted - first
    finally:
        sys.setswitchinterval(before)
        done.set()
        counter.join()
    assert seen > 10


@pytest.mark.parametrize("name", ["plan", "findings"])
def test_the_grid_may_be_changed_by_another_thread_meanwhile(piece, name):
    grid = piece.tall.grid.sliced(1, 0, 192, piece.tall.grid.columns) if name == "plan" else piece.tall.grid
    call = getattr(lw, name)
    expected = call(grid, lw.Machine())
    results = []
    thread = threading.Thread(target=lambda: results.append(call(grid, lw.Machine())))
    thread.start()
    time.sleep(0.001)
    grid.set(1, 0, lw.Cell.purl)
    thread.join()
    assert results[0] in (expected, call(grid, lw.Machine()))  # as it was, or as it is: nothing between
