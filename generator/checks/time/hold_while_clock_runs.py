"""Work waits for a person while a window runs out."""

from collections.abc import Iterator

from generator.checks.evidence.moments import found_at
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_window

DOC = RuleDoc(
    id="hold-while-clock-runs",
    level=Level.WARNING,
    subject="time",
    what="A `hold` stands between a step and the one that must follow it within `since ... up to`.",
    why="The person is late, and the part is lost.",
    bad="""- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}
- {id: buddy-here, do: hold, hold: {who: buddy, until: buddy says READY}, say: Ask your buddy to come.}
- {id: copper-in, do: put-in, at: copper, since: {step: rinse-5, time: up to 8 min},
   say: Hang the board in.}""",
    good="""- {id: buddy-here, do: hold, hold: {who: buddy, until: buddy says READY},
   say: Ask your buddy to come.}
- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}
- {id: copper-in, do: put-in, at: copper, since: {step: rinse-5, time: up to 8 min},
   say: Hang the board in.}""",
)


def find(study: Study) -> Iterator[Problem]:
    """Each hold on the straight run that stands inside a running window."""
    run = study.walk.straight
    orders = {str(moment.step.id): moment.order for moment in run}
    for moment in run:
        since = moment.step.since
        if since is None or since.time.high is None:
            continue
        start = orders.get(str(since.step), moment.order)
        for waiting in run:
            if waiting.step.hold is not None and start < waiting.order < moment.order:
                yield found_at(
                    DOC,
                    waiting,
                    f"this waits for a person while {moment.step.id} must follow {since.step} within "
                    f"{show_window(since.time)}",
                    f"put the hold before {since.step}",
                )


RULE = Rule(DOC, in_procedure=find)
