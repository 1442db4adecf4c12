"""newel copies: where each laminated copy hangs, which are wrong, and who looked when."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator.cli.screen import show
from generator.units import Quantity

if TYPE_CHECKING:
    from datetime import date

    from generator.model.posted import CopyRegister, LaminatedCopy
    from generator.posting.shelf import Shelf

_DAY = Quantity(1, "day")


@click.group("copies", invoke_without_command=True)
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), metavar="DIR",
              help="The lab's folder, or the one that holds procedures; this one if not given.")  # fmt: skip
@click.pass_context
def command(ctx: click.Context, folder: Path) -> int:
    """List the laminated copies; exit status 1 where one must be replaced or looked at."""
    ctx.obj = folder
    return 0 if ctx.invoked_subcommand else _list(folder)


@command.command("list", short_help="List every copy with its state.")
@click.pass_obj
def list_copies(folder: Path) -> int:
    """List every copy with its state; exit status 1 where one must be replaced or looked at."""
    return _list(folder)


@command.command("add", short_help="Note a new copy of a posted card.")
@click.argument("card", metavar="PROCEDURE/CARD")
@click.option("--hangs", default="", metavar="WHERE", help="Where it hangs, in words that lead there.")
@click.pass_obj
def add(folder: Path, card: str, hangs: str) -> int:
    """Note a new copy of a card as posted now."""
    from generator.cli.posting import said
    from generator.posting.copies import add_copy

    where = said("hangs", hangs, "where does it hang? In words that lead there")

    def change(shelf: "Shelf", today: "date") -> "CopyRegister":
        return add_copy(shelf.register, _fresh(shelf, card, where, today))

    return _change(folder, change, f"noted a copy of {card}, {where}")


@command.command("replaced", short_help="Note that the posted card hangs in a copy's place.")
@click.argument("card", metavar="PROCEDURE/CARD")
@click.argument("number", type=click.IntRange(1))
@click.option("--taken-down", is_flag=True, help="It was taken down and none hangs in its place.")
@click.pass_obj
def replaced(folder: Path, card: str, number: int, taken_down: bool) -> int:
    """Note that the card as posted now hangs in a copy's place."""
    from generator.posting.copies import change_copy, drop_copy

    def change(shelf: "Shelf", today: "date") -> "CopyRegister | None":
        if taken_down:
            return drop_copy(shelf.register, card, number)
        issue, code = _posted(shelf, card)
        fields = {"issue": int(issue), "code": code, "since": today, "looked_at": None}
        return change_copy(shelf.register, card, number, fields)

    return _change(folder, change, f"noted {card} copy {number}", f"{card} has no copy {number}")


@command.command("looked-at", short_help="Note that somebody has looked at a copy today.")
@click.argument("card", metavar="PROCEDURE/CARD")
@click.argument("number", type=click.IntRange(1))
@click.pass_obj
def looked_at(folder: Path, card: str, number: int) -> int:
    """Note that somebody has looked at a copy today: it hangs where it should and can be read."""
    from generator.posting.copies import change_copy

    def change(shelf: "Shelf", today: "date") -> "CopyRegister | None":
        return change_copy(shelf.register, card, number, {"looked_at": today})

    _change(folder, change, f"noted {card} copy {number}", f"{card} has no copy {number}")
    return _say_if_wrong(folder, card, number)


@command.command("look-every", short_help="Set how often copies are to be looked at.")
@click.argument("time", metavar="TIME")
@click.pass_obj
def look_every(folder: Path, time: str) -> int:
    """Set how often somebody is to look at each copy: "30 days", "6 weeks", or `never`."""
    from generator.problems import NewelError
    from generator.units import UnitsError, read_quantity

    try:
        span = None if time == "never" else read_quantity(time)
    except UnitsError as bad:
        raise NewelError("no-time", f"{time}: {bad.message}", hint="write for example `30 days`") from bad
    if span is not None and (span.dimension != _DAY.dimension or span.si < _DAY.si):
        raise NewelError("no-time", f"{time} is no time of a day or more", hint="write for example `30 days`")

    def change(shelf: "Shelf", _: "date") -> "CopyRegister":
        return shelf.register.model_copy(update={"look_every": span})

    done = "nobody is reminded any more" if span is None else f"every copy is to be looked at every {time}"
    return _change(folder, change, done)


