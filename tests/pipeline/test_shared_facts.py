"""Pages of places and chemicals say where what is posted is otherwise, and what is out of use at once."""

import datetime
import re
import shutil
from pathlib import Path

import pytest

from generator.notation import as_yaml
from generator.outputs.page import join_sections
from generator.pipeline import build_site
from generator.pipeline.posting import Ready, Wish, post
from tests.posting import labs

OTHER = "clean-a-ring"
EDITED = "places: {bath: {time: 5 to 9 min}}"
LATER = labs.DAY + datetime.timedelta(days=7)


def post_one(folder: Path, id: str, day: datetime.date = labs.DAY) -> None:
    made = post(*labs.opened(folder, day), id, Wish("Because", "instructor", "safety-office"))
    assert isinstance(made, Ready), made
    (folder / made.file).parent.mkdir(parents=True, exist_ok=True)
    (folder / made.file).write_text(made.text)


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    """Two procedures that share their places, both posted; then the window of the bath is edited."""
    folder = tmp_path / "procedures"
    labs.write(folder)
    shutil.copy(folder / f"{labs.ID}.yml", folder / f"{OTHER}.yml")
    text = labs.yaml((folder / f"{OTHER}.yml").read_text())
    (folder / f"{OTHER}.yml").write_text(as_yaml({**text, "title": "Clean a ring"}))
    for id in (labs.ID, OTHER):
        post_one(folder, id)
    again = (folder / f"{OTHER}.yml").read_text()
    labs.write(folder, EDITED)
    (folder / f"{OTHER}.yml").write_text(again)
    return folder


def page(folder: Path, address: str = "places/bath", draft: bool = False) -> str:
    site = build_site(folder, LATER, draft, "procedures").site
    assert site is not None
    body = next(join_sections(page) for page in site.pages if page.address == address)
    return body.replace("\u00a0", " ")


def banners(body: str) -> list[str]:
    found = re.findall(r'<aside class="nw-banner [^>]*>(.*?)</aside>', body, re.DOTALL)
    return [re.sub(r"<[^>]+>", "", text).strip() for text in found]


def test_nothing_is_said_where_nothing_differs(lab: Path) -> None:
    labs.write(lab)
    assert banners(page(lab)) == banners(page(lab, draft=True)) == []


def test_a_shared_fact_edited_after_posting(lab: Path) -> None:
    shown = page(lab)
    assert banners(shown) == ["A change is being prepared This page shows what is posted."]
    assert "5 to 10 min" in shown
    draft = page(lab, draft=True)
    who = "Clean a plate, issue 1; Clean a ring, issue 1"
    assert banners(draft) == [
        f"Differs from what is posted Posted for {who}: window 5 to 10 min, here 5 to 9 min."
    ]
    assert banners(page(lab, "mixtures/bath-mix")) == []


def test_one_procedure_posted_and_the_other_not_yet(lab: Path) -> None:
    post_one(lab, labs.ID, LATER)
    shown = page(lab)
    assert "5 to 9 min" in shown
    assert banners(shown) == [
        "Not the same everywhere yet "
        "Posted for Clean a ring, issue 1: window 5 to 10 min, here 5 to 9 min."
    ]
    post_one(lab, OTHER, LATER)
    assert banners(page(lab)) == []


def test_a_chemical_says_so_too(lab: Path) -> None:
    other = (lab / f"{OTHER}.yml").read_text()
    labs.write(lab, "mixtures: {bath-mix: {hazards: [H315, H319, H412]}}")
    (lab / f"{OTHER}.yml").write_text(other)
    assert banners(page(lab, "mixtures/bath-mix")) == [
        "A change is being prepared This page shows what is posted."
    ]
    (draft,) = banners(page(lab, "mixtures/bath-mix", draft=True))
    assert "hazards H315, H319, here H315, H319, H412" in draft


def test_a_place_out_of_use_is_said_at_once_and_asks_for_no_issue(lab: Path) -> None:
    out = "places: {bath: {out_of_use: {since: 2026-11-20, until: 2026-12-04, because: The heater is cold.}}}"
    labs.write(lab, out)
    assert labs.compared(lab).changes == ()
    says = "Out of use until 4 December 2026 The heater is cold."
    assert banners(page(lab)) == [says]
    (found,) = banners(page(lab, f"procedures/{labs.ID}"))
    assert "out of use until 4 December 2026" in found
