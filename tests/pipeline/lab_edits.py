"""Edits of a small lab's files of every kind that an author makes, drawn at random, good ones and bad."""

import random
import re
import shutil
from collections.abc import Callable
from pathlib import Path

from tests.many_labs import procedure_text

BASE = Path(__file__).parents[1] / "checks" / "base"
CARD = """cards:
  - {id: wall, title: Plate card, size: A3, read_from: 1.5 m, stages: [clean], post_at: bath}
"""
SIDE = """class_of: plate
title: Thin plates
approver: instructor
because: A thin plate needs less.
steps:
  in: {for: 6 min}
"""
DRY = """title: Look at a plate
who: operator
also_present: buddy
approver: instructor
stages:
  - stage: look
    title: Look
    steps:
      - {id: lamp, do: act, takes: 2 min, say: Tilt the plate under the lamp.}
      - {id: note, do: act, takes: 1 min, say: Write what you see into the book.}
"""
WORDS = ("slowly", "with both hands", "over the tray", "away from you", "once more", "without haste")


def write_small(folder: Path) -> Path:
    """A lab with a bath, three procedures, a class, a card, a picture and a word list."""
    home = folder / "procedures"
    (home / "pictures").mkdir(parents=True)
    lab = (BASE / "lab.yml").read_text(encoding="utf-8")
    (home / "lab.yml").write_text(lab + "glossary:\n  drag-out: {term: drag-out, means: what rides along}\n")
    (home / "plate.yml").write_text((BASE / "procedure.yml").read_text(encoding="utf-8") + CARD)
    (home / "plate.thin.yml").write_text(SIDE)
    (home / "look.yml").write_text(DRY)
    (home / "clean-many.yml").write_text(procedure_text(7))
    (home / "pictures" / "plate.png").write_bytes(b"a picture")
    return home


