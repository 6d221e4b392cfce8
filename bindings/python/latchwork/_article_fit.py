"""From an article to panels that make it. Each class is the C++ struct of the same name."""

from dataclasses import dataclass, field
from typing import ClassVar

from ._article import ArticleChoices, TargetPiece, Targets
from ._fit import FitCandidate, FitRequest, FitResult


@dataclass(frozen=True, slots=True)
class StripRun:
    """Neighbouring strips of a panel that stand together so many times, as a FitGroup."""

    first: int = 0
    """Index of the first, from the left on the RS, 0..65536."""
    last: int = 0
    """Index of the last, first..65536."""
    least: int = 1
    """Times, 0..65536."""
    most: int = 1
    """least..65536."""
    as_group: int = -1
    """Index of an earlier run that this one stands as often as, as in FitGroup; -1: free."""


@dataclass(slots=True)
class ArticleRequest:
    """An article to be made of a panel: what is chosen, and what may vary."""

    max_pieces: ClassVar[int] = 1000
    max_seam_ms_per_m: ClassVar[int] = 86_400_000
    """A day for a metre."""

    article: str = ""
    """A name of article_names(); in a brief's folder also a file of it, "bolster.json". fit_article() does not read it."""
    choices: ArticleChoices = field(default_factory=ArticleChoices)
    made: list[str] = field(default_factory=list)
    """Names of Article.pieces that are made as the panel, none twice; empty: all. Of pieces sewn to each other the name
    stands for all: "panel" for "panel, lower left"."""
    groups: list[StripRun] = field(default_factory=list)
    """As FitRequest.groups, of the panel's strips, at most FitRequest.max_groups. Empty: all strips once, but for the
    outermost two where there is an edge."""
    edge: int = -1
    """The strip whose first column is FitRequest.edge, by its index, 0..65536; -1: no edge. Then the design's edge_least and
    edge_most count as 0."""
    design: FitRequest = field(default_factory=FitRequest)
    """What may vary, and seams; its targets, groups and edge are not read."""
    seam_ms_per_m: int = 0
    """How long a metre of seam takes to sew up, in ms, 0..max_seam_ms_per_m, for an article's hours; 0: not known, and
    sewing up is left out of them. Ours to ask and yours to time: no source was found for a figure, so none is built in.
    fit_article() does not read it."""


@dataclass(frozen=True, slots=True)
class PieceFit:
    """A piece, held against the panel and fitted by it."""

    target: TargetPiece = TargetPiece()
    as_it_stands: FitCandidate = FitCandidate()
    """The panel as it is, by size() with the design's state, substitutes and the seams of piece_request(). Of it ``panels``
    (1), ``columns``, ``rows``, width, height and their errors are told; the others stay as they are by default."""
    fit: FitResult = FitResult()
    """Of piece_request() and panel_design(). The first candidate is the one that goes with the other pieces, as fit_article()
    chooses it; the others follow ranked. No candidates and no nearest where ArticleFit.message tells why."""


@dataclass(frozen=True, slots=True)
class ArticleFit:
    """An article, and how a panel makes it."""

    targets: Targets = Targets()
    """Of all pieces."""
    pieces: tuple[PieceFit, ...] = ()
    """Those that are made as the panel, in the order of targets."""
    message: str = ""
    """For people: why nothing was fitted, which pieces that fit by themselves do not go together, or that a choice that is
    better for all may not have been looked at; empty where there is nothing to tell."""
