"""The nearest known name for a wrong one."""

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, known: Iterable[str]) -> str:
    """A fix that names the nearest known name, or lists the known ones where none is near."""
    names = sorted(set(known))
    close = get_close_matches(word, names, 1, 0.6)
    if close:
        return f"did you mean `{close[0]}`?"
    return f"use one of: {', '.join(names[:12])}" if names else "delete it"
