"""Look up each formula's inputs by name, inner formulas first, and work the answers out."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Any

from generator.formulas import Formula, FormulaError, Input
from generator.model import FormulaRef, Lab, Number, Procedure, Step, Text
from generator.problems import Level, Location, Problem
from generator.problems import missing as cause_of_missing
from generator.sums.known import Known, nearest_input
from generator.sums.limits import passed_limits
from generator.sums.sum import Given, Sum, Sums
from generator.units import Quantity, show_quantity

_DEEPEST = 8


def work_out(lab: Lab, procedure: Procedure, known: Known) -> tuple[Sums, tuple[Problem, ...]]:
    """All sums of a procedure, and what could not be worked out."""
    run = _Run(lab, procedure, known)
    for name, value in procedure.job.items():
        if isinstance(value, FormulaRef):
            run.job(str(name))
    for step in _steps(procedure):
        for key, reference in _asked(step):
            run.sum(f"{step.id}.{key}", reference, step, ())
        run.judge_given(step)
    return Sums(run.sums), tuple(run.problems)


def _steps(procedure: Procedure) -> Iterator[Step]:
    for step in procedure.steps:
        yield step
        if step.fail and step.fail.mend:
            yield step.fail.mend


def _asked(step: Step) -> Iterator[tuple[str, FormulaRef]]:
    if isinstance(step.for_, FormulaRef):
        yield "for", step.for_
    if step.power and isinstance(step.power.to, FormulaRef):
        yield "power", step.power.to


class _Run:
    """One working-out of a procedure; each job value once."""

    def __init__(self, lab: Lab, procedure: Procedure, known: Known) -> None:
        self.lab = lab
        self.procedure = procedure
        self.known = known
        self.sums: dict[str, Sum] = {}
        self.problems: list[Problem] = []
        self.failed: set[str] = set()

    def job(self, name: str, path: tuple[str, ...] = ()) -> Quantity | None:
        """A job value that is itself a formula."""
        key = f"job.{name}"
        if key not in self.sums and key not in self.failed:
            value = self.procedure.job[name]
            assert isinstance(value, FormulaRef)
            self.sum(key, value, None, path)
        return self.sums[key].answer if key in self.sums else None

    def sum(self, key: str, reference: FormulaRef, step: Step | None, path: tuple[str, ...]) -> None:
        """Work one sum out and keep it; where that cannot be, one problem says why."""
        formula = self.known.find(str(reference.formula))
        if formula is None:
            self.fail(key, self._unknown(reference.formula, step))
        elif key in path or len(path) > _DEEPEST:
            words = " -> ".join([*path, key])
            self.fail(
                key,
                self._problem(
                    "unreadable",
                    reference.formula.where,
                    f"the values need each other: {words}",
                    "give one of them as a quantity",
                    step,
                ),
            )
        else:
            self._evaluate(key, formula, reference, step, (*path, key))

    def _evaluate(
        self, key: str, formula: Formula, reference: FormulaRef, step: Step | None, path: tuple[str, ...]
    ) -> None:
        where = reference.formula.where
        own = reference.given
        strange = self._not_inputs(own, (formula,), step)
        if strange:
            self.failed.add(key)
            self.problems += strange
            return
        givens = [
            given
            for each in formula.inputs
            if (
                given := Given(each.name, own[each.name], "step")
                if each.name in own
                else self._look_up(each.name, formula, step, path)
            )
        ]
        if any(given.value is None for given in givens):
            self.failed.add(key)
            return
        values: dict[str, Any] = {given.name: _plain(given.value) for given in givens}
        try:
            answer = formula.evaluate(values)
        except FormulaError as bad:
            self.fail(key, self._refused(bad, formula, values, where, step))
            return
        self.sums[key] = Sum(key, formula.name, tuple(givens), answer)
        self._hold_to_limits(formula, values, answer, where, step)

    def judge_given(self, step: Step) -> None:
        """What a step gives to its formulas by a name that none of them asks for, nor its `use`."""
        if not step.given:
            return
        names = [str(name) for name in step.formulas] + [str(one.formula) for _, one in _asked(step)]
        formulas = [self.known.find(name) for name in names]
        asked = {name: value for name, value in step.given.items() if name not in step.use.values()}
        if None not in formulas:
            self.problems += self._not_inputs(asked, [one for one in formulas if one], step)

    def _not_inputs(
        self, given: Mapping[str, Any], formulas: Sequence[Formula], step: Step | None
    ) -> tuple[Problem, ...]:
        """One problem a name under `given` that is no input of these formulas, with the nearest that is."""
        inputs = [each.name for formula in formulas for each in formula.inputs]
        who = " or ".join(dict.fromkeys(formula.name for formula in formulas)) or "a formula of this step"
        return tuple(
            self._problem(
                "unknown-name",
                getattr(name, "where", step.where if step else self.procedure.where),
                f"`given` names `{name}`, which is no input of {who}",
                nearest_input(str(name), inputs),
                step,
            )
            for name in given
            if name not in inputs
        )

    def _hold_to_limits(
        self,
        formula: Formula,
        values: Mapping[str, Any],
        answer: Quantity,
        where: Location,
        step: Step | None,
    ) -> None:
        """What the lab never lets this formula pass; the sum stands, so that nothing else goes missing."""
        for passed in passed_limits(formula, values, answer, self.lab.calculators.get(formula.name)):
            what = f"`{passed.name}` is" if passed.name else f"the {formula.answer.means} comes out as"
            shown = show_quantity(passed.value if passed.name else formula.answer.rounded(passed.value))
            message = f"{formula.name}: {what} {shown}, and never above {show_quantity(passed.limit)} here"
            fix = "bring it down, or have the approver set another limit under `calculators`"
            self.problems.append(self._problem("limit-broken-by-job", where, message, fix, step))

    def _look_up(self, name: str, formula: Formula, step: Step | None, path: tuple[str, ...]) -> Given | None:
        """The step's `given`, the job, the lab's defaults; the formula's own default is its own."""
        if step is not None and name in step.given:
            return Given(name, step.given[name], "step")
        if name in self.procedure.job:
            value = self.procedure.job[name]
            worked = self.job(name, path) if isinstance(value, FormulaRef) else value
            return Given(name, worked, "formula" if isinstance(value, FormulaRef) else "job")
        settings = self.lab.calculators.get(formula.name)
        if settings and name in settings.defaults:
            return Given(name, settings.defaults[name], "lab")
        return None

    def _unknown(self, name: Text, step: Step | None) -> Problem:
        return self._problem(
            "unknown-name", name.where, f'there is no formula "{name}"', self.known.nearest(name), step
        )

    def _refused(
        self,
        bad: FormulaError,
        formula: Formula,
        values: Mapping[str, Any],
        where: Location,
        step: Step | None,
    ) -> Problem:
        missing = bad.given and bad.given not in values
        what = f"{formula.name}: {bad.what}"
        if missing:
            lacking = self._problem("required-missing", where, what, self._give(bad), step)
            return replace(lacking, causes=(cause_of_missing("input", bad.what, where.file),))
        rule, fix = _rule_of(formula, bad.given, values), bad.fix or "look at the numbers given"
        return self._problem(rule, where, what, fix, step)

    def _give(self, bad: FormulaError) -> str:
        """How to give an input that is missing, with the job's own name that is near to it."""
        near = get_close_matches(bad.given, list(self.procedure.job), 1)
        own = f" (the job has `{near[0]}`)" if near else ""
        return f"{bad.fix} under `job`{own}, or under `given` of the step"

    def _problem(self, rule: str, where: Location, message: str, fix: str, step: Step | None) -> Problem:
        return Problem(rule, Level.ERROR, where, message, fix, step=str(step.id) if step else "")

    def fail(self, key: str, problem: Problem) -> None:
        """Remember what could not be worked out, and why."""
        self.failed.add(key)
        self.problems.append(problem)


def _rule_of(formula: Formula, name: str, values: Mapping[str, Any]) -> str:
    """A value of the wrong kind lacks its unit; a value of the right kind is out of bounds."""
    wanted, given = formula.input(name), values.get(name)
    if isinstance(wanted, Input) and isinstance(given, Quantity) and given.dimension == wanted.dimension:
        return "limit-broken-by-job"
    return "unit-missing" if name else "limit-broken-by-job"


def _plain(value: object) -> object:
    """Numbers of the model as floats and rows as plain mappings."""
    if isinstance(value, Number):
        return value.value
    if isinstance(value, tuple):
        return tuple({name: _plain(cell) for name, cell in row.items()} for row in value)
    return str(value) if isinstance(value, Text) else value
