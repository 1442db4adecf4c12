"""The command as people call it: words, exit status, and what it says when it cannot run."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.running import make_lab, run_newel

Capsys = pytest.CaptureFixture[str]
NO_LINE = 'lab: {help: {emergency: "~"}}'
CLEAN = """\
0 errors, 0 warnings, 0 notes, 0 accepted
walked: 1 procedure, 11 steps, 1 path
"""


@pytest.fixture(autouse=True)
def _at_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every test stands in its own folder, on one day."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795564800")  # 2026-11-25 in UTC


def test_a_clean_lab_ends_with_0(tmp_path: Path, capsys: Capsys) -> None:
    make_lab(tmp_path)
    run = run_newel(capsys, "check")
    assert (run.status, run.err) == (0, "")
    assert run.out.startswith(CLEAN)
    assert run.out.endswith("A checker proves only what is declared.\n")


def test_errors_end_with_1_and_stand_with_their_line(tmp_path: Path, capsys: Capsys) -> None:
    home = make_lab(tmp_path, NO_LINE)
    line = (home / "lab.yml").read_text().split("\n").index("    eyewash: left of the door") + 1
    run = run_newel(capsys, "check", "procedures")
    assert run.status == 1
    assert run.out.startswith(f"""\
error[no-emergency-line]: no emergency line is named
  --> procedures/lab.yml:{line}:5
   |
{line:>3}|     eyewash: left of the door
   |     ^^^^^^^ help stands here
   = fix: write under `lab`, `help`: a line `emergency: ...` with what to ring

