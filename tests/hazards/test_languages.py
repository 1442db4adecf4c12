"""Hazard statements in Spanish, against the text of Annex III of Regulation (EC) No 1272/2008."""

import pytest

from generator.hazards import Edition, statement_in, statement_text
from generator.hazards.tables import read_table

# Regulation (EC) No 1272/2008, Annex III, table 1.2, column ES; from memory of the table.
ANNEX = {
    "H314": "Provoca quemaduras graves en la piel y lesiones oculares graves",
    "H317": "Puede provocar una reacción alérgica en la piel",
    "H319": "Provoca irritación ocular grave",
    "H410": "Muy tóxico para los organismos acuáticos, con efectos nocivos duraderos",
}


@pytest.mark.parametrize("edition", Edition)
@pytest.mark.parametrize("code", ANNEX)
def test_spanish_is_the_text_of_the_annex(code: str, edition: Edition) -> None:
    assert statement_in(code, edition, "es") == ANNEX[code]
    assert statement_in(code, edition, "es-MX") == ANNEX[code]


def test_what_is_not_held_is_said_in_english() -> None:
    for code, language in (("H201", "es"), ("H314", "en"), ("H314", "de"), ("H300+H310", "es")):
        assert statement_in(code, Edition.CLP, language) == statement_text(code, Edition.CLP)


def test_what_the_edition_does_not_have_is_in_no_language() -> None:
    assert statement_in("H999", Edition.REV10, "es") is None


def test_every_code_is_one_of_the_table_and_no_text_stands_twice() -> None:
    held = read_table("hazard_statements_es")["statements"]
    assert set(held) <= set(read_table("hazard_statements")["statements"])
    assert len(set(held.values())) == len(held)
    assert all(text == text.strip().rstrip(".") for text in held.values())
