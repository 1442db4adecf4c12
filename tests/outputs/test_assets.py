"""What every page loads: one style sheet, one classic script, drawings; nothing from elsewhere."""

import re
from pathlib import Path

from generator.outputs import assets
from generator.outputs.assets import SCRIPTS, STYLES, join_scripts, page_assets

FOLDER = Path(assets.__file__).parent


def text_of(path: str) -> str:
    """The text of one of the files."""
    return next(file.content for file in page_assets() if file.path == path).decode()


def test_every_small_file_is_joined() -> None:
    own = {path.stem for path in (FOLDER / "scripts").glob("*.js")} - {"frame-worker", "service-worker"}
    assert set(SCRIPTS) == own
    assert set(STYLES) == {path.stem for path in (FOLDER / "styles").glob("*.css")}


def test_the_script_is_classic_and_evaluates_nothing() -> None:
    script = text_of("assets/newel.js")
    assert not re.search(r"^\s*(import|export)\b", script, re.MULTILINE)
    assert not re.search(
        r"\beval\(|new Function|innerHTML|outerHTML|insertAdjacentHTML|document\.write|fetch\(", script
    )


def test_no_two_modules_declare_the_same_name() -> None:
    names = re.findall(r"^(?:async )?(?:function|const|let|class) (\w+)", join_scripts(SCRIPTS), re.MULTILINE)
    assert sorted(names) == sorted(set(names))


def test_a_module_is_joined_behind_what_it_imports() -> None:
    for position, name in enumerate(SCRIPTS):
        text = (FOLDER / "scripts" / f"{name}.js").read_text("utf-8")
        for wanted in re.findall(r'^import .* from "\./([\w-]+)\.js";$', text, re.MULTILINE):
            assert SCRIPTS.index(wanted) < position, (name, wanted)


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
