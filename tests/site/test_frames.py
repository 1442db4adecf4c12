"""Pages put into frames are those that the engine lays out, byte for byte; else the engine lays out all."""

import datetime
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

import generator.publishing.engine
from generator.mkdocs_plugin import framing
from generator.outputs.frames import Frame, sort_of
from generator.outputs.page import Page, Section, SitePage
from generator.outputs.site import Site
from generator.pipeline import build_site
from generator.publishing.engine import run_engine

LAB = Path(__file__).parents[1] / "labs" / "minimum"
CONFIG = """\
site_name: x
site_url: https://lab.example/deep/
docs_dir: pages
theme: material
plugins: [search, newel]
"""


@cache
def site() -> Site:
    found = build_site(LAB, datetime.date(2026, 11, 25), draft=True).site
    assert found is not None
    odd = tuple(page(name, title, told) for name, title, told in ODD)
    return replace(found, pages=(*found.pages, *odd))


ODD = (
    ("checks/odd-1", 'Less < more & "so"', "A 'quoted' <b>description</b> & more"),
    ("checks/odd-2", "Plain", "A 'quoted' <b>description</b> & more"),
    ("checks/odd-3", "Two  gaps", ""),
    ("checks/odd-4", "nwmodeltitle", "nwmodelone"),
    ("places/ä", "Not in plain letters", ""),
)


def page(address: str, title: str, told: str) -> Page:
    body = f"<section><p>{address} &amp; <code>{{{{ x }}}}</code></p></section>"
    sections = (
        Section(1, "page_top", title, body),
        Section(2, "first", "One & <two>", body),
        Section(2, "second", "Two", body),
    )
    return Page(address, title, sections, told, "rule")


def laid_out(folder: Path, frames: bool, monkeypatch: pytest.MonkeyPatch) -> dict[str, bytes]:
    (folder / "pages").mkdir(parents=True, exist_ok=True)
    (folder / "pages" / "hand.md").write_text("# By hand\n\n[a rule](checks/tab-indent/index.md#not_so)\n")
    config = folder / "mkdocs.yml"
    config.write_text(CONFIG)
    with monkeypatch.context() as patch:
        if not frames:
            patch.setattr(framing, "can_frame", lambda _: False)
            patch.setattr("generator.mkdocs_plugin.plugin.can_frame", lambda _: False)
        run_engine(site(), folder / "site", config, None)
    out = folder / "site"
    return {path.relative_to(out).as_posix(): path.read_bytes() for path in out.rglob("*") if path.is_file()}


def test_frames_give_what_the_engine_gives(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    framed: list[str] = []
    around = Frame.around

    def noted(self: Frame, page: SitePage) -> str:
        framed.append(page.address)
        return around(self, page)

    monkeypatch.setattr(Frame, "around", noted)
    ours = laid_out(tmp_path / "frames", True, monkeypatch)
    number = len(framed)
    theirs = laid_out(tmp_path / "engine", False, monkeypatch)
    assert ours.keys() == theirs.keys()
    assert not [path for path, content in ours.items() if content != theirs[path]]
    assert number > 100, "most pages came out of a frame"
    assert len(framed) == number
    assert b"checks/odd-2/index.html" in ours["sitemap.xml"]


def test_a_frame_that_gives_another_page_sends_every_page_to_the_engine(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    theirs = laid_out(tmp_path / "engine", False, monkeypatch)
    around = Frame.around
    monkeypatch.setattr(Frame, "around", lambda self, page: around(self, page).replace("</body>", ""))
    tried: list[bool] = []
    build = generator.publishing.engine._build

    def noted(*args: object, frames: bool) -> None:
        tried.append(frames)
        build(*args, frames=frames)  # type: ignore[arg-type, misc]

    monkeypatch.setattr(generator.publishing.engine, "_build", noted)
    assert laid_out(tmp_path / "frames", True, monkeypatch) == theirs
    assert tried == [True, False]


def test_what_a_frame_cannot_hold_is_left_to_the_engine() -> None:
    plain = page("checks/a", "Plain", "")
    assert sort_of(plain) == ("rule", "checks", 1, False)
    for other in (
        replace(plain, listed=True),
        replace(plain, address="alone"),
        replace(plain, title="A & B"),
        replace(plain, sections=plain.sections[:1]),
        replace(plain, sections=(*plain.sections, Section(3, "deep", "Deep", ""))),
        page("checks/a", "nwmodeltitle", ""),
    ):
        assert sort_of(other) is None
