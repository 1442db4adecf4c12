"""What can be wrong with a written quantity."""


class UnitsError(ValueError):
    """An author's text is no quantity, window, time or date of ours.

    rule: id of the rule that reports it; message: what was found and expected; fix: what to write;
    number: what is written, where nothing but its unit is missing.
    """

    def __init__(self, rule: str, message: str, fix: str, number: str = "") -> None:
        super().__init__(message)
        self.rule = rule
        self.message = message
        self.fix = fix
        self.number = number


class DimensionError(ValueError):
    """Two quantities measure different things, such as a time and a length."""
