"""What each noun is and what its fields take, in words that are read off the model itself."""

import ast
import re
import types
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from itertools import pairwise
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from generator.model.lab import Lab
from generator.model.located import Located
from generator.model.procedure import Procedure
from generator.model.reader import Reader
from generator.model.scalars import OneOf
from generator.model.side import ClassFile, LanguageFile

_FILES = (Lab, Procedure, ClassFile, LanguageFile)
_BY_TYPE = {"integer": "a whole number", "boolean": "true or false", "string": "words"}


@dataclass(frozen=True, slots=True)
class DescribedField:
    """A field: its name as written, its meaning, what it takes, whether it must be there, the noun inside."""

    name: str
    means: str
    takes: str
    must: bool
    noun: str


@dataclass(frozen=True, slots=True)
class DescribedNoun:
    """A noun: its name, what it is, its fields in the model's order."""

    title: str
    says: str
    fields: tuple[DescribedField, ...]


def described() -> tuple[DescribedNoun, ...]:
    """Every noun that an author writes, from the files inwards."""
    return tuple(_noun(kind) for kind in every_noun())


def every_noun() -> tuple[type[Located], ...]:
    """The nouns that an author writes: the files first, then what stands in them, each once."""
    found: dict[type[Located], None] = {}
    waiting: list[type[Located]] = list(_FILES)
    while waiting:
        kind = waiting.pop(0)
        if kind not in found:
            found[kind] = None
            waiting += [inner for info in _fields(kind).values() for inner in _nouns_in(info.annotation)]
    return tuple(found)


def _fields(kind: type[Located]) -> dict[str, FieldInfo]:
    """What an author writes: not where it stands, and not the id that is the file's name."""
    return {
        name: info
        for name, info in kind.fields().items()
        if not str(info.validation_alias or "").startswith("\x00")
    }


def _noun(kind: type[Located]) -> DescribedNoun:
    said = meanings(kind)
    fields = tuple(_field(name, info, said.get(name, "")) for name, info in _fields(kind).items())
    return DescribedNoun(_title(kind), _first_line(kind).replace("`", ""), fields)


def meanings(kind: type[Located]) -> dict[str, str]:
    """What each field of a noun means, by the field's name in the program: the words that stand below it.

    They are read from the program's own text when a page or a schema is written, and cost nothing before.
    """
    return _meanings(kind.__module__).get(kind.__name__, {})


@cache
def _meanings(module: str) -> dict[str, dict[str, str]]:
    """By class and field: the text that stands as a line of its own directly below a field."""
    source = files("generator.model").joinpath(f"{module.rpartition('.')[2]}.py").read_text("utf-8")
    classes = [node for node in ast.parse(source).body if isinstance(node, ast.ClassDef)]
    return {node.name: dict(_below_fields(node)) for node in classes}


def _below_fields(node: ast.ClassDef) -> Iterator[tuple[str, str]]:
    for field, below in pairwise(node.body):
        match field, below:
            case (
                ast.AnnAssign(target=ast.Name(id=name)),
                ast.Expr(value=ast.Constant(value=str(said))),
            ):
                yield name, said


def _field(name: str, info: FieldInfo, means: str) -> DescribedField:
    inner = next(_nouns_in(info.annotation), None)
    takes = _by_metadata(info.metadata) or _takes(info.annotation)
    return DescribedField(
        info.alias or name, means, takes, info.is_required(), _title(inner) if inner else ""
    )


def _title(kind: type[Located]) -> str:
    """The name of a class as words: HazardWord is a "Hazard word"."""
    return re.sub(r"(?<=[a-z])[A-Z]", lambda found: f" {found[0].lower()}", kind.__name__)


def _first_line(thing: object) -> str:
    return (thing.__doc__ or "").strip().partition("\n")[0]


def _nouns_in(annotation: object) -> Iterator[type[Located]]:
    """The nouns of the model inside a type."""
    if isinstance(annotation, type) and issubclass(annotation, Located):
        yield annotation
    for part in get_args(annotation):
        yield from _nouns_in(part)


def _takes(annotation: Any) -> str:
    """What a type takes, in words."""
    origin, parts = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _by_metadata(parts[1:]) or _takes(parts[0])
    if origin in (Union, types.UnionType):
        return next(_takes(part) for part in parts if part is not type(None))
    if origin is tuple:
        return f"a list, each {_takes(parts[0])}"
    if origin is dict:
        return f"names, for each {_takes(parts[1])}"
    if isinstance(annotation, type) and issubclass(annotation, Located):
        return "fields of its own"
    return "what the procedure has there"


def _by_metadata(metadata: Any) -> str:
    """What stands beside a type: a closed list, a description, or the first line of what reads it."""
    for mark in metadata:
        match mark:
            case OneOf():
                return f"one of: {', '.join(mark.words)}"
            case Reader() if mark.schema:
                return str(mark.schema.get("description") or _plain_type(mark.schema))
            case Reader():
                said = _first_line(mark.read).rstrip(".").replace("`", "")
                return said[:1].lower() + said[1:]
    return ""


def _plain_type(schema: dict[str, Any]) -> str:
    kinds = schema.get("type", "string")
    return _BY_TYPE[kinds[0] if isinstance(kinds, list) else kinds]
