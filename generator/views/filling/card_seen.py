"""What must be seen at a row of a card, what follows when it is not, and whom to call then."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.formulas import Formula
from generator.model import Place, Step
from generator.study import Study
from generator.units import show_quantity
from generator.views.card_words import CardWords
from generator.views.filling.card_phrases import Phrases
from generator.views.filling.translation import Words
from generator.views.told import show_reading


@dataclass(frozen=True, slots=True)
class Row:
    """Everything that the fields of one row are made from."""

    study: Study
    words: Words
    fixed: CardWords
    phrases: Phrases
    formulas: Mapping[str, Formula]
    numbers: Mapping[str, str]
    last_mains: str
    called: str
    first_there: frozenset[str]


def seen_shown(row: Row, step: Step) -> tuple[str, str, str]:
    """What must be seen, the whole sentence for when it is not, and whom to call then."""
    parts = [row.words.step(step, "check", step.check)] if step.check else []
    if_not, call = _if_not(row, step), str(step.fail.call) if step.fail and step.fail.call else ""
    place = row.study.place(step.at)
    if step.do == "open" and place and (step.look or place.look):
        parts += _looked(row, step, place)
        right = place.not_right
        if right and not if_not:
            if_not = row.words.lab("places", str(step.at), "not_right.say", right.say)
            call = call or str(right.call or "")
    if step.watch:
        seen, not_seen, whom = _watched(row, step)
        parts.append(row.phrases.every(show_quantity(step.watch.every), seen))
        if_not, call = (if_not, call) if if_not else (not_seen, whom)
    # Readings without a limit are for the run sheet; on the wall stands what must be met.
    limited = [
        show_reading(str(name), reading, row.phrases.window)
        for name, reading in step.record.items()
        if reading.limit
    ]
    if limited:
        parts.append(", ".join(limited))
    return "; ".join(parts), if_not, row.words.reached(call) if call not in ("", row.called) else ""


def _looked(row: Row, step: Step, place: Place) -> Iterator[str]:
    """The look of the place; a step says its own where the place is not as it is, nor as warm, as usual."""
    if step.look:
        yield row.words.step(step, "look", step.look)
        return
    yield row.words.lab("places", str(step.at), "look", place.look)
    if place.temperature:
        yield row.phrases.window(place.temperature)


def _watched(row: Row, step: Step) -> tuple[str, str, str]:
    """What is looked at again and again, what is done when it is not so, and whom to call then."""
    watch = step.watch
    if watch is None:
        return "", "", ""
    readings = (show_reading(str(name), each, row.phrases.window) for name, each in watch.record.items())
    seen = row.words.step(step, "watch.check", watch.check) or ", ".join(readings)
    fail = watch.fail
    if fail is None:
        return seen, "", ""
    return seen, row.words.step(step, "watch.fail.say", fail.say), str(fail.call or "")


def _if_not(row: Row, step: Step) -> str:
    fail = step.fail
    if fail is None:
        return ""
    parts = [row.words.step(step, "fail.say", fail.say)] if fail.say else []
    if fail.mend:
        parts.append(row.words.sentence(fail.mend))
    if fail.redo or fail.mend or fail.at_most:
        target, times = str(fail.redo or step.id), fail.at_most or 1
        again = row.phrases.again if target == step.id else row.phrases.back_to
        parts.append(again(row.numbers.get(target, ""), times))
    # Without a stop between them two sentences would read as one.
    stopped = (part if part.endswith((".", "!", "?")) else f"{part}." for part in parts[:-1])
    return " ".join((*stopped, *parts[-1:]))
