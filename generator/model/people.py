"""Who may do what: roles and what they must have signed off."""

from generator.model.located import Located
from generator.model.scalars import Ref, Refs, Sentence, Span


class Role(Located):
    """A role, never a person; `now` is the name of whoever holds it, for the lab's own use only."""

    title: Sentence
    now: Sentence | None = None
    reach: Sentence | None = None
    backup: Ref | None = None
    needs: Refs = ()


class Signoff(Located):
    """A training record: how long it is valid and which role gives it."""

    title: Sentence
    valid: Span | None = None
    given_by: Ref | None = None
