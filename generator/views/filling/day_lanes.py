"""The lines of a day's charts: each part through its places, each place with its parts, busy hands."""

from collections.abc import Iterator, Sequence
from string import ascii_uppercase

from generator.planning import HANDS, PlannedRun
from generator.study import Study
from generator.views.day_plan import BarKind, BarView, LaneView
from generator.views.filling.words import thing_title
from generator.walk import Ground, Moment


def place_keys(study: Study, run: PlannedRun) -> dict[str, str]:
    """What stands for each place in a bar: its number, else a letter in the order of use."""
    letters = iter((*ascii_uppercase, *(f"{a}{b}" for a in ascii_uppercase for b in ascii_uppercase)))
    keys = {}
    for id in run.things():
        place = study.place(id)
        if id != HANDS:
            keys[id] = str(place.number) if place and place.number is not None else next(letters)
    return keys


def part_lane(
    label: str, study: Study, moments: Sequence[Moment], keys: dict[str, str], begin: int
) -> LaneView:
    """One part through the day: black while hands are on it, white while it is left to itself."""
    ground = Ground(study.lab, study.procedure, study.sums)
    bars: list[BarView] = []
    at = float(begin)
    for moment in moments:
        text = keys.get(str(moment.step.at or moment.after.text("in") or ""), "")
        for minutes, kind in _halves(ground, moment):
            last = bars[-1] if bars else None
            if last and (last.text, last.kind) == (text, kind):
                bars[-1] = BarView(last.start, at + minutes, text, kind)
            elif minutes > 0:
                bars.append(BarView(at, at + minutes, text, kind))
            at += minutes
    return LaneView(label, tuple(bars))


def _halves(ground: Ground, moment: Moment) -> Iterator[tuple[float, BarKind]]:
    """Minutes with hands on, then minutes without."""
    lasts = moment.after.clock.shortest - moment.before.clock.shortest
    hands = lasts if moment.step.stay == "here" else min(ground.hands_on(moment.step) * moment.times, lasts)
    yield hands / 60, "hands"
    yield (lasts - hands) / 60, "wait"


def place_lanes(
    study: Study, run: PlannedRun, keys: dict[str, str], starts: Sequence[int]
) -> tuple[LaneView, ...]:
    """Each place in the order of its key, with the number of the part that keeps it busy."""
    ordered = sorted(keys, key=lambda id: (not keys[id].isdigit(), len(keys[id]), keys[id]))
    return tuple(
        LaneView(f"{keys[id]}  {thing_title(study.lab, id)}", tuple(_bars(run, id, starts, "busy")))
        for id in ordered
    )


def hand_lanes(run: PlannedRun, starts: Sequence[int], operators: int) -> tuple[LaneView, ...]:
    """Each operator who has more than one part; of the others their part's own line says it."""
    lanes = []
    for operator in range(operators):
        own = [(n, at) for n, at in enumerate(starts) if n % operators == operator]
        if len(own) > 1:
            bars = (
                BarView(bar.start, bar.end, str(number + 1), "hands")
                for number, at in own
                for bar in _bars(run, HANDS, (at,), "hands")
            )
            lanes.append(
                LaneView(f"Operator {operator + 1}", tuple(sorted(bars, key=lambda bar: bar.start)))
            )
    return tuple(lanes)


def _bars(run: PlannedRun, what: str, starts: Sequence[int], kind: BarKind) -> Iterator[BarView]:
    found = [
        BarView(at + start / 60, at + end / 60, str(number + 1), kind)
        for number, at in enumerate(starts)
        for start, end in run.times(what)
    ]
    yield from sorted(found, key=lambda bar: bar.start)
