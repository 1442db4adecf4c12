"""Compiles one of our own Typst templates with data, for documents that Typst itself breaks into pages."""

import json
import threading
from collections.abc import Mapping
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path

import typst

from generator.outputs.press.metrics import FONTS, bold, medium
from generator.problems import NewelError

_OUTPUTS = Path(__file__).parent.parent


class _Compilers(threading.local):
    """One compiler a thread and template, so that fonts are read once."""

    def __init__(self) -> None:
        self.by_name: dict[str, typst.Compiler] = {}

    def of(self, template: str) -> typst.Compiler:
        """The compiler of a template by its file name."""
        if template not in self.by_name:
            self.by_name[template] = typst.Compiler(
                input=str(_OUTPUTS / "templates" / template),
                root=str(_OUTPUTS),
                font_paths=[str(FONTS)],
                ignore_system_fonts=True,
            )
        return self.by_name[template]


@cache
def _compilers() -> _Compilers:
    return _Compilers()


def print_template(template: str, data: Mapping[str, object], title: str, language: str, dated: str) -> bytes:
    """A tagged PDF (PDF/UA-1 export) with title, language and date; the same bytes for the same data.

    The data arrives as JSON and is never read as markup. `dated` is an ISO date.
    """
    day = date.fromisoformat(dated)
    noon = datetime(day.year, day.month, day.day, 12, tzinfo=UTC)
    language, _, region = language.partition("-")
    faces = {
        "medium": {"family": medium().family, "cap": medium().cap},
        "bold": {"family": bold().family, "cap": bold().cap},
    }
    whole = {**data, "title": title, "language": language, "region": region, "faces": faces}
    try:
        made = (
            _compilers()
            .of(template)
            .compile(
                format="pdf",
                sys_inputs={"sheet": json.dumps(whole, ensure_ascii=False)},
                pdf_standards="ua-1",
                timestamp=int(noon.timestamp()),
            )
        )
    except typst.TypstError as error:
        raise NewelError("press-failed", f"the document {title!r} was not set: {error.message}") from error
    if not isinstance(made, bytes):
        raise NewelError("press-failed", f"the document {title!r} came out as several files")
    return made
