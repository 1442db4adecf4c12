"""The only door to Typst: a drawing goes in as data, a PDF or an SVG comes out."""

import json
import re
import threading
from dataclasses import asdict
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path
from typing import Literal

import typst

from generator.outputs.press.drawing import Sheet
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
    return _compile(sheet, dated, "pdf")


def print_svg(sheet: Sheet, dated: str) -> str:
    """The same drawing as one SVG without style attributes, for a picture on the page."""
    text = _compile(sheet, dated, "svg").decode("utf-8")
    return re.sub(r"(?<=\d)\.(\d{2})\d+", r".\1", text)


def _compile(sheet: Sheet, dated: str, form: Literal["pdf", "svg"]) -> bytes:
    day = date.fromisoformat(dated)
    noon = datetime(day.year, day.month, day.day, 12, tzinfo=UTC)
    try:
        made = _compilers().typst.compile(
            format=form,
            sys_inputs={"sheet": _data(sheet, dated)},
            pdf_standards="ua-1" if form == "pdf" else None,
            timestamp=int(noon.timestamp()),
        )
    except typst.TypstError as error:
        raise NewelError("press-failed", f"the sheet {sheet.title!r} was not set: {error.message}") from error
    if not isinstance(made, bytes):
        raise NewelError("press-failed", f"the sheet {sheet.title!r} ran over to a second page")
    return made


def _data(sheet: Sheet, dated: str) -> str:
    marks = [{"kind": type(mark).__name__, **asdict(mark)} for mark in sheet.marks]
    language, _, region = sheet.language.partition("-")
    faces = {
        "medium": {"family": medium().family, "cap": medium().cap},
        "bold": {"family": bold().family, "cap": bold().cap},
    }
    return json.dumps(
        {
            "title": sheet.title, "language": language, "region": region, "dated": dated,
            "width": sheet.width, "height": sheet.height, "faces": faces, "marks": marks,
        },
        ensure_ascii=False,
    )  # fmt: skip
