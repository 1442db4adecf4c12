"""A place in an author's file."""

from typing import NamedTuple


class Location(NamedTuple):
    """File as shown to the author, line and column counted from 1, and how many characters are meant."""

    file: str
    line: int = 1
    column: int = 1
    length: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


NOWHERE = Location("", 0, 0, 0)
