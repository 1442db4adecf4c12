"""What is posted of each card, as the page of a scanned card compares it."""

from pathlib import Path

import pytest

from generator.pipeline import build_site
from generator.pipeline.posting import Wish
from generator.views.filling.posted import current_cards
from generator.views.posted import CurrentCardView
from tests.posting import labs

RENAMED = """
cards:
  - {id: wall-card, was: line-card, title: Line card, size: A3, read_from: 1.0 m, stages: [clean]}
  - {id: door-card, title: Visitors, size: A4, read_from: 1.0 m, show: [wear, stop-rule, help]}
"""


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    """The small lab with its first issue."""
    labs.write(tmp_path / "p")
    labs.posted(tmp_path / "p")
    return tmp_path / "p"


def cards(folder: Path) -> dict[str, CurrentCardView]:
    _, checked = labs.opened(folder)
    study = checked.studies[labs.ID]
    return {card.card: card for card in current_cards(checked.shelf, study, "posted", {}, frozenset())}


def test_every_code_that_a_card_had_is_known_with_its_issue(lab: Path) -> None:
    first = cards(lab)["line-card"]
    labs.write(lab, edit="change in {for: 8 min}")
    labs.posted(lab, Wish("Longer", "instructor"))
    now = cards(lab)["line-card"]
    assert now.codes == ((first.code, "1"), (now.code, "2"))
    assert dict(now.changes)["1"] == ("step 4 in, Cleaner bath: time 7\u00a0min → 8\u00a0min",)


def test_a_card_with_another_id_replaces_the_one_before(lab: Path) -> None:
    first = cards(lab)["line-card"]
    labs.write(lab, procedure=RENAMED)
    assert set(cards(lab)) == {"wall-card", "door-card"}
    assert build_site(lab, labs.DAY, shown="procedures").site
    labs.posted(lab, Wish("Another name", "instructor"))
    found = cards(lab)
    assert set(found) == {"wall-card", "line-card", "door-card"}
    old = found["line-card"]
    assert (old.code, old.issue, old.codes) == ("", "2", ((first.code, "1"),))
    assert old.address == found["wall-card"].address
