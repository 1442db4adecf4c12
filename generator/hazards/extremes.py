"""The rule of extreme pH: a mixture at or below 2, or at or above 11.5, counts as corrosive (3.2.3.1.2)."""

from generator.hazards.composition import Composition
from generator.hazards.limit_table import extreme_ph
from generator.hazards.steps import Step, Unknown
from generator.units import Window


def extreme_ph_says(composition: Composition) -> str:
    """The sentence why the pH makes the mixture count as corrosive; "" if it does not, or no pH is given."""
    window = composition.ph
    if window is None:
        return ""
    low, high, _ = extreme_ph()
    bottom, top = window.low or window.high, window.high or window.low
    if bottom is not None and bottom.number <= low:
        return f"pH {show_ph(window)} reaches {low:g} or less"
    if top is not None and top.number >= high:
        return f"pH {show_ph(window)} reaches {high:g} or more"
    return ""


def ph_unknown(composition: Composition) -> tuple[Unknown, ...]:
    """What the pH leaves open: not given, or a window that is open towards 2 or 11.5."""
    window = composition.ph
    if window is None:
        return (Unknown("pH", "not given: at 2 or less, or 11.5 or more, the mixture counts as corrosive"),)
    if extreme_ph_says(composition) or (window.low is not None and window.high is not None):
        return ()
    return (Unknown("pH", f"{show_ph(window)} does not say where it ends on the other side"),)


def show_ph(window: Window) -> str:
    """A pH window in words."""
    if window.low is None or window.high is None:
        edge = window.low or window.high
        return f"{'up to' if window.low is None else 'at least'} {edge.number:g}" if edge else ""
    low, high = window.low.number, window.high.number
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"


def extreme_ph_step(composition: Composition, outcome: str) -> Step:
    """The row for it; the acid or alkaline reserve is not asked, and the row says so."""
    low, high, evidence = extreme_ph()
    at = composition.ph
    edge = (at.low or at.high) if at else None
    says = f"{outcome}, because {extreme_ph_says(composition)}; an acid or alkaline reserve may say otherwise"
    limit = f"pH up to {low:g}, or at least {high:g}"
    return Step("Extreme pH", "3.2.3.1.2", (), edge.number if edge else 0.0, limit, says, evidence)
