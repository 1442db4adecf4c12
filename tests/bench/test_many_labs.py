"""The generated labs are what the benchmark says they are."""

import datetime
from pathlib import Path

import pytest

from generator.pipeline import check
from generator.problems import Level
from generator.reading import open_folder, read_lab
from tests.many_labs import procedure_id, procedure_text, write_many

TODAY = datetime.date(2026, 11, 25)


@pytest.mark.parametrize("steps", [12, 15, 58])
def test_a_generated_lab_is_sound_and_as_long_as_asked(tmp_path: Path, steps: int) -> None:
    checked = check(read_lab(open_folder(write_many(tmp_path, 2, steps))), TODAY)
    assert [f"{p.where} {p.rule}: {p.message}" for p in checked.problems if p.level is not Level.NOTE] == []
    assert [len(study.procedure.steps) for study in checked.studies.values()] == [steps, steps]


def test_long_procedures_have_checks_that_can_be_redone(tmp_path: Path) -> None:
    checked = check(read_lab(open_folder(write_many(tmp_path, 1, 58))), TODAY)
    [study] = checked.studies.values()
    assert sum("failed" in path for path in study.walk.paths) == 13


def test_each_has_words_of_its_own_and_the_same_every_time() -> None:
    texts = {procedure_text(number) for number in range(300)}
    assert len(texts) == 300
    assert procedure_text(7) == procedure_text(7)
    assert 3_000 < len(procedure_text(7)) < 12_000
    assert len({procedure_id(number) for number in range(1000)}) == 1000
