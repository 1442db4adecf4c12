"""An issue is read back as it was written; what was altered is told; the model's every field has a group."""

import datetime
from pathlib import Path

import pytest

from generator.model import Lab, Located, Procedure
from generator.model.lab import Lab as LabModel
from generator.model.translation import sentences_of
from generator.pipeline import check
from generator.pipeline.contents import draft_of
from generator.posting.facts import facts_of
from generator.posting.groups import GROUP_OF
from generator.posting.issue import open_issue
from generator.posting.used import LIVE, NOUNS
from generator.reading import open_folder, read_lab
from tests.posting import labs

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "procedures"


def test_what_an_issue_says_is_what_the_files_say(first_issue: Path) -> None:
    read, checked = labs.opened(first_issue)
    file = checked.shelf.last(labs.ID)
    issue = file.read() if file else None
    assert issue is not None
    assert facts_of(issue.content) == dict(draft_of(read, checked, labs.ID).facts)


def test_the_demo_lab_reads_back_fact_by_fact() -> None:
    """Every procedure of the demo through text and back; what the small lab lacks is in one of them."""
    from generator.posting.issue import write_issue

    read = read_lab(open_folder(DEMO, "procedures"))
    checked = check(read, datetime.date(2026, 11, 25))
    head = {"number": "1", "posted": "2026-11-25", "approver": "instructor", "approved_by": "instructor",
            "reason": "a test", "check_code": "x"}  # fmt: skip
    for id in read.procedures:
        drafted = draft_of(read, checked, id)
        text = write_issue(id, head, drafted.content)
        issue = open_issue(f"procedures/posted/{id}/1.yml", text.encode()).read()
        assert issue is not None
        assert facts_of(issue.content) == dict(drafted.facts)
        # What says nothing is not written.
        assert "use: {}" not in text and "set: {}" not in text and "given: {}" not in text


def test_line_ends_of_another_system_alter_nothing(first_issue: Path) -> None:
    text = (first_issue / "posted" / labs.ID / "1.yml").read_bytes()
    assert open_issue("p/posted/x/1.yml", text).sealed
    assert open_issue("p/posted/x/1.yml", text.replace(b"\n", b"\r\n")).sealed
    assert not open_issue("p/posted/x/1.yml", text.replace(b"7 min", b"9 min")).sealed


def _fields(noun: type[Located], without: tuple[str, ...] = ()) -> list[str]:
    return [str(field.alias or name) for name, field in noun.model_fields.items()
            if name not in ("where", "marks", "id", "was", *without)]  # fmt: skip


def _nouns() -> list[tuple[str, type[Located], tuple[str, ...]]]:
    from typing import get_args

    rows: list[tuple[str, type[Located], tuple[str, ...]]] = []
    for noun in NOUNS:
        annotation = LabModel.model_fields[noun].annotation
        rows.append((noun, get_args(annotation)[1], LIVE.get(noun, ())))
    apart = ("stages", "cards", "you_may_see", "vendor_papers", "accept")
    rows.append(("procedure", Procedure, apart))
    room = LabModel.model_fields["lab"].annotation
    assert isinstance(room, type) and issubclass(room, Located)
    rows.append(("room", room, LIVE["lab"]))
    for field, noun in (
        ("stages", "stage"),
        ("cards", "card"),
        ("you_may_see", "symptom"),
        ("vendor_papers", "paper"),
    ):
        rows.append((noun, get_args(Procedure.model_fields[field].annotation)[0], ()))
    stage = rows[-4][1]
    rows.append(("step", get_args(stage.model_fields["steps"].annotation)[0], ()))
    return rows


@pytest.mark.parametrize(
    ("noun", "model", "without"), _nouns(), ids=lambda value: value if isinstance(value, str) else ""
)
def test_every_field_has_a_group(noun: str, model: type[Located], without: tuple[str, ...]) -> None:
    """A new field of the model must say who approves its changes."""
    tagged = {name.split(".")[0] for name in GROUP_OF[noun]}
    assert [field for field in _fields(model, without) if field not in tagged] == []


def test_who_holds_a_role_stands_in_no_issue(first_issue: Path) -> None:
    text = (first_issue / "posted" / labs.ID / "1.yml").read_text()
    assert "Odalys" not in text
    assert isinstance(labs.opened(first_issue)[0].lab, Lab)


def test_the_procedure_of_an_issue_is_read_without_the_rest() -> None:
    for path in sorted(DEMO.glob("posted/*/[0-9].yml")):
        file = open_issue(path.as_posix(), path.read_bytes())
        alone, whole = file.procedure(), file.read()
        assert alone is not None
        assert whole is not None
        assert alone == whole.procedure
        assert [words.where for words in sentences_of(alone).values()] == [
            words.where for words in sentences_of(whole.procedure).values()
        ]


def test_a_procedure_is_not_cut_out_of_an_issue_that_was_altered() -> None:
    path = DEMO / "posted" / "cast-a-block" / "1.yml"
    torn = path.read_bytes().replace(b"\nissue:\n", b"\nissues:\n")
    assert open_issue(path.as_posix(), torn).procedure() is None