1 error, 0 warnings, 0 notes, 0 accepted
""")


def test_a_mistyped_field_is_told_once_though_it_is_translated(tmp_path: Path, capsys: Capsys) -> None:
    mistyped = '{stop_rule: "~", stop_rul: Lid on. Call.}'
    make_lab(tmp_path, procedure=mistyped, **{"clean-a-plate.es.yml": "language: es\nstop_rule: Tapa.\n"})
    run = run_newel(capsys, "check")
    assert (run.status, run.out.count('stop_rul"')) == (1, 1)
    assert "did you mean `stop_rule`?\n   = and 1 more that follows from this" in run.out


def test_a_mistyped_field_that_has_to_be_there_is_told_once(tmp_path: Path, capsys: Capsys) -> None:
    make_lab(tmp_path, procedure='{title: "~", titel: Clean a plate}')
    run = run_newel(capsys, "check")
    assert (run.status, run.out.count("error[")) == (1, 1)
    assert "did you mean `title`?\n   = and 1 more that follows from this" in run.out


def test_a_step_whose_id_has_a_slip_is_told_once(tmp_path: Path, capsys: Capsys) -> None:
    stages = "[{stage: clean, title: Clean, steps: [{id: look at, do: act, say: Look.}]}]"
    side = (
        "class_of: clean-a-plate\ntitle: Others\nbecause: They are slow.\nsteps: {look-at: {takes: 2 min}}\n"
    )
    make_lab(tmp_path, procedure=f"{{stages: {stages}}}", **{"clean-a-plate.others.yml": side})
    run = run_newel(capsys, "check")
    assert "fix: write `look-at`\n   = and 1 more that follows from this" in run.out
    assert "class-changes-order" not in run.out


def test_an_input_that_no_sum_is_given_is_told_once_with_the_name_near_to_it(
    tmp_path: Path, capsys: Capsys
) -> None:
    job = "{area: 2 dm2, densty: 2 A/dm2, one: {formula: plating_current}, two: {formula: plating_current}}"
    make_lab(tmp_path, procedure=f"{{job: {job}}}")
    run = run_newel(capsys, "check")
    assert run.out.count("is not given") == 1
    assert "(the job has `densty`), or under `given` of the step\n   = and 1 more" in run.out


def test_a_mistyped_stage_of_a_card_is_told_once(tmp_path: Path, capsys: Capsys) -> None:
    stages = "[{stage: clean, title: Clean, steps: [{id: a, do: act, say: Look.}]}, "
    stages += "{stage: coat, title: Coat, steps: [{id: b, do: act, say: Look.}]}]"
    cards = "[{id: one, title: One, read_from: 1 m, stages: [clean, coaat]}]"
    make_lab(tmp_path, procedure=f"{{stages: {stages}, cards: {cards}}}")
    run = run_newel(capsys, "check")
    assert "did you mean `coat`?\n   = and 1 more that follows from this" in run.out
    assert "stage-on-no-card" not in run.out


def test_a_field_that_has_to_be_there_and_nobody_mistyped_is_told_as_missing(
    tmp_path: Path, capsys: Capsys
) -> None:
    make_lab(tmp_path, procedure='{title: "~", you_mey_see: []}')
    run = run_newel(capsys, "check")
    assert (run.status, run.out.count("error[")) == (1, 2)
    assert "write a line `title: ...` here" in run.out


@pytest.mark.parametrize(
    "words",
    [
        ("check",),
        ("check", "procedures"),
        ("check", "."),
        ("check", "clean-a-plate"),
        ("check", "--only", "clean-a-plate"),
        ("check", "procedures", "clean-a-plate"),
        ("check", "procedures/clean-a-plate.yml"),
        ("check", "procedures/lab.yml"),
    ],
)
def test_all_ways_to_name_a_lab_say_the_same(tmp_path: Path, capsys: Capsys, words: tuple[str, ...]) -> None:
    make_lab(tmp_path)
    assert run_newel(capsys, *words).out.startswith(CLEAN)


def test_one_procedure_is_checked_without_the_faults_of_others(tmp_path: Path, capsys: Capsys) -> None:
    make_lab(tmp_path, **{"procedures/other.yml": "title: Other\n", "procedures/other.night.yml": "a: b\n"})
    assert run_newel(capsys, "check", "clean-a-plate").status == 0
    run = run_newel(capsys, "check", "other", "--format", "json")
    assert run.status == 1
    files = {problem["file"] for problem in json.loads(run.out)["problems"]}
    assert "procedures/other.yml" in files
    assert files <= {"procedures/other.yml", "procedures/other.night.yml"}


@pytest.mark.parametrize("form", ["text", "json", "github", "sarif"])
@pytest.mark.parametrize(("lab", "status"), [("{}", 0), (NO_LINE, 1)])
def test_the_status_is_the_same_in_every_form(
    tmp_path: Path, capsys: Capsys, form: str, lab: str, status: int
) -> None:
    make_lab(tmp_path, lab)
    run = run_newel(capsys, "check", "--format", form)
    assert run.status == status
    assert ("no-emergency-line" in run.out) == (status == 1) or form == "sarif"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("check",), "cannot go on[no-lab]: . holds neither lab.yml nor a folder lab/\n"
                     "   = why: a lab is described once, beside its procedures\n"
                     "   = next: run `newel init`, or name another folder\n"),
        (("check", "nowhere/at-all"), "cannot go on[no-folder]: there is no folder nowhere/at-all\n"
                                      "   = next: name the folder that holds lab.yml\n"),
        (("check", "--explain", "acept-unused"),
         "cannot go on[no-rule]: there is no rule \"acept-unused\"\n"
         "   = why: a rule's id stands in brackets behind the level\n"),
        (("check", "a", "b", "c"),
         "cannot go on[too-many-words]: a folder and one procedure are enough: a b c\n"
         "   = next: newel check FOLDER ID\n"),
    ],
)  # fmt: skip
def test_what_cannot_run_ends_with_2_and_says_why(capsys: Capsys, words: tuple[str, ...], said: str) -> None:
    run = run_newel(capsys, *words)
    assert (run.status, run.out) == (2, "")
    assert run.err.startswith(said)


def test_an_unknown_procedure_gets_the_nearest_name(tmp_path: Path, capsys: Capsys) -> None:
    make_lab(tmp_path)
    run = run_newel(capsys, "check", "clean-a-plat")
    assert run.status == 2
    assert run.err == (
        'cannot go on[no-procedure]: procedures holds no procedure "clean-a-plat",'
        " and there is no folder of that name\n"
        "   = why: a procedure's id is the name of its file\n"
        "   = next: did you mean clean-a-plate?\n"
    )


def test_two_different_procedures_are_refused(tmp_path: Path, capsys: Capsys) -> None:
    make_lab(tmp_path)
    assert run_newel(capsys, "check", "clean-a-plate", "--only", "other").status == 2


@pytest.mark.parametrize("words", [("chek",), ("check", "--form", "json"), ("check", "--format", "xml")])
def test_wrong_words_end_with_2(capsys: Capsys, words: tuple[str, ...]) -> None:
    run = run_newel(capsys, *words)
    assert run.status == 2
    assert run.err


def test_a_day_that_is_none_is_refused(
    tmp_path: Path, capsys: Capsys, monkeypatch: pytest.MonkeyPatch
) -> None:
    make_lab(tmp_path)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "soon")
    run = run_newel(capsys, "check")
    assert run.status == 2
    assert run.err.startswith("cannot go on[no-day]: SOURCE_DATE_EPOCH is no number of seconds: soon\n")


def test_help_lists_every_command_and_ends_with_0(capsys: Capsys) -> None:
    run = run_newel(capsys, "--help")
    assert run.status == 0
    assert all(f"\n  {name} " in run.out for name in ("check", "build", "serve", "schema"))


@pytest.mark.parametrize("name", ["check", "build", "serve", "schema"])
def test_every_command_listed_is_there(capsys: Capsys, name: str) -> None:
    assert run_newel(capsys, name, "--help").status == 0


def test_a_rule_is_explained(capsys: Capsys) -> None:
    run = run_newel(capsys, "check", "--explain", "no-emergency-line")
    assert run.status == 0
    assert run.out == """\
no-emergency-line  (people)  an error: it stops publishing

`lab.help.emergency` is missing: nobody can read on a card whom to ring.
why: In an emergency nobody looks for a number. It stands on every card.

bad:
    lab:
      name: Larkmere Technical College
      room: B14
      help: {first_aid: wall box}

good:
    lab:
      name: Larkmere Technical College
      room: B14
      help: {emergency: "Campus emergency line, extension 800"}

source: common practice, no source
"""


def test_check_is_quick_because_it_loads_little(tmp_path: Path) -> None:
    make_lab(tmp_path)
    program = (
        "import sys; from generator.cli import main\n"
        "try: main(['check'])\n"
        "except SystemExit as left: status = left.code\n"
        "print(status, sorted({'pint', 'mkdocs', 'rich', 'typst'} & set(sys.modules)))"
    )
    run = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert run.stdout.splitlines()[-1] == "0 []"
