"""A shared machine is kept through a long wait."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, minutes, moments
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="holds-shared-machine",
    level=Level.WARNING,
    subject="places",
    what="A shared machine is held while the work waits twenty minutes or more somewhere else.",
    why="Others wait for a machine that stands still.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 40 min,
   say: Lower the board in.}   # the drill is still held""",
    good="""- {id: save-job, do: save, at: drill, say: Save the drill job.}
- {id: free-drill, do: release, at: drill, say: Clear the bed. Turn the slot to FREE.}""",
    needs=(
        "part",
        "places",
    ),
)


_LONG = 20 * 60


def find(study: Study) -> Iterator[Problem]:
    """Each long step on the straight run away from a machine that is held."""
    for moment in moments(study, straight=True):
        time = study.sums.time_of(moment.step)
        if time is None or time.si < _LONG:
            continue
        held = [id for id in moment.before.names("machine") if moment.before.text("machine", id) == "held"]
        for id in sorted(held):
            if moment.step.at != id:
                yield found_at(
                    DOC,
                    moment,
                    f"{called(study, id)} is kept while the work waits {minutes(time.si)} elsewhere",
                    f"put `do: save` and `do: release` at {id} before this step, and `do: claim` behind it",
                    moment.before.cause("machine", id),
                )


RULE = Rule(DOC, in_procedure=find)
