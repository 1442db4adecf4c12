"""One quantity typed in two fields."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Location, Problem, RuleDoc
from generator.study import Study
from generator.study.once import once_a_step
from generator.units import Quantity, write_quantity

DOC = RuleDoc(
    id="number-typed-twice",
    level=Level.WARNING,
    subject="sums",
    what=(
        "A step types a quantity that the job already holds, two steps type the same amount of the same "
        "thing, or "
        "the job repeats a default of the lab's calculators."
    ),
    why=(
        "After the next edit one of the two is old, and the page's own numbers for another part reach only "
        "one of them."
    ),
    bad="""job: {resin: 182 g}
steps:
  - id: weigh-a
    use: {resin-a: 182 g}""",
    good="""job: {resin: 182 g}
steps:
  - id: weigh-a
    use: {resin-a: resin}""",
)


@dataclass(frozen=True, slots=True)
class _Typed:
    value: Quantity
    where: Location
    field: str
    step: Step


def find(study: Study) -> Iterator[Problem]:
    """Fields of steps against the job, amounts against one another, the job against the lab's defaults."""
    amounts: dict[tuple[str, float], _Typed] = {}
    job = {name: value for name, value in study.procedure.job.items() if isinstance(value, Quantity)}
    sizes = [(str(name), value.si) for name, value in job.items()]
    for typed in (typed for found in study.steps() for typed in _typed(found.step)):
        si = typed.value.si
        near = (name for name, other in sizes if _is_near(si, other))
        name = next((name for name in near if job[name].dimension == typed.value.dimension), "")
        key = (typed.field, si)
        if name:
            yield _problem(typed, f"the job holds the same as `{name}`", _by_name(typed, name))
        elif typed.field.startswith("use.") and key in amounts:
            thing = typed.field.removeprefix("use.")
            yield _problem(
                typed,
                f"step {amounts[key].step.id} types the same amount of {thing}",
                f"write it once under `job`, as `{thing.replace('-', '_')}: {write_quantity(typed.value)}`, "
                f"and its name in both steps",
            )
        amounts.setdefault(key, typed)
    yield from _defaults(study)


@once_a_step
def _typed(step: Step) -> tuple[_Typed, ...]:
    return tuple(_each_typed(step))


def _each_typed(step: Step) -> Iterator[_Typed]:
    for name, value in step.use.items():
        if isinstance(value, Quantity):
            yield _Typed(value, getattr(name, "where", step.where), f"use.{name}", step)
    for own, given in step.given.items():
        if isinstance(given, Quantity):
            yield _Typed(given, getattr(own, "where", step.where), f"given.{own}", step)
    if isinstance(step.for_, Quantity):
        yield _Typed(step.for_, step.spot("for"), "for", step)
    if step.power and isinstance(step.power.to, Quantity):
        yield _Typed(step.power.to, step.power.spot("to"), "power.to", step)


def _same(one: Quantity, other: Quantity) -> bool:
    return _is_near(one.si, other.si) and one.dimension == other.dimension


def _is_near(one: float, other: float) -> bool:
    return abs(one - other) <= 1e-9 * abs(other)


def _by_name(typed: _Typed, name: str) -> str:
    """How to refer to the job's value from the field; a time or a current takes it from a formula."""
    field, _, own = typed.field.partition(".")
    if field == "use":
        return f"write `use: {{{own}: {name}}}`"
    if field == "given":
        return f"delete `{own}` here; the job's `{name}` is looked up by its name"
    return f"keep it in one place: delete `{name}` from the job, or work `{typed.field}` out with a formula"


def _problem(typed: _Typed, found: str, fix: str) -> Problem:
    shown = write_quantity(typed.value)
    return DOC.found(
        typed.where, f"{shown} is typed in `{typed.field}`, and {found}", fix, step=str(typed.step.id)
    )


def _defaults(study: Study) -> Iterator[Problem]:
    """Job values that repeat a default of the lab's calculators."""
    for name, value in study.procedure.job.items():
        for formula, settings in study.lab.calculators.items():
            default = settings.defaults.get(name)
            if isinstance(value, Quantity) and isinstance(default, Quantity) and _same(value, default):
                yield DOC.found(
                    getattr(name, "where", study.procedure.spot("job")),
                    f"`{name}: {write_quantity(value)}` is already the lab's default for {formula}",
                    "delete the line; the default counts where the job says nothing",
                )


RULE = Rule(DOC, in_procedure=find)
