"""What changed between two issues: a difference of two maps of facts, each difference with its group."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher

from generator.posting.facts import Facts, Key
from generator.posting.groups import NOUN_GROUP, ORDER, Group, group_of

Kind = str
# Told as what came, went, moved or has another id.
_SAYING = ("say", "title", "answer", "paper", "symptom")
_ROWS = {("procedure", "stages"), ("stage", "steps"), ("step", "id"), ("card", "id")}


@dataclass(frozen=True, slots=True)
class Change:
    """One fact that changed; or a noun that came, went, moved or has another id.

    `kind` is "changed", "new", "gone", "moved" or "renamed". `old` and `new` are the facts' texts; for a noun
    that came or went, its title or sentence and its hazards.
    """

    noun: str
    id: str
    field: str
    old: str
    new: str
    group: Group
    kind: Kind = "changed"


def differences(old: Facts, new: Facts, successors: Mapping[tuple[str, str], str]) -> tuple[Change, ...]:
    """Every change, the gravest group first; `successors` give an old (noun, id) its new id."""
    taken = {name: id for name, id in successors.items() if id not in _ids(old, name[0])}
    before = {_renamed(key, taken): text for key, text in old.items()}
    found = [
        Change(noun, new_id, "id", id, new_id, "wording", "renamed") for (noun, id), new_id in taken.items()
    ]
    went, came = _nouns(before) - _nouns(new), _nouns(new) - _nouns(before)
    found += [_whole(name, before, "gone") for name in _in_order(went, before)]
    found += [_whole(name, new, "new") for name in _in_order(came, new)]
    found += _moved(before, new)
    found += _fields(_in_words(before, taken), new, went | came)
    return tuple(sorted(found, key=lambda change: ORDER.index(change.group)))


def _in_order(names: set[tuple[str, str]], facts: Facts) -> list[tuple[str, str]]:
    return [name for name in dict.fromkeys(key[:2] for key in facts) if name in names]


def _ids(facts: Facts, noun: str) -> set[str]:
    return {key[1] for key in facts if key[0] == noun}


def _nouns(facts: Facts) -> set[tuple[str, str]]:
    return {key[:2] for key in facts if key[1]}


def _renamed(key: Key, taken: Mapping[tuple[str, str], str]) -> Key:
    noun, id, field = key
    return noun, taken.get((noun, id), id), field


def _in_words(facts: Facts, taken: Mapping[tuple[str, str], str]) -> Facts:
    """References to a step that has another id now are no changes of their own."""
    names = {id: new for (noun, id), new in taken.items() if noun in ("step", "stage")}
    if not names:
        return facts
    return {
        key: names.get(text, text)
        if key[2].rpartition(".")[2] in ("redo", "step", "at", "id", "mend")
        else text
        for key, text in facts.items()
    }


def _whole(name: tuple[str, str], facts: Facts, kind: Kind) -> Change:
    noun, id = name
    said = next((facts[noun, id, field] for field in _SAYING if (noun, id, field) in facts), "")
    hazards = facts.get((noun, id, "hazards"), "")
    words = f"{said} ({hazards})" if hazards else said
    group: Group = NOUN_GROUP.get(noun, "order")
    if kind == "new" and (hazards or noun == "hazard_words"):
        group = "new hazard"
    return Change(noun, id, "", words if kind == "gone" else "", words if kind == "new" else "", group, kind)


def _moved(old: Facts, new: Facts) -> Iterator[Change]:
    """Steps and stages that stand elsewhere in the order; to have new neighbours is no move."""
    for noun, row in (("stage", _stages), ("step", _steps)):
        before, after = row(old), row(new)
        both = set(before) & set(after)
        first, second = [id for id in before if id in both], [id for id in after if id in both]
        blocks = SequenceMatcher(a=first, b=second, autojunk=False).get_matching_blocks()
        kept = {id for block in blocks for id in first[block.a : block.a + block.size]}
        for id in (id for id in second if id not in kept):
            yield Change(noun, id, "", _behind(before, id), _behind(after, id), "order", "moved")


def _stages(facts: Facts) -> list[str]:
    return facts.get(("procedure", "", "stages"), "").split(", ")


def _steps(facts: Facts) -> list[str]:
    return [
        step
        for stage in _stages(facts)
        for step in facts.get(("stage", stage, "steps"), "").split(", ")
        if step
    ]


def _behind(row: list[str], id: str) -> str:
    at = row.index(id)
    return f"behind {row[at - 1]}" if at else "first"


def _fields(old: Facts, new: Facts, without: set[tuple[str, str]]) -> Iterator[Change]:
    for key in dict.fromkeys((*old, *new)):
        noun, id, field = key
        before, after = old.get(key, ""), new.get(key, "")
        if before != after and (noun, id) not in without and (noun, field) not in _ROWS:
            yield from _changed(key, before, after)


def _changed(key: Key, old: str, new: str) -> Iterator[Change]:
    noun, id, field = key
    if field == "hazards":
        was, now = ({code for code in text.split(", ") if code} for text in (old, new))
        group: Group = "new hazard" if now - was else "chemical"
        yield Change(noun, id, field, old, new, group)
    else:
        yield Change(noun, id, field, old, new, group_of(noun, id if noun == "sum" else field, old, new))
