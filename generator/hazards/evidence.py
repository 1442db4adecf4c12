"""How well a fact is known, in one word that is printed with it."""

from enum import StrEnum


class Evidence(StrEnum):
    """How well a fact is known; memory is shown as such, never as an authority."""

    OFFICIAL = "official"
    SECONDARY = "secondary"
    MEMORY = "memory"
    PRACTICE = "practice"

    @property
    def words(self) -> str:
        """What a page says about it."""
        return _WORDS[self]


_WORDS = {
    Evidence.OFFICIAL: "read on an official page",
    Evidence.SECONDARY: "read on a page that quotes the source",
    Evidence.MEMORY: "from memory, not verified",
    Evidence.PRACTICE: "common practice, no source",
}


def weakest(words: tuple[Evidence, ...]) -> Evidence:
    """The weakest of several evidence words: a sum is known no better than its worst row."""
    order = list(Evidence)
    return max(words, key=order.index) if words else Evidence.OFFICIAL
