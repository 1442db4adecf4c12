"""A stage that is on none of the procedure's cards."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc, missing
from generator.study import Study

DOC = RuleDoc(
    id="stage-on-no-card",
    level=Level.NOTE,
    subject="sums",
    what="The procedure has cards, and this stage is on none of them.",
    why="Where every other position has its card, the one without looks as if nothing were to be done there.",
    bad="cards:\n  - {id: clean-card, title: Clean, read_from: 1.5 m, stages: [clean]}  # etch is on none",
    good="cards:\n  - {id: line-card, title: Line card, read_from: 1.5 m, stages: [clean, etch]}",
    needs=("cards",),
)


def find(study: Study) -> Iterator[Problem]:
    """Stages, where at least one card carries stages."""
    carried = {str(stage) for card in study.procedure.cards for stage in card.stages}
    for stage in study.procedure.stages:
        if carried and str(stage.stage) not in carried:
            yield DOC.found(
                stage.spot("stage"),
                f'the stage "{stage.stage}" is on no card',
                f"name it under `stages` of the card that hangs where it is done: `{stage.stage}`",
                causes=(missing("card of stage", str(stage.stage), study.procedure.where.file),),
            )


RULE = Rule(DOC, in_procedure=find)
