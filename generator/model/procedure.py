"""One procedure: who, what for, its stages of steps, its cards, and what is lived with."""

from typing import Annotated

from pydantic import Field
from pydantic.json_schema import SkipJsonSchema

from generator.model.given import Value, read_value
from generator.model.located import ID, Located, Text
from generator.model.reader import Reader
from generator.model.scalars import (
    Day,
    Flag,
    Id,
    Length,
    Limits,
    Listed,
    Name,
    Named,
    OneOf,
    Ref,
    Refs,
    Sentence,
    Sentences,
    Span,
    Times,
)
from generator.model.step import Step


class VendorPaper(Located):
    """Where the house differs from a supplier's paper, and which role decided it."""

    paper: Sentence
    differs: Sentence
    because: Sentence | None = None
    decided_by: Ref | None = None
    decided: Day | None = None


class PartState(Located):
    """Where the part is, wet or dry, and what rides on it."""

    at: Ref | None = None
    wet: Flag = False
    residues: Refs = ()


class Part(Located):
    """The workpiece: its name, how it starts and how it must end."""

    name: Sentence
    starts: PartState = PartState.model_construct()
    ends: PartState | None = None


class Symptom(Located):
    """What a student may see, in the words that a student would type."""

    symptom: Sentence
    at: Ref | None = None
    causes: Sentences = ()
    do_first: Sentence | None = None


SHOWN = ("wear", "stop-rule", "help", "hazards")
SIZES = ("A4", "A3", "Letter", "Tabloid")


class Card(Located):
    """A wall card for one work position, read from a stated distance."""

    id: Id
    title: Sentence
    size: Annotated[str, OneOf(*SIZES, kind="paper size")] = "A4"
    turned: Flag = False
    read_from: Length
    stages: Refs = ()
    post_at: Ref | None = None
    language: Sentence | None = None
    show: Annotated[tuple[Annotated[str, OneOf(*SHOWN, kind="part of a card")], ...], Listed] = ()
    was: Id | None = None


class Accept(Located):
    """A warning that the lab lives with: which, where, who says so, until when, and why."""

    rule: Ref
    step: Ref | None = None
    place: Ref | None = None
    thing: Ref | None = None
    who: Ref
    until: Day
    because: Sentence


class Stage(Located):
    """A group of steps with a title; `repeat` gives a table of readings."""

    stage: Id
    title: Sentence
    repeat: Times | None = None
    steps: Annotated[tuple[Step, ...], Listed, Field(min_length=1)]
    was: Id | None = None


class Procedure(Located):
    """The whole procedure as one author's file; `id` is the file's name."""

    id: SkipJsonSchema[Annotated[Text, Reader(Text)]] = Field(default=Text(""), validation_alias=ID)
    title: Sentence
    who: Ref
    also_present: Ref | None = None
    written_by: Ref | None = None
    approver: Ref
    review_every: Span | None = None
    limits: Annotated[dict[Name, Limits], Named] = {}
    not_for: Sentence | None = None
    vendor_papers: Annotated[tuple[VendorPaper, ...], Listed] = ()
    stop_rule: Sentence | None = None
    tell_us_first: Sentences = ()
    part: Part | None = None
    job: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    stages: Annotated[tuple[Stage, ...], Listed, Field(min_length=1)]
    you_may_see: Annotated[tuple[Symptom, ...], Listed] = ()
    cards: Annotated[tuple[Card, ...], Listed] = ()
    accept: Annotated[tuple[Accept, ...], Listed] = ()

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps of the straight run, in order; mends stand inside their `fail`."""
        return tuple(step for stage in self.stages for step in stage.steps)
