"""newel build: check, then write the site, whole or not at all."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator.cli.resting import collector_at_rest
from generator.cli.screen import screen_width, show

if TYPE_CHECKING:
    import datetime

    from generator.pipeline import Outcome
    from generator.pipeline.kept import Kept
    from generator.problems import Problem


@click.command("build")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), metavar="DIR",
              help="The lab's folder, or the one that holds procedures; this one if not given.")
@click.option("--site-dir", type=click.Path(path_type=Path), metavar="DIR",
              help="Where the site is written; `site` inside --folder if not given.")
@click.option("--offline", is_flag=True,
              help="A copy to carry instead: the folder `site-offline`, and the same as a ZIP.")
@click.option("--draft", is_flag=True, help="Show the text as it stands, marked a draft.")
@click.option("--print-all", is_flag=True,
              help="Add one PDF of every sheet that must be posted, with a list of where each goes.")
@click.option("--engine", type=click.Choice(("mkdocs", "properdocs", "zensical")), default="mkdocs",
              show_default=True, help="What lays the pages into their frame; the pages are the same.")
def command(
    folder: Path, site_dir: Path | None, offline: bool, draft: bool, print_all: bool, engine: str
) -> int:
    """Check the lab and write its site; an error leaves the last site as it was."""
    from generator.cli.day import day_of_run
    from generator.cli.unchanged import beside_lab, guess_folder, is_unchanged, look_before, note_site

    today = day_of_run()
    target = site_dir or folder / ("site-offline" if offline else "site")
    config, note = folder / "mkdocs.yml", target.resolve().parent / ".newel" / f"{target.name}.json"
    wishes = (folder.as_posix(), today.isoformat(), draft, print_all, engine)
    before = look_before(guess_folder(folder), config, target, wishes) if not offline else None
    noted = is_unchanged(note, target, before) if before else None
    if noted and not noted["problems"]:
        click.echo(f"nothing has changed since {target.as_posix()} was written: {_pages(noted['pages'])}")
        return 0
    beside = beside_lab(before, guess_folder(folder)) if before else ""
    with collector_at_rest():
        outcome, seal = _build(folder, target, config, Wish(today, draft, print_all, engine, offline, beside))
    if outcome.site is None:
        show_refusal()
        return 1
    if before:
        told = sum(problem.level != "accepted" for problem in outcome.problems)
        note_site(note, seal, before, {"pages": len(outcome.site.pages), "problems": told})
    pages = _pages(len(outcome.site.pages))
    click.echo(f"wrote {target.as_posix()}: {pages}{', a draft' if draft else ''}")
    if offline:
        from generator.publishing.publish import zip_path

        click.echo(f"packed {zip_path(target).as_posix()}: make a new one after each posting")
    if print_all:
        from generator.views.addresses import PRINT_ALL_PATH

        click.echo(f"print {(target / PRINT_ALL_PATH).as_posix()}: its first page says where each sheet goes")
    return 0


@dataclass(frozen=True, slots=True)
class Wish:
    """What the person asked for, and the day; `beside` names all that is read besides the lab."""

    today: "datetime.date"
    draft: bool
    print_all: bool
    engine: str
    offline: bool
    beside: str


def _build(folder: Path, target: Path, config: Path, wish: Wish) -> "tuple[Outcome, str]":
    """Build and publish with what the store has; where it has lost something meanwhile, without it.

    Returns the seal of the site's folder too.
    """
    from generator.pipeline.kept import NOTHING_KEPT
    from generator.problems import NewelError
    from generator.publishing.store import open_store
    from generator.reading import find_folder

    lab = find_folder(folder)
    with open_store(target.resolve().parent / ".newel") as kept:
        try:
            return _build_with(kept, lab, target, config, wish)
        except NewelError as bad:
            if bad.id != "store-lost":
                raise
    return _build_with(NOTHING_KEPT, lab, target, config, wish, again=True)


def _build_with(
    kept: "Kept", lab: Path, target: Path, config: Path, wish: Wish, again: bool = False
) -> "tuple[Outcome, str]":
    from generator.pipeline import build_site
    from generator.problems import NewelError
    from generator.publishing.publish import publish

    outcome = build_site(lab, wish.today, wish.draft, whole_print=wish.print_all, kept=kept)
    if not again:
        _show_problems(outcome.problems)
    if outcome.site is None:
        return outcome, ""
    own = config if config.is_file() else None
    try:
        with _progress() as progress:
            seal = publish(
                outcome.site, target, own, progress, wish.engine, wish.offline, kept, wish.beside
            )
    except OSError as bad:
        if bad.errno is None:
            raise  # not said by the system: a template that is not there, say, is a fault of ours
        raise NewelError("not-written", f"{target} cannot be written ({bad.strerror})",
                         "the last site stands as it was", "look at its rights and its disk") from bad
    return outcome, seal


def _pages(count: int) -> str:
    return f"{count} page{'s' * (count != 1)}"


def show_refusal() -> None:
    """Say that nothing was published."""
    from generator.cli.lines import text_line

    show([text_line("Nothing was published; the last site stands as it was.")])


def _show_problems(problems: "tuple[Problem, ...]") -> None:
    from generator.cli.report import Report
    from generator.cli.text_form import count_line, listed_lines

    report = Report(problems, _texts(problems))
    show([*listed_lines(report, width=screen_width()), count_line(report)])


def _texts(problems: "tuple[Problem, ...]") -> dict[str, str]:
    """The files that the problems stand in, for quoting; a file that cannot be read is not quoted."""
    found: dict[str, str] = {}
    for name in {problem.where.file for problem in problems}:
        try:
            found[name] = Path(name).read_text(encoding="utf-8-sig")
        except (OSError, UnicodeDecodeError):
            continue
    return found


@contextmanager
def _progress() -> "Iterator[Callable[[int, int], None] | None]":
    """A bar on a screen; nothing in a pipe."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import Progress

    with Progress(console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("Laying out pages", total=None)
        yield lambda done, total: bar.update(task, completed=done, total=total)
