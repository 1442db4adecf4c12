"""A lab that one process builds again and again: first what an edited procedure shows, then everything."""

import datetime
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from generator.outputs.page import Page
from generator.pipeline.build import Outcome, ask, build_wanted
from generator.pipeline.chapter import Wanted
from generator.pipeline.check import check
from generator.pipeline.first_page import first_pages
from generator.pipeline.kept import Kept
from generator.pipeline.memory import Memory
from generator.pipeline.parts import Leaves
from generator.problems import Level, Problem, by_place
from generator.reading import (
    Folder,
    LabRead,
    edit_address,
    open_folder,
    read_lab,
    read_nouns,
    reread_folder,
    site_address,
)


def _go_on() -> None:
    """No pause at all."""


class SureKept:
    """A store that keeps in memory what the one behind it does not take: what was made is not made again."""

    def __init__(self, kept: Kept) -> None:
        self._kept = kept
        self._here: dict[str, bytes] = {}

    def get(self, key: str) -> bytes | None:
        """The bytes of a key."""
        found = self._here.get(key)
        return self._kept.get(key) if found is None else found

    def put(self, key: str, content: bytes) -> bool:
        """Keep bytes, which will be there when asked for."""
        if not self._kept.put(key, content):
            self._here[key] = content
        return True


class PausingKept:
    """A store before each look into which a build may be ended; what it has put in by then stays there."""

    def __init__(self, kept: Kept, pause: Callable[[], None]) -> None:
        self._kept = kept
        self.pause = pause

    def get(self, key: str) -> bytes | None:
        """Pause, then the bytes of a key."""
        self.pause()
        return self._kept.get(key)

    def put(self, key: str, content: bytes) -> bool:
        """Keep bytes."""
        return self._kept.put(key, content)


@dataclass(frozen=True, slots=True)
class Glance:
    """The pages that edited procedures stand on, and every error known; no page where there is one."""

    pages: tuple[Page, ...]
    errors: tuple[Problem, ...]


class Desk:
    """What one process keeps of a lab between two saves; `day` says today.

    A build makes only what an edit touched. A glance comes before it: it reads and checks nothing but the
    edited procedures, over the lab as it stands, so that it takes as long in a lab of ten as of a thousand.
    """

    def __init__(self, folder: Path, day: Callable[[], datetime.date], kept: Kept) -> None:
        self._folder = folder
        self._day = day
        self._kept = SureKept(kept)
        self._memory = Memory()
        self._wanted: Wanted | None = None
        self._errors: tuple[Problem, ...] = ()
        self._paths: frozenset[str] = frozenset()

    def build(self, pause: Callable[[], None] = _go_on) -> Outcome:
        """The whole draft; `pause` is called before each piece of work and may end it by raising."""
        outcome = self._built(pause)
        self._errors = _errors(outcome.problems)
        if outcome.site:
            self._paths = frozenset(file.path for file in outcome.site.files)
        return outcome

    def _built(self, pause: Callable[[], None]) -> Outcome:
        today = self._day()
        if self._wanted is None or self._wanted.today != today:
            folder = open_folder(self._folder)
            nouns = read_nouns(folder)
            if nouns.lab is None:
                return Outcome(None, check(read_lab(folder), today).problems)
            self._wanted = self._asked(nouns, today)
        kept = PausingKept(self._kept, pause)
        outcome = build_wanted(self._wanted, Leaves(kept, self._memory, pause))
        kept.pause = _go_on  # the pages of the site are still to be fetched
        return outcome

    def _asked(self, nouns: LabRead, today: datetime.date) -> Wanted:
        site, edit = site_address(self._folder), edit_address(self._folder)
        return ask(nouns, today, True, site, False, edit, preview=True)

    def glance(self, files: Iterable[Path]) -> Glance | None:
        """What these saved files show by themselves; None where only a build can tell.

        An error of the lab as a whole is known from the last build, and of the edited procedures from now.
        """
        wanted = self._wanted
        found = reread_folder(wanted.nouns.folder, files) if wanted else None
        if wanted is None or found is None or wanted.today != self._day():
            self._wanted = None
            return None
        folder, saved = found
        self._wanted = replace(wanted, nouns=replace(wanted.nouns, folder=folder))
        told = [first_pages(self._wanted, self._paths, id, tails) for id, tails in sorted(saved.items())]
        own = _names(folder, saved)
        others = [problem for problem in self._errors if problem.where.file not in own]
        self._errors = by_place([*others, *_errors(problem for _, found in told for problem in found)])
        pages = () if self._errors else tuple(page for pages, _ in told for page in pages)
        return Glance(pages, self._errors)


def _errors(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    return tuple(problem for problem in problems if problem.level is Level.ERROR)


def _names(folder: Folder, ids: Iterable[str]) -> frozenset[str]:
    """The files of procedures, as shown."""
    sides = (name for (base, _), (name, _data) in folder.sides.items() if base in ids)
    return frozenset((*(folder.procedures[id][0] for id in ids), *sides))
