"""Short sentences that a card puts together, one writer a language."""

from collections.abc import Callable
from dataclasses import dataclass

from generator.units import Counted, Quantity, Window, show_counted, show_number, show_quantity

_SOLID = "\u00a0"


@dataclass(frozen=True, slots=True)
class Phrases:
    """again, back_to(step number, times) · within(window, step number) · every(time, what) · ramp(time).

    Of a ready-reckoner: at_step(step number) · held(other inputs) · never_above(limit).

    Of amounts and repeats: in_all(amount) · made_here(mixture) · worked_out, read_off(amount) ·
    steps_for(first, last, count) · from_step(first, count) · counted(count and word).

    Joining words of a window: between(low, high) · up_to(high) · at_least(low). A window never breaks over a
    line.
    """

    again: Callable[[str, int], str]
    back_to: Callable[[str, int], str]
    within: Callable[[str, str], str]
    every: Callable[[str, str], str]
    ramp: Callable[[str], str]
    between: Callable[[str, str], str]
    up_to: Callable[[str], str]
    at_least: Callable[[str], str]
    at_step: Callable[[str], str]
    held: Callable[[str], str]
    never_above: Callable[[str], str]
    in_all: Callable[[str], str]
    made_here: Callable[[str], str]
    worked_out: Callable[[str], str]
    read_off: Callable[[str], str]
    steps_for: Callable[[str, str, str], str]
    from_step: Callable[[str, str], str]
    counted: Callable[[Counted], str]
    fresh: str
    wash: str
    all: str
    rest: str

    def window(self, window: Window) -> str:
        """A window in these words: "20 a 28 °C", "hasta 8 min", "al menos 90 s"; a single value alone."""
        return _joined(self, window.low, window.high).replace(" ", _SOLID)


def _times_en(count: int) -> str:
    return {1: "once", 2: "twice at most"}.get(count, f"{count}{_SOLID}times at most")


def _times_es(count: int) -> str:
    return {1: "una vez"}.get(count, f"{count}{_SOLID}veces como máximo")


def _counted_es(counted: Counted) -> str:
    """An author's own word for what is counted stands as written; times are the product's word."""
    word = {"time": "vez", "times": "veces"}.get(counted.word, counted.word)
    return f"{counted.number}{_SOLID}{word}"


ENGLISH = Phrases(
    again=lambda step, count: f"Do step {step} again, {_times_en(count)}.",
    back_to=lambda step, count: f"Go back to step {step}, {_times_en(count)}.",
    within=lambda window, step: f"{window} after step {step}",
    every=lambda time, what: f"every {time}: {what}",
    ramp=lambda time: f"up in {time}",
    between=lambda low, high: f"{low} to {high}",
    up_to=lambda high: f"up to {high}",
    at_least=lambda low: f"at least {low}",
    at_step=lambda number: f"step {number}",
    held=lambda inputs: f"With {inputs}",
    never_above=lambda limit: f"Never above {limit}",
    in_all=lambda amount: f"{amount} in all",
    made_here=lambda mixture: f"{mixture}, made here",
    worked_out=lambda amount: f"work it out on the page, example {amount}",
    read_off=lambda amount: f"read how much goes in, example {amount}",
    steps_for=lambda first, last, count: f"{count}, steps {first} to {last}",
    from_step=lambda first, count: f"from step {first}, until {count} are done",
    counted=show_counted,
    fresh="a fresh pair",
    wash="then wash your hands",
    all="all of it",
    rest="the rest",
)
SPANISH = Phrases(
    again=lambda step, count: f"Repita el paso {step}, {_times_es(count)}.",
    back_to=lambda step, count: f"Vuelva al paso {step}, {_times_es(count)}.",
    within=lambda window, step: f"{window} después del paso {step}",
    every=lambda time, what: f"cada {time}: {what}",
    ramp=lambda time: f"sube en {time}",
    between=lambda low, high: f"{low} a {high}",
    up_to=lambda high: f"hasta {high}",
    at_least=lambda low: f"al menos {low}",
    at_step=lambda number: f"paso {number}",
    held=lambda inputs: f"Con {inputs}",
    never_above=lambda limit: f"Nunca más de {limit}",
    in_all=lambda amount: f"{amount} en total",
    made_here=lambda mixture: f"{mixture}, que se prepara aquí",
    worked_out=lambda amount: f"calcúlelo en la página, ejemplo {amount}",
    read_off=lambda amount: f"lea cuánto entra, ejemplo {amount}",
    steps_for=lambda first, last, count: f"{count}, pasos {first} a {last}",
    from_step=lambda first, count: f"desde el paso {first}, hasta completar {count}",
    counted=_counted_es,
    fresh="un par nuevo",
    wash="después, lávese las manos",
    all="todo",
    rest="el resto",
)


def _joined(words: Phrases, low: Quantity | None, high: Quantity | None) -> str:
    if low is None or high is None:
        side = low or high
        if side is None:
            return ""
        shown = show_quantity(side)
        return words.at_least(shown) if low else words.up_to(shown)
    if low == high:
        return show_quantity(low)
    first = show_number(low.number, low.decimals) if low.unit == high.unit else show_quantity(low)
    return words.between(first, show_quantity(high))


def phrases(language: str) -> Phrases:
    """The writer of a BCP 47 tag by its first part; English where none is shipped."""
    return SPANISH if language.split("-")[0].lower() == "es" else ENGLISH
