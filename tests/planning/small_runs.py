"""Small runs made at random, and what is possible with them, found by trying everything second by second."""

import random
from itertools import product

from generator.planning import HANDS, Busy, PlannedRun, Pointer, Rest

PLACES = ("bath", "rinse")


def small_run(seed: int, blocks: int = 3, unit: float = 1.0, most_wait: int = 2) -> PlannedRun:
    """Blocks of hands-on work, each at a place; between them the part waits in the bath or beside it."""
    rng = random.Random(seed)
    lengths = [rng.randint(1, 3) * unit for _ in range(blocks)]
    rests, busy = [], []
    for number, length in enumerate(lengths):
        start = Pointer(number, 0.0)
        busy.append(Busy(HANDS, start, Pointer(number, length)))
        if rng.random() < 0.7:
            busy.append(Busy(rng.choice(PLACES), start, Pointer(number, length)))
        if number + 1 < blocks:
            least = rng.randint(0, 4) * unit
            rests.append(Rest(least, least, least + rng.randint(0, most_wait) * unit))
            if rng.random() < 0.7:
                busy.append(Busy("oven", Pointer(number, length), Pointer(number + 1, 0.0)))
    return PlannedRun(
        f"run-{seed}", tuple(lengths), tuple(rests), tuple(busy), room={"oven": rng.randint(1, 2)}
    )


def drawn_out(run: PlannedRun) -> list[PlannedRun]:
    """The run with its waits in every length of whole seconds."""
    choices = (range(int(rest.least), int(rest.most or rest.least) + 1) for rest in run.rests)
    return [
        PlannedRun(
            run.name,
            run.blocks,
            tuple(Rest(wait, wait, wait) for wait in map(float, waits)),
            run.busy,
            room=run.room,
        )
        for waits in product(*choices)
    ]


def clashes(runs: list[tuple[PlannedRun, int, int]], step: float = 1.0) -> bool:
    """Whether runs, each with its start in steps and its operator, want one thing at the same step."""
    taken: dict[tuple[str, int], int] = {}
    for run, start, operator in runs:
        for what in run.things():
            name, room = (f"{HANDS}-{operator}", 1) if what == HANDS else (what, run.room.get(what, 1))
            for begin, end in run.times(what):
                for moment in range(round(begin / step), round(end / step)):
                    key = (name, start + moment)
                    taken[key] = taken.get(key, 0) + 1
                    if taken[key] > room:
                        return True
    return False
