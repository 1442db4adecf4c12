"""What goes wrong around a build: a disk that is full or takes nothing, two at once, clocks that jump."""

import os
import resource
import shutil
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from tests.publishing.test_publish import read_all

LAB = Path(__file__).parents[1] / "labs" / "minimum"
ROOT = Path(__file__).parents[2]
DAY = "1795600000"  # 25 November 2026
OWN_MOUNTS = ("unshare", "--mount") if os.geteuid() == 0 else ("unshare", "--map-root-user", "--mount")
SMALL = 200_000  # bytes; the style sheet of the theme alone is larger


def newel(*words: str, cwd: Path, **env: str) -> subprocess.CompletedProcess[str]:
    """The real command in a process of its own."""
    return subprocess.run(command(*words), cwd=cwd, env=surroundings(env), capture_output=True, text=True,
                          check=False)  # fmt: skip


def command(*words: str) -> list[str]:
    return [sys.executable, "-c", "from generator.cli import main; main()", *words]


def surroundings(env: Mapping[str, str]) -> dict[str, str]:
    return {**os.environ, "SOURCE_DATE_EPOCH": DAY, "PYTHONPATH": str(ROOT), **env}


def make_lab(home: Path) -> Path:
    home.mkdir(parents=True, exist_ok=True)
    shutil.copytree(LAB, home / "procedures")
    return home


@pytest.fixture(scope="module")
def good(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A lab with its site."""
    home = make_lab(tmp_path_factory.mktemp("good") / "lab")
    done = newel("build", "--draft", cwd=home)
    assert done.returncode == 0, done.stderr
    return home


@pytest.fixture
def lab(good: Path, tmp_path: Path) -> Path:
    """The same, to be spoilt, with an edit that wants a new site."""
    shutil.copytree(good, tmp_path / "lab")
    edit(tmp_path / "lab")
    return tmp_path / "lab"


def edit(home: Path) -> None:
    file = home / "procedures" / "weigh-a-fabric.yml"
    text = file.read_text("utf-8")
    assert "Weigh one swatch." in text
    file.write_text(text.replace("Weigh one swatch.", "Weigh two swatches."), "utf-8")


def test_a_full_disk_leaves_the_last_site_and_says_so(lab: Path) -> None:
    """No file may grow beyond a limit: what the system answers is what it answers on a full disk."""
    before = read_all(lab / "site")
    done = subprocess.run(
        command("build", "--draft"),
        cwd=lab, env=surroundings({}), capture_output=True, text=True, check=False,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (SMALL, SMALL)),
    )  # fmt: skip
    assert done.returncode == 2, done.stdout
    assert "cannot be written" in done.stderr and "the last site stands as it was" in done.stderr
    assert read_all(lab / "site") == before


ON_A_DISK = """
set -e
mount -t tmpfs -o size={size} none "$1"
cp -a "$2"/. "$1"/
cd "$1"
{then}
shift 2
set +e
"$@"
status=$?
find site -type f | sort | xargs cat | sha256sum | cut -c1-64
exit $status
"""


@pytest.mark.parametrize(
    ("size", "then"), [("12m", "head -c 12m /dev/zero > filler || true"), ("64m", "mount -o remount,ro .")],
    ids=["full", "read-only"],
)  # fmt: skip
def test_a_disk_that_takes_nothing_leaves_the_last_site(
    good: Path, lab: Path, tmp_path: Path, size: str, then: str
) -> None:
    """A real small disk of its own, seen by this one process alone."""
    (tmp_path / "disk").mkdir()
    script = ON_A_DISK.format(size=size, then=then)
    words = ["sh", str(tmp_path / "disk"), str(lab), *command("build", "--draft")]
    done = subprocess.run(
        [*OWN_MOUNTS, "sh", "-c", script, *words],
        env=surroundings({}), capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 2, done.stdout + done.stderr
    assert "cannot be written" in done.stderr, done.stderr
    assert "own-fault" not in done.stderr and "Traceback" not in done.stderr
    find = "find site -type f | sort | xargs cat | sha256sum | cut -c1-64"
    wanted = subprocess.run(["sh", "-c", find], cwd=good, capture_output=True, text=True, check=True).stdout
    assert done.stdout.splitlines()[-1] == wanted.strip()


def test_two_builds_at_once_leave_one_whole_site(lab: Path) -> None:
    both = [
        subprocess.Popen(command("build", "--draft"), cwd=lab, env=surroundings({}), text=True,
                         stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        for _ in range(2)
    ]  # fmt: skip
    said = [process.communicate(timeout=300)[1] for process in both]
    statuses = sorted(process.returncode for process in both)
    assert statuses in ([0, 0], [0, 2]), said
    assert statuses == [0, 0] or any("already-building" in each for each in said)
    assert "Weigh two swatches" in (lab / "site/procedures/weigh-a-fabric/index.html").read_text("utf-8")
    again = newel("build", "--draft", cwd=lab)
    assert again.returncode == 0, again.stderr


def test_a_clock_that_jumps_hides_no_edit(good: Path, tmp_path: Path) -> None:
    """The same size and the same time of change, and then a clock years back: the edit is published."""
    shutil.copytree(good, tmp_path / "lab")
    file = tmp_path / "lab" / "procedures" / "weigh-a-fabric.yml"
    page = tmp_path / "lab" / "site" / "procedures" / "weigh-a-fabric" / "index.html"
    old = file.stat()
    for turn, (jump, words) in enumerate(((0, "Weigh six swatch."), (-900_000_000, "Weigh ten swatch."))):
        text = file.read_text("utf-8")
        file.write_text(text.replace(("Weigh one swatch.", "Weigh six swatch.")[turn], words), "utf-8")
        os.utime(file, ns=(old.st_atime_ns, old.st_mtime_ns + jump * 1_000_000_000))
        done = newel("build", "--draft", cwd=tmp_path / "lab", SOURCE_DATE_EPOCH=str(int(DAY) + jump))
        assert done.returncode == 0, done.stderr
        assert words in page.read_text("utf-8")


def test_another_place_language_zone_and_seed_give_the_same_bytes(good: Path, tmp_path: Path) -> None:
    other = make_lab(tmp_path / "ein anderer Ort" / "Ü b")
    done = newel(
        "build", "--draft", cwd=other, LC_ALL="tr_TR.UTF-8", LANG="de_DE.UTF-8", LANGUAGE="de",
        TZ="Pacific/Kiritimati", PYTHONHASHSEED="4242", COLUMNS="40", HOME=str(tmp_path),
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    one, two = read_all(good / "site"), read_all(other / "site")
    assert one.keys() == two.keys()
    assert [name for name in one if one[name] != two[name]] == []
