"""An answer about the lab is worked out once, and all that ask for it depend on what it came from."""

import datetime
from pathlib import Path

from generator.pipeline.looks import Watch, survey
from generator.reading import open_folder, read_nouns
from generator.study import LabStudy
from generator.study.study import study_lab
from tests.many_labs import write_many


def test_every_watch_notes_what_the_answer_was_worked_out_from(tmp_path: Path) -> None:
    lab = read_nouns(open_folder(write_many(tmp_path, 1))).lab
    assert lab is not None
    ground = survey(study_lab(lab, {}, frozenset(), datetime.date(2026, 11, 25)))
    worked: list[str] = []

    def holds(study: LabStudy, id: str) -> str:
        worked.append(id)
        place = study.place(id)
        return str(place.holds) if place else ""

    watches = [Watch(ground) for _ in range(3)]
    found = [watch.study.answers.of(watch.study, holds, "bath") for watch in watches[:2]]
    assert found == ["bath-mix", "bath-mix"] and worked == ["bath"]
    assert watches[0].looks == watches[1].looks == {"places": {"bath": ground.digests["places"]["bath"]}}
    assert not watches[2].looks
    assert watches[2].study.answers.of(watches[2].study, holds, "nowhere") == ""
    assert watches[2].looks == {"places": {"nowhere": ""}}, "that it is not there is noted too"
