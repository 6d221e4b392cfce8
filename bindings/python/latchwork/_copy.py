"""Pickles through the text of the file format, and copies of such data field by field, since a copy is read by nobody else."""

from __future__ import annotations

import copy
import dataclasses
from typing import Any, TypeVar

from . import _core

T = TypeVar("T", bound="Copied")


class Copied:
    """``copy`` shares the attributes, ``deepcopy`` copies them too."""

    __slots__ = ()

    def __copy__(self: T) -> T:
        return type(self)(*(getattr(self, name) for name in _names(self)))

    def __deepcopy__(self: T, memo: dict[int, Any]) -> T:
        return type(self)(*(copy.deepcopy(getattr(self, name), memo) for name in _names(self)))


def _names(value: Any) -> list[str]:
    return [field.name for field in dataclasses.fields(value)]


# Functions of Python's own, since those of an extension module cannot be pickled; their names stand in pickles.


def strip_from_text(text: str) -> object:
    return _core.read_strip(text)


def machine_from_text(text: str) -> object:
    return _core.read_machine(text)


def certificate_from_text(text: str) -> object:
    return _core.read_certificate(text)


def plan_from_text(text: str) -> object:
    return _core.read_plan(text)
