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
    """One row of the arithmetic of a screening: class, sum in words, limit, what it implies.

    `evidence` says how well the limit is known.
    """

    about: str
    arithmetic: str
    limit: str
    result: str
    evidence: str = ""


@dataclass(frozen=True, slots=True)
class ShareView:
    """An ingredient's share by weight, how it was worked out, and how well its classes are known."""

    title: str
    share: str
    working: str
    evidence: str


@dataclass(frozen=True, slots=True)
class ScreeningView:
    """What the composition implies by the mixture rules, beside the declared hazards, never instead.

    `undeclared` are implied and not declared, `only_declared` the reverse; both in one sentence or "".
    """

    statements: tuple[StatementView, ...]
    rows: tuple[ScreeningRowView, ...]
    unknown: tuple[str, ...]
    source: str
    caution: str
    refused: str = ""
    declared: tuple[StatementView, ...] = ()
    undeclared: str = ""
    only_declared: str = ""
    shares: tuple[ShareView, ...] = ()


@dataclass(frozen=True, slots=True)
class HazardLineView:
    """One line under a heading; `label` is what it is about ("Eyes"), or ""."""

    text: str
    label: str = ""


@dataclass(frozen=True, slots=True)
class HazardHeadingView:
    """One heading of a hazard summary with its lines; none says that it is not known.

    `sheet` names the heading of a safety data sheet under which more stands ("4", "14, 15").
    """

    title: str
    lines: tuple[HazardLineView, ...]
    sheet: str = ""


@dataclass(frozen=True, slots=True)
class ChemicalView:
    """The page of a substance or a mixture; `kind` is "substance" or "mixture"."""

    id: str
    kind: str
    title: str
    label: LabelView
    facts: tuple[FactView, ...] = ()
    made_of: tuple[AmountView, ...] = ()
    headings: tuple[HazardHeadingView, ...] = ()
    wear: tuple[SignView, ...] = ()
    if_contaminated: str = ""
    screening: ScreeningView | None = None
    used_in: tuple[LinkView, ...] = ()
    files: tuple[FactView, ...] = ()
    help: tuple[FactView, ...] = ()
    banners: tuple[BannerView, ...] = ()
    caution: str = ""
    search_text: str = ""
    search_tags: tuple[str, ...] = ()


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
    office: LinkView | None = None
    files: tuple[FactView, ...] = ()
