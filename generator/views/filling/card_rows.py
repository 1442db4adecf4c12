"""The rows of a wall card: one step, one action, with its place, times, marks and what if not."""

from collections.abc import Mapping

from generator.formulas import Formula
from generator.model import Card, Step
from generator.study import Located, Study
from generator.units import UnitsError, read_quantity, show_quantity
from generator.views.card import CardMark, CardStep
from generator.views.card_words import CardWords
from generator.views.filling.card_doing import (
    amount_shown,
    amounts_shown,
    book_shown,
    extraction_shown,
    never_above,
    pause_shown,
    piece_shown,
    put_on_shown,
    rack_shown,
    repeat_shown,
    taken_off_shown,
    target_shown,
)
from generator.views.filling.card_phrases import Phrases, phrases
from generator.views.filling.card_seen import Row, seen_shown
from generator.views.filling.discarded import discarded
from generator.views.filling.first_looks import first_begun
from generator.views.filling.translation import Words
from generator.views.told import show_current, show_time, sounds

# While these go on, a person must know whether the hands may go.
_OWN_VERB = ("act", "clean", "wait")
_STAYED_BY = ("put-in", "wait", "heat", "cool", "set", "mix")


def card_steps(
    study: Study, card: Card, words: Words, fixed: CardWords, formulas: Mapping[str, Formula], called: str
) -> tuple[CardStep, ...]:
    """One row for each step of the card's stages, numbered as in the whole procedure.

    A row names whom to call only where that is another role than `called`, whom the card names for all its
    steps.
    """
    numbers, wanted = step_numbers(study), set(card.stages)
    shown = [one for one in study.steps() if one.stage.stage in wanted and one.mends is None]
    first = {str(one.step.at): str(one.step.id) for one in reversed(shown)}
    row = Row(
        study, words, fixed, phrases(words.language), formulas, numbers, last_mains_water(study), called,
        frozenset(first.values()), first_begun(one.step for one in shown),
    )  # fmt: skip
    return tuple(_row(row, located) for located in shown)


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


def _row(row: Row, located: Located) -> CardStep:
    step, place = located.step, row.study.place(located.step.at)
    limit, not_before = _limits(row, step)
    dwell = show_time(row.study, step, row.formulas)
    large = amount_shown(row.words, step, located.stage, row.formulas, dwell)
    return CardStep(
        id=str(step.id),
        number=row.numbers[str(step.id)],
        verb=step_verb(row.fixed, step, row.words.sentence(step)),
        sentence=row.words.sentence(step),
        stage=str(located.stage.stage),
        stage_title=row.words.stage(str(located.stage.stage), located.stage.title),
        place_number=str(place.number) if place and place.number is not None else "",
        place_title=row.words.place(step.at),
        dwell_shown=dwell,
        window_shown=_window(row, step),
        marks=_marks(row, step),
        setting=_setting(row, step),
        who=row.words.role(step.who) if step.who and step.who != row.study.procedure.who else "",
        amount_shown=large,
        amounts=amounts_shown(row.words, step, located.stage, row.formulas, row.phrases, large),
        target=target_shown(row.words, step, row.phrases),
        repeat=repeat_shown(step, located.stage, row.numbers, row.phrases),
        on=put_on_shown(row.words, step, row.phrases),
        off=taken_off_shown(row.words, step, row.phrases),
        extraction=extraction_shown(row.words, step, place, str(step.id) in row.first_there),
        rack=rack_shown(row.words, step),
        rock=row.phrases.counted(step.rock) if step.rock else "",
        book=book_shown(row.words, step, place),
        limit=limit,
        not_before=not_before,
        hold=_hold(row, step),
        alarm=_alarm(row, step),
        container=_container(row, step),
        pause=pause_shown(row.words, step, row.phrases),
        **seen_shown(row, step)._asdict(),
    )


def step_verb(fixed: CardWords, step: Step, sentence: str) -> str:
    """The word for what is done; of clothes, whether they go on, come off, or both.

    What `act`, `clean` and `wait` stand for is told by the sentence's own verb alone: it is what is done.
    """
    if step.do in _OWN_VERB:
        return sentence.split()[0].upper().strip(".,")
    if step.do != "wear" or not (step.put_on or step.take_off):
        return fixed.verbs[step.do]
    return fixed.change if step.put_on and step.take_off else fixed.on if step.put_on else fixed.off


def _window(row: Row, step: Step) -> str:
    """The place's own window, where the time of this step counts for it."""
    place = row.study.place(step.at)
    counts = step.do in ("put-in", "rinse") and step.for_ is not None
    return row.phrases.window(place.time) if place and place.time and counts else ""


def _marks(row: Row, step: Step) -> tuple[CardMark, ...]:
    place, kinds = row.study.place(step.at), []
    if step.do == "put-in" and place and place.arrive in ("dry", "wet"):
        kinds.append(place.arrive)
    if step.id == row.last_mains:
        kinds.append("last-mains")
    if step.do in _STAYED_BY and step.for_ is not None:
        kinds.append({"here": "hands"}.get(step.stay, step.stay))
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
    shown = str(value)
    try:
        measured = show_quantity(read_quantity(shown))
        # A temperature says itself what it is; any other quantity needs the name of its dial.
        return measured if name == "temperature" else f"{_dial(name)} {measured}"
    except UnitsError:
        # A number with something behind it says what it is; a bare number or a word needs its name.
        said = any(map(str.isdigit, shown)) and not shown.isdigit()
        return shown if said else f"{_dial(name)} {shown}"


def _dial(name: str) -> str:
    return name.replace("-", " ").replace("_", " ")


def _setting(row: Row, step: Step) -> str:
    """What is set, and the most that the place may be given."""
    parts = (
        setting_shown(row.study, step, row.formulas, row.phrases),
        never_above(step, row.study.place(step.at), row.phrases),
    )
    return ", ".join(part for part in parts if part)


def _limits(row: Row, step: Step) -> tuple[str, str]:
    """Up to when after another step this one is done, or from when on it may be."""
    if step.since is None:
        return "", ""
    number, time = row.numbers.get(str(step.since.step), ""), step.since.time
    if time.high is None and time.low is not None:
        return "", row.phrases.within(show_quantity(time.low), number)
    return row.phrases.within(row.phrases.window(time), number), ""


def _hold(row: Row, step: Step) -> str:
    if step.hold is None:
        return ""
    until = row.words.step(step, "hold.until", step.hold.until)
    return f"{row.words.role(step.hold.who)}: {until}" if step.hold.who else until


def _alarm(row: Row, step: Step) -> str:
    """Which timer, and what to do first when it sounds: the step's own words, else the timer's."""
    if not sounds(step):
        return ""
    place = row.study.place(step.at)
    id = step.alarm or (place.timer if place else None)
    timer = row.study.lab.timers.get(id) if id else None
    title = row.words.lab("timers", str(id), "title", timer.title) if timer else ""
    first = row.words.step(step, "when_it_sounds", step.when_it_sounds)
    if timer and not first:
        first = row.words.lab("timers", str(id), "when_it_sounds", timer.when_it_sounds)
    return ": ".join(part for part in (title, first) if part)


def _container(row: Row, step: Step) -> str:
    place = row.study.place(step.at)
    drains = place.drains_to if place and step.do in ("rinse", "clean") else None
    id = step.waste or drains
    container = row.study.container(id)
    if container is None:
        return ""
    title = row.words.lab("waste", str(id), "title", container.title)
    pieces = ", ".join(piece_shown(row.words, piece) for piece in discarded(row.study, step))
    return f"{title}: {pieces}" if pieces else title
