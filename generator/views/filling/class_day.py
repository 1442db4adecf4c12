"""A class's day with as many parts as fit a session, from the walk and the scan of spacings."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.model import Session
from generator.planning import (
    HANDS,
    PlannedRun,
    bottleneck,
    operators_needed,
    parts_within,
    planned_run,
    points_of_no_return,
)
from generator.study import Study
from generator.units import Clock
from generator.views.day_plan import AskedView, DayPlanView, PartDayView
from generator.views.filling.day_lanes import hand_lanes, part_lane, place_keys, place_lanes
from generator.views.filling.day_pieces import Piece, free_spans, pieces_of
from generator.views.filling.day_plan import PlannedWork
from generator.views.filling.words import low, role_title, spoken_time, thing_title
from generator.walk import Ground, Moment

# More students at one line than an instructor can watch (ours, no source).
MOST_OPERATORS = 6
# More parts than these are no plan that anybody reads.
MOST_PARTS = 12


@dataclass(frozen=True, slots=True)
class _Day:
    """What a day is made from: the moments of one sitting, its planned run, and when they start."""

    study: Study
    session: Session
    moments: tuple[Moment, ...]
    run: PlannedRun
    pack_up: float

    @property
    def seconds(self) -> float:
        """The time of the session in which work may go on."""
        return session_seconds(self.study, self.session)


def session_seconds(study: Study, session: Session) -> float:
    """Seconds from the beginning of a session until it is packed up."""
    pack_up = study.lab.lab.pack_up
    return (session.until.minutes - session.from_.minutes) * 60 - (pack_up.si if pack_up else 0.0)


def class_days(study: Study, operators: int = MOST_OPERATORS) -> tuple[DayPlanView, ...]:
    """For every session that holds the run, or each piece of it between pauses, the day of a class."""
    if study.procedure.part is None or not study.lab.places:
        return ()
    return tuple(day for session in study.lab.lab.sessions for day in _days(study, session, operators))


def _days(study: Study, session: Session, operators: int) -> Iterator[DayPlanView]:
    sittings = tuple(_sittings(study, session_seconds(study, session)))
    for number, moments in enumerate(sittings, start=1):
        day = _day_view(_day(study, session, moments), operators)
        if day and len(sittings) > 1:
            stop = _number(study, moments[-1]) if number < len(sittings) else ""
            day = replace(day, sitting=f"sitting {number} of {len(sittings)}", stop=stop)
        if day:
            yield day


def _number(study: Study, moment: Moment) -> str:
    return next(str(n) for n, step in enumerate(study.procedure.steps, 1) if step is moment.step)


def _sittings(study: Study, seconds: float) -> Iterator[tuple[Moment, ...]]:
    """The run in as few sittings as the session allows; none where a piece between pauses does not fit."""
    run, first, found = study.walk.straight, 0, []
    while first < len(run):
        length, stop = 0.0, 0
        for index in range(first, len(run)):
            length += run[index].after.clock.shortest - run[index].before.clock.shortest
            if length > seconds + 1e-6:
                break
            pause = run[index].step.pause
            if pause is not None or index + 1 == len(run):
                stop = index + 1
            if pause is not None and pause.time.low:
                break
        if not stop:
            return
        found.append(run[first:stop])
        first = stop
    yield from found


def class_day_view(study: Study, session: Session, operators: int = 1) -> DayPlanView | None:
    """As many parts as the session holds, equally spaced; None where not even one fits in one go."""
    day = _day(study, session, study.walk.straight)
    return None if any(rest.least for rest in day.run.rests) else _day_view(day, operators)


def _day(study: Study, session: Session, moments: tuple[Moment, ...]) -> _Day:
    pack_up = study.lab.lab.pack_up
    run = planned_run(Ground(study.lab, study.procedure, study.sums), moments)
    return _Day(study, session, moments, run, pack_up.si if pack_up else 0.0)


def _day_view(day: _Day, operators: int) -> DayPlanView | None:
    study, run, begin = day.study, day.run, day.session.from_.minutes
    parts, spacing = parts_within(run, day.seconds, operators)
    if not parts:
        return None
    more, parts = parts > MOST_PARTS, min(parts, MOST_PARTS)
    turns = operators_needed(run, parts, spacing, operators) if parts > 1 else 1
    starts = [begin + number * spacing for number in range(parts)]
    pieces = pieces_of(study, day.moments)
    keys = place_keys(study, run)
    days = tuple(_part(day, pieces, keys, number, number % turns, at) for number, at in enumerate(starts))
    what, _ = bottleneck(run, turns)
    return DayPlanView(
        study.procedure.title, str(day.session.name), spacing, days,
        start=day.session.from_,
        pack_up=Clock(day.session.until.minutes - round(day.pack_up / 60)),
        end=day.session.until,
        last_start=Clock(begin + int((day.seconds - run.seconds + 1e-6) // 60)),
        takes=spoken_time(run.seconds),
        more=more,
        bottleneck="the hands" if what == HANDS else low(thing_title(study.lab, what)),
        asked=tuple(_asked(day, days)),
        latest=tuple(_latest(day)),
        places=place_lanes(study, run, keys, starts),
        hands=hand_lanes(run, starts, turns),
    )  # fmt: skip


def _part(
    day: _Day, pieces: tuple[Piece, ...], keys: dict[str, str], number: int, operator: int, begin: int
) -> PartDayView:
    part = day.study.procedure.part
    name, who = f"{str(part.name).capitalize() if part else 'Part'} {number + 1}", f"Operator {operator + 1}"
    work = tuple(piece.shown(begin) for piece in pieces)
    lane = part_lane(f"{name}, {low(who)}", day.study, day.moments, keys, begin)
    return PartDayView(name, who, work[0].start, work[-1].end, work, free_spans(lane), lane)


def _asked(day: _Day, parts: tuple[PartDayView, ...]) -> Iterator[AskedView]:
    """Who has to come when, by the clock."""
    zero = day.moments[0].before.clock.shortest
    found = [
        AskedView(
            Clock(part.start.minutes + round((moment.before.clock.shortest - zero) / 60)),
            role_title(day.study.lab, hold.who) if hold.who else "somebody",
            part.part,
            str(hold.until),
        )
        for part in parts
        for moment in day.moments
        if (hold := moment.step.hold) is not None
    ]
    yield from sorted(found, key=lambda one: one.at.minutes)


def _latest(day: _Day) -> Iterator[tuple[str, str]]:
    """What cannot be left half-way, with the last whole minute to begin it, to its pause or to the end."""
    inside = {id(moment) for moment in day.moments}
    ground = Ground(day.study.lab, day.study.procedure, day.study.sums)
    for point in points_of_no_return(ground, day.study.walk):
        if id(day.study.walk.straight[point.at]) in inside:
            last = int((day.session.from_.minutes * 60 + day.seconds - point.to_pause + 1e-6) // 60)
            yield point.stage, str(Clock(last))


def planned_work(day: DayPlanView) -> tuple[PlannedWork, ...]:
    """The same as the lines of a paper plan."""
    return tuple(
        PlannedWork(
            work.start, work.end, f"{part.part}, {low(part.operator)}", work.what, work.place, work.hands
        )
        for part in day.parts
        for work in part.work
    )
