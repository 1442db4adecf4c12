"""What the tables advise by topic, and what declared statements say by the way in."""

import pytest

from generator.hazards import Edition, advice, effects, statement_codes
from generator.hazards.stated import stated_ingredient
from generator.hazards.substances import plain_name, substance_by_name


@pytest.mark.parametrize("edition", list(Edition))
def test_nothing_with_an_open_place_is_advised(edition: Edition) -> None:
    for code in statement_codes():
        for rows in advice((code,), edition).topics.values():
            for one in rows:
                assert "..." not in one.bench and "[" not in one.bench, one.code
                assert one.edition is edition


def test_topics_of_an_acid_that_sensitises() -> None:
    """Rev. 10 Annex 3, rows H314 and H334, as a public copy of the PubChem table gives them."""
    found = advice(("H314", "H334"), Edition.REV10)
    codes = {topic: {one.code for one in rows} for topic, rows in found.topics.items()}
    assert codes["eyes"] == {"P305+P354+P338"}
    assert codes["swallowed"] == {"P301+P330+P331"}
    assert codes["lungs"] == {"P304+P340", "P342+P316"}
    assert "P316" in codes["call"]
    assert "P405" in codes["storage"]
    assert "P321" in found.open_places


def test_fresh_air_is_never_left_out_for_something_else() -> None:
    for edition in Edition:
        codes = {one.code for one in advice(("H334",), edition).about("lungs")}
        assert "P304+P340" in codes


def test_the_older_set_calls_a_doctor() -> None:
    said = [one.bench for one in advice(("H314",), Edition.CLP).about("call")]
    assert any("POISON CENTER/doctor" in text and "..." not in text for text in said)


def test_ways_in() -> None:
    declared = ("H314", "H302+H332", "H410", "H272", "H290", "EUH031", "H350i")
    found = {one.way: one.codes for one in effects(declared)}
    assert found["Eyes"] == ("H314",)
    assert found["Lungs"] == ("H332", "EUH031")
    assert found["Swallowing"] == ("H314", "H302")
    assert found["Long after"] == ("H350i",)
    assert found["Life in water"] == ("H410",)
    # H290 (UN GHS chapter 2.16) asks for P234, P390 and P406, and for nothing against fire.
    assert (found["Fire and reaction"], found["Metals"]) == (("H272",), ("H290",))


def test_every_statement_has_a_way() -> None:
    """None is lost between the headings; EUH2xx and EUH4xx speak of labels, not of harm by a way in."""
    silent = [
        code
        for code in statement_codes()
        if not any(one.codes for one in effects((code,))) and not code.startswith("EUH")
    ]
    assert silent == []


def test_names_as_people_write_them() -> None:
    for name in ("sulphuric acid", "Sulfuric acid", "SULPHURIC-ACID", "sulphuric acid ... %"):
        found = substance_by_name(name)
        assert found is not None and found.cas == "7664-93-9", name
    assert substance_by_name("unobtainium") is None
    assert plain_name("copper(II) sulfate pentahydrate") == "copper(ii) sulfate pentahydrate"


def test_a_name_that_several_forms_share_says_which_was_taken() -> None:
    found = stated_ingredient("copper sulphate=50 g/L")
    assert any("7758-98-7" in note for note in getattr(found, "notes", ()))
