"""Pins: every package hashed, no address, and nothing that pyproject.toml does not ask for or forbids."""

import itertools
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
PINS = ("requirements.txt", "requirements-dev.txt", "requirements-fuzz.txt")
ADDRESS = re.compile(r"[a-z+]+://|^\s*(?:-i|-f|--(?:extra-)?index-url|--find-links|--trusted-host)\b", re.M)


def declared() -> dict[str, Any]:
    table: dict[str, Any] = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    return table


def pinned(name: str) -> list[Requirement]:
    entries = re.sub(r"#.*", "", (ROOT / name).read_text("utf-8")).replace("\\\n", " ")
    return [Requirement(line.split("--hash")[0]) for line in entries.splitlines() if line.strip()]


@pytest.mark.parametrize("name", PINS)
def test_no_address_stands_in_the_pins(name: str) -> None:
    assert not ADDRESS.search((ROOT / name).read_text("utf-8"))


@pytest.mark.parametrize(
    "line", ["--index-url x", "-f wheels", "a @ git+https://x", "    --extra-index-url x", "b @ file:///w"]
)
def test_an_address_would_be_seen(line: str) -> None:
    assert ADDRESS.search(f"nh3==1\n{line}\n")


@pytest.mark.parametrize("name", PINS)
def test_every_pin_is_exact_and_hashed(name: str) -> None:
    blocks = re.split(r"^(?=[A-Za-z])", (ROOT / name).read_text("utf-8"), flags=re.M)
    entries = [block for block in blocks if block.strip()]
    assert len(entries) > 20
    assert [block for block in entries if "==" not in block or "--hash=sha256:" not in block] == []


def test_the_pins_give_what_is_asked_for() -> None:
    project = declared()["project"]
    optional = project["optional-dependencies"]
    extras = itertools.chain.from_iterable(wants for name, wants in optional.items() if name != "fuzz")
    assert unanswered("requirements.txt", project["dependencies"]) == []
    assert unanswered("requirements-dev.txt", [*project["dependencies"], *extras]) == []
    assert unanswered("requirements-fuzz.txt", optional["fuzz"]) == []


def unanswered(name: str, wants: list[str]) -> list[str]:
    pins = pinned(name)
    return [want for want in wants if not any(answers(pin, Requirement(want)) for pin in pins)]


def answers(pin: Requirement, want: Requirement) -> bool:
    version = next(iter(pin.specifier)).version
    return canonicalize_name(pin.name) == canonicalize_name(want.name) and version in want.specifier


def test_developers_run_the_versions_that_authors_run() -> None:
    authors, developers, fuzzers = ({str(pin) for pin in pinned(name)} for name in PINS)
    assert authors <= developers
    assert {pin for pin in fuzzers if not pin.startswith("atheris")} <= developers


def test_the_build_backend_is_one_pin() -> None:
    [backend] = declared()["build-system"]["requires"]
    assert backend in (ROOT / "requirements-build.in").read_text("utf-8").splitlines()
    assert backend in {str(pin) for pin in pinned("requirements.txt")}
