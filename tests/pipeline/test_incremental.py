"""A build that takes from the store what still holds is a clean build, and makes little anew."""

import datetime
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

import generator.pipeline.build
import generator.pipeline.parts
import generator.sums.known
from generator.formulas import LIBRARY
from generator.outputs.page import Page, whole_page
from generator.outputs.search import SearchEntry
from generator.pipeline import build_site
from generator.pipeline.build import Outcome
from generator.pipeline.chapter import Chapter, Wanted, write_chapter
from generator.pipeline.kept import Kept
from generator.problems import Problem
from generator.publishing.store import open_store
from tests.pipeline.lab_edits import Editor, write_small

TODAY = datetime.date(2026, 11, 25)
EDITS = 200
Whole = tuple[
    tuple[Problem, ...], tuple[Page, ...], tuple[tuple[str, bytes], ...], tuple[SearchEntry, ...], str
]


class PrintsAlone:
    """Keeps what the press made, whose own tests compare it, and the pages of rules, which no edit reaches.

    Nothing else is kept: every row is made anew.
    """

    def __init__(self) -> None:
        self._kept: dict[str, bytes] = {}

    def get(self, key: str) -> bytes | None:
        return self._kept.get(key)

    def put(self, key: str, content: bytes) -> bool:
        rule = content.startswith(b'[["checks/') and not content.startswith(b'[["checks/report"')
        wanted = rule or content.startswith((b"%PDF", b"<svg", b"fits"))
        if wanted:
            self._kept[key] = content
        return wanted


class WithPrints:
    """A store beside which the prints of the clean builds can be had, so that none is made twice."""

    def __init__(self, store: Kept, prints: PrintsAlone) -> None:
        self._store, self._prints = store, prints

    def get(self, key: str) -> bytes | None:
        return self._prints.get(key) or self._store.get(key)

    def put(self, key: str, content: bytes) -> bool:
        return self._store.put(key, content)


@pytest.fixture(autouse=True)
def _few_formulas(monkeypatch: pytest.MonkeyPatch) -> None:
    """The pages of formulas take their time; one stands for all of them."""
    monkeypatch.setattr(generator.sums.known, "LIBRARY", LIBRARY[:1])


def build(home: Path, kept: Kept) -> Outcome:
    return build_site(home, TODAY, draft=True, shown="procedures", kept=kept)


def whole(outcome: Outcome) -> Whole:
    site = outcome.site
    if site is None:
        return outcome.problems, (), (), (), ""
    files = tuple((file.path, file.content) for file in site.files)
    return outcome.problems, tuple(map(whole_page, site.pages)), files, site.entries, site.name


