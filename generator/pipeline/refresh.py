"""A lab that one process builds again and again: first what an edited procedure shows, then everything."""

import datetime
from collections.abc import Callable, Collection, Iterable, Mapping, Set
from dataclasses import dataclass, replace
from pathlib import Path

from generator.outputs.page import Page, page_path
from generator.pipeline.build import Outcome, ask, build_wanted
from generator.pipeline.chapter import Wanted
from generator.pipeline.check import check
from generator.pipeline.first_page import first_pages
from generator.pipeline.kept import Kept, PausingKept, SureKept
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
from generator.views.addresses import procedure_address


def _go_on() -> None:
    """No pause at all."""


@dataclass(frozen=True, slots=True)
class Glance:
    """The pages that edited procedures stand on, and every error known; no page where there is one."""

    pages: tuple[Page, ...]
    errors: tuple[Problem, ...]


class Desk:
    """What one process keeps of a lab between two saves; `day` says today.

    A build makes only what an edit touched. A glance comes before it: it reads and checks nothing but the
    edited procedures, over the lab as it stands, so that it takes as long in a lab of ten as of a thousand.
    Where the lab itself was edited, it shows the pages that somebody looks at.
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
            nouns = self._opened(today)
            if nouns.lab is None:
                return Outcome(None, check(read_lab(nouns.folder), today).problems)
        assert self._wanted is not None
        kept = PausingKept(self._kept, pause)
        outcome = build_wanted(self._wanted, Leaves(kept, self._memory, pause))
        kept.pause = _go_on  # the pages of the site are still to be fetched
        return outcome

    def _opened(self, today: datetime.date) -> LabRead:
        """The folder read anew, but for its procedures."""
        nouns = read_nouns(open_folder(self._folder))
        site, edit = site_address(self._folder), edit_address(self._folder)
        self._wanted = ask(nouns, today, True, site, False, edit, preview=True) if nouns.lab else None
        return nouns

    def glance(self, files: Iterable[Path], looked_at: Collection[str] = ()) -> Glance:
        """What saved files show by themselves, and where more than procedures was saved, the pages looked at.

        These are paths ("procedures/x/index.html"). An error of the lab as a whole is known from the last
        build, of its files and of what is looked at from now.
        """
        wanted, today = self._wanted, self._day()
        found = reread_folder(wanted.nouns.folder, files) if wanted else None
        if wanted is not None and found is not None and wanted.today == today:
            folder, saved = found
            self._wanted = replace(wanted, nouns=replace(wanted.nouns, folder=folder))
            return self._seen(self._wanted, saved, _names(folder, saved))
        nouns = self._opened(today)
        errors = _errors(nouns.problems)
        if self._wanted is None or errors:
            self._errors = errors
            return Glance((), errors)
        looked = {id: {""} for id in nouns.folder.procedures if page_path(procedure_address(id)) in looked_at}
        return self._seen(self._wanted, looked, frozenset(nouns.folder.lab) | _names(nouns.folder, looked))

    def expect(self, path: str) -> None:
        """Read and lay out a procedure's page that somebody opens, once: its next edit finds what it leaves.

        From any thread, since nothing of it is kept but what readings and rules remember by themselves.
        """
        name, wanted = path.removeprefix("procedures/").partition("/")[0], self._wanted
        id, _, tail = name.partition(".")
        if wanted and id in wanted.nouns.folder.procedures:
            first_pages(wanted, self._paths, id, {tail})

    def _seen(self, wanted: Wanted, saved: Mapping[str, Set[str]], own: frozenset[str]) -> Glance:
        """The pages of procedures; what the last build said of their `own` files counts no more."""
        told = [first_pages(wanted, self._paths, id, tails) for id, tails in sorted(saved.items())]
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
