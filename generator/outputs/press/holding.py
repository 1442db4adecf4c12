"""Which words stay with the word before them: a number, its unit, and the point between two texts."""

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from re import compile as pattern

from generator.units import UNITS

# "417", "(step 7", "B14", "2027-11-26": what says nothing without the word before it.
_NUMBER = pattern(r"\(?[A-Z]{0,2}\d")
_ENDED = (".", ",", ":", ";", "!", "?", "\u00b7", ")")
# A long word before a number is no loss for the line that it leaves.
_LONGEST = 12


def held(words: Sequence[str]) -> frozenset[int]:
    """The places of the words that no line should begin with."""
    return frozenset(n for n, (before, word) in enumerate(pairwise(words), start=1) if _stays(before, word))


@lru_cache(maxsize=20_000)
def _stays(before: str, word: str) -> bool:
    if word.startswith("\u00b7"):
        return True
    if before[-1:].isdigit() and word.rstrip(".,:;)") in _units():
        return True
    return bool(_NUMBER.match(word)) and len(before) <= _LONGEST and not before.endswith(_ENDED)


@lru_cache(maxsize=1)
def _units() -> frozenset[str]:
    """Units as they are printed and as authors write them."""
    rows = UNITS.values()
    return frozenset(name for row in rows for name in (row.symbol, row.shown, row.plural) if name)
