"""The error for what cannot go on, in four parts."""


class NewelError(Exception):
    """Work cannot go on: a short id, what happened, why it matters or came about, and what to do next."""

    def __init__(self, id: str, what: str, why: str = "", hint: str = "") -> None:
        super().__init__(what)
        self.id = id
        self.what = what
        self.why = why
        self.hint = hint
