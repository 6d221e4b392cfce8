"""Makes latchwork/_core.pyi from the extension module.

    PYTHONPATH=<build>/python python3 tools/make_stub.py > latchwork/_core.pyi

Signatures and words come from the docstrings that pybind11 writes, whatever its version calls the types; what a docstring
cannot tell stands in the tables below. tests/python makes the stub again and compares it with the one in the tree.
"""

from __future__ import annotations

import dataclasses
import enum
import inspect
import re
import sys
import textwrap
from types import ModuleType

HEAD = '''\
# Made by make_stub.py from the extension module; a test makes it again and compares.
import os
from collections.abc import Callable, Sequence
from typing import ClassVar, overload

import numpy
import numpy.typing

{imports}
'''

# What a property that hands out a tuple or an array holds.
PROPERTIES = {
    "Grid.cells": "numpy.typing.NDArray[numpy.uint8]",
    "Grid.crossings": "tuple[Crossing, ...]",
    "Panel.bands": "tuple[Band, ...]",
    "Swatch.measurements": "tuple[Measurement, ...]",
    "Timings.spells": "tuple[Spell, ...]",
    "Wales.all": "tuple[Wale, ...]",
}
# Names that pybind11 has had for one type, and the type.
SPELLINGS = [
    (r"\blatchwork\.(?:_core\.|_\w+\.)?(?:\(anonymous namespace\)::)?", ""),
    (r"\b(?:typing\.|typing_extensions\.|collections\.abc\.)", ""),
    (r"\bSupportsInt(?: \| SupportsIndex)?\b", "int"),
    (r"\bSupportsFloat(?: \| SupportsIndex)?\b", "float"),
    (r"\bOptional\[(.*)\]$", r"\1 | None"),
    (r"\b[Bb]uffer\b", "numpy.typing.NDArray[numpy.uint8] | memoryview"),
    (r"\b(?:function|Callable(?:\[\.\.\., \w+\])?)\b", "Callable[[Progress], object]"),
    (r"\bpy::object\b", "object"),
]
# The modules of plain data, in the order in which they import each other: the first to have a class made it.
HOMES = ["_enums", "_quantity", "_data", "_fit", "_plan", "_choice", "_certificate", "_simulate", "_timings", "_yarn", "_shape", "_article", "_article_fit", "_brief"]
CLASSES = {"WalesOf": "Wales", "std::stop_source": "StopSource"}
SKIPPED = {"__getstate__", "__reduce_ex__", "__setstate__", "__hash__", "__module__", "__doc__"}  # and what every object has


def split(text: str) -> list[str]:
    """At the commas outside brackets and quotes."""
    parts, depth, quote, part = [], 0, "", ""
    for c in text:
        if quote:
            quote = "" if c == quote else quote
        elif c in "'\"":
            quote = c
        elif c in "[({<":
            depth += 1
        elif c in "])}>" and not part.endswith("-"):
            depth -= 1
        if c == "," and depth == 0 and not quote:
            parts.append(part.strip())
            part = ""
        else:
            part += c
    return parts + [part.strip()] if part.strip() else parts


def python_type(text: str, is_argument: bool) -> str:
    for pattern, plain in SPELLINGS:
        text = re.sub(pattern, plain, text)
    text = CLASSES.get(text, text)
    return re.sub(r"\b(?:[Ll]ist|Sequence)\[", "Sequence[" if is_argument else "list[", text)


def parameter(text: str) -> str:
    if text in ("*", "/") or text.startswith("*"):
        return text
    match = re.fullmatch(r"(\w+)(?:: (.*?))?(?: = (.*))?", text, re.DOTALL)
    assert match, text
    name, type_, default = match.groups()
    if name == "self":
        return name
    type_ = python_type(type_ or "object", True)
    if default == "None" and "None" not in type_:
        type_ += " | None"
    if name == "memo":
        type_ = "dict[int, object]"
    if default is None:
        return f"{name}: {type_}"
    default = re.sub(r"^<(\w+)\.(\w+): \d+>$", r"\1.\2", default)
    return f"{name}: {type_} = {'()' if default == '[]' else default}"


