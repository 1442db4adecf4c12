"""A step of a procedure as its page shows it."""

from collections.abc import Iterator

from generator.model import FormulaRef, Lab, Leg, Place, Step
from generator.units import UnitsError, read_window, show_counted, show_quantity, show_window
from generator.views.addresses import calculator_address, picture_path
from generator.views.filling.card_phrases import phrases
from generator.views.filling.first_looks import looked_at_first
from generator.views.filling.states import state_badges
from generator.views.filling.step_checks import fail_view, record_views, watch_words
from generator.views.filling.step_meets import hazard_signs, met_lines, waste_fact
from generator.views.filling.telling import Telling
from generator.views.filling.words import (
    call_sentence,
    low,
    named,
    role_title,
    stands_elsewhere,
    station_view,
    thing_title,
    verb_word,
    window_words,
    worn_sign,
)
from generator.views.shown import LinkView, PictureView, SignView, SourceView
from generator.views.step import (
    FailView,
    QuestionView,
    SettingView,
    StepView,
    TimeView,
)
from generator.views.told import show_current, show_time, sounds

_STAYS = {"near": "stay near", "away": "you may leave"}


def step_view(told: Telling, step: Step, changed: str = "", source: SourceView | None = None) -> StepView:
    """Everything about one step, finished; `changed` and `source` as the view has them."""
    study, lab = told.study, told.study.lab
    place = study.place(step.at)
    look = _look(told, step, place) if place else ""
    moment = told.moments.get(str(step.id))
    return StepView(
        id=str(step.id),
        number=told.numbers.get(str(step.id), ""),
        verb=verb_word(step.do),
        sentence=step.say,
        station=station_view(study, step.at),
        time=_time(told, step, place),
        takes=f"about {show_quantity(step.takes)}" if step.takes else "",
        stay=_STAYS.get(step.stay, ""),
        wear=tuple(_wear(told, step)),
        hazards=tuple(hazard_signs(told, step, place)),
        settings=tuple(_settings(told, step, place)),
        lines=tuple(met_lines(told, step, place)),
        look=look,
        look_fail=_look_fail(lab, place) if place and look else None,
        check=step.check or "",
        fail=fail_view(told, step.fail),
        watch=watch_words(step),
        watch_fail=fail_view(told, step.watch.fail) if step.watch else None,
        hold=_hold(lab, step),
        since=_since(told, step),
        record=record_views(step),
        repeat=show_counted(step.repeat) if step.repeat else "",
        waste=waste_fact(told, step, place),
        pause=f"Keep it {step.pause.keep}, {show_window(step.pause.time)}." if step.pause else "",
        badges=state_badges(told, moment) if moment else (),
        picture=_picture(step),
        why=step.why or "",
        questions=(QuestionView(step.ask.question, step.ask.answer),) if step.ask else (),
        formulas=tuple(_formulas(told, step)),
        changed=changed,
        source=source,
    )


def _picture(step: Step) -> PictureView | None:
    """A picture of an earlier issue that was not kept has no path; its words remain."""
    if step.picture is None:
        return None
    path = picture_path(step.picture.file) if step.picture.file else ""
    return PictureView(path, step.picture.alt or "")


def _hold(lab: Lab, step: Step) -> str:
    return f"the {low(role_title(lab, step.hold.who))}, until {step.hold.until}" if step.hold else ""


def _opens(step: Step, place: Place) -> bool:
    return step.do == "open" or (step.do == "put-in" and place.cover != "lid")


def _look(told: Telling, step: Step, place: Place) -> str:
    """What is looked for on opening; what the step says where the place is not as it usually is.

    A machine that is started here need not be warm yet.
    """
    if not _opens(step, place):
        return (place.look or "") if looked_at_first(told.study, step, place, told.begun) else ""
    if step.look:
        return str(step.look)
    parts = (window_words(place.temperature), place.look or "")
    return "; ".join(part for part in parts if part)


def _look_fail(lab: Lab, place: Place) -> FailView | None:
    right = place.not_right
    return FailView(right.say or "", call=call_sentence(lab, right.call)) if right else None


