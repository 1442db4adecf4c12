"""Reads what a lab's own formula says about itself: title, Decides, Unit, Source and worked examples."""

import ast
import re
from collections.abc import Mapping
from dataclasses import dataclass, field

_LABELS = r"(?:^|\s)(Decides|Unit|Source|Caution|Who):"


@dataclass(frozen=True, slots=True)
class Worked:
    """One worked example of a docstring: the text after >>>, the text under it, and its line."""

    asked: str
    expected: str
    line: int


@dataclass(frozen=True, slots=True)
class Words:
    """A docstring taken apart. `like` is the input whose unit the answer has, `shown` a unit by name."""

    title: str
    labelled: Mapping[str, str] = field(default_factory=dict)
    like: str = ""
    shown: str = ""
    worked: tuple[Worked, ...] = ()


def read_docstring(function: ast.FunctionDef) -> Words:
    """The parts of a function's docstring; empty where it has none."""
    first = function.body[0] if function.body else None
    match first:
        case ast.Expr(ast.Constant(str() as text) as node):
            return _take_apart(text, node.lineno, function.name)
    return Words(function.name.replace("_", " "))


def _take_apart(text: str, line: int, name: str) -> Words:
    lines = text.splitlines()
    worked, prose = _worked(lines, line)
    joined = " ".join(" ".join(prose).split())
    title, *labels = re.split(_LABELS, joined)
    labelled = {label: value.strip() for label, value in zip(labels[::2], labels[1::2], strict=False)}
    shown = re.search(r"\bShown in ([^\s]+?)\.?(?:\s|$)", joined)
    unit = labelled.get("Unit", "").rstrip(".")
    like = re.fullmatch(r"as (?:the )?([A-Za-z_]\w*)", unit)
    return Words(
        title=_first_sentence(title) or name.replace("_", " "),
        labelled={label: _without_shown(value) for label, value in labelled.items()},
        like=like[1] if like else "",
        shown="" if like else unit or (shown[1] if shown else ""),
        worked=worked,
    )


def _first_sentence(text: str) -> str:
    return re.split(r"(?<=[.!?])\s", text.strip(), maxsplit=1)[0].rstrip(".")


def _without_shown(text: str) -> str:
    return re.sub(r"\s*\bShown in \S+?\.?(?=\s|$)", "", text).strip().rstrip(".")


def _worked(lines: list[str], first: int) -> tuple[tuple[Worked, ...], list[str]]:
    worked: list[Worked] = []
    prose: list[str] = []
    number = 0
    while number < len(lines):
        line = lines[number].strip()
        if line.startswith(">>>"):
            under = lines[number + 1].strip() if number + 1 < len(lines) else ""
            worked.append(Worked(line[3:].strip(), under, first + number))
            number += 1
        else:
            prose.append(line)
        number += 1
    return tuple(worked), prose
