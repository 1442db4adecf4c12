"""Side files of a procedure: a class's own values, and sentences in another language."""

from typing import Annotated

from pydantic import Field

from generator.model.given import Value, read_value
from generator.model.located import Located
from generator.model.procedure import Accept, Card
from generator.model.reader import Reader
from generator.model.scalars import Listed, Name, Named, Ref, Sentence


class ClassFile(Located):
    """Values of a class laid over its procedure; `steps` holds fields by step id."""

    class_of: Ref
    title: Sentence | None = None
    approver: Ref | None = None
    because: Sentence | None = None
    job: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    steps: dict[str, object] = {}
    cards: Annotated[tuple[Card, ...], Listed] = ()
    accept: Annotated[tuple[Accept, ...], Listed] = ()


class LanguageFile(Located):
    """Sentences by id in another language; every value is a sentence or names with sentences."""

    language: Sentence
    translated_by: Ref | None = None
    checked_against: Sentence | None = None
    title: Sentence | None = None
    stop_rule: Sentence | None = None
    not_for: Sentence | None = None
    tell_us_first: Annotated[tuple[Sentence, ...], Listed] = ()
    stages: dict[str, object] = {}
    steps: dict[str, object] = {}
    cards: dict[str, object] = {}
    you_may_see: Annotated[tuple[object, ...], Listed] = Field(default=())
    lab: dict[str, object] = {}
