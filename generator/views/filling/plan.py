"""The session clock of a procedure, from its walk."""

from generator.model import FormulaRef, Session
from generator.study import Study
from generator.units import Clock, show_window
from generator.views.filling.words import low, spoken_time
from generator.views.plan import PlanStepView, PlanView, SessionView
from generator.walk import Ground, Moment, stretches, totals


def plan_view(study: Study) -> PlanView:
    """Every step of the straight run with its minutes, the pauses, and what cannot be undone."""
    found = totals(Ground(study.lab, study.procedure, study.sums), study.walk)
    points = _points(study)
    steps = tuple(_plan_step(moment, points) for moment in study.walk.straight)
    room = study.lab.lab
    sessions = tuple(_session(one) for one in room.sessions)
    pack_up = round(room.pack_up.si / 60) if room.pack_up else 0
    rows = tuple(_row(study, one, found.all / 60, pack_up) for one in sessions)
    return PlanView(sessions, pack_up, steps, spoken_time(found.all), spoken_time(found.hands_on), rows)


def _plan_step(moment: Moment, points: dict[str, str]) -> PlanStepView:
    step = moment.step
    seconds = moment.after.clock.shortest - moment.before.clock.shortest
    fixed = step.takes.si * moment.times / 60 if step.takes else 0.0
    key = f"{step.id}.for" if isinstance(step.for_, FormulaRef) else ""
    pause = f"{low(step.pause.keep)}, {show_window(step.pause.time)}" if step.pause else ""
    return PlanStepView(
        str(step.id), seconds / 60, step.stay, key, fixed if key else 0.0, pause, points.get(str(step.id), "")
    )


def _points(study: Study) -> dict[str, str]:
    """The first step of each stage in which the part goes into a mixture: from there it must go on."""
    points: dict[str, str] = {}
    for stage in study.procedure.stages:
        wet = any(
            step.do == "put-in" and study.mixture_at(str(step.at) if step.at else None)
            for step in stage.steps
        )
        if wet:
            points[str(stage.steps[0].id)] = str(stage.title)
    return points


def _session(session: Session) -> SessionView:
    shown = f"{session.name}, {clock_words(session.from_)} to {clock_words(session.until)}"
    return SessionView(session.name, session.from_.minutes, session.until.minutes, shown)


def clock_words(clock: Clock) -> str:
    """A time of day: "16:40"."""
    return f"{clock.minutes // 60:02d}:{clock.minutes % 60:02d}"


def _row(study: Study, session: SessionView, minutes: float, pack_up: int) -> tuple[str, str, str]:
    room = session.end - pack_up - session.start
    if minutes <= room:
        latest = session.end - pack_up - minutes
        return session.shown, "the whole run", clock_words(Clock(int(latest)))
    longest = max((stretch.seconds for stretch in stretches(study.walk)), default=0.0) / 60
    fits = "no"
    if longest <= room:
        fits = "with a pause"
    return session.shown, fits, "see the clock below" if longest <= room else "none"
