"""The main job's plain data: what a designer hands over and what comes back. Each class is the C++ struct of the same name."""

from dataclasses import dataclass, field

from ._article import Article
from ._article_fit import ArticleFit, ArticleRequest
from ._core import Panel, Swatch
from ._data import Effort, Finding, Machine, Size, Substitute
from ._enums import ClothState
from ._plan import Conditions, Plan, WorkTimes
from ._simulate import Verification
from ._yarn import YarnNeed, YarnRequest


@dataclass(slots=True)
class Brief:
    """What a designer hands over: a folder with panel.json, machine.json (which may hold efforts) and, to be told
    sizes, swatch.csv (without it the swatch is empty); if yarn is to be reckoned, yarn.json; if an article is to be made, article.json, and the article's own file where it is
    none of the library's; substitutes.csv, if a texture that was not measured is to have another's gauge; brief.json, if sizes are meant in another state of the cloth than the most finished one, or sessions are not of
    the usual length."""

    panel: Panel
    swatch: Swatch
    machine: Machine = field(default_factory=Machine)
    effort: Effort = field(default_factory=Effort)
    yarn: YarnRequest | None = None
    article: ArticleRequest | None = None
    """What is to be made of the panel."""
    own_article: Article | None = None
    """What article.article names, where that is none of article_names()."""
    substitutes: list[Substitute] = field(default_factory=list)
    """Textures that are measured by another's gauge where they have none of their own: for the panel's size, its drawing and
    the article's fits, there after those of the article's own design. The job's size has a finding for each. What yarn a
    texture takes YarnRequest.substitutes says."""
    state: ClothState | None = None
    """The cloth that sizes are meant in: of the panel, its drawing and the article's fits whose own design names none. None: each
    texture's most finished one. The summary says which it is."""
    session_ms: int = 3_600_000
    """How long one sits at the machine, as sessions() has it: what the summary tells of sessions."""
    rest_ms: int = 1_200_000
    """Hand work between two rests, as rests() has it; 0: no rests."""


@dataclass(slots=True)
class PieceWork:
    """How a piece of the article is knitted: the panel that fits it best, or, where nothing is fitted, the brief's panel."""

    panels: int = 1
    """To knit: the piece's count, times the panels that each is sewn of."""
    fits: bool = False
    """The piece can be made: of a candidate, or of the brief's panel as it stands, where that is no further off in width and
    height than the design's tolerance."""
    plan: Plan = field(default_factory=Plan)
    """Of one panel: of fitted_piece() of the first candidate that can be made, its panel 0, in the piece's shape."""
    verification: Verification = Verification()
    """Of ``plan``."""
    inner: int = 0
    """Of ``panels``, those between the outer two of a shaped piece that is sewn of three or more: they are not cut, so that
    they have a plan of their own. 0 where there are none, or the shape cuts nothing of the outer ones."""
    inner_plan: Plan = field(default_factory=Plan)
    """Of one of them, panel 1 of the candidate; the others are alike, or its mirror images."""
    inner_verification: Verification = Verification()
    """Of ``inner_plan``."""


@dataclass(frozen=True, slots=True)
class FittedPanel:
    """A panel that best fits are knitted of, other than the brief's own: fitted_brief() makes a brief of it."""

    folder: str = ""
    """A name for the folder of its files, none twice: "fitted-", then small letters, digits and hyphens of the piece's name:
    "fitted-panel-lower-left", "fitted-front-2", "fitted-front-mirrored", "fitted-front-inner"."""
    pieces: str = ""
    """For people, what it is for: "front, back"; of a piece sewn of several panels "front, left panels", "front, right
    panel, mirrored"; of a shaped one of three or more "front, left outer panel", "front, inner panels"."""
    piece: int = 0
    """Index among ArticleFit.pieces of the first that it is for."""
    panel: int = 0
    """Which of that piece's panels it is, as of fitted()."""
    count: int = 1
    """To knit, for all pieces."""


@dataclass(slots=True)
class ArticleJob:
    """What the brief's article comes to."""

    fit: ArticleFit = ArticleFit()
    """fit_article(); a design whose ``needles`` are 0 has the machine's."""
    works: list[PieceWork] = field(default_factory=list)
    """One for each of fit.pieces, pieces alike planned once."""
    panels: list[FittedPanel] = field(default_factory=list)
    """What the pieces that fit are knitted of, alike ones once: those right of a piece's middle are mirrored. A panel that is
    the brief's own is none of them."""
    times: WorkTimes = WorkTimes()
    """At the machine, of all panels of pieces that fit, together; of those without a plan nothing."""
    seam_mm: float = 0.0
    """All seams to be sewn, where something fits (else 0): those of the article, of each kind the middle of its range, and those between the panels that a
    piece that fits is sewn of, each as long as the piece."""
    sewing_ms: int = 0
    """Sewing them up, by ArticleRequest.seam_ms_per_m, to the nearest millisecond; 0 where that is, and then a note says
    that the hours are without it. The article's hours are ``times.total_ms + sewing_ms``."""
    yarn: YarnNeed | None = None
    """For all panels of pieces that fit, together, where the brief names yarn and something fits: each kind of piece by yarn_need(), with ``seam_mm`` of seams;
    spreads and margins add up, since the swatches are the same. What decides is chosen anew from the sums. None, and a note
    says why, where it cannot be reckoned: seams in a yarn whose number is not known, yarns of rows that a best fit has not, or
    more than yarn_need() reckons."""
    notes: list[str] = field(default_factory=list)
    """For people: what is not in these figures."""


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
    same as ``plan``. It has what ``plan`` left of a time limit, 1 ms at the least, and a work limit of its own."""
    verification: Verification = Verification()
    """Of ``plan``."""
    regular_verification: Verification = Verification()
    """Of ``regular``; not verified when there is none."""
    size: Size | None = None
    """Where each texture has a gauge; no other figure but the article's needs one."""
    yarn: YarnNeed | None = None
    """Where the brief asks for it."""
    article: ArticleJob | None = None
    """Where the brief names one, and has the gauges that it is fitted by."""
    missing: list[Finding] = field(default_factory=list)
    """What bars ``size`` or ``article``: no_swatch for each texture that size() would refuse by the brief's substitutes, or
    by the state and the substitutes of the article's design before these, with place.field the texture. Each once."""
