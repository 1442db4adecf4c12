"""Several parts through shared places: when a second may start, what sets the pace, what fits a session."""

from collections.abc import Iterator

from generator.planning import (
    HANDS,
    PlannedRun,
    bottleneck,
    clear_spacing,
    parts_within,
    planned_run,
    run_stretches,
)
from generator.study import Study
from generator.units import Quantity, show_quantity
from generator.views.filling.words import counted, low, spoken_time, thing_title
from generator.views.plan import SeveralView
from generator.walk import Ground

OPERATORS = (1, 2)
_NOTE = (
    "For equal parts, times as written: nobody waits, each part keeps its operator, and a place takes as "
    "many parts as it has room for, one where it does not say, and one under current. Faults, racks and "
    "helpers are not counted."
)


def several_view(study: Study, pack_up: int) -> SeveralView | None:
    """None without a part, without places, or where the run takes no time."""
    ground = Ground(study.lab, study.procedure, study.sums)
    pieces = run_stretches(ground, study.walk) if study.procedure.part and study.lab.places else ()
    if not any(piece.seconds for piece in pieces):
        return None
    whole = pieces[0] if len(pieces) == 1 else planned_run(ground, study.walk.straight)
    runs = (whole,) if not any(rest.least for rest in whole.rests) else pieces
    return SeveralView(
        tuple(_facts(study, runs[0] if len(runs) == 1 else max(runs, key=lambda run: run.seconds))),
        tuple(counted(count, "operator").capitalize() for count in OPERATORS),
        tuple(_row(study, runs, pieces, index, pack_up) for index in range(len(study.lab.lab.sessions))),
        _NOTE,
    )


def _facts(study: Study, run: PlannedRun) -> Iterator[tuple[str, str]]:
    for operators in OPERATORS:
        who = counted(operators, "operator").capitalize()
        spacing = clear_spacing(run, 2, operators)
        when = (
            "when the first is done"
            if spacing * 60 >= run.seconds
            else f"{spoken_time(spacing * 60)} after the first"
        )
        what, seconds = bottleneck(run, operators)
        pace = "hands" if what == HANDS else low(thing_title(study.lab, what))
        yield who, f"A second part may start {when}. Bottleneck: {pace}, {spoken_time(seconds)} a part."


def _row(
    study: Study, runs: tuple[PlannedRun, ...], pieces: tuple[PlannedRun, ...], index: int, pack_up: int
) -> tuple[str, ...]:
    """The whole run where it fits the session, else each stretch between two pauses by itself."""
    session = study.lab.lab.sessions[index]
    seconds = (session.until.minutes - session.from_.minutes - pack_up) * 60.0
    fitting = runs if all(run.seconds <= seconds for run in runs) else pieces
    cells = (_cell(fitting, seconds, operators) for operators in OPERATORS)
    return (str(session.name), *cells)


def _cell(runs: tuple[PlannedRun, ...], seconds: float, operators: int) -> str:
    if len(runs) == 1:
        return _fits(runs[0], seconds, operators)
    told = (
        f"{_ORDER[min(n, len(_ORDER) - 1)]} {_fits(run, seconds, operators)}" for n, run in enumerate(runs)
    )
    return "; ".join(told)


_ORDER = ("first stretch:", "second:", "third:", "next:")


def _fits(run: PlannedRun, seconds: float, operators: int) -> str:
    parts, spacing = parts_within(run, seconds, operators)
    if not parts:
        return "does not fit"
    if parts == 1:
        return "1 part"
    return f"{parts} parts, {show_quantity(Quantity(spacing, 'min'))} apart"
