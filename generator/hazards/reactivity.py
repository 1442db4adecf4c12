"""Which groups of substances react when they meet, after EPA-600/2-80-076 (April 1980)."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from generator.hazards.tables import read_table

BLANK_SAYS = "Blank on the chart. That is not a statement of safety."
NOT_HELD_SAYS = "This pair is not held here: look at the chart itself. That is not a statement of safety."
_WATER_REACTIVE = 107


@dataclass(frozen=True, slots=True)
class Meeting:
    """What the chart says about two groups: codes and words; `certain` is False for a doubtful cell."""

    groups: tuple[int, int]
    names: tuple[str, str]
    codes: tuple[str, ...]
    words: tuple[str, ...]
    says: str
    certain: bool = True

    @property
    def reacts(self) -> bool:
        """True if the chart names a danger. False never means safe."""
        return bool(self.codes)


@cache
def _chart() -> dict[str, Any]:
    return read_table("compatibility")


def group_name(group: int) -> str | None:
    """The chart's name of a reactivity group, or None for a number it does not have."""
    name: str | None = _chart()["groups"].get(str(group))
    return name


def group_count() -> int:
    """How many groups the chart has."""
    return len(_chart()["groups"])


def held_groups() -> frozenset[int]:
    """The groups whose pairs with each other are held here; of a pair with any other nothing is known."""
    return frozenset(_chart()["held"])


def meeting(first: int, second: int) -> Meeting:
    """What happens when two groups meet, in either order. KeyError for a number the chart does not have."""
    low, high = sorted((first, second))
    chart = _chart()
    names = (chart["groups"][str(low)], chart["groups"][str(high)])
    if _WATER_REACTIVE in (low, high):
        text = "Extremely reactive: do not mix with any chemical or waste."
        return Meeting((low, high), names, ("107",), (text,), text)
    key = f"{low}-{high}"
    codes = tuple(chart["pairs"].get(key, ()))
    if codes:
        return Meeting((low, high), names, codes, _words(codes), "; ".join(_words(codes)))
    doubtful = tuple(chart["uncertain"].get(key, ()))
    if doubtful:
        says = f"{'; '.join(_words(doubtful))} (this cell is from memory: look at the chart itself)"
        return Meeting((low, high), names, doubtful, _words(doubtful), says, certain=False)
    # A cell that the transcription seems to have lost is no blank of the chart.
    held = low in chart["held"] and high in chart["held"] and key not in chart["lost"]
    return Meeting((low, high), names, (), (), BLANK_SAYS if held else NOT_HELD_SAYS)


def _words(codes: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(_chart()["codes"][code] for code in codes)


def meetings(first: tuple[int, ...], second: tuple[int, ...]) -> tuple[Meeting, ...]:
    """Every pair of groups that the chart calls dangerous; none found is not a statement of safety."""
    pairs = dict.fromkeys(tuple(sorted((a, b))) for a in first for b in second)
    return tuple(found for a, b in pairs if (found := meeting(a, b)).reacts)
