"""Which steps a change reaches, and with them which cards, sheets, calculators, translations and training."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.posting.change import Change
from generator.posting.content import Content
from generator.posting.facts import Facts
from generator.posting.used import words_in

_UNPRINTED = ("why", "ask", "picture", "takes", "formulas", "given", "was")
_ALL_CARDS = ("room", "procedure", "ppe", "roles", "language", "class", "hazard_words")


@dataclass(frozen=True)
class Reach:
    """Steps by what they name, themselves or through what they name; cards by their stages."""

    steps: Mapping[tuple[str, str], frozenset[str]]
    stages: Mapping[str, str]
    cards: Mapping[str, tuple[str, ...]]
    facts: Facts
    languages: Mapping[str, frozenset[str]]

    def of(self, change: Change) -> frozenset[str]:
        """The steps that a change reaches; none for what concerns the whole procedure."""
        if change.noun == "stage":
            return frozenset(step for step, stage in self.stages.items() if stage == change.id)
        if change.noun == "sum":
            return frozenset({change.id.rpartition("/")[2].rpartition(".")[0]} & set(self.stages))
        if change.noun == "class" and change.field.startswith("steps."):
            return frozenset({change.field.split(".")[1]})
        return self.steps.get((change.noun, change.id), frozenset())

    def cards_of(self, change: Change, changed: Iterable[str]) -> tuple[str, ...]:
        """Those of the changed cards in whose print this change can be seen."""
        if not self._is_printed(change):
            return ()
        if change.noun == "card":
            return tuple(card for card in changed if card.rpartition("/")[2] == change.id)
        if change.kind in ("new", "gone", "moved") and change.noun in ("step", "stage"):
            return tuple(changed)  # the numbers of all later steps move
        stages = {self.stages[step] for step in self.of(change) if step in self.stages}
        if not stages:
            return tuple(changed) if change.noun in _ALL_CARDS else ()
        return tuple(
            card
            for card in changed
            if stages & set(self.cards.get(card.rpartition("/")[2], ()))
            or not self.cards.get(card.rpartition("/")[2])
        )

    def _is_printed(self, change: Change) -> bool:
        if change.kind != "changed":
            return change.noun not in ("symptom", "paper", "picture", "calculators")
        if change.noun == "step":
            spoken = change.field == "say" and (change.noun, change.id, "card") in self.facts
            return change.field.split(".")[0] not in _UNPRINTED and not spoken
        return change.noun not in ("symptom", "paper", "picture", "signoffs", "calculators")

    def others_of(self, change: Change) -> Iterator[str]:
        """Run sheet, calculators, translations and training that a change concerns."""
        if change.noun == "sum" or change.field.split(".")[0] in ("job", "defaults", "given"):
            yield "calculators"
        if self._is_printed(change) and change.noun in ("step", "stage", "places", "sum", "class"):
            yield "run sheet"
        path = f"steps.{change.id}.{change.field}" if change.noun == "step" else change.field
        yield from (f"translation {name}" for name, paths in self.languages.items() if path in paths)
        if change.group != "wording":
            yield "training"


def reach_of(content: Content, facts: Facts) -> Reach:
    """The reach of a content."""
    lab, procedure = content["lab"], content["procedure"]
    nouns = {(noun, id): fields for noun, ids in lab.items() if noun not in ("lab", "keep_apart")
             for id, fields in ids.items()}  # fmt: skip
    by_id: dict[str, list[tuple[str, str]]] = {}
    for noun, id in nouns:
        by_id.setdefault(id, []).append((noun, id))
    found: dict[tuple[str, str], set[str]] = {}
    stages: dict[str, str] = {}
    for stage in procedure["stages"]:
        for step in stage["steps"]:
            stages[step["id"]] = stage["stage"]
            if "picture" in step:
                found.setdefault(("picture", step["picture"]["file"]), set()).add(step["id"])
            for owned in _names_of(step):
                found.setdefault(("step", owned), set()).add(step["id"])
            for name in _reached(step, nouns, by_id):
                found.setdefault(name, set()).add(step["id"])
    cards = {card["id"]: tuple(card.get("stages", ())) for card in procedure.get("cards", ())}
    spoken = {name: frozenset(_paths("", file)) for name, file in content.get("languages", {}).items()}
    return Reach({name: frozenset(steps) for name, steps in found.items()}, stages, cards, facts, spoken)


def _names_of(step: dict[str, Any]) -> tuple[str, ...]:
    mend = step.get("fail", {}).get("mend")
    return (step["id"], mend["id"]) if mend else (step["id"],)


def _reached(
    step: dict[str, Any], nouns: Mapping[tuple[str, str], Any], by_id: Mapping[str, list[tuple[str, str]]]
) -> set[tuple[str, str]]:
    """What a step names, and what that names in turn; a container does not lead on."""
    found: set[tuple[str, str]] = set()
    waiting = [name for word in words_in(step) for name in by_id.get(word, ())]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            if name[0] in ("places", "mixtures", "ppe"):
                waiting += [more for word in words_in(nouns[name]) for more in by_id.get(word, ())]
    return found


def _paths(path: str, value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _paths(f"{path}.{key}" if path else key, inner)
    else:
        yield path
        # A translator may write the sentence alone where the field holds nothing else to translate.
        last = path.rpartition(".")[2]
        yield f"{path}.{'until' if last == 'hold' else 'say'}"
