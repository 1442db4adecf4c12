"""A redo without an end."""

from collections.abc import Iterator

from generator.checks.evidence.fails import fails
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="endless-redo",
    level=Level.ERROR,
    subject="people",
    what="`redo` or `mend` has no `at_most`.",
    why="A step repeated until it looks right ruins the part and the afternoon. After some times somebody "
    "is called.",
    bad="""fail: {redo: dry-2, call: technician}""",
    good="""fail: {redo: dry-2, at_most: 3, call: technician}""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a `fail`."""
    for found in fails(study):
        fail = found.fail
        if (fail.redo or fail.mend) and fail.at_most is None and "at_most" not in fail.marks:
            again = f"from {fail.redo} again" if fail.redo else "mended"
            yield DOC.found(
                fail.where,
                f"when the check of {found.step.id} fails, the work is done {again} without end"
                if fail.redo
                else f"when the check of {found.step.id} fails, it is mended again and again",
                "write how often, as `at_most: 2`; after that the role under `call` decides",
                step=str(found.step.id),
            )


RULE = Rule(DOC, in_procedure=find)
