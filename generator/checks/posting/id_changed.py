"""A posted id that is gone."""

from collections.abc import Iterable

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc

DOC = RuleDoc(
    id="id-changed",
    level=Level.ERROR,
    subject="posting",
    what=(
        "The last posted issue has a step, stage or card whose id is gone, and nothing says `was: ...` with "
        "it."
    ),
    why="Laminated cards, run records and photos hang on the id. Without it their address leads nowhere.",
    bad="- {id: soak-start, do: put-in, at: soak, for: 8 min, say: Lower it in.}  # posted as soak-in",
    good="- {id: soak-start, was: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}",
)


def at(where: Location, kind: str, old: str, new_ids: Iterable[str] = ()) -> Problem:
    """The problem of one id: where the procedure starts, "step", "stage" or "card", the id, new ids."""
    new = ", ".join(f"`{id}`" for id in new_ids)
    hint = f" (new here: {new})" if new else ""
    return DOC.found(
        where,
        f'the {kind} "{old}" of the posted issue is gone',
        f"write `was: {old}` on what it has become{hint}, or give the id back",
    )


RULE = Rule(DOC, found_by="posting")
