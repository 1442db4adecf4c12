"""What the preview shows: the last good build, and what is wrong with the files as they stand now."""

import shutil
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Protocol

from generator.outputs.page import SitePage, heads_of, join_sections, page_path
from generator.outputs.site import AnyFile, Site
from generator.problems import Level, Location, NewelError, Problem
from generator.publishing.engine import run_engine


class Outcome(Protocol):
    """What a build hands back."""

    @property
    def site(self) -> Site | None:
        """None where errors stopped it."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Everything found."""


class Preview:
    """The frame of every page is laid out once by the engine; after an edit only bodies are made anew.

    Pages that come or go, or another title, need the engine again; that is seen by comparing the frames.
    """

    def __init__(self, build: Callable[[], Outcome], work: Path) -> None:
        self._build = build
        self._work = work
        self._folder = work / "none"
        self._lock = threading.Lock()
        self._frame: tuple[object, ...] = ()
        self._pages: dict[str, SitePage] = {}
        self._files: dict[str, AnyFile] = {}
        self.problems: tuple[Problem, ...] = ()
        self.version = 0

    def refresh(self) -> None:
        """Build again; on errors the last good pages stay, with the problems beside them."""
        with self._lock:
            site, self.problems = self._built()
            if site is not None:
                self._take(site)
            self.version += 1

    def _built(self) -> tuple[Site | None, tuple[Problem, ...]]:
        try:
            outcome = self._build()
        except NewelError as error:
            return None, (as_problem(error),)
        return outcome.site, outcome.problems

    def _take(self, site: Site) -> None:
        frame = tuple(_frame_of(page) for page in site.pages)
        if frame != self._frame:
            fresh, last = self._work / f"site-{self.version}", self._folder
            run_engine(site, fresh, None, None)
            self._frame, self._folder = frame, fresh
            shutil.rmtree(last, ignore_errors=True)
        self._pages = {page_path(page.address): page for page in site.pages}
        self._files = {file.path: file for file in site.files}

    @property
    def errors(self) -> tuple[Problem, ...]:
        """What keeps the files from being shown as they stand now."""
        return tuple(problem for problem in self.problems if problem.level is Level.ERROR)

    def body(self, path: str) -> str | None:
        """The body of the page at a path ("procedures/x/index.html"), None for what is no page of the lab."""
        page = self._pages.get(path)
        return join_sections(page) if page else None

    def file(self, path: str) -> bytes | None:
        """A file of the build, or of the theme's frame; None where there is none."""
        if path in self._files:
            return self._files[path].content
        found = (self._folder / path).resolve()
        inside = found.is_relative_to(self._folder.resolve())
        return found.read_bytes() if inside and found.is_file() else None


def as_problem(error: NewelError) -> Problem:
    """An error that stopped a build, shown where problems are shown."""
    return Problem(error.id, Level.ERROR, Location("newel"), error.what, error.hint)


def _frame_of(page: SitePage) -> tuple[object, ...]:
    """What the engine puts round a body: address, title, place in the navigation, contents list."""
    return page.address, page.title, page.listed, heads_of(page)
