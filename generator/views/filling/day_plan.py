"""Fill the day plan of a class: who does what with which part, where, from when to when."""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.study import LabStudy
from generator.units import Clock
from generator.views.paper import BLANK, TICK, PaperBlanks, PaperCell, PaperTable, PaperView


@dataclass(frozen=True, slots=True)
class PlannedWork:
    """One line of a schedule: from and until (time of day), whose part, the step and the place in words."""

    start: Clock
    end: Clock
    part: str
    step: str
    place: str = ""
    hands: bool = True


def day_plan_view(study: LabStudy, title: str, day: str, work: Sequence[PlannedWork]) -> PaperView:
    """The schedule in the order of the clock; `day` is an ISO date. Work that needs no hands says so."""
    room = study.lab.lab
    lines = sorted(work, key=lambda line: (line.start.minutes, line.part, line.end.minutes))
    rows = tuple(
        (
            PaperCell(lead=str(line.start)),
            PaperCell(str(line.end)),
            PaperCell(lead=line.part),
            PaperCell(line.step if line.hands else f"{line.step} (no hands needed)"),
            PaperCell(line.place or "\u00a0"),
            BLANK,
            TICK,
        )
        for line in lines
    )
    heads = ("From", "Until", "Part", "What", "Where", "Really at", "")
    return PaperView(
        id="day-plan",
        title=title,
        dated=day,
        about=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        identity=f"Plan for {day}",
        language=str(room.language),
        status="posted",
        parts=(
            PaperBlanks(("Class", "Instructor", "Present")),
            PaperTable("", heads, (0.9, 0.9, 1.2, 4.2, 2.6, 1.1, 0.6), rows),
        ),
    )
