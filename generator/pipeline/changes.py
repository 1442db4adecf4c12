"""What changed between two contents, told in the trade's words with what each change affects."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from generator.pipeline.contents import Drafted
from generator.posting.affected import Reach, reach_of
from generator.posting.change import Change, differences
from generator.posting.content import Content
from generator.posting.facts import Facts, facts_of
from generator.posting.shelf import Shelf
from generator.posting.telling import naming, tell


@dataclass(frozen=True, slots=True)
class ToldChange:
    """A change as a line; the steps it reaches, the cards that print it, and what else it affects."""

    change: Change
    text: str
    steps: tuple[str, ...] = ()
    cards: tuple[str, ...] = ()
    affects: tuple[str, ...] = ()


def changes_since(
    shelf: Shelf, drafted: Drafted, codes: Mapping[str, str], since: int = 0
) -> tuple[ToldChange, ...]:
    """Changes of the files as they stand since an issue, the newest if none is named."""
    file = shelf.issue(drafted.id, since) if since else shelf.last(drafted.id)
    issue = file.read() if file else None
    if issue is None:
        return ()
    if issue.head.check_code == drafted.code:
        return ()
    posted = {name: str(card.code) for name, card in issue.head.cards.items()}
    return tell_changes(issue.content, drafted.content, drafted.facts, changed_cards(posted, codes))


def changed_cards(old: Mapping[str, str], new: Mapping[str, str]) -> tuple[str, ...]:
    """Cards of which copies with the old code are wrong now."""
    return tuple(card for card in dict.fromkeys((*old, *new)) if old.get(card) != new.get(card))


def tell_changes(old: Content, new: Content, facts: Facts, cards: tuple[str, ...]) -> tuple[ToldChange, ...]:
    """Every change from one content to another; `cards` are those that print something else now."""
    before = facts_of(old)
    found = differences(before, facts, successors(new["procedure"]))
    if not found:
        return ()
    names, reach, gone = naming(before, facts), reach_of(new, facts), reach_of(old, before)
    told = [_told(change, tell(change, names), reach, gone, cards) for change in found]
    return tuple(_with_the_rest(told, cards))


def _told(change: Change, text: str, reach: Reach, gone: Reach, cards: tuple[str, ...]) -> ToldChange:
    steps = reach.of(change) or (gone.of(change) if change.kind == "gone" else frozenset())
    order = [step for step in (*reach.stages, *gone.stages) if step in steps]
    seen = (*reach.cards_of(change, cards), *gone.cards_of(change, cards))
    return ToldChange(
        change,
        text,
        tuple(dict.fromkeys(order)),
        tuple(card for card in cards if card in seen),
        tuple(dict.fromkeys(reach.others_of(change))),
    )


def _with_the_rest(told: list[ToldChange], cards: tuple[str, ...]) -> Iterable[ToldChange]:
    """A card that prints something else for no change of its own is laid to the gravest change."""
    lost = set(cards) - {card for one in told for card in one.cards}
    first, *others = told
    if lost:
        kept = tuple(card for card in cards if card in first.cards or card in lost)
        first = ToldChange(first.change, first.text, first.steps, kept, first.affects)
    return (first, *others)


def successors(procedure: dict[str, Any]) -> dict[tuple[str, str], str]:
    """The new id of every (noun, old id) that a `was` names; the first of several successors counts."""
    out: dict[tuple[str, str], str] = {}
    stages = procedure["stages"]
    steps = [step for stage in stages for step in stage["steps"]]
    mends = [step["fail"]["mend"] for step in steps if "mend" in step.get("fail", {})]
    for noun, rows, key in (
        ("stage", stages, "stage"),
        ("step", [*steps, *mends], "id"),
        ("card", procedure.get("cards", []), "id"),
    ):
        for row in rows:
            if "was" in row:
                out.setdefault((noun, row["was"]), row[key])
    return out
