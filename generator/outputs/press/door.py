"""The only door to Typst: a drawing goes in as data, a PDF or an SVG comes out."""

import json
import re
import threading
from collections.abc import Sequence
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path
from typing import Literal

import typst

from generator.outputs.press.drawing import Sheet, plain_mark
from generator.outputs.press.metrics import FONTS, bold, medium
from generator.problems import NewelError

_OUTPUTS = Path(__file__).parent.parent
_TEMPLATE = _OUTPUTS / "templates" / "card.typ"


class _Compilers(threading.local):
    """One Typst compiler a thread: it keeps the fonts read and what it has set before."""

    def __init__(self) -> None:
        self.typst = typst.Compiler(
            input=str(_TEMPLATE), root=str(_OUTPUTS), font_paths=[str(FONTS)], ignore_system_fonts=True
        )


@cache
def _compilers() -> _Compilers:
    return _Compilers()


def print_pdf(sheet: Sheet, dated: str) -> bytes:
    """The drawing as a tagged PDF (PDF/UA-1 export) with the document's date; the same bytes every time."""
    return print_book((sheet,), sheet.title, sheet.language, dated)


def print_book(sheets: Sequence[Sheet], title: str, language: str, dated: str) -> bytes:
    """Drawings as the pages of one tagged PDF under its own title; sheets may differ in size and language."""
    return _compile(_data(sheets, title, language), title, dated, "pdf")


def print_svg(sheet: Sheet, dated: str) -> str:
    """The same drawing as one SVG without style attributes, for a picture on the page."""
    data = _data((sheet,), sheet.title, sheet.language)
    text = _compile(data, sheet.title, dated, "svg").decode("utf-8")
    return re.sub(r"(?<=\d\.\d{2})\d+", "", text)


def _compile(data: str, title: str, dated: str, form: Literal["pdf", "svg"]) -> bytes:
    day = date.fromisoformat(dated)
    noon = datetime(day.year, day.month, day.day, 12, tzinfo=UTC)
    try:
        made = _compilers().typst.compile(
            format=form,
            sys_inputs={"book": data},
            pdf_standards="ua-1" if form == "pdf" else None,
            timestamp=int(noon.timestamp()),
        )
    except typst.TypstError as error:
        raise NewelError("press-failed", f"{title!r} was not set: {error.message}") from error
    if not isinstance(made, bytes):
        raise NewelError("press-failed", f"{title!r} ran over to a second page")
    return made


def _data(sheets: Sequence[Sheet], title: str, language: str) -> str:
    faces = {
        "medium": {"family": medium().family, "cap": medium().cap},
        "bold": {"family": bold().family, "cap": bold().cap},
    }
    drawn = [{**_spoken(sheet.language), **_drawn(sheet)} for sheet in sheets]
    return json.dumps(
        {"title": title, **_spoken(language), "faces": faces, "sheets": drawn}, ensure_ascii=False
    )


def _spoken(language: str) -> dict[str, str]:
    first, _, region = language.partition("-")
    return {"language": first, "region": region}


def _drawn(sheet: Sheet) -> dict[str, object]:
    marks = [plain_mark(mark) for mark in sheet.marks]
    return {"width": sheet.width, "height": sheet.height, "marks": marks}
