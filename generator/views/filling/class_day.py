"""A class's day with as many parts as fit a session, from the walk and the scan of spacings."""

from collections.abc import Iterator
from itertools import groupby

from generator.model import Session
from generator.planning import operators_needed, parts_within, planned_run
from generator.study import Study
from generator.units import Clock
from generator.views.day_plan import DayPlanView, PartDayView, WorkView
from generator.views.filling.day_plan import PlannedWork
from generator.views.filling.words import low, thing_title
from generator.walk import Ground, Moment

_Piece = tuple[float, float, str, str, bool]


def class_day_view(study: Study, session: Session, operators: int = 1) -> DayPlanView | None:
    """As many parts as the session holds, equally spaced; None where not even one fits in one go."""
    room = study.lab.lab
    run = planned_run(Ground(study.lab, study.procedure, study.sums), study.walk.straight)
    pack_up = room.pack_up.si if room.pack_up else 0.0
    seconds = (session.until.minutes - session.from_.minutes) * 60 - pack_up
    parts, spacing = parts_within(run, seconds, operators)
    if not parts or any(rest.least for rest in run.rests):
        return None
    turns = operators_needed(run, parts, spacing, operators) if parts > 1 else 1
    pieces = tuple(_pieces(study))
    days = tuple(
        _part(study, pieces, number, number % turns, session.from_.minutes + number * spacing)
        for number in range(parts)
    )
    return DayPlanView(study.procedure.title, str(session.name), spacing, days)


def planned_work(day: DayPlanView) -> tuple[PlannedWork, ...]:
    """The same as the lines of a paper plan."""
    return tuple(
        PlannedWork(
            work.start, work.end, f"{part.part}, {low(part.operator)}", work.what, work.place, work.hands
        )
        for part in day.parts
        for work in part.work
    )


def _part(study: Study, pieces: tuple[_Piece, ...], number: int, operator: int, begin: int) -> PartDayView:
    name = str(study.procedure.part.name) if study.procedure.part else "part"
    work = tuple(
        WorkView(_clock(begin, start), _clock(begin, end), what, place, hands)
        for start, end, what, place, hands in pieces
    )
    return PartDayView(
        f"{name.capitalize()} {number + 1}", f"Operator {operator + 1}", work[0].start, work[-1].end, work
    )


def _clock(begin: int, seconds: float) -> Clock:
    return Clock(begin + round(seconds / 60))


def _pieces(study: Study) -> Iterator[_Piece]:
    """Waits that leave the hands free stand by themselves; the rest is told by its stage and steps."""
    numbers = {str(step.id): number for number, step in enumerate(study.procedure.steps, 1)}
    for (_, waits), group in groupby(study.walk.straight, key=lambda m: (id(m.stage), _waits(m))):
        moments = tuple(group)
        for piece in ((moment,) for moment in moments) if waits else (moments,):
            start, end = piece[0].before.clock.shortest, piece[-1].after.clock.shortest
            if end > start:
                yield start, end, _what(piece, numbers, waits), _where(study, piece), not waits


def _waits(moment: Moment) -> bool:
    return moment.step.stay != "here" and moment.step.for_ is not None


def _what(piece: tuple[Moment, ...], numbers: dict[str, int], waits: bool) -> str:
    first, last = (numbers[str(moment.step.id)] for moment in (piece[0], piece[-1]))
    if waits:
        return f"Step {first}: {piece[0].step.say}"
    steps = f"step {first}" if first == last else f"steps {first} to {last}"
    return f"{piece[0].stage.title}, {steps}"


def _where(study: Study, piece: tuple[Moment, ...]) -> str:
    places = {str(moment.step.at) for moment in piece if moment.step.at}
    return thing_title(study.lab, places.pop()) if len(places) == 1 else ""