def signatures(function: object) -> list[tuple[str, str, str]]:
    """(parameters, what is returned, words) of each overload."""
    doc = inspect.getdoc(function) or ""
    chunks = re.split(r"^\d+\. (?=\w+\()", doc, flags=re.MULTILINE)[1:] if "Overloaded function." in doc else [doc]
    found = []
    for chunk in chunks:
        line, _, words = chunk.partition("\n")
        match = re.fullmatch(r"\w*\((.*)\) -> (.*)", line.strip())
        assert match, f"no signature in {line!r}"
        parameters = ", ".join(parameter(part) for part in split(match.group(1)))
        found.append((parameters, python_type(match.group(2), False), words.strip()))
    return found


def body(words: str, indent: str) -> str:
    if not words:
        return " ..."
    lines = "\n\n".join(textwrap.fill(" ".join(p.split()), 118 - len(indent)) for p in words.split("\n\n"))
    if len(indent) + len(lines.splitlines()[-1]) > 114 or "\n" in lines:
        lines += "\n"
    return "\n" + textwrap.indent(f'"""{lines}"""', indent + "    ")


def function_stub(name: str, function: object, indent: str = "", decorator: str = "") -> str:
    overloads = signatures(function)
    out = []
    for parameters, returned, words in overloads:
        if name == "__eq__":
            parameters, returned = "self, other: object", "bool"
        if len(overloads) > 1:
            out.append(f"{indent}@overload")
        if decorator:
            out.append(f"{indent}{decorator}")
        head = f"{indent}def {name}({parameters}) -> {returned}:"
        if len(head) > 120:
            lines = "".join(f"{indent}    {part},\n" for part in split(parameters))
            head = f"{indent}def {name}(\n{lines}{indent}) -> {returned}:"
        out.append(head + body(words, indent))
    return "\n".join(out)


def class_stub(class_: type) -> str:
    out = [f"class {class_.__name__}:{body(inspect.getdoc(class_) or '', '')}"]
    for name, member in vars(class_).items():
        if name in SKIPPED or name.startswith("_pybind11"):
            continue
        if isinstance(member, property):
            ((_, returned, _),) = signatures(member.fget)
            returned = PROPERTIES.get(f"{class_.__name__}.{name}", returned)
            out.append(f"    @property\n    def {name}(self) -> {returned}:{body(member.__doc__ or '', '    ')}")
            if member.fset is not None:
                out.append(f"    @{name}.setter\n    def {name}(self, value: {returned}) -> None: ...")
        elif isinstance(member, staticmethod):
            out.append(function_stub(name, member.__func__, "    ", "@staticmethod"))
        elif callable(member):
            out.append(function_stub(name, member, "    "))
        elif isinstance(member, int):
            out.append(f"    {name}: int")
    if vars(class_).get("__hash__", 0) is None:
        out.append("    __hash__: ClassVar[None]  # type: ignore[assignment]")
    return "\n".join(out)


def stub(core: ModuleType) -> str:
    parts = []
    for name, member in vars(core).items():
        if name.startswith("__") or name.startswith("_pybind11"):
            continue
        if isinstance(member, type):
            parts.append(class_stub(member))
        elif callable(member):
            parts.append(function_stub(name, member))
        elif isinstance(member, (int, float)):
            parts.append(f"{name}: {type(member).__name__}")
    text = "\n\n".join(parts) + "\n"

    homes: dict[str, list[str]] = {name: [] for name in HOMES}
    seen = set()
    for module, names in homes.items():
        for name, member in vars(sys.modules[f"latchwork.{module}"]).items():
            made_here = isinstance(member, type) and (dataclasses.is_dataclass(member) or issubclass(member, enum.Enum))
            if made_here and name not in seen and re.search(rf"\b{name}\b", code(text)):
                names.append(f"    {name},\n")
            seen.add(name)
    imports = (f"from .{module} import (\n{''.join(sorted(names))})" for module, names in sorted(homes.items()) if names)
    return HEAD.format(imports="\n".join(imports)) + "\n" + text


def code(text: str) -> str:
    """Without the docstrings."""
    return re.sub(r'""".*?"""', "", text, flags=re.DOTALL)


if __name__ == "__main__":
    import latchwork  # noqa: F401  the package first: it brings the extension module's own classes
    import latchwork._core

    sys.stdout.write(stub(latchwork._core))
