"""One process that builds again and again shows what a clean build shows, and an edited page before that."""

import datetime
from pathlib import Path

import pytest

import generator.sums.known
from generator.formulas import LIBRARY
from generator.outputs.page import whole_page
from generator.pipeline.refresh import Desk, Glance
from generator.reading import LabRead, read_one
from tests.pipeline.lab_edits import Editor, write_small

TODAY = datetime.date(2026, 11, 25)
EDITS = 30
LOOKED_AT = tuple(f"procedures/{id}/index.html" for id in ("plate", "look", "clean-many"))


@pytest.fixture(autouse=True)
def _few_formulas(monkeypatch: pytest.MonkeyPatch) -> None:
    """The pages of formulas take their time; one stands for all of them."""
    monkeypatch.setattr(generator.sums.known, "LIBRARY", LIBRARY[:1])


class Prints:
    """Keeps everything in this process."""

    def __init__(self) -> None:
        self.rows: dict[str, bytes] = {}

    def get(self, key: str) -> bytes | None:
        return self.rows.get(key)

    def put(self, key: str, content: bytes) -> bool:
        self.rows[key] = content
        return True


def contents(home: Path) -> dict[Path, bytes]:
    return {file: file.read_bytes() for file in home.rglob("*.*") if file.is_file()}


def saved(before: dict[Path, bytes], after: dict[Path, bytes]) -> list[Path]:
    """The files that were written, made or removed."""
    return [file for file in {**before, **after} if before.get(file) != after.get(file)]


def test_what_is_seen_at_a_glance_is_what_a_clean_build_shows(tmp_path: Path) -> None:
    home = write_small(tmp_path)
    editor, other = Editor(home, 20261126), Prints()
    desk = Desk(home, lambda: TODAY, Prints())
    assert desk.build().site
    shown, stopped, broken = 0, 0, False
    for number in range(EDITS):
        before = contents(home)
        kind = editor.edit(broken)
        files = saved(before, contents(home))
        glance = desk.glance(files, LOOKED_AT) if files else None
        built, clean = desk.build(), Desk(home, lambda: TODAY, other).build()
        assert built.problems == clean.problems, f"edit {number}: {kind}"
        pages = {page.address: whole_page(page) for page in built.site.pages} if built.site else {}
        assert pages == ({page.address: whole_page(page) for page in clean.site.pages} if clean.site else {})
        broken = not pages
        if glance and glance.errors:
            stopped += 1
            assert broken, f"edit {number}: {kind}"
            assert set(glance.errors) <= set(built.problems)
        elif glance and built.site:
            shown += len(glance.pages)
            assert all(pages[page.address] == page for page in glance.pages), f"edit {number}: {kind}"
    assert shown > 20
    assert stopped > 0


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return write_small(tmp_path)


@pytest.fixture(scope="module")
def kept() -> Prints:
    """One store for all desks: what the press made is not what is looked at."""
    return Prints()


@pytest.fixture
def desk(home: Path, kept: Prints) -> Desk:
    made = Desk(home, lambda: TODAY, kept)
    assert made.build().site
    return made


