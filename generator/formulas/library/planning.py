"""Clock times of a session, from the minutes of the steps."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula, Naive, Requirement
from generator.formulas.inputs import Input, Rows
from generator.formulas.words import larger, total

_ARITHMETIC = "arithmetic of clock times"
_DAY = "a session lies within one day"


def _clock(name: str, symbol: str, means: str) -> Input:
    return Input(name, symbol, means, "min", (), "480 to 1080 min", "0 to 1440 min", _DAY, clock=True)


START = _clock("start", "t_start", "when work starts")
UNTIL = _clock("until", "t_until", "when the session ends")
PACK_UP = Input(
    "pack_up",
    "t_pack",
    "how long before the end all work has stopped",
    "min",
    ("h",),
    "10 to 30 min",
    "0 to 1440 min",
    _DAY,
    "0 min",
)
TAKES = Input(
    "takes",
    "t_step",
    "time that a step takes",
    "min",
    ("s", "h"),
    "0.1 to 120 min",
    "0 to 10000 min",
    "time runs on",
)
STEPS = Rows("steps", "steps", "steps of the run, in their order", (TAKES,))
RUN_TIME = Input(
    "run_time",
    "t_run",
    "time from the first step to the last",
    "min",
    ("h", "s"),
    "10 to 360 min",
    "0 to 10000 min",
    "time runs on",
)


def _finish(start: Any, steps: Any) -> Any:
    return start + total(steps, lambda row: row.takes)


SESSION_CLOCK = Formula(
    name="session_clock",
    title="Finish of a run",
    decides="whether to start",
    inputs=(START, STEPS),
    answer=Answer("t_finish", "when the run is finished", "min", decimals=0, toward="up", clock=True),
    source=_ARITHMETIC,
    function=_finish,
    cautions=("Redone steps and waiting for a person are not in it.",),
    examples=(
        Example({"start": "13:10", "steps": ({"takes": "45 min"}, {"takes": "54.1 min"})}, "889.1 min"),
    ),
)


def _latest(until: Any, pack_up: Any, run_time: Any) -> Any:
    return until - pack_up - run_time


def _to_the_bell(until: Any, run_time: Any) -> Any:
    return until - run_time


def _fits(until: Any, pack_up: Any, run_time: Any) -> Any:
    return pack_up + run_time <= until


LATEST_START = Formula(
    name="latest_start",
    title="Latest start of a run",
    decides="start or not",
    inputs=(UNTIL, PACK_UP, RUN_TIME),
    answer=Answer("t_latest", "latest start", "min", decimals=0, toward="down", clock=True),
    source=_ARITHMETIC,
    function=_latest,
    cautions=("Redone steps and waiting for a person are not in it.",),
    examples=(Example({"until": "16:05", "pack_up": "20 min", "run_time": "155 min"}, "790 min"),),
    requires=(Requirement(_fits, "the run is longer than the day"),),
    naive=Naive(_to_the_bell, "the time to pack up"),
)

SHARED_TIME = Input(
    "shared_time",
    "t_shared",
    "how long one part keeps the shared place",
    "min",
    ("s", "h"),
    "1 to 90 min",
    "0 to 10000 min",
    "time runs on",
)
HANDS_TIME = Input(
    "hands_time",
    "t_hands",
    "how long one part needs both hands at a stretch",
    "min",
    ("s", "h"),
    "1 to 30 min",
    "0 to 10000 min",
    "time runs on",
    "0 min",
)
ROOM_FOR = Input(
    "room_for",
    "N_room",
    "parts that the shared place takes at once",
    "",
    (),
    "1 to 4",
    "1 to 1000",
    "a place takes one part at least",
    "1",
    whole=True,
)


def _gap(shared_time: Any, room_for: Any, hands_time: Any) -> Any:
    return larger(shared_time / room_for, hands_time)


STAGGER = Formula(
    name="stagger",
    title="Time between the starts of two parts",
    decides="when the next student may start",
    inputs=(SHARED_TIME, ROOM_FOR, HANDS_TIME),
    answer=Answer("Δt", "time between two starts", "min", ("h",), decimals=0, toward="up"),
    source="the busiest place sets the pace; for one shared place and one pair of hands",
    function=_gap,
    cautions=("Several shared places are planned by the plan of the day, not by this sum.",),
    examples=(Example({"shared_time": "54.1 min", "room_for": 2, "hands_time": "4 min"}, "27.1 min"),),
)
