"""JSON Schema draft-07 of every kind of author's file, for editors."""

from typing import Any

from generator.model import ClassFile, Lab, LanguageFile, Located, Procedure

_KINDS: dict[str, type[Located]] = {
    "lab": Lab,
    "procedure": Procedure,
    "class": ClassFile,
    "language": LanguageFile,
}
_DRAFT = "http://json-schema.org/draft-07/schema#"


def json_schemas() -> dict[str, dict[str, Any]]:
    """A schema by kind of file: lab, procedure, class, language."""
    return {
        kind: _draft_07(noun.model_json_schema(ref_template="#/definitions/{model}"), kind)
        for kind, noun in _KINDS.items()
    }


def _draft_07(schema: dict[str, Any], kind: str) -> dict[str, Any]:
    """The same schema in the older words; a lab's file may hold only some of the nouns."""
    out: dict[str, Any] = {"$schema": _DRAFT, **schema}
    out["definitions"] = out.pop("$defs", {})
    if kind == "lab":
        out.pop("required", None)
    return out
