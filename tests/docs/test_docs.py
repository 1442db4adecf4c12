"""A newcomer follows every page of the docs word for word, from an empty folder."""

import shlex
from pathlib import Path

import pypdf
import pytest

from generator.cli import main
from generator.cli.command import COMMANDS
from tests.docs.reading import START, Change, Command, Save, deeds_of, pages

# What the docs show and the test does not type, with the reason.
NOT_TYPED = {
    "pipx install .": "it would install this project for the whole user",
    "uv tool install .": "it would install this project for the whole user",
    "newel serve": "it runs until it is stopped; tests/cli and tests/serving start it",
}
# Commands that the docs show and the program has not yet; a name that it has makes a test below fail.
NOT_YET: frozenset[str] = frozenset()


@pytest.fixture
def newcomer(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to stand in, on a day that stays the same."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795564800")
    return tmp_path


@pytest.mark.parametrize("page", pages(), ids=lambda page: page.stem)
def test_a_page_can_be_followed_word_for_word(
    page: Path, newcomer: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for deed in deeds_of(page):
        match deed:
            case Save(path, text):
                _save(Path.cwd() / path, text)
            case Change(path, old, new):
                _change(Path.cwd() / path, old, new)
            case Command(words, answer):
                _type(words, answer, monkeypatch, capsys)
    if page.stem == "index":
        _card_is_posted(newcomer)


def _card_is_posted(newcomer: Path) -> None:
    """The first page begins in an empty folder and ends with the card of a posted issue on a wall."""
    card = newcomer / "my-lab" / "site" / "cards" / "weigh-a-sheet" / "sheet-card.pdf"
    text = " ".join(page.extract_text() for page in pypdf.PdfReader(card).pages)
    assert "Sheet card" in text and "DRAFT" not in text
    assert "issue 1" in text.lower().replace("\u00a0", " ")
    posted = newcomer / "my-lab" / "procedures" / "posted"
    assert (posted / "weigh-a-sheet" / "1.yml").is_file()
    assert "on the wall over the balance" in (posted / "copies.yml").read_text("utf-8")


def _save(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, encoding="utf-8")


def _change(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file.name}"
    file.write_text(text.replace(old, new), encoding="utf-8")


def _type(
    words: str, answer: tuple[str, ...], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    program, *rest = shlex.split(words)
    if words in NOT_TYPED or (program == "newel" and rest[0] in NOT_YET):
        return
    if program == "mkdir":
        Path(rest[0]).mkdir()
    elif program == "cd":
        monkeypatch.chdir(rest[0])
    else:
        assert program == "newel", f"the docs show a command that nobody tests: {words}"
        _newel(rest, answer, capsys)


def _newel(words: list[str], answer: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> None:
    capsys.readouterr()
    with pytest.raises(SystemExit):
        main(words)
    said = capsys.readouterr()
    # A quantity is printed with a space that does not break; the docs are typed with the one that does.
    lines = f"{said.out}\n{said.err}".replace("\u00a0", " ").splitlines()
    assert "own-fault" not in said.err, said.err
    assert "Usage:" not in said.err, said.err
    for line in answer:
        found = next((index for index, each in enumerate(lines) if line in each), None)
        assert found is not None, f"newel {' '.join(words)} does not say {line!r} but:\n{said.out}{said.err}"
        lines = lines[found + 1 :]


def _typed() -> set[str]:
    return {deed.words for page in pages() for deed in deeds_of(page) if isinstance(deed, Command)}


def test_what_is_not_typed_is_named_and_shown(capsys: pytest.CaptureFixture[str]) -> None:
    with capsys.disabled():
        print("\nshown in the docs and not typed by this test:")
        for words, why in NOT_TYPED.items():
            print(f"  {words}: {why}")
        for name in sorted(NOT_YET):
            print(f"  newel {name}: the program has no such command yet")
    assert set(NOT_TYPED) <= _typed()


def test_a_command_that_the_program_has_is_typed() -> None:
    there = {name for name, _, _ in COMMANDS}
    assert not NOT_YET & there, f"take out of NOT_YET: {NOT_YET & there}"
    shown = {shlex.split(words)[1] for words in _typed() if words.startswith("newel ")}
    assert {name for name in shown if not name.startswith("-")} <= there | NOT_YET


def test_every_command_of_the_program_is_in_the_docs() -> None:
    told = "\n".join(page.read_text(encoding="utf-8") for page in pages())
    assert [name for name, _, _ in COMMANDS if f"newel {name}" not in told] == []


def test_the_pages_lead_to_one_another() -> None:
    first = (START / "index.md").read_text(encoding="utf-8")
    assert [page.name for page in pages() if page.stem != "index" and f"({page.name})" not in first] == []


def test_it_can_fail(newcomer: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert list(newcomer.iterdir()) == []
    with pytest.raises(AssertionError, match="does not say"):
        _newel(["check"], ("0 errors",), capsys)