def _time(told: Telling, step: Step, place: Place | None) -> TimeView | None:
    length = told.study.sums.time_of(step)
    if length is None:
        return None
    key = f"{step.id}.for" if isinstance(step.for_, FormulaRef) else ""
    window = place.time if place and step.do in ("put-in", "rinse") else None
    sounding = sounds(step)
    timer = str(step.alarm or (place.timer if place else None) or "") if sounding else ""
    declared = told.study.lab.timers.get(timer)  # type: ignore[call-overload]
    first = step.when_it_sounds or (declared.when_it_sounds if declared else None) or ""
    shown = window_words(window)
    return TimeView(
        show_time(told.study, step, told.formulas),
        shown,
        length.si if length.si >= 20 else 0.0,
        thing_title(told.study.lab, timer) if timer else "",
        first if sounding else "",
        key,
        window.low.si if window and window.low else 0.0,
        window.high.si if window and window.high else 0.0,
    )


def _wear(told: Telling, step: Step) -> Iterator[SignView]:
    lab = told.study.lab
    for piece in step.take_off:
        if piece not in step.put_on:
            yield worn_sign(lab, piece, "off")
    for piece in step.put_on:
        yield worn_sign(lab, piece, "on, a fresh pair" if step.fresh and _next_to_skin(lab, piece) else "on")
    if step.wash_hands:
        yield SignView("M011", "Wash your hands")


def _next_to_skin(lab: Lab, piece: str) -> bool:
    """Gloves that are not worn over others: those are what `fresh` is about."""
    worn = lab.ppe.get(piece)  # type: ignore[call-overload]
    return bool(worn and worn.protects == "hands" and worn.over is None)


def _settings(told: Telling, step: Step, place: Place | None) -> Iterator[SettingView]:
    lab = told.study.lab
    yield from _doing(told, step, place)
    if step.rack:
        yield SettingView("Rack", thing_title(lab, step.rack))
    if step.rock:
        yield SettingView("Shake", show_counted(step.rock))
    for name, value in step.set.items():
        yield SettingView(named(name), _dialled(value) if isinstance(value, str) else _profile(value))
    power = told.study.sums.power_of(step)
    if step.power and power is not None:
        key = f"{step.id}.power" if isinstance(step.power.to, FormulaRef) else ""
        yield SettingView("Current", show_current(told.study, step, told.formulas), key)
        if step.power.ramp:
            yield SettingView("Bring it up over", show_quantity(step.power.ramp))
    if place and place.power and place.power.most and step.power:
        yield SettingView("Never above", show_quantity(place.power.most))


def _doing(told: Telling, step: Step, place: Place | None) -> Iterator[SettingView]:
    """Whose step it is, how often it is done, what it goes into, where a machine is booked."""
    if step.who and step.who != told.study.procedure.who:
        yield SettingView("Done by", role_title(told.study.lab, step.who))
    if step.repeat and not step.record:
        yield SettingView("Repeat", show_counted(step.repeat))
    if step.into:
        title = thing_title(told.study.lab, step.into)
        here = phrases("en").made_here(title) if stands_elsewhere(told.study.lab, step) else title
        yield SettingView("Into", here)
    if place and place.book and step.do == "claim":
        yield SettingView("Book at", place.book)


def _dialled(text: str) -> str:
    """A quantity as it is printed; a program's number or name as it is written."""
    try:
        return show_window(read_window(text))
    except UnitsError:
        return text


def _profile(legs: tuple[Leg, ...]) -> str:
    return ", then ".join(f"{show_quantity(leg.to)} for {show_quantity(leg.hold)}" for leg in legs)


def _since(told: Telling, step: Step) -> str:
    since = step.since
    if since is None:
        return ""
    because = f", because {since.because}" if since.because else ""
    number = told.numbers.get(str(since.step), str(since.step))
    return f"{show_window(since.time)} after the end of step {number}{because}"


def _formulas(told: Telling, step: Step) -> Iterator[LinkView]:
    refs = [step.for_, step.power.to if step.power else None]
    names = [str(ref.formula) for ref in refs if isinstance(ref, FormulaRef)]
    for name in dict.fromkeys((*map(str, step.formulas), *names)):
        formula = told.formulas.get(name)
        if formula:
            yield LinkView(low(formula.title), calculator_address(name))
