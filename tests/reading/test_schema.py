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
