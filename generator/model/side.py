"""Side files of a procedure: a class's own values, and sentences in another language."""

from typing import Annotated

from pydantic import Field

from generator.model.given import Value, read_value
from generator.model.located import Located
from generator.model.procedure import Accept, Card
from generator.model.reader import Reader
from generator.model.scalars import Language, Listed, Name, Named, Ref, Sentence


class ClassFile(Located):
    """Values of a class laid over its procedure; `steps` holds fields by step id."""

    class_of: Ref
    """The procedure that this class changes the values of."""
    title: Sentence | None = None
    """What the class makes."""
    approver: Ref | None = None
    """The role that approves the class's values."""
    because: Sentence | None = None
    """Why the class needs values of its own."""
    job: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    """The class's own numbers; the others stay."""
    steps: dict[str, object] = {}
    """Times and settings of single steps, by the step's id."""
    cards: Annotated[tuple[Card, ...], Listed] = ()
    """Cards of the class: one with the same id stands instead, another is added."""
    accept: Annotated[tuple[Accept, ...], Listed] = ()
    """Warnings of the class that the lab lives with, beside its procedure's."""


class LanguageFile(Located):
    """Sentences by id in another language; every value is a sentence or names with sentences."""

    language: Language
    """The language, as a two-letter code."""
    translated_by: Ref | None = None
    """The role that translated it."""
    checked_against: Sentence | None = None
    """The number of the posted issue that the translation was compared with, or `none`."""
    title: Sentence | None = None
    """The procedure's title in this language."""
    stop_rule: Sentence | None = None
    """The stop rule in this language."""
    not_for: Sentence | None = None
    """What it is not for, in this language."""
    tell_us_first: Annotated[tuple[Sentence, ...], Listed] = ()
    """What to say before starting, in this language and order."""
    stages: dict[str, object] = {}
    """Titles of stages, by the stage's id."""
    steps: dict[str, object] = {}
    """Sentences of steps, by the step's id and the field."""
    cards: dict[str, object] = {}
    """Titles of cards, by the card's id."""
    you_may_see: Annotated[tuple[object, ...], Listed] = Field(default=())
    """Symptoms and what to do first, in the order of the procedure."""
    lab: dict[str, object] = {}
    """Sentences of the lab's nouns, by noun, id and field."""
