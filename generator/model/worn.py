"""What is worn, and the hazards that no H statement names."""

from typing import Annotated

from generator.model.located import Located
from generator.model.scalars import Listed, OneOf, Ref, Refs, Sentence

BODY = ("eyes", "face", "hands", "body", "feet", "hearing", "lungs", "head")
BodyPart = Annotated[str, OneOf(*BODY, kind="part of the body")]


class Ppe(Located):
    """Personal protective equipment; `over` names the piece that must be on underneath."""

    title: Sentence
    protects: BodyPart
    against: Refs = ()
    over: Ref | None = None
    change: Sentence | None = None
    symbol: Sentence | None = None


class HazardWord(Located):
    """A hazard without an H statement, its ISO 7010 W sign, and the parts of the body to be covered."""

    title: Sentence
    symbol: Sentence | None = None
    protect: Annotated[tuple[BodyPart, ...], Listed] = ()
