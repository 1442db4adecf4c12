"""What Newel is built on and travels as: licences told, a wheel of what is needed alone, and no network."""

import os
import re
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

from tests.ground import licences

ROOT = Path(__file__).parents[2]
# Two programs of the system: a process without any network, as root or as anybody.
NO_NETWORK = ("unshare", "--net") if os.geteuid() == 0 else ("unshare", "--map-root-user", "--net")
NEEDED = {
    ".py", ".css", ".html", ".j2", ".js", ".json", ".md", ".svg", ".ttf", ".txt", ".typ", ".typed", ".woff2",
    ".yml",
}  # fmt: skip
MOST = 8_000_000  # bytes of the wheel


def rows() -> dict[str, list[str]]:
    lines = licences.PAGE.read_text("utf-8").splitlines()
    cells = ([cell.strip() for cell in line.strip("|").split("|")] for line in lines if line.startswith("| "))
    return {row[0]: row[1:] for row in cells if row[0] != "Package" and set(row[0]) != {"-"}}


def test_every_pinned_package_has_its_licence_told() -> None:
    told = rows()
    assert {name: version for name, (version, _) in licences.pinned().items()} == {
        name: row[0] for name, row in told.items()
    }, "write the page anew: python -m tests.ground.licences"
    assert [name for name, row in told.items() if not row[1]] == []


def test_the_licence_told_is_the_one_that_the_package_names() -> None:
    assert {name: row[1] for name, row in rows().items() if row[1] != licences.licence_of(name)} == {}


def test_no_licence_asks_those_who_use_newel_for_their_own_work() -> None:
    """What is needed to use it: no licence that binds the site that it writes."""
    used = {name: row[1] for name, row in rows().items() if row[2] == "to use Newel"}
    assert {name: licence for name, licence in used.items() if re.search(r"\b[AL]?GPL", licence)} == {}


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project's wheel, built from a copy of what is tracked, without a network."""
    source, out = tmp_path_factory.mktemp("source"), tmp_path_factory.mktemp("wheel")
    archive = subprocess.run(["git", "ls-files", "-z", "generator", "pyproject.toml", "README.md", "LICENSE"],
                             cwd=ROOT, capture_output=True, check=True).stdout  # fmt: skip
    for name in archive.decode().split("\0"):
        if name and (ROOT / name).is_file():
            (source / name).parent.mkdir(parents=True, exist_ok=True)
            (source / name).write_bytes((ROOT / name).read_bytes())
    run([sys.executable, "-c", f"import setuptools.build_meta as b; b.build_wheel({str(out)!r})"], source)
    [found] = out.glob("newel-*.whl")
    return found


def run(words: list[str], cwd: Path, env: dict[str, str] | None = None) -> str:
    done = subprocess.run(words, cwd=cwd, capture_output=True, text=True, check=False, env=env)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_the_wheel_holds_what_is_needed_and_nothing_else(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as opened:
        names = {name for name in opened.namelist() if not name.endswith("/")}
    info = {name for name in names if ".dist-info/" in name}
    code = names - info
    assert {name.split("/")[0] for name in code} == {"generator"}
    assert {Path(name).suffix for name in code} <= NEEDED
    listed = subprocess.run(["git", "ls-files", "-z", "generator"], cwd=ROOT, capture_output=True, check=True)
    tracked = {name for name in listed.stdout.decode().split("\0") if name and (ROOT / name).is_file()}
    assert code == tracked
    assert {Path(name).name for name in info} == {
        "METADATA", "WHEEL", "RECORD", "entry_points.txt", "top_level.txt", "LICENSE",
    }  # fmt: skip
    assert not [name for name in code if re.search(r"(^|/)(tests?|conftest|bench)(/|\.py)", name)]
    assert wheel.stat().st_size < MOST


def test_the_wheel_makes_checks_and_builds_a_lab_without_a_network(wheel: Path, tmp_path: Path) -> None:
    """Installed in an environment of its own; the packages that it needs are those of this one."""
    home = tmp_path / "env"
    run([sys.executable, "-m", "venv", "--without-pip", str(home)], tmp_path)
    python = home / "bin" / "python"
    [site] = (home / "lib").glob("python*/site-packages")
    with zipfile.ZipFile(wheel) as opened:
        opened.extractall(site)  # a wheel of Python alone is its own installation
    (site / "others.pth").write_text(sysconfig.get_paths()["purelib"] + "\n", "utf-8")
    env = {"PATH": os.environ["PATH"], "HOME": str(tmp_path), "SOURCE_DATE_EPOCH": "1795600000"}
    newel = [*NO_NETWORK, str(python), "-I", "-c", "from generator.cli import main; main()"]
    lab = tmp_path / "empty"
    lab.mkdir()
    where = run([str(python), "-I", "-c", "import generator; print(generator.__file__)"], lab, env)
    assert where.strip().startswith(str(site))
    probe = "import socket; socket.create_connection(('192.0.2.1', 80), 2)"
    refused = subprocess.run([*NO_NETWORK, str(python), "-I", "-c", probe], capture_output=True, text=True,
                             check=False)  # fmt: skip
    assert "Network is unreachable" in refused.stderr, "there is a network where there must be none"
    assert "wrote a lab" in run([*newel, "init"], lab, env)
    assert "0 errors" in run([*newel, "check"], lab, env)
    assert "wrote site" in run([*newel, "build", "--draft"], lab, env)
    assert (lab / "site" / "procedures" / "weigh-a-coupon" / "index.html").is_file()
