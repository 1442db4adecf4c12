"""Procedures in lists: as posted, by role, by place, by hazard, by what is seen."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.hazards import Edition, statement_text
from generator.model import Lab, Place
from generator.study import LabStudy, Study
from generator.views import addresses
from generator.views.filling.words import low, role_title, spoken_time
from generator.views.index import GroupView, IndexView, RowView
from generator.views.posted import IssueView, StandingView
from generator.views.shown import LinkView
from generator.walk import Ground, totals

# More first issues of one day than this are told in one row.
_FEW = 3


def procedure_row(study: Study) -> RowView:
    """A procedure in a list."""
    procedure = study.procedure
    seconds = totals(Ground(study.lab, procedure, study.sums), study.walk).all
    who = role_title(study.lab, procedure.who)
    detail = (
        f"{who}, with the {low(role_title(study.lab, procedure.also_present))}"
        if procedure.also_present
        else who
    )
    link = LinkView(procedure.title, addresses.procedure_address(procedure.id))
    return RowView(link, detail=detail, end=spoken_time(seconds) if seconds else "")


def posted_row(study: Study, standing: StandingView | None) -> RowView:
    """A procedure in a list, with its issue; one of which nothing is known says nothing."""
    row = procedure_row(study)
    if standing is None:
        return row
    issue = f"issue {standing.issue}" if standing.issue else "draft, not posted"
    return replace(row, detail=f"{row.detail} · {issue}")


def newest_rows(studies: Iterable[Study], standings: Mapping[str, StandingView]) -> Iterator[RowView]:
    """The newest issue of each posted procedure with its changes; many first ones of a day in one row."""
    first: dict[str, list[RowView]] = {}
    for study in studies:
        standing = standings.get(str(study.procedure.id))
        if standing and standing.issue and standing.history:
            row = _newest_row(study, standing.history[0])
            if standing.history[0].changes or len(standing.history) > 1:
                yield row
            else:
                first.setdefault(row.end, []).append(row)
    for day, rows in first.items():
        if len(rows) <= _FEW:
            yield from rows
        else:
            yield RowView(LinkView(f"{len(rows)} procedures, issue 1", addresses.PROCEDURES), end=day)


def _newest_row(study: Study, newest: IssueView) -> RowView:
    title = f"{study.procedure.title}, issue {newest.number}"
    link = LinkView(title, addresses.procedure_address(study.procedure.id), "papers_and_decisions")
    changes = "; ".join(change.text for change in newest.changes)
    return RowView(link, detail=changes or newest.reason, end=newest.posted)


def procedures_index(study: LabStudy, studies: tuple[Study, ...]) -> IndexView:
    """All procedures by role; then the places and hazards by which they are found."""
    roles = dict.fromkeys(str(one.procedure.who) for one in studies)
    groups = [
        GroupView(
            f"For the {low(role_title(study.lab, role))}",
            f"for_{role}",
            tuple(procedure_row(one) for one in studies if one.procedure.who == role),
        )
        for role in roles
    ]
    groups.append(GroupView("By place", "by_place", tuple(_by_place(study, studies))))
    groups.append(GroupView("By hazard", "by_hazard", tuple(_by_hazard(study, studies))))
    groups.append(GroupView("By what you see", "by_symptom", tuple(_by_symptom(studies))))
    lead = "By role, by place, by hazard and by what you see."
    return IndexView(addresses.PROCEDURES, "Procedures", lead, tuple(group for group in groups if group.rows))


def _by_place(study: LabStudy, studies: tuple[Study, ...]) -> Iterator[RowView]:
    used = Counter(id for one in studies for id in {str(step.at) for step in one.procedure.steps if step.at})
    for id, place in in_order(study.lab):
        if used[id]:
            number = "" if place.number is None else str(place.number)
            link = LinkView(place.title, addresses.place_address(id), "steps_here")
            yield RowView(link, number, end=_counted(used[id]))


def _by_hazard(study: LabStudy, studies: tuple[Study, ...]) -> Iterator[RowView]:
    """The statements met, each leading to what carries it."""
    edition = Edition(study.lab.lab.ghs)
    used = Counter(code for one in studies for code in one.used_codes() if code[:1] in "HE")
    for code in sorted(used):
        text = f"{code}: {statement_text(code, edition) or 'no text in this edition'}"
        link = LinkView(text, addresses.CHEMICALS, f"with_{code}")
        yield RowView(link, end=_counted(used[code]))


def _by_symptom(studies: tuple[Study, ...]) -> Iterator[RowView]:
    """Every symptom in the order of its words, leading to its step, else to the list that holds it.

    A class's own form of a procedure shows the same symptoms and is left out.
    """
    own = [one.procedure for one in studies if "." not in one.procedure.id]
    found = [(symptom, procedure) for procedure in own for symptom in procedure.you_may_see]
    for symptom, procedure in sorted(found, key=lambda pair: str(pair[0].symptom).lower()):
        at = str(symptom.at or "")
        steps = {str(step.id) for step in procedure.steps}
        link = LinkView(
            symptom.symptom[:1].upper() + symptom.symptom[1:],
            addresses.procedure_address(procedure.id),
            at if at in steps else "you_may_see",
        )
        yield RowView(link, detail=procedure.title)


def _counted(number: int) -> str:
    return f"{number} procedure{'s' * (number != 1)}"


def in_order(lab: Lab) -> list[tuple[str, Place]]:
    """Numbered places first, in the order of their numbers; then the others as declared."""
    places = [(str(id), place) for id, place in lab.places.items()]
    return sorted(places, key=lambda pair: (pair[1].number is None, pair[1].number or 0))
