"""What must be seen at a row of a card, what follows when it is not, and whom to call then."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from generator.formulas import Formula
from generator.model import Place, Step
from generator.study import Study
from generator.units import show_quantity
from generator.views.card_words import CardWords
from generator.views.filling.card_phrases import Phrases
from generator.views.filling.first_looks import looked_at_first
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
    first_begun: frozenset[str]


class Seen(NamedTuple):
    """What must be seen before, while and when a step is done, each with the sentence for when it is not so.

    `call` is whom to call when `check` fails, where that is another than the card names for all its steps.
    """

    before: str
    before_if_not: str
    watch: str
    watch_if_not: str
    check: str
    if_not: str
    call: str


def seen_shown(row: Row, step: Step) -> Seen:
    """All that is looked at, at a step."""
    checks = [row.words.step(step, "check", step.check)] if step.check else []
    if_not, call = _if_not(row, step), str(step.fail.call or "") if step.fail else ""
    place = row.study.place(step.at)
    if place and step.do == "open" and (step.look or place.look):
        checks += _looked(row, step, place)
        if place.not_right and not if_not:
            if_not, call = _not_right(row, step, place)[0], call or str(place.not_right.call or "")
    before, before_if_not = _before(row, step, place)
    watch, watch_if_not = _watched(row, step)
    # Readings without a limit are for the run sheet; on the wall stands what must be met.
    limited = [
        show_reading(str(name), reading, row.phrases.window)
        for name, reading in step.record.items()
        if reading.limit
    ]
    if limited:
        checks.append(", ".join(limited))
    other = call not in ("", row.called)
    return Seen(
        before, before_if_not, watch, watch_if_not, "; ".join(checks),
        if_not if other else _calling(row, if_not, call), row.words.reached(call) if other else "",
    )  # fmt: skip


def _not_right(row: Row, step: Step, place: Place) -> tuple[str, str]:
    """What is done where the look at a place fails, and whom to call."""
    right = place.not_right
    says = row.words.lab("places", str(step.at), "not_right.say", right.say if right else None)
    return says, str(right.call or "") if right else ""


def _before(row: Row, step: Step, place: Place | None) -> tuple[str, str]:
    """The look of a place that nobody opens by a step of its own, where work begins there."""
    if place is None or not place.look or not looked_at_first(row.study, step, place, row.first_begun):
        return "", ""
    look = row.words.lab("places", str(step.at), "look", place.look)
    return look, _calling(row, *_not_right(row, step, place))


def _calling(row: Row, text: str, call: str) -> str:
    """A sentence for when something is not right, and that somebody is called then."""
    if not call:
        return text
    if call != row.called:
        return f"{text} {row.fixed.call} {row.words.reached(call)}".strip()
    says_so = text.casefold().rstrip(".").endswith(row.fixed.only_call.casefold().rstrip("."))
    return text if says_so else f"{stopped(text)} {row.fixed.then_call}" if text else row.fixed.only_call


def _looked(row: Row, step: Step, place: Place) -> Iterator[str]:
    """The look of the place; a step says its own where the place is not as it is, nor as warm, as usual."""
    if step.look:
        yield row.words.step(step, "look", step.look)
        return
    yield row.words.lab("places", str(step.at), "look", place.look)
    if place.temperature:
        yield row.phrases.window(place.temperature)


def _watched(row: Row, step: Step) -> tuple[str, str]:
    """What is looked at again and again, and what is done when it is not so."""
    watch = step.watch
    if watch is None:
        return "", ""
    readings = (show_reading(str(name), each, row.phrases.window) for name, each in watch.record.items())
    what = row.words.step(step, "watch.check", watch.check) or ", ".join(readings)
    seen, fail = row.phrases.every(show_quantity(watch.every), what), watch.fail
    if fail is None:
        return seen, ""
    return seen, _calling(row, row.words.step(step, "watch.fail.say", fail.say), str(fail.call or ""))


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
    return " ".join((*map(stopped, parts[:-1]), *parts[-1:]))


def stopped(text: str) -> str:
    """A sentence with a stop at its end."""
    return text if text.endswith((".", "!", "?")) else f"{text}."
