"""A procedure's summary from its study."""

from collections.abc import Iterator
from dataclasses import replace

from generator.model import FormulaRef
from generator.study import Study
from generator.units import Quantity
from generator.views.addresses import procedure_address
from generator.views.filling.words import joined, low, role_title, spoken_time
from generator.views.index import RowView
from generator.views.posted import StandingView
from generator.views.report import WalkedView
from generator.views.shown import LinkView
from generator.views.summary import CountsView, ProcedureSummary, SeenView
from generator.walk import stretches


def summary_of(study: Study, standing: StandingView | None = None) -> ProcedureSummary:
    """What other pages say of it; `standing` is how it is posted, where that is known."""
    row = _row(study)
    return ProcedureSummary(
        str(study.procedure.id),
        str(study.procedure.title),
        str(study.procedure.who),
        row,
        _posted_row(row, standing),
        _newest(study, standing),
        _is_first(standing),
        tuple(_places(study)),
        tuple(code for code in study.used_codes() if code[:1] in "HE"),
        tuple(_symptoms(study)),
        tuple(dict.fromkeys(_chemicals(study))),
        tuple(sorted(set(_formulas(study)))),
        tuple(_units(study)),
        tuple(_steps(study)),
        _walked(study),
        _counts(study),
    )


def _row(study: Study) -> RowView:
    procedure = study.procedure
    seconds = study.totals.all
    who = role_title(study.lab, procedure.who)
    detail = (
        f"{who}, with the {low(role_title(study.lab, procedure.also_present))}"
        if procedure.also_present
        else who
    )
    return RowView(_link(study), detail=detail, end=spoken_time(seconds) if seconds else "")


def _link(study: Study) -> LinkView:
    return LinkView(str(study.procedure.title), procedure_address(study.procedure.id))


def _posted_row(row: RowView, standing: StandingView | None) -> RowView:
    """The row with its issue; one of which nothing is known says nothing."""
    if standing is None:
        return row
    issue = f"issue {standing.issue}" if standing.issue else "draft, not posted"
    return replace(row, detail=f"{row.detail} · {issue}")


def _newest(study: Study, standing: StandingView | None) -> RowView | None:
    """The newest issue with what it changed."""
    if not standing or not standing.issue or not standing.history:
        return None
    newest = standing.history[0]
    title, address = f"{study.procedure.title}, issue {newest.number}", procedure_address(study.procedure.id)
    changes = "; ".join(change.text for change in newest.changes)
    link = LinkView(title, address, "papers_and_decisions")
    return RowView(link, detail=changes or newest.reason, end=newest.posted)


def _is_first(standing: StandingView | None) -> bool:
    history = standing.history if standing else ()
    return len(history) == 1 and not history[0].changes


def _places(study: Study) -> Iterator[tuple[str, LinkView]]:
    """One link for each place, to the first step there."""
    here: dict[str, list[tuple[int, str]]] = {}
    for number, step in enumerate(study.procedure.steps, 1):
        if step.at:
            here.setdefault(str(step.at), []).append((number, str(step.id)))
    for place, found in here.items():
        numbers = joined(str(number) for number, _ in found)
        text = f"{study.procedure.title}: step{'s' * (len(found) > 1)} {numbers}"
        yield place, LinkView(text, procedure_address(study.procedure.id), found[0][1])


def _symptoms(study: Study) -> Iterator[SeenView]:
    """Every symptom, leading to its step, else to the list that holds it.

    A class's own form of a procedure shows the same symptoms and is left out.
    """
    procedure = study.procedure
    steps = {str(step.id) for step in procedure.steps}
    for symptom in procedure.you_may_see if "." not in procedure.id else ():
        at = str(symptom.at or "")
        link = LinkView(
            symptom.symptom[:1].upper() + symptom.symptom[1:],
            procedure_address(procedure.id),
            at if at in steps else "you_may_see",
        )
        yield SeenView(str(symptom.symptom).lower(), RowView(link, detail=str(procedure.title)))


def _chemicals(study: Study) -> Iterator[str]:
    """What a step uses, or the place holds that it works at."""
    for found in study.steps():
        yield from map(str, found.step.use)
        place = study.place(found.step.at)
        if place and place.holds:
            yield str(place.holds)


def _formulas(study: Study) -> Iterator[str]:
    yield from (str(sum.formula) for sum in study.sums.by_key.values())
    yield from (str(name) for step in study.procedure.steps for name in step.formulas)
    yield from (str(v.formula) for v in study.procedure.job.values() if isinstance(v, FormulaRef))


def _units(study: Study) -> Iterator[tuple[str, str, str]]:
    for sum in study.sums.by_key.values():
        for one in sum.inputs:
            if isinstance(one.value, Quantity):
                yield str(sum.formula), str(one.name), str(one.value.unit)


def _steps(study: Study) -> Iterator[tuple[str, str]]:
    for step in study.procedure.steps:
        yield step.where.file, str(step.id)


def _walked(study: Study) -> WalkedView:
    walk = study.walk
    spent = study.totals
    longest = max(stretches(walk), key=lambda stretch: stretch.seconds, default=None)
    span = f"{spoken_time(longest.seconds)}, {longest.first} to {longest.last}" if longest else ""
    return WalkedView(
        _link(study),
        str(len(walk.straight)),
        f"{len(walk.moments)}{'' if walk.finished else ', stopped at the bound'}",
        str(len(walk.paths) + 1),
        _time(spent.all),
        _time(spent.hands_on),
        _time(spent.here),
        _time(spent.near),
        _time(spent.away),
        span,
    )


def _time(seconds: float) -> str:
    return spoken_time(seconds) if seconds else ""


def _counts(study: Study) -> CountsView:
    walk = study.walk
    return CountsView(
        straight=len(walk.straight),
        moments=len(walk.moments),
        paths=len(walk.paths) + 1,
        acts=sum(step.do == "act" for step in study.procedure.steps),
        untimed=study.totals.untimed,
        finished=walk.finished,
    )
