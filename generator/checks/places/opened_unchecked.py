"""A bath is opened and nobody looks into it."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="opened-unchecked",
    level=Level.ERROR,
    subject="places",
    what="A place with a lid is opened, has no `look`, and the step has neither `check` nor `look`.",
    why="A low, cold or spoiled bath is noticed when it is opened, or not at all.",
    bad="""places: {soak: {title: Soak cleaner, holds: soak-mix, cover: lid}}   # no look""",
    good="""places: {soak: {title: Soak cleaner, holds: soak-mix, cover: lid,
   look: liquid between the two lines, not_right: {say: Lid on., call: technician}}}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every opening of a lid where neither place nor step says what to look at."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        seen = step.check or step.look or (place.look if place else None)
        if step.do == "open" and place and place.cover == "lid" and not seen:
            yield DOC.found(
                step.spot("id"),
                f"{called(study, str(step.at))} is opened and nothing says what must be seen in it",
                f"write `look: ...` and `not_right: ...` at the place {step.at}, or a `check:` "
                "with `fail:` here",
                step=str(step.id),
                causes=(Cause("look", str(step.at)),),
            )


RULE = Rule(DOC, in_procedure=find)
