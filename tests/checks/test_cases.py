"""Every rule against its cases, and every rule has cases that find and cases that do not."""

from pathlib import Path

import pytest

from generator import checks
from generator.checks import RULES
from tests.checks.cases import Case, check_case, read_cases

HERE = Path(__file__).parent
FILES = sorted(HERE.rglob("*.cases"))
CASES = [case for path in FILES for case in read_cases(path)]


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule}: {case.title}")
def test_case_is_judged_as_written(case: Case, tmp_path: Path) -> None:
    found = [
        problem for problem in check_case(case, tmp_path / "procedures").problems if problem.rule == case.rule
    ]
    seen = [(str(problem.level), problem.step, problem.message) for problem in found]
    assert len(seen) == len(case.expected), seen
    for (level, step, message), (want_level, want_step, part) in zip(seen, case.expected, strict=True):
        assert (level, step) == (want_level, want_step or step)
        assert part.replace("\u00a0", " ") in message.replace("\u00a0", " ")


def test_base_of_the_cases_is_clean(tmp_path: Path) -> None:
    checked = check_case(Case("", "", {"found": "nothing"}), tmp_path / "procedures")
    assert [str(p.where) + " " + p.rule + ": " + p.message for p in checked.problems] == []


def test_every_module_of_a_subject_is_the_rule_of_its_name() -> None:
    """What rules look up stands in `evidence`, so that nothing there can pass as the id of a rule."""
    packages = [path for path in Path(checks.__file__).parent.iterdir() if (path / "__init__.py").exists()]
    subjects = [path for path in packages if path.name != "evidence"]
    modules = {path.stem.replace("_", "-") for folder in subjects for path in folder.glob("[!_]*.py")}
    assert modules == {rule.doc.id for rule in RULES}


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.doc.id)
def test_rule_has_a_failing_and_a_passing_case(rule: object) -> None:
    mine = [case for case in CASES if case.rule == rule.doc.id]  # type: ignore[attr-defined]
    assert any(case.expected for case in mine), "no case that finds it"
    assert any(not case.expected for case in mine), "no case that stays clean"
