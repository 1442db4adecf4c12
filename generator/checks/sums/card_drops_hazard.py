"""A card that leaves out a hazard or a piece of wear of its steps."""

from collections.abc import Iterator, Mapping, Set

from generator.checks.rule import Rule
from generator.model import Card
from generator.problems import Level, Problem, RuleDoc

DOC = RuleDoc(
    id="card-drops-hazard",
    level=Level.ERROR,
    subject="sums",
    what="A card does not show a hazard or a piece of wear that one of its steps has.",
    why="Who stands before the card has only the card. What it leaves out is not there.",
    bad="- {id: etch-card, title: Etch card, read_from: 1.5 m, stages: [etch], show: [stop-rule]}",
    good="- {id: etch-card, title: Etch card, read_from: 1.5 m, stages: [etch]}",
)


def judge(
    card: Card, shown_hazards: Set[str], shown_wear: Set[str],
    hazards: Mapping[str, Set[str]], wear: Mapping[str, Set[str]],
) -> Iterator[Problem]:  # fmt: skip
    """What a card shows against what each of its steps has, by step id; all as the words that are printed."""
    yield from _dropped(card, "hazard", shown_hazards, hazards)
    yield from _dropped(card, "piece of wear", shown_wear, wear)


def _dropped(card: Card, kind: str, shown: Set[str], wanted: Mapping[str, Set[str]]) -> Iterator[Problem]:
    steps_by_thing: dict[str, list[str]] = {}
    for step, things in wanted.items():
        for thing in sorted(things - shown):
            steps_by_thing.setdefault(thing, []).append(step)
    for thing, steps in steps_by_thing.items():
        more = f" and {len(steps) - 1} more" if len(steps) > 1 else ""
        yield DOC.found(
            card.spot("show"),
            f'card "{card.id}" leaves out a {kind} of step {steps[0]}{more}: {thing}',
            "delete `show: ...`, or name `wear` and `hazards` in it",
            step=steps[0],
        )


RULE = Rule(DOC, found_by="press")
