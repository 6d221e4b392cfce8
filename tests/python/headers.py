"""Reads enums, structs and their defaults from the C++ headers, so that the Python classes can be held against them."""

import pathlib
import re

INCLUDE = pathlib.Path(__file__).resolve().parents[2] / "include/latchwork"


def _text():
    for path in sorted(INCLUDE.glob("*.hpp")):
        yield re.sub(r"//[^\n]*", "", path.read_text(encoding="utf-8"))


def enums():
    """{"Lean": {"left": 0, "right": 1}}"""
    found = {}
    for text in _text():
        for name, body in re.findall(r"enum class (\w+) : std::\w+ \{(.*?)\};", text, re.DOTALL):
            found[name] = {n: int(v) for n, v in re.findall(r"(\w+)\s*=\s*(\d+)", body)}
    return found


def _without_bodies(text):
    """A struct's statements, function bodies left out."""
    while True:
        shorter = re.sub(r"\)\s*(?:const\s*)?(?:noexcept\s*)?\{[^{}]*\}", ");", text)
        if shorter == text:
            return text
        text = shorter


def structs():
    """{"Crossing": {"row": "1", "lean": "Lean::right", ...}}: fields in their order with the text of their defaults."""
    found = {}
    for text in _text():
        for name, body in re.findall(r"struct (?:LATCHWORK_API )?(\w+) \{(.*?)\n\};", text, re.DOTALL):
            fields = {}
            for statement in _without_bodies(body).split(";"):
                statement = " ".join(statement.split())
                is_call = re.search(r"\w\(", re.sub(r"<.*>", "", statement))
                if not statement or is_call or statement.startswith(("friend", "static", "[[")):
                    continue
                type_ = re.match(r"(?:const )?[\w:]+(?:<(?:[^<>]|<[^<>]*>)*>)?\s?\*?", statement)
                for declared in re.split(r',(?![^{]*\})(?=(?:[^"]*"[^"]*")*[^"]*$)', statement[type_.end() :]):
                    field, _, default = declared.partition("=")
                    fields[field.replace("{}", "").strip()] = default.strip()
            found[name] = fields
    return found


def value(text, enum_classes):
    """A default as Python has it."""
    if re.fullmatch(r"-?[\d']+", text):
        return int(text.replace("'", ""))
    if re.fullmatch(r"-?[\d.]+", text):
        return float(text)
    if text in ("true", "false"):
        return text == "true"
    if text.startswith('"'):
        return text[1:-1]
    if text.startswith("{"):
        return [int(part) for part in text[1:-1].split(",")]
    enum, _, member = text.partition("::")
    return enum_classes[enum][member]
