"""Current runs long and nobody looks."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, minutes
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="unwatched-power",
    level=Level.WARNING,
    subject="places",
    what="More than ten minutes with current or elements on, and the step has no `watch`, or one that "
    "comes round only after the time is over.",
    why="A slipped contact or a boiling bath is seen only by looking.",
    bad="""- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min,
   say: Hang the board in.}""",
    good="""- id: copper-in
  do: put-in
  at: copper
  power: {to: 5 A}
  for: 50 min
  say: Hang the board in.
  watch: {every: 15 min, check: current steady, fail: {say: Current to zero., call: technician}}""",
    needs=("places",),
)


_LONG = 10 * 60


def find(study: Study) -> Iterator[Problem]:
    """Each long step of the straight run at a place that is live."""
    for moment, id, _ in at_places(study, straight=True):
        time = study.sums.time_of(moment.step)
        if not (moment.after.has("live", id) and time and time.si > _LONG):
            continue
        watch = moment.step.watch
        if watch is None or watch.every.si > time.si:
            late = f": its watch comes every {minutes(watch.every.si)}" if watch else ""
            yield found_at(
                DOC,
                moment,
                f"{called(study, id)} is live for {minutes(time.si)} and nobody looks at it{late}",
                "write `watch: {every: 15 min, check: ..., fail: ...}`",
            )


RULE = Rule(DOC, in_procedure=find)
