"""What does not fit the model: named with the nearest known, all at once, and the rest is still read."""

from pathlib import Path

import pytest

from generator.problems import NewelError, Problem
from generator.reading import LabRead, find_folder, open_folder, read_lab

LAB = """\
lab:
  name: Larkmere Technical College
  room: B14
  help: {emergency: Extension 800}
roles:
  operator: {title: Trained student}
"""
PROCEDURE = """\
title: Clean a plate
who: operator
approver: operator
stages:
  - stage: clean
    title: Clean
    steps:
      - {id: look, do: check, say: Look at it.}
"""


def read(folder: Path, **files: str) -> LabRead:
    """A lab from texts by name; `__` stands for a dot or, at the end of a folder's name, for a slash."""
    texts = {"lab": LAB, "clean": PROCEDURE, **files}
    for name, text in texts.items():
        (folder / f"{name.replace('__', '.')}.yml").write_text(text, encoding="utf-8")
    return read_lab(open_folder(folder, "p"))


def told(found: LabRead) -> list[tuple[str, int, str]]:
    return [(p.rule, p.where.line, p.message) for p in found.problems]


def only(found: LabRead) -> Problem:
    assert len(found.problems) == 1, told(found)
    return found.problems[0]


def test_an_unknown_field_is_named_with_the_nearest(tmp_path: Path) -> None:
    problem = only(
        read(tmp_path, clean=PROCEDURE.replace("approver: operator", "approver: operator\nstoprule: Stop."))
    )
    assert (problem.rule, str(problem.where)) == ("unknown-key", "p/clean.yml:4:1")
    assert problem.fix == "did you mean `stop_rule`?"


def test_an_unknown_field_of_a_step_names_the_step(tmp_path: Path) -> None:
    problem = only(read(tmp_path, clean=PROCEDURE.replace("say: Look", "tkaes: 2 min, say: Look")))
    assert (problem.rule, problem.step, problem.message) == (
        "unknown-key",
        "look",
        '"look" has no field named "tkaes"',
    )
    assert problem.fix == "did you mean `takes`?"


def test_an_unknown_verb_is_named_with_the_nearest(tmp_path: Path) -> None:
    problem = only(read(tmp_path, clean=PROCEDURE.replace("do: check", "do: chekc")))
    assert problem.rule == "unknown-name"
    assert problem.fix.startswith("did you mean `check`?")


def test_mistakes_of_many_kinds_come_in_one_run(tmp_path: Path) -> None:
    found = read(
        tmp_path,
        lab=LAB.replace("room: B14", "rooom: B14") + "ppe: [gloves]\n",
        clean=PROCEDURE.replace("who: operator\n", "").replace(
            "do: check", "do: chekc, for: 8, put_on: nitrile"
        ),
    )
    assert {rule for rule, _, _ in told(found)} == {
        "unknown-key", "required-missing", "unreadable", "unknown-name", "unit-missing",
    }  # fmt: skip
    assert found.lab is not None
    assert [str(step.id) for step in found.procedures["clean"].procedure.steps] == ["look"]


def test_a_misfit_inside_a_required_field_is_told_once(tmp_path: Path) -> None:
    text = PROCEDURE.replace("say: Look", "since: {step: look, time: 6-10 min}, say: Look")
    found = read(tmp_path, clean=text)
    assert only(found).rule == "unit-missing"
    assert found.procedures["clean"].procedure.steps[0].since is None


def test_what_is_missing_is_told_once(tmp_path: Path) -> None:
    found = read(
        tmp_path, clean=PROCEDURE.replace("title: Clean a plate\n", "").replace(", say: Look at it.", "")
    )
    assert [(rule, message) for rule, _, message in told(found)] == [
        ("required-missing", 'the file has no "title"'),
        ("required-missing", '"look" has no "say"'),
    ]


def test_a_broken_file_does_not_hide_the_others(tmp_path: Path) -> None:
    found = read(tmp_path, broken="title: [", clean=PROCEDURE.replace("title: Clean a", "tilte: Clean a"))
    assert {problem.where.file for problem in found.problems} == {"p/broken.yml", "p/clean.yml"}
    assert set(found.procedures) == {"clean"}


@pytest.mark.parametrize("text", ["", "# nothing\n", "just words\n", "- a\n- b\n"])
def test_a_file_without_fields_says_so(tmp_path: Path, text: str) -> None:
    assert only(read(tmp_path, empty=text)).rule == "required-missing"


@pytest.mark.parametrize(
    "text", ["a: 1", "lab: 8", "stages: 8", "stages: []", "stages: [1, [2]]", "stages: {a: b}"]
)
def test_any_shape_of_a_procedure_is_only_a_problem(tmp_path: Path, text: str) -> None:
    assert read(tmp_path, odd=text + "\n").problems


@pytest.mark.parametrize(
    "text", ["lab: []", "roles: x", "lab: {name: [x]}", "places: {a: b}", "waste: {a: {takes: {}}}"]
)
def test_any_shape_of_a_lab_is_only_a_problem(tmp_path: Path, text: str) -> None:
    assert read(tmp_path, lab=text + "\n").problems


def test_a_procedure_is_named_by_an_id(tmp_path: Path) -> None:
    (tmp_path / "Clean It.yml").write_text(PROCEDURE, encoding="utf-8")
    problem = only(read(tmp_path))
    assert problem.fix == "rename the file to `clean-it.yml`"


