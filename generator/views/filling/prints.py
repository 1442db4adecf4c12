"""Everything for the printer in one list: what belongs to the room, then the sheets of each procedure."""

from collections.abc import Iterable, Iterator

from generator.study import Study
from generator.units import show_quantity
from generator.views.addresses import (
    CHECK_OFF_PATH,
    PRINT_ALL_PATH,
    card_path,
    day_plan_path,
    run_sheet_path,
)
from generator.views.posted import PrintsView

_ROOM = (
    ("Everything to post", PRINT_ALL_PATH, "one file, with a cover list that says where each sheet goes"),
    ("Opening and closing the lab", CHECK_OFF_PATH, "a list to tick, inside the door"),
)


def prints_view(papers: Iterable[PrintsView], files: frozenset[str]) -> Iterator[PrintsView]:
    """Only what the build made; everything in one file is there when it was asked for."""
    for one in (PrintsView("The room", _ROOM), *papers):
        there = tuple(row for row in one.files if row[1] in files)
        if there:
            yield PrintsView(one.title, there)


def papers_of(study: Study) -> PrintsView:
    """All that can be printed of a procedure, whether the build made it or not."""
    return PrintsView(_title(study), tuple(_rows(study)))


def _title(study: Study) -> str:
    tail = str(study.procedure.id).partition(".")[2].replace("-", " ")
    return f"{study.procedure.title}, {tail}" if tail else str(study.procedure.title)


def _rows(study: Study) -> Iterator[tuple[str, str, str]]:
    id = str(study.procedure.id)
    for card in study.procedure.cards:
        language = f", {card.language}" if card.language else ""
        about = f"{card.size}, read from {show_quantity(card.read_from)}{language}"
        yield str(card.title), card_path(id, str(card.id)), about
    yield "Run sheet", run_sheet_path(id), "planned and done, with blanks"
    yield "Day plan of a class", day_plan_path(id), "who has which part where, by the clock"
