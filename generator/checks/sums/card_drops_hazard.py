"""A card that leaves out what its steps need: hazards, wear, amounts, stop rule, hold points, marks."""

from collections.abc import Iterator, Mapping, Set

from generator.checks.rule import Rule
from generator.model import Card
from generator.problems import Level, Problem, RuleDoc

DOC = RuleDoc(
    id="card-drops-hazard",
    level=Level.ERROR,
    subject="sums",
    what=(
        "A card does not show a hazard, wear, extraction, the stop rule, a hold point, a mark, the "
        "amount of a chemical, a check or a step that belongs to it."
    ),
    why="Who stands before the card has only the card. What it leaves out is not there.",
    bad="- {id: etch-card, title: Etch card, read_from: 1.5 m, stages: [etch], show: [stop-rule]}",
    good="- {id: etch-card, title: Etch card, read_from: 1.5 m, stages: [etch]}",
)


def judge(
    card: Card, shown_hazards: Set[str], shown_wear: Set[str],
    hazards: Mapping[str, Set[str]], wear: Mapping[str, Set[str]],
) -> Iterator[Problem]:  # fmt: skip
    """What a card shows against what each of its steps has, by step id; all as the words that are printed."""
    yield from left_out(card, "hazards", {"": shown_hazards}, hazards)
    yield from left_out(card, "wear", {"": shown_wear}, wear)


def left_out(
    card: Card, kind: str, shown: Mapping[str, Set[str]], wanted: Mapping[str, Set[str]]
) -> Iterator[Problem]:
    """One problem of a kind, at the first step that lacks something; shown under "" is shown for all."""
    everywhere = shown.get("", frozenset())
    missing = {step: things - everywhere - shown.get(step, frozenset()) for step, things in wanted.items()}
    lacking = {step: sorted(things) for step, things in missing.items() if things}
    if lacking:
        first = next(iter(lacking))
        every = ", ".join(dict.fromkeys(thing for things in lacking.values() for thing in things))
        steps = f"{len(lacking)} steps, first {first}" if len(lacking) > 1 else f"step {first}"
        yield DOC.found(
            card.spot("show"),
            f'card "{card.id}" leaves out {kind} of {steps}: {every}',
            "delete `show: ...`, or name `wear`, `stop-rule` and `hazards` in it"
            if card.show
            else "this is no fault of the text: tell those who make Newel, and hang no such card",
            step=first,
        )


RULE = Rule(DOC, found_by="press")
