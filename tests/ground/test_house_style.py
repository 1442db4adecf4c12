"""The house style of DEVELOPERS.md, as far as a machine can read it."""

import ast
import fnmatch
import re
import subprocess
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "generator"
NASTY = ROOT / "tests" / "hostile" / "nasty"  # files that are wrong on purpose, some of them no text
LONGEST_FILE = 250
LONGEST_FUNCTION = 40
EMPTY_NAMES = {"utils", "helpers", "common", "base", "manager", "core"}
WRITTEN = {".py", ".md", ".yml", ".toml", ".j2", ".js", ".css", ".cases", ".txt", ".in", ".typ", ".html", ""}
UNWANTED = {
    "a path of one machine": re.compile(r"(?<![\w.~])/(?:root|home|work|opt|Users)/\w"),
    "a folder beside the project": re.compile(r"\.\./shared\b"),
    "work put off": re.compile(r"\b(?:TOD[O]|FIXM[E]|XX[X])\b"),
    "a package index": re.compile(r"pypi\.org|pythonhosted\.org|registry\.npmjs"),
}
STEPS_ASIDE = re.compile(r"\b(?:skip[iI]f|import[o]rskip|pytest\.skip|mark\.skip|mark\.xfail)\b")


def modules() -> list[Path]:
    return sorted(PACKAGE.rglob("*.py"))


def tracked() -> list[Path]:
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=True).stdout
    files = [ROOT / name for name in listed.decode("utf-8").split("\0") if name]
    there = (file for file in files if file.suffix in WRITTEN and file.is_file())
    return [file for file in there if not file.is_relative_to(NASTY)]


def place(file: Path, line: int = 0) -> str:
    return f"{file.relative_to(ROOT)}:{line}" if line else str(file.relative_to(ROOT))


def nodes() -> Iterator[tuple[Path, ast.AST]]:
    for file in modules():
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            yield file, node


def test_there_is_something_to_read() -> None:
    assert len(modules()) > 5
    assert len(tracked()) > 10


def test_files_are_short() -> None:
    written = [f for f in PACKAGE.rglob("*") if f.suffix in {".py", ".js", ".j2"}]
    assert [place(f) for f in written if len(f.read_text("utf-8").splitlines()) > LONGEST_FILE] == []


def test_functions_are_short() -> None:
    long = [
        f"{place(file, node.lineno)} {node.name}"
        for file, node in nodes()
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        and (node.end_lineno or node.lineno) - node.lineno >= LONGEST_FUNCTION
    ]
    assert long == []


def test_a_module_opens_with_a_sentence() -> None:
    opened = {f: ast.get_docstring(ast.parse(f.read_text("utf-8"))) or "" for f in modules()}
    assert [place(f) for f, words in opened.items() if not re.match(r"[^\n]+(\n[^\n]+)*[.?!)]", words)] == []


def test_names_say_what_modules_hold() -> None:
    named = [*modules(), *(d for d in PACKAGE.rglob("*") if d.is_dir())]
    assert [place(f) for f in named if f.stem in EMPTY_NAMES] == []


def test_imports_are_absolute() -> None:
    relative = [place(f, n.lineno) for f, n in nodes() if isinstance(n, ast.ImportFrom) and n.level]
    assert relative == []


def test_values_are_frozen() -> None:
    loose = [
        f"{place(file, node.lineno)} {node.name}"
        for file, node in nodes()
        if isinstance(node, ast.ClassDef)
        and any(is_loose(decorator) for decorator in node.decorator_list)
    ]
    assert loose == []


def is_loose(decorator: ast.expr) -> bool:
    written = ast.unparse(decorator)
    return bool(re.match(r"(dataclasses\.)?dataclass\b", written)) and "frozen=True" not in written


@pytest.mark.parametrize(
    ("written", "loose"),
    [("dataclass", True), ("dataclass(slots=True)", True), ("dataclass(frozen=True)", False)],
)
def test_a_loose_value_would_be_seen(written: str, loose: bool) -> None:
    assert is_loose(ast.parse(written, mode="eval").body) is loose


@pytest.mark.parametrize("what", UNWANTED)
def test_nothing_unwanted_is_written(what: str) -> None:
    found = [
        f"{place(file, number)} {line.strip()[:80]}"
        for file in tracked()
        for number, line in enumerate(file.read_text("utf-8").splitlines(), 1)
        if UNWANTED[what].search(line)
    ]
    assert found == []


@pytest.mark.parametrize("line", ["in /ro|ot/x", "/ho|me/me/y", "see ../sha|red/a", "# TO|DO", "pypi|.org"])
def test_an_unwanted_line_would_be_seen(line: str) -> None:
    assert any(pattern.search(line.replace("|", "")) for pattern in UNWANTED.values())


def test_no_test_steps_aside() -> None:
    files = [f for f in tracked() if f.is_relative_to(ROOT / "tests") and f.suffix == ".py"]
    assert [place(f) for f in files if STEPS_ASIDE.search(f.read_text("utf-8"))] == []


def test_an_aside_would_be_seen() -> None:
    asides = ("@pytest.mark.|skip", "skip|if(", "pytest.|skip(", "import|orskip", "mark.|xfail")
    assert all(STEPS_ASIDE.search(aside.replace("|", "")) for aside in asides)


def test_every_module_travels_with_the_package() -> None:
    homes = {file.parent for file in modules()}
    assert [place(home) for home in sorted(homes) if not (home / "__init__.py").is_file()] == []


def test_every_data_file_travels_with_the_package() -> None:
    table = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    patterns = [p.replace("**/", "*") for p in table["tool"]["setuptools"]["package-data"]["generator"]]
    data = [f for f in PACKAGE.rglob("*") if f.is_file() and f.suffix not in {".py", ".pyc"}]
    assert [place(f) for f in data if not any(fnmatch.fnmatch(f.name, p) for p in patterns)] == []
