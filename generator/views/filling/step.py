"""A step of a procedure as its page shows it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.formulas import Formula
from generator.hazards import Edition, label_statements, signal_word
from generator.model import Fail, FormulaRef, Lab, Leg, Place, Reading, Step
from generator.study import Study
from generator.units import Quantity, Window, show_counted, show_quantity, show_unit, show_window
from generator.views.addresses import calculator_address, picture_path, procedure_address
from generator.views.filling.hazard_words import word_sign
from generator.views.filling.states import state_badges
from generator.views.filling.words import (
    call_sentence,
    chemical_link,
    joined,
    low,
    named,
    role_title,
    station_view,
    thing_title,
    times,
    verb_word,
    window_words,
    worn_sign,
)
from generator.views.shown import FactView, LinkView, PictureView, SignView
from generator.views.step import (
    FailView,
    QuestionView,
    RecordView,
    SettingView,
    StepView,
    TimeView,
)
from generator.views.told import show_current, show_given, show_time
from generator.walk import Moment

_SOUNDING = frozenset(("put-in", "wait", "set", "heat", "cool"))
_MEETING = frozenset(("open", "put-in", "add", "mix", "pour", "weigh"))
_STAYS = {"near": "stay near", "away": "you may leave"}


@dataclass(frozen=True)
class Telling:
    """What a step is told from: the study, the formulas, each step's number and first moment."""

    study: Study
    formulas: Mapping[str, Formula]
    numbers: dict[str, str]
    moments: dict[str, Moment]

    @property
    def edition(self) -> Edition:
        """Which texts the lab uses."""
        return Edition(self.study.lab.lab.ghs)

    def link(self, step: str) -> LinkView:
        """A step of this procedure by its number."""
        text = f"step {self.numbers.get(step, step)}"
        return LinkView(text, procedure_address(self.study.procedure.id), step)


def telling(study: Study, formulas: Mapping[str, Formula]) -> Telling:
    """Numbers in the order of the straight run; a repeated step shows its first moment."""
    numbers = {str(step.id): str(number) for number, step in enumerate(study.procedure.steps, 1)}
    moments: dict[str, Moment] = {}
    for moment in study.walk.straight:
        moments.setdefault(str(moment.step.id), moment)
    return Telling(study, formulas, numbers, moments)


def step_view(told: Telling, step: Step) -> StepView:
    """Everything about one step, finished."""
    study, lab = told.study, told.study.lab
    place = study.place(step.at)
    opens = place is not None and _opens(step, place)
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
        hazards=tuple(_hazards(told, step, place)),
        settings=tuple(_settings(told, step, place)),
        lines=tuple(_lines(told, step, place)),
        look=_look(place) if place and opens else "",
        look_fail=FailView(place.not_right.say or "", call=call_sentence(lab, place.not_right.call))
        if place and opens and place.not_right
        else None,
        check=step.check or "",
        fail=_fail(told, step.fail),
        watch=_watch(step),
        watch_fail=_fail(told, step.watch.fail) if step.watch else None,
        hold=f"the {low(role_title(lab, step.hold.who))}, until {step.hold.until}" if step.hold else "",
        since=_since(told, step),
        record=_record(step),
        repeat=show_counted(step.repeat) if step.repeat else "",
        waste=_waste(told, step, place),
        pause=f"Keep it {step.pause.keep}, {show_window(step.pause.time)}." if step.pause else "",
        badges=state_badges(study, moment, told.numbers) if moment else (),
        picture=PictureView(picture_path(step.picture.file), step.picture.alt or "")
        if step.picture
        else None,
        why=step.why or "",
        questions=(QuestionView(step.ask.question, step.ask.answer),) if step.ask else (),
        formulas=tuple(_formulas(told, step)),
    )


def _opens(step: Step, place: Place) -> bool:
    return step.do == "open" or (step.do == "put-in" and place.cover != "lid")


def _look(place: Place) -> str:
    parts = (window_words(place.temperature), place.look or "")
    return "; ".join(part for part in parts if part)


