"""A mixture is used later than it keeps."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, minutes, moments, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_quantity

DOC = RuleDoc(
    id="use-within",
    level=Level.ERROR,
    subject="time",
    what="A mixture is used later after it was made than its `use_within`.",
    why="It sets, heats or loses strength in the cup.",
    bad="""- {id: mix, do: mix, at: hood, into: fresh-mix, use: {resin-a: 100 g}, for: 3 min,
   say: Stir slowly.}
- {id: rest, do: wait, for: 40 min, say: Wait for the bell.}
- {id: pour, do: pour, at: hood, use: {fresh-mix: all}, say: Pour a thin stream.}""",
    good="""- {id: mix, do: mix, at: hood, into: fresh-mix, use: {resin-a: 100 g}, for: 3 min,
   say: Stir slowly.}
- {id: pour, do: pour, at: hood, use: {fresh-mix: all}, say: Pour a thin stream.}""",
    needs=("mixtures",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every use of a mixture that was made in the run, on every path."""
    for moment in moments(study):
        for id in moment.step.use:
            mixture = study.lab.mixtures.get(id)
            made = moment.before.atom("made", str(id))
            ended = moment.before.ended.get(made.since)
            if mixture is None or mixture.use_within is None or not made.value or ended is None:
                continue
            age = moment.before.clock.longest - ended.shortest
            if age > mixture.use_within.si and moment.step.do != "empty":
                yield found_at(
                    DOC,
                    moment,
                    f"{called(study, str(id))} is {minutes(age)} old here and keeps "
                    f"{show_quantity(mixture.use_within)}",
                    f"use it sooner after step {made.since}, or make it afresh",
                    label=f"made {since_when(study, made.since)}",
                )


RULE = Rule(DOC, in_procedure=find)
