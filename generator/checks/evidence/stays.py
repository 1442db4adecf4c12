"""How long the part stays in a place, and which timer tells."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places
from generator.study import Study
from generator.units import Window
from generator.walk import Clock, Moment


def stays(study: Study) -> Iterator[tuple[Moment, str, Window, float, float]]:
    """Every take-out from a place with a window: moment, id, window, shortest and longest seconds."""
    for moment, id, place in at_places(study, "take-out"):
        entered = moment.before.value("entered")
        if place.time is not None and isinstance(entered, Clock) and moment.before.text("in") == id:
            clock = moment.before.clock
            yield moment, id, place.time, clock.shortest - entered.shortest, clock.longest - entered.longest


def timer_of(study: Study, moment: Moment) -> str:
    """The step's own alarm, or the timer of its place."""
    place = study.place(moment.step.at)
    return str(moment.step.alarm or (place.timer if place else None) or "")
