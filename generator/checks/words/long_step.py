"""A step's sentence is longer than twenty words."""

import re
from collections.abc import Iterator
from functools import lru_cache

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.study.sentences import Said

MOST_WORDS = 20
DOC = RuleDoc(
    id="long-step",
    level=Level.NOTE,
    subject="words",
    what=f"The sentence of a step has more than {MOST_WORDS} words.",
    why="It is read at arm's length, with wet gloves, between two looks at the work.",
    bad="""say: Take the board by the handle of the rack and slowly lower it into the bath until the liquid
  stands just above the upper edge of the board.""",
    good="""say: Lower the board in.
check: liquid above the upper edge""",
)


def find(study: Study) -> Iterator[Problem]:
    """Steps and mends."""
    for found in study.steps():
        count = _words_in(found.step.say)
        if count > MOST_WORDS:
            yield Said(found.step.say, "say", "command", found.step).found(
                DOC,
                f"the sentence has {count} words, and a step has at most {MOST_WORDS}",
                "keep the action; move what must be seen to `check`, the reason to `why`, the rest to a "
                "step of its own",
            )


@lru_cache(maxsize=4096)
def _words_in(text: str) -> int:
    return len(re.findall(r"[^\W_][\w'\u2019-]*", text))


RULE = Rule(DOC, in_procedure=find)
