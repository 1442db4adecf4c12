"""The page that says a class's day plan in words, for those who do not see its charts."""

from dataclasses import dataclass

from generator.views.lab_hazards import TableView
from generator.views.shown import BannerView, FactView, LinkView


@dataclass(frozen=True, slots=True)
class DaySectionView:
    """One session: its anchor and title, what holds for all parts, and its tables."""

    anchor: str
    title: str
    facts: tuple[FactView, ...]
    tables: tuple[TableView, ...]


@dataclass(frozen=True, slots=True)
class DayPageView:
    """The day plans of a procedure, one a session; `files` are their prints."""

    procedure: str
    title: str
    back: LinkView
    caution: str
    days: tuple[DaySectionView, ...]
    files: tuple[FactView, ...] = ()
    banners: tuple[BannerView, ...] = ()
