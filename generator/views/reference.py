"""The nouns of the model and their fields, as an author looks them up."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FieldView:
    """A field: its name as written, what it means, what it takes, whether it must be there.

    `noun` is the noun that it holds, "" for none.
    """

    name: str
    means: str
    takes: str
    must: bool = False
    noun: str = ""
    noun_anchor: str = ""


@dataclass(frozen=True, slots=True)
class NounView:
    """A noun: its anchor, its name, what it is, and its fields in the model's order."""

    anchor: str
    title: str
    says: str
    fields: tuple[FieldView, ...]


@dataclass(frozen=True, slots=True)
class ReferenceView:
    """All nouns, the outer ones first, and the verbs of a step with what each means."""

    nouns: tuple[NounView, ...]
    verbs: tuple[tuple[str, str], ...]
