"""Things to make, as data: pieces, seams, published sizes, rules for fillings, closures and cautions.

Each class is the C++ struct of the same name, with the same fields in the same order and the same defaults. Articles and
choices are made to be edited; what they come to is not.
"""

from dataclasses import dataclass, field
from typing import ClassVar, List

from ._enums import ClosureKind, EdgeUse, SizeOf, SourceMark


@dataclass(frozen=True, slots=True)
class NamedMeasure:
    """A length that was measured or is to be met: from least_mm to greatest_mm, which may be equal."""

    name: str = ""
    """"width", "height", "chest", "ease": what terms refer to."""
    least_mm: float = 0.0
    """1..1e5 in a size; in choices as far as its input goes."""
    greatest_mm: float = 0.0
    """least_mm..1e5."""
    printed: str = ""
    """In a size as its source prints it, with its unit: "28-30 in"; not read in choices."""
    of: str = ""
    """In a size: the input that it is, "wearer's height", with from least_mm to greatest_mm, -1e5..1e5, on top; empty:
    these alone. Not read in choices."""


@dataclass(slots=True)
class ArticleSize:
    """A size of a list."""

    name: str = ""
    """"12 months", "18 in"; unlike the others of its list."""
    measures: list[NamedMeasure] = field(default_factory=list)


@dataclass(slots=True)
class SizeList:
    """Sizes that one source prints."""

    name: str = ""
    """Unlike the other lists of the article."""
    source: str = ""
    mark: SourceMark = SourceMark.published
    of: SizeOf = SizeOf.finished
    sizes: list[ArticleSize] = field(default_factory=list)
    """One or more."""


@dataclass(frozen=True, slots=True)
class LengthTerm:
    """``times`` a measure."""

    of: str = ""
    """A measure of the chosen size, an input, or "overlap", the closure's."""
    times: float = 1.0
    """-100..100."""


@dataclass(slots=True)
class Extent:
    """A length: the sum of its terms, and from least_mm to greatest_mm on top; all that over the product of counts.

    Without terms it is the range itself.
    """

    terms: list[LengthTerm] = field(default_factory=list)
    least_mm: float = 0.0
    """-1e5..1e5."""
    greatest_mm: float = 0.0
    """least_mm..1e5."""
    over: list[str] = field(default_factory=list)


@dataclass(slots=True)
class ShapePoint:
    """A point of a piece's shaping: its width at a height, changing evenly from the point before."""

    height: Extent = field(default_factory=Extent)
    """Above the lower edge: no less than that of the point before, no more than the piece's length."""
    width: Extent = field(default_factory=Extent)
    """1..1e5 mm."""


@dataclass(slots=True)
class ArticlePiece:
    """A piece of an article, knitted flat from its lower edge."""

    name: str = ""
    count: int = 1
    """1..1000; multiplied by the counts in `times`."""
    times: list[str] = field(default_factory=list)
    """Names of the article's counts."""
    across: str = ""
    """A count: so many side by side, sewn to each other; empty: one."""
    up: str = ""
    """A count: so many one above the other, sewn to each other; empty: one."""
    width: Extent = field(default_factory=Extent)
    """Of one, between the seams, at its lower edge: what a seam takes is not in it."""
    length: Extent = field(default_factory=Extent)
    """Of one, likewise."""
    left: EdgeUse = EdgeUse.free
    """As seen from the right side; of several the outer edge of them all."""
    right: EdgeUse = EdgeUse.free
    lower: EdgeUse = EdgeUse.free
    upper: EdgeUse = EdgeUse.free
    shape: list[ShapePoint] = field(default_factory=list)
    """From below, the lower edge left out; empty: straight."""
    closures: list[str] = field(default_factory=list)
    """Only with these closures; empty: with any."""


@dataclass(slots=True)
class ArticleSeam:
    """Seams alike."""

    name: str = ""
    count: int = 1
    """1..1000."""
    times: list[str] = field(default_factory=list)
    """Names of the article's counts: so often each."""
    between: list[str] = field(default_factory=list)
    """Names of counts: once less than each, as seams between panels are."""
    length: Extent = field(default_factory=Extent)
    closures: list[str] = field(default_factory=list)
    """As ArticlePiece.closures."""


@dataclass(frozen=True, slots=True)
class Closure:
    """A way to close the article."""

    name: str = ""
    kind: ClosureKind = ClosureKind.open
    overlap_least_mm: float = 0.0
    """0..1e4: how far one edge lies over the other; 0 for a seam."""
    overlap_greatest_mm: float = 0.0
    """overlap_least_mm..1e4."""
    source: str = "common practice, no source"
    """Never empty."""
    mark: SourceMark = SourceMark.practice


@dataclass(frozen=True, slots=True)
class RulePair:
    """A filling of one size and the article that it goes into, along one side."""

    filling_mm: float = 0.0
    """1..1e5."""
    finished_mm: float = 0.0
    """1..1e5."""


