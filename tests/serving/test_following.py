"""After a save: first the saved file, then everything, and another save comes first again."""

import gc
import threading
import time
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path

import pytest

from generator.outputs.page import KeptPage, Page, Section, heads_of
from generator.outputs.site import Site
from generator.problems import Level, Location, Problem
from generator.serving.changes import Changes
from generator.serving.following import following
from generator.serving.preview import Preview
from tests.serving.test_preview import site_saying, wait_until

WRONG = Problem("arrives-wet", Level.ERROR, Location("x.yml", 2, 3), "the board is wet", "dry it", "dip")
SAVED = frozenset((Path("x.yml"),))


def page_saying(text: str, title: str = "Small lab") -> Page:
    return Page("", title, (Section(1, "page_top", title, f"<section><p>{text}</p></section>"),), listed=True)


@dataclass(frozen=True)
class Seen:
    """What a glance shows."""

    pages: tuple[Page, ...] = ()
    errors: tuple[Problem, ...] = ()


@dataclass
class Maker:
    """Hands back what the test sets; a build waits until it is let go, or is called off."""

    site: Site | None
    problems: tuple[Problem, ...] = ()
    seen: Seen | None = None
    done: list[str] = field(default_factory=list)
    looked_at: frozenset[str] = frozenset()
    free: threading.Event = field(default_factory=threading.Event)
    collecting: list[bool] = field(default_factory=list)

    def build(self, pause: Callable[[], None]) -> "Maker":
        self.done.append("begun")
        self.collecting.append(gc.isenabled())
        while not self.free.is_set():
            pause()
            time.sleep(0.001)
        self.done.append("built")
        return self

    def glance(self, files: Iterable[Path], looked_at: Collection[str]) -> Seen | None:
        self.looked_at = frozenset(looked_at)
        self.collecting.append(gc.isenabled())
        self.done.append(f"saw {' '.join(sorted(file.name for file in files))}")
        return self.seen

    def expect(self, path: str) -> None:
        """Nothing to make ready."""


@pytest.fixture
def maker() -> Maker:
    made = Maker(site_saying("first"))
    made.free.set()
    return made


@pytest.fixture
def preview(maker: Maker, tmp_path: Path) -> Preview:
    made = Preview(maker, tmp_path)
    assert made.refresh()
    maker.done.clear()
    return made


@pytest.fixture
def changes(preview: Preview) -> Iterator[Changes]:
    made = Changes()
    with following(made, preview):
        yield made


def test_the_saved_page_is_shown_before_everything(maker: Maker, preview: Preview, changes: Changes) -> None:
    maker.free.clear()
    maker.seen = Seen((page_saying("second"),))
    changes.add(SAVED, 0.0)
    wait_until(lambda: "begun" in maker.done)
    assert "<p>second</p>" in (preview.shown.html("index.html") or "")
    assert maker.done == ["saw x.yml", "begun"]
    maker.site = site_saying("second")
    maker.free.set()
    wait_until(lambda: "built" in maker.done)


def test_what_the_build_says_too_is_told_once(maker: Maker, preview: Preview, changes: Changes) -> None:
    page = page_saying("second")
    maker.seen = Seen((page,))
    changes.add(SAVED, 0.0)
    wait_until(lambda: "<p>second</p>" in (preview.shown.html("index.html") or ""))
    seen, heads = preview.shown.page("index.html")[1], heads_of(page)
    kept = KeptPage("", page.title, "", "page", True, heads, "key", lambda: page.sections)
    maker.site = replace(site_saying("second"), pages=(kept,))
    before = preview.shown.version
    wait_until(lambda: preview.shown.version > before)
    assert preview.shown.page("index.html")[1] == seen
    maker.site = site_saying("third")
    maker.seen = None
    changes.add(SAVED, 0.0)
    wait_until(lambda: preview.shown.page("index.html")[1] > seen)


def test_the_collector_rests_until_a_save_is_shown(maker: Maker, preview: Preview) -> None:
    maker.seen, changes = Seen((page_saying("second"),)), Changes()
    maker.collecting.clear()
    with following(changes, preview):
        for number in (1, 2):
            changes.add(SAVED, 0.0)
            wait_until(lambda number=number: maker.done.count("built") == number)  # type: ignore[misc]
    assert maker.collecting == [False, True] * 2
    assert gc.isenabled()


def test_a_save_meanwhile_comes_first(maker: Maker, preview: Preview, changes: Changes) -> None:
    maker.free.clear()
    maker.seen = Seen((page_saying("second"),))
    changes.add(SAVED, 0.0)
    wait_until(lambda: "begun" in maker.done)
    maker.seen = Seen((page_saying("third"),))
    changes.add(frozenset((Path("y.yml"),)), 0.0)
    wait_until(lambda: maker.done.count("begun") == 2)
    assert "<p>third</p>" in (preview.shown.html("index.html") or "")
    assert maker.done == ["saw x.yml", "begun", "saw y.yml", "begun"]


def test_errors_are_told_at_once_over_the_last_good_page(
    maker: Maker, preview: Preview, changes: Changes
) -> None:
    maker.free.clear()
    maker.seen = Seen(errors=(WRONG,))
    changes.add(SAVED, 0.0)
    wait_until(lambda: preview.shown.errors == (WRONG,))
    assert "<p>first</p>" in (preview.shown.html("index.html") or "")
    maker.seen = Seen((page_saying("mended"),))
    changes.add(SAVED, 0.0)
    wait_until(lambda: preview.shown.errors == ())
    assert "<p>mended</p>" in (preview.shown.html("index.html") or "")


@pytest.mark.parametrize("page", [page_saying("second", "Another title"), Page("other", "Other", ())])
def test_a_page_that_needs_the_engine_waits_for_the_build(
    maker: Maker, preview: Preview, changes: Changes, page: Page
) -> None:
    maker.seen, before = Seen((page,)), preview.shown
    maker.free.clear()
    changes.add(SAVED, 0.0)
    wait_until(lambda: "begun" in maker.done)
    assert preview.shown is before


def test_a_glance_knows_who_looks_at_what(maker: Maker, preview: Preview) -> None:
    with preview.telling("a/index.html", lambda: None), preview.telling("b/index.html", lambda: None):
        preview.glance(SAVED)
        assert maker.looked_at == {"a/index.html", "b/index.html"}
    preview.glance(SAVED)
    assert not maker.looked_at


def test_the_end_does_not_wait_for_a_build(maker: Maker, preview: Preview) -> None:
    maker.free.clear()
    changes = Changes()
    with following(changes, preview):
        changes.add(SAVED, 0.0)
        wait_until(lambda: "begun" in maker.done)
    assert "built" not in maker.done
