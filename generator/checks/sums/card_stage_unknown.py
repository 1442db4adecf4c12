"""A card that names a stage which is not there."""

from collections.abc import Iterator
from difflib import get_close_matches

from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc, missing
from generator.study import Study, nearest

DOC = RuleDoc(
    id="card-stage-unknown",
    level=Level.ERROR,
    subject="sums",
    what="A card names a stage that the procedure does not have.",
    why="The card would hang on the wall without the steps that it was made for.",
    bad="cards:\n  - {id: etch-card, title: Etch card, read_from: 1.5 m, stages: [ech]}",
    good="cards:\n  - {id: etch-card, title: Etch card, read_from: 1.5 m, stages: [etch]}",
    needs=("cards",),
)


def find(study: Study) -> Iterator[Problem]:
    """Each wrong name once."""
    known = [str(stage.stage) for stage in study.procedure.stages]
    for card in study.procedure.cards:
        for stage in card.stages:
            if stage not in known:
                yield DOC.found(
                    stage.where,
                    f'card "{card.id}" names the stage "{stage}", which is not there',
                    nearest(str(stage), known),
                    explains=_meant(str(stage), known, study.procedure.where.file),
                )


def _meant(word: str, known: list[str], file: str) -> tuple[Cause, ...]:
    """The stage that was most likely meant is on no card because its name is mistyped here."""
    return tuple(missing("card of stage", near, file) for near in get_close_matches(word, known, 1))


RULE = Rule(DOC, in_procedure=find)
