"""The nouns of a lab, written over several files, as one mapping."""

from typing import Any

from generator.model import MARKS, WHERE
from generator.notation import ListNode, MapNode
from generator.problems import Level, Location, Problem
from generator.reading.shape import shape, shape_map


def merge_lab(roots: list[tuple[str, MapNode]]) -> tuple[dict[str, Any], tuple[Problem, ...]]:
    """All files' nouns together; an id that two files give is a problem, and the first counts."""
    problems: list[Problem] = []
    data: dict[str, Any] = {}
    marks: dict[str, Location] = {}
    for _, root in roots:
        for key, value in root.items:
            name = str(key)
            if name not in data:
                data[key] = shape(value)
                marks[name] = value.where
            elif isinstance(value, MapNode) and isinstance(data[name], dict) and name != "lab":
                _join(data[name], shape_map(value), name, problems)
            elif isinstance(value, ListNode) and isinstance(data[name], list):
                data[name] += [shape(item) for item in value.items]
            elif key.where.file != marks[name].file:
                problems.append(_twice("given-twice", name, key.where, marks[name]))
    data[WHERE] = roots[0][1].where if roots else Location("")
    data[MARKS] = marks
    return data, tuple(problems)


def _join(into: dict[str, Any], more: dict[str, Any], noun: str, problems: list[Problem]) -> None:
    for id, value in more.items():
        if id in (WHERE, MARKS):
            continue
        if id in into:
            first = next(key for key in into if key == id)
            where = getattr(id, "where", more[WHERE])
            problems.append(_twice("id-twice", f"{noun}: {id}", where, getattr(first, "where", into[WHERE])))
            continue
        into[id] = value
        into[MARKS] = {**into[MARKS], id: more[MARKS][id]}


def _twice(rule: str, name: str, where: Location, first: Location) -> Problem:
    return Problem(
        rule,
        Level.ERROR,
        where,
        f'"{name}" is already given at {first.file}:{first.line}',
        "keep one of the two, or give this one an id of its own",
    )
