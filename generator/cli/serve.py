"""newel serve: the draft in a browser on this machine, each edit at once."""

from pathlib import Path

import click


@click.command("serve")
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), metavar="DIR",
              help="The lab's folder, or the one that holds procedures; this one if not given.")
@click.option("--port", type=click.IntRange(1, 65535), default=8000, show_default=True,
              help="The port to listen on.")
def command(folder: Path, port: int) -> int:
    """Show the draft at http://127.0.0.1:PORT and follow every save; end it with Ctrl+C."""
    from generator.cli.day import day_of_run
    from generator.reading import find_folder
    from generator.serving import serve

    click.echo("building the draft ...")
    address = f"http://127.0.0.1:{port}/"
    serve(
        find_folder(folder), port, day_of_run, folder.resolve() / ".newel",
        lambda: click.echo(f"open {address} in a browser; each save shows there; end it here with Ctrl+C"),
    )  # fmt: skip
    return 0
