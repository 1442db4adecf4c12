"""newel calculate: work a formula out, or turned round for one of its inputs."""

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator.cli.screen import show

if TYPE_CHECKING:
    from generator.cli.lines import Line
    from generator.formulas import FormulaError
    from generator.model import Lab
    from generator.sums import Known

_EXAMPLE = 'newel calculate plating_time copper="22 um" density="1.9 A/dm2" efficiency="97 %"'


@click.command("calculate", epilog=f"Example: {_EXAMPLE}. A list is written row by row: "
               'holes="180 x 0.9 mm, 26 x 1.3 mm".')
@click.argument("name", required=False, default="", metavar="[FORMULA]")
@click.argument("words", nargs=-1, metavar="[NAME=VALUE]...")
@click.option("--work-out", "wanted", default="", metavar="INPUT",
              help='Solve for this input; give answer="..." in its place.')
@click.option("--in", "unit", default="", metavar="UNIT", help="Show the answer in this unit.")
@click.option("--folder", type=click.Path(path_type=Path), metavar="DIR",
              help="A lab's folder: its defaults, its limits and its own formulas count.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True,
              help="How to print it.")
def command(
    name: str, words: tuple[str, ...], wanted: str, unit: str, folder: Path | None, form: str
) -> int:
    """Work a formula out; without a formula, list them all."""
    from generator.cli.calculated import json_text, text_lines
    from generator.cli.calculating import work_out
    from generator.cli.typed_values import typed_values
    from generator.formulas import FormulaError
    from generator.sums import Known

    lab, known = _lab(folder) if folder else (None, Known())
    if not name:
        _show_list(known, form)
        return 0
    formula = known.find(name)
    try:
        if formula is None:
            raise FormulaError(f"there is no formula `{name}`", known.nearest(name))
        settings = lab.calculators.get(name) if lab else None
        done = work_out(formula, typed_values(formula, words, wanted), settings, wanted, unit)
    except FormulaError as error:
        _show_refusal(name, error, form)
        return 1
    if form == "json":
        click.echo(json_text(done))
    else:
        show(text_lines(done))
    return 0


def _lab(folder: Path) -> "tuple[Lab, Known]":
    from generator.problems import NewelError
    from generator.reading import find_folder, open_folder, read_lab
    from generator.sums import Known

    path = find_folder(folder)
    read = read_lab(open_folder(path, path.as_posix()))
    if read.lab is None:
        raise NewelError("no-lab", f"{path.as_posix()} holds no lab that can be read",
                         "its settings and its own formulas are not known", f"newel check {path.as_posix()}")
    return read.lab, Known(read.formulas.formulas)


def _show_refusal(name: str, error: "FormulaError", form: str) -> None:
    from generator.cli.lines import Line, Piece

    if form == "json":
        click.echo(json.dumps({"formula": name, "error": error.what, "fix": error.fix}, ensure_ascii=False))
        return
    lines = [Line((Piece(f"error[{name}]", "error"), Piece(f": {error.what}", "strong")), hang=4)]
    if error.fix:
        lines.append(Line((Piece("   = ", "frame"), Piece("fix: ", "fix"), Piece(error.fix)), hang=10))
    show(lines, sys.stderr)


def _show_list(known: "Known", form: str) -> None:
    if form == "json":
        data = [{"formula": one.name, "title": one.title, "decides": one.decides,
                 "inputs": [each.name for each in one.inputs]} for one in known.all()]  # fmt: skip
        click.echo(json.dumps(data, ensure_ascii=False, indent=2))
        return
    show(_list_lines(known))


def _list_lines(known: "Known") -> "Iterator[Line]":
    from generator.cli.lines import Line, Piece, text_line
    from generator.formulas.library import FIELDS

    fields = (*FIELDS, *((("This lab's own", known.own),) if known.own else ()))
    width = max(len(one.name) for one in known.all())
    for title, formulas in fields:
        yield text_line(title, "strong")
        for one in formulas:
            pieces = (Piece(f"  {one.name:<{width}}  "), Piece(one.title))
            yield Line(pieces, hang=width + 4)
    yield text_line(f"Example: {_EXAMPLE}", hang=9)
