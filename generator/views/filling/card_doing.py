"""What a row of a card says of the doing: amounts, repeats, what is put on, extraction, who, pauses."""

from collections.abc import Mapping

from generator.formulas import Formula
from generator.model import FormulaRef, Place, Stage, Step
from generator.units import Quantity, show_quantity
from generator.views.filling.card_phrases import Phrases
from generator.views.filling.translation import Words
from generator.views.filling.words import stands_elsewhere
from generator.views.told import show_amount


def amount_shown(
    words: Words, step: Step, stage: Stage, formulas: Mapping[str, Formula], dwell_shown: str
) -> str:
    """The one given amount of a step without a time, to stand in large figures; else empty.

    An amount that is worked out or read changes with the day's numbers and is never large on a wall.
    """
    if dwell_shown or len(step.use) != 1 or step.repeat or stage.repeat:
        return ""
    [amount] = step.use.values()
    if _read_off(words, step, amount):
        return ""
    return show_amount(words.study, amount, formulas) if isinstance(_given(words, amount), Quantity) else ""


def _given(words: Words, amount: Quantity | str) -> object:
    """The amount itself, or what the job gives under its name: a quantity or a formula; else None."""
    return amount if isinstance(amount, Quantity) else words.study.procedure.job.get(amount)


def _read_off(words: Words, step: Step, amount: Quantity | str) -> bool:
    """Whether the amount is what the step is to find, as in a titration: added until something is seen."""
    given = words.study.procedure.job.get(amount) if isinstance(amount, str) else None
    if step.do != "add" or not isinstance(given, Quantity) or not step.check:
        return False
    units = [reading.unit for reading in step.record.values() if reading.unit and reading.limit is None]
    return any(Quantity(1.0, unit).dimension == given.dimension for unit in units)


def amounts_shown(
    words: Words, step: Step, stage: Stage, formulas: Mapping[str, Formula], say: Phrases, large: str = ""
) -> str:
    """What is used and how much, unless that is set `large`.

    Of a repeated step the amount is what the whole run takes; one that is worked out is an example only.
    """
    if large:
        return ", ".join(chemical_title(words, str(id)) for id in step.use)
    parts = []
    for id, amount in step.use.items():
        plain = {"all": say.all, "rest": say.rest}.get(str(amount))
        shown = plain or show_amount(words.study, amount, formulas)
        given = _given(words, amount)
        if given is not None and (step.repeat or stage.repeat):
            shown = say.in_all(shown)
        if isinstance(given, FormulaRef):
            shown = say.worked_out(shown)
        elif _read_off(words, step, amount):
            shown = say.read_off(shown)
        parts.append(f"{chemical_title(words, str(id))}: {shown}")
    return "; ".join(parts)


def chemical_title(words: Words, id: str) -> str:
    """A substance or a mixture as it is called on its bottle."""
    lab = words.study.lab
    for noun, things in (("mixtures", lab.mixtures), ("substances", lab.substances)):
        if id in things:
            return words.lab(noun, id, "title", things[id].title)  # type: ignore[index]
    return id.replace("-", " ")


def target_shown(words: Words, step: Step, say: Phrases) -> str:
    """The mixture that what is used goes into."""
    title = chemical_title(words, str(step.into)) if step.into else ""
    return say.made_here(title) if stands_elsewhere(words.study.lab, step) else title


def repeat_shown(step: Step, stage: Stage, numbers: Mapping[str, str], say: Phrases) -> str:
    """How often a step is done, or the steps of its stage: said where they begin and where they end."""
    parts = [say.counted(step.repeat)] if step.repeat else []
    if stage.repeat:
        first, last = (numbers[str(each.id)] for each in (stage.steps[0], stage.steps[-1]))
        count = say.counted(stage.repeat)
        if first == last:
            parts.append(count)
        elif step is stage.steps[0]:
            parts.append(say.steps_for(first, last, count))
        elif step is stage.steps[-1]:
            parts.append(say.from_step(first, count))
    return "; ".join(parts)


def put_on_shown(words: Words, step: Step, say: Phrases) -> str:
    """The pieces that are put on; gloves next to the skin that must be fresh say so."""
    fresh = {id for id in map(str, step.put_on) if step.fresh and _next_to_skin(words, id)}
    pieces = ((id, piece_shown(words, id)) for id in map(str, step.put_on))
    return ", ".join(f"{piece} ({say.fresh})" if id in fresh else piece for id, piece in pieces)


def _next_to_skin(words: Words, id: str) -> bool:
    worn = words.study.lab.ppe.get(id)  # type: ignore[call-overload]
    return bool(worn and worn.protects == "hands" and worn.over is None)


def taken_off_shown(words: Words, step: Step, say: Phrases) -> str:
    """The pieces that come off, and the hands after them; a change of the same pieces is told by `on`."""
    pieces = [piece_shown(words, str(piece)) for piece in step.take_off if piece not in step.put_on]
    return ", ".join((*pieces, *([say.wash] if step.wash_hands else [])))


def piece_shown(words: Words, id: str) -> str:
    """A piece as it is called on the lab's own list."""
    ppe = words.study.lab.ppe
    return words.lab("ppe", id, "title", ppe[id].title) if id in ppe else id  # type: ignore[index]


def rack_shown(words: Words, step: Step) -> str:
    """What carries the part from here on."""
    rack = words.study.lab.racks.get(step.rack) if step.rack else None
    return words.lab("racks", str(step.rack), "title", rack.title) if rack else ""


def extraction_shown(words: Words, step: Step, place: Place | None, first: bool) -> str:
    """What must be drawing at the place, at the first step that a card has there."""
    if place is None or not place.extraction or not first:
        return ""
    return words.lab("places", str(step.at), "extraction", place.extraction)


def book_shown(words: Words, step: Step, place: Place | None) -> str:
    """Where a shared machine is booked."""
    if place is None or not place.book or step.do != "claim":
        return ""
    return words.lab("places", str(step.at), "book", place.book)


def pause_shown(words: Words, step: Step, say: Phrases) -> str:
    """That work may stop after the step: how the part is kept, and for how long."""
    if step.pause is None:
        return ""
    return f"{words.step(step, 'pause.keep', step.pause.keep)}, {say.window(step.pause.time)}"


def never_above(step: Step, place: Place | None, say: Phrases) -> str:
    """The most that the place may be given, where the step gives it current or heat."""
    most = place.power.most if place and place.power and step.power else None
    said = say.never_above(show_quantity(most)) if most else ""
    return said[:1].lower() + said[1:]
