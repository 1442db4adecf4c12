"""What every page loads: one style sheet, one classic script, drawings; nothing from elsewhere."""

import re
from pathlib import Path

import pytest

from generator.outputs import assets
from generator.outputs.assets import BASE, KINDS, STYLES, page_assets, script_path

FOLDER = Path(assets.__file__).parent


def text_of(path: str) -> str:
    """The text of one of the files."""
    return next(file.content for file in page_assets() if file.path == path).decode()


def test_every_small_file_is_joined() -> None:
    own = {path.stem for path in (FOLDER / "scripts").glob("*.js")}
    own -= {"frame-worker", "parts-worker", "search-parts", "service-worker"}
    assert {*BASE, *(name for kind in KINDS.values() for name in kind)} == own
    assert set(STYLES) == {path.stem for path in (FOLDER / "styles").glob("*.css")}


@pytest.mark.parametrize("kind", ["", *KINDS])
def test_the_script_is_classic_and_evaluates_nothing(kind: str) -> None:
    script = text_of(script_path(kind))
    assert not re.search(r"^\s*(import|export)\b", script, re.MULTILINE)
    assert not re.search(
        r"\beval\(|new Function|innerHTML|outerHTML|insertAdjacentHTML|document\.write|fetch\(", script
    )


@pytest.mark.parametrize("kind", KINDS)
def test_no_two_modules_of_a_page_declare_the_same_name(kind: str) -> None:
    modules = "".join((FOLDER / f"scripts/{name}.js").read_text("utf-8") for name in (*BASE, *KINDS[kind]))
    found = r"^(?:export )?(?:async )?(?:function|const|let|class) (\w+)"
    names = re.findall(found, modules, re.MULTILINE)
    assert sorted(names) == sorted(set(names))


@pytest.mark.parametrize("kind", KINDS)
def test_a_module_is_joined_behind_what_it_imports(kind: str) -> None:
    order = (*BASE, *KINDS[kind])
    for position, name in enumerate(order):
        text = (FOLDER / "scripts" / f"{name}.js").read_text("utf-8")
        for names, wanted in re.findall(r'^import (.*) from "\./([\w-]+)\.js";$', text, re.MULTILINE):
            assert order.index(wanted) < position, (name, wanted)
            exported = (FOLDER / "scripts" / f"{wanted}.js").read_text("utf-8")
            for each in names.strip("{ }").split(", "):
                assert re.search(rf"^export (async )?(function|const) {each}\b", exported, re.MULTILINE), each


def test_no_page_loads_more_than_60_kilobytes_of_our_script() -> None:
    """Script as it is sent, before any compression; a page's formulas come to a few hundred bytes each."""
    base = len(text_of(script_path())) + len(text_of("assets/newel-frame-worker.js"))
    sizes = {kind: base + len(text_of(script_path(kind))) for kind in KINDS}
    assert max(sizes.values()) < 57_500, sizes
    assert base < 10_000


def test_nothing_is_loaded_from_elsewhere() -> None:
    for file in page_assets():
        if file.path.endswith((".css", ".js")):
            text = file.content.decode().replace("http://www.w3.org/", "")
            assert not re.search(r"https?://|//cdn|@import", text), file.path


def test_colours_are_named_in_one_place() -> None:
    """A colour outside tokens.css would not follow light and dark; the white of a sign's ground may."""
    for name in STYLES:
        if name in ("tokens", "print"):
            continue
        found = set(
            re.findall(r"#[0-9a-fA-F]{3,8}\b|rgba?\(", (FOLDER / "styles" / f"{name}.css").read_text("utf-8"))
        )
        assert found <= {"#fff"}, name


def test_a_class_is_one_thing() -> None:
    """Two sheets that lay out the same class once hid a table on a phone."""
    found: dict[str, str] = {}
    for name in STYLES:
        if name == "print":
            continue
        text = (FOLDER / "styles" / f"{name}.css").read_text("utf-8")
        for each in re.findall(r"^\.(nw-[\w-]+) \{", text, re.MULTILINE):
            assert found.setdefault(each, name) == name, each
