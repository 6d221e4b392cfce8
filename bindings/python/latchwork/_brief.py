"""The main job's plain data: what a designer hands over and what comes back. Each class is the C++ struct of the same name."""

from dataclasses import dataclass, field

from ._core import Panel, Swatch
from ._data import Effort, Finding, Machine, Size
from ._plan import Conditions, Plan
from ._simulate import Verification
from ._yarn import YarnNeed, YarnRequest


@dataclass(slots=True)
class Brief:
    """What a designer hands over: a folder with panel.json, swatch.csv, machine.json (which may hold efforts) and, if
    yarn is to be reckoned, yarn.json."""

    panel: Panel
    swatch: Swatch
    machine: Machine = field(default_factory=Machine)
    effort: Effort = field(default_factory=Effort)
    yarn: YarnRequest | None = None


@dataclass(slots=True)
class Job:
    """What comes back from run()."""

    findings: list[Finding] = field(default_factory=list)
    plan: Plan = field(default_factory=Plan)
    conditions: Conditions = field(default_factory=Conditions)
    """That were asked of both plans."""
    regular: Plan = field(default_factory=Plan)
    unconditioned: Plan = field(default_factory=Plan)
    """The least plan when nothing is asked of it: what the conditions cost is told against it; where none are asked, the
    same as ``plan``."""
    verification: Verification = Verification()
    """Of ``plan``."""
    regular_verification: Verification = Verification()
    """Of ``regular``; not verified when there is none."""
    size: Size = Size()
    yarn: YarnNeed | None = None
    """Where the brief asks for it."""
