"""The substances that ship: readable, sourced, and consistent with the statements."""

import pytest

from generator.hazards import (
    Evidence,
    KnownSubstance,
    group_name,
    known_substances,
    statement,
    substance_by_cas,
    substance_by_name,
)
from generator.hazards.molar import molar_mass

ENTRIES = known_substances()


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.id)
def test_every_entry_holds_together(entry: KnownSubstance) -> None:
    assert entry.note
    assert [one.code for one in entry.classes if statement(one.code) is None] == []
    assert [one for one in entry.limits if one.high is not None and one.high <= one.low] == []
    assert [group for group in entry.epa_groups if group_name(group) is None] == []
    assert molar_mass(entry.formula) == pytest.approx(entry.molar_mass, rel=2e-4)


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.id)
def test_the_short_class_name_goes_with_the_statement(entry: KnownSubstance) -> None:
    for one in entry.classes:
        found = statement(one.code)
        assert found is not None
        shorts = {use.short for use in found.uses}
        assert one.short in shorts or (one.short in ("Ox. Liq.", "Ox. Sol.") and "Ox." in shorts)


def test_there_are_27_of_the_regulation_and_two_that_are_not_classified() -> None:
    assert len(ENTRIES) == 29
    assert [entry.id for entry in ENTRIES if not entry.classes] == ["water", "sodium-hydrogen-carbonate"]


def test_every_evidence_word_is_in_use() -> None:
    assert {entry.evidence for entry in ENTRIES} == {Evidence.OFFICIAL, Evidence.SECONDARY, Evidence.MEMORY}


def test_found_by_number_and_by_either_spelling() -> None:
    entry = substance_by_cas("7664-93-9")
    assert entry is not None
    assert substance_by_name("Sulfuric acid") is entry
    assert substance_by_name("sulphuric-acid") is entry
    assert substance_by_cas("0000-00-0") is None
    assert substance_by_name("") is None


# Limits of hydrochloric acid read on a university page that quotes the harmonised entry: 25 / 10-25 / 10.
def test_limits_of_hydrochloric_acid() -> None:
    entry = substance_by_cas("7647-01-0")
    assert entry is not None
    limits = [(one.hazard_class.code, one.low, one.high) for one in entry.limits]
    assert limits == [("H314", 25, None), ("H315", 10, 25), ("H319", 10, 25), ("H335", 10, None)]
