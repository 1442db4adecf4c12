"""The JSON Schemas that editors use: draft-07, and every good file of ours passes them."""

import json
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from generator.model import VERBS
from generator.reading import json_schemas

ROOT = Path(__file__).parents[2]
WRITTEN = [*(ROOT / "procedures").rglob("*.yml"), *(ROOT / "tests" / "labs").rglob("*.yml")]
# What is posted is written by the command and never edited, so editors need no schema of it.
FILES = sorted(path for path in WRITTEN if "posted" not in path.parts)


class _Editor(yaml.SafeLoader):
    """Types as in YAML 1.2's core schema, which editors use: 3.10 is a number, 16:40 and no are words."""


_Editor.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("bool", r"true|false", "tf"),
    ("int", r"[-+]?\d+", "-+0123456789"),
    ("float", r"[-+]?\d*\.\d+", "-+.0123456789"),
    ("null", r"null|~", "n~"),
):
    _Editor.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(rf"(?:{pattern})$"), list(first))


def kind_of(path: Path) -> str:
    if path.parent.name == "lab" or path.stem == "lab":
        return "lab"
    return "language" if path.stem.endswith(".es") else "class" if "." in path.stem else "procedure"


def errors(kind: str, data: Any) -> list[str]:
    validator = jsonschema.Draft7Validator(json_schemas()[kind])
    return [f"{'/'.join(map(str, error.path))}: {error.message}" for error in validator.iter_errors(data)]


@pytest.mark.parametrize("kind", ["lab", "procedure", "class", "language"])
def test_a_schema_is_draft_07(kind: str) -> None:
    schema = json_schemas()[kind]
    jsonschema.Draft7Validator.check_schema(schema)
    assert schema["$schema"] == "http://json-schema.org/draft-07/schema#"
    assert "$defs" not in json.dumps(schema)
    assert "\\u0000" not in json.dumps(schema)


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_our_own_files_pass(path: Path) -> None:
    assert errors(kind_of(path), yaml.load(path.read_text(encoding="utf-8"), Loader=_Editor)) == []


def test_a_mistake_is_seen() -> None:
    step = {"id": "Look", "say": "Look.", "do": "chekc", "tkaes": "2 min"}
    found = errors(
        "procedure", {"title": "x", "who": "y", "stages": [{"stage": "a", "title": "A", "steps": [step]}]}
    )
    assert any("'approver' is a required property" in error for error in found)
    assert any("'chekc' is not one of" in error for error in found)
    assert any("'Look' does not match" in error for error in found)
    assert any("tkaes" in error for error in found)


def test_an_editor_offers_the_verbs() -> None:
    assert json_schemas()["procedure"]["definitions"]["Step"]["properties"]["do"]["enum"] == list(VERBS)


@pytest.mark.parametrize("kind", ["lab", "procedure", "class", "language"])
def test_editors_show_what_every_field_means(kind: str) -> None:
    schema = json_schemas()[kind]
    nouns = {str(schema["title"]): schema, **schema["definitions"]}
    silent = [
        f"{name}.{field}"
        for name, noun in nouns.items()
        for field, about in noun.get("properties", {}).items()
        if not about.get("description")
    ]
    assert silent == []
    lacking = [path for path in _references(schema) if "description" in path[1]]
    assert lacking == [], "draft-07 ignores what stands beside a $ref"


def test_a_meaning_stands_before_what_the_field_takes() -> None:
    place = json_schemas()["lab"]["definitions"]["Place"]["properties"]
    assert place["look"]["description"].startswith("What is looked at whenever it is opened.")


def _references(value: Any, path: str = "") -> list[tuple[str, dict[str, Any]]]:
    if isinstance(value, dict):
        own = [(path, value)] if "$ref" in value else []
        return own + [found for key, inner in value.items() for found in _references(inner, f"{path}/{key}")]
    if isinstance(value, list):
        return [found for inner in value for found in _references(inner, path)]
    return []
