"""Statement texts against a second source, and what a code stands for."""

from pathlib import Path

import pytest

from generator.hazards import (
    Edition,
    combine_codes,
    is_statement,
    nearest_code,
    statement,
    statement_codes,
    statement_text,
    unresolved_in,
)

# Read on a public page "Datacenters Safety" of a computing handbook, which lists the statements.
SECOND = Path(__file__).with_name("second_statements.txt")

# Differences found, letter by letter. Settled as the United Nations and the EU spell it.
SPELT_OTHERWISE = (
    ("vapor", "vapour"),
    ("sensitizing", "sensitising"),
    ("long-lasting", "long lasting"),
)


def second_source() -> list[tuple[str, str]]:
    lines = SECOND.read_text(encoding="utf-8").splitlines()
    return [(code, text) for code, _, text in (line.partition(": ") for line in lines)]


@pytest.mark.parametrize(("code", "text"), second_source())
def test_texts_agree_letter_by_letter_with_a_second_source(code: str, text: str) -> None:
    found = statement(code)
    assert found is not None
    for theirs, ours in SPELT_OTHERWISE:
        text = text.replace(theirs, ours)
    assert found.text.removesuffix(".") == text.removesuffix(".")


def test_the_settled_differences_are_all_real() -> None:
    whole = SECOND.read_text(encoding="utf-8")
    assert all(theirs in whole for theirs, _ in SPELT_OTHERWISE)


def test_every_live_single_statement_has_a_class_and_rev10_precautions() -> None:
    bare = []
    for code in statement_codes():
        found = statement(code)
        assert found is not None
        if "+" in code or code.startswith("EUH") or not found.in_edition(Edition.REV10):
            continue
        if not found.uses or not found.precautions(Edition.REV10):
            bare.append(code)
    assert bare == []


def test_there_are_106_live_statements_with_the_combined_ones() -> None:
    """106 live H codes in the transcription (counted by those who read it), combined ones included."""
    live = [c for c in statement_codes() if c.startswith("H") and _live(c, Edition.REV10)]
    assert len(live) == 106


def _live(code: str, edition: Edition) -> bool:
    found = statement(code)
    return found is not None and found.in_edition(edition)


def test_editions_spell_their_own_way() -> None:
    assert statement_text("H272", Edition.REV10) == "May intensify fire; oxidizer"
    assert statement_text("H272", Edition.CLP) == "May intensify fire; oxidiser"


def test_what_an_edition_lacks_has_no_text_there() -> None:
    assert statement_text("H201", Edition.REV10) is None
    assert statement_text("H201", Edition.CLP) == "Explosive; mass explosion hazard"
    assert statement_text("H401", Edition.CLP) is None
    assert statement_text("EUH031", Edition.REV10) is None
    assert statement_text("EUH031", Edition.CLP) == "Contact with acids liberates toxic gas."


def test_combined_codes_have_their_own_text_or_the_parts() -> None:
    assert statement_text("H302+H312", Edition.CLP) == "Harmful if swallowed or in contact with skin"
    assert statement_text("H302 + H312", Edition.REV10) == "Harmful if swallowed or in contact with skin"
    assert (
        statement_text("H315+H319", Edition.CLP) == "Causes skin irritation; Causes serious eye irritation"
    )
    assert statement_text("H302+H999", Edition.CLP) is None


def test_routes_of_one_category_are_put_together() -> None:
    assert combine_codes(("H302", "H318", "H332")) == ("H302+H332", "H318")
    assert combine_codes(("H301", "H332")) == ("H301", "H332")


@pytest.mark.parametrize("code", ["H31", "H999", "heats-itself", "", "P280", "H314+"])
def test_what_is_no_statement(code: str) -> None:
    assert statement(code) is None
    assert not is_statement(code)


def test_the_nearest_code_is_offered() -> None:
    assert nearest_code("h314") == "H314"
    assert nearest_code("purple") == ""


def test_h314_stands_for_what_the_tables_say() -> None:
    """UN GHS Rev. 10 Annex 3, read: row H314."""
    found = statement("H314")
    assert found is not None
    assert (found.signal, found.pictograms) == ("Danger", ("GHS05",))
    first = "P260 P264 P280 P301+P330+P331 P302+P361+P354 P363 P304+P340 P316 P321"
    expected = f"{first} P305+P354+P338 P405 P501"
    assert found.precautions(Edition.REV10) == tuple(expected.split())


def test_what_is_unsettled_is_said() -> None:
    assert unresolved_in("hazard_statements")
