"""The table of references names every field that names something, and the ids of all rules."""

from collections.abc import Iterator
from typing import Annotated, Any, get_args, get_origin

from pydantic import BaseModel

from generator.checks import docs
from generator.checks.evidence.fields import (
    LAB_FIELDS,
    LIST_FIELDS,
    PROCEDURE_FIELDS,
    ROOM_FIELDS,
    STEP_FIELDS,
)
from generator.checks.evidence.references import rule_ids
from generator.model import Lab, Procedure, Step
from generator.model.reader import Reader

NAMES_SOMETHING = "the id of something declared elsewhere"
TOLD_ELSEWHERE = {
    "substances.hazards",
    "substances.groups",
    "mixtures.hazards",
    "places.hazards",
    "keep_apart.groups",
    "glossary.not",
    "cards.stages",
    "formulas",
    # The person who fills the mends of a mend is beyond any bench.
    "fail.mend.",
}


def refs(model: type[BaseModel], seen: tuple[type, ...] = ()) -> Iterator[str]:
    """Dotted names of the fields that name something."""
    for name, field in model.model_fields.items():
        shown = field.alias or name
        if any(one is NAMES_SOMETHING for one in _descriptions((field.annotation, *field.metadata))):
            yield shown
        for inner in _models(field.annotation):
            if inner not in (*seen, model):
                yield from (f"{shown}.{rest}" for rest in refs(inner, (*seen, model)))


def _descriptions(parts: Any) -> Iterator[object]:
    for part in parts:
        if isinstance(part, Reader):
            found = part.schema.get("description")
            yield NAMES_SOMETHING if found == NAMES_SOMETHING else found
        elif get_origin(part) is Annotated or get_args(part):
            yield from _descriptions(get_args(part))


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for part in get_args(annotation):
        yield from _models(part)


def told_elsewhere(field: str) -> bool:
    return any(
        field == other or (other.endswith(".") and field.startswith(other)) for other in TOLD_ELSEWHERE
    )


def test_every_field_of_the_lab_that_names_something_is_looked_at() -> None:
    nouns = (*LAB_FIELDS, *LIST_FIELDS, ("accept", "step", "a lab's own entry names a thing, never a step"))
    held = {f"lab.{field}" for field, _ in ROOM_FIELDS} | {f"{noun}.{field}" for noun, field, _ in nouns}
    assert sorted(field for field in refs(Lab) if field not in held and not told_elsewhere(field)) == []


def test_every_field_of_a_procedure_that_names_something_is_looked_at() -> None:
    held = {field for field, _ in PROCEDURE_FIELDS}
    found = [field for field in refs(Procedure, (Step,)) if not field.startswith("stages.steps")]
    assert sorted(field for field in found if field not in held and not told_elsewhere(field)) == []


def test_every_field_of_a_step_that_names_something_is_looked_at() -> None:
    held = {field for field, _ in STEP_FIELDS}
    assert sorted(field for field in refs(Step) if field not in held and not told_elsewhere(field)) == []


def test_the_look_finds_names_at_all() -> None:
    assert {"who", "cards.post_at", "part.starts.residues"} <= set(refs(Procedure, (Step,)))
    assert {"mixtures.made_of", "places.not_right.call", "lab.base_wear"} <= set(refs(Lab))
    assert {"use", "hold.who", "watch.fail.call"} <= set(refs(Step))


def test_every_rule_is_known_by_its_module() -> None:
    assert {doc.id for doc in docs()} <= rule_ids()
