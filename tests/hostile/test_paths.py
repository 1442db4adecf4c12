"""Files that lead elsewhere, that no other system can hold, or that nobody could read to the end."""

import os
import time
from pathlib import Path

import pytest

from generator.pipeline import check
from generator.problems import Level
from generator.reading import open_folder, read_lab
from tests.hostile.doors import DAY

BASE = Path(__file__).parents[1] / "checks" / "base"
DRAWING = b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9"/></svg>'


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    """A lab that checks clean, with one picture."""
    home = tmp_path / "procedures"
    (home / "pictures").mkdir(parents=True)
    (home / "lab.yml").write_bytes((BASE / "lab.yml").read_bytes())
    (home / "clean.yml").write_bytes((BASE / "procedure.yml").read_bytes())
    (home / "pictures" / "hole.svg").write_bytes(DRAWING)
    (tmp_path / "secret.yml").write_text("title: secret\n", "utf-8")
    (tmp_path / "secret.svg").write_bytes(DRAWING)
    return home


def told(lab: Path) -> dict[str, str]:
    """What is said of each file that has an error, and that each says what to do."""
    found = check(read_lab(open_folder(lab, "procedures")), DAY).problems
    errors = [problem for problem in found if problem.level is Level.ERROR]
    assert all(problem.fix and problem.where.line >= 1 for problem in errors)
    return {problem.where.file: problem.message for problem in errors}


def test_a_good_lab_is_left_alone(lab: Path) -> None:
    assert told(lab) == {}


@pytest.mark.parametrize("stem", ["con", "aux", "nul", "prn", "com1", "lpt9", "con.morning", "CON", "nul.en"])
def test_a_device_of_windows_is_no_name_of_a_file(lab: Path, stem: str) -> None:
    (lab / f"{stem}.yml").write_bytes((lab / "clean.yml").read_bytes())
    assert "device" in told(lab)[f"procedures/{stem}.yml"]


@pytest.mark.parametrize("id", ["con", "aux", "nul", "com1"])
def test_a_device_of_windows_is_no_id(lab: Path, id: str) -> None:
    text = (lab / "clean.yml").read_text("utf-8").replace("stage: clean", f"stage: {id}")
    (lab / "clean.yml").write_text(text, "utf-8")
    assert "device" in told(lab)["procedures/clean.yml"]


@pytest.mark.parametrize(
    ("one", "two", "says"),
    [
        ("clean.yml", "clean.yaml", "taken for the same"),
        ("clean.yml", "Clean.yml", "lower-case"),
        ("clean.yml", "other.YML", "capital letters"),
        ("clean.de.yml", "clean.DE.yml", "taken for the same"),
        ("clean.yml", f"{'long-' * 20}name.yml", "60 at most"),
        ("clean.yml", "Spül die Platte.yml", "lower-case"),
        ("clean.yml", "-.yml", "lower-case"),
    ],
)
def test_files_that_another_system_takes_for_one(lab: Path, one: str, two: str, says: str) -> None:
    for name in (one, two):
        (lab / name).write_bytes((lab / "clean.yml").read_bytes())
    assert any(says in message for message in told(lab).values()), told(lab)


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("con.svg", "device"),
        ("aux/hole.png", "device"),
        ("what?.png", "do not allow"),
        ("a:b.png", "do not allow"),
        ("a\\b.png", "do not allow"),
        ("end./x.png", "full stop"),
        ("bell\x07.png", "do not allow"),
    ],
)
def test_a_picture_that_another_system_cannot_hold(lab: Path, name: str, says: str) -> None:
    file = lab / "pictures" / name
    file.parent.mkdir(exist_ok=True)
    file.write_bytes(b"x")
    assert says in told(lab)[f"procedures/pictures/{name}"]


def test_two_pictures_that_differ_in_capitals_alone(lab: Path) -> None:
    (lab / "pictures" / "Hole.svg").write_bytes(DRAWING)
    assert "capital letters" in told(lab)["procedures/pictures/hole.svg"]


@pytest.mark.parametrize(
    "inside",
    [
        "<script>fetch('x')</script>", '<g onload="alert(1)"/>', '<a href="javascript:alert(1)">x</a>',
        '<image href="https://example.org/x.png"/>', '<image href="//example.org/x.png"/>',
        "<foreignObject><p>x</p></foreignObject>", "<style>@import 'x.css'</style>",
        '<rect style="fill:url(http://example.org/x)"/>',
    ],
)  # fmt: skip
def test_a_drawing_that_acts_is_refused(lab: Path, inside: str) -> None:
    text = DRAWING.replace(b"</svg>", f"\n{inside}</svg>".encode())
    (lab / "pictures" / "hole.svg").write_bytes(text)
    assert "act by itself" in told(lab)["procedures/pictures/hole.svg"]


@pytest.mark.parametrize("name", ["leak.yml", "lab/leak.yml", "posted/clean/1.yml", "pictures/leak.svg"])
def test_a_link_out_of_the_folder_is_not_followed(lab: Path, name: str) -> None:
    (lab / name).parent.mkdir(parents=True, exist_ok=True)
    (lab / name).symlink_to(lab.parent / f"secret{Path(name).suffix}")
    found = open_folder(lab, "procedures")
    assert "leads out" in told(lab)[f"procedures/{name}"]
    assert b"secret" not in str(found).encode()


@pytest.mark.parametrize("name", ["pictures", "lab", "posted"])
def test_a_folder_that_leads_out_is_not_followed(lab: Path, name: str) -> None:
    outside = lab.parent / "outside"
    (outside / "clean").mkdir(parents=True)
    for file in ("x.yml", "x.svg", "clean/1.yml"):
        (outside / file).write_text("title: secret\n", "utf-8")
    if (lab / name).is_dir():
        (lab / name / "hole.svg").unlink()
        (lab / name).rmdir()
    (lab / name).symlink_to(outside)
    found = open_folder(lab, "procedures")
    assert found.pictures == frozenset() or name != "pictures"
    assert not any(b"secret" in data for data in (*found.lab.values(), *found.posted.values()))


@pytest.mark.parametrize(
    "file",
    [
        "../lab.yml", "/etc/passwd", "..\\lab.yml", "pictures/../../x.svg", "~/x.svg", "file:///x.svg",
        "https://example.org/x.svg", "c:\\x.svg", "./../hole.svg",
    ],
)  # fmt: skip
def test_the_path_of_a_picture_stays_in_its_folder(lab: Path, file: str) -> None:
    text = (lab / "clean.yml").read_text("utf-8")
    start, _, rest = text.partition("id: in,")
    put = "id: in, picture: {file: '%s', alt: The bath.}," % file  # noqa: UP031
    (lab / "clean.yml").write_text(start + put + rest, "utf-8")
    assert "leads out" in told(lab)["procedures/clean.yml"]


def test_a_pipe_and_an_endless_file_are_not_waited_for(lab: Path) -> None:
    os.mkfifo(lab / "pipe.yml")
    with (lab / "huge.yml").open("wb") as file:
        file.truncate(50_000_000_000)
    start = time.process_time()
    found = told(lab)
    assert "no file" in found["procedures/pipe.yml"] and "larger than 2 MB" in found["procedures/huge.yml"]
    assert time.process_time() - start < 5
