"""A small lab that is posted, edited and compared, as text of the kind that an author types."""

import datetime
from pathlib import Path
from typing import Any

from generator.model.posted import IssueHead
from generator.notation import as_yaml, plain, read_text
from generator.pipeline import Checked, check
from generator.pipeline.changes import Comparison, compare
from generator.pipeline.contents import draft_of
from generator.pipeline.posting import Ready, Refused, Wish, post
from generator.reading import LabRead, open_folder, read_lab
from tests.checks.cases import BASE, edit_steps, lay_over

ID = "clean-a-plate"
DAY = datetime.date(2026, 11, 25)
FIRST = Wish("First issue", "instructor", "safety-office")
_LAB = {"roles": {"safety-office": {"title": "Safety office", "reach": "extension 850"}}}
_CARDS = [
    {"id": "line-card", "title": "Line card", "size": "A3", "read_from": "1.0 m", "stages": ["clean"]},
    {
        "id": "door-card",
        "title": "Visitors",
        "size": "A4",
        "read_from": "1.0 m",
        "show": ["wear", "stop-rule", "help"],
    },
]


def yaml(text: str) -> Any:
    """Plain data of a piece of YAML."""
    root = read_text(text.encode(), "piece.yml").root
    assert root is not None, text
    return plain(root)


def write(folder: Path, lab: str = "{}", procedure: str = "{}", edit: str = "") -> None:
    """The base lab with two cards and pieces laid over it, and edits of its steps."""
    whole_lab = lay_over(lay_over(yaml((BASE / "lab.yml").read_text()), _LAB), yaml(lab))
    whole = lay_over(
        yaml((BASE / "procedure.yml").read_text()), {"cards": _CARDS, "job": {"length": "80 mm"}}
    )
    whole = lay_over(whole, yaml(procedure))
    edit_steps(whole["stages"][0]["steps"], edit)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "lab.yml").write_text(as_yaml(whole_lab))
    (folder / f"{ID}.yml").write_text(as_yaml(whole))


def opened(folder: Path, day: datetime.date = DAY) -> tuple[LabRead, Checked]:
    """The lab as read and checked."""
    read = read_lab(open_folder(folder, "procedures"))
    return read, check(read, day)


def posted(folder: Path, wish: Wish = FIRST, day: datetime.date = DAY) -> Ready:
    """Post what lies in a folder, and write it there."""
    made = tried(folder, wish, day)
    assert isinstance(made, Ready), made
    target = folder / made.file
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(made.text)
    return made


def tried(folder: Path, wish: Wish = FIRST, day: datetime.date = DAY) -> Ready | Refused:
    """What posting would do."""
    return post(*opened(folder, day), ID, wish)


def compared(folder: Path) -> Comparison:
    """The files against the newest issue."""
    read, checked = opened(folder)
    return compare(read, checked, draft_of(read, checked, ID))


def head(folder: Path) -> IssueHead:
    """The head of the newest issue."""
    found = opened(folder)[1].shelf.head(ID)
    assert found is not None
    return found


def last_changed(folder: Path) -> dict[str, int]:
    """In which issue each step last changed."""
    return {str(step): number for step, number in head(folder).steps.items()}
