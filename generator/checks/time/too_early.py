"""A step comes sooner than its window allows."""

from collections.abc import Iterator

from generator.checks.evidence.moments import found_at, minutes, moments
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_window

DOC = RuleDoc(
    id="too-early",
    level=Level.ERROR,
    subject="time",
    what="`since ... at least` is not reached, counted over a pause by its shortest time.",
    why="It is still soft, hot or wet inside.",
    bad="""- {id: mix, do: mix, at: hood, into: fresh-mix, use: {resin-a: 100 g}, for: 3 min,
   say: Stir slowly.}
- {id: gel, do: check, at: shelf, since: {step: mix, time: at least 24 h}, say: Press a corner.,
   check: not sticky}""",
    good="""- {id: label, do: act, at: shelf, say: Turn the label to the front.,
   pause: {keep: on the shelf, time: 24 h to 7 days}}
- {id: gel, do: check, at: shelf, since: {step: mix, time: at least 24 h}, say: Press a corner.,
   check: not sticky}""",
)


def find(study: Study) -> Iterator[Problem]:
    """Every step with an earliest moment, on every path."""
    for moment in moments(study):
        since = moment.step.since
        ended = moment.before.ended.get(str(since.step)) if since else None
        if since is None or ended is None or since.time.low is None:
            continue
        passed = moment.before.clock.shortest - ended.shortest
        if passed < since.time.low.si * (1 - 1e-9):
            yield found_at(
                DOC,
                moment,
                f"only {minutes(passed)} need pass from the end of {since.step} to the start of "
                f"{moment.step.id}; "
                f"the window is {show_window(since.time)}"
                + (f", because {since.because}" if since.because else ""),
                "put a `do: wait` step between them, or a `pause:` whose time is at least that long",
                label="starts here",
            )


RULE = Rule(DOC, in_procedure=find)
