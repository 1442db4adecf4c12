"""newel post: freeze what was approved as an issue, and list the copies to replace."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator.cli.screen import screen_width, show

if TYPE_CHECKING:
    from generator.pipeline import Checked
    from generator.pipeline.posting import Ready, Refused
    from generator.problems import Problem
    from generator.reading import LabRead


@click.command("post")
@click.argument("ids", nargs=-1, metavar="[ID]")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), metavar="DIR",
              help="The lab's folder, or the one that holds procedures; this one if not given.")  # fmt: skip
@click.option("--reason", default="", metavar="TEXT", help="Why, in one sentence; it stands in the history.")
@click.option(
    "--approved-by", "approved_by", default="", metavar="ROLE", help="The role that approved it."
)
@click.option("--safety-seen-by", "safety_seen_by", default="", metavar="ROLE",
              help="The safety office's role; needed for a new hazard.")  # fmt: skip
@click.option("--all", "everything", is_flag=True, help="Every posted procedure that differs from its issue.")
@click.option(
    "--wording-only", is_flag=True, help="With --all: leave what changes more than wording a draft."
)
@click.option("--review", is_flag=True, help="Note that it was read again and nothing had to change.")
def command(
    ids: tuple[str, ...],
    folder: Path,
    reason: str,
    approved_by: str,
    safety_seen_by: str,
    everything: bool,
    wording_only: bool,
    review: bool,
) -> int:
    """Post a procedure as it stands in its file: a new issue that no later edit changes.

    Wording alone may be posted by its author; anything else needs the approver; a new hazard needs the safety
    office too. Nobody approves their own.
    """
    from generator.cli.posting import check_posted, said
    from generator.pipeline.posting import Wish, post
    from generator.publishing.files import one_at_a_time
    from generator.reading import find_folder, open_folder, read_lab

    why = said("reason", reason, "why is it posted? It stands in the history of the page")
    who = said("approved-by", approved_by, "which role approved it?")
    home = find_folder(folder)
    with one_at_a_time(home / "posted"):
        read = read_lab(open_folder(home, home.as_posix()))
        checked = check_posted(read)
        wish = Wish(why, who, safety_seen_by.strip(), wording_only, review)
        done = [post(read, checked, id, wish) for id in _wanted(ids, everything, read, checked)]
        for one in done:
            _write(home, one)
    ready = _told(done, read)
    if not done:
        click.echo("Nothing differs from what is posted.")
    return 0 if ready == len(done) or (everything and ready) else 1


def _write(home: Path, done: "Ready | Refused") -> None:
    """The pictures first: one that is kept for an issue that never came does no harm."""
    from generator.pipeline.posting import Refused
    from generator.publishing.files import keep_file, write_new

    if isinstance(done, Refused):
        return
    for picture, kept in done.pictures:
        keep_file(home / picture, home / kept)
    write_new(home / done.file, done.text)


def _told(done: "list[Ready | Refused]", read: "LabRead") -> int:
    """Show what was posted and what was not; how many were posted."""
    from generator.cli.posted_lines import ready_lines, refusal_lines, replace_lines
    from generator.pipeline.posting import Ready

    ready = [one for one in done if isinstance(one, Ready)]
    for refused in (one for one in done if not isinstance(one, Ready)):
        _show_problems(refused.problems, read)
        show(refusal_lines(refused))
    for one in ready:
        show(ready_lines(one))
    if ready:
        show(replace_lines(copy for one in ready for copy in one.replace))
    return len(ready)


def _wanted(ids: tuple[str, ...], everything: bool, read: "LabRead", checked: "Checked") -> list[str]:
    from generator.cli.posting import wanted_procedure
    from generator.pipeline.contents import all_drafted
    from generator.problems import NewelError

    if everything == bool(ids):
        raise NewelError(
            "no-procedure", "name the procedure to post, or write --all", hint="newel post ID ..."
        )
    if ids:
        return [wanted_procedure(read, id) for id in ids]
    drafted = all_drafted(read, checked)
    heads = {id: checked.shelf.head(id) for id in drafted}
    return [id for id, head in heads.items() if head and head.check_code != drafted[id].code]


def _show_problems(problems: "tuple[Problem, ...]", read: "LabRead") -> None:
    from generator.cli.report import Report
    from generator.cli.text_form import listed_lines

    texts = {name: document.text for name, document in read.documents.items()}
    show(listed_lines(Report(problems, texts), width=screen_width()))
