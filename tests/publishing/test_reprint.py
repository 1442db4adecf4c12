"""A site written from the last one, without the engine, is the site that the engine would have written."""

import datetime
import os
import re
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

import pytest

import generator.publishing.engine
import generator.publishing.linked
import generator.publishing.reprint
import generator.sums.known
from generator.formulas import LIBRARY
from generator.outputs.page import KeptPage, Page, Section
from generator.outputs.search import SearchEntry
from generator.outputs.search_parts import index_files
from generator.outputs.site import Site, SiteFile
from generator.pipeline import build_site
from generator.pipeline.kept import plain_key
from generator.pipeline.slips import Slip
from generator.pipeline.written import write_row
from generator.publishing.publish import publish
from generator.publishing.seal import seal_of
from generator.publishing.store import open_store
from tests.pipeline.lab_edits import Editor, write_small
from tests.publishing.test_publish import read_all

DAY = datetime.date(2026, 11, 25)
EDITS = 14


@dataclass(frozen=True)
class Engine:
    """Counts how often the engine itself was at work."""

    runs: list[Path] = field(default_factory=list)


@pytest.fixture
def engine(monkeypatch: pytest.MonkeyPatch) -> Engine:
    counted, run = Engine(), generator.publishing.engine.run_engine

    def noted(*words: object, **more: object) -> object:
        counted.runs.append(Path(str(words[1])))
        return run(*words, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(generator.publishing.engine, "run_engine", noted)
    return counted


def test_after_each_of_some_edits_it_is_the_clean_site(
    tmp_path: Path, engine: Engine, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Edits of every kind at random, and after each of them one of a single sentence."""
    monkeypatch.setattr(generator.sums.known, "LIBRARY", LIBRARY[:1])
    home = write_small(tmp_path)
    editor, broken, published, rested = Editor(home, 20261126), False, 0, 0
    for number in range(EDITS):
        kind = say(home, number) if number % 2 and not broken else editor.edit(broken)
        with open_store(tmp_path / ".newel") as kept:
            site = build_site(home, DAY, draft=True, shown="procedures", kept=kept).site
            broken = site is None
            if site is None:
                continue
            before = len(engine.runs)
            seal = publish(site, tmp_path / "site", kept=kept, beside="nothing else")
            assert seal == seal_of(tmp_path / "site"), f"edit {number}: {kind}"
            rested += len(engine.runs) == before
            publish(site, tmp_path / "clean" / "site")
        assert read_all(tmp_path / "site") == read_all(tmp_path / "clean" / "site"), f"edit {number}: {kind}"
        published += 1
    assert EDITS // 4 < rested < published, (rested, published)


def say(home: Path, number: int) -> str:
    """Another sentence of the same length of lines."""
    file = home / "look.yml"
    text = file.read_text(encoding="utf-8")
    first, _, rest = text.partition("say: Tilt the plate")
    file.write_text(f"{first}say: Tilt the plate{' slowly' * (number % 3)}{rest}", encoding="utf-8")
    return "say"


@dataclass
class Press:
    """A store beside a site of one changing page."""

    home: Path
    beside: str = "nothing else"
    words: str = "first"
    title: str = "Two"
    anchor: str = "a"
    file: bytes = b"file"
    more: tuple[Page, ...] = ()

    def site(self) -> Site:
        body = f'<section id="{self.anchor}"><p>{self.words}</p></section>'
        start = Page("", "Home", (Section(1, "", "Home", "<section></section>"),), listed=True)
        two = Page("two", self.title, (Section(1, "", self.title, body),))
        pages = tuple(self._kept(page) for page in (start, two, *self.more))
        files = (SiteFile("cards/x.pdf", self.file),)
        return Site("Lab", pages, files, (SearchEntry("two", self.title, self.words),))

    def _kept(self, page: Page) -> KeptPage:
        heads = tuple((one.level, one.anchor, one.title) for one in page.sections)
        key = plain_key("page", page)
        slip = Slip(page.address, page.title, "", "page", page.listed, heads, (), key, (), ())
        with open_store(self.home / ".newel") as kept:
            kept.put(key, write_row((slip, page.sections)))
        return KeptPage(page.address, page.title, "", "page", page.listed, heads, key, lambda: page.sections)

    def publish(self) -> dict[str, bytes]:
        site = self.site()
        with open_store(self.home / ".newel") as kept:
            seal = publish(site, self.home / "site", kept=kept, beside=self.beside)
        assert seal == seal_of(self.home / "site")
        return read_all(self.home / "site")

    def clean(self) -> dict[str, bytes]:
        publish(self.site(), self.home / "clean" / "site")
        return read_all(self.home / "clean" / "site")


@pytest.fixture
def press(tmp_path: Path, engine: Engine) -> Iterator[Press]:
    found = Press(tmp_path)
    found.publish()
    assert len(engine.runs) == 1
    yield found
    assert found.publish() == found.clean()


def test_words_files_and_entries_need_no_engine(press: Press, engine: Engine) -> None:
    for press.words in ("second", "a < b & c", "<b>first</b>"):
        press.file += b" and more"
        press.publish()
    assert len(engine.runs) == 1


def test_the_parts_of_a_large_index_need_no_engine(
    press: Press, engine: Engine, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(generator.publishing.reprint, "index_files", partial(index_files, split_above=1))
    for press.words in ("second", "third", "fourth"):
        cut = [path for path in press.publish() if re.fullmatch(r"search/[0-9a-f]{12}/words-0\.js", path)]
        assert len(cut) == 1  # none of an index before
    assert len(engine.runs) == 1
    monkeypatch.undo()
    press.beside = "something else"  # from the beginning, so that the index lies in one piece again


def other_title(press: Press) -> None:
    press.title = "Three"


def other_anchor(press: Press) -> None:
    press.anchor = "b"


def another_page(press: Press) -> None:
    press.more = (Page("three", "Three", (Section(1, "", "Three", "<section></section>"),)),)


def other_ground(press: Press) -> None:
    press.beside = "another engine"


def unknown_ground(press: Press) -> None:
    press.beside = ""


def script(press: Press) -> None:
    press.words = "<script>1</script>"


def touched(press: Press) -> None:
    press.words = "second"
    (press.home / "site" / "assets" / "newel.css").write_text("spoilt", encoding="utf-8")


def file_gone(press: Press) -> None:
    (press.home / "site" / "two" / "index.html").unlink()


def folder_gone(press: Press) -> None:
    shutil.rmtree(press.home / "site")


def store_gone(press: Press) -> None:
    shutil.rmtree(press.home / ".newel")


@pytest.mark.parametrize(
    "change",
    [other_title, other_anchor, another_page, other_ground, unknown_ground, script, touched, file_gone,
     folder_gone, store_gone],
)  # fmt: skip
def test_whatever_else_differs_needs_it(
    press: Press, engine: Engine, change: Callable[[Press], None]
) -> None:
    change(press)
    press.publish()
    assert len(engine.runs) == 2


def test_nothing_is_written_into_a_file_with_two_names(press: Press) -> None:
    """Third names for every file, taken after each site, hold the same bytes when all is done."""
    held: list[tuple[Path, dict[str, bytes]]] = []
    for number, change in enumerate((lambda _: None, other_title, lambda _: None, other_anchor)):
        change(press)
        press.words = f"turn {number}"
        wanted = press.publish()
        shutil.copytree(press.home / "site", press.home / f"held-{number}", copy_function=os.link)
        held.append((press.home / f"held-{number}", wanted))
        press.publish()
    assert all(read_all(folder) == wanted for folder, wanted in held)


def test_a_file_system_without_second_names_gets_copies(
    press: Press, engine: Engine, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object) -> None:
        raise PermissionError

    monkeypatch.setattr(os, "link", refused)
    press.words = "second"
    press.publish()
    assert len(engine.runs) == 1


def test_the_site_before_the_last_one_is_brought_in_line_however_it_looks(
    press: Press, engine: Engine
) -> None:
    spare = press.home / ".newel" / "site-spare"
    for press.words in ("second", "third"):
        press.publish()
    assert (spare / "404.html").samefile(press.home / "site" / "404.html")
    (spare / "404.html").unlink()
    (spare / "404.html").mkdir()
    (spare / "404.html" / "x").symlink_to(press.home)
    (spare / "new" / "newer").mkdir(parents=True)
    (spare / "new" / "newer" / "file").write_text("strange")
    (spare / "assets" / "newel.js").unlink()
    (spare / "assets" / "newel.js").write_text("strange")
    shutil.rmtree(spare / "two")
    (spare / "two").write_text("a file where there is a folder")
    press.words = "fourth"
    assert press.publish() == press.clean()
    assert not (press.home / "site" / "new").exists()
    assert len(engine.runs) == 3, "the clean one of this test and the first"


@pytest.mark.parametrize("after", [0, 5, 30])
def test_cut_off_among_the_names_it_leaves_the_last_site(press: Press, after: int) -> None:
    before, press.words = read_all(press.home / "site"), "second"
    child = os.fork()
    if not child:
        change, left = generator.publishing.linked._replace, [after]

        def cut_off(*words: Any) -> None:
            left[0] -= 1
            if left[0] < 0:
                os._exit(9)
            change(*words)

        generator.publishing.linked._replace = cut_off  # type: ignore[assignment]
        press.publish()
        os._exit(0)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 9
    assert read_all(press.home / "site") == before
