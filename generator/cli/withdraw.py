"""newel withdraw: say that a procedure must not be followed any more."""

from pathlib import Path

import click

from generator.cli.screen import show


@click.command("withdraw")
@click.argument("id")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), metavar="DIR",
              help="The lab's folder, or the one that holds procedures; this one if not given.")  # fmt: skip
@click.option("--because", default="", metavar="TEXT",
              help="Why, in one sentence; it stands on the page and the cards.")  # fmt: skip
def command(id: str, folder: Path, because: str) -> int:
    """Withdraw the posted issue of a procedure; to bring it back, post it again."""
    from generator.cli.day import day_of_run
    from generator.cli.posted_lines import replace_lines
    from generator.cli.posting import nearest_hint, plain_id, said
    from generator.pipeline.posting import withdraw
    from generator.posting.copies import wrong_copies
    from generator.posting.shelf import open_shelf
    from generator.problems import NewelError
    from generator.publishing.files import one_at_a_time, write_new
    from generator.reading import find_folder, open_folder

    why, id = said("because", because, "why must nobody follow it any more?"), plain_id(id)
    home = find_folder(folder)
    with one_at_a_time(home / "posted"):
        opened = open_folder(home, home.as_posix())
        shelf = open_shelf(opened.posted, opened.shown)
        made = withdraw(shelf, id, why, day_of_run())
        if made is None:
            gone = shelf.withdrawn(id)
            what = f"{id} is withdrawn already, since {gone.withdrawn}" if gone else f"{id} was never posted"
            hint = "" if gone else nearest_hint(id, sorted(shelf.issues))
            raise NewelError("not-posted", what, hint=hint)
        file, text = made
        write_new(home / file, text)
    again = open_folder(home, home.as_posix())
    after = open_shelf(again.posted, again.shown)
    click.echo(f"withdrawn {id}: {file}")
    click.echo("run `newel build`: its page says so, and its cards print a sheet that forbids their use")
    show(
        replace_lines(
            one for one in wrong_copies(after, day_of_run()) if one.copy.card.startswith((f"{id}/", f"{id}."))
        )
    )
    return 0
