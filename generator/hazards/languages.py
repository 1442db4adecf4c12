"""Hazard statements in another language: the text of the EU's Annex where it is held, else English."""

from generator.hazards.edition import Edition
from generator.hazards.statements import statement_text
from generator.hazards.tables import read_table

# First part of a language tag to its table.
_TABLES = {"es": "hazard_statements_es"}


def statement_in(code: str, edition: Edition, language: str) -> str | None:
    """The text of a statement in a language by its BCP 47 tag; English where that text is not held.

    None if the edition has no such statement.
    """
    english = statement_text(code, edition)
    table = _TABLES.get(language.split("-")[0].lower())
    if english is None or table is None:
        return english
    held: str | None = read_table(table)["statements"].get(code)
    return held or english
