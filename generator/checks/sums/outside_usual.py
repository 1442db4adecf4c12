"""A value of the job outside the range that this lab calls usual."""

from collections.abc import Iterator

from generator.checks.evidence.job_values import job_values
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import Quantity, Window, show_quantity, show_window

DOC = RuleDoc(
    id="outside-usual",
    level=Level.WARNING,
    subject="sums",
    what="A value of the job, or one given to a step, lies outside `calculators.<formula>.usual` of the lab: "
    "of the formulas that the procedure uses, or of any where it uses none that has a range for the value.",
    why=(
        "A slipped decimal point looks like any other number. Outside the usual range somebody should look "
        "twice."
    ),
    bad="""# lab
calculators:
  plating_time:
    usual: {copper: 15 to 30 um}
# procedure
job: {copper: 220 um}""",
    good="job: {copper: 22 um}",
    needs=("calculators",),
)


def find(study: Study) -> Iterator[Problem]:
    """The job's values and those given to a step, against the usual ranges of their name."""
    giving = [found.step for found in study.steps() if found.step.given]
    for name, formula, usual in _ranges(study):
        for value, where in job_values(study, name):
            if is_outside(value, usual):
                yield DOC.found(where, *_words(name, value, usual, formula))
        for step in giving:
            given = step.given.get(name)
            if isinstance(given, Quantity) and is_outside(given, usual):
                yield DOC.found(step.spot("given"), *_words(name, given, usual, formula), step=str(step.id))


def _ranges(study: Study) -> Iterator[tuple[str, str, Window]]:
    """By name the ranges of the formulas that the procedure uses; of all, where it uses none with one."""
    used = {str(sum.formula) for sum in study.sums.by_key.values()}
    used.update(str(formula) for found in study.steps() for formula in found.step.formulas)
    ranges: dict[str, list[tuple[str, Window]]] = {}
    for formula, settings in study.lab.calculators.items():
        for name, usual in settings.usual.items():
            ranges.setdefault(name, []).append((str(formula), usual))
    for name, found in ranges.items():
        own = [row for row in found if row[0] in used]
        yield from ((name, formula, usual) for formula, usual in own or found)


def is_outside(value: Quantity, window: Window) -> bool:
    """Whether a quantity of the same kind lies outside; of another kind it is not compared here."""
    return value.dimension == window.dimension and not window.contains(value)


def _words(name: str, value: Quantity, usual: Window, formula: str) -> tuple[str, str]:
    return (
        f"`{name}` is {show_quantity(value)}; usual here is {show_window(usual)} (calculators, {formula})",
        "look at the number and its unit again; if it is meant, accept the warning with the reason",
    )


RULE = Rule(DOC, in_procedure=find)
