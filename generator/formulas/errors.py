"""What can be wrong with a formula, or with the numbers given to it."""


class FormulaError(ValueError):
    """A formula cannot be recorded, or cannot be worked out from what was given.

    what: the matter in trade words; fix: an action; formula: its name; line: where in its file, 0 if the
    numbers and not the text are at fault; given: the input that is refused, if one is.
    """

    def __init__(self, what: str, fix: str = "", formula: str = "", line: int = 0, given: str = "") -> None:
        place = f"{formula}, line {line}: " if line else f"{formula}: " if formula else ""
        super().__init__(place + what)
        self.what = what
        self.fix = fix
        self.formula = formula
        self.line = line
        self.given = given


class RefusedError(Exception):
    """Something in a formula's text that cannot be recorded: the line, what, and what to write instead."""

    def __init__(self, line: int, what: str, fix: str, column: int = 0) -> None:
        super().__init__(what)
        self.line = line
        self.what = what
        self.fix = fix
        self.column = column
