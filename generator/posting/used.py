"""Which nouns of a lab a procedure uses, whether it names them or they come along with what it names."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.model import Lab
from generator.posting.plain import plain_noun

NOUNS = (
    "roles", "signoffs", "ppe", "hazard_words", "substances", "mixtures", "places", "racks", "timers",
    "residues", "waste", "calculators",
)  # fmt: skip
# What is true of the room at once, or is the lab's own affair: no part of an issue.
LIVE: Mapping[str, tuple[str, ...]] = {
    "lab": ("sessions", "pack_up", "who_may_print", "sheets_good_for", "paper"),
    "roles": ("now",),
    "substances": ("kept",),
    "places": ("out_of_use",),
}
# Names in these fields do not bring the thing named along: a drum takes more than this procedure makes.
_ENDS = {"waste": ("takes",), "substances": ("groups", "title"), "calculators": ("usual", "never_above")}
_UNSAID = ("accept",)

Named = tuple[str, str]


@dataclass(frozen=True)
class Stock:
    """A lab's nouns as plain data by (noun, id), and what each of them names."""

    nouns: Mapping[Named, dict[str, Any]]
    ids: Mapping[str, tuple[Named, ...]]

    def reached(self, words: Iterable[str]) -> dict[Named, None]:
        """Everything that these words name, and what that names in turn."""
        found: dict[Named, None] = {}
        waiting = [name for word in words for name in self.ids.get(word, ())]
        while waiting:
            name = waiting.pop()
            if name not in found:
                found[name] = None
                waiting += [more for word in self._words(name) for more in self.ids.get(word, ())]
        return found

    def _words(self, name: Named) -> Iterator[str]:
        ends = _ENDS.get(name[0], ())
        return words_in({key: value for key, value in self.nouns[name].items() if key not in ends})


def stock_of(lab: Lab) -> Stock:
    """All nouns of a lab."""
    nouns = {
        (noun, str(id)): plain_noun(one, LIVE.get(noun, ()))
        for noun in NOUNS
        for id, one in getattr(lab, noun).items()
    }
    ids: dict[str, list[Named]] = {}
    for noun, id in nouns:
        ids.setdefault(id, []).append((noun, id))
    return Stock(nouns, {id: tuple(names) for id, names in ids.items()})


def words_in(data: Any) -> Iterator[str]:
    """Every key and every scalar of plain data."""
    if isinstance(data, dict):
        for key, value in data.items():
            if key not in _UNSAID:
                yield key
                yield from words_in(value)
    elif isinstance(data, list):
        for item in data:
            yield from words_in(item)
    else:
        yield data
