"""Fill the day plan of a class: who does what with which part, where, from when to when."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.study import LabStudy, Study
from generator.units import Clock, Quantity, show_quantity
from generator.views.card import Status
from generator.views.day_plan import DayPlanView
from generator.views.filling.words import counted, role_title
from generator.views.paper import (
    BLANK,
    TICK,
    PaperBlanks,
    PaperCell,
    PaperLines,
    PaperPart,
    PaperTable,
    PaperView,
)

PARTS_NOTE = "Black: hands on it. White: left to itself. The number or letter is the place, as named below."
PLACES_NOTE = "The number in a bar is the part that keeps the place busy."
HANDS_NOTE = "The number in a bar is the part that needs the hands."
CAUTION = (
    "Times as written in the procedure, for equal parts; faults and racks are not counted. The supplier's "
    "safety data sheet, the safety office, local codes and licensed practice stand above this plan."
)
# Read from a metre away (distance/300), and made smaller to stay on three sheets.
_POSTER, _AT_HAND, _MOST_PAGES = 3.4, 2.6, 3
_SIZES = {"A4": 0, "Letter": 0, "A3": 1, "Tabloid": 1}


@dataclass(frozen=True, slots=True)
class PlannedWork:
    """One line of a schedule: from and until (time of day), whose part, the step and the place in words."""

    start: Clock
    end: Clock
    part: str
    step: str
    place: str = ""
    hands: bool = True

    @property
    def told(self) -> str:
        """The step, and that it needs no hands where it needs none."""
        return self.step if self.hands else f"{self.step} (no hands needed)"


def day_plan_view(
    study: LabStudy, title: str, day: str, work: Sequence[PlannedWork], parts: Sequence[PaperPart] = (),
    *, status: Status = "posted", size: str = "A4", turned: bool = False, identity: str = "",
) -> PaperView:  # fmt: skip
    """The schedule in the order of the clock; `day` is an ISO date. Work that needs no hands says so.

    `parts` stand above it: charts and tables of the same day.
    """
    room = study.lab.lab
    return PaperView(
        id="day-plan",
        title=title,
        dated=day,
        about=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        identity=identity or f"Plan for {day}",
        language=str(room.language),
        status=status,
        size=size,
        turned=turned,
        letters=_POSTER if turned else _AT_HAND,
        most_pages=_MOST_PAGES,
        caution=CAUTION,
        parts=(
            PaperBlanks(("Class", "Instructor", "Date", "Present")),
            *parts,
            _by_the_clock(work),
        ),
    )


def _by_the_clock(work: Sequence[PlannedWork]) -> PaperTable:
    rows = tuple(
        (
            PaperCell(lead=str(line.start)),
            PaperCell(str(line.end)),
            PaperCell(lead=line.part),
            PaperCell(line.told),
            PaperCell(line.place or "\u00a0"),
            BLANK,
            TICK,
        )
        for line in sorted(work, key=lambda line: (line.start.minutes, line.part, line.end.minutes))
    )
    heads = ("From", "Until", "Part", "What", "Where", "Really at", "")
    return PaperTable("By the clock", heads, (0.7, 0.7, 1.9, 4.6, 2.6, 1.1, 0.5), rows)


def class_plan_view(study: Study, day: DayPlanView, work: Sequence[PlannedWork], dated: str, identity: str,
                    status: Status) -> PaperView:  # fmt: skip
    """One session's day of a class, across a sheet as large as the procedure's largest card."""
    sizes = [card.size for card in study.procedure.cards]
    size = max(sizes, key=lambda size: _SIZES[size], default="A4")
    return day_plan_view(
        study, plan_title(day), dated, work, tuple(_parts(study, day)), status=status, size=size, turned=True,
        identity=identity,
    )  # fmt: skip


def plan_title(day: DayPlanView) -> str:
    """The procedure and the session, and which sitting."""
    sitting = f", {day.sitting}" if day.sitting else ""
    return f"Day plan: {day.procedure}. {day.session}{sitting}"


def plan_facts(study: Study, day: DayPlanView) -> tuple[tuple[str, str], ...]:
    """How many, how far apart, from when to when, the last start, who is present, what sets the pace."""
    count = counted(len(day.parts), str(study.procedure.part.name) if study.procedure.part else "part")
    apart = show_quantity(Quantity(day.spacing, "min"))
    second = study.procedure.also_present
    stop = f"Work stops after step {day.stop}." if day.stop else ""
    more = " The session would hold more." if day.more else ""
    rows = (
        ("Session", f"{day.start} to {day.end}. Pack up from {day.pack_up}, all work has ended then."),
        ("Parts", f"{count}{f', {apart} apart' if day.spacing else ''}. Each takes {day.takes}.{more}"),
        ("Last start", f"{day.last_start}. A part that starts later is not done by {day.pack_up}."),
        ("Ends", f"The last part is done at {day.parts[-1].end}. {stop}".strip()),
        ("Sets the pace", day.bottleneck if len(day.parts) > 1 else ""),
        ("Present all day", role_title(study.lab, second) if second else ""),
    )
    return tuple((label, text) for label, text in rows if text)


def plan_rows(day: DayPlanView) -> tuple[tuple[str, ...], ...]:
    """Each part: its name, who has it, when it starts and is done, and when it needs no hands."""
    return tuple(
        (part.part, part.operator, str(part.start), str(part.end), ", ".join(part.free) or "never")
        for part in day.parts
    )


PART_HEADS = ("Part", "Who", "Starts", "Done", "Needs no hands for ten minutes or more")
ASKED_HEADS = ("At", "Who comes", "To", "Until")
LATEST_HEADS = ("Cannot be left half-way", "Begin at the latest")


def asked_rows(day: DayPlanView) -> tuple[tuple[str, ...], ...]:
    """Who has to come when, and what for."""
    return tuple((str(one.at), one.role, one.part, one.until) for one in day.asked)


def _parts(study: Study, day: DayPlanView) -> Iterator[PaperPart]:
    facts = plan_facts(study, day)
    shares = tuple(1.0 + min(len(text), 60) / 20 for _, text in facts)
    heads, cells = tuple(label for label, _ in facts), tuple(PaperCell(text) for _, text in facts)
    yield PaperTable("", heads, shares, (cells,))
    span = (day.start.minutes, day.end.minutes)
    ends = ((day.pack_up.minutes, "pack up"), (day.end.minutes, "end"))
    lanes = tuple(part.lane for part in day.parts)
    yield PaperLines("Where each part is", *span, lanes, ends, PARTS_NOTE)
    yield PaperLines("Which places are busy", *span, day.places, ends, PLACES_NOTE)
    if day.hands:
        yield PaperLines("Whose hands are busy", *span, day.hands, ends, HANDS_NOTE)
    yield PaperTable("Who has which part", (*PART_HEADS, "Name"), (1.2, 1.4, 0.8, 0.8, 4.2, 3.0), tuple(
        (PaperCell(lead=row[0]), *map(PaperCell, row[1:]), BLANK) for row in plan_rows(day)
    ))  # fmt: skip
    if day.latest:
        yield PaperTable("Latest moments", LATEST_HEADS, (3.0, 2.0), _cells(day.latest))
    if day.asked:
        yield PaperTable("Who is asked to come", (*ASKED_HEADS, ""), (0.8, 2.4, 1.4, 4.2, 0.5), tuple(
            (*row, TICK) for row in _cells(asked_rows(day))
        ))  # fmt: skip


def _cells(rows: Sequence[tuple[str, ...]]) -> tuple[tuple[PaperCell, ...], ...]:
    return tuple((PaperCell(lead=row[0]), *map(PaperCell, row[1:])) for row in rows)
