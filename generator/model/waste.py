"""Where everything ends."""

from typing import Annotated

from generator.model.located import Located
from generator.model.scalars import Amount, Day, OneOf, Ref, Refs, Sentence


class ToDrain(Located):
    """Who decided that this may run to a drain, and when."""

    decided_by: Ref | None = None
    """The role that decided."""
    decided: Day | None = None
    """The day of the decision."""


class Container(Located):
    """A jug, drum, bag or drain: what it takes, its cap, when it counts as full, who fetches it."""

    title: Sentence
    """The container as its label prints it."""
    takes: Refs = ()
    """Residues, mixtures, substances and solids that may go in."""
    cap: Annotated[str, OneOf("closed", "vented", "open", kind="cap")] | None = None
    """How it is closed; what makes gas needs a vented one."""
    full_at: Amount | None = None
    """When it counts as full."""
    pickup: Ref | None = None
    """The role that has it fetched."""
    never: Sentence | None = None
    """What never goes in, in words."""
    to_drain: ToDrain | None = None
    """Who decided that this may run to a drain, and when."""
