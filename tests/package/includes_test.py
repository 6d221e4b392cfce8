"""Includes point one way. Reads every #include line and fails on one that should not be there.

usage: includes_test.py SOURCE
  src:      a folder may use those above it in src/CMakeLists.txt's list, its own, and public headers of those; no others.
  include:  a public header may use public headers of subjects above its own, and the standard library; no fmt, no JSON,
            no iostream.
  plan and simulate share only data: simulate uses plan.hpp, move.hpp, grid.hpp and what those need, and none of plan's
            code; nothing of plan calls simulate.
  bindings: public headers only.
"""
import pathlib
import re
import sys

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.MULTILINE)
STREAMS = {"iostream", "ostream", "istream", "sstream", "fstream", "iomanip", "ios", "streambuf"}
NO_SUBJECT = {"export", "latchwork"}  # headers that belong to none: the export mark, and all of latchwork at once


def includes(path):
    return [match.groups() for match in INCLUDE.finditer(path.read_text(encoding="utf-8"))]


def subjects(source):
    text = (source / "src/CMakeLists.txt").read_text(encoding="utf-8")
    listed = re.search(r"foreach\(subject IN ITEMS(.*?)\)", text, re.DOTALL)
    return listed.group(1).split()


def sources(folder):
    return sorted(path for ending in ("*.hpp", "*.cpp", "*.h", "*.in") for path in folder.rglob(ending))


def public_subject(name):
    """The subject of an include of a public header; None for another include."""
    match = re.fullmatch(r"latchwork/(\w+)\.hpp", name)
    return match.group(1) if match else None


def problems(source):
    order = {subject: place for place, subject in enumerate(subjects(source))}
    found = []

    def wrong(path, name, why):
        found.append(f"{path.relative_to(source)} includes {name}: {why}")

    for folder in sorted((source / "src").iterdir()):
        if not folder.is_dir():
            continue
        own = folder.name
        if own not in order:
            found.append(f"src/{own} is not in src/CMakeLists.txt's list")
            continue
        for path in sources(folder):
            for mark, name in includes(path):
                used = public_subject(name)
                if used is None and mark == '"':
                    # A private header: of another folder by its path below src, or of this one by its name alone.
                    used = name.split("/")[0] if "/" in name else own
                    if not (source / "src" / name).exists() and not (folder / name).exists():
                        wrong(path, name, "there is no such header in src")
                        continue
                if used is None or used in NO_SUBJECT:
                    if used == "latchwork":
                        wrong(path, name, "the library's own code names what it uses")
                    continue
                if used not in order:
                    wrong(path, name, "no subject of that name is listed")
                elif order[used] > order[own]:
                    wrong(path, name, f"{used} comes after {own}")
                if own == "simulate" and used in {"plan", "move"} and not name.startswith("latchwork/"):
                    wrong(path, name, "simulate shares only data with plan")
                if own == "plan" and used in {"simulate", "move"}:
                    wrong(path, name, "plan neither moves nor simulates")

    for path in sources(source / "include"):
        own = path.stem
        for mark, name in includes(path):
            used = public_subject(name)
            if name.split("/")[0] in {"fmt", "nlohmann"} or name in STREAMS:
                wrong(path, name, "a public header stays free of it")
            elif mark == '"' and used is None:
                wrong(path, name, "a public header uses public headers only")
            elif used is not None and own not in NO_SUBJECT and used not in NO_SUBJECT:
                if order.get(used, -1) > order.get(own, -1):
                    wrong(path, name, f"{used} comes after {own}")

    for path in sources(source / "bindings"):
        for mark, name in includes(path):
            if name.split("/")[0] in order and (source / "src" / name).exists():
                wrong(path, name, "bindings see public headers only")
    return found


def self_check(source):
    """The rules hold against a tree that breaks each of them once."""
    import tempfile

    cases = {
        "src/grid/a.cpp": '#include "latchwork/plan.hpp"',
        "src/grid/b.cpp": '#include "plan/search.hpp"',
        "src/plan/search.hpp": '#include "latchwork/simulate.hpp"',
        "src/simulate/a.cpp": '#include "plan/search.hpp"',
        "src/simulate/b.cpp": '  #  include "latchwork/latchwork.hpp"',
        "src/unlisted/a.cpp": "",
        "include/latchwork/grid.hpp": "#include <iostream>",
        "include/latchwork/cell.hpp": "#include <fmt/format.h>",
        "include/latchwork/plan.hpp": '#include "latchwork/simulate.hpp"',
        "bindings/c/grid.cpp": '#include "plan/search.hpp"',
    }
    with tempfile.TemporaryDirectory() as folder:
        tree = pathlib.Path(folder)
        (tree / "src").mkdir()
        (tree / "src/CMakeLists.txt").write_text((source / "src/CMakeLists.txt").read_text(encoding="utf-8"), encoding="utf-8")
        for name, text in cases.items():
            path = tree / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text + "\n", encoding="utf-8")
        found = problems(tree)
        missed = [name for name in cases if not any(name in line or name.rsplit("/", 1)[0] + " " in line for line in found)]
        return [f"self-check: nothing was found wrong with {name}" for name in missed]


def main():
    source = pathlib.Path(sys.argv[1]).resolve()
    found = self_check(source) + problems(source)
    print("\n".join(found) or "every include points the right way")
    return 1 if found else 0


sys.exit(main())
