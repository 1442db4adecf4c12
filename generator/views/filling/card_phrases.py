"""Short sentences that a card puts together, one writer a language."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Phrases:
    """again(step number, times) · within(window, step number) · every(time, what) · ramp(time)."""

    again: Callable[[str, int], str]
    within: Callable[[str, str], str]
    every: Callable[[str, str], str]
    ramp: Callable[[str], str]


def _times_en(count: int) -> str:
    return {1: "once", 2: "twice at most"}.get(count, f"{count} times at most")


def _times_es(count: int) -> str:
    return {1: "una vez"}.get(count, f"{count} veces como máximo")


ENGLISH = Phrases(
    again=lambda step, count: f"Then step {step} again, {_times_en(count)}.",
    within=lambda window, step: f"{window} after step {step}",
    every=lambda time, what: f"every {time}: {what}",
    ramp=lambda time: f"up in {time}",
)
SPANISH = Phrases(
    again=lambda step, count: f"Después, otra vez el paso {step}, {_times_es(count)}.",
    within=lambda window, step: f"{window} después del paso {step}",
    every=lambda time, what: f"cada {time}: {what}",
    ramp=lambda time: f"sube en {time}",
)


def phrases(language: str) -> Phrases:
    """The writer of a BCP 47 tag by its first part; English where none is shipped."""
    return SPANISH if language.split("-")[0].lower() == "es" else ENGLISH
