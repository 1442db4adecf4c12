"""The site of a lab folder, from the pipeline; errors of the author stop it before the engine starts."""

import os
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Protocol

from generator.outputs.page import Page, Section
from generator.outputs.site import Site
from generator.outputs.templating import paragraphs
from generator.problems import Level, NewelError, Problem


class Outcome(Protocol):
    """What the pipeline hands back: a site when there was no error, and every problem found."""

    @property
    def site(self) -> Site | None: ...

    @property
    def problems(self) -> tuple[Problem, ...]: ...


class Wishes(Protocol):
    """What the person asked for in mkdocs.yml."""

    draft: bool
    today: str | None


def build_lab_site(folder: Path, wishes: Wishes) -> Site:
    """Read, check and build a lab; raises NewelError with all errors found when it may not be published."""
    from generator.pipeline import build_site  # costs its time only where a build is wanted

    outcome: Outcome = build_site(folder, build_day(wishes.today), wishes.draft)
    if outcome.site is None:
        raise NewelError("not-published", list_problems(outcome.problems), hint="Nothing was published.")
    return outcome.site


def build_day(wanted: str | None) -> date:
    """Return the day a build speaks of: as asked, else after SOURCE_DATE_EPOCH, else today."""
    if wanted:
        return date.fromisoformat(wanted)
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    return datetime.fromtimestamp(int(epoch), UTC).date() if epoch else datetime.now().astimezone().date()


def copied_on(day: str) -> dict[str, str]:
    """The day of a copy to carry (ISO) and in words, for the theme; both empty for a site on a server."""
    made = date.fromisoformat(day) if day else None
    return {"copied": day, "copied_words": f"{made.day} {made:%B %Y}" if made else ""}


def list_problems(problems: tuple[Problem, ...]) -> str:
    """Return the errors as text, one after the other."""
    errors = [problem for problem in problems if problem.level is Level.ERROR]
    lines = [f"{p.where}: error[{p.rule}]: {p.message}\n   fix: {p.fix}" for p in errors]
    return "\n".join([f"{len(errors)} error{'s' * (len(errors) != 1)} in the lab's files", *lines])


def problem_site(error: NewelError, last: Site | None) -> Site:
    """Return the last good site, or one page that says what is wrong, for a server that must go on."""
    if last is not None:
        return last
    body = f"<section>{paragraphs(error.what)}</section>"
    return Site("Not built", (Page("", "The lab has errors", (Section(1, "", "The lab has errors", body),)),))
