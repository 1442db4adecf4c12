"""Precautionary statements: two editions that never mix, and the short list for a bench."""

import pytest

from generator.hazards import Edition, precaution, precaution_text, precautions, statement, statement_codes
from generator.hazards.precautionary import BENCH_MOST

# Codes that one edition has and the other has not (ghs: read in both code lists).
ONLY_REV10 = {"P203", "P265", "P316", "P317", "P318", "P319", "P354"}
ONLY_CLP = {"P201", "P202", "P310", "P311", "P312", "P313", "P314", "P315"}


def all_codes() -> list[str]:
    return [code for code in statement_codes() if "+" not in code]


@pytest.mark.parametrize("code", all_codes())
def test_no_list_mixes_the_editions(code: str) -> None:
    parts = {
        edition: {
            part for row in precautions((code,), edition, "all").chosen for part in row.code.split("+")
        }
        for edition in Edition
    }
    assert not parts[Edition.REV10] & ONLY_CLP
    assert not parts[Edition.CLP] & ONLY_REV10


@pytest.mark.parametrize("code", all_codes())
def test_every_code_of_the_tables_has_a_text(code: str) -> None:
    found = statement(code)
    assert found is not None
    for edition in Edition:
        listed = found.precautions(edition) or ()
        assert [p for p in listed if precaution(p, edition) is None] == []


# Both editions read for STOT SE 3: CLP table 3.8.4 and Rev. 10 Annex 3.
@pytest.mark.parametrize(
    ("edition", "codes"),
    [
        (Edition.CLP, "P261 P271 P304+P340 P312 P403+P233 P405 P501"),
        (Edition.REV10, "P261 P271 P304+P340 P319 P403+P233 P405 P501"),
    ],
)
def test_stot_se_3_in_both_editions(edition: Edition, codes: str) -> None:
    found = precautions(("H335",), edition, "all")
    assert tuple(row.code for row in found.chosen) == tuple(codes.split())


# Read in a consolidated copy of CLP Annex I, table 3.1.3 (version of 2025-09-01).
@pytest.mark.parametrize(
    ("code", "codes"),
    [
        ("H302", "P264 P270 P301+P312 P330 P501"),
        ("H312", "P280 P302+P352 P312 P321 P362+P364 P501"),
        ("H301", "P264 P270 P301+P310 P321 P330 P405 P501"),
    ],
)
def test_acute_toxicity_under_clp(code: str, codes: str) -> None:
    found = statement(code)
    assert found is not None
    assert found.precautions(Edition.CLP) == tuple(codes.split())


# Read for Rev. 10 (rows most used).
@pytest.mark.parametrize(
    ("code", "codes"),
    [
        ("H290", "P234 P390 P406"),
        ("H317", "P261 P272 P280 P302+P352 P333+P317 P321 P362+P364 P501"),
        ("H318", "P264+P265 P280 P305+P354+P338 P317"),
        ("H334", "P233 P260 P271 P284 P304+P340 P342+P316 P403 P501"),
        ("H350", "P203 P280 P318 P405 P501"),
        ("H372", "P260 P264 P270 P319 P501"),
        ("H272", "P210 P220 P280 P370+P378 P501"),
        ("H410", "P273 P391 P501"),
    ],
)
def test_rev10_rows(code: str, codes: str) -> None:
    found = statement(code)
    assert found is not None
    assert found.precautions(Edition.REV10) == tuple(codes.split())


def test_texts_of_both_editions() -> None:
    assert precaution_text("P301+P317", Edition.REV10) == "IF SWALLOWED: Get medical help."
    assert precaution_text("P301+P317", Edition.CLP) is None
    assert precaution_text("P310", Edition.REV10) is None
    assert precaution_text("P310", Edition.CLP) == "Immediately call a POISON CENTER/doctor/..."


def test_parts_and_combinations_read_the_same() -> None:
    """P317 alone was wrong in the transcription: every combination with it says "Get medical help"."""
    assert precaution_text("P317", Edition.REV10) == "Get medical help."
    joined = precaution_text("P337", Edition.REV10), precaution_text("P317", Edition.REV10)
    assert precaution_text("P337+P317", Edition.REV10) == " ".join(str(text) for text in joined)


def test_an_unlisted_combination_is_put_together() -> None:
    found = precaution("P370+P380", Edition.REV10)
    assert found is not None
    assert found.text == "In case of fire: Evacuate area."
    assert precaution("P310+P999", Edition.CLP) is None


@pytest.mark.parametrize("edition", list(Edition))
def test_the_short_list_is_short_and_starts_with_what_to_do_at_once(edition: Edition) -> None:
    found = precautions(("H290", "H314", "H317", "H334", "H335", "H410"), edition)
    assert len(found.chosen) == BENCH_MOST
    assert found.chosen[0].group == "response"
    assert "P280" in [row.code for row in found.chosen]
    assert found.left_out


@pytest.mark.parametrize("code", all_codes())
def test_a_bench_text_has_no_open_place(code: str) -> None:
    for edition in Edition:
        for row in precautions((code,), edition).chosen:
            if row.code != "P280" and row.code not in OPEN:
                assert "..." not in row.bench, row.code
                assert "[" not in row.bench, row.code


# Whom to call stands on the card with the lab's own line, so these keep the place open.
OPEN = {"P310", "P301+P310", "P301+P312", "P342+P311", "P308+P311"}


def test_the_weaker_is_left_out_where_the_stronger_says_it() -> None:
    codes = [row.code for row in precautions(("H314", "H319"), Edition.REV10).chosen]
    assert "P305+P354+P338" in codes
    assert "P305+P351+P338" not in codes


def test_what_is_not_held_is_said() -> None:
    assert precautions(("H240",), Edition.CLP).not_held == ("H240",)
    assert precautions(("H999",), Edition.REV10).not_held == ("H999",)
    assert precautions(("H314",), Edition.CLP).not_held == ()
