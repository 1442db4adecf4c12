"""newel changes: what an edit changes, in the trade's words, and what it affects."""

from typing import TYPE_CHECKING

import click

from generator.cli.screen import show

if TYPE_CHECKING:
    from generator.cli.lines import Line
    from generator.pipeline import Checked
    from generator.reading import LabRead


@click.command("changes")
@click.argument("words", nargs=-1, metavar="[FOLDER] [ID]")
@click.option("--since", type=click.IntRange(1), metavar="ISSUE", help="Since this issue, not the last one.")
def command(words: tuple[str, ...], since: int | None) -> int:
    """Say what the files change against what is posted, who must approve it, and which copies it makes wrong.

    Exit status 1 where something differs from what is posted, 0 where nothing does.
    """
    from generator.cli.posting import check_posted
    from generator.cli.target import read_target

    target = read_target(words)
    checked = check_posted(target.read)
    ids = [target.only] if target.only else list(target.read.procedures)
    if checked.has_errors:
        show(_unsure(checked))
    drafts = 0
    for id in ids:
        lines, differs = _of_one(id, target.read, checked, since or 0)
        drafts += differs
        show(lines)
    gone = [id for id in checked.shelf.issues if not target.only and id not in target.read.procedures]
    show(_of_gone(id, checked) for id in gone)
    unsettled = [id for id in gone if not checked.shelf.withdrawn(id)]
    return 1 if drafts or unsettled or checked.has_errors else 0


def _unsure(checked: "Checked") -> "tuple[Line, ...]":
    from generator.cli.lines import text_line
    from generator.problems import Level

    errors = checked.count(Level.ERROR)
    many = f"{errors} error{'s stand' if errors != 1 else ' stands'} in the files"
    return (text_line(f"{many}, so what follows may be wrong; run `newel check`", "error"),)


def _of_gone(id: str, checked: "Checked") -> "Line":
    """A procedure that is posted and has no file any more."""
    from generator.cli.lines import text_line

    head, withdrawn = checked.shelf.head(id), checked.shelf.withdrawn(id)
    number = head.number if head else "?"
    state = f"withdrawn on {withdrawn.withdrawn}" if withdrawn else f"posted in issue {number}"
    return text_line(f"{id}: {state}, and its file is gone", "strong")


def _of_one(id: str, read: "LabRead", checked: "Checked", since: int) -> "tuple[tuple[Line, ...], bool]":
    from generator.cli.lines import text_line
    from generator.cli.posted_lines import change_lines
    from generator.pipeline.changes import compare
    from generator.pipeline.contents import draft_of
    from generator.posting.copies import hanging
    from generator.problems import NewelError

    shelf = checked.shelf
    head = shelf.head(id)
    if head is None:
        return (text_line(f"{id}: never posted, a draft", "strong"),), True
    if since and shelf.issue(id, since) is None:
        raise NewelError("no-issue", f"{id} has no issue {since}", hint=f"its last one is {head.number}")
    drafted = draft_of(read, checked, id)
    told = compare(read, checked, drafted, since).changes
    number, gone = since or head.number, shelf.withdrawn(id)
    lines = (
        [text_line(f"{id}: withdrawn on {gone.withdrawn}, because: {gone.because}", "strong")] if gone else []
    )
    if not told:
        lines.append(text_line(f"{id}: as posted in issue {number}"))
        return tuple(lines), bool(gone)
    count = f"{len(told)} change{'s' if len(told) > 1 else ''}"
    mine = (
        [
            one
            for one in hanging(shelf, checked.lab.today)
            if str(one.copy.card).startswith((f"{id}/", f"{id}."))
        ]
        if checked.lab
        else []
    )
    return (
        *lines,
        text_line(f"{id}: {count} since issue {number}", "strong"),
        *change_lines(told, mine),
    ), True
