"""Publishing: whole or not at all, one at a time, the same bytes each time."""

import subprocess
import sys
from pathlib import Path

import pytest

from generator.outputs.page import Page, Section
from generator.outputs.site import Site
from generator.problems import NewelError
from generator.publishing import folder as folder_module
from generator.publishing.folder import exchange, replace_folder
from generator.publishing.lock import hold_lock
from generator.publishing.publish import publish
from tests.site.sample_site import sample_site, tiny_site


def read_all(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, by its path."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def broken_site() -> Site:
    """A page that the engine cannot take: the same address as another."""
    page = Page("x", "X", (Section(1, "page_top", "X", "<section></section>"),))
    return Site("Broken", (page, page), date="2026-11-25")


def test_a_site_takes_the_place_of_the_last_one(tmp_path: Path) -> None:
    publish(tiny_site("First"), tmp_path / "site")
    publish(tiny_site("Second"), tmp_path / "site")
    assert "Second" in (tmp_path / "site" / "index.html").read_text("utf-8")
    assert [path.name for path in (tmp_path / ".newel").iterdir()] == ["site.lock"]


def test_a_failing_build_leaves_the_last_site_as_it_was(tmp_path: Path) -> None:
    publish(tiny_site("First"), tmp_path / "site")
    before = read_all(tmp_path / "site")
    with pytest.raises(NewelError) as caught:
        publish(broken_site(), tmp_path / "site")
    assert caught.value.id == "engine-failed"
    assert read_all(tmp_path / "site") == before


def test_a_warning_of_the_engine_is_a_failure_that_says_what(tmp_path: Path) -> None:
    (tmp_path / "site_src").mkdir()
    (tmp_path / "site_src" / "start.md").write_text("# Start\n\n[gone](nowhere.md)\n", "utf-8")
    config = tmp_path / "mkdocs.yml"
    config.write_text(
        "site_name: x\ndocs_dir: site_src\ntheme: material\nplugins: [search, newel]\n", "utf-8"
    )
    with pytest.raises(NewelError, match=r"nowhere\.md"):
        publish(tiny_site(), tmp_path / "site", config)
    assert not (tmp_path / "site").exists()


def test_a_config_without_the_plugin_is_refused_with_the_line_to_write(tmp_path: Path) -> None:
    (tmp_path / "docs").mkdir()
    config = tmp_path / "mkdocs.yml"
    config.write_text("site_name: x\ntheme: material\n", "utf-8")
    with pytest.raises(NewelError) as caught:
        publish(tiny_site(), tmp_path / "site", config)
    assert (caught.value.id, caught.value.hint) == ("plugin-missing", "write under plugins:  - newel")


def test_two_builds_give_the_same_bytes(tmp_path: Path) -> None:
    for name in ("one", "two"):
        publish(sample_site(), tmp_path / name / "site")
    assert read_all(tmp_path / "one" / "site") == read_all(tmp_path / "two" / "site")


def test_progress_counts_up_to_the_number_of_pages(tmp_path: Path) -> None:
    told: list[tuple[int, int]] = []
    site = sample_site()
    publish(site, tmp_path / "site", progress=lambda done, total: told.append((done, total)))
    total = len(site.pages)
    assert told == [(number, total) for number in range(1, total + 1)]


def test_another_build_at_work_is_refused(tmp_path: Path) -> None:
    state = tmp_path / ".newel"
    state.mkdir()
    with hold_lock(state / "site.lock", tmp_path / "site"), pytest.raises(NewelError) as caught:
        publish(tiny_site(), tmp_path / "site")
    assert caught.value.id == "already-building"


def test_the_lock_ends_with_a_process_that_dies(tmp_path: Path) -> None:
    code = (
        "import os, pathlib, sys\nfrom generator.publishing.lock import hold_lock\n"
        "path = pathlib.Path(sys.argv[1])\nwith hold_lock(path, path):\n    os._exit(3)\n"
    )
    command = [sys.executable, "-c", code, str(tmp_path / "site.lock")]
    assert subprocess.run(command, check=False).returncode == 3
    with hold_lock(tmp_path / "site.lock", tmp_path):
        pass


def test_a_folder_that_is_no_site_of_ours_is_refused(tmp_path: Path) -> None:
    (tmp_path / "thesis").mkdir()
    (tmp_path / "thesis" / "chapter.txt").write_text("do not lose me", "utf-8")
    with pytest.raises(NewelError) as caught:
        publish(tiny_site(), tmp_path / "thesis")
    assert caught.value.id == "strange-folder"
    assert (tmp_path / "thesis" / "chapter.txt").exists()


def write(folder: Path, text: str) -> Path:
    """A folder with one file."""
    folder.mkdir()
    (folder / "index.html").write_text(text, "utf-8")
    return folder


def no_exchange(*_: Path) -> bool:
    """A system without the call."""
    return False


def test_two_folders_change_places_at_once_where_the_system_can(tmp_path: Path) -> None:
    one, other = write(tmp_path / "one", "1"), write(tmp_path / "other", "2")
    changed = exchange(one, other)
    assert changed == (sys.platform == "linux")
    assert (one / "index.html").read_text("utf-8") == ("2" if changed else "1")


def test_without_that_call_two_renames_do_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folder_module, "exchange", no_exchange)
    fresh, target = write(tmp_path / "fresh", "new"), write(tmp_path / "site", "old")
    replace_folder(fresh, target, tmp_path)
    assert (target / "index.html").read_text("utf-8") == "new"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["site"]


def test_a_second_rename_that_fails_puts_the_last_site_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(folder_module, "exchange", no_exchange)
    target = write(tmp_path / "site", "old")
    with pytest.raises(OSError, match="No such file"):
        replace_folder(tmp_path / "missing", target, tmp_path)
    assert (target / "index.html").read_text("utf-8") == "old"


def test_a_build_cut_off_between_its_renames_is_mended_by_the_next(tmp_path: Path) -> None:
    state = tmp_path / ".newel"
    publish(tiny_site("Last good"), tmp_path / "site")
    (tmp_path / "site").rename(state / "site-before")
    with pytest.raises(NewelError):
        publish(broken_site(), tmp_path / "site")
    assert "Last good" in (tmp_path / "site" / "index.html").read_text("utf-8")
