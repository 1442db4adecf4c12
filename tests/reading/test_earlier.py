"""A procedure that is read again after an edit is the one that its file alone gives."""

import random
from dataclasses import replace
from pathlib import Path

import pytest

from generator.model import Procedure
from generator.reading import Folder, LabRead, lab, open_folder, read_nouns, read_one

DEMO = Path(__file__).parents[2] / "procedures"
PLATING = "copper-the-holes"
WORDS = (
    "now",
    "8 min",
    "no-such-place",
    "",
    "{",
    "true",
    "put-in",
    "- id: x",
    "    why: Because.",
    "fail: {}",
)


@pytest.fixture(scope="module")
def nouns() -> LabRead:
    return read_nouns(open_folder(DEMO))


def with_text(nouns: LabRead, text: str) -> LabRead:
    folder: Folder = nouns.folder
    own = {PLATING: ("plating.yml", text.encode())}
    sides = {key: side for key, side in folder.sides.items() if key[0] == PLATING}
    return replace(nouns, folder=replace(folder, procedures=own, sides=sides))


def procedure(read: LabRead) -> Procedure:
    return read.procedures[PLATING].procedure


def plating(nouns: LabRead) -> str:
    return nouns.folder.procedures[PLATING][1].decode()


def test_after_any_edits_it_is_what_its_file_alone_gives(
    nouns: LabRead, monkeypatch: pytest.MonkeyPatch
) -> None:
    chance, text = random.Random(3), plating(nouns)
    for _ in range(60):
        lines = text.splitlines()
        for _ in range(chance.randrange(1, 3)):
            at = chance.randrange(len(lines))
            words = lines[at].split(" ")
            words[chance.randrange(len(words))] += chance.choice(WORDS)
            lines[at : at + chance.randrange(1, 3)] = [" ".join(words)]
        now = with_text(nouns, "\n".join(lines) + "\n")
        again = read_one(now, PLATING)
        with monkeypatch.context() as patch:
            patch.setattr(lab, "earlier", lambda _: None)
            alone = read_one(now, PLATING)
        assert again.procedures == alone.procedures
        assert again.problems == alone.problems
        if not again.problems:
            text = "\n".join(lines) + "\n"


def test_a_step_that_no_edit_touched_is_the_step_that_it_was(nouns: LabRead) -> None:
    text = plating(nouns)
    first = procedure(read_one(with_text(nouns, text), PLATING))
    edited = text.replace("say: Look at the session clock.", "say: Look at the clock.")
    then = procedure(read_one(with_text(nouns, edited), PLATING))
    others = [step.id for step, was in zip(then.steps, first.steps, strict=True) if step is not was]
    assert others == ["plan"]


def test_a_step_that_stands_elsewhere_knows_its_new_line(nouns: LabRead) -> None:
    text = plating(nouns)
    first = procedure(read_one(with_text(nouns, text), PLATING))
    then = procedure(read_one(with_text(nouns, text.replace("stages:", "# a line more\nstages:")), PLATING))
    assert [step.where.line for step in then.steps] == [step.where.line + 1 for step in first.steps]
