"""What the package promises as a package: names, words, stubs, and life without NumPy."""

import importlib.util
import inspect
import os
import pathlib
import re
import subprocess
import sys
import types

import conftest
import headers
import latchwork as lw
import pytest

PACKAGE = conftest.TOP / "bindings/python"


def load(name, path):
    spec = importlib.util.spec_from_file_location(name, path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


make_stub = load("make_stub", PACKAGE / "tools/make_stub.py")


def run_python(code, *options):
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path[1:])}
    return subprocess.run([sys.executable, *options, "-c", code], env=environment, capture_output=True, text=True)


def test_the_version_is_the_one_in_cmake():
    project = (conftest.TOP / "CMakeLists.txt").read_text(encoding="utf-8")
    version = re.search(r"project\(latchwork VERSION ([\d.]+)", project).group(1)
    assert lw.version() == lw.__version__ == version


def test_all_public_names_are_listed_and_come_from_the_package():
    assert sorted(lw.__all__) == list(lw.__all__) and len(set(lw.__all__)) == len(lw.__all__)
    public = {name for name in vars(lw) if not name.startswith("_")}
    assert public == set(lw.__all__)
    made_in_core = {name for name in vars(lw._core) if not name.startswith("_")}
    assert made_in_core <= public
    assert all(getattr(lw, name).__module__ == "latchwork" for name in public if isinstance(getattr(lw, name), type))


def test_everything_public_is_told_in_words():
    for name in lw.__all__:
        thing = getattr(lw, name)
        if isinstance(thing, int):
            continue
        assert inspect.getdoc(thing), name
        if isinstance(thing, type):
            for member, value in vars(thing).items():
                documented = isinstance(value, property) or inspect.isroutine(value)
                if documented and not member.startswith("_"):
                    assert inspect.getdoc(value).strip("\n").count(" ") > 2, f"{name}.{member}"


def test_the_stub_in_the_tree_is_the_one_that_is_made():
    made = make_stub.stub(lw._core)
    assert made == (PACKAGE / "latchwork/_core.pyi").read_text(encoding="utf-8")
    compile(made, "_core.pyi", "exec")
    installed = pathlib.Path(lw.__file__).parent
    assert (installed / "py.typed").exists()
    assert (installed / "_core.pyi").read_text(encoding="utf-8") == made


def test_a_stub_that_lags_behind_is_seen():
    class Changed:
        """A class with a method that the stub does not know."""

    before = make_stub.class_stub(lw.StopSource)
    assert "def request_stop(self) -> bool" in before and before != make_stub.class_stub(Changed)


def test_every_argument_has_a_name():
    text = (PACKAGE / "latchwork/_core.pyi").read_text(encoding="utf-8")
    assert not re.search(r"\barg\d", text)


def test_the_type_checker_is_content_with_stub_package_and_examples():
    conftest.needed("mypy")
    command = [sys.executable, "-m", "mypy", "--strict", "--cache-dir", os.devnull, "-p", "latchwork"]
    environment = {**os.environ, "MYPYPATH": str(PACKAGE)}
    checked = subprocess.run(command, env=environment, capture_output=True, text=True)
    assert checked.returncode == 0, checked.stdout
    scripts = [str(path) for path in sorted((conftest.EXAMPLES / "python").glob("*.py"))]
    assert scripts
    command = [sys.executable, "-m", "mypy", "--strict", "--cache-dir", os.devnull, *scripts]
    checked = subprocess.run(command, env=environment, capture_output=True, text=True)
    assert checked.returncode == 0, checked.stdout


def test_numpy_is_needed_for_arrays_only():
    code = """
import sys
sys.modules["numpy"] = None  # as where it is not installed
import latchwork as lw
grid = lw.Grid.from_cells(memoryview(bytes([0, 1])).cast("B", (1, 2)))
assert grid == lw.Grid.from_text("kp")
assert lw.verify(grid, lw.plan(grid, lw.Machine())).verified
try:
    grid.cells
except ImportError as error:
    print("ImportError", "numpy" in str(error))
"""
    ran = run_python(code)
    assert ran.stdout == "ImportError True\n", ran.stderr


def test_importing_brings_no_numpy():
    ran = run_python("import sys, latchwork; print('numpy' in sys.modules)")
    assert ran.stdout == "False\n", ran.stderr


def test_a_source_archive_is_not_offered(monkeypatch, tmp_path):
    """Made below the top folder it would miss the C++, so the build backend refuses; a wheel is made as ever."""
    built = types.ModuleType("scikit_build_core.build")
    built.build_sdist = built.build_wheel = lambda *arguments: "made"
    monkeypatch.setitem(sys.modules, "scikit_build_core", types.ModuleType("scikit_build_core"))
    monkeypatch.setitem(sys.modules, "scikit_build_core.build", built)
    backend = load("latchwork_backend", PACKAGE / "backend/latchwork_backend.py")
    assert backend.build_wheel("folder") == "made"
    with pytest.raises(SystemExit, match="wheels only"):
        backend.build_sdist(str(tmp_path))
    project = (PACKAGE / "pyproject.toml").read_text(encoding="utf-8")
    assert 'build-backend = "latchwork_backend"' in project and 'cmake.source-dir = "../.."' in project


def test_every_struct_of_the_headers_is_a_class_here_or_keywords():
    keywords = {
        "PlanOptions": lw.plan,
        "FitOptions": lw.fit,
        "SessionOptions": lw.sessions,
        "WatchOptions": lw.simulate,
        "ChartOptions": lw.chart_svg,
        "PanelParts": lw.build_panel,
        "SizeOptions": lw.size,
        "ShapeOptions": lw.shaped,
    }
    for name, fields in headers.structs().items():
        if name in keywords:
            signature = keywords[name].__doc__.splitlines()[0]
            assert all(re.search(rf"\b{field}: ", signature) for field in fields), (name, signature)
        else:
            assert name in lw.__all__
