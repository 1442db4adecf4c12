"""Something is to be done when a check fails, and there is no check."""

from collections.abc import Iterator

from generator.checks.evidence.fails import fails, limited, looks
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="mend-without-check",
    level=Level.ERROR,
    subject="people",
    what="`fail` or `mend` stands on a step, or a watch, that checks nothing.",
    why="Nobody sees whether it failed, and nobody sees whether it is mended.",
    bad="""- {id: dry-2, do: dry, fail: {redo: dry-2, at_most: 3, call: keeper}, say: Dry it.}""",
    good="""- {id: dry-2, do: dry, at: blower, say: Dry it.}
- {id: see-dry, do: check, check: no film, fail: {redo: dry-2, at_most: 3, call: keeper}, say: Tilt it.}""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a `fail`; a `do: check` without a mark is told by another rule."""
    for found in fails(study):
        step, watch = found.step, found.step.watch
        if found.of_watch and watch:
            checks = bool(watch.check or limited(watch.record))
        else:
            checks = looks(study, step) or step.do == "check"
        if not checks:
            what = "`mend`" if found.fail.mend else "`fail`"
            yield DOC.found(
                found.fail.where,
                f"{what} stands here, but {'the watch' if found.of_watch else 'the step'} checks nothing",
                "write `check: ...` with what must be seen, or move this to the step that looks",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
