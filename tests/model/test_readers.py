"""Readers of single fields: what they take, what they refuse, and with which fix."""

import pytest
from pydantic import TypeAdapter, ValidationError

from generator.model import Text
from generator.model.chemicals import Portion, read_portion
from generator.model.given import FormulaRef, Number, read_value
from generator.model.readings import Leg, Reading, read_reading, read_rock, read_setting
from generator.model.scalars import Id, OneOf, refuse, text
from generator.problems import Location
from generator.units import Counted, Quantity, Window


def refused(read: object, value: object) -> tuple[str, str]:
    """The rule and the fix with which a reader refuses."""
    with pytest.raises(Exception) as caught:
        read(value)  # type: ignore[operator]
    context = caught.value.context  # type: ignore[attr-defined]
    return caught.value.type, context["fix"]  # type: ignore[attr-defined]


def test_words_keep_their_place() -> None:
    words = Text("Lid off.", Location("x.yml", 3, 5, 8))
    assert text(words).where == Location("x.yml", 3, 5, 8)
    assert text(words) == "Lid off."


def test_a_refusal_holds_braces_as_words() -> None:
    assert "(a)" in refuse("unreadable", "{a}", "write {b}").message()


@pytest.mark.parametrize("word", ["a", "open-1", "2nd-dip", "a" * 60])
def test_ids(word: str) -> None:
    assert TypeAdapter(Id).validate_python(word) == word


@pytest.mark.parametrize(
    ("word", "fix"),
    [("Soak In", "write `soak-in`"), ("a_b", "write `a-b`"), ("-a", "write `a`"), ("con", "write `con-1`"),
     ("é", "choose a short word"), ("a" * 61, f"write `{'a' * 60}`"), ("../a", "write `a`")],
)  # fmt: skip
def test_what_is_no_id(word: str, fix: str) -> None:
    with pytest.raises(ValidationError) as caught:
        TypeAdapter(Id).validate_python(word)
    assert caught.value.errors()[0]["ctx"]["fix"] == fix


def test_a_closed_list_names_the_nearest() -> None:
    kind = OneOf("lid", "door", kind="cover")
    assert kind.word("lid") == "lid"
    assert refused(kind.word, "lidd") == ("unknown-name", "did you mean `lid`? write one of: lid, door")


@pytest.mark.parametrize(
    ("words", "reading"),
    [
        ("text", Reading("text")),
        ("picture", Reading("picture")),
        ("mohm", Reading("number", "mohm")),
        ("%", Reading("number", "%")),
        ("A h", Reading("number", "A h")),
        ("up to 0.70 mohm", Reading("number", "mohm", Window(None, Quantity(0.7, "mohm")))),
        ("58 to 62 HRC", Reading("number", "HRC", Window(Quantity(58, "HRC"), Quantity(62, "HRC")))),
    ],
)
def test_readings(words: str, reading: Reading) -> None:
    assert read_reading(words) == reading


def test_a_reading_without_a_unit_is_refused() -> None:
    assert refused(read_reading, "up to 8")[0] == "unit-missing"
    assert refused(read_reading, "furlongs")[0] == "unit-missing"


def test_values_of_a_job() -> None:
    assert read_value("140 mm") == Quantity(140, "mm")
    assert read_value("180") == Number(180.0, "180")
    assert read_value({"formula": "plating_area"}) == FormulaRef(Text("plating_area"))
    assert read_value([{"count": "2", "drill": "0.9 mm"}]) == (
        {"count": Number(2.0, "2"), "drill": Quantity(0.9, "mm")},
    )
    assert refused(read_value, {"formula": "a", "with": "b"}) == (
        "unreadable",
        "write `{formula: plating_time}`",
    )
    assert refused(read_value, "1,5 mL") == ("unit-missing", "write 1.5 mL")


def test_portions_of_a_mixture() -> None:
    assert read_portion("rest") == Portion(None)
    assert read_portion("rest").rest
    assert read_portion("18 g/L as H2SO4") == Portion(Quantity(18, "g/L"), "H2SO4")
    assert refused(read_portion, "some")[0] == "unit-missing"


def test_settings_and_shaking() -> None:
    assert read_setting("constant current") == "constant current"
    assert read_setting([{"to": "650 degC", "hold": "20 min"}]) == (
        Leg(Quantity(650, "degC"), Quantity(20, "min")),
    )
    assert refused(read_setting, [{"to": "650 degC"}])[0] == "unreadable"
    assert read_rock("true") == Counted(1, "time")
    assert read_rock("10 times") == Counted(10, "times")
