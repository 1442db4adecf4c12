"""What is worn, and the hazards that no H statement names."""

from typing import Annotated

from generator.model.located import Located
from generator.model.scalars import Flag, Listed, OneOf, Ref, Refs, Sentence

BODY = ("eyes", "face", "hands", "body", "feet", "hearing", "lungs", "head")
BodyPart = Annotated[str, OneOf(*BODY, kind="part of the body")]


class Ppe(Located):
    """Personal protective equipment; `over` names the piece that must be on underneath."""

    title: Sentence
    """The piece as cards and pages print it."""
    protects: BodyPart
    """The part of the body that it covers."""
    against: Refs = ()
    """What it protects against: chemicals, or hazard words such as hot-surface."""
    over: Ref | None = None
    """The piece that must be worn underneath."""
    change: Sentence | None = None
    """When it is changed for a fresh one."""
    used_again: Flag = False
    """It is cleaned and worn again: it goes into no container when it comes off."""
    symbol: Sentence | None = None
    """The number of its mandatory sign in ISO 7010, such as M009."""


class HazardWord(Located):
    """A hazard without an H statement, its ISO 7010 W sign, and the parts of the body to be covered."""

    title: Sentence
    """The hazard in words."""
    symbol: Sentence | None = None
    """The number of its warning sign in ISO 7010, such as W017."""
    protect: Annotated[tuple[BodyPart, ...], Listed] = ()
    """The parts of the body that must be covered against it."""
