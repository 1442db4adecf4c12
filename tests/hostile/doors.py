"""The four doors that strange input comes through, each with what must hold whatever comes."""

import datetime
import json
import math
import re
import zlib
from collections.abc import Callable, Iterable
from pathlib import Path

from generator.checks import docs
from generator.formulas.library import LIBRARY
from generator.notation import as_yaml, plain, read_text
from generator.outputs.pages.lab_units import Told, back_units, front_units
from generator.outputs.pages.sheets import Chronicle, lay_out, procedure_sheets
from generator.outputs.policy import write_policy
from generator.outputs.search import add_entries
from generator.pipeline import Checked, check
from generator.pipeline.build import build_folder
from generator.pipeline.cards import set_cards
from generator.problems import Problem
from generator.publishing.written_form import page_text
from generator.reading import LabRead, read_lab
from generator.reading.folder import Folder
from generator.units import (
    Quantity,
    UnitsError,
    Window,
    read_clock,
    read_counted,
    read_date,
    read_numbers_window,
    read_quantity,
    read_tolerance,
    read_window,
    show_quantity,
    show_window,
    write_quantity,
)
from generator.views.filling.card import CardFacts
from generator.views.filling.summary import summary_of

DAY = datetime.date(2026, 11, 25)
BETWEEN = b"\n=====\n"
_READERS: tuple[Callable[[str], object], ...] = (
    read_quantity, read_window, read_tolerance, read_counted, read_clock, read_date, read_numbers_window,
)  # fmt: skip
# What no page may hold, whatever an author wrote; the scripts of our own pages are data or files of ours.
_OURS = r'type="application/json"|src="(?:\.\./)*assets/(?:newel-|formulas/)'
_ALIVE = re.compile(rf'<script(?! (?:defer )?(?:{_OURS}))|\son[a-z]+="|href="\s*javascript:', re.IGNORECASE)
_FILES = frozenset(f"assets/formulas/{formula.name}.js" for formula in LIBRARY)
_PRINTED = 40  # one lab in so many is set in type too


def read_file(data: bytes) -> bool:
    """A file's bytes: a tree that reads back as it was written, or located problems; True where a tree."""
    document = read_text(data, "x.yml")
    _judge(document.problems, {"x.yml"})
    assert document.root is not None or document.problems
    if document.root is None or document.problems:
        return False
    data_read = plain(document.root)
    if not isinstance(document.root, str):
        again = read_text(as_yaml(data_read).encode("utf-8", "surrogatepass"), "y.yml")
        assert again.root is not None and not again.problems, again.problems
        assert plain(again.root) == data_read
    return True


def read_units(data: bytes) -> bool:
    """A text as each kind of value: refused with words, or a value that is a number and reads back."""
    text = data.decode("utf-8", "replace")
    found = [value for read in _READERS if (value := _value(read, text)) is not None]
    for value in found:
        if isinstance(value, Quantity):
            _same_again(value)
        elif isinstance(value, Window):
            assert show_window(value)
    return bool(found)


def _value(read: Callable[[str], object], text: str) -> object:
    try:
        return read(text)
    except UnitsError as refused:
        assert refused.message and refused.fix and refused.rule
        return None


def _same_again(value: Quantity) -> None:
    assert math.isfinite(value.number) and math.isfinite(value.si), value
    assert show_quantity(value)
    again = read_quantity(write_quantity(value))
    assert again.unit == value.unit and math.isclose(again.number, value.number, rel_tol=1e-9), (value, again)


def walk_lab(data: bytes) -> bool:
    """A lab and a procedure: checked to the end, every problem located; True where a walk was made."""
    read, checked = _checked(data)
    _judge(checked.problems, set(read.documents))
    json.dumps([(p.message, p.fix, str(p.where)) for p in checked.problems])
    return bool(checked.studies)


def show_lab(data: bytes) -> bool:
    """A lab that may be published: its pages hold no markup of the author's; True where there were pages."""
    read, checked = _checked(data)
    if checked.has_errors or checked.lab is None:
        return False
    told = _told(checked, data)
    chronicle = Chronicle({formula.name: formula for formula in told.formulas})
    sheets = (
        *(sheet for unit in front_units(told) for sheet in unit.sheets(told.lab)),
        *(sheet for study in checked.studies.values() for sheet in procedure_sheets(study, chronicle)),
        *(sheet for unit in back_units(told) for sheet in unit.sheets(told.lab)),
    )
    pages, entries = lay_out(sheets, _FILES)
    for page in pages:
        text = write_policy(page_text(page))
        found = _ALIVE.search(text)
        assert not found, (page.address, text[max(found.start() - 80, 0) : found.end() + 80])
    assert not _ALIVE.search(json.dumps(json.loads(add_entries('{"docs": []}', entries))))
    if zlib.crc32(data) % _PRINTED == 0:
        _print(read, checked)
    return True


def _told(checked: Checked, data: bytes) -> Told:
    """All that the pages are told from, with the rules and formulas alone that they speak of."""
    assert checked.lab is not None
    raised = {problem.rule for problem in checked.problems}
    return Told(
        checked.lab,
        tuple(map(summary_of, checked.studies.values())),
        formulas=tuple(formula for formula in LIBRARY if formula.name.encode() in data),
        docs=tuple(doc for doc in docs() if doc.id in raised),
        problems=checked.problems,
    )


def _print(read: LabRead, checked: Checked) -> None:
    """The cards and every other sheet: printed, or refused with a located problem."""
    found = [p for card in set_cards(checked.studies.values(), CardFacts({}, "")) for p in card.problems]
    _judge(found, set(read.documents))
    _judge(build_folder(read.folder, DAY, True, "").problems, set(read.documents))


def _checked(data: bytes) -> tuple[LabRead, Checked]:
    lab, _, procedure = data.partition(BETWEEN)
    files = {"a": ("lab/a.yml", procedure)}
    read = read_lab(Folder(Path("lab"), "lab", {"lab/lab.yml": lab}, files, {}, frozenset(), None, ()))
    return read, check(read, DAY)


def _judge(problems: Iterable[Problem], files: set[str]) -> None:
    for problem in problems:
        assert problem.message and problem.fix and problem.rule, problem
        assert problem.where.line >= 1 and problem.where.column >= 1, problem
        assert problem.where.file in files or not files, problem
        assert "Traceback" not in problem.message, problem


DOORS: dict[str, Callable[[bytes], bool]] = {
    "reader": read_file,
    "units": read_units,
    "walk": walk_lab,
    "views": show_lab,
}
