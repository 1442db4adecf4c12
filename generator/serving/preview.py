"""What the preview shows: the last good build, and what is wrong with the files as they stand now."""

import shutil
import threading
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Protocol

from generator.outputs.page import KeptPage, Page, SitePage, page_path, whole_page
from generator.outputs.site import AnyFile, Site
from generator.problems import Level, Location, NewelError, Problem
from generator.serving.shell import VERSION, Shell, lay_shell


class Outcome(Protocol):
    """What a build hands back."""

    @property
    def site(self) -> Site | None:
        """None where errors stopped it."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Everything found."""


class Glance(Protocol):
    """What edited procedures show by themselves."""

    @property
    def pages(self) -> tuple[Page, ...]:
        """The pages that they stand on; none where there is an error."""

    @property
    def errors(self) -> tuple[Problem, ...]:
        """Every error known."""


class Maker(Protocol):
    """Who makes the pages of a lab."""

    def build(self, pause: Callable[[], None]) -> Outcome:
        """Everything; `pause` may end it by raising."""

    def glance(self, files: Iterable[Path], looked_at: Collection[str]) -> Glance | None:
        """What saved files show by themselves, and pages looked at; None where only a build can tell."""

    def expect(self, path: str) -> None:
        """Make ready, from any thread, for a save of what stands on the page at a path."""


class SupersededError(Exception):
    """A build that is not wanted any more, since files were saved meanwhile."""


@dataclass(frozen=True)
class Shown:
    """What is shown at one moment; `errors` keep the files from being shown as they stand now.

    Pages and files are by path and from the last build; `since` says in which version each page became what
    it is. `seen` are pages of glances after it with their version: laid over, a thousand are not copied.
    """

    shell: Shell
    version: int = 0
    errors: tuple[Problem, ...] = ()
    pages: Mapping[str, SitePage] = field(default_factory=dict)
    files: Mapping[str, AnyFile] = field(default_factory=dict)
    since: Mapping[str, int] = field(default_factory=dict)
    seen: Mapping[str, tuple[Page, int]] = field(default_factory=dict)

    def page(self, path: str) -> tuple[SitePage | None, int]:
        """The page at a path ("procedures/x/index.html") and since when; None for what is no page."""
        return self.seen.get(path) or (self.pages.get(path), self.since.get(path, 0))

    def html(self, path: str) -> str | None:
        """The page at a path with all that stands round it, None for what is no page of the lab."""
        page, _ = self.page(path)
        return self.shell.around(page).replace(VERSION, str(self.version)) if page else None

    def file(self, path: str) -> bytes | None:
        """A file of the build, or of the theme; None where there is none."""
        if path in self.files:
            return self.files[path].content
        found = (self.shell.folder / path).resolve()
        inside = found.is_relative_to(self.shell.folder.resolve())
        return found.read_bytes() if inside and found.is_file() else None


class Preview:
    """Takes what is made of the saved files, and tells those who listen."""

    def __init__(self, maker: Maker, work: Path) -> None:
        self._maker = maker
        self._work = work
        self._lock = threading.Lock()
        self._listeners: list[tuple[str, Callable[[], None]]] = []
        self.shown = Shown(Shell(work / "none"))
        self.ended = False

    @contextmanager
    def telling(self, path: str, listener: Callable[[], None]) -> Iterator[None]:
        """Call who looks at a page, from another thread, when anything new is shown while the block runs."""
        with self._lock:
            self._listeners.append((path, listener))
        try:
            yield
        finally:
            with self._lock:
                self._listeners.remove((path, listener))

    def glance(self, files: Iterable[Path]) -> bool:
        """Show what saved files show by themselves; False where only `refresh` can tell."""
        try:
            found = self._maker.glance(files, self._looked_at())
        except NewelError:
            return False
        pages = {page_path(page.address): page for page in found.pages} if found else {}
        shown = self.shown
        if found is None or not all(path in shown.pages and shown.shell.fits(pages[path]) for path in pages):
            return False
        seen = {path: (page, shown.version + 1) for path, page in pages.items()}
        self._show(replace(shown, errors=found.errors, seen={**shown.seen, **seen}))
        return True

    def expect(self, path: str) -> None:
        """Be ready for a save of what stands on a page: the first is then as quick as the next."""
        with suppress(NewelError):
            self._maker.expect(path)

    def refresh(self, pause: Callable[[], None] = lambda: None) -> bool:
        """Build everything; on errors the last good pages stay. False where the `pause` ended it."""
        try:
            outcome = self._maker.build(pause)
            site, problems = outcome.site, outcome.problems
        except SupersededError:
            return False
        except NewelError as error:
            site, problems = None, (as_problem(error),)
        errors = tuple(problem for problem in problems if problem.level is Level.ERROR)
        self._show(replace(self._taken(site) if site else self.shown, errors=errors))
        return True

    def _taken(self, site: Site) -> Shown:
        shown = self.shown
        pages = {page_path(page.address): page for page in site.pages}
        fresh = {path: page for path, page in pages.items() if not _is_same(shown.page(path)[0], page)}
        files, shell = {file.path: file for file in site.files}, shown.shell
        if not (shell.suits(site) and all(map(shell.fits, fresh.values()))):
            shell = lay_shell(site, self._work / f"site-{shown.version}")
        now = shown.version + 1
        since = {path: now if path in fresh else shown.page(path)[1] for path in pages}
        return replace(shown, shell=shell, pages=pages, files=files, since=since, seen={})

    def _show(self, shown: Shown) -> None:
        last, self.shown = self.shown, replace(shown, version=self.shown.version + 1)
        if shown.shell is not last.shell:
            shutil.rmtree(last.shell.folder, ignore_errors=True)
        with self._lock:
            for _, listener in self._listeners:
                listener()

    def end(self) -> None:
        """Let those go who listen; takes no lock, since it is called from within whatever is being done."""
        self.ended = True
        for _, listener in tuple(self._listeners):
            listener()

    def _looked_at(self) -> frozenset[str]:
        with self._lock:
            return frozenset(path for path, _ in self._listeners)


def _is_same(before: SitePage | None, page: SitePage) -> bool:
    """Whether a page is what it was; one that was seen at a glance had all its sections in it."""
    seen = isinstance(before, Page) and isinstance(page, KeptPage)
    return before == (whole_page(page) if seen else page)


def as_problem(error: NewelError) -> Problem:
    """An error that stopped a build, shown where problems are shown."""
    return Problem(error.id, Level.ERROR, Location("newel"), error.what, error.hint)
