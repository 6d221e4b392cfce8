"""Every error that a C++ header names stands at the C declaration and in the Python docstring too, and the other way round.

failures_test.py SOURCE PYTHON_PATH: reads "@throws" in include/latchwork/*.hpp, "Fails" in the C header and "Raises" in the
docstrings. A reference ("as Grid::above()", "as latchwork_grid_above", "as Grid.above()") stands for what is named there,
but for one that only explains an error ("crossing_over_none, as Grid::sliced()"). Motifs and files have one comment for all
their functions, which is compared as a whole.
"""
import importlib
import pathlib
import re
import sys

from public_names_test import snake

# How a constructor, or a function whose class the rule of names cannot tell, is called elsewhere.
IN_C = {
    "Grid.Grid": "latchwork_grid_create",
    "Panel.Panel": "latchwork_panel_from_bands",
    "Swatch.Swatch": "latchwork_swatch_create",
    "Timings.Timings": "latchwork_timings_create",
}
NOT_IN_C = {
    # (C function, error): reason
    ("latchwork_grid_set", "bad_argument"): "a number that is no cell, as for every enum value",
    ("latchwork_panel_from_bands", "bad_value"): "a text of C ends at its NUL",
    ("latchwork_machine_generic", "bad_argument"): "a number that is no class, as for every enum value",
}
NOT_IN_CPP = {
    ("Panel.axis_half_columns", "bad_argument"): "the setter, Panel::set_axis_half_columns",
    ("Wale.column_at", "off_grid"): "C++ leaves the row to the caller",
}
NOT_IN_PYTHON = {
    ("chart_svg", "bad_encoding"): "a str is UTF-8",
    ("chart_text", "bad_encoding"): "a str is UTF-8",
    ("Swatch.Swatch", "bad_encoding"): "a str is UTF-8",
    ("build_panel", "bad_encoding"): "a str is UTF-8",
    ("graded_schematic", "bad_encoding"): "a str is UTF-8",
    ("join_strips", "bad_encoding"): "a str is UTF-8",
    ("fitted", "bad_encoding"): "a str is UTF-8",
    ("targets", "bad_encoding"): "a str is UTF-8",
    ("Timings.Timings", "bad_encoding"): "a str is UTF-8",
    ("Grid.from_cells", "size_mismatch"): "the array has its size",
    ("Grid.unfolded", "bad_argument"): "an Axis is none of another number",
    ("Machine.generic", "bad_argument"): "a MachineClass is none of another number",
}

# Header with one comment for all of its functions, what that comment begins with, and how C's begins.
GROUPED = {
    "motif": ("// Motifs:", "/* The motifs:"),
    "file": ("// Files are JSON", "/* Readers check"),
}


class Named:
    """What the comment of each function names: errors, and functions whose errors are its own too."""

    def __init__(self, codes):
        self.codes = codes
        self.of = {}

    def add(self, name, text):
        errors = {code for code in self.codes if re.search(rf"\b{code}\b", text, re.IGNORECASE)}
        text = re.sub(rf"\b({'|'.join(self.codes)}),\s+as\s+[\w:.()]+", "", text, flags=re.IGNORECASE)
        whole = re.findall(r"\b(latchwork_\w+)|\b(?:(\w+)(?:::|\.))?(\w+)\(\)", text)
        references = {(c or (f"{owner}.{member}" if owner else member)) for c, owner, member in whole}
        old = self.of.get(name, (set(), set()))
        self.of[name] = (old[0] | errors, old[1] | references)

    def find(self, reference, seen_from):
        if reference in self.of:
            return [reference]
        near = seen_from.split(".")[0] + "." + reference
        if near in self.of:
            return [near]
        return [name for name in self.of if name.split(".")[-1] == reference]

    def errors(self, name, path=()):
        if name in path:
            return set()
        own, references = self.of.get(name, (set(), set()))
        found = set(own)
        for reference in references:
            for other in self.find(reference, name):
                found |= self.errors(other, (*path, name))
        return found


def cpp_errors(folder, codes):
    named = Named(codes)
    for path in sorted(folder.glob("*.hpp")):
        if path.stem in GROUPED:
            continue
        owner, comment, statement = "", "", ""
        for line in path.read_text(encoding="utf-8").splitlines():
            code, _, note = (part.strip() for part in line.partition("///"))
            if code.startswith("//"):
                continue
            comment += " " + note.lstrip("<")
            opened = re.match(r"(?:class|struct) (?:LATCHWORK_API )?(\w+)[^;]*\{", code)
            if opened:
                owner, comment, statement = opened.group(1), "", ""
            elif code == "};":
                owner, comment, statement = "", "", ""
            else:
                statement += " " + re.sub(r"\[\[\w+\]\]|\bexplicit\b", "", code)
                if not code.endswith((";", "}")):
                    continue
                function = re.match(r"[^=(]*?(\w+)\s*\(", statement)
                if function and ">" not in statement.split(function.group(1))[0].split("<")[0]:
                    name = f"{owner}.{function.group(1)}" if owner else function.group(1)
                    named.add(name, comment.partition("@throws")[2])
                comment, statement = "", ""
    return named


