"""Mains water comes after the deionised rinse that was to end it."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, causes_of, found_at, since_when
from generator.checks.evidence.riding import carried_against, mains_again
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="mains-after-last",
    level=Level.ERROR,
    subject="part",
    what=(
        "Salts of mains water ride into a place that refuses them, after a rinse had already taken them off."
    ),
    why=(
        "The salts cannot be seen and harm the bath. The last mains water is named once, and nothing "
        "after it may bring them back."
    ),
    bad="""- {id: rinse-1, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}
- {id: rinse-2, do: rinse, at: sink, for: 60 s, say: Rinse at the sink.}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the board in.}""",
    good="""- {id: rinse-1, do: rinse, at: sink, for: 60 s, say: Rinse at the sink.}
- {id: rinse-2, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the board in.}""",
    needs=(
        "part",
        "places",
        "residues",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """At each put-in, mains salts that came back after a rinse had taken them off."""
    for moment, id, place in at_places(study, "put-in"):
        again = sorted(mains_again(study, moment) & carried_against(moment, place))
        if again:
            since = moment.before.atom("residue", again[0]).since
            yield found_at(
                DOC,
                moment,
                f"{called(study, *again)} ride into {called(study, id)} from the mains water of "
                f"step {since}, "
                "which comes after the deionised rinse",
                f"rinse in step {since} with deionised water, or put a deionised rinse behind it",
                *causes_of(moment.before, "residue", again),
                label=f"mains water {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
