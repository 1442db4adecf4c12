"""A laminated copy that is no longer what is posted."""

from collections.abc import Sequence

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc

DOC = RuleDoc(
    id="copy-stale",
    level=Level.WARNING,
    subject="sums",
    what="A laminated copy hangs on the wall with an issue or a check code that is not the posted one.",
    why="Whoever stands before it works by what is no longer true.",
    bad="# procedures/posted/copies.yml: etch-card, copy 2, issue 3 - and issue 4 is posted",
    good="# procedures/posted/copies.yml: etch-card, copy 2, issue 4",
)


def at(
    where: Location, card: str, copy: str, hangs: str, posted: str, changed: Sequence[str] = ()
) -> Problem:
    """The problem of one copy: card, number, the issue that hangs and the posted one, steps that changed."""
    steps = f" (changed: {', '.join(changed)})" if changed else ""
    return DOC.found(
        where,
        f'copy {copy} of card "{card}" is issue {hangs}, and issue {posted} is posted{steps}',
        "print it, hang it up, and note the new copy with `newel copies`",
    )


RULE = Rule(DOC, found_by="posting")
