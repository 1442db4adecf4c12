"""Who may do what: roles and what they must have signed off."""

from generator.model.located import Located
from generator.model.scalars import Ref, Refs, Sentence, Span


class Role(Located):
    """A role, never a person; `now` is the name of whoever holds it, for the lab's own use only."""

    title: Sentence
    """The role as cards and pages print it."""
    now: Sentence | None = None
    """Who has the role at present; never printed."""
    reach: Sentence | None = None
    """How the role can be reached: a room, an extension."""
    backup: Ref | None = None
    """The role that is called when this one does not answer."""
    needs: Refs = ()
    """Trainings that the role must have signed off."""


class Signoff(Located):
    """A training record: how long it is valid and which role gives it."""

    title: Sentence
    """What the training is called."""
    valid: Span | None = None
    """How long it is good for."""
    given_by: Ref | None = None
    """The role that gives it."""
