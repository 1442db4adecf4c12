"""The session clock of a procedure, from its walk."""

from collections.abc import Iterator, Mapping

from generator.model import FormulaRef, Session
from generator.planning import PointOfNoReturn, points_of_no_return
from generator.study import Study
from generator.units import Clock, show_window
from generator.views.filling.several import several_view
from generator.views.filling.words import counted, low, spoken_time
from generator.views.plan import PlanStepView, PlanView, SessionView
from generator.views.shown import FactView
from generator.walk import Ground, Moment, stretches


def plan_view(study: Study) -> PlanView:
    """Every step of the straight run with its minutes, the pauses, and what cannot be left half-way."""
    ground = Ground(study.lab, study.procedure, study.sums)
    found = study.totals
    points = points_of_no_return(ground, study.walk)
    numbers = {str(step.id): str(number) for number, step in enumerate(study.procedure.steps, 1)}
    named = {point.at: point.stage for point in points}
    room = study.lab.lab
    sessions = tuple(_session(one) for one in room.sessions)
    pack_up = round(room.pack_up.si / 60) if room.pack_up else 0
    return PlanView(
        sessions,
        pack_up,
        tuple(
            _plan_step(moment, named.get(index, ""), numbers)
            for index, moment in enumerate(study.walk.straight)
        ),
        spoken_time(found.all),
        spoken_time(found.hands_on),
        tuple(_row(study, one, pack_up) for one in sessions),
        tuple(_latest(point, sessions, pack_up, numbers) for point in points),
        several_view(study, pack_up),
    )


def _plan_step(moment: Moment, point: str, numbers: Mapping[str, str]) -> PlanStepView:
    step = moment.step
    seconds = moment.after.clock.shortest - moment.before.clock.shortest
    fixed = step.takes.si * moment.times / 60 if step.takes else 0.0
    key = f"{step.id}.for" if isinstance(step.for_, FormulaRef) else ""
    pause = f"{low(step.pause.keep)}, {show_window(step.pause.time)}" if step.pause else ""
    must = step.pause is not None and step.pause.time.low is not None
    number = numbers[str(step.id)]
    return PlanStepView(
        str(step.id), seconds / 60, step.stay, key, fixed if key else 0.0, pause, point, must, number
    )


def _session(session: Session) -> SessionView:
    shown = f"{session.name}, {clock_words(session.from_)} to {clock_words(session.until)}"
    return SessionView(session.name, session.from_.minutes, session.until.minutes, shown)


def clock_words(clock: Clock) -> str:
    """A time of day: "16:40"."""
    return f"{clock.minutes // 60:02d}:{clock.minutes % 60:02d}"


def latest_words(session: SessionView, pack_up: int, seconds: float) -> str:
    """The last whole minute at which work of so many seconds may begin; "" where the session is too short."""
    latest = int((session.end - pack_up) * 60 - seconds + 1e-6) // 60
    return clock_words(Clock(latest)) if latest >= session.start else ""


def _latest(
    point: PointOfNoReturn, sessions: tuple[SessionView, ...], pack_up: int, numbers: Mapping[str, str]
) -> tuple[str, ...]:
    return (point.stage, *(_enter(point, session, pack_up, numbers) for session in sessions))


def _enter(point: PointOfNoReturn, session: SessionView, pack_up: int, numbers: Mapping[str, str]) -> str:
    """The latest moment to the pause, and to the end where that is later on the same day."""
    first = latest_words(session, pack_up, point.to_pause)
    if not first:
        return "not in this session"
    if not point.pause:
        return first
    there = f"{first} if you stop after step {numbers[point.pause]}"
    whole = latest_words(session, pack_up, point.to_end) if point.to_end is not None else ""
    return f"{there}, {whole} if you go on to the end" if whole else there


def _row(study: Study, session: SessionView, pack_up: int) -> tuple[str, str, str]:
    """Whether the run fits in one go; where it has to rest, or does not fit, whether each stretch does."""
    room = (session.end - pack_up - session.start) * 60.0
    sittings = _sittings(study.walk.straight)
    if len(sittings) == 1 and sittings[0] <= room + 1e-6:
        return session.shown, "the whole run", latest_words(session, pack_up, sittings[0])
    if max(sittings, default=0.0) <= room + 1e-6 and len(sittings) > 1:
        return (
            session.shown,
            f"in {counted(len(sittings), 'sitting')}",
            latest_words(session, pack_up, sittings[0]),
        )
    pieces = stretches(study.walk)
    if max((stretch.seconds for stretch in pieces), default=0.0) <= room + 1e-6:
        return session.shown, "with a pause", latest_words(session, pack_up, pieces[0].seconds)
    return session.shown, "no", "none"


def _sittings(run: tuple[Moment, ...]) -> tuple[float, ...]:
    """Seconds of work between the pauses that have to be taken."""
    found = [0.0]
    for moment in run:
        found[-1] += moment.after.clock.shortest - moment.before.clock.shortest
        if _has_to_pause(moment) and moment is not run[-1]:
            found.append(0.0)
    return tuple(found)


def _has_to_pause(moment: Moment) -> bool:
    return moment.step.pause is not None and moment.step.pause.time.low is not None


def must_rest(study: Study) -> Iterator[FactView]:
    """Each pause that has to be taken: the time of the whole run is work alone and does not count it."""
    run = study.walk.straight
    for number, step in enumerate(study.procedure.steps, 1):
        waits = any(_has_to_pause(one) for one in run[:-1] if one.step is step)
        if step.pause is not None and waits:
            text = f"{show_window(step.pause.time)} after step\N{NO-BREAK SPACE}{number}, not counted here"
            yield FactView("Has to rest", text)
