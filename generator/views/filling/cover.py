"""Fill the cover list of a print: every sheet that must be posted, and where it goes."""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.study import LabStudy
from generator.views.paper import TICK, PaperBlanks, PaperCell, PaperTable, PaperView, PaperWords

_PLANS = "hang on the board only on their day. Print them from the page of the procedure:"


@dataclass(frozen=True, slots=True)
class PostedSheet:
    """One sheet of the print: what it is, its size, where it goes, which issue it bears, its page count."""

    title: str
    size: str
    goes: str
    issue: str
    pages: int = 1


def cover_view(
    study: LabStudy, sheets: Sequence[PostedSheet], covers: int, plans: Sequence[str] = ()
) -> PaperView:
    """The list in front of the print; `covers` is how many pages the list itself takes.

    `plans` are procedures with a day plan, which is printed for its day.
    """
    room = study.lab.lab
    page, rows = covers + 1, []
    for sheet in sheets:
        last = page + sheet.pages - 1
        numbers = str(page) if last == page else f"{page} to {last}"
        cells = (numbers, sheet.title, sheet.size, sheet.goes, sheet.issue)
        rows.append((*(PaperCell(text or "\u00a0") for text in cells), TICK))
        page = last + 1
    heads = ("Page", "Sheet", "Size", "Goes to", "Issue", "Hung")
    return PaperView(
        id="print-all",
        title="Sheets to post",
        dated=study.today.isoformat(),
        about=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        identity=f"Printed from the files of {study.today.isoformat()}",
        language=str(room.language),
        status="posted",
        parts=(
            PaperWords("Print each sheet at its own size, not fitted to the page.", "ACTUAL SIZE"),
            PaperBlanks(("Printed by", "Hung by", "Date")),
            PaperTable("", heads, (0.8, 5.2, 1.0, 3.0, 1.9, 0.7), tuple(rows)),
            PaperWords("Take down every older copy at the same place, and write it in the list of copies."),
            *([PaperWords(f"{_PLANS} {'; '.join(plans)}.", "DAY PLANS")] if plans else []),
        ),
        most_pages=1,
    )
