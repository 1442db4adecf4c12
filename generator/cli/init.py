"""newel init: a new lab's folder that checks clean, to change bit by bit into one's own."""

from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import click

# Where each file of the starter goes.
FILES = (
    ("lab.yml", "procedures/lab.yml"),
    ("weigh-a-coupon.yml", "procedures/weigh-a-coupon.yml"),
    ("mkdocs.yml", "mkdocs.yml"),
    ("welcome.md", "pages/about.md"),
    ("gitignore.txt", ".gitignore"),
    ("editorconfig.txt", ".editorconfig"),
    ("pre-commit-config.yml", ".pre-commit-config.yaml"),
    ("pre-commit-hook.txt", "hooks/pre-commit"),
    ("github.yml", ".github/workflows/lab.yml"),
    ("gitlab.yml", ".gitlab-ci.yml"),
)
SCHEMAS = "procedures/.schema"


@click.command("init")
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False), default=Path(), metavar="[DIR]")
def command(folder: Path) -> int:
    """Write a small lab with one procedure, with settings for editors and recipes for publishing.

    DIR is made if it is not there. A file that is there already is never touched.
    """
    from generator.problems import NewelError

    wanted = {**dict(_starter()), **dict(_schemas())}
    there = [name for name in wanted if (folder / name).exists()]
    if there:
        raise NewelError(
            "already-there",
            f"{(folder / there[0]).as_posix()} is there already",
            "a new lab never writes over a file",
            "name a new folder: newel init my-lab",
        )
    try:
        for name, text in wanted.items():
            target = folder / name
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8", newline="\n")
        (folder / "hooks/pre-commit").chmod(0o755)
    except OSError as bad:
        raise NewelError(
            "not-written",
            f"{folder} cannot be written ({bad.strerror})",
            hint="look at its rights and its disk",
        ) from bad
    place = "" if folder == Path() else f"cd {folder.as_posix()}, then "
    click.echo(f"wrote a lab with one procedure to {folder.resolve().as_posix()}")
    click.echo(f"next: {place}newel check, newel serve, newel build; edit procedures/weigh-a-coupon.yml")
    return 0


def _starter() -> Iterator[tuple[str, str]]:
    home = files("generator.cli.starter")
    return ((target, home.joinpath(source).read_text(encoding="utf-8")) for source, target in FILES)


def _schemas() -> Iterator[tuple[str, str]]:
    from generator.cli.schema import schema_files

    return ((f"{SCHEMAS}/{name}", text) for name, text in schema_files().items())