class Editor:
    """Edits the files of a lab's folder; `kinds` are all it can do."""

    def __init__(self, home: Path, seed: int) -> None:
        self.home = home
        self.dice = random.Random(seed)
        self.aside = home.parent / "aside"
        self.aside.mkdir()
        self.before = home.parent / "before"
        self.kinds: tuple[Callable[[], None], ...] = (
            self.words, self.words, self.step_time, self.window, self.place_words, self.out_of_use,
            self.place_number, self.substance, self.mixture, self.role, self.piece, self.side, self.side_gone,
            self.add_step, self.drop_step, self.file_gone, self.file_back, self.spoil, self.mend, self.mend,
            self.room, self.noun_added, self.noun_gone, self.term, self.waste, self.picture, self.line_above,
            self.rename, self.cite,
        )  # fmt: skip

    def edit(self, broken: bool) -> str:
        """Make one edit and say which; one that left the lab `broken` is mostly taken back."""
        if broken and self.dice.random() < 0.8:
            shutil.rmtree(self.home)
            shutil.copytree(self.before, self.home)
            return "undone"
        if not broken:
            shutil.rmtree(self.before, ignore_errors=True)
            shutil.copytree(self.home, self.before)
        kind = self.dice.choice(self.kinds)
        kind()
        return kind.__name__

    def _procedures(self) -> list[Path]:
        return [path for path in sorted(self.home.glob("*.yml")) if path.stem not in ("lab", "plate.thin")]

    def _change(self, path: Path, pattern: str, new: Callable[[re.Match[str]], str] | str) -> None:
        """One of the places where a pattern stands, or nothing where it stands nowhere."""
        if not path.exists():
            return
        text = path.read_text(encoding="utf-8")
        found = [*re.finditer(pattern, text)]
        if found:
            one = self.dice.choice(found)
            put = new if isinstance(new, str) else new(one)
            path.write_text(text[: one.start()] + put + text[one.end() :], encoding="utf-8")

    def _lab(self, pattern: str, new: Callable[[re.Match[str]], str] | str) -> None:
        self._change(self.home / "lab.yml", pattern, new)

    def words(self) -> None:
        """Another word in a sentence of a step."""
        for path in self.dice.sample(self._procedures(), min(1, len(self._procedures()))):
            self._change(path, r"(say: [A-Z][a-z]+)[a-z ]*", lambda m: f"{m[1]} {self.dice.choice(WORDS)}")

    def step_time(self) -> None:
        """Another time in the bath."""
        for path in self._procedures():
            self._change(path, r"for: \d+ min", f"for: {self.dice.randint(4, 11)} min")

    def window(self) -> None:
        """Another window at a place."""
        self._lab(
            r"time: \d+ to \d+ min", f"time: {self.dice.randint(3, 7)} to {self.dice.randint(8, 40)} min"
        )

    def place_words(self) -> None:
        """What a place is called, or must look like."""
        self._lab(
            r"title: (Cleaner bath|Sink|Oven)[a-z ]*", lambda m: f"title: {m[1]} {self.dice.choice(WORDS)}"
        )

    def out_of_use(self) -> None:
        """A place shut, or open again."""
        shut = "    out_of_use: {since: 2026-11-20, until: 2026-11-27, because: the heater is being mended}\n"
        self._lab(r"(?<=    title: Cleaner bath\n)|    out_of_use: .*\n", lambda m: "" if m[0] else shut)

    def place_number(self) -> None:
        """Another station number."""
        self._lab(r"number: \d+", f"number: {self.dice.randint(1, 9)}")

    def substance(self) -> None:
        """A substance's hazards, or where its sheet lies."""
        self._lab(
            r"hazards: \[H290, H314[^\]]*\]",
            self.dice.choice(("hazards: [H290, H314]", "hazards: [H290, H314, H318]")),
        )
        self._lab(r"held_at: binder tab \d+", f"held_at: binder tab {self.dice.randint(1, 9)}")

    def mixture(self) -> None:
        """A mixture's volume or its hazards."""
        self._lab(r"volume: \d+ L", f"volume: {self.dice.randint(8, 14)} L")
        self._lab(
            r"hazards: \[H315, H319\]|hazards: \[H315\]",
            self.dice.choice(("hazards: [H315, H319]", "hazards: [H315]")),
        )

    def role(self) -> None:
        """Where a role is reached."""
        self._lab(r"extension 4\d\d", f"extension 4{self.dice.randint(10, 99)}")

    def piece(self) -> None:
        """What a piece of protection is called, or stands against."""
        self._lab(
            r"title: Nitrile gloves[a-z ]*", f"title: Nitrile gloves {self.dice.choice(('', 'long', 'thin'))}"
        )
        self._lab(
            r"protects: body, against: \[[a-z, -]*\]",
            self.dice.choice(
                ("protects: body, against: [chemicals]", "protects: body, against: [chemicals, hot-surface]")
            ),
        )

    def side(self) -> None:
        """The class's own time, or its file back again."""
        path = self.home / "plate.thin.yml"
        path.write_text(SIDE.replace("6 min", f"{self.dice.randint(5, 10)} min"), encoding="utf-8")

    def side_gone(self) -> None:
        """The class's file deleted."""
        (self.home / "plate.thin.yml").unlink(missing_ok=True)

    def add_step(self) -> None:
        """A step more."""
        name = f"more-{self.dice.randint(1, 99)}"
        step = f"      - {{id: {name}, do: act, takes: 1 min, say: Wait by the tray.}}\n"
        self._change(self.home / "look.yml", r"(?<=steps:\n)", step)

    def drop_step(self) -> None:
        """A step less."""
        self._change(self.home / "look.yml", r"      - \{id: more-.*\n", "")

    def file_gone(self) -> None:
        """A procedure's file deleted."""
        path = self.dice.choice([self.home / "look.yml", self.home / "clean-many.yml"])
        if path.exists():
            shutil.move(path, self.aside / path.name)

    def file_back(self) -> None:
        """The deleted files back."""
        for path in self.aside.glob("*.yml"):
            shutil.move(path, self.home / path.name)

    def spoil(self) -> None:
        """A file that no longer reads, or says what is wrong."""
        path = self.dice.choice([*self._procedures(), self.home / "lab.yml"])
        bad = self.dice.choice(("nonsense: [1, 2\n", "title: Twice\n", "unknown_key: yes\n", "\tx: 1\n"))
        path.write_text(f"{path.read_text(encoding='utf-8')}# spoilt\n{bad}", encoding="utf-8")

    def mend(self) -> None:
        """The spoilt files mended."""
        for path in self.home.glob("*.yml"):
            text = path.read_text(encoding="utf-8")
            path.write_text(text.partition("# spoilt\n")[0], encoding="utf-8")

    def room(self) -> None:
        """A fact of the room."""
        self._lab(r"first_aid: wall box[a-z ]*", f"first_aid: wall box {self.dice.choice(WORDS)}")

    def noun_added(self) -> None:
        """A place more."""
        self._lab(
            r"(?<=places:\n)", f"  shelf-{self.dice.randint(1, 99)}: {{title: Drying shelf, makes: dry}}\n"
        )

    def noun_gone(self) -> None:
        """Such a place less."""
        self._lab(r"  shelf-.*\n", "")

    def term(self) -> None:
        """Another meaning in the word list."""
        self._lab(r"means: .*}", f"means: what rides along {self.dice.choice(WORDS)}}}")

    def waste(self) -> None:
        """Another level at which a container is full."""
        self._lab(r"full_at: \d+ %", f"full_at: {self.dice.randint(50, 90)} %")

    def picture(self) -> None:
        """Another picture under the same name, or one more."""
        name = self.dice.choice(("plate.png", "tray.png"))
        (self.home / "pictures" / name).write_bytes(self.dice.choice(WORDS).encode())

    def line_above(self) -> None:
        """A comment that moves everything below it by a line."""
        path = self.dice.choice([*self._procedures(), self.home / "lab.yml"])
        path.write_text(f"# noted\n{path.read_text(encoding='utf-8')}", encoding="utf-8")

    def rename(self) -> None:
        """Another title of a procedure."""
        for path in self._procedures()[:1]:
            self._change(path, r"(?m)^title: .*", f"title: Clean a plate {self.dice.choice(WORDS)}")

    def cite(self) -> None:
        """A place that is not there, named by a step; or one that may be there, or none."""
        at = self.dice.choice(("shelf-1", "shelf-2", "sink", "bench"))
        self._change(self.home / "look.yml", r"do: act,( at: [a-z0-9-]+,)?", f"do: act, at: {at},")