@dataclass(slots=True)
class FillingRule:
    """How much larger the filling is than the finished article, along each side.

    An article is square where all its measures are alike; a rule is for squares, for oblongs or for both.
    """

    name: str = ""
    source: str = ""
    mark: SourceMark = SourceMark.published
    larger_least_mm: float = 0.0
    """-1e4..1e4; 0 with pairs."""
    larger_greatest_mm: float = 0.0
    """larger_least_mm..1e4; 0 with pairs."""
    pairs: list[RulePair] = field(default_factory=list)
    """A graded rule: it knows these sizes and no others."""
    squares_only: bool = False
    """It is for squares."""
    oblongs_only: bool = False
    """It is for what is not square; not both."""


@dataclass(frozen=True, slots=True)
class ArticleInput:
    """A length that no list gives, so the caller does: ease, the length of a garment.

    One that only sizes refer to is wanted where the chosen size does.
    """

    name: str = ""
    meaning: str = ""
    least_mm: float = 0.0
    """-1e5..1e5: the least that makes sense."""
    greatest_mm: float = 0.0
    """least_mm..1e5."""


@dataclass(frozen=True, slots=True)
class ArticleCount:
    """A number that the caller gives: panels across."""

    name: str = ""
    meaning: str = ""
    least: int = 1
    """1..1000."""
    greatest: int = 1
    """least..1000."""


@dataclass(frozen=True, slots=True)
class Caution:
    """What may hurt someone, and what to defer to."""

    text: str = ""
    source: str = ""
    mark: SourceMark = SourceMark.published


@dataclass(slots=True)
class Article:
    """A thing to make, as data: hosts add their own by files."""

    max_items: ClassVar[int] = 1000
    """Of each list."""
    name: str = ""
    measures: list[str] = field(default_factory=list)
    """What a size must give: "width", "height"; none is called "overlap"."""
    lists: list[SizeList] = field(default_factory=list)
    """Published sizes; may be empty."""
    inputs: list[ArticleInput] = field(default_factory=list)
    counts: list[ArticleCount] = field(default_factory=list)
    closures: list[Closure] = field(default_factory=list)
    """Empty: nothing to close."""
    rules: list[FillingRule] = field(default_factory=list)
    """Empty: nothing to fill."""
    pieces: list[ArticlePiece] = field(default_factory=list)
    seams: list[ArticleSeam] = field(default_factory=list)
    cautions: list[Caution] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class NamedCount:
    """A number under a name."""

    name: str = ""
    count: int = 1


@dataclass(slots=True)
class ArticleChoices:
    """What the caller chooses. Nothing is chosen for them: where sources disagree each is offered by its name."""

    list: str = ""  # hides the type from here on, hence List
    """A name of Article.lists; empty, with `size`: every measure stands in `measures`."""
    size: str = ""
    """A name of that list."""
    rule: str = ""
    """A name of Article.rules; empty where there are none."""
    closure: str = ""
    """A name of Article.closures; empty where there are none."""
    measures: List[NamedMeasure] = field(default_factory=lambda: [])
    """Own measures of the finished article or body, where no list is chosen; every input that is wanted; and "overlap",
    0..1e4 mm, for how far the edges lie over each other in place of the closure's own figures, but of a seam's."""
    counts: List[NamedCount] = field(default_factory=lambda: [])
    """Every count."""
    measures_of_filling: bool = False
    """Own measures are of the filling that there is: the rule makes the article."""


@dataclass(frozen=True, slots=True)
class TargetPoint:
    """A point of a shape, in mm."""

    height_least_mm: float = 0.0
    height_greatest_mm: float = 0.0
    width_least_mm: float = 0.0
    width_greatest_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class TargetPiece:
    """A piece to be fitted. Of pieces sewn to each other those with other edges stand apart: "panel, lower left"."""

    name: str = ""
    count: int = 1
    width_least_mm: float = 0.0
    width_greatest_mm: float = 0.0
    length_least_mm: float = 0.0
    length_greatest_mm: float = 0.0
    left: EdgeUse = EdgeUse.free
    right: EdgeUse = EdgeUse.free
    lower: EdgeUse = EdgeUse.free
    upper: EdgeUse = EdgeUse.free
    shape: tuple[TargetPoint, ...] = ()


@dataclass(frozen=True, slots=True)
class TargetSeam:
    """Seams to be sewn."""

    name: str = ""
    count: int = 1
    least_mm: float = 0.0
    """Of one."""
    greatest_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Targets:
    """What an article comes to under the choices made."""

    pieces: tuple[TargetPiece, ...] = ()
    seams: tuple[TargetSeam, ...] = ()
    filling: tuple[NamedMeasure, ...] = ()
    """By the article's measures; empty where nothing is filled."""
    cautions: tuple[Caution, ...] = ()
    """All of the article's."""
    sources: tuple[str, ...] = ()
    """For people: where list, rule and closure come from."""
    seam_least_mm: float = 0.0
    """Of all seams together."""
    seam_greatest_mm: float = 0.0
