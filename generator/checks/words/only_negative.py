"""A step only says what not to do."""

import re
from collections.abc import Iterator

from generator.checks.evidence.english import sentences
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.study.sentences import Said

DOC = RuleDoc(
    id="only-negative",
    level=Level.NOTE,
    subject="words",
    what="The sentence of a step only says what not to do.",
    why="A step is something that is done and ticked. A prohibition alone leaves the hands without a task.",
    bad="say: Do not touch the rack.",
    good="say: Leave the rack on the stand. Touch nothing.",
    needs=("english",),
)
_NEGATIVE = re.compile(
    r"(?:please )?(?:do not|don['\u2019]t|never|no|avoid|must not|may not|cannot|nobody|nothing)\b",
    re.IGNORECASE,
)


def find(study: Study) -> Iterator[Problem]:
    """Steps and mends."""
    for found in study.steps():
        said = sentences(found.step.say)
        if said and all(_NEGATIVE.match(sentence) for sentence in said):
            yield Said(found.step.say, "say", "command", found.step).found(
                DOC,
                "the step only says what not to do",
                "say first what to do; the prohibition may follow as a second sentence",
            )


RULE = Rule(DOC, in_procedure=find)
