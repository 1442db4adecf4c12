"""A step comes later than its window allows."""

from collections.abc import Iterator

from generator.checks.evidence.moments import found_at, minutes, moments
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc, misplaced
from generator.study import Study
from generator.units import show_window

DOC = RuleDoc(
    id="too-late",
    level=Level.ERROR,
    subject="time",
    what="`since ... up to` is exceeded on some path, a redo or the longest pause included.",
    why="Bare copper dulls in air, resin sets in the cup: after that time the work is lost.",
    bad="""- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}
- {id: tea, do: wait, for: 15 min, say: Wait for the bell.}
- {id: copper-in, do: put-in, at: copper, since: {step: rinse-5, time: up to 8 min,
   because: bare copper dulls}, say: Hang the board in.}""",
    good="""- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}
- {id: copper-in, do: put-in, at: copper, since: {step: rinse-5, time: up to 8 min,
   because: bare copper dulls}, say: Hang the board in.}""",
)


def find(study: Study) -> Iterator[Problem]:
    """Every step with a latest moment, on every path; a window counted from a later step is never judged."""
    yield from _counted_from_later(study)
    for moment in moments(study):
        since = moment.step.since
        ended = moment.before.ended.get(str(since.step)) if since else None
        if since is None or ended is None or since.time.high is None:
            continue
        passed = moment.before.clock.longest - ended.longest
        if passed > since.time.high.si * (1 + 1e-9):
            yield found_at(
                DOC,
                moment,
                f"{minutes(passed)} pass from the end of {since.step} to the start of {moment.step.id}; "
                f"the window is {show_window(since.time)}"
                + (f", because {since.because}" if since.because else ""),
                f"move steps out from between {since.step} and {moment.step.id}, or make them shorter",
                label="starts here",
            )


def _counted_from_later(study: Study) -> Iterator[Problem]:
    """A step that others count from and that comes behind them: whatever else it does wrong follows."""
    ids = [str(step.id) for step in study.procedure.steps]
    for index, step in enumerate(study.procedure.steps):
        later = str(step.since.step) if step.since is not None else ""
        if step.since is not None and later in ids[index:]:
            yield DOC.found(
                step.since.spot("step"),
                f"{later} does not come before {step.id}, so no time passes between them",
                "name an earlier step under `since`",
                step=str(step.id),
                causes=(Cause("ended", later),),
                explains=(misplaced(later),) if later != step.id else (),
            )


RULE = Rule(DOC, in_procedure=find)