@pytest.fixture
def whole_builds(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The labs for which every chapter was asked for, and not those of the edited procedures alone."""
    found: list[str] = []
    build_whole = generator.pipeline.build._whole

    def noted(wanted: Wanted, *more: Any) -> Outcome:
        found.append(wanted.nouns.folder.shown)
        return build_whole(wanted, *more)

    monkeypatch.setattr(generator.pipeline.build, "_whole", noted)
    return found


def test_after_each_of_many_edits_it_is_a_clean_build(tmp_path: Path, whole_builds: list[str]) -> None:
    home = write_small(tmp_path)
    editor, clean = Editor(home, 20261125), PrintsAlone()
    done: dict[str, int] = {}
    published, broken, short = 0, False, 0
    for number in range(EDITS):
        kind = editor.edit(broken)
        done[kind] = done.get(kind, 0) + 1
        wanted = whole(build(home, clean))
        whole_builds.clear()
        with open_store(tmp_path / ".newel") as kept:
            made = whole(build(home, WithPrints(kept, clean)))
        short += not whole_builds
        assert made == wanted, f"edit {number}: {kind}"
        broken = not made[1]
        published += not broken
    assert set(done) == {"undone"} | {kind.__name__ for kind in editor.kinds}
    assert EDITS * 0.5 < published < EDITS * 0.95, "good labs and bad ones"
    assert short > EDITS * 0.05, "and some edits of which nobody else speaks"


def test_words_alone_ask_for_no_other_chapter(tmp_path: Path, whole_builds: list[str]) -> None:
    home, state = write_small(tmp_path), tmp_path / ".newel"
    turns = ("the lamp", "the other lamp", "<a lamp> & more", "the lamp")
    for before, after in pairwise(turns):
        replace_in(home / "look.yml", f"under {before}", f"under {after}")
        with open_store(state) as kept:
            made = whole(build(home, kept))
        assert made[1] and made == whole(build(home, PrintsAlone()))
    assert len(whole_builds) == 1 + len(turns[1:]), "the first one, and each of the clean ones"


@pytest.mark.parametrize(
    ("file", "before", "after"),
    [("lab.yml", "title: Oven\n", "title: Furnace\n"), ("look.yml", "title: Look at", "title: Look hard at"),
     ("look.yml", "id: lamp", "id: bright-lamp"), ("pictures/plate.png", "a picture", "another one")],
)  # fmt: skip
def test_what_others_may_speak_of_asks_for_all(
    tmp_path: Path, whole_builds: list[str], file: str, before: str, after: str
) -> None:
    home, state = write_small(tmp_path), tmp_path / ".newel"
    for _ in range(2):
        with open_store(state) as kept:
            build(home, kept)
    assert len(whole_builds) == 1
    replace_in(home / file, before, after)
    with open_store(state) as kept:
        made = whole(build(home, kept))
    assert len(whole_builds) == 2
    assert made[1] and made == whole(build(home, PrintsAlone()))


def made_anew(home: Path, state: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[set[str], set[str]]:
    """The procedures that were studied and the pages that were rendered in one more build."""
    studied: set[str] = set()
    rendered: set[str] = set()
    write, slip = write_chapter, generator.pipeline.parts._slip

    def writing(*args: object, **more: object) -> Chapter:
        studied.add(str(args[2]))
        return write(*args, **more)  # type: ignore[arg-type]

    def slipping(page: Page, *args: object) -> object:
        rendered.add(page.address)
        return slip(page, *args)  # type: ignore[arg-type]

    with monkeypatch.context() as patch, open_store(state) as kept:
        patch.setattr(generator.pipeline.build, "write_chapter", writing)
        patch.setattr(generator.pipeline.parts, "_slip", slipping)
        assert build(home, kept).site is not None
    return studied, rendered


def replace_in(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_an_edit_makes_anew_what_it_reaches_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    home, state = write_small(tmp_path), tmp_path / ".newel"
    studied, rendered = made_anew(home, state, monkeypatch)
    assert studied == {"plate", "look", "clean-many"}
    assert {"", "procedures/look", "places/bath", "places/oven", "glossary"} <= rendered
    assert made_anew(home, state, monkeypatch) == (set(), set())

    replace_in(home / "look.yml", "under the lamp", "under the other lamp")
    assert made_anew(home, state, monkeypatch) == ({"look"}, {"procedures/look"})

    replace_in(home / "lab.yml", "time: 5 to 10 min", "time: 5 to 11 min")
    studied, rendered = made_anew(home, state, monkeypatch)
    assert studied == {"plate", "clean-many"}
    users = {"procedures/plate", "procedures/plate.thin", "procedures/clean-many"}
    assert users | {"places/bath"} <= rendered
    assert {address.split("/")[0] for address in rendered} == {"procedures", "places", "cards"}
    assert not [address for address in rendered if "look" in address or address == "places/oven"]

    replace_in(home / "lab.yml", "title: Oven\n", "title: Furnace\n")
    assert made_anew(home, state, monkeypatch)[1] == {"hazards", "places", "places/oven"}


def test_another_day_makes_everything_anew_that_may_speak_of_it(tmp_path: Path) -> None:
    home, tomorrow = write_small(tmp_path), TODAY + datetime.timedelta(days=400)
    with open_store(tmp_path / ".newel") as kept:
        build(home, kept)
        later = whole(build_site(home, tomorrow, draft=True, shown="procedures", kept=kept))
    assert later == whole(build_site(home, tomorrow, draft=True, shown="procedures"))
    assert "sheet-old" not in {one.rule for one in whole(build(home, PrintsAlone()))[0]}
