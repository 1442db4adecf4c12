"""The rows of a wall card: one step, one action, with its place, times, marks and what if not."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.formulas import Formula
from generator.model import Card, Step
from generator.study import Located, Study
from generator.units import show_quantity
from generator.views.card import CardMark, CardStep
from generator.views.card_words import CardWords
from generator.views.filling.card_phrases import Phrases, phrases
from generator.views.filling.translation import Words
from generator.views.told import show_current, show_reading, show_time


@dataclass(frozen=True, slots=True)
class _Row:
    """Everything that the fields of one row are made from."""

    study: Study
    words: Words
    fixed: CardWords
    phrases: Phrases
    formulas: Mapping[str, Formula]
    numbers: Mapping[str, str]
    last_mains: str
    called: str


def card_steps(
    study: Study, card: Card, words: Words, fixed: CardWords, formulas: Mapping[str, Formula], called: str
) -> tuple[CardStep, ...]:
    """One row for each step of the card's stages, numbered as in the whole procedure.

    A row names whom to call only where that is another role than `called`, whom the card names for all its
    steps.
    """
    numbers = step_numbers(study)
    row = _Row(
        study, words, fixed, phrases(words.language), formulas, numbers, last_mains_water(study), called
    )
    wanted = set(card.stages)
    return tuple(
        _row(row, located)
        for located in study.steps()
        if located.stage.stage in wanted and located.mends is None
    )


def step_numbers(study: Study) -> dict[str, str]:
    """The number of each step in the whole procedure, by id."""
    return {str(step.id): str(index) for index, step in enumerate(study.procedure.steps, 1)}


def last_mains_water(study: Study) -> str:
    """The step that is the last to use mains water, where deionised water comes behind it; else empty."""
    waters = [
        (str(moment.step.id), place.water)
        for moment in study.walk.straight
        if moment.step.do == "rinse" and (place := study.place(moment.step.at)) and place.water
    ]
    mains = [index for index, (_, water) in enumerate(waters) if water == "mains"]
    return waters[mains[-1]][0] if mains and mains[-1] < len(waters) - 1 else ""


def _row(row: _Row, located: Located) -> CardStep:
    step, place = located.step, row.study.place(located.step.at)
    check, if_not, call = _check(row, step)
    return CardStep(
        id=str(step.id),
        number=row.numbers[str(step.id)],
        verb=row.fixed.verbs[step.do],
        sentence=row.words.sentence(step),
        stage=str(located.stage.stage),
        stage_title=row.words.stage(str(located.stage.stage), located.stage.title),
        place_number=str(place.number) if place and place.number is not None else "",
        place_title=row.words.place(step.at),
        dwell_shown=show_time(row.study, step, row.formulas),
        window_shown=_window(row, step),
        marks=_marks(row, step),
        setting=setting_shown(row.study, step, row.formulas, row.phrases),
        limit=_limit(row, step),
        hold=_hold(row, step),
        alarm=_alarm(row, step),
        check=check,
        if_not=if_not,
        call=call,
        container=_container(row, step),
    )


def _window(row: _Row, step: Step) -> str:
    """The place's own window, where the time of this step counts for it."""
    place = row.study.place(step.at)
    counts = step.do in ("put-in", "rinse") and step.for_ is not None
    return row.phrases.window(place.time) if place and place.time and counts else ""


def _marks(row: _Row, step: Step) -> tuple[CardMark, ...]:
    place, kinds = row.study.place(step.at), []
    if step.do == "put-in" and place and place.arrive in ("dry", "wet"):
        kinds.append(place.arrive)
    if step.id == row.last_mains:
        kinds.append("last-mains")
    if step.do in ("put-in", "wait") and step.for_ is not None and step.stay == "here":
        kinds.append("hands")
    if step.power is not None:
        kinds.append("current-first")
    return tuple(CardMark(kind, row.fixed.marks[kind]) for kind in kinds)  # type: ignore[arg-type]


def setting_shown(study: Study, step: Step, formulas: Mapping[str, Formula], words: Phrases) -> str:
    """What a step sets: dials, program, profile, current and how fast it comes up."""
    parts = [_one_setting(name, value) for name, value in step.set.items()]
    current = show_current(study, step, formulas)
    if current:
        parts.append(current)
    if step.power and step.power.ramp:
        parts.append(words.ramp(show_quantity(step.power.ramp)))
    return ", ".join(parts)


def _one_setting(name: str, value: object) -> str:
    if isinstance(value, tuple):
        return " → ".join(f"{show_quantity(leg.to)} {show_quantity(leg.hold)}" for leg in value)
    return (
        f"{name} {value}"
        if name == "program"
        else str(value).replace("degC", "°C").replace(" °C", "\u00a0°C")
    )


def _limit(row: _Row, step: Step) -> str:
    if step.since is None:
        return ""
    number = row.numbers.get(str(step.since.step), "")
    return row.phrases.within(row.phrases.window(step.since.time), number)


def _hold(row: _Row, step: Step) -> str:
    if step.hold is None:
        return ""
    until = row.words.step(step, "hold.until", step.hold.until)
    return f"{row.words.role(step.hold.who)}: {until}" if step.hold.who else until


def _alarm(row: _Row, step: Step) -> str:
    """What to do first when it sounds: the step's own words, else the timer's."""
    if step.for_ is None or step.do not in ("put-in", "wait", "cool", "set", "heat"):
        return ""
    if step.when_it_sounds:
        return row.words.step(step, "when_it_sounds", step.when_it_sounds)
    place = row.study.place(step.at)
    id = step.alarm or (place.timer if place else None)
    timer = row.study.lab.timers.get(id) if id else None
    return row.words.lab("timers", str(id), "when_it_sounds", timer.when_it_sounds) if timer else ""


def _check(row: _Row, step: Step) -> tuple[str, str, str]:
    """What must be seen, the whole sentence for when it is not, and whom to call then."""
    parts = [row.words.step(step, "check", step.check)] if step.check else []
    if_not, call = _if_not(row, step), str(step.fail.call) if step.fail and step.fail.call else ""
    place = row.study.place(step.at)
    if step.do == "open" and place and place.look:
        parts.append(row.words.lab("places", str(step.at), "look", place.look))
        if place.temperature:
            parts.append(row.phrases.window(place.temperature))
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
    return "; ".join(parts), if_not, row.words.role(call) if call not in ("", row.called) else ""


def _watched(row: _Row, step: Step) -> tuple[str, str, str]:
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


def _if_not(row: _Row, step: Step) -> str:
    fail = step.fail
    if fail is None:
        return ""
    parts = [row.words.step(step, "fail.say", fail.say)] if fail.say else []
    if fail.mend:
        parts.append(row.words.sentence(fail.mend))
    if fail.redo or fail.mend or fail.at_most:
        target = row.numbers.get(str(fail.redo or step.id), "")
        parts.append(row.phrases.again(target, fail.at_most or 1))
    return " ".join(parts)


def _container(row: _Row, step: Step) -> str:
    place = row.study.place(step.at)
    drains = place.drains_to if place and step.do in ("rinse", "clean") else None
    id = step.waste or drains
    container = row.study.container(id)
    return row.words.lab("waste", str(id), "title", container.title) if container else ""
