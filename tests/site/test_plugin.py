"""The plugin in MkDocs itself: strict builds with pages written by hand beside those of the build."""

import logging
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

import generator.pipeline
from generator.outputs.site import Site
from generator.problems import Level, Location, Problem
from generator.publishing.publish import publish
from tests.site.sample_site import sample_site, tiny_site

CONFIG = (
    "site_name: x\ndocs_dir: site_src\ntheme: material\nplugins: [search, {newel: {today: '2026-11-25'}}]\n"
)

WRONG = Problem("arrives-wet", Level.ERROR, Location("x.yml", 2, 3), "the board is wet", "dry it")


@dataclass(frozen=True)
class Built:
    """What a pipeline hands back."""

    site: Site | None
    problems: tuple[Problem, ...] = ()


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    """A folder with a mkdocs.yml and one page written by hand."""
    (tmp_path / "site_src" / "start").mkdir(parents=True)
    (tmp_path / "procedures").mkdir()
    (tmp_path / "mkdocs.yml").write_text(CONFIG, "utf-8")
    text = "# Start\n\nSee [the coat](../procedures/copper-the-holes/index.md#black-in).\n"
    (tmp_path / "site_src" / "start" / "index.md").write_text(text, "utf-8")
    return tmp_path


def run(lab: Path, monkeypatch: pytest.MonkeyPatch, built: Built) -> Path:
    """Build the folder with MkDocs, strictly, from a pipeline that hands this back."""
    asked: list[tuple[Path, date, bool]] = []

    def build_site(folder: Path, today: date, draft: bool) -> Built:
        asked.append((folder, today, draft))
        return built

    monkeypatch.setattr(generator.pipeline, "build_site", build_site, raising=False)
    build(load_config(str(lab / "mkdocs.yml"), strict=True))
    assert asked == [(lab / "procedures", date(2026, 11, 25), False)]
    return lab / "site"


def test_a_page_written_by_hand_may_link_to_a_step(lab: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    site = run(lab, monkeypatch, Built(sample_site()))
    start = (site / "start" / "index.html").read_text("utf-8")
    assert 'href="../procedures/copper-the-holes/index.html#black-in"' in start
    assert "For instructors" in start
    assert (site / "search" / "search_index.js").exists()


def test_a_link_to_a_step_that_is_not_there_fails(lab: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = lab / "site_src" / "start" / "index.md"
    path.write_text("# Start\n\n[x](../procedures/copper-the-holes/index.md#black-out)\n", "utf-8")
    (lab / "mkdocs.yml").write_text(f"{CONFIG}validation: {{anchors: warn}}\n", "utf-8")
    with pytest.raises(Abort, match="1 warnings"):
        run(lab, monkeypatch, Built(sample_site()))


def test_errors_of_the_author_stop_before_the_last_site_is_touched(
    lab: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    site = run(lab, monkeypatch, Built(sample_site()))
    before = (site / "index.html").read_bytes()
    with caplog.at_level(logging.ERROR, "mkdocs"), pytest.raises(Abort):
        run(lab, monkeypatch, Built(None, (WRONG,)))
    assert "x.yml:2:3: error[arrives-wet]: the board is wet\n   fix: dry it" in caplog.text
    assert (site / "index.html").read_bytes() == before


def test_a_page_by_hand_at_the_address_of_one_of_ours_is_refused(
    lab: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    (lab / "site_src" / "index.md").write_text("# Mine\n", "utf-8")
    with caplog.at_level(logging.ERROR, "mkdocs"), pytest.raises(Abort):
        run(lab, monkeypatch, Built(tiny_site()))
    assert 'two pages want the address of "index.md"' in caplog.text


def test_titles_are_escaped_once_wherever_the_theme_puts_them(
    lab: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (lab / "site_src" / "start" / "index.md").unlink()
    site = run(lab, monkeypatch, Built(tiny_site("Salt & <Light>")))
    page = (site / "index.html").read_text("utf-8")
    assert "<Light>" not in page
    assert "&amp;amp;" not in page
    assert "<title>Salt &amp; &lt;Light&gt; - " in page


def test_the_engines_server_goes_on_over_errors_with_the_last_good_site(
    lab: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    outcome = [Built(None, (WRONG,))]
    monkeypatch.setattr(generator.pipeline, "build_site", lambda *_: outcome[0], raising=False)
    (lab / "site_src" / "start" / "index.md").unlink()
    config = load_config(str(lab / "mkdocs.yml"))
    config.plugins.on_startup(command="serve", dirty=False)
    page = lab / "site" / "index.html"
    with caplog.at_level(logging.ERROR, "mkdocs"):
        build(config, serve_url="http://127.0.0.1:8000/")
    assert "the board is wet" in caplog.text
    assert "the board is wet" in page.read_text("utf-8")
    outcome[0] = Built(tiny_site("Good"))
    build(config, serve_url="http://127.0.0.1:8000/")
    outcome[0] = Built(None, (WRONG,))
    build(config, serve_url="http://127.0.0.1:8000/")
    assert "Good" in page.read_text("utf-8")
    assert "Content-Security-Policy" not in page.read_text("utf-8")
    publish(tiny_site(), lab / "published")
    assert "Content-Security-Policy" in (lab / "published" / "index.html").read_text("utf-8")
    config.plugins.on_shutdown()
