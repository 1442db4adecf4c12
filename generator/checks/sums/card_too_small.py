"""A card that would need letters too small for its reading distance."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.checks.rule import Rule
from generator.model import Card
from generator.problems import Level, Problem, RuleDoc
from generator.units import show_quantity

DOC = RuleDoc(
    id="card-too-small",
    level=Level.ERROR,
    subject="sums",
    what=(
        "A card needs more lines than its sheet leaves at the letter height that its reading distance asks "
        "for."
    ),
    why=(
        "Letters that cannot be read from where the hands are make a card that is not read. It is split, "
        "never shrunk."
    ),
    bad="- {id: line-card, title: Line card, size: A4, read_from: 2.0 m, stages: [clean, coat, etch, plate]}",
    good="""- {id: clean-card, title: Clean card, size: A3, read_from: 1.5 m, stages: [clean]}
- {id: coat-card, title: Coat card, size: A3, read_from: 1.5 m, stages: [coat]}""",
    source="letter height of at least the reading distance over 300, as ANSI Z535.2 is quoted publicly",
)


@dataclass(frozen=True, slots=True)
class Part:
    """One card of a proposed split: first and last step by number, titles of its stages, letters in mm."""

    first: str
    last: str
    stages: tuple[str, ...] = ()
    letter: float = 0.0


def judge(
    card: Card, lines_needed: int, lines_there: int, least: float, proposal: Sequence[Part] = (),
    larger: Sequence[str] = (), nearer: float | None = None,
) -> Iterator[Problem]:  # fmt: skip
    """A card that does not fit: lines needed and there at the least letter height in mm; ways to split it.

    `larger` are the sheets on which it would fit whole; `nearer` is the longest reading distance in mm at
    which it would fit on its own sheet, 0 if there is none, None if nobody has looked. Nothing where the
    lines suffice.
    """
    if lines_needed <= lines_there:
        return
    yield DOC.found(
        card.spot("size"),
        f'card "{card.id}" needs {lines_needed} lines and has room for {lines_there}, with letters of '
        f"{least:.1f} mm "
        f"for a reader at {show_quantity(card.read_from)} on {card.size}",
        _fix(proposal, larger, nearer),
    )


def _fix(proposal: Sequence[Part], larger: Sequence[str], nearer: float | None) -> str:
    ways = []
    if proposal:
        parts = "; ".join(
            f"steps {part.first} to {part.last}{_titles(part)}{_letter(part)}" for part in proposal
        )
        # A card takes whole stages: where a stage is cut, the author has to cut it first.
        titles = [title for part in proposal for title in part.stages]
        first = ", each of them a stage of its own" if len(set(titles)) < len(titles) else ""
        ways.append(f"split it into {len(proposal)} cards ({parts}){first}")
    if larger:
        ways.append(f"print it on {' or '.join(larger)}")
    if nearer:
        ways.append(f"have it read from {nearer / 1000:.1f} m, where it would fit")
    elif nearer is None and ways:
        ways.append("have it read from nearer")
    if ways:
        return " or ".join(ways)
    other = "say them in fewer words" if nearer == 0 else "have it read from nearer"
    return f"give it fewer steps, or {other}"


def _titles(part: Part) -> str:
    return f" of {', '.join(part.stages)}" if part.stages else ""


def _letter(part: Part) -> str:
    return f" with letters of {part.letter:.1f} mm" if part.letter else ""


RULE = Rule(DOC, found_by="press")