def _say_if_wrong(folder: Path, card: str, number: int) -> int:
    """A copy that somebody has looked at may be out of date all the same."""
    from generator.cli.day import day_of_run
    from generator.cli.lines import text_line
    from generator.cli.posted_lines import state_text
    from generator.posting.copies import wrong_copies

    for one in wrong_copies(_shelf(_home(folder)), day_of_run()):
        if (str(one.copy.card), one.copy.copy_) == (card, number):
            show([text_line(f"It is wrong all the same: {state_text(one)}", "strong")])
            return 1
    return 0


def _list(folder: Path) -> int:
    from generator.cli.day import day_of_run
    from generator.cli.lines import text_line, visible
    from generator.cli.posted_lines import replace_lines, state_text
    from generator.posting.copies import hanging

    copies = hanging(_shelf(_home(folder)), day_of_run())
    show(
        text_line(f"{visible(one.name)}, {visible(str(one.copy.hangs))}: {state_text(one)}", hang=4)
        for one in copies
    )
    wrong = [one for one in copies if one.is_wrong]
    show(replace_lines(wrong))
    late = [one for one in copies if one.look_due and not one.is_wrong]
    if late:
        show([text_line(f"{len(late)} to be looked at: {', '.join(one.name for one in late)}")])
    return 1 if wrong or late else 0


def _fresh(shelf: "Shelf", card: str, hangs: str, today: "date") -> "LaminatedCopy":
    from generator.model.posted import LaminatedCopy

    issue, code = _posted(shelf, card)
    fields = {
        "card": card,
        "copy": "1",
        "issue": issue,
        "code": code,
        "hangs": hangs,
        "since": today.isoformat(),
    }
    return LaminatedCopy.model_validate(fields)


def nearest_card(card: str, known: tuple[str, ...]) -> str:
    """Which posted card was meant, or which there are."""
    from generator.cli.posting import nearest_hint

    ends = [name for name in known if name.rpartition("/")[2] == card]
    return f"did you mean {ends[0]}?" if len(ends) == 1 else nearest_hint(card, known)


def _posted(shelf: "Shelf", card: str) -> tuple[str, str]:
    from generator.posting.copies import posted_card, posted_names
    from generator.problems import NewelError

    found = posted_card(shelf, card)
    if found is None:
        known = posted_names(shelf)
        raise NewelError(
            "no-card",
            f"no card {card} is posted",
            "" if "/" in card else "a card is named with its procedure, as PROCEDURE/CARD",
            nearest_card(card, known) if known else "post its procedure first",
        )
    return found


def _change(
    folder: Path, change: "Callable[[Shelf, date], CopyRegister | None]", done: str, missing: str = ""
) -> int:
    from generator.cli.day import day_of_run
    from generator.posting.copies import write_register
    from generator.problems import NewelError
    from generator.publishing.files import one_at_a_time, write_over

    home = _home(folder)
    with one_at_a_time(home / "posted"):
        register = change(_shelf(home), day_of_run())
        if register is None:
            raise NewelError("no-copy", missing, hint="`newel copies` lists them")
        write_over(home / "posted" / "copies.yml", write_register(register))
    click.echo(done)
    return 0


def _home(folder: Path) -> Path:
    from generator.reading import find_folder

    return find_folder(folder)


def _shelf(home: Path) -> "Shelf":
    from generator.posting.shelf import open_shelf
    from generator.problems import NewelError
    from generator.reading import open_folder

    opened = open_folder(home, home.as_posix())
    shelf = open_shelf(opened.posted, opened.shown)
    if shelf.problems:
        first = shelf.problems[0]
        raise NewelError("no-register", f"{first.where}: {first.message}", hint=first.fix)
    return shelf
