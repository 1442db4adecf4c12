"""Fill a run sheet: what was planned, what was done and read, who verified it, which issue was followed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.formulas import Formula, Input
from generator.model import Procedure, Step
from generator.study import Study
from generator.sums import Sum
from generator.units import Quantity, show_quantity, show_window
from generator.views.addresses import procedure_address
from generator.views.card_words import card_words
from generator.views.filling.card import CardFacts
from generator.views.filling.card_doing import amounts_shown, rack_shown, repeat_shown, target_shown
from generator.views.filling.card_phrases import ENGLISH, phrases
from generator.views.filling.card_rows import setting_shown, step_numbers, step_verb
from generator.views.filling.translation import Words
from generator.views.filling.words import input_words, named, role_title
from generator.views.paper import BLANK, TICK, PaperBlanks, PaperCell, PaperTable, PaperView, PaperWords
from generator.views.saying import said
from generator.views.told import show_given, show_reading, show_time

# More points than these are noted on a page of their own.
_MOST_POINTS = 12
_HEADS = ("Step", "What", "Planned", "Done, read", "Clock", "Initials")
_NOTHING = PaperCell("\u00a0")
_SHARES = (0.55, 4.6, 2.5, 1.5, 0.8, 1.0)


@dataclass(frozen=True, slots=True)
class _Telling:
    """What every row is made from."""

    study: Study
    words: Words
    formulas: Mapping[str, Formula]
    numbers: Mapping[str, str]


def run_sheet_view(study: Study, facts: CardFacts) -> PaperView:
    """One run on a page or two: steps that set, time, read, check or wait, each with a blank beside it."""
    procedure, room = study.procedure, study.lab.lab
    told = _Telling(study, Words(study), facts.formulas, step_numbers(study))
    address = f"{facts.site}{procedure_address(str(procedure.id))}/"
    issue = f"issue\u00a0{facts.issue} · check\u00a0code\u00a0{facts.check_code}" if facts.issue else ""
    return PaperView(
        id=f"{procedure.id}-run-sheet",
        title=f"Run sheet: {procedure.title}",
        dated=facts.dated or study.today.isoformat(),
        about=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        identity=" · ".join(part for part in (f"Procedure {procedure.id}", issue) if part),
        language=str(room.language),
        status=facts.status,
        address=address,
        address_shown=address.removeprefix("https://").removesuffix("/"),
        parts=(
            *_who(study, procedure, facts),
            *_sums(told),
            _run(told),
            PaperBlanks(("What went otherwise than planned", "Told whom")),
            PaperBlanks(("Finished, name and time", "Verified by", "Date")),
        ),
    )


def _who(study: Study, procedure: Procedure, facts: CardFacts) -> Iterator[PaperBlanks | PaperWords]:
    # A bath, a round and a spill have no part.
    mark = f"{named(str(procedure.part.name))}, number or mark" if procedure.part else "Number or mark"
    yield PaperBlanks(("Name", "Date", "Start", mark))
    second = role_title(study.lab, procedure.also_present) if procedure.also_present else ""
    labels = ("Card issue followed", "Its check code", *((second,) if second else ()), "Sign-offs seen by")
    yield PaperBlanks(labels)
    if facts.status == "withdrawn":
        yield PaperWords("This procedure is withdrawn. Start no run.", "DO NOT USE")


def _sums(told: _Telling) -> Iterator[PaperTable | PaperBlanks]:
    """The job's numbers and what follows from them, inner sums first."""
    sums = told.study.sums.by_key.values()
    asked = {one.name: (_asked(told, sum, one.name), one.value)
             for sum in sums for one in sum.inputs if one.origin == "job"}  # fmt: skip
    cells = [(PaperCell(name), PaperCell(_job_value(value))) for name, value in asked.values()]
    cells += [(PaperCell(lead=_sum_name(told, one)), PaperCell(_answer(told, one))) for one in sums]
    if not cells:
        return
    half = (len(cells) + 1) // 2
    nothing = (_NOTHING, _NOTHING)
    pairs = zip(cells[:half], [*cells[half:], *[nothing] * (half - len(cells) // 2)], strict=False)
    part = told.study.procedure.part
    heads = ("Number", "Class part", "This part") if part else ("Number", "As posted", "This time")
    rows = tuple((*left, BLANK, *right, BLANK) for left, right in pairs)
    yield PaperTable("Sums of the job", (*heads, *heads), (2.6, 2.2, 1.6) * 2, rows)
    yield PaperBlanks(("Sums worked by", "Worked again by", "Both agree"))


def _asked(told: _Telling, sum: Sum, name: str) -> str:
    """What a formula calls its input: "density" is the current density."""
    formula = told.formulas.get(sum.formula)
    wanted = formula.input(name) if formula else None
    return input_words(wanted) if isinstance(wanted, Input) else named(name)


def _job_value(value: object) -> str:
    if isinstance(value, Quantity):
        return show_quantity(value)
    if isinstance(value, tuple):
        return "; ".join(", ".join(_cell(name, cell) for name, cell in row.items()) for row in value)
    return str(getattr(value, "text", value))


def _cell(name: object, value: object) -> str:
    return f"{named(str(name)).lower()} {_job_value(value)}"


def _sum_name(told: _Telling, sum: Sum) -> str:
    """What a formula works out, with the author's own name for it ("salt") where that says more."""
    owner, _, field = sum.key.rpartition(".")
    formula = told.formulas.get(sum.formula)
    title = formula.title if formula else named(sum.formula)
    if owner == "job":
        own = named(field).lower()
        return title if own in title.lower() else f"{title} ({own})"
    number = told.numbers.get(owner, "")
    return f"{title} ({ENGLISH.at_step(number)})" if number else title


def _answer(told: _Telling, sum: Sum) -> str:
    step = told.study.step(sum.key.rpartition(".")[0])
    field = sum.key.rpartition(".")[2]
    source = step.for_ if step and field == "for" else step.power.to if step and step.power else None
    if source is not None:
        return show_given(sum.answer, source, told.formulas)
    formula = told.formulas.get(sum.formula)
    return show_quantity(formula.answer.rounded(sum.answer) if formula else sum.answer)


def _run(told: _Telling) -> PaperTable:
    rows = [row for step in told.study.procedure.steps if _matters(step) for row in _rows(told, step)]
    return PaperTable("The run", _HEADS, _SHARES, tuple(rows))


def _matters(step: Step) -> bool:
    """Whether a step sets, times, uses, reads, checks or waits for anything; a drip is not noted."""
    timed = step.for_ is not None and step.do != "take-out"
    asked = (step.power, step.record, step.check, step.hold, step.since, step.pause, step.watch, step.repeat)
    return timed or any(one is not None and one != {} for one in asked) or bool(step.use or step.set)


def _rows(told: _Telling, step: Step) -> Iterator[tuple[PaperCell, ...]]:
    words = told.words.sentence(step)
    verb, sentence = said(step_verb(card_words("en"), step, words), words)
    place = told.words.place(step.at)
    seen = f" SEE {step.check}" if step.check else ""
    what = PaperCell(f"{sentence}{f' ({place})' if place else ''}{seen}", verb)
    who = told.words.role(step.hold.who) if step.hold and step.hold.who else ""
    # Whose initials they are stands beside the room for them, and not in it.
    planned = "; ".join((*_planned(told, step), *((f"initials: {who}",) if who else ())))
    measured = step.for_ or step.power or step.set or step.use or step.since
    # Where only its readings are noted, the step's own row stays low.
    done = BLANK if measured or step.hold else TICK if step.check else _NOTHING
    written = BLANK if done != _NOTHING else _NOTHING
    number = PaperCell(lead=told.numbers[str(step.id)])
    yield number, what, PaperCell(planned or "\u00a0"), done, written, written
    for name, reading in _readings(told, step):
        yield _NOTHING, PaperCell(name), PaperCell(reading), BLANK, BLANK, BLANK
    if step.pause:
        stop = f"Work may stop here: {step.pause.keep}. Stopped and taken up again at:"
        window = PaperCell(show_window(step.pause.time))
        yield _NOTHING, PaperCell(stop), window, BLANK, BLANK, BLANK


def _planned(told: _Telling, step: Step) -> Iterator[str]:
    study = told.study
    located = next(found for found in study.steps() if found.step is step)
    english = phrases("en")
    used = (
        amounts_shown(told.words, step, located.stage, told.formulas, english),
        f"into {target_shown(told.words, step, english)}" if step.into else "",
        repeat_shown(step, located.stage, told.numbers, english),
        f"shake {english.counted(step.rock)}" if step.rock else "",
        rack_shown(told.words, step),
    )
    yield from (part for part in used if part)
    time = show_time(study, step, told.formulas)
    place = study.place(step.at)
    if time:
        counts = step.do in ("put-in", "rinse") and place and place.time
        yield f"{time} ({english.window(place.time)})" if counts and place and place.time else time
    setting = setting_shown(study, step, told.formulas, phrases("en"))
    if setting:
        yield setting
    if step.since:
        yield ENGLISH.within(show_window(step.since.time), told.numbers.get(str(step.since.step), ""))
    if step.hold:
        yield str(step.hold.until)


def _readings(told: _Telling, step: Step) -> Iterator[tuple[str, str]]:
    """Each reading by its name and limit, once for each point where the step or its stage repeats."""
    located = next(found for found in told.study.steps() if found.step is step)
    repeat = step.repeat or located.stage.repeat
    points = [""]
    if repeat and repeat.number <= _MOST_POINTS:
        points = [f", {repeat.word.rstrip('s')} {number}" for number in range(1, repeat.number + 1)]
    elif repeat:
        points = [f", each of {repeat.number} {repeat.word}, on a page of its own"]
    for point in points:
        for name, reading in step.record.items():
            plain = named(str(name))
            if reading.limit is not None:
                yield f"{plain}{point}", show_window(reading.limit)
            else:
                yield f"{named(show_reading(str(name), reading))}{point}", "\u00a0"
    if step.watch:
        seen = step.watch.check or ", ".join(show_reading(str(n), r) for n, r in step.watch.record.items())
        yield f"SEE {seen}", f"every {show_quantity(step.watch.every)}"