def test_nouns_may_stand_in_several_files(tmp_path: Path) -> None:
    (tmp_path / "lab").mkdir()
    (tmp_path / "lab" / "a.yml").write_text("places:\n  a: {title: A}\n", encoding="utf-8")
    (tmp_path / "lab" / "b.yml").write_text("places:\n  b: {title: B}\n", encoding="utf-8")
    found = read(tmp_path)
    assert found.problems == ()
    assert found.lab is not None
    assert list(map(str, found.lab.places)) == ["a", "b"]


def test_a_side_file_without_its_procedure_is_lost(tmp_path: Path) -> None:
    problem = only(read(tmp_path, claen__es="language: es\n"))
    assert (problem.rule, problem.message) == ("unknown-name", 'there is no procedure "claen" for this file')


def test_a_class_of_another_procedure_is_told(tmp_path: Path) -> None:
    problem = only(read(tmp_path, clean__b="class_of: polish\n"))
    assert (problem.rule, problem.fix) == ("unknown-name", "write `class_of: clean`")


def test_two_files_of_one_language_are_told(tmp_path: Path) -> None:
    found = read(tmp_path, clean__es="language: es\ntitle: Uno\n", clean__mx="language: es\ntitle: Dos\n")
    assert only(found).rule == "given-twice"
    assert found.procedures["clean"].languages["es"].title == "Uno"


def test_a_translation_of_a_step_that_is_not_there_is_named(tmp_path: Path) -> None:
    problem = only(read(tmp_path, clean__es="language: es\nsteps:\n  loko: {say: Mire., why: Para ver.}\n"))
    assert (problem.rule, problem.message, problem.fix) == (
        "unknown-name", 'there is no "loko" under `steps` to translate', "did you mean `look`?",
    )  # fmt: skip


def test_a_translation_of_a_field_that_the_procedure_has_not_is_named(tmp_path: Path) -> None:
    problem = only(read(tmp_path, clean__es="language: es\nstop_rule: Tapa puesta.\n"))
    assert (problem.rule, problem.message) == (
        "unknown-name", 'there is no "stop_rule" in the procedure to translate',
    )  # fmt: skip


@pytest.mark.parametrize("name", ["wash.yml.txt", "wash.YML.TXT", "lab/tanks.yaml.txt"])
def test_a_name_that_goes_on_behind_its_ending_is_told(tmp_path: Path, name: str) -> None:
    (tmp_path / "lab").mkdir()
    (tmp_path / name).write_text(PROCEDURE, encoding="utf-8")
    problem = only(read(tmp_path))
    assert (problem.rule, problem.where.file) == ("unreadable", f"p/{name}")
    assert problem.fix == f"rename it to `{name.rpartition('/')[2][:-4]}`"


def test_a_link_that_leads_out_is_refused(tmp_path: Path) -> None:
    outside = tmp_path / "outside.yml"
    outside.write_text(PROCEDURE, encoding="utf-8")
    home = tmp_path / "home"
    home.mkdir()
    (home / "stolen.yml").symlink_to(outside)
    problem = only(read(home))
    assert (problem.rule, problem.where.file) == ("unreadable", "p/stolen.yml")


def test_a_folder_without_a_lab_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(NewelError) as caught:
        find_folder(tmp_path)
    assert caught.value.id == "no-lab"
    with pytest.raises(NewelError) as caught:
        find_folder(tmp_path / "nowhere")
    assert caught.value.id == "no-folder"


@pytest.mark.parametrize(
    ("written", "message", "fix"),
    [
        ("takes: 4", "takes: `4` has no unit", "write the unit after the number, such as 4 min"),
        ("takes: -4 min", 'takes: "-4 min" is less than no time', "write 4 min"),
        (
            "at: [bench, sink]",
            "at: one value is expected here, but a list is written",
            "write one, without brackets",
        ),
        (
            "put_on: nitrile and apron",
            "put_on: a list is expected here, but its brackets are not there",
            "write `[nitrile, apron]`",
        ),
        ("put_on: ''", "put_on: the field is there but empty", "write a value, or delete the line"),
        ("wash_hands: Yes", 'wash_hands: true or false is expected, but "Yes" is written', "write `true`"),
        ("fresh: off", 'fresh: true or false is expected, but "off" is written', "write `false`"),
    ],
)
def test_a_misfit_says_what_to_write(tmp_path: Path, written: str, message: str, fix: str) -> None:
    text = PROCEDURE.replace("{id: look, do: check,", f"{{id: look, do: check, {written},")
    problem = only(read(tmp_path, clean=text))
    assert (problem.message, problem.fix) == (message, fix)


def test_a_missing_unit_is_one_that_the_field_takes(tmp_path: Path) -> None:
    found = read(tmp_path, lab=LAB + "places: {bath: {title: Bath, temperature: 42 to 48}}\n")
    assert only(found).fix == "write the unit after the number, such as 48 degC"


def test_what_is_missing_in_a_list_is_told_of_its_entry(tmp_path: Path) -> None:
    text = PROCEDURE.replace("{id: look, do: check,", "{do: check,")
    assert only(read(tmp_path, clean=text)).message == 'entry 1 under `steps` has no "id"'


def test_an_empty_entry_of_a_list_is_told_as_such(tmp_path: Path) -> None:
    problem = only(read(tmp_path, clean=PROCEDURE.replace("      - {id", "      -\n      - {id")))
    assert (problem.where.line, problem.message) == (8, "steps: an entry is empty here")
    assert problem.fix == "delete its dash, or write its fields behind it"
