"""JSON Schema draft-07 of every kind of author's file, for editors."""

from typing import Any

from generator.model import ClassFile, Lab, LanguageFile, Located, Procedure
from generator.model.described import every_noun, meanings

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
    for noun in every_noun():
        known = out if out.get("title") == noun.__name__ else out["definitions"].get(noun.__name__)
        if known is not None:
            _describe(known, noun)
    if kind == "lab":
        out.pop("required", None)
    return out


def _describe(schema: dict[str, Any], noun: type[Located]) -> None:
    """What each field means, where editors show it: before what the field takes, and beside a reference."""
    said = meanings(noun)
    for name, info in noun.model_fields.items():
        field = schema.get("properties", {}).get(info.alias or name)
        if field is None or name not in said:
            continue
        takes = field.get("description", "")
        if "$ref" in field:
            field["allOf"] = [{"$ref": field.pop("$ref")}]
        field["description"] = f"{said[name]} ({takes})" if takes else said[name]