def replace_in(path: Path, old: str, new: str) -> Path:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    return path


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The procedures that are read by themselves from now, by id."""
    ids: list[str] = []

    def reading(nouns: LabRead, id: str) -> LabRead:
        ids.append(id)
        return read_one(nouns, id)

    monkeypatch.setattr("generator.pipeline.first_page.read_one", reading)
    return ids


def test_a_glance_reads_nothing_but_the_saved_file(
    home: Path, desk: Desk, read: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.pipeline.refresh.open_folder", None)
    glance = desk.glance([replace_in(home / "look.yml", "under the lamp", "under the bright lamp")])
    assert [page.address for page in glance.pages] == ["procedures/look"]
    assert any("under the bright lamp" in section.html for section in glance.pages[0].sections)
    assert read == ["look"]


def test_a_page_that_somebody_opens_is_ready_for_its_first_edit(desk: Desk, read: list[str]) -> None:
    for page in ("procedures/look", "procedures/look.few/hazards", "procedures", "checks", "procedures/gone"):
        desk.expect(f"{page}/index.html")
    assert read == ["look", "look"]


def test_a_broken_file_keeps_its_page_back_and_every_other(home: Path, desk: Desk) -> None:
    broken = desk.glance([replace_in(home / "look.yml", "do: act", "do: dance")])
    assert broken.pages == ()
    assert {problem.where.file for problem in broken.errors} == {f"{home.as_posix()}/look.yml"}
    other = desk.glance([replace_in(home / "plate.yml", "title:", "title: Newly")])
    assert (other.pages, other.errors) == ((), broken.errors)
    mended = desk.glance([replace_in(home / "look.yml", "do: dance", "do: act")])
    assert [page.address for page in mended.pages] == ["procedures/look"]
    assert mended.errors == ()


def test_a_class_follows_its_procedure(home: Path, desk: Desk) -> None:
    file = replace_in(home / "plate.thin.yml", "title: Thin plates", "title: Very thin plates")
    glance = desk.glance([file])
    assert [page.title for page in glance.pages] == ["Very thin plates"]


def seen(glance: Glance) -> list[str]:
    """Which procedures it shows."""
    assert glance.errors == ()
    return [page.address.removeprefix("procedures/") for page in glance.pages]


@pytest.mark.parametrize("name", ["lab.yml", "new.yml", "pictures/plate.png", "../outside.yml"])
def test_whatever_else_is_saved_is_seen_where_somebody_looks(home: Path, desk: Desk, name: str) -> None:
    (home / name).write_bytes((home / name).read_bytes() if (home / name).exists() else b"title: New\n")
    assert seen(desk.glance([home / name], LOOKED_AT)) == ["clean-many", "look", "plate"]
    assert seen(desk.glance([home / "look.yml"])) == ["look"]


def test_an_edit_of_the_lab_is_seen_on_the_pages_looked_at(home: Path, desk: Desk) -> None:
    lab = replace_in(home / "lab.yml", "title: Cleaner bath", "title: Warm cleaner bath")
    (page,) = desk.glance([lab], LOOKED_AT[:1]).pages
    assert any("Warm cleaner bath" in section.html for section in page.sections)


def test_a_broken_lab_is_told_before_any_procedure_is_read(
    home: Path, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.pipeline.first_page.read_one", None)
    glance = desk.glance(
        [replace_in(home / "lab.yml", "title: Cleaner bath", "titel: Cleaner bath")], LOOKED_AT
    )
    assert glance.pages == ()
    assert {(problem.rule, problem.where.file) for problem in glance.errors} >= {
        ("unknown-key", f"{home.as_posix()}/lab.yml")
    }


def test_a_file_that_is_gone_or_a_link_now_is_not_seen(home: Path, desk: Desk, tmp_path: Path) -> None:
    (home / "look.yml").rename(tmp_path / "elsewhere.yml")
    assert seen(desk.glance([home / "look.yml"], LOOKED_AT)) == ["clean-many", "plate"]
    assert desk.build().site
    (home / "plate.yml").rename(tmp_path / "plate.yml")
    (home / "plate.yml").symlink_to(tmp_path / "plate.yml")
    glance = desk.glance([home / "plate.yml"], LOOKED_AT)
    assert glance.pages == ()
    assert any("the file is a link" in problem.message for problem in glance.errors)


class CalledOffError(Exception):
    """A build that is not wanted any more."""


def test_a_build_is_called_off_even_within_a_procedure(home: Path, desk: Desk, kept: Prints) -> None:
    replace_in(home / "plate.yml", "title:", "title: Newly")
    assert desk.glance([home / "plate.yml"]).pages
    calls = iter(range(1_000_000))
    at = 3

    def pause() -> None:
        if next(calls) == at:
            raise CalledOffError

    with pytest.raises(CalledOffError):
        desk.build(pause)
    rows = len(kept.rows)
    built = desk.build()
    assert built.site
    assert len(kept.rows) > rows
    assert any("Newly" in page.title for page in built.site.pages)
    assert all(page.sections for page in built.site.pages)
    assert next(calls) > at


def test_on_a_new_day_everything_is_looked_at_anew(home: Path, kept: Prints) -> None:
    days = iter((TODAY, TODAY + datetime.timedelta(1)))
    desk = Desk(home, lambda: next(days), kept)
    assert desk.build().site
    assert seen(desk.glance([home / "look.yml"], LOOKED_AT)) == ["clean-many", "look", "plate"]
