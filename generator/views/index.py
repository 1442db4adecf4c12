"""A list of pages: procedures by place, role or hazard; places; substances; calculators; rules; cards."""

from dataclasses import dataclass

from generator.views.shown import LinkView


@dataclass(frozen=True, slots=True)
class RowView:
    """One row: a link, a number shown large before it ("" for none), a detail, words at the end."""

    link: LinkView
    number: str = ""
    detail: str = ""
    end: str = ""


@dataclass(frozen=True, slots=True)
class GroupView:
    """Rows under a heading; `anchor` is an id of the lab or a word of ours with an underscore."""

    title: str
    anchor: str
    rows: tuple[RowView, ...]


@dataclass(frozen=True, slots=True)
class IndexView:
    """A page of groups; `listed` puts it into the navigation. `empty` is said when there is nothing."""

    address: str
    title: str
    lead: str
    groups: tuple[GroupView, ...]
    listed: bool = True
    empty: str = "Nothing here yet."


@dataclass(frozen=True, slots=True)
class TermView:
    """A word of the lab: what it means, and the words that are not used for it."""

    id: str
    term: str
    means: str
    instead_of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class GlossaryView:
    """All words of the lab in their order."""

    terms: tuple[TermView, ...]
