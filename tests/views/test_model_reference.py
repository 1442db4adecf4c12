"""The reference of the model says what the model says."""

import pytest
from pydantic import ValidationError

from generator.model import VERBS, Lab, Located, Place, Procedure, Step
from generator.model.described import every_noun, meanings
from generator.views.filling.model_reference import reference_view
from generator.views.reference import FieldView, NounView

VIEW = reference_view()
NOUNS = {noun.title: noun for noun in VIEW.nouns}


def field(noun: str, name: str) -> FieldView:
    return next(each for each in NOUNS[noun].fields if each.name == name)


@pytest.mark.parametrize("kind", [Lab, Procedure, Place, Step])
def test_every_field_of_a_noun_is_there_under_the_name_that_is_written(kind: type[Located]) -> None:
    hidden = {"where", "marks"} | ({"id"} if kind is Procedure else set())
    wanted = [info.alias or name for name, info in kind.model_fields.items() if name not in hidden]
    assert [each.name for each in NOUNS[kind.__name__].fields] == wanted


def test_what_must_be_there_is_what_the_model_refuses_to_miss() -> None:
    with pytest.raises(ValidationError) as refused:
        Procedure.model_validate({})
    missing = {str(error["loc"][0]) for error in refused.value.errors() if error["type"] == "missing"}
    assert {each.name for each in NOUNS["Procedure"].fields if each.must} == missing


def test_what_a_field_takes_is_told_in_words() -> None:
    assert field("Place", "cover").takes == "one of: lid, door"
    assert field("Place", "temperature").takes == "a window, as 42 to 48 degC"
    assert field("Place", "wear").takes.startswith("a list, each the id of")
    assert field("Step", "for").takes == "a time, or the formula that gives it"
    assert field("Step", "rock").takes.startswith("10 times")
    assert field("Substance", "cas").takes.startswith("digits in three groups")
    assert field("Mixture", "made_of").takes.startswith("names, for each 15 g/L")
    assert field("Place", "tray").takes == "true or false"


def test_a_field_with_fields_of_its_own_leads_to_their_noun() -> None:
    assert field("Step", "fail").noun == "Fail"
    anchors = {noun.anchor for noun in VIEW.nouns}
    assert {each.noun_anchor for noun in VIEW.nouns for each in noun.fields} - {""} <= anchors


def test_nothing_is_left_unsaid() -> None:
    def silent(noun: NounView) -> list[str]:
        return [each.name for each in noun.fields if not each.takes.strip()]

    assert {noun.title: silent(noun) for noun in VIEW.nouns if silent(noun) or not noun.says} == {}


def test_every_field_says_in_one_line_what_it_means() -> None:
    said = {f"{noun.title}.{each.name}": each.means for noun in VIEW.nouns for each in noun.fields}
    assert {name for name, means in said.items() if not means.endswith(".") or "\n" in means} == set()
    assert {name for name, means in said.items() if not 4 < len(means) < 110} == set()
    assert said["Step.for"] == "The time that matters to the work."
    assert said["Place.allows"] == "Residues that may ride in; what is not listed is refused."


def test_the_meanings_stand_below_fields_that_there_are() -> None:
    for kind in every_noun():
        assert set(meanings(kind)) <= set(kind.model_fields), kind


def test_the_verbs_are_those_of_the_model() -> None:
    assert dict(VIEW.verbs) == VERBS
