"""A shared machine is freed before its work is saved."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="freed-unsaved",
    level=Level.ERROR,
    subject="places",
    what="`release` without `save` before it.",
    why="The next user clears it, and hours of work are gone.",
    bad="""- {id: free-drill, do: release, at: drill,
   say: Turn the slot to FREE.}   # and no save before it""",
    good="""- {id: save-job, do: save, at: drill, say: Save the drill job.}
- {id: free-drill, do: release, at: drill, say: Turn the slot to FREE.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every release."""
    for moment, id, _ in at_places(study, "release"):
        if not moment.before.has("saved", id):
            yield found_at(
                DOC,
                moment,
                f"{called(study, id)} is freed and its work was not saved",
                f"put a `do: save` step at {id} before {moment.step.id}",
                moment.before.cause("saved", id),
            )


RULE = Rule(DOC, in_procedure=find)