def _time(told: Telling, step: Step, place: Place | None) -> TimeView | None:
    length = told.study.sums.time_of(step)
    if length is None:
        return None
    key = f"{step.id}.for" if isinstance(step.for_, FormulaRef) else ""
    window = place.time if place and step.do in ("put-in", "rinse") else None
    sounds = step.do in _SOUNDING
    timer = str(step.alarm or (place.timer if place else None) or "") if sounds else ""
    declared = told.study.lab.timers.get(timer)  # type: ignore[call-overload]
    first = step.when_it_sounds or (declared.when_it_sounds if declared else None) or ""
    shown = window_words(window)
    return TimeView(
        show_time(told.study, step, told.formulas),
        shown,
        length.si if length.si >= 20 else 0.0,
        thing_title(told.study.lab, timer) if timer else "",
        first if sounds else "",
        key,
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


def _hazards(told: Telling, step: Step, place: Place | None) -> Iterator[SignView]:
    if place and step.do in (*_MEETING, "take-out"):
        for word in place.hazards:
            yield word_sign(told.study.lab, word, low(place.title))


def _settings(told: Telling, step: Step, place: Place | None) -> Iterator[SettingView]:
    lab = told.study.lab
    if step.rack:
        yield SettingView("Rack", thing_title(lab, step.rack))
    if step.rock:
        yield SettingView("Shake", show_counted(step.rock))
    for name, value in step.set.items():
        yield SettingView(named(name), value if isinstance(value, str) else _profile(value))
    power = told.study.sums.power_of(step)
    if step.power and power is not None:
        key = f"{step.id}.power" if isinstance(step.power.to, FormulaRef) else ""
        yield SettingView("Current", show_current(told.study, step, told.formulas), key)
        if step.power.ramp:
            yield SettingView("Bring it up over", show_quantity(step.power.ramp))
    if place and place.power and place.power.most and step.power:
        yield SettingView("Never above", show_quantity(place.power.most))


def _profile(legs: tuple[Leg, ...]) -> str:
    return ", then ".join(f"{show_quantity(leg.to)} for {show_quantity(leg.hold)}" for leg in legs)


def _lines(told: Telling, step: Step, place: Place | None) -> Iterator[FactView]:
    study = told.study
    for id, amount in step.use.items():
        shown, key = _amount(told, amount)
        yield FactView("Use", shown, chemical_link(study.lab, str(id)), key)
        yield from _bites(told, str(id))
    if place and step.do == "open" and place.holds:
        yield from _bites(told, str(place.holds))
    if place and place.extraction and step.do in _MEETING:
        yield FactView("Extraction", place.extraction)


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


def _fail(told: Telling, fail: Fail | None) -> FailView | None:
    if fail is None:
        return None
    goes_back = fail.redo is not None
    return FailView(
        fail.say or "",
        f"First: {fail.mend.say}" if fail.mend else "",
        told.link(str(fail.redo)) if goes_back else None,
        times(fail.at_most) if goes_back or fail.mend else "",
        call_sentence(told.study.lab, fail.call),
    )


def _watch(step: Step) -> str:
    watch = step.watch
    if watch is None:
        return ""
    what = watch.check or f"write down {joined(low(named(name)) for name in watch.record)}"
    return f"Every {show_quantity(watch.every)}: {what}"


def _since(told: Telling, step: Step) -> str:
    since = step.since
    if since is None:
        return ""
    because = f", because {since.because}" if since.because else ""
    number = told.numbers.get(str(since.step), str(since.step))
    return f"{show_window(since.time)} after the end of step {number}{because}"


def _record(step: Step) -> tuple[RecordView, ...]:
    readings = {**step.record, **(step.watch.record if step.watch else {})}
    return tuple(record_view(str(name), reading) for name, reading in readings.items())


def record_view(name: str, reading: Reading) -> RecordView:
    """One reading to write down."""
    if reading.kind != "number":
        return RecordView(name, named(name), reading.kind)
    limit: Window | None = reading.limit
    return RecordView(name, named(name), show_unit(reading.unit), window_words(limit))


def _waste(told: Telling, step: Step, place: Place | None) -> FactView | None:
    lab = told.study.lab
    if step.waste:
        return FactView("Waste into", thing_title(lab, step.waste))
    if place and place.drains_to and step.do in ("rinse", "clean", "empty"):
        return FactView("Drains into", thing_title(lab, place.drains_to))
    return None


def _formulas(told: Telling, step: Step) -> Iterator[LinkView]:
    refs = [step.for_, step.power.to if step.power else None]
    names = [str(ref.formula) for ref in refs if isinstance(ref, FormulaRef)]
    for name in dict.fromkeys((*map(str, step.formulas), *names)):
        formula = told.formulas.get(name)
        if formula:
            yield LinkView(low(formula.title), calculator_address(name))
