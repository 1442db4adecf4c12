"""The part carries a residue into a place that refuses it."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, causes_of, found_at, part, since_when
from generator.checks.evidence.riding import carried_against, mains_again
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="residue-not-allowed",
    level=Level.ERROR,
    subject="part",
    what="The part goes into a place carrying a residue that the place does not list under `allows`.",
    why="What one bath leaves on the part harms the next one, for the whole class.",
    bad="""- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}
- {id: cond-in, do: put-in, at: cond, for: 3.5 min, say: Lower the board in.}""",
    good="""- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}
- {id: rinse-1, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}
- {id: cond-in, do: put-in, at: cond, for: 3.5 min, say: Lower the wet board in.}""",
    needs=(
        "part",
        "places",
        "residues",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """At each put-in, the residues that the place refuses; `mains-after-last` has its own."""
    for moment, id, place in at_places(study, "put-in"):
        if place.allows is None and place.holds is None:
            continue
        refused = carried_against(moment, place) - mains_again(study, moment)
        if refused:
            names = sorted(refused)
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} carries {called(study, *names)} into {called(study, id)}, "
                f"which takes {called(study, *place.allows) if place.allows else 'a clean part'} only",
                fix(study, names),
                *causes_of(moment.before, "residue", names),
                label=(
                    f"on the {part(study)} {since_when(study, moment.before.atom('residue', names[0]).since)}"
                ),
            )


def fix(study: Study, residues: list[str]) -> str:
    """The places that take the residues off."""
    clearing = [
        id for id, place in study.lab.places.items() if set(residues) & set(place.clears) and not place.holds
    ]
    if not clearing:
        return "no place of the lab takes this off; add one, or list it under `allows` if it does no harm"
    return (
        f"put a step before it that takes it off: a `do: rinse` or `do: clean` at {called(study, *clearing)}"
    )


RULE = Rule(DOC, in_procedure=find)
