"""Sixty edits, each sorted into its group, with the cards of which a copy is wrong after it."""

import shutil
from pathlib import Path

import pytest

from generator.notation import as_yaml
from generator.pipeline.changes import Comparison
from tests.checks.cases import BASE, Case, read_cases
from tests.posting import labs

CASES = read_cases(Path(__file__).parent / "edits.cases")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.title)
def test_an_edit_is_told_in_its_group(case: Case, tmp_path: Path, first_issue: Path) -> None:
    shutil.copytree(first_issue, tmp_path, dirs_exist_ok=True)
    procedure = case.sections.get("procedure", "{}")
    if "STEPS" in procedure:
        steps = labs.yaml((BASE / "procedure.yml").read_text())["stages"][0]["steps"]
        procedure = as_yaml({"stages": [{"stage": "clean", "title": "Clean it", "steps": steps}]})
    labs.write(tmp_path, case.sections.get("lab", "{}"), procedure, case.sections.get("edit", ""))
    found = labs.compared(tmp_path)
    wanted, cards = _wanted(case.sections["found"])
    told = [(one.change.group, one.change.id, one.text.replace("\u00a0", " ")) for one in found.changes]
    assert len(told) == len(wanted), told
    left = list(told)
    for group, id, part in wanted:
        match = next(
            (one for one in left if one[0] == group and (not id or one[1] == id) and part in one[2]), None
        )
        assert match, (group, id, part, left)
        left.remove(match)
    if cards != "any":
        assert " ".join(found.cards) == ("" if cards == "none" else cards)
    _cards_are_explained(found)


def _wanted(text: str) -> tuple[list[tuple[str, str, str]], str]:
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    cards = next(line.partition(" ")[2] for line in lines if line.startswith("cards "))
    rows = []
    for line in lines:
        if line != "nothing" and not line.startswith("cards "):
            group, _, rest = line.partition(" @")
            id, _, part = rest.partition(" ")
            rows.append((group, id, part.strip()))
    return rows, cards


def _cards_are_explained(found: Comparison) -> None:
    """Every card to be replaced is laid to a change, and no change to a card that prints the same."""
    assert {card for one in found.changes for card in one.cards} == set(found.cards)


def test_there_are_sixty_of_all_groups() -> None:
    lines = [line for case in CASES for line in case.sections["found"].splitlines()]
    groups = {line.split(" @")[0] for line in lines if " @" in line}
    assert len(CASES) >= 60
    assert groups == {"wording", "time", "limit", "ppe", "chemical", "order", "new hazard"}


WORDING = [case for case in CASES if {row[0] for row in _wanted(case.sections["found"])[0]} == {"wording"}]


def test_wording_that_no_card_prints_asks_for_no_card() -> None:
    unprinted = [case for case in WORDING if _wanted(case.sections["found"])[1] == "none"]
    assert len(unprinted) >= 2
