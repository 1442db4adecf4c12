"""What the walk believes after each step of the straight run, in the words of the trade."""

from collections.abc import Iterator

from generator.cli.lines import Line, Piece, text_line, visible
from generator.cli.trace_words import ROWS, state_clock
from generator.study import Study, title_of
from generator.walk import Moment

_CHANGED = ">"


def trace_lines(study: Study) -> tuple[Line, ...]:
    """A block of lines a step: verb and place, the clock, then what is believed; what changed is marked."""
    return tuple(_lines(study))


def _lines(study: Study) -> Iterator[Line]:
    yield text_line(f"{study.procedure.id}: {visible(study.procedure.title)}", "strong")
    yield text_line("What the walk believes after each step when nothing fails; > marks what it changed.")
    if not study.walk.straight:
        yield text_line("The run is too long to be walked.")
    before: dict[str, str] = {}
    for number, moment in enumerate(study.walk.straight, 1):
        yield Line()
        yield _head(study, moment, number)
        now = {name: row(study.lab, moment.after) for name, row in ROWS}
        for name, says in now.items():
            if says or before.get(name):
                yield _row(name, says or "none", says != before.get(name, "") and number > 1)
        before = now
        if moment.step.pause:
            yield _row("pause", f"work may stop here with nothing worn; {moment.step.pause.keep}", False)


def _head(study: Study, moment: Moment, number: int) -> Line:
    step = moment.step
    place = f" at {title_of(study.lab, str(step.at))}" if step.at else ""
    turns = f" ({moment.times:g} times)" if moment.times != 1 else ""
    clock = state_clock(moment.after.clock)
    return Line((Piece(f"{number:>3}  "), Piece(str(step.id), "strong"),
                 Piece(visible(f"  {step.do}{place}{turns}, done at {clock}"))), hang=5)  # fmt: skip


def _row(name: str, says: str, changed: bool) -> Line:
    mark = _CHANGED if changed else " "
    return Line((Piece(f"   {mark} ", "fix"), Piece(f"{name:<8} ", "frame"), Piece(visible(says))), hang=14)
