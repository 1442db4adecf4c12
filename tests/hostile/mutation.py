"""Strange inputs made from good ones: pieces of a lab taken out, moved, doubled, or given other words."""

import random
from collections.abc import Callable
from typing import Any

from generator.model.described import described
from generator.model.verbs import VERBS
from generator.notation import as_yaml, plain, read_text
from tests.hostile.doors import BETWEEN
from tests.hostile.spoilt import TEXTS

Spot = tuple[Any, Any]  # a dict or list, and a key or index in it
Deed = Callable[[random.Random, list[Spot], list[str]], None]

WORDS = (
    *TEXTS, *VERBS, "", " ", "~", "true", "false", "all", "rest", "none", "0", "-1", "1e308 g", "8", "8 min",
    "up to 8 min", "at least 90 s", "6 to 10 min", "10 to 6 min", "0 min", "-5 min", "45 degC", "1.9 A/dm2",
    "2.57 dm2", "1e-300 mm", "99999 years", "4 points", "16:40", "2026-02-30", "H314", "7664-93-9",
    "{formula: plating_time}", "../../etc/passwd", "con", "aux", "\u202e", "\u0000", "e\u0301" * 40,
    "\U0001f9ea", "Ⅷ min", "٣ min", "½ L", "١٢:٣٠", "İ", "ß", "x" * 61, "a-" * 20, "hot-surface",
    "lid", "door", "a" * 3000, "\u2028", "\ufeff",
)  # fmt: skip
FIELDS = tuple(sorted({field.name for noun in described() for field in noun.fields}))
_DEEDS = 6
_OF_THE_LAB = 0.35


def mutate(data: bytes, seed: int, wanted: "tuple[Deed, ...]" = ()) -> bytes:
    """The same lab and procedure with a few deeds done to them; what cannot be read comes back as it is."""
    dice = random.Random(seed)
    texts = data.split(BETWEEN)
    roots = [read_text(text, "x.yml").root for text in texts]
    trees = [None if root is None else plain(root) for root in roots]
    words = [word for tree in trees for _, word in _spots(tree) if isinstance(word, str)]
    deeds = wanted or dice.choice((DEEDS, WORDS_ONLY))
    for _ in range(dice.randint(1, _DEEDS)):
        spots = _places(trees[0] if dice.random() < _OF_THE_LAB else trees[-1])
        if spots:
            dice.choice(deeds)(dice, spots, words)
    written = (text if tree is None else as_yaml(tree).encode("utf-8", "surrogatepass")
               for text, tree in zip(texts, trees, strict=True))  # fmt: skip
    return BETWEEN.join(written)


def _spots(tree: Any) -> list[tuple[Spot, Any]]:
    """Every place in a tree with what stands there."""
    if not isinstance(tree, dict | list):
        return []
    found: list[tuple[Spot, Any]] = []
    for key, value in list(tree.items() if isinstance(tree, dict) else enumerate(tree)):
        found += [((tree, key), value), *_spots(value)]
    return found


def _places(tree: Any) -> list[Spot]:
    return [spot for spot, _ in _spots(tree)]


def _drop(dice: random.Random, spots: list[Spot], _: list[str]) -> None:
    holder, key = dice.choice(spots)
    del holder[key]


def _other_word(dice: random.Random, spots: list[Spot], words: list[str]) -> None:
    holder, key = dice.choice(spots)
    holder[key] = dice.choice(words or list(WORDS)) if dice.random() < 0.5 else dice.choice(WORDS)


def _more_words(dice: random.Random, spots: list[Spot], _: list[str]) -> None:
    """Behind a sentence, so that the lab may still be published."""
    texts = [(holder, key) for holder, key in spots if isinstance(holder[key], str) and _is_said(holder[key])]
    if texts:
        holder, key = dice.choice(texts)
        holder[key] = f"{holder[key]} {dice.choice(WORDS)}"


def _is_said(text: str) -> bool:
    return " " in text and not text[0].isdigit() and not text.startswith(("up to", "at least"))


def _swap(dice: random.Random, spots: list[Spot], _: list[str]) -> None:
    (one, here), (other, there) = dice.choice(spots), dice.choice(spots)
    inner = {id(holder) for (holder, _), _ in _spots(one[here])} | {id(one[here])}
    if isinstance(one[here], type(other[there])) and id(other) not in inner:
        outer = {id(holder) for (holder, _), _ in _spots(other[there])} | {id(other[there])}
        if id(one) not in outer:
            one[here], other[there] = other[there], one[here]


def _double(dice: random.Random, spots: list[Spot], _: list[str]) -> None:
    listed = [(holder, key) for holder, key in spots if isinstance(holder, list)]
    if listed:
        holder, key = dice.choice(listed)
        holder.insert(dice.randint(0, len(holder)), plain_copy(holder[key]))


def _move(dice: random.Random, spots: list[Spot], _: list[str]) -> None:
    listed = [(holder, key) for holder, key in spots if isinstance(holder, list)]
    if listed:
        holder, key = dice.choice(listed)
        item = holder.pop(key)
        holder.insert(dice.randint(0, len(holder)), item)


def _new_field(dice: random.Random, spots: list[Spot], words: list[str]) -> None:
    holder, _key = dice.choice(spots)
    if isinstance(holder, dict):
        value = dice.choice(words or list(WORDS)) if dice.random() < 0.6 else dice.choice(WORDS)
        holder[dice.choice(FIELDS)] = dice.choice((value, [value], {dice.choice(FIELDS): value}))


def _other_field(dice: random.Random, spots: list[Spot], _: list[str]) -> None:
    holder, key = dice.choice(spots)
    if isinstance(holder, dict):
        holder[dice.choice(FIELDS)] = holder.pop(key)


def plain_copy(value: Any) -> Any:
    """A deep copy of plain data."""
    if isinstance(value, dict):
        return {key: plain_copy(inner) for key, inner in value.items()}
    return [plain_copy(inner) for inner in value] if isinstance(value, list) else value


WORDS_ONLY: tuple[Deed, ...] = (_more_words,)
DEEDS: tuple[Deed, ...] = (
    _drop, _other_word, _more_words, _swap, _double, _move, _new_field, _other_field,
)  # fmt: skip
