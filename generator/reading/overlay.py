"""A class's own values laid over its procedure's data."""

from typing import Any

from generator.model import MARKS, WHERE, Text
from generator.problems import Level, Location, Problem, missing

_WHOLE = ("title", "approver")
_STEP_FIELDS = (
    "for",
    "takes",
    "set",
    "power",
    "repeat",
    "use",
    "record",
    "since",
    "given",
    "why",
    "ask",
    "picture",
)
_MERGED = ("set", "record", "use", "given")


def lay_over(base: dict[str, Any], side: dict[str, Any]) -> tuple[dict[str, Any], tuple[Problem, ...]]:
    """The procedure's data with the class's values in it; what a class may not change is a problem."""
    problems: list[Problem] = []
    out = dict(base)
    marks = dict(base[MARKS])
    for field in _WHOLE:
        if field in side:
            out[field] = side[field]
            marks[field] = side[MARKS][field]
    if isinstance(side.get("job"), dict):
        out["job"] = _merge(base.get("job"), side["job"])
    if isinstance(side.get("accept"), list) and isinstance(base.get("accept", []), list):
        out["accept"] = [*base.get("accept", []), *side["accept"]]
    if isinstance(side.get("cards"), list):
        out["cards"] = _cards(_list(base.get("cards")), side["cards"])
        marks["cards"] = side[MARKS]["cards"]
    steps = side.get("steps")
    if isinstance(steps, dict):
        out["stages"] = [_stage(stage, steps, problems) for stage in _list(base.get("stages"))]
        problems += _unknown(base, steps)
        problems += _without_fields(steps)
    out[MARKS] = marks
    return out, tuple(problems)


def _cards(base: list[Any], own: list[Any]) -> list[Any]:
    """The procedure's cards: one that the class has too is the class's, and what else it has comes behind."""
    named = {str(card["id"]): card for card in own if isinstance(card, dict) and "id" in card}
    ids = [str(card.get("id")) if isinstance(card, dict) else "" for card in base]
    kept = [named.get(id, card) for id, card in zip(ids, base, strict=True)]
    return [*kept, *(card for card in own if not isinstance(card, dict) or str(card.get("id")) not in ids)]


def _list(value: object) -> list[Any]:
    return value if isinstance(value, list) else []


def _merge(base: object, over: dict[str, Any]) -> dict[str, Any]:
    if not isinstance(base, dict):
        return dict(over)
    return {**base, **over, MARKS: {**base[MARKS], **over[MARKS]}, WHERE: over[WHERE]}


def _stage(stage: Any, steps: dict[str, Any], problems: list[Problem]) -> Any:
    if not isinstance(stage, dict):
        return stage
    return {**stage, "steps": [_step(step, steps, problems) for step in _list(stage.get("steps"))]}


def _step(step: Any, steps: dict[str, Any], problems: list[Problem]) -> Any:
    over = steps.get(str(step.get("id"))) if isinstance(step, dict) else None
    if not isinstance(over, dict):
        return step
    out = {**step, MARKS: dict(step[MARKS])}
    for field, value in over.items():
        if field in (WHERE, MARKS):
            continue
        if field not in _STEP_FIELDS:
            problems.append(_fixed(field, over))
            continue
        same = field in _MERGED and isinstance(value, dict)
        out[field] = _merge(step.get(field), value) if same else value
        out[MARKS][field] = over[MARKS][field]
    return out


def _fixed(field: str, over: dict[str, Any]) -> Problem:
    return Problem(
        "class-changes-order",
        Level.ERROR,
        over[MARKS].get(field, over[WHERE]),
        f'a class may not change "{field}" of a step',
        f"delete the line; a class has its own {', '.join(_STEP_FIELDS[:5])} and job values only",
    )


def _unknown(base: dict[str, Any], steps: dict[str, Any]) -> list[Problem]:
    known = {
        str(step.get("id"))
        for stage in _list(base.get("stages"))
        if isinstance(stage, dict)
        for step in _list(stage.get("steps"))
        if isinstance(step, dict)
    }
    return [
        Problem("class-changes-order", Level.ERROR, _key_place(id, steps),
                f'the procedure has no step "{id}"; a class brings no steps of its own',
                "use the id of a step of the procedure", causes=(missing("step", str(id), base[WHERE].file),))
        for id in steps if id not in (WHERE, MARKS) and id not in known
    ]  # fmt: skip


def _without_fields(steps: dict[str, Any]) -> list[Problem]:
    return [
        Problem("unreadable", Level.ERROR, steps[MARKS].get(id, steps[WHERE]),
                f"{id}: fields with values are expected here", "write for example `{for: 7 min}`")
        for id, over in steps.items() if id not in (WHERE, MARKS) and not isinstance(over, dict)
    ]  # fmt: skip


def _key_place(id: str, steps: dict[str, Any]) -> Location:
    place: Location = id.where if isinstance(id, Text) else steps[WHERE]
    return place
