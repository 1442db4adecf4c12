"""A build after which nothing was changed stops before it reads or imports anything; any change is seen."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

LAB = Path(__file__).parents[1] / "labs" / "minimum"
BUILD = """
import sys
from generator.cli import main
try:
    main(["build", *sys.argv[1:]])
finally:
    print([name for name in ("mkdocs", "pydantic", "jinja2", "yaml") if name in sys.modules])
"""
STOPPED = "nothing has changed since site was written"


def build(folder: Path, *words: str, day: str = "1764028800") -> str:
    """What a build says, and which of the large packages it loaded."""
    done = subprocess.run(
        [sys.executable, "-c", BUILD, *words],
        cwd=folder, capture_output=True, text=True, check=False, env={**os.environ, "SOURCE_DATE_EPOCH": day},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr + done.stdout
    return done.stdout


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("unchanged")
    shutil.copytree(LAB, folder / "procedures")
    assert "wrote site" in build(folder)
    return folder


def test_nothing_changed_stops_before_anything_is_loaded(built: Path) -> None:
    assert build(built).splitlines() == [f"{STOPPED}: {pages_in(built)} pages", "[]"]
    (built / "procedures" / "lab.yml").touch()
    assert STOPPED in build(built), "another time alone is no change"


def pages_in(folder: Path) -> int:
    return len([*(folder / "site").rglob("*.html")]) - 1  # the page of errors is the theme's


def test_whatever_a_site_comes_from_is_looked_at(built: Path) -> None:
    lab, page = built / "procedures" / "lab.yml", built / "site" / "places" / "cutter" / "index.html"
    text = lab.read_text(encoding="utf-8")
    lab.write_text(text.replace("Round cutter", "Long cutter"), encoding="utf-8")
    assert "wrote site" in build(built)
    html = page.read_bytes()
    assert b"Long cutter" in html
    page.unlink()
    assert "wrote site" in build(built)
    assert page.read_bytes() == html
    assert "wrote site" in build(built, day="1764115200"), "another day"
    assert "wrote site" in build(built, "--draft")
    assert STOPPED in build(built, "--draft")


def test_a_note_that_is_spoilt_or_a_link_costs_time_only(built: Path) -> None:
    build(built)
    (built / ".newel" / "site.json").write_text('{"asked": 1}')
    assert "wrote site" in build(built)
    (built / "procedures" / "note.txt").symlink_to(built / "procedures" / "lab.yml")
    assert "wrote site" in build(built), "what a link leads to is not known"
