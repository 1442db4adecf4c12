"""A posted id that is gone."""

from collections.abc import Iterable, Sequence

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc, missing

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


_MOST = 3


def at(where: Location, kind: str, old: Sequence[str], new_ids: Iterable[str] = ()) -> Problem:
    """The problem of all ids of a kind that are gone: "step", "stage", "card" or "procedure", and new ids."""
    names = ", ".join(f'"{id}"' for id in old[:_MOST])
    more = f" and {len(old) - _MOST} more" if len(old) > _MOST else ""
    many = len(old) > 1
    if kind == "procedure":
        fix = f"give the file back, or write `newel withdraw {old[0]} --because ...`"
    else:
        new = ", ".join(f"`{id}`" for id in list(new_ids)[:_MOST])
        hint = f" (new here: {new})" if new else ""
        fix = f"write `was: {old[0]}` on what it has become{hint}, or give the id back"
    return DOC.found(
        where,
        f"the {kind}{'s' * many} {names}{more} of the posted issue{'s' * (kind == 'procedure' and many)} "
        f"{'are' if many else 'is'} gone",
        fix,
        explains=tuple(missing(kind, id, where.file) for id in old),
    )


RULE = Rule(DOC, found_by="posting")
