"""What changed between two contents, told in the trade's words with what each change affects."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from generator.pipeline.check import Checked
from generator.pipeline.contents import Drafted, Print, card_prints, known_formulas
from generator.pipeline.standing import posted_studies
from generator.posting.affected import Reach, reach_of
from generator.posting.change import Change, differences
from generator.posting.content import Content
from generator.posting.facts import Facts, facts_of
from generator.posting.telling import naming, shown_value, tell
from generator.reading import LabRead


@dataclass(frozen=True, slots=True)
class ToldChange:
    """A change as a line; the steps it reaches, the cards that print it, and what else it affects."""

    change: Change
    text: str
    steps: tuple[str, ...] = ()
    cards: tuple[str, ...] = ()
    affects: tuple[str, ...] = ()


@dataclass(frozen=True)
class Comparison:
    """The files against an issue: changes, cards that print something else, what each card prints now."""

    changes: tuple[ToldChange, ...] = ()
    cards: tuple[str, ...] = ()
    prints: Mapping[str, Print] = field(default_factory=dict)


def compare(read: LabRead, checked: Checked, drafted: Drafted, since: int = 0) -> Comparison:
    """Changes of the files as they stand since an issue, the newest if none is named; none before the first.

    Cards are compared as both contents print them today, so that no copy is wrong for the press's sake alone.
    """
    shelf, formulas = checked.shelf, known_formulas(read)
    prints = card_prints(drafted.studies, formulas)
    file = shelf.issue(drafted.id, since) if since else shelf.last(drafted.id)
    issue = file.read() if file else None
    if issue is None:
        return Comparison((), tuple(prints), prints)
    if issue.head.check_code == drafted.code:
        return Comparison((), (), prints)
    before = card_prints(posted_studies(issue, read, checked), formulas)
    names = dict.fromkeys((*before, *prints))
    cards = {name: _otherwise(before.get(name, ()), prints.get(name, ())) for name in names}
    changed = {name: texts for name, texts in cards.items() if before.get(name) != prints.get(name)}
    told = tell_changes(issue.content, drafted.content, drafted.facts, changed)
    return Comparison(told, tuple(changed), prints)


def _otherwise(old: Print, new: Print) -> str:
    """The texts that only one of two prints has."""
    first, second = {text for _, text in old}, {text for _, text in new}
    return _plain("\n".join(first ^ second))


def _plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ").casefold()


def tell_changes(
    old: Content, new: Content, facts: Facts, cards: Mapping[str, str]
) -> tuple[ToldChange, ...]:
    """Every change from one content to another; `cards` give the texts that differ on changed cards."""
    before = facts_of(old)
    found = differences(before, facts, successors(new["procedure"]))
    names, reach, gone = naming(before, facts), reach_of(new, facts), reach_of(old, before)
    seen = _seen_on(found, cards, reach, gone)
    return tuple(_told(change, tell(change, names), reach, gone, seen[change]) for change in found)


def _seen_on(
    found: tuple[Change, ...], cards: Mapping[str, str], reach: Reach, gone: Reach
) -> dict[Change, tuple[str, ...]]:
    """On which cards each change can be seen.

    A change whose text stands among the texts that differ can be seen there; where a card has none such, all
    that reach it are taken, and where none does, the gravest.
    """
    seen: dict[Change, list[str]] = {change: [] for change in found}
    for card, differs in cards.items():
        near = [one for one in found if card in (*reach.cards_of(one, cards), *gone.cards_of(one, cards))]
        sure = [
            one for one in near if not _has_text(one) or any(_plain(part) in differs for part in _parts(one))
        ]
        for change in sure or near or found[:1]:
            seen[change].append(card)
    return {change: tuple(names) for change, names in seen.items()}


def _has_text(change: Change) -> bool:
    """Whether a card prints this fact as it is written, and not through a drawing, a list or a sum."""
    return (
        change.kind == "changed"
        and change.group != "new hazard"
        and change.noun not in ("sum", "ppe", "substances")
    )


def _parts(change: Change) -> Iterator[str]:
    yield from (shown_value(text).strip("“”") for text in (change.old, change.new) if text)


def _told(change: Change, text: str, reach: Reach, gone: Reach, cards: tuple[str, ...]) -> ToldChange:
    steps = reach.of(change) or (gone.of(change) if change.kind == "gone" else frozenset())
    order = [step for step in (*reach.stages, *gone.stages) if step in steps]
    return ToldChange(
        change, text, tuple(dict.fromkeys(order)), cards, tuple(dict.fromkeys(reach.others_of(change)))
    )


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
