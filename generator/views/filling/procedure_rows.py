"""Procedures in lists: as posted, by role, by place, by hazard, by what is seen."""

from collections import Counter
from collections.abc import Iterable, Iterator

from generator.hazards import Edition, statement_text
from generator.model import Lab, Place
from generator.study import LabStudy
from generator.views import addresses
from generator.views.filling.words import low, role_title
from generator.views.index import GroupView, IndexView, RowView
from generator.views.shown import LinkView
from generator.views.summary import ProcedureSummary

# More first issues of one day than this are told in one row.
_FEW = 3


def newest_rows(summaries: Iterable[ProcedureSummary]) -> Iterator[RowView]:
    """The newest issue of each posted procedure with its changes; many first ones of a day in one row."""
    first: dict[str, list[RowView]] = {}
    for one in summaries:
        if one.newest and one.is_first:
            first.setdefault(one.newest.end, []).append(one.newest)
        elif one.newest:
            yield one.newest
    for day, rows in first.items():
        if len(rows) <= _FEW:
            yield from rows
        else:
            yield RowView(LinkView(f"{len(rows)} procedures, issue 1", addresses.PROCEDURES), end=day)


def procedures_index(study: LabStudy, summaries: tuple[ProcedureSummary, ...]) -> IndexView:
    """All procedures by role; then the places and hazards by which they are found."""
    roles = dict.fromkeys(one.who for one in summaries)
    groups = [
        GroupView(
            f"For the {low(role_title(study.lab, role))}",
            f"for_{role}",
            tuple(one.row for one in summaries if one.who == role),
        )
        for role in roles
    ]
    groups.append(GroupView("By place", "by_place", tuple(_by_place(study, summaries))))
    groups.append(GroupView("By hazard", "by_hazard", tuple(_by_hazard(study, summaries))))
    seen = sorted((one for summary in summaries for one in summary.symptoms), key=lambda one: one.order)
    groups.append(GroupView("By what you see", "by_symptom", tuple(one.row for one in seen)))
    lead = "By role, by place, by hazard and by what you see."
    return IndexView(addresses.PROCEDURES, "Procedures", lead, tuple(group for group in groups if group.rows))


def _by_place(study: LabStudy, summaries: tuple[ProcedureSummary, ...]) -> Iterator[RowView]:
    used = Counter(id for one in summaries for id, _ in one.places)
    for id, place in in_order(study.lab):
        if used[id]:
            number = "" if place.number is None else str(place.number)
            link = LinkView(place.title, addresses.place_address(id), "steps_here")
            yield RowView(link, number, end=_counted(used[id]))


def _by_hazard(study: LabStudy, summaries: tuple[ProcedureSummary, ...]) -> Iterator[RowView]:
    """The statements met, each leading to what carries it."""
    edition = Edition(study.lab.lab.ghs)
    used = Counter(code for one in summaries for code in one.codes)
    for code in sorted(used):
        text = f"{code}: {statement_text(code, edition) or 'no text in this edition'}"
        link = LinkView(text, addresses.CHEMICALS, f"with_{code}")
        yield RowView(link, end=_counted(used[code]))


def _counted(number: int) -> str:
    return f"{number} procedure{'s' * (number != 1)}"


def in_order(lab: Lab) -> list[tuple[str, Place]]:
    """Numbered places first, in the order of their numbers; then the others as declared."""
    places = [(str(id), place) for id, place in lab.places.items()]
    return sorted(places, key=lambda pair: (pair[1].number is None, pair[1].number or 0))
