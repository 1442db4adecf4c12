"""What a step meets: hazards where they bite, what is used, extraction, where the waste goes."""

from collections.abc import Iterator

from generator.hazards import label_statements, signal_word
from generator.model import FormulaRef, Place, Step
from generator.units import Quantity, show_quantity
from generator.views.filling.discarded import discarded
from generator.views.filling.hazard_words import word_sign, words_of
from generator.views.filling.telling import Telling
from generator.views.filling.words import (
    chemical_link,
    joined,
    low,
    named,
    thing_title,
)
from generator.views.shown import FactView, SignView
from generator.views.told import show_given

MEETING = frozenset(("open", "put-in", "add", "mix", "pour", "weigh"))


def hazard_signs(told: Telling, step: Step, place: Place | None) -> Iterator[SignView]:
    """The hazard words of the place, at the steps that come near it, and of what is used or mixed."""
    if place and step.do in (*MEETING, "take-out"):
        for word in place.hazards:
            yield word_sign(told.study.lab, word, low(place.title))
    for id in dict.fromkeys(str(id) for id in (*step.use, step.into) if id):
        yield from words_of(told.study, id, low(thing_title(told.study.lab, id)))


def met_lines(told: Telling, step: Step, place: Place | None) -> Iterator[FactView]:
    """What is used, its hazards and those of a bath that is opened, and the extraction."""
    study = told.study
    # The amount of a repeated step is that of the whole run.
    use = "Use in all" if step.repeat or _stage_repeats(told, step) else "Use"
    for id, amount in step.use.items():
        shown, key = _amount(told, amount)
        yield FactView(use, shown, chemical_link(study.lab, str(id)), key)
        yield from _bites(told, str(id))
    if place and step.do == "open" and place.holds:
        yield from _bites(told, str(place.holds))
    if place and place.extraction and step.do in MEETING:
        yield FactView("Extraction", place.extraction)


def _stage_repeats(told: Telling, step: Step) -> bool:
    return any(stage.repeat and step in stage.steps for stage in told.study.procedure.stages)


def _amount(told: Telling, amount: Quantity | str) -> tuple[str, str]:
    """How much is used; an amount that the job names, with the name of its sum."""
    if isinstance(amount, Quantity):
        return show_quantity(amount), ""
    value, key = told.study.procedure.job.get(amount), f"job.{amount}"
    found = told.study.sums.value(value, key) if isinstance(value, Quantity | FormulaRef) else None
    return (show_given(found, value, told.formulas), key) if found else (named(amount), "")


def _bites(told: Telling, id: str) -> Iterator[FactView]:
    """The declared statements of what a step meets, where it is met."""
    codes = told.study.statements_of(id)
    lines = label_statements(codes, told.edition)
    if lines:
        words = ". ".join(f"{line.text} ({line.code})" for line in lines)
        signal = signal_word(codes)
        text = f"{signal}. {words}." if signal else f"{words}."
        yield FactView("Hazard", text, chemical_link(told.study.lab, id))


def waste_fact(told: Telling, step: Step, place: Place | None) -> FactView | None:
    """The container that the step names, or what its place drains into."""
    lab = told.study.lab
    if step.waste:
        pieces = joined(low(thing_title(lab, piece)) for piece in discarded(told.study, step))
        title = thing_title(lab, step.waste)
        return FactView("Waste into", f"{title}: {pieces}" if pieces else title)
    if place and place.drains_to and step.do in ("rinse", "clean", "empty"):
        return FactView("Drains into", thing_title(lab, place.drains_to))
    return None
