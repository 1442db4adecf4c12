"""Quantities and windows of a study in words, as pages and cards print them."""

from collections.abc import Callable, Mapping

from generator.formulas import Formula
from generator.model import FormulaRef, Reading, Step
from generator.study import Study
from generator.units import Quantity, Window, show_quantity, show_unit, show_window


def show_time(study: Study, step: Step, formulas: Mapping[str, Formula]) -> str:
    """How long a step lasts, empty where it does not say; a sum is rounded as its formula asks."""
    time = study.sums.time_of(step)
    return show_given(time, step.for_, formulas) if time else ""


def show_current(study: Study, step: Step, formulas: Mapping[str, Formula]) -> str:
    """To what a step brings the current, empty where it does not."""
    power = study.sums.power_of(step)
    return show_given(power, step.power.to if step.power else None, formulas) if power else ""


def show_given(value: Quantity, source: object, formulas: Mapping[str, Formula]) -> str:
    """A value as given, or rounded as the formula that gave it asks; many minutes to whole ones."""
    formula = formulas.get(str(source.formula)) if isinstance(source, FormulaRef) else None
    if formula is None:
        return show_quantity(value)
    if value.unit == "min" and value.number >= 10:
        return show_quantity(Quantity(float(round(value.number)), "min", 0))
    return show_quantity(formula.answer.rounded(value))


# These start a timer by themselves; any other step does where it names one.
_SOUNDING = frozenset(("put-in", "wait", "set", "heat", "cool"))


def sounds(step: Step) -> bool:
    """Whether a timer runs for the step."""
    named = step.alarm is not None or step.when_it_sounds is not None
    return step.for_ is not None and (named or step.do in _SOUNDING)


def show_amount(study: Study, amount: Quantity | str, formulas: Mapping[str, Formula]) -> str:
    """How much is used: as given, as a value of the job works out, or the author's word ("rest")."""
    if isinstance(amount, Quantity):
        return show_quantity(amount)
    value = study.procedure.job.get(amount)
    found = study.sums.value(value, f"job.{amount}") if isinstance(value, Quantity | FormulaRef) else None
    return show_given(found, value, formulas) if found else amount.replace("-", " ").replace("_", " ")


def show_reading(name: str, reading: Reading, window: Callable[[Window], str] = show_window) -> str:
    """A reading's name with its unit or limit: "hole 1 (up to 0.70 mΩ)"; `window` puts a limit in words."""
    label = name.replace("-", " ")
    if reading.limit is not None:
        return f"{label} ({window(reading.limit)})"
    return f"{label} ({show_unit(reading.unit)})" if reading.unit else label
