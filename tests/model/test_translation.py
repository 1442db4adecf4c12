"""Sentences by path: the same names in the base language and in a translation."""

import pytest

from generator.model import MARKS, WHERE, LanguageFile, Procedure, Text
from generator.model.translation import is_sentence, sentences_of, translated, values_in
from generator.problems import Location

PROCEDURE = Procedure.model_validate(
    {
        "title": "Clean", "who": "operator", "approver": "operator", "stop_rule": "Stop.",
        "tell_us_first": ["You have asthma."],
        "you_may_see": [{"symptom": "grey", "causes": ["cold", "old"], "do_first": "Call."}],
        "stages": [{"stage": "clean", "title": "Clean", "steps": [
            {"id": "ready", "do": "hold", "say": "Ask.", "hold": {"until": "they say READY"}},
            {"id": "look", "do": "check", "say": "Look.", "check": "no film", "for": "2 min",
             "fail": {"say": "Stop.", "call": "operator",
                      "mend": {"id": "dry", "do": "dry", "say": "Dry it."}}},
        ]}],
    }
)  # fmt: skip


def test_every_sentence_has_a_path() -> None:
    assert sentences_of(PROCEDURE) == {
        "title": "Clean",
        "stop_rule": "Stop.",
        "tell_us_first.0": "You have asthma.",
        "stages.clean.title": "Clean",
        "steps.ready.say": "Ask.",
        "steps.ready.hold.until": "they say READY",
        "steps.look.say": "Look.",
        "steps.look.check": "no film",
        "steps.look.fail.say": "Stop.",
        "steps.dry.say": "Dry it.",
        "you_may_see.0.symptom": "grey",
        "you_may_see.0.do_first": "Call.",
        "you_may_see.0.causes.0": "cold",
        "you_may_see.0.causes.1": "old",
    }
    assert all(is_sentence(path) for path in sentences_of(PROCEDURE))


@pytest.mark.parametrize(
    "path", ["steps.look.for", "steps.look", "job.length", "lab.places.a.temperature", "lab", "who"]
)
def test_what_is_no_sentence(path: str) -> None:
    assert not is_sentence(path)


def test_a_translator_may_write_the_sentence_alone() -> None:
    where = Location("x.es.yml", 4, 7)
    step = {"hold": Text("dicen LISTO", where), "for": Text("2 min", where), WHERE: where, MARKS: {}}
    file = LanguageFile.model_validate(
        {"language": "es", "steps": {"ready": step}, "stages": {"clean": Text("Limpiar", where)},
         "lab": {"places": {"bath": {"not_right": Text("Tapa.", where)}}}}
    )  # fmt: skip
    assert translated(file) == {
        "steps.ready.hold.until": "dicen LISTO",
        "stages.clean.title": "Limpiar",
        "lab.places.bath.not_right.say": "Tapa.",
    }
    assert values_in(file) == (("steps.ready.for", where),)
