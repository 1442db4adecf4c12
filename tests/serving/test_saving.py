"""A real lab in the preview: what is saved in its folder is what its pages say, whatever is saved."""

import datetime
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

import generator.serving.shell
import generator.sums.known
from generator.formulas import LIBRARY
from generator.pipeline.kept import NOTHING_KEPT
from generator.pipeline.refresh import Desk
from generator.serving.changes import Changes
from generator.serving.following import following
from generator.serving.preview import Preview
from generator.serving.watching import watch_folder
from tests.pipeline.lab_edits import write_small
from tests.serving.test_preview import wait_until


@dataclass(frozen=True)
class Served:
    """A lab's folder with its preview."""

    home: Path
    preview: Preview

    def page(self, address: str) -> str:
        """The page as it is shown, empty where there is none."""
        return self.preview.shown.html(f"{address}/index.html") or ""

    def edit(self, name: str, old: str, new: str) -> None:
        """Save a file with other words."""
        text = (self.home / name).read_text(encoding="utf-8")
        assert old in text
        (self.home / name).write_text(text.replace(old, new), encoding="utf-8")


@pytest.fixture(scope="module")
def lab(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """One lab for all these tests; each leaves it sound."""
    folder = tmp_path_factory.mktemp("saving")
    home = write_small(folder)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(generator.sums.known, "LIBRARY", LIBRARY[:1])
        desk = Desk(home, lambda: datetime.date(2026, 11, 25), NOTHING_KEPT)
        preview, changes = Preview(desk, folder), Changes()
        with watch_folder(home, changes):
            preview.refresh()
            assert preview.shown.pages
            with following(changes, preview):
                yield Served(home, preview)


def test_a_saved_sentence_is_shown_on_its_page_and_then_everywhere(lab: Served) -> None:
    lab.edit("look.yml", "title: Look at a plate", "title: Look at a plate closely")
    wait_until(lambda: "Look at a plate closely" in lab.page("procedures/look"))
    wait_until(lambda: "Look at a plate closely" in lab.page("procedures"))


def test_a_title_needs_no_engine(lab: Served, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(generator.serving.shell, "run_engine", None)
    lab.edit("clean-many.yml", "title: Clean", "title: Newly clean")
    wait_until(lambda: "<title>Newly clean" in lab.page("procedures/clean-many"))
    wait_until(lambda: "Newly clean" in lab.page("procedures"))
    assert lab.preview.shown.errors == ()


def test_a_shared_bath_changes_every_page_that_uses_it(lab: Served) -> None:
    lab.edit("lab.yml", "title: Cleaner bath", "title: Warm cleaner bath")
    for address in ("procedures/plate", "procedures/clean-many", "places/bath", "places"):
        wait_until(lambda address=address: "Warm cleaner bath" in lab.page(address))  # type: ignore[misc]


def test_a_broken_file_is_told_over_the_last_good_page_and_mended(lab: Served) -> None:
    lab.edit("look.yml", "do: act, takes: 2 min", "do: dance, takes: 2 min")
    wait_until(lambda: bool(lab.preview.shown.errors))
    (error, *_) = lab.preview.shown.errors
    assert error.where.file.endswith("look.yml")
    assert error.where.line > 1
    assert error.fix
    before = lab.page("procedures/look")
    assert "under the lamp" in before
    lab.edit("look.yml", "do: dance, takes: 2 min", "do: act, takes: 2 min")
    wait_until(lambda: not lab.preview.shown.errors)


def test_a_procedure_comes_and_goes_with_its_file(lab: Served) -> None:
    text = (lab.home / "look.yml").read_text(encoding="utf-8")
    (lab.home / "look-again.yml").write_text(text.replace("title: Look", "title: Once more look"), "utf-8")
    wait_until(lambda: "Once more look" in lab.page("procedures/look-again"))
    wait_until(lambda: "Once more look" in lab.page("procedures"))
    (lab.home / "look-again.yml").unlink()
    wait_until(lambda: not lab.page("procedures/look-again"))
    assert "Once more look" not in lab.page("procedures")


def test_two_who_save_at_once_both_see_their_words(lab: Served) -> None:
    def save(name: str) -> None:
        for turn in range(8):
            lab.edit(
                name,
                "Lid off" if turn == 0 else f"Lid off {'still ' * turn}now",
                f"Lid off {'still ' * (turn + 1)}now",
            )

    writers = [threading.Thread(target=save, args=(name,)) for name in ("plate.yml", "clean-many.yml")]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    last = f"Lid off {'still ' * 8}now"
    for address in ("procedures/plate", "procedures/clean-many"):
        wait_until(lambda address=address: last in lab.page(address))  # type: ignore[misc]
    wait_until(lambda: not lab.preview.shown.errors)
