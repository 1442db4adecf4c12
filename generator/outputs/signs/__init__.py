"""Safety signs, first-aid signs and marks, drawn by us in simple strokes; the shapes of ISO 3864-1."""

from functools import cache
from pathlib import Path

_FOLDER = Path(__file__).parent
# What an unknown number falls back to: the general sign of its family in ISO 7010.
_GENERAL = {"M": "M001", "W": "W001", "E": "E003", "F": "F001", "P": "P001"}


@cache
def sign_names() -> tuple[str, ...]:
    """Names of the drawn signs: ISO 7010 numbers, `stop`, and `mark-...` for the marks at a step."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.svg")))


def sign_name(number: str) -> str:
    """The drawn sign for an ISO 7010 number; for one that is not drawn, the general sign of its family."""
    return number if number in sign_names() else _GENERAL.get(number[:1], "M001")


@cache
def sign_svg(number: str) -> str:
    """The sign as SVG text, for a page."""
    return (_FOLDER / f"{sign_name(number)}.svg").read_text("utf-8")
