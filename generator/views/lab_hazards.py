"""The hazards of a whole lab: what is kept, what stands in baths, sheets, wear, waste, what reacts."""

from dataclasses import dataclass

from generator.views.chemical import HazardHeadingView
from generator.views.shown import BannerView, FactView, LinkView


@dataclass(frozen=True, slots=True)
class CellView:
    """A cell: its text, a link under it, small words below it; `mark` is a word for the style ("blank")."""

    text: str
    link: LinkView | None = None
    note: str = ""
    mark: str = ""


@dataclass(frozen=True, slots=True)
class TableView:
    """A table with its heading; the first cell of a row heads it. `foot` are sentences below."""

    anchor: str
    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[CellView, ...], ...]
    lead: str = ""
    foot: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LabHazardsView:
    """The overview page; all of it declared, nothing guessed."""

    title: str
    caution: str
    facts: tuple[FactView, ...]
    tables: tuple[TableView, ...]
    files: tuple[FactView, ...] = ()
    banners: tuple[BannerView, ...] = ()


@dataclass(frozen=True, slots=True)
class OfficeView:
    """A procedure as a safety office reads it, in the usual order; `signs` are the roles that sign."""

    procedure: str
    title: str
    back: LinkView
    hazards: LinkView
    caution: str
    facts: tuple[FactView, ...]
    sections: tuple[HazardHeadingView, ...]
    signs: tuple[str, ...] = ()
    files: tuple[FactView, ...] = ()
    banners: tuple[BannerView, ...] = ()
