"""A whole procedure as the student's page shows it."""

from dataclasses import dataclass, field

from generator.views.learning import LearningView
from generator.views.plan import JobView, PlanView
from generator.views.posted import StandingView
from generator.views.shown import BannerView, CallView, FactView, LinkView, SignView
from generator.views.step import StepView


@dataclass(frozen=True, slots=True)
class StageView:
    """A group of steps: id, title, its time in words, how often it is repeated."""

    id: str
    title: str
    steps: tuple[StepView, ...]
    time: str = ""
    repeat: str = ""


@dataclass(frozen=True, slots=True)
class SymptomView:
    """What a student may see, where, from what, and what to do first."""

    symptom: str
    at: LinkView | None
    causes: tuple[str, ...]
    do_first: str


@dataclass(frozen=True, slots=True)
class CardLinkView:
    """A wall card: title, size and reading distance in words, its PDF, its drawing as a picture file.

    `words` is the address of a page that says the same in words, "" where this page does.
    """

    title: str
    detail: str
    pdf: str
    preview: str
    posted: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True)
class DifferView:
    """Where the house differs from a supplier's paper, why, and who decided it."""

    paper: str
    differs: str
    because: str
    decided: str


@dataclass(frozen=True, slots=True)
class ProcedureView:
    """The page of a procedure; `strip` is a finished SVG drawing of the run with its own words, or ""."""

    id: str
    title: str
    lead: str
    stages: tuple[StageView, ...]
    stop_rule: str = ""
    call: CallView | None = None
    banners: tuple[BannerView, ...] = ()
    facts: tuple[FactView, ...] = ()
    wear: tuple[SignView, ...] = ()
    ready: tuple[FactView, ...] = ()
    tell_us_first: tuple[str, ...] = ()
    limits: tuple[FactView, ...] = ()
    plan: PlanView | None = None
    job: JobView | None = None
    strip: str = ""
    symptoms: tuple[SymptomView, ...] = ()
    cards: tuple[CardLinkView, ...] = ()
    papers: tuple[FactView, ...] = ()
    differs: tuple[DifferView, ...] = ()
    standing: StandingView = field(default_factory=StandingView)
    hazards: LinkView | None = None
    learning: LearningView | None = None
    glossary: tuple[tuple[str, str], ...] = ()
