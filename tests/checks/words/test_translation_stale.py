"""A translation against posted issues, which a case cannot hold yet."""

from typing import Any

from generator.checks.words.translation_stale import judge
from generator.model import LanguageFile, Procedure, Text
from generator.model.translation import sentences_of


def procedure(say: str, check: str = "no film") -> Procedure:
    step = {"id": "look", "do": "check", "say": say, "check": check}
    data = {
        "title": "T",
        "who": "a",
        "approver": "b",
        "stages": [{"stage": "s", "title": "S", "steps": [step]}],
    }
    return Procedure.model_validate(data)


def spanish(**more: Any) -> LanguageFile:
    return LanguageFile.model_validate({"language": "es", "steps": {"look": {"say": Text("Mire.")}}, **more})


ISSUES = {"1": procedure("Look at it."), "2": procedure("Look at both faces.")}
NOW = procedure("Look at both faces.", check="no film, no drop")


def test_a_sentence_that_changed_since_is_named() -> None:
    (problem,) = judge(spanish(checked_against="1"), sentences_of(NOW), ISSUES)
    assert "since issue 1, 1 sentence" in problem.message
    assert problem.fix.startswith("compare steps.look.say")


def test_a_change_of_what_is_not_translated_is_no_matter() -> None:
    assert list(judge(spanish(checked_against="2"), sentences_of(NOW), ISSUES)) == []


def test_nobody_has_compared_it() -> None:
    for file in (spanish(checked_against="none"), spanish()):
        (problem,) = judge(file, sentences_of(NOW), ISSUES)
        assert problem.fix.endswith("write `checked_against: 2`")
        assert list(judge(file, sentences_of(NOW), {})) == []


def test_an_issue_that_was_never_posted() -> None:
    (problem,) = judge(spanish(checked_against="3"), sentences_of(NOW), ISSUES)
    assert problem.fix == "write the number of a posted issue (1, 2)"
    (problem,) = judge(spanish(checked_against="3"), sentences_of(NOW), {})
    assert problem.fix == "write `none` until the first issue is posted"
