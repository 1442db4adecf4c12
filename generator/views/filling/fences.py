"""Between what a number of the job must stay: what the procedure is made for, and what a place carries."""

from collections.abc import Iterator

from generator.formulas import Formula
from generator.study import Study
from generator.sums import Sum, answer_limit
from generator.units import Quantity, Window, show_quantity, show_window
from generator.views.filling.words import low
from generator.views.plan import FenceView


def window_fence(study: Study, name: str) -> tuple[FenceView, ...]:
    """The procedure's own limit of a value of this name."""
    limits = {str(own): window for own, window in study.procedure.limits.items()}
    window = limits.get(name)
    return (_fence(window, f"this procedure is for {show_window(window)}"),) if window else ()


def sum_fences(study: Study, sum: Sum, formula: Formula) -> tuple[FenceView, ...]:
    """The procedure's limit, the lab's, and those of the place where the value is set."""
    return tuple(
        fence for fence, kind in _sum_fences(study, sum, formula) if kind.dimension == sum.answer.dimension
    )


def _sum_fences(study: Study, sum: Sum, formula: Formula) -> Iterator[tuple[FenceView, Window]]:
    id, _, field = sum.key.rpartition(".")
    limits = {str(own): window for own, window in study.procedure.limits.items()}
    if id == "job" and field in limits:
        yield window_fence(study, field)[0], limits[field]
    most = answer_limit(formula, study.lab.calculators.get(formula.name))
    if most:
        window = Window(None, most)
        yield _fence(window, f"never above {show_quantity(most)} in this lab"), window
    step = next((one for one in study.procedure.steps if str(one.id) == id), None)
    place = study.place(step.at) if step else None
    if place is None:
        return
    if field == "power" and place.power and place.power.most:
        window = Window(None, place.power.most)
        yield _fence(window, f"the {low(place.title)} carries {_up_to(place.power.most)}"), window
    if field == "for" and place.time:
        yield _fence(place.time, f"the {low(place.title)} takes {show_window(place.time)}"), place.time


def _up_to(most: Quantity) -> str:
    return f"up to {show_quantity(most)}"


def _fence(window: Window, says: str) -> FenceView:
    return FenceView(window.low.si if window.low else None, window.high.si if window.high else None, says)
