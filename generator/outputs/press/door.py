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

from generator.outputs.press.drawing import Sheet
from generator.outputs.press.metrics import FONTS, bold, medium
from generator.outputs.press.sheet_data import sheet_data
from generator.problems import NewelError

_OUTPUTS = Path(__file__).parent.parent
_MAIN = b'#import "/templates/card.typ": printed\n#printed(json("book.json"))'


class _Compilers(threading.local):
    """One Typst compiler a thread: it keeps the fonts read and what it has set before."""

    def __init__(self) -> None:
        self.typst = typst.Compiler(root=str(_OUTPUTS), font_paths=[str(FONTS)], ignore_system_fonts=True)


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


def _compile(data: bytes, title: str, dated: str, form: Literal["pdf", "svg"]) -> bytes:
    day = date.fromisoformat(dated)
    noon = datetime(day.year, day.month, day.day, 12, tzinfo=UTC)
    try:
        made = _compilers().typst.compile(
            # Data in `sys_inputs` would make the compiler forget all that it has set before.
            input={"main.typ": _MAIN, "book.json": data},  # type: ignore[type-var]  # their types lack it
            format=form,
            pdf_standards="ua-1" if form == "pdf" else None,
            timestamp=int(noon.timestamp()),
        )
    except typst.TypstError as error:
        raise NewelError("press-failed", f"{title!r} was not set: {error.message}") from error
    if not isinstance(made, bytes):
        raise NewelError("press-failed", f"{title!r} ran over to a second page")
    return made


def _data(sheets: Sequence[Sheet], title: str, language: str) -> bytes:
    drawn = [{**_spoken(sheet.language), **sheet_data(sheet)} for sheet in sheets]
    faces = {"medium": medium().family, "bold": bold().family}
    book = {"title": title, **_spoken(language), **faces, "sheets": drawn}
    return json.dumps(book, ensure_ascii=False, separators=(",", ":")).encode()


def _spoken(language: str) -> dict[str, str | None]:
    first, _, region = language.partition("-")
    return {"language": first, "region": region or None}
