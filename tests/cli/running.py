"""Runs the command in this process, and writes small labs for it."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.cli import main
from tests.checks.cases import Case, write_lab


@dataclass(frozen=True)
class Outcome:
    """What a run left: exit status, standard output, standard error."""

    status: int
    out: str
    err: str


def run_newel(capsys: pytest.CaptureFixture[str], *words: str) -> Outcome:
    """Run `newel` with words; the SystemExit that every run ends in becomes its status."""
    capsys.readouterr()
    with pytest.raises(SystemExit) as left:
        main(list(words))
    seen = capsys.readouterr()
    status = left.value.code
    assert isinstance(status, int)
    return Outcome(status, seen.out, seen.err)


def make_lab(folder: Path, lab: str = "{}", procedure: str = "{}", **files: str) -> Path:
    """The base lab of the cases with fields laid over it, in `procedures` inside a folder."""
    home = folder / "procedures"
    sections = {"lab": lab, "procedure": procedure, "found": "nothing"}
    write_lab(Case("", "", sections, {name: text.encode() for name, text in files.items()}), home)
    return home
