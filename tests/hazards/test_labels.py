"""Signal words, pictograms and the rules of precedence."""

import pytest
from ghs_hazard_pictogram import Hazard

from generator.hazards import (
    OPEN_QUESTION,
    Edition,
    covered_by,
    label_statements,
    missing_in,
    pictogram_alt,
    pictogram_codes,
    pictogram_svg,
    pictogram_title,
    pictograms,
    shown_codes,
    signal_word,
    statement,
    stronger_covers,
)
from generator.problems import NewelError

# CLP art. 26(1) (a) to (e), read in a public consolidated copy; letters in front of each case.
PRECEDENCE = [
    ("a", ("H201", "H225", "H272"), ("GHS01",)),
    ("b", ("H301", "H302", "H315"), ("GHS06",)),
    ("c", ("H314", "H315"), ("GHS05",)),
    ("c", ("H318", "H315"), ("GHS05",)),
    ("c", ("H314", "H302"), ("GHS05", "GHS07")),
    ("c", ("H314", "H317"), ("GHS05", "GHS07")),
    ("c", ("H314", "H335"), ("GHS05", "GHS07")),
    ("d", ("H334", "H317", "H315", "H319"), ("GHS08",)),
    ("d", ("H334", "H302"), ("GHS07", "GHS08")),
    ("d", ("H350", "H317"), ("GHS07", "GHS08")),
    ("e", ("H225", "H280"), ("GHS02",)),
    ("e", ("H331", "H280"), ("GHS06",)),
    ("none", ("H290", "H319"), ("GHS05", "GHS07")),
    ("none", ("H272", "H280"), ("GHS03", "GHS04")),
    ("none", ("H241",), ("GHS01", "GHS02")),
    ("none", ("H412",), ()),
    ("none", ("EUH031",), ()),
    ("none", (), ()),
]


@pytest.mark.parametrize(("point", "codes", "signs"), PRECEDENCE)
def test_precedence(point: str, codes: tuple[str, ...], signs: tuple[str, ...]) -> None:
    assert pictograms(codes) == signs, point


def test_the_open_question_is_decided_in_writing() -> None:
    assert "H290" in OPEN_QUESTION
    assert pictograms(("H290", "H315")) == ("GHS05", "GHS07")


def test_danger_drops_warning() -> None:
    """UN GHS 1.4.10.5.3.2 (read on two pages)."""
    assert signal_word(("H302", "H314")) == "Danger"
    assert signal_word(("H302", "H319")) == "Warning"
    assert signal_word(("H412",)) == ""
    assert signal_word(("H302+H332",)) == "Warning"


# UN GHS 1.4.10.5.3.3 (read on two pages that quote it).
@pytest.mark.parametrize(
    ("kept", "gone"), [("H410", "H400"), ("H411", "H401"), ("H412", "H402"), ("H314", "H318")]
)
def test_statements_that_may_be_left_off(kept: str, gone: str) -> None:
    assert shown_codes((gone, kept)) == (kept,)
    assert gone in stronger_covers(kept)


def test_stronger_never_goes_round() -> None:
    codes = ("H224", "H314", "H315", "H318", "H319", "H410", "H400", "H360FD", "H350")
    for code in codes:
        assert all(code not in stronger_covers(weaker) for weaker in stronger_covers(code))


def test_covered_by_names_the_statement_that_says_it() -> None:
    assert covered_by("H319", ("H302", "H314")) == "H314"
    assert covered_by("H302", ("H302+H332",)) == "H302"
    assert covered_by("H317", ("H314",)) == ""


def test_label_lines() -> None:
    lines = label_statements(("H410", "H302", "H332", "H318", "H400"), Edition.CLP)
    assert [line.code for line in lines] == ["H302+H332", "H318", "H410"]
    assert lines[0].text == "Harmful if swallowed or if inhaled"
    assert missing_in(("H401", "H314"), Edition.CLP) == ("H401",)


# Which class bears which pictogram, as the package ghs-hazard-pictogram lists it for each sign ("usage").
SECOND_PICTOGRAMS = [
    ("GHS02", "Flammable liquids", ("H224", "H225", "H226")),
    ("GHS02", "Pyrophoric liquids", ("H250",)),
    ("GHS02", "emit flammable gases", ("H260", "H261")),
    ("GHS03", "Oxidizing liquids", ("H271", "H272")),
    ("GHS03", "Oxidizing gases", ("H270",)),
    ("GHS04", "Compressed gases", ("H280",)),
    ("GHS04", "Refrigerated liquefied gases", ("H281",)),
    ("GHS05", "Corrosive to metals", ("H290",)),
    ("GHS05", "Skin corrosion", ("H314",)),
    ("GHS05", "Serious eye damage", ("H318",)),
    ("GHS06", "categories 1, 2, 3", ("H300", "H301", "H310", "H311", "H330", "H331")),
    ("GHS07", "category 4", ("H302", "H312", "H332")),
    ("GHS07", "Skin irritation", ("H315",)),
    ("GHS07", "Eye irritation", ("H319",)),
    ("GHS07", "Skin sensitization", ("H317",)),
    ("GHS07", "Respiratory tract irritation", ("H335",)),
    ("GHS07", "Narcotic effects", ("H336",)),
    ("GHS08", "Respiratory sensitization", ("H334",)),
    ("GHS08", "Germ cell mutagenicity", ("H340", "H341")),
    ("GHS08", "Carcinogenicity", ("H350", "H351")),
    ("GHS08", "Reproductive toxicity", ("H360", "H361")),
    ("GHS08", "single exposure, categories 1, 2", ("H370", "H371")),
    ("GHS08", "Aspiration hazard", ("H304",)),
    ("GHS09", "Acute hazards to the aquatic environment, category 1", ("H400",)),
    ("GHS09", "Chronic hazards to the aquatic environment, categories 1, 2", ("H410", "H411")),
]


@pytest.mark.parametrize(("sign", "words", "codes"), SECOND_PICTOGRAMS)
def test_pictograms_agree_with_a_second_source(sign: str, words: str, codes: tuple[str, ...]) -> None:
    assert words in " ".join(str(Hazard(sign).usage).split())
    for code in codes:
        found = statement(code)
        assert found is not None
        assert found.pictograms == (sign,), code


def test_differences_from_the_second_source_are_known() -> None:
    """Listed, not followed: the package gives GHS07 to skin irritation 3, which bears no sign."""
    assert "Skin irritation, categories 2, 3" in str(Hazard("GHS07").usage)
    found = statement("H316")
    assert found is not None
    assert found.pictograms == ()


@pytest.mark.parametrize("code", [f"GHS0{n}" for n in range(1, 10)])
def test_the_nine_drawings(code: str) -> None:
    drawing = pictogram_svg(code)
    assert drawing.startswith("<svg")
    assert drawing.endswith("</svg>")
    assert "<script" not in drawing
    assert pictogram_title(code) in pictogram_alt(code)


def test_the_drawings_differ() -> None:
    """The package's own table gives the flame for GHS01: ours is the file of that name."""
    assert len({pictogram_svg(code) for code in pictogram_codes()}) == 9


def test_a_tenth_pictogram_is_refused() -> None:
    with pytest.raises(NewelError) as caught:
        pictogram_svg("GHS10")
    assert caught.value.hint.startswith("Use one of GHS01")
