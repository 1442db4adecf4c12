"""The floors hold, cover every package, and every contract can be broken."""

import configparser
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CONTRACTS = ROOT / ".importlinter"


def contracts() -> configparser.ConfigParser:
    parser = configparser.ConfigParser()
    parser.read_string(CONTRACTS.read_text("utf-8"))
    return parser


def floors() -> list[str]:
    lines = contracts()["importlinter:contract:floors"]["layers"].split("\n")
    return [name.strip(" ()") for line in lines for name in line.split("|") if name.strip()]


def doors() -> dict[str, list[str]]:
    """Contract name -> the outside packages it keeps behind one door."""
    forbidden = [part for part in contracts().values() if part.get("type") == "forbidden"]
    return {part["name"]: part["forbidden_modules"].split() for part in forbidden}


def verdicts(folder: Path) -> dict[str, str]:
    """Contract name -> KEPT or BROKEN, for the package `generator` in `folder`."""
    command = [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()"]
    flags = ["--config", str(CONTRACTS), "--no-cache"]
    run = subprocess.run(command + flags, cwd=folder, capture_output=True, text=True, check=False)
    names = [part["name"] for key, part in contracts().items() if ":contract:" in key]
    lines = run.stdout.splitlines()
    told = {name: line for name in names for line in lines if line.startswith(f"{name} ")}
    found = {name: line.removeprefix(name).split()[0] for name, line in told.items()}
    assert set(found) == set(names), run.stdout + run.stderr
    return found


def broken(folder: Path) -> list[str]:
    return [name for name, verdict in verdicts(folder).items() if verdict != "KEPT"]


def plant(folder: Path, files: dict[str, str]) -> Path:
    """A package of empty floors with some lines of import planted in it."""
    texts = {"": ""} | dict.fromkeys(floors(), "") | files
    for name, text in texts.items():
        home = folder / "generator" / name.replace(".", "/")
        home.mkdir(parents=True, exist_ok=True)
        (home / "__init__.py").write_text(text, "utf-8")
    return folder


def test_every_package_has_its_floor() -> None:
    packages = {p.parent.name for p in (ROOT / "generator").glob("*/__init__.py")}
    modules = {p.stem for p in (ROOT / "generator").glob("*.py")} - {"__init__", "__main__"}
    assert packages | modules <= set(floors())


def test_the_floors_hold() -> None:
    assert broken(ROOT) == []


def test_empty_floors_hold(tmp_path: Path) -> None:
    assert broken(plant(tmp_path, {})) == []


def test_every_door_can_be_broken(tmp_path: Path) -> None:
    outside = "\n".join(f"import {name}" for names in doors().values() for name in names)
    found = verdicts(plant(tmp_path, {"walk": outside}))
    assert {found[name] for name in doors()} == {"BROKEN"}


@pytest.mark.parametrize(
    ("where", "line"),
    [
        ("walk", "import generator.checks"),
        ("checks", "import generator.outputs"),
        ("units", "import generator.notation"),
        ("problems", "import generator.units"),
        ("unheard_of", ""),
    ],
)
def test_a_wrong_floor_is_seen(tmp_path: Path, where: str, line: str) -> None:
    assert verdicts(plant(tmp_path, {where: line}))["Imports go down the floors only"] == "BROKEN"


def test_a_circle_is_seen(tmp_path: Path) -> None:
    circle = {"walk.part": "import generator.walk.clock", "walk.clock": "import generator.walk.part"}
    assert verdicts(plant(tmp_path, circle))["No circle of imports inside any package"] == "BROKEN"
