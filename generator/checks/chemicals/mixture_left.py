"""A mixture made in the run is still there at its end."""

from collections.abc import Iterator

from generator.checks.evidence.contents import mixture, place_of
from generator.checks.evidence.moments import called, found_at_end
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study, title_of

DOC = RuleDoc(
    id="mixture-left",
    level=Level.ERROR,
    subject="chemicals",
    what="A mixture that a step makes, and that stands at no place of its own, is never emptied into its "
    "`leftovers`.",
    why="A cup of mixed resin heats itself in a bin. What is made ends somewhere that is named.",
    bad="""steps:
  - {id: mix, do: mix, at: hood, use: {resin-a: 182 g, hardener-b: 58 g}, into: fresh-mix, say: Stir slowly.}
  - {id: pour, do: pour, at: hood, use: {fresh-mix: all}, say: Pour it into the mould.}""",
    good="""steps:
  - {id: mix, do: mix, at: hood, use: {resin-a: 182 g, hardener-b: 58 g}, into: fresh-mix, say: Stir slowly.}
  - {id: pour, do: pour, at: hood, use: {fresh-mix: all}, say: Pour it into the mould.}
  - {id: scrape-out, do: empty, at: hood, use: {fresh-mix: rest}, waste: tin-h, say: Into the tin.}""",
    needs=("mixtures", "waste"),
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a mixture, at the step that makes it; one a step that empties it into nothing named."""
    yield from _nowhere(study)
    for end in study.walk.ends:
        for id in end.state.names("made"):
            made = mixture(study.lab, id)
            since = end.state.atom("made", id).since
            if made and made.leftovers and not place_of(study.lab, id):
                yield found_at_end(
                    DOC,
                    study,
                    end,
                    since,
                    f"{called(study, id)} is made here and not emptied into {called(study, made.leftovers)}",
                    f"add a step: `do: empty`, `use: {{{id}: rest}}`, `waste: {made.leftovers}`",
                    end.state.cause("made", id),
                )


def _nowhere(study: Study) -> Iterator[Problem]:
    for found in study.steps():
        step = found.step
        emptied = next((id for id in step.use if mixture(study.lab, str(id))), None)
        if step.do == "empty" and emptied is not None and step.waste is None:
            made = mixture(study.lab, str(emptied))
            into = made.leftovers if made else None
            yield DOC.found(
                step.where,
                f"{title_of(study.lab, str(emptied))} is emptied, but no container is named",
                f"write `waste: {into or '...'}` at this step",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
