"""newel screen: what a bath's composition, or one written on the command line, implies by the GHS rules."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from generator.cli.screen import screen_width, show

if TYPE_CHECKING:
    from generator.hazards import Composition, NotScreened
    from generator.problems import Location, Problem
    from generator.reading import LabRead


_AS = {"density": "write it as 1.2 kg/L", "ph": "write it as 9 to 10", "viscosity": "write it as 18 mm2/s"}


@click.command("screen")
@click.argument("bath", required=False, metavar="[BATH]")
@click.option("--part", "parts", multiple=True, metavar="NAME=AMOUNT",
              help='One ingredient: "sulphuric acid=190 g/L", "water=rest". After the amount may stand: as '
              "H2SO4, of 96 % w/w, at 1.84 kg/L, with H302 H319.")  # fmt: skip
@click.option("--density", default="", metavar="AMOUNT", help='Of the whole mixture: "1.2 kg/L".')
@click.option("--ph", default="", metavar="WINDOW", help='Of the whole mixture: "up to 1", "9 to 10".')
@click.option(
    "--viscosity", default="", metavar="AMOUNT", help='Of the whole mixture at 40 degC: "18 mm2/s".'
)
@click.option("--folder", type=click.Path(path_type=Path), default=Path(), metavar="DIR",
              help="The lab's folder, or the one that holds procedures; this one if not given.")  # fmt: skip
@click.option("--format", "form", type=click.Choice(("text", "json")), default="text", help="How it is told.")
def command(
    bath: str | None, parts: tuple[str, ...], density: str, ph: str, viscosity: str, folder: Path, form: str
) -> int:
    """Screen a mixture of the lab, BATH by its id or that of its place, or the parts named here.

    A screening aid: the supplier's sheet, the safety office and the law in force decide.
    """
    from generator.hazards import NotScreened, screen

    if bath and (parts or density or ph or viscosity):
        raise click.UsageError("name a BATH, or its parts with --part, not both")
    if not bath and not parts:
        raise click.UsageError('name a BATH, or at least one part: --part "sulphuric acid=190 g/L"')
    found, texts, where = _in_lab(folder, bath) if bath else (*_stated(parts, density, ph, viscosity), None)
    if isinstance(found, tuple):
        return _refuse(found, texts, form)
    result = screen(found)
    if isinstance(result, NotScreened):
        return _refuse(_located(result, parts, where), texts, form)
    from generator.cli.screen_form import screen_json, screen_lines

    if form == "json":
        sys.stdout.write(screen_json(result))
        show(screen_lines(result, heading_only=True), sys.stderr)
    else:
        show(screen_lines(result))
    return 0


def _in_lab(
    folder: Path, bath: str
) -> "tuple[Composition | tuple[Problem, ...], dict[str, str], Location | None]":
    from generator.model import Text
    from generator.problems import Level, Problem
    from generator.reading import find_folder, open_folder, read_lab
    from generator.study.composition import composition_of

    path = find_folder(folder)
    read = read_lab(open_folder(path, path.as_posix()))
    texts = {name: document.text for name, document in read.documents.items()}
    if read.lab is None:
        return read.problems, texts, None
    id = _mixture_id(read, bath)
    made = read.lab.mixtures[Text(id)]
    found = composition_of(read.lab, id)
    if found is not None:
        return found, texts, made.spot("made_of")
    what = "names a part that is not declared" if made.made_of else "says nothing of what it is made of"
    fix = "declare every part" if made.made_of else "write `made_of` with an amount for each part"
    problem = Problem("hazard-screen", Level.ERROR, made.spot("made_of"), f"{id} {what}", fix)
    return (problem,), texts, None


def _mixture_id(read: "LabRead", bath: str) -> str:
    """The id of the mixture that is meant, or of what a place of this id holds."""
    from generator.model import Text
    from generator.problems import NewelError
    from generator.study import nearest

    assert read.lab is not None
    place = read.lab.places.get(Text(bath))
    id = str(place.holds) if place and place.holds else bath
    if Text(id) in read.lab.mixtures:
        return id
    hint = nearest(bath, map(str, read.lab.mixtures))
    raise NewelError("no-mixture", f'{read.folder.shown} holds no mixture "{bath}"',
                     "a mixture's id stands under `mixtures`", hint)  # fmt: skip


def _stated(
    parts: tuple[str, ...], density: str, ph: str, viscosity: str
) -> "tuple[Composition | tuple[Problem, ...], dict[str, str]]":
    from generator.hazards import Composition, Ingredient, is_thin, stated_ingredient
    from generator.problems import Location
    from generator.units import UnitsError, read_numbers_window, read_quantity

    problems: list[Problem] = []
    ingredients: list[Ingredient] = []
    for number, text in enumerate(parts, 1):
        read = stated_ingredient(text)
        if isinstance(read, Ingredient):
            ingredients.append(read)
        else:
            problems.append(_problem(read.message, read.fix, Location(_option(number), 0, 0)))
    given: dict[str, Any] = {}
    asked = (
        ("density", density, lambda words: read_quantity(words).to("kg/L")),
        ("ph", ph, read_numbers_window),
        ("viscosity", viscosity, lambda words: read_quantity(words).to("mm2/s")),
    )
    for name, words, reader in asked:
        try:
            given[name] = reader(words) if words else None
        except UnitsError as bad:
            problems.append(_problem(bad.message, bad.fix, Location(f"--{name}", 0, 0)))
        except ValueError as bad:
            problems.append(_problem(str(bad), _AS[name], Location(f"--{name}", 0, 0)))
    if problems:
        return tuple(problems), {}
    thin = is_thin(given["viscosity"]) if given["viscosity"] else None
    return Composition("the parts named", tuple(ingredients), given["density"], given["ph"], thin), {}


def _option(number: int) -> str:
    return f"--part {number}"


def _located(
    result: "NotScreened", parts: tuple[str, ...], where: "Location | None"
) -> "tuple[Problem, ...]":
    """Why there can be no screening, at the mixture in its file or at the part on the command line."""
    from generator.problems import Location

    def place(name: str) -> Location:
        number = next((n for n, text in enumerate(parts, 1) if text.partition("=")[0].strip() == name), 0)
        return where or Location(_option(number) if number else "--part", 0, 0)

    return tuple(_problem(one.message, one.fix, place(one.ingredient)) for one in result.problems)


def _problem(message: str, fix: str, where: "Location") -> "Problem":
    from generator.problems import Level, Problem

    return Problem("hazard-screen", Level.ERROR, where, f"not screened: {message}".rstrip("."), fix)


def _refuse(problems: "tuple[Problem, ...]", texts: dict[str, str], form: str) -> int:
    from generator.cli.json_form import json_form
    from generator.cli.report import Report
    from generator.cli.text_form import count_line, listed_lines

    report = Report(problems, texts)
    if form == "json":
        sys.stdout.write(json_form(report))
    else:
        show([*listed_lines(report, width=screen_width()), count_line(report)])
    return 1
