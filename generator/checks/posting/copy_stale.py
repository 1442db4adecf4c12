"""A laminated copy that is no longer what is posted."""

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc

DOC = RuleDoc(
    id="copy-stale",
    level=Level.WARNING,
    subject="posting",
    what="A laminated copy hangs on the wall with an issue or a check code that is not the posted one.",
    why="Whoever stands before it works by what is no longer true.",
    bad="# procedures/posted/copies.yml: etch-card, copy 2, issue 3 - and issue 4 is posted",
    good="# procedures/posted/copies.yml: etch-card, copy 2, issue 4",
)


def at(where: Location, card: str, copy: str, hangs: str, now: str, gone: bool = False) -> Problem:
    """The problem of one copy: its card, its number, the issue that hangs, and what holds now, in words.

    `gone` says that no card takes its place.
    """
    done = f"newel copies replaced {card} {copy}"
    fix = (
        f"take it down, then write `{done} --taken-down`"
        if gone
        else f"hang up the posted card in its place, then write `{done}`"
    )
    return DOC.found(where, f'copy {copy} of card "{card}" is issue {hangs}, and {now}', fix)


RULE = Rule(DOC, found_by="posting")
