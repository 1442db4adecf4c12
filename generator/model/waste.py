"""Where everything ends."""

from typing import Annotated

from generator.model.located import Located
from generator.model.scalars import Amount, Day, OneOf, Ref, Refs, Sentence


class ToDrain(Located):
    """Who decided that this may run to a drain, and when."""

    decided_by: Ref | None = None
    decided: Day | None = None


class Container(Located):
    """A jug, drum, bag or drain: what it takes, its cap, when it counts as full, who fetches it."""

    title: Sentence
    takes: Refs = ()
    cap: Annotated[str, OneOf("closed", "vented", "open", kind="cap")] | None = None
    full_at: Amount | None = None
    pickup: Ref | None = None
    never: Sentence | None = None
    to_drain: ToDrain | None = None