def c_errors(header, codes):
    named = Named(codes)
    text = header.read_text(encoding="utf-8")
    for found in re.finditer(r"/\*((?:(?!\*/).)*)\*/\s*LATCHWORK_C_API\s[^;(]*?\b(latchwork_\w+)\s*\(", text, re.DOTALL):
        named.add(found.group(2), found.group(1).partition("Fails")[2])
    return named


def python_errors(module, codes):
    named = Named(codes)

    def add(name, what):
        text = re.split(r"\b[Rr]aises\b|\berrors (?=as in)", what.__doc__ or "", maxsplit=1)
        named.add(name, text[1] if len(text) > 1 else "")

    for name in module.__all__:
        what = getattr(module, name)
        if not isinstance(what, type):
            add(name, what)
            continue
        for member, of in vars(what).items():
            if not member.startswith("_"):
                add(f"{name}.{member}", of.__func__ if isinstance(of, staticmethod) else of)
        add(f"{name}.{name}", what.__init__)
    return named


def group_comment(text, start, end):
    return text[text.index(start) :].partition(end)[0]


def grouped_problems(source, header, codes):
    """Errors that one comment on many functions names in one language only."""
    for stem, (cpp_start, c_start) in GROUPED.items():
        cpp = group_comment((source / f"include/latchwork/{stem}.hpp").read_text(encoding="utf-8"), cpp_start, "\n\n")
        c = group_comment(header.read_text(encoding="utf-8"), c_start, "*/")
        for code in codes:
            if (re.search(rf"\b{code}\b", cpp) is None) != (re.search(rf"\b{code.upper()}\b", c) is None):
                yield f"C: {code} stands in the comment on all of {stem}.hpp, or in that of C, not in both"


def of_c(name, firsts, named):
    """The C function of a C++ one, by the rule of names."""
    if name in IN_C:
        return IN_C[name]
    owner, _, member = name.rpartition(".")
    candidates = [f"latchwork_{snake(owner)}_{member}"] if owner else [f"latchwork_{member}"]
    candidates += [f"latchwork_{snake(first)}_{member}" for first in firsts]
    return next((c for c in candidates if c in named.of), None)


def main():
    source = pathlib.Path(sys.argv[1])
    sys.path.insert(0, sys.argv[2])
    module = importlib.import_module("latchwork")
    codes = [code.name for code in module.error_codes()]
    cpp = cpp_errors(source / "include/latchwork", codes)
    header = source / "bindings/c/include/latchwork/latchwork.h"
    c = c_errors(header, codes)
    python = python_errors(module, codes)
    first_arguments = ("Grid", "Panel", "Plan", "Brief", "Move", "Timings", "EffortFit")
    problems, used, compared = list(grouped_problems(source, header, codes)), set(), 0
    for name in sorted(cpp.of):
        wanted = cpp.errors(name)
        in_c = of_c(name, first_arguments, c)
        in_python = name if name in python.of else None
        for language, there, has, lacking in (("C", in_c, c, NOT_IN_C), ("Python", in_python, python, NOT_IN_PYTHON)):
            if there is None:
                continue
            compared += 1
            told = has.errors(there)
            for error in sorted(wanted - told):
                if (there, error) in lacking:
                    used.add((there, error))
                else:
                    problems.append(f"{language}: {there} does not name {error}, as C++ does")
            for error in sorted(told - wanted):
                if (there, error) in NOT_IN_CPP:
                    used.add((there, error))
                else:
                    problems.append(f"{language}: {there} names {error}, C++ {name} does not")
    stale = (set(NOT_IN_C) | set(NOT_IN_PYTHON) | set(NOT_IN_CPP)) - used
    problems += [f"{there}, {error} is listed without need" for there, error in sorted(stale)]
    with_errors = sum(1 for name in cpp.of if cpp.errors(name))
    if with_errors < 30 or compared < 100:
        problems.append(f"only {with_errors} functions with errors and {compared} pairs were found: the reader has lost its way")
    print("\n".join([*problems, f"{with_errors} functions with errors, {compared} declarations compared"]))
    sys.exit(bool(problems))


if __name__ == "__main__":
    main()
