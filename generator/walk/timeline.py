"""Time of the straight run: by attention, and in stretches between pauses."""

from dataclasses import dataclass

from generator.walk.ground import Ground
from generator.walk.walk import Moment, Walk


@dataclass(frozen=True, slots=True)
class Totals:
    """Seconds of the straight run: hands on, waiting here, near and away; steps without a time."""

    hands_on: float
    here: float
    near: float
    away: float
    untimed: int

    @property
    def all(self) -> float:
        """All seconds together."""
        return self.hands_on + self.here + self.near + self.away


@dataclass(frozen=True, slots=True)
class Stretch:
    """Work between two pauses: first and last step, how many seconds it needs, and its longest step."""

    first: str
    last: str
    seconds: float
    longest: str = ""
    longest_seconds: float = 0.0


def totals(ground: Ground, walk: Walk) -> Totals:
    """What the straight run needs, by attention."""
    waits = {"here": 0.0, "near": 0.0, "away": 0.0}
    hands_on, untimed = 0.0, 0
    for moment in walk.straight:
        hands_on += ground.hands_on(moment.step) * moment.times
        waits[moment.step.stay] += (ground.waiting(moment.step) if moment.step.for_ else 0.0) * moment.times
        untimed += moment.step.for_ is None and moment.step.takes is None
    return Totals(hands_on, waits["here"], waits["near"], waits["away"], untimed)


def stretches(walk: Walk) -> tuple[Stretch, ...]:
    """The straight run cut at every pause, each with the time that it needs without stopping."""
    out: list[Stretch] = []
    run: list[Moment] = []
    for moment in walk.straight:
        run.append(moment)
        if moment.step.pause is not None and _last_pass(moment, walk):
            out.append(_stretch(run))
            run = []
    if run:
        out.append(_stretch(run))
    return tuple(out)


def _last_pass(moment: Moment, walk: Walk) -> bool:
    return not any(other.order > moment.order and other.step is moment.step for other in walk.straight)


def _stretch(run: list[Moment]) -> Stretch:
    times = [moment.after.clock.shortest - moment.before.clock.shortest for moment in run]
    most = max(range(len(run)), key=times.__getitem__)
    return Stretch(str(run[0].step.id), str(run[-1].step.id), sum(times), str(run[most].step.id), times[most])
