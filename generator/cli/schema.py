"""newel schema: JSON Schemas of the author's files, for editors."""

import json
import sys
from pathlib import Path

import click


@click.command("schema")
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), metavar="DIR",
              help="Write one file a kind here; without it, all of them go to the screen.")  # fmt: skip
def command(out: Path | None) -> int:
    """Write the JSON Schemas (draft-07) of a lab, a procedure, a class file and a language file."""
    from generator.reading import json_schemas

    if out is None:
        sys.stdout.write(_text(json_schemas()))
        return 0
    _write(out, schema_files())
    return 0


def schema_files() -> dict[str, str]:
    """The text of each schema's file by its name, one a kind of author's file."""
    from generator.reading import json_schemas

    return {f"{kind}.schema.json": _text(schema) for kind, schema in json_schemas().items()}


def _text(data: object) -> str:
    return json.dumps(data, indent=2, ensure_ascii=True) + "\n"


def _write(folder: Path, files: dict[str, str]) -> None:
    from generator.problems import NewelError

    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, text in files.items():
            (folder / name).write_text(text, encoding="utf-8")
            click.echo(f"wrote {(folder / name).as_posix()}")
    except OSError as bad:
        raise NewelError("not-written", f"{folder} cannot be written ({bad.strerror})",
                         hint="name another folder, or look at its rights") from bad  # fmt: skip
