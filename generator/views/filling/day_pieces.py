"""The pieces of one part's day: waits that leave the hands free, and the work between them."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from generator.study import Study
from generator.units import Clock
from generator.views.day_plan import LaneView, WorkView
from generator.views.filling.words import thing_title
from generator.walk import Moment

# A shorter wait is no break (ours, no source).
_BREAK = 10.0


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a run: from and until in seconds, what, where, and whether it needs the hands."""

    start: float
    end: float
    what: str
    place: str
    hands: bool

    def shown(self, begin: int) -> WorkView:
        """The piece by the clock, for a part that begins so many minutes after midnight."""
        return WorkView(_clock(begin, self.start), _clock(begin, self.end), self.what, self.place, self.hands)


def _clock(begin: int, seconds: float) -> Clock:
    return Clock(begin + round(seconds / 60))


def pieces_of(study: Study, moments: tuple[Moment, ...]) -> tuple[Piece, ...]:
    """Waits that leave the hands free stand by themselves; the rest is told by its stage and steps."""
    return tuple(_pieces(study, moments))


def _pieces(study: Study, moments: tuple[Moment, ...]) -> Iterator[Piece]:
    numbers = {str(step.id): number for number, step in enumerate(study.procedure.steps, 1)}
    zero = moments[0].before.clock.shortest
    for (_, waits), group in groupby(moments, key=lambda m: (id(m.stage), _waits(m))):
        together = tuple(group)
        for piece in ((moment,) for moment in together) if waits else (together,):
            start, end = piece[0].before.clock.shortest - zero, piece[-1].after.clock.shortest - zero
            if end > start:
                yield Piece(start, end, _what(piece, numbers, waits), _where(study, piece), not waits)


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


def free_spans(lane: LaneView) -> tuple[str, ...]:
    """When a part leaves the hands free for ten minutes or more, by the clock."""
    return tuple(
        f"{Clock(round(bar.start))} to {Clock(round(bar.end))}"
        for bar in lane.bars
        if bar.kind == "wait" and bar.end - bar.start >= _BREAK
    )
