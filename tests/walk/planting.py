"""Plants an author's mistakes in the demo lab's procedure and checks it."""

import copy
import dataclasses
import datetime
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from generator.notation import as_yaml, plain, read_text
from generator.pipeline import Checked, check
from generator.problems import Level, Problem
from generator.reading import open_folder, read_lab
from tests.checks.cases import lay_over

DEMO = Path(__file__).parents[2] / "procedures"
ID = "copper-the-holes"
TODAY = datetime.date(2026, 11, 25)


@cache
def _text(id: str) -> tuple[Any, Any]:
    folder = open_folder(DEMO, "procedures")
    procedure = plain(read_text(folder.procedures[id][1], "p").root)  # type: ignore[arg-type]
    lab: dict[str, Any] = {}
    for data in folder.lab.values():
        lab = lay_over(lab, plain(read_text(data, "l").root))  # type: ignore[arg-type]
    return procedure, lab


def demo(id: str = ID) -> tuple[Any, Any]:
    """The demo's procedure and lab as plain data, to be changed freely."""
    return copy.deepcopy(_text(id))


def check_data(procedure: Any, lab: Any, alone: bool = True, id: str = ID) -> Checked:
    """Everything that is found in the changed demo; `alone` without its posted issue and its side files."""
    folder = open_folder(DEMO, "procedures")
    changed = dataclasses.replace(
        folder,
        lab={"procedures/lab.yml": as_yaml(lab).encode()},
        procedures={id: (f"procedures/{id}.yml", as_yaml(procedure).encode())},
        posted={} if alone else {name: data for name, data in folder.posted.items() if f"/{id}/" in name},
        sides={} if alone else {key: side for key, side in folder.sides.items() if key[0] == id},
    )
    return check(read_lab(changed), TODAY, "" if alone else id)


def grave(checked: Checked) -> tuple[Problem, ...]:
    """What an author has to act on: errors and warnings that are not accepted."""
    return tuple(p for p in checked.problems if p.level in (Level.ERROR, Level.WARNING))


@dataclass(frozen=True)
class Planted:
    """A planted mistake: edits, and the rules of which one at least must be named, at a step where told.

    `id` is the procedure that is edited.
    """

    title: str
    edits: tuple[str, ...]
    rules: tuple[str, ...]
    step: str = ""
    id: str = ID


def read_planted(path: Path) -> list[Planted]:
    """`== title`, edit lines, then `--- rule or other-rule @step`; `--- clean` for a correct variant.

    A first line `in ID` names another procedure than the plating.
    """
    out = []
    for block in ("\n" + path.read_text(encoding="utf-8")).split("\n== ")[1:]:
        head, _, expected = block.strip().partition("\n--- ")
        title, *edits = head.split("\n")
        id = edits.pop(0).removeprefix("in ") if edits[0].startswith("in ") else ID
        words = [word for word in expected.split() if word != "or"]
        step = next((word[1:] for word in words if word.startswith("@")), "")
        out.append(Planted(title, tuple(edits), tuple(w for w in words if not w.startswith("@")), step, id))
    return out


def plant(planted: Planted) -> tuple[Any, Any]:
    """The demo with the edits carried out: drop, move, change, after, before, swap; lab, procedure."""
    procedure, lab = demo(planted.id)
    for line in planted.edits:
        verb, _, rest = line.partition(" ")
        if verb == "lab":
            lab = lay_over(lab, _yaml(rest))
        elif verb == "procedure":
            procedure = lay_over(procedure, _yaml(rest))
        else:
            _edit(procedure, verb, rest)
    return procedure, lab


def _yaml(text: str) -> Any:
    return plain(read_text(text.encode(), "edit").root)  # type: ignore[arg-type]


def _find(procedure: Any, id: str) -> tuple[list[Any], int]:
    for stage in procedure["stages"]:
        for index, step in enumerate(stage["steps"]):
            if step["id"] == id:
                return stage["steps"], index
    raise KeyError(id)


def _edit(procedure: Any, verb: str, rest: str) -> None:
    id, _, more = rest.partition(" ")
    steps, at = _find(procedure, id)
    if verb == "drop":
        del steps[at]
    elif verb == "change":
        steps[at] = lay_over(steps[at], _yaml(more))
    elif verb == "move":
        side, _, target = more.partition(" ")
        step = steps.pop(at)
        into, where = _find(procedure, target)
        into.insert(where + (side == "after"), step)
    elif verb == "swap":
        others, there = _find(procedure, more)
        steps[at], others[there] = others[there], steps[at]
    else:
        steps.insert(at + (verb == "after"), _yaml(more))
