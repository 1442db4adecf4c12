"""The facts of an issue: a flat map from (noun, id, field) to text; changes and check codes come from it."""

from collections.abc import Iterator, Mapping
from typing import Any

from generator.posting.content import Content

Key = tuple[str, str, str]
Facts = Mapping[Key, str]
_APART = ("stages", "cards", "you_may_see", "vendor_papers", "accept")
_UNSAID = ("was",)


def facts_of(content: Content) -> dict[Key, str]:
    """Every fact of a content; a successor's `was` is none, nor is what the lab has accepted."""
    return dict(_facts(content))


def noun_facts(noun: str, id: str, fields: Mapping[str, Any]) -> dict[Key, str]:
    """The facts of one noun of a lab from its plain data."""
    return dict(_flat(noun, id, dict(fields)))


def _facts(content: Content) -> Iterator[tuple[Key, str]]:
    lab, procedure = content["lab"], content["procedure"]
    yield from _flat("room", "", lab["lab"])
    for noun, ids in lab.items():
        if noun == "keep_apart":
            for row in ids:
                said = {key: value for key, value in row.items() if key != "groups"}
                yield from _flat("keep_apart", ", ".join(row["groups"]), said)
        elif noun != "lab":
            for id, fields in ids.items():
                yield from _flat(noun, id, fields)
    yield from _procedure(procedure)
    for noun, sort in (("classes", "class"), ("languages", "language")):
        for id, fields in content.get(noun, {}).items():
            yield from _flat(sort, id, fields)
    for key, answer in content.get("sums", {}).items():
        yield ("sum", key, "answer"), answer
    for file, digest in content.get("pictures", {}).items():
        yield ("picture", file, "content"), digest


def _procedure(it: dict[str, Any]) -> Iterator[tuple[Key, str]]:
    yield from _flat("procedure", "", {key: value for key, value in it.items() if key not in _APART})
    yield ("procedure", "", "stages"), ", ".join(stage["stage"] for stage in it["stages"])
    for stage in it["stages"]:
        whole = {key: value for key, value in stage.items() if key not in ("stage", "steps")}
        yield from _flat("stage", stage["stage"], whole)
        yield ("stage", stage["stage"], "steps"), ", ".join(step["id"] for step in stage["steps"])
        for step in stage["steps"]:
            yield from _step(step)
    for card in it.get("cards", ()):
        yield from _flat("card", card["id"], {**card, "there": "true"})
    for seen in it.get("you_may_see", ()):
        yield from _flat("symptom", seen["symptom"], seen)
    for paper in it.get("vendor_papers", ()):
        yield from _flat("paper", paper["paper"], paper)


def _step(step: dict[str, Any]) -> Iterator[tuple[Key, str]]:
    mend = step.get("fail", {}).get("mend")
    if mend:
        fail = {**step["fail"], "mend": mend["id"]}
        yield from _flat("step", step["id"], {**step, "fail": fail})
        yield from _step(mend)
    else:
        yield from _flat("step", step["id"], step)


def _flat(noun: str, id: str, fields: dict[str, Any]) -> Iterator[tuple[Key, str]]:
    for path, text in _leaves("", fields):
        if path not in _UNSAID:
            yield (noun, id, path), text


def _leaves(path: str, value: Any) -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _leaves(f"{path}.{key}" if path else key, inner)
    else:
        yield path, _text(value)


def _text(value: Any) -> str:
    if isinstance(value, list):
        apart = "; " if any(isinstance(item, dict) or " " in item for item in value) else ", "
        return apart.join(_text(item) for item in value)
    if isinstance(value, dict):
        return ", ".join(f"{key} {_text(inner)}" for key, inner in value.items())
    return str(value)
