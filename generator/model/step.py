"""One action of the student, and everything that hangs on it."""

from typing import Annotated

from pydantic import Field

from generator.model.given import FormulaRef, Value, read_power, read_time, read_used, read_value
from generator.model.located import Located, Text
from generator.model.reader import Reader
from generator.model.readings import Leg, Reading, read_reading, read_rock, read_setting
from generator.model.scalars import (
    Flag,
    Id,
    Name,
    Named,
    OneOf,
    Positive,
    Ref,
    Refs,
    Sentence,
    Span,
    SpanLimits,
    Times,
)
from generator.model.verbs import VERBS
from generator.units import Counted, Quantity


class Hold(Located):
    """Whom to wait for, and until what has been agreed."""

    who: Ref | None = None
    """The role that has to come."""
    until: Sentence
    """What has to be agreed."""


class Since(Located):
    """How long after the end of an earlier step this one may start."""

    step: Ref
    """The earlier step from whose end the time runs."""
    time: SpanLimits
    """The window of time."""
    because: Sentence | None = None
    """Why it matters."""


class Pause(Located):
    """Work may stop here: how the part is kept, and for how long."""

    keep: Sentence
    """How the part is kept meanwhile."""
    time: SpanLimits
    """For how long it keeps."""


class PowerOn(Located):
    """Current or elements on: to what, and how fast."""

    to: Annotated[Quantity | FormulaRef, Reader(read_power)]
    """How much, or the formula that says it."""
    ramp: Span | None = None
    """Over which time it is brought up."""


class Ask(Located):
    """A self-check question with its answer."""

    question: Sentence
    """The question."""
    answer: Sentence
    """The answer."""


class Picture(Located):
    """A picture and the words for those who do not see it."""

    file: Sentence
    """Its file in the folder pictures."""
    alt: Sentence | None = None
    """What it shows, for those who do not see it."""


Recorded = Annotated[dict[Name, Annotated[Reading, Reader(read_reading)]], Named]
_STAYS = OneOf("here", "near", "away", kind="way to stay")


class Fail(Located):
    """What follows when a check fails: words, a mend, a step to go back to, how often, whom to call."""

    say: Sentence | None = None
    """What to do, in words."""
    mend: "Step | None" = None
    """One step that mends it before it is checked again."""
    redo: Ref | None = None
    """The step to go back to; this one where none is named."""
    at_most: Positive | None = None
    """How often it may be tried again."""
    call: Ref | None = None
    """The role that is called then."""


class Watch(Located):
    """What is looked at again and again while something runs."""

    every: Span
    """How often."""
    check: Sentence | None = None
    """What must be seen."""
    record: Recorded = Field(default_factory=dict)
    """What is written down."""
    fail: Fail | None = None
    """What follows when it is not as it should be."""


class Step(Located):
    """One action; the verb and the place imply the change of state."""

    id: Id
    """The id of the step, stable once posted."""
    say: Sentence
    """The student's sentence: one action, no numbers."""
    card: Sentence | None = None
    """Shorter words for the wall card."""
    do: Annotated[str, OneOf(*VERBS, kind="verb")]
    """The verb, which with the place implies what changes."""
    at: Ref | None = None
    """The place where it is done."""
    into: Ref | None = None
    """The mixture or vessel that something goes into."""
    use: Annotated[dict[Ref, Annotated[Quantity | Text, Reader(read_used)]], Named] = Field(
        default_factory=dict
    )
    """What is used and how much; so a hazard reaches the step."""
    for_: Annotated[Quantity | FormulaRef, Reader(read_time)] | None = Field(default=None, alias="for")
    """The time that matters to the work."""
    takes: Span | None = None
    """The estimate of hands-on time, for planning."""
    stay: Annotated[str, _STAYS] = "here"
    """Whether the student stays, is near, or may go."""
    alarm: Ref | None = None
    """The timer, where it is not the place's own."""
    when_it_sounds: Sentence | None = None
    """What to do first when it sounds, where the timer does not say it."""
    look: Sentence | None = None
    """What is looked for on opening, where the place is not as it usually is."""
    check: Sentence | None = None
    """What must be seen."""
    record: Recorded = Field(default_factory=dict)
    """What is written down, with its unit and limit."""
    fail: Fail | None = None
    """What follows when it is not as it should be."""
    hold: Hold | None = None
    """Whom to wait for, and until what."""
    since: Since | None = None
    """How long after an earlier step this one may start."""
    pause: Pause | None = None
    """Work may stop behind this step."""
    put_on: Refs = ()
    """What is put on."""
    take_off: Refs = ()
    """What is taken off."""
    fresh: Flag = False
    """What is put on is a fresh piece."""
    wash_hands: Flag = False
    """Hands are washed."""
    rack: Ref | None = None
    """The rack that the part goes on."""
    rock: Annotated[Counted, Reader(read_rock)] | None = None
    """How often the part is moved to shake air out."""
    set: Annotated[dict[Name, Annotated[Text | tuple[Leg, ...], Reader(read_setting)]], Named] = Field(
        default_factory=dict
    )
    """What a machine is set to, or a temperature profile."""
    power: PowerOn | None = None
    """The current that is brought up."""
    watch: Watch | None = None
    """What is looked at again and again while it runs."""
    waste: Ref | None = None
    """The container for what comes off or is left."""
    repeat: Times | None = None
    """How often the step is done."""
    who: Ref | None = None
    """The role that does it, where it is not the procedure's."""
    why: Sentence | None = None
    """The reason, for learning."""
    ask: Ask | None = None
    """A question for the self-check."""
    picture: Picture | None = None
    """A picture and the words for it."""
    formulas: Refs = ()
    """Formulas that help here; the page links to them."""
    given: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = Field(default_factory=dict)
    """Inputs of formulas for this step alone."""
    was: Id | None = None
    """The id that it had in an earlier issue."""
