"""A value of the job outside what the procedure is for."""

from collections.abc import Iterator

from generator.checks.evidence.job_values import job_values
from generator.checks.rule import Rule
from generator.model import Number, Text
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import Quantity, Window, show_quantity, show_window

DOC = RuleDoc(
    id="limit-broken-by-job",
    level=Level.ERROR,
    subject="sums",
    what="A value of the job, or of a class's job, lies outside the procedure's own `limits`, or cannot be "
    "compared with them.",
    why="The procedure was tried inside its limits. Outside them its times and its safety are guesses.",
    bad="""limits: {length: up to 150 mm}
job: {length: 160 mm}""",
    good="""limits: {length: up to 150 mm}
job: {length: 140 mm}""",
    needs=("limits",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every limit against the job's value of the same name, also in the rows of a list."""
    for name, limit in study.procedure.limits.items():
        yield from _not_a_quantity(study, name)
        for value, where in job_values(study, name):
            if value.dimension != limit.dimension:
                yield DOC.found(
                    where,
                    f"`{name}` is a {value.dimension} ({show_quantity(value)}), and its limit is a "
                    f"{limit.dimension}",
                    "write both in units of the same kind",
                )
            elif not limit.contains(value):
                yield DOC.found(
                    where,
                    f"`{name}` is {show_quantity(value)}, and the procedure is for {show_window(limit)}",
                    _fix(name, value, limit),
                )


def _not_a_quantity(study: Study, name: str) -> Iterator[Problem]:
    """A bare number or a name cannot be compared with a limit."""
    value = study.procedure.job.get(name)
    if isinstance(value, Number | Text):
        shown = value.text if isinstance(value, Number) else str(value)
        yield DOC.found(
            getattr(name, "where", study.procedure.spot("limits")),
            f"`{name}` has a limit and is `{shown}` in the job, without a unit: the two are never compared",
            f"write `{name}` with its unit in the job",
        )


def _fix(name: str, value: Quantity, limit: Window) -> str:
    edge = limit.high if limit.high and not Window(None, limit.high).contains(value) else limit.low
    shown = show_quantity(edge) if edge else show_window(limit)
    return f"bring `{name}` to {shown}, or have the approver set another limit after a trial"


RULE = Rule(DOC, in_procedure=find)
