"""A substance, a mixture, and the hazard summary of a procedure; all declared, nothing guessed."""

from dataclasses import dataclass

from generator.views.shown import BannerView, EmergencyView, FactView, LinkView, SignView


@dataclass(frozen=True, slots=True)
class StatementView:
    """A code ("H314") and its text in full; `note` says where it bites or what it comes from."""

    code: str
    text: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class PictogramView:
    """A GHS pictogram by its code ("GHS05") and the words for who does not see it."""

    code: str
    alt: str


@dataclass(frozen=True, slots=True)
class LabelView:
    """The label elements as declared: signal word, pictograms, H and P statements.

    `declared` says whose word it is; `unknown` what is not known, in one sentence.
    """

    signal: str = ""
    pictograms: tuple[PictogramView, ...] = ()
    statements: tuple[StatementView, ...] = ()
    precautions: tuple[StatementView, ...] = ()
    declared: str = ""
    unknown: str = ""


@dataclass(frozen=True, slots=True)
class AmountView:
    """One part of a mixture: name, where it is described, how much."""

    title: str
    amount: str
    link: LinkView | None = None


@dataclass(frozen=True, slots=True)
class ScreeningRowView:
    """One row of the arithmetic of a screening: class, sum in words, limit, what it implies."""

    about: str
    arithmetic: str
    limit: str
    result: str


@dataclass(frozen=True, slots=True)
class ScreeningView:
    """What the composition implies by the mixture rules, beside the declared hazards, never instead."""

    statements: tuple[StatementView, ...]
    rows: tuple[ScreeningRowView, ...]
    unknown: tuple[str, ...]
    source: str
    caution: str
    refused: str = ""


@dataclass(frozen=True, slots=True)
class ChemicalView:
    """The page of a substance or a mixture; `kind` is "substance" or "mixture"."""

    id: str
    kind: str
    title: str
    label: LabelView
    facts: tuple[FactView, ...] = ()
    made_of: tuple[AmountView, ...] = ()
    never_with: tuple[str, ...] = ()
    wear: tuple[SignView, ...] = ()
    first_aid: tuple[StatementView, ...] = ()
    if_contaminated: str = ""
    screening: ScreeningView | None = None
    used_in: tuple[LinkView, ...] = ()
    banners: tuple[BannerView, ...] = ()
    caution: str = ""
    search_text: str = ""
    search_tags: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class HazardHeadingView:
    """One heading of a hazard summary in the usual order, with its lines; an empty one says so."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class HazardItemView:
    """One substance or mixture of a procedure: label, where it is met, what to do, wear, waste, sheet."""

    id: str
    title: str
    link: LinkView
    label: LabelView
    where: str
    strength: str = ""
    headings: tuple[HazardHeadingView, ...] = ()


@dataclass(frozen=True, slots=True)
class HazardSummaryView:
    """The hazards of one procedure: a summary, not the supplier's sheet."""

    procedure: str
    title: str
    back: LinkView
    items: tuple[HazardItemView, ...]
    words: tuple[SignView, ...] = ()
    emergencies: tuple[EmergencyView, ...] = ()
    help: tuple[FactView, ...] = ()
    caution: str = ""
    banners: tuple[BannerView, ...] = ()
