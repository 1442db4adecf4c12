"""One lab's story through the real commands: new, edited, posted, hung up, edited, replaced, withdrawn."""

import re
from pathlib import Path

import pytest

from tests.cli.running import Outcome, run_newel

ETCH = "weigh-a-coupon"


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Path:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795600000")
    monkeypatch.chdir(tmp_path)
    assert run_newel(capsys, "init", "lab").status == 0
    monkeypatch.chdir(tmp_path / "lab")
    return tmp_path / "lab"


def edit(home: Path, old: str, new: str, file: str = "procedures/weigh-a-coupon.yml") -> None:
    text = (home / file).read_text()
    assert old in text
    (home / file).write_text(text.replace(old, new, 1))


def code_of(text: str) -> str:
    found = re.search(r"code: (\w{5})", text)
    assert found
    return found[1]


def test_a_lab_from_its_first_day_to_a_withdrawn_procedure(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def run(*words: str) -> Outcome:
        return run_newel(capsys, *words)

    assert run("check").status == 0
    assert run("changes").out == "weigh-a-coupon: never posted, a draft\n"
    assert "is not its approver" in run("post", ETCH, "--reason", "First", "--approved-by", "technician").out
    first = run("post", ETCH, "--reason", "First issue", "--approved-by", "instructor")
    assert (first.status, "posted weigh-a-coupon, issue 1" in first.out) == (0, True)
    assert run("changes").status == 0
    assert run("copies", "add", f"{ETCH}/balance-card", "--hangs", "over the balance").status == 0
    assert run("copies", "add", f"{ETCH}/balance-card", "--hangs", "in the store").status == 0
    old = code_of((home / "procedures/posted/copies.yml").read_text())

    edit(home, "why: A balance that leans", "why: Any balance that leans")
    changed = run("changes")
    assert changed.status == 1
    assert "Wording (the author or the approver)" in changed.out
    said = run("post", ETCH, "--reason", "Plainer", "--approved-by", "technician")
    assert (said.status, "No copy on a wall is wrong." in said.out) == (0, True)
    assert run("copies").status == 0

    edit(home, "the bubble is inside its ring", "the bubble is not outside its ring")
    edit(home, "reach: room C2 or extension 431", "reach: room C4 or extension 431", "procedures/lab.yml")
    told = run("changes", ETCH)
    assert (
        "what must be seen “the bubble is inside its ring” → “the bubble is not outside its ring”" in told.out
    )
    assert "balance-card copies 1 and 2" in told.out
    third = run("post", ETCH, "--reason", "Clearer", "--approved-by", "instructor")
    assert "Replace 2 copies:" in third.out
    listed = run("copies")
    assert listed.status == 1
    assert f"over the balance: hangs as issue 1 · {old}; now issue 3" in listed.out
    assert "copy-stale" in run("check").out
    assert run("copies", "replaced", f"{ETCH}/balance-card", "1").status == 0
    assert run("copies", "replaced", f"{ETCH}/balance-card", "2", "--taken-down").status == 0
    assert run("copies").status == 0
    assert "2 changes since issue 2" in run("changes", ETCH, "--since", "2").out
    assert "3 changes since issue 1" in run("changes", ETCH, "--since", "1").out

    assert run("withdraw", ETCH, "--because", "The balance is being mended.").status == 0
    assert run("withdraw", ETCH, "--because", "Again").status == 2
    assert "withdrawn, take it down" in run("copies").out
    assert "withdrawn on 2026-" in run("changes").out
    assert "is not its approver" in run("post", ETCH, "--reason", "Back", "--approved-by", "technician").out
    assert run("post", ETCH, "--reason", "Mended", "--approved-by", "instructor").status == 0
    assert run("copies").status == 0
    assert run("check").status == 0


def test_a_shared_fact_is_posted_in_one_go(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = (home / "procedures/weigh-a-coupon.yml").read_text()
    (home / "procedures/weigh-a-ring.yml").write_text(text.replace("Weigh a coupon", "Weigh a ring"))
    both = ("weigh-a-coupon", "weigh-a-ring")
    assert run_newel(capsys, "post", *both, "--reason", "First", "--approved-by", "instructor").status == 0
    edit(home, "extension 431", "extension 432", "procedures/lab.yml")
    edit(home, "takes: 2 min", "takes: 3 min", "procedures/weigh-a-ring.yml")
    made = run_newel(
        capsys, "post", "--all", "--wording-only", "--reason", "Extension", "--approved-by", "technician"
    )
    assert "posted weigh-a-coupon, issue 2" in made.out
    assert "weigh-a-ring is not posted: more than wording has changed" in made.out
    assert not (home / "procedures/posted/weigh-a-ring/2.yml").exists()


def test_a_deleted_step_is_caught(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run_newel(capsys, "post", ETCH, "--reason", "First", "--approved-by", "instructor")
    edit(home, "id: put-back", "id: bag-it")
    seen = run_newel(capsys, "check")
    assert seen.status == 1
    assert "error[id-changed]" in seen.out
    assert "newel" not in run_newel(capsys, "post", ETCH, "--reason", "x", "--approved-by", "instructor").err
    edit(home, "id: bag-it", "id: bag-it\n        was: put-back")
    assert run_newel(capsys, "check").status == 0
    assert "step put-back is now called bag-it" in run_newel(capsys, "changes").out


def test_a_copy_that_nobody_looks_at_is_named(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run_newel(capsys, "post", ETCH, "--reason", "First", "--approved-by", "instructor")
    run_newel(capsys, "copies", "add", f"{ETCH}/balance-card", "--hangs", "over the balance")
    register = home / "procedures/posted/copies.yml"
    register.write_text(
        "look_every: 30 days\n" + re.sub(r"since: \S+", "since: 2026-01-05", register.read_text())
    )
    seen = run_newel(capsys, "copies")
    assert seen.status == 1
    assert "somebody was to look at it by 2026-02-04" in seen.out
    assert run_newel(capsys, "copies", "looked-at", f"{ETCH}/balance-card", "1").status == 0
    assert run_newel(capsys, "copies").status == 0
    assert register.read_text().count("look_every: 30 days\n") == 1
    for time in ("1 day", "2 weeks", "30 days", "1.5 months"):
        run_newel(capsys, "copies", "look-every", time)
        assert f"look_every: {time}\n" in register.read_text()
        assert run_newel(capsys, "copies").status == 0


@pytest.mark.parametrize(
    ("words", "part"),
    [
        (("post", "nothing", "--reason", "x", "--approved-by", "instructor"), "holds no procedure"),
        (("post", "--reason", "x", "--approved-by", "instructor"), "name the procedure"),
        (("post", ETCH, "--approved-by", "instructor"), "--reason is not said"),
        (("post", ETCH, "--reason", "  ", "--approved-by", "instructor"), "--reason is not said"),
        (("post", ETCH, "--reason", "x"), "--approved-by is not said"),
        (("post", "weigh-a-copon", "--reason", "x", "--approved-by", "instructor"), f"did you mean {ETCH}?"),
        (("withdraw", ETCH, "--because", ""), "--because is not said"),
        (("copies", "add", f"{ETCH}/balance-card", "--hangs", ""), "--hangs is not said"),
        (("copies", "look-every", "30"), "write for example `30 days`"),
        (("copies", "look-every", "5 min"), "no time of a day or more"),
        (("withdraw", ETCH, "--because", "x"), "was never posted"),
        (("copies", "add", f"{ETCH}/balance-card", "--hangs", "x"), "no card"),
        (("copies", "looked-at", f"{ETCH}/balance-card", "7"), "has no copy 7"),
        (("changes", "nothing"), "holds no procedure"),
        (("init", "."), "is there already"),
    ],
)
def test_what_cannot_be_done_is_said(
    home: Path, capsys: pytest.CaptureFixture[str], words: tuple[str, ...], part: str
) -> None:
    seen = run_newel(capsys, *words)
    assert seen.status == 2
    assert part in seen.err
    assert "own-fault" not in seen.err
    assert not list(home.rglob("*.part"))


@pytest.mark.usefixtures("home")
def test_what_is_meant_is_guessed_and_said(capsys: pytest.CaptureFixture[str]) -> None:
    def post(role: str, name: str = ETCH) -> Outcome:
        return run_newel(capsys, "post", name, "--reason", "First", "--approved-by", role)

    assert "a role is named by its id: write instructor" in post("Course instructor").out
    assert post("instructor", f"procedures/{ETCH}.yml").status == 0
    card = f"{ETCH}/balance-card"
    assert f"did you mean {card}?" in run_newel(capsys, "copies", "add", "balance-card", "--hangs", "x").err
    assert f"did you mean {card}?" in run_newel(capsys, "copies", "add", card[:-1], "--hangs", "x").err
    assert f"did you mean {ETCH}?" in run_newel(capsys, "withdraw", ETCH[1:], "--because", "x").err
    assert "nothing differs from issue 1, posted on 2026-" in post("instructor").out
    again = ("--reason", "Read again", "--approved-by", "instructor", "--review")
    assert "nothing changed: a review" in run_newel(capsys, "post", ETCH, *again).out


def test_a_look_at_a_wrong_copy_says_so(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    card = f"{ETCH}/balance-card"
    run_newel(capsys, "post", ETCH, "--reason", "First", "--approved-by", "instructor")
    run_newel(capsys, "copies", "add", card, "--hangs", "over the balance")
    edit(home, "the bubble is inside its ring", "the bubble is not outside its ring")
    run_newel(capsys, "post", ETCH, "--reason", "Second", "--approved-by", "instructor")
    seen = run_newel(capsys, "copies", "looked-at", card, "1")
    assert (seen.status, "It is wrong all the same" in seen.out) == (1, True)


def test_changes_of_files_that_cannot_be_trusted(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run_newel(capsys, "post", ETCH, "--reason", "First", "--approved-by", "instructor")
    edit(home, "do: weigh\n", "do: wiegh\n")
    seen = run_newel(capsys, "changes")
    assert (seen.status, seen.out.splitlines()[0]) == (
        1, "1 error stands in the files, so what follows may be wrong; run `newel check`"
    )  # fmt: skip
    (home / "procedures" / f"{ETCH}.yml").unlink()
    assert f"{ETCH}: posted in issue 1, and its file is gone" in run_newel(capsys, "changes").out
    run_newel(capsys, "withdraw", ETCH, "--because", "Done with it.")
    assert "withdrawn on 2026-" in run_newel(capsys, "changes").out
