"""One procedure: who, what for, its stages of steps, its cards, and what is lived with."""

from itertools import chain
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
    Language,
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
    """The supplier's paper, with its date."""
    differs: Sentence
    """What is done differently here."""
    because: Sentence | None = None
    """Why it is done so."""
    decided_by: Ref | None = None
    """The role that decided."""
    decided: Day | None = None
    """The day of the decision."""


class PartState(Located):
    """Where the part is, wet or dry, and what rides on it."""

    at: Ref | None = None
    """The place or machine where the part is."""
    wet: Flag = False
    """Whether it is wet."""
    residues: Refs = ()
    """What rides on it."""


class Part(Located):
    """The workpiece: its name, how it starts and how it must end."""

    name: Sentence
    """What the workpiece is called."""
    starts: PartState = PartState.model_construct()
    """Where it is and what is on it at the start."""
    ends: PartState | None = None
    """Where it is and what may be on it at the end."""


class Symptom(Located):
    """What a student may see, in the words that a student would type."""

    symptom: Sentence
    """What is seen, in words that a student would type."""
    at: Ref | None = None
    """The step at which it is seen."""
    causes: Sentences = ()
    """What may be behind it."""
    do_first: Sentence | None = None
    """What is done first."""


SHOWN = ("wear", "stop-rule", "help", "hazards")
SIZES = ("A4", "A3", "Letter", "Tabloid")


class Card(Located):
    """A wall card for one work position, read from a stated distance."""

    id: Id
    """The id of the card, stable once posted."""
    title: Sentence
    """What stands at its top."""
    size: Annotated[str, OneOf(*SIZES, kind="paper size")] = "A4"
    """The paper size."""
    turned: Flag = False
    """It hangs turned: landscape."""
    read_from: Length
    """How far away the reader stands; the letters follow from it."""
    stages: Refs = ()
    """The stages that it shows."""
    post_at: Ref | None = None
    """The place where it hangs."""
    language: Language | None = None
    """The language, where it is not that of the procedure."""
    show: Annotated[tuple[Annotated[str, OneOf(*SHOWN, kind="part of a card")], ...], Listed] = ()
    """What a card without stages shows."""
    stop_rule: Sentence | None = None
    """When to stop at this card, where that is not the stop rule of the procedure."""
    was: Id | None = None
    """The id that it had in an earlier issue."""


class Accept(Located):
    """A warning that the lab lives with: which, where, who says so, until when, and why."""

    rule: Ref
    """The id of the rule whose warning is meant."""
    step: Ref | None = None
    """The step at which it stands."""
    place: Ref | None = None
    """The place at which it stands."""
    thing: Ref | None = None
    """The noun of the lab, by its id, on which it stands."""
    who: Ref
    """The role that says that it may stand."""
    until: Day
    """The day until which it may."""
    because: Sentence
    """Why it may."""


class Stage(Located):
    """A group of steps with a title; `repeat` gives a table of readings."""

    stage: Id
    """The id of the stage; cards name it."""
    title: Sentence
    """What is done in it."""
    repeat: Times | None = None
    """How often the whole stage is done."""
    steps: Annotated[tuple[Step, ...], Listed, Field(min_length=1)]
    """Its steps, in order."""
    was: Id | None = None
    """The id that it had in an earlier issue."""


class Procedure(Located):
    """The whole procedure as one author's file; `id` is the file's name."""

    id: SkipJsonSchema[Annotated[Text, Reader(Text)]] = Field(default=Text(""), validation_alias=ID)
    title: Sentence
    """What the procedure does, as students call it."""
    who: Ref
    """The role that does it."""
    also_present: Ref | None = None
    """The role that stands by where nobody works alone."""
    written_by: Ref | None = None
    """The role that wrote it; it may post changes of wording by itself."""
    approver: Ref
    """The role that approves every change that is more than wording."""
    review_every: Span | None = None
    """How often somebody looks at it again."""
    limits: Annotated[dict[Name, Limits], Named] = {}
    """What the procedure is for; each is compared with the job's value of that name."""
    not_for: Sentence | None = None
    """What must not be done by it, in words."""
    vendor_papers: Annotated[tuple[VendorPaper, ...], Listed] = ()
    """Where the house differs from a supplier's paper, and who decided."""
    stop_rule: Sentence | None = None
    """When to stop and whom to call, printed on every card."""
    tell_us_first: Sentences = ()
    """What a person should say before starting."""
    part: Part | None = None
    """The workpiece: how it starts and how it must end."""
    job: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    """The numbers of this job, which formulas and limits look up by name."""
    stages: Annotated[tuple[Stage, ...], Listed, Field(min_length=1)]
    """The steps in groups, in the order in which they are done."""
    you_may_see: Annotated[tuple[Symptom, ...], Listed] = ()
    """What a student may see, with its causes and what to do first."""
    cards: Annotated[tuple[Card, ...], Listed] = ()
    """Wall cards, each for one work position."""
    accept: Annotated[tuple[Accept, ...], Listed] = ()
    """Warnings that the lab lives with."""

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps of the straight run, in order; mends stand inside their `fail`."""
        return tuple(chain.from_iterable(stage.steps for stage in self.stages))
