"""Who may post what."""

import shutil
from pathlib import Path

import pytest

from generator.pipeline.posting import Ready, Refused, Wish
from tests.posting import labs

WORDING = "change in {say: Lower the plate in slowly.}"
TIME = "change in {for: 8 min}"
HAZARD = "mixtures: {bath-mix: {hazards: [H315, H319, H412]}}"


@pytest.fixture
def lab(tmp_path: Path, first_issue: Path) -> Path:
    shutil.copytree(first_issue, tmp_path / "p")
    return tmp_path / "p"


def refused(folder: Path, *wish: str) -> str:
    return refused_as(folder, Wish("because", wish[0], "".join(wish[1:])))


def refused_as(folder: Path, wish: Wish) -> str:
    made = labs.tried(folder, wish)
    assert isinstance(made, Refused)
    return " | ".join(one.what for one in made.refusals)


def test_a_first_issue_needs_approver_and_safety_office(tmp_path: Path) -> None:
    labs.write(tmp_path / "p")
    assert "is not its approver" in refused(tmp_path / "p", "technician", "safety-office")
    assert "the safety office has not seen it" in refused(tmp_path / "p", "instructor")
    assert "the safety office has not seen it" in refused(tmp_path / "p", "instructor", "instructor")


def test_an_author_posts_wording_and_nothing_else(lab: Path) -> None:
    labs.write(lab, edit=WORDING)
    assert isinstance(labs.tried(lab, Wish("because", "technician")), Ready)
    assert "may not post this wording" in refused(lab, "operator")
    assert "there is no role dean" in refused(lab, "dean")
    labs.write(lab, edit=TIME)
    assert "more than wording (time)" in refused(lab, "technician")
    assert isinstance(labs.tried(lab, Wish("because", "instructor")), Ready)


def test_a_new_hazard_needs_the_safety_office(lab: Path) -> None:
    labs.write(lab, HAZARD)
    assert "a new hazard (mixtures bath-mix)" in refused(lab, "instructor")
    made = labs.posted(lab, Wish("because", "instructor", "safety-office"))
    assert made.number == 2


LIVED_WITH = "[{rule: approves-own, who: instructor, until: 2027-01-01, because: Two of us only.}]"


def test_nobody_approves_their_own(lab: Path) -> None:
    own = f"{{approver: technician, accept: {LIVED_WITH}}}"
    labs.write(lab, procedure=own)
    labs.posted(lab, Wish("Handed over", "instructor"))
    labs.write(lab, procedure=own, edit=TIME)
    assert "that is one person" in refused(lab, "technician")


def test_two_roles_of_one_person_are_one(lab: Path) -> None:
    one = "roles: {instructor: {now: Odalys Quillfeather}}"
    labs.write(lab, one, procedure=f"accept: {LIVED_WITH}", edit=TIME)
    assert "that is one person" in refused(lab, "instructor")


def test_whoever_edits_does_not_choose_who_approves(lab: Path) -> None:
    """The approver of the posted issue hands over; then the new one decides."""
    other = "{roles: {lab-manager: {title: Lab manager, reach: extension 430}}}"
    labs.write(lab, other, "approver: lab-manager", TIME)
    assert "the posted issue names another approver" in refused(lab, "lab-manager")
    labs.posted(lab, Wish("Handed over", "instructor"))
    assert not [p for p in labs.opened(lab)[1].problems if p.rule == "posted-without-approver"]
    labs.write(lab, other, "approver: lab-manager", "change in {for: 9 min}")
    assert "is not its approver" in refused(lab, "instructor")
    labs.posted(lab, Wish("Longer", "lab-manager"))


def test_errors_and_open_warnings_stand_in_the_way(lab: Path) -> None:
    labs.write(lab, edit="drop lid-off\nchange in {was: lid-off}")
    made = labs.tried(lab, Wish("because", "instructor"))
    assert isinstance(made, Refused)
    assert "lid-still-on" in {problem.rule for problem in made.problems}
    labs.write(lab, edit="change look {check: enough film is gone}")
    made = labs.tried(lab, Wish("because", "instructor"))
    assert isinstance(made, Refused)
    assert {problem.rule for problem in made.problems} == {"vague-word"}


def test_a_review_that_changed_nothing_is_an_issue_of_its_own(lab: Path) -> None:
    assert "is not its approver" in refused_as(lab, Wish("Reviewed", "technician", review=True))
    assert "nothing differs from issue 1" in refused_as(lab, Wish("Reviewed", "instructor"))
    made = labs.posted(lab, Wish("Reviewed at the bench", "instructor", review=True))
    assert (made.number, made.changes, made.cards) == (2, (), ())


def test_wording_leaves_a_card_that_prints_the_same_as_it_is(lab: Path) -> None:
    before = {str(name): (card.issue, str(card.code)) for name, card in labs.head(lab).cards.items()}
    labs.write(lab, edit="change in {why: It works better warm.}")
    labs.posted(lab, Wish("A reason", "technician"))
    after = {str(name): (card.issue, str(card.code)) for name, card in labs.head(lab).cards.items()}
    assert labs.head(lab).number == 2
    assert after == before
    assert labs.last_changed(lab)["in"] == 2
    assert labs.last_changed(lab)["out"] == 1
