"""The steps: places as stations, actions under them, times large at the right."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from itertools import groupby
from typing import Literal, NamedTuple

from generator.outputs.press.blocks import Block, Late
from generator.outputs.press.drawing import Box, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.rows import Columns, Row, row_of, solid, step_row
from generator.outputs.press.stations import SetPlace, place_head, set_place, station, station_width
from generator.outputs.press.wrapping import width
from generator.views.card import CardMark, CardStep, CardView
from generator.views.card_words import CardWords
from generator.views.saying import said

# Loose: a line for each note. Snug: notes run on in one paragraph, and a place where only one thing is
# done leads in that paragraph. Close: every place leads in the paragraph of its first step.
Density = Literal["loose", "snug", "close"]
DENSITIES: tuple[Density, ...] = ("loose", "snug", "close")
_ARRIVAL = ("dry", "wet")
_CAPS = Letters(1.0)


@dataclass(frozen=True, slots=True)
class Stay:
    """Steps that follow one another at one place; `known` when the card has been there before."""

    number: str
    title: str
    steps: tuple[CardStep, ...]
    known: bool

    @property
    def placed(self) -> bool:
        """False for steps that have no place."""
        return bool(self.number or self.title)

    @property
    def arrivals(self) -> tuple[CardMark, ...]:
        """How the part must arrive, once for the whole stay."""
        return tuple(dict.fromkeys(m for step in self.steps for m in step.marks if m.kind in _ARRIVAL))


class SetStay(NamedTuple):
    """A stay with its rows and its place, which says something else where the stay goes on in a new column.

    `headed` when its place has a line of its own above the rows.
    """

    stay: Stay
    rows: tuple[Row, ...]
    headed: bool
    place: SetPlace
    again: SetPlace


class SetSteps(NamedTuple):
    """The steps of a card in one density before they have a column.

    `numbers` is the width of the widest number, `discs` that of the widest disc or ring, in cap heights.
    """

    stays: tuple[SetStay, ...]
    numbers: float
    discs: float
    density: Density


def set_steps(card: CardView, density: Density) -> SetSteps:
    """All of the steps that hangs on no width; it serves for every size of letters."""
    numbers = max((width(step.number, 1.0, heavy=True) for step in card.steps), default=0.0)
    each = tuple(_set_stay(stay, card.words, density) for stay in stays(card.steps))
    discs = (station_width(made.stay.number, _CAPS) for made in each if made.stay.placed)
    return SetSteps(each, numbers, max(discs, default=0.0), density)


def _set_stay(stay: Stay, words: CardWords, density: Density) -> SetStay:
    alone = density == "snug" and stay.placed and len(stay.steps) == 1
    headed = density != "close" and not alone
    if headed:
        rows = tuple(_row(step, words, density) for step in stay.steps)
    else:
        rows = tuple(_close_row(stay, place, words) for place in range(len(stay.steps)))
    place = set_place(stay.number, stay.title, stay.arrivals)
    again = set_place(stay.number, f"{stay.title} ({words.continued})".strip())
    return SetStay(stay, rows, headed, place, again)


def _row(step: CardStep, words: CardWords, density: Density) -> Row:
    says, notes = _told(step), _notes(words, step)
    parts = [says, *notes] if density == "loose" else [_run_on(says, notes)]
    marks = [mark for mark in step.marks if mark.kind not in _ARRIVAL]
    return row_of(step, parts, marks, beside=density != "loose")


def _close_row(stay: Stay, place: int, words: CardWords) -> Row:
    step = stay.steps[place]
    # A numbered place is named once; after that its disc says it.
    named = stay.title and not place and not (stay.known and stay.number)
    lead = [Run(f"{stay.title}:")] if named else []
    runs = (*lead, *_run_on(_told(step), _notes(words, step)))
    return row_of(step, [runs], step.marks, beside=True)


def step_blocks(steps: SetSteps, room: float, letters: Letters) -> tuple[Block, ...]:
    """A head for each stay unless the density is close; then one block a step."""
    columns = _columns(steps, room, letters)
    blocks: list[Block] = []
    for stay in steps.stays:
        blocks += (_headed_stay if stay.headed else _close_stay)(stay, columns, letters)
    return tuple(blocks)


def stays(steps: Iterable[CardStep]) -> tuple[Stay, ...]:
    """The steps in runs at one place, in order."""
    found: list[Stay] = []
    for place, group in groupby(steps, key=lambda step: (step.place_number, step.place_title)):
        known = any((stay.number, stay.title) == place for stay in found)
        found.append(Stay(*place, tuple(group), known))
    return tuple(found)


def _columns(steps: SetSteps, room: float, letters: Letters) -> Columns:
    number = letters.bar + letters.gap if steps.discs else 0.0
    if steps.discs and steps.density != "loose":
        number = steps.discs * letters.text + 0.5 * letters.gap
    return Columns(room, number, number + steps.numbers * letters.text + 0.8 * letters.gap)


def _headed_stay(made: SetStay, columns: Columns, letters: Letters) -> Iterator[Block]:
    """The head of a stay, and its steps joined by the line that shows that nobody walks in between."""
    stay, again = made.stay, _again(made, columns, letters)
    gap, tie = letters.space, 0.0
    if stay.placed:
        yield place_head(made.place, columns.sentence, columns.room, letters, gap=gap, keep=True)
        gap, tie = letters.gap * 0.6, letters.bar
    for row in made.rows:
        yield step_row(row, columns, letters, gap=gap, again=again, tie=tie)
        gap = letters.gap


def _close_stay(made: SetStay, columns: Columns, letters: Letters) -> Iterator[Block]:
    """The steps of a stay, its disc at the first of them."""
    stay, again = made.stay, _again(made, columns, letters)
    first, *others = made.rows
    block = step_row(first, columns, letters, gap=letters.gap)
    yield _with_station(block, stay, letters) if stay.placed else block
    for row in others:
        tie = letters.bar if stay.placed else 0.0
        yield step_row(row, columns, letters, gap=0.75 * letters.gap, again=again, tie=tie)


def _told(step: CardStep) -> tuple[Run, ...]:
    """Verb and sentence."""
    verb, rest = said(step.verb, step.sentence)
    return Run(verb, bold=True), Run(rest)


def _run_on(says: tuple[Run, ...], notes: tuple[tuple[Run, ...], ...]) -> tuple[Run, ...]:
    """All in one paragraph, with a stop between two that would read as one."""
    parts = (says, *notes)
    return tuple(run for part in parts[:-1] for run in (*part[:-1], _stopped(part[-1]))) + parts[-1]


def _stopped(run: Run) -> Run:
    ended = not run.text or run.text.endswith((".", "!", "?", ":", ";"))
    return run if ended else Run(f"{run.text}.", run.bold)


def _with_station(block: Block, stay: Stay, letters: Letters) -> Block:
    drawn = Late(partial(_station, stay.number, block.height if len(stay.steps) > 1 else 0.0, letters))
    return block._replace(parts=((0.0, 0.0, drawn), *block.parts))


def _station(number: str, height: float, letters: Letters) -> Block:
    """The disc beside the first line, and under it the line to the next step in a row of that height."""
    middle = letters.text / 2
    line = Box(0.0, 0.0, letters.bar, max(0.0, height - middle), fill="black")
    up = (letters.text - letters.disc) / 2
    tie = ((0.0, middle, line),) if height else ()
    return Block(0.0, (*tie, (0.0, up, Block(0.0, station(number, letters)))))


def _again(made: SetStay, columns: Columns, letters: Letters) -> Callable[[], Block] | None:
    """What a new column says first when a stay goes on in it."""
    if not made.stay.placed:
        return None
    return partial(place_head, made.again, columns.sentence, columns.room, letters)


def _notes(words: CardWords, step: CardStep) -> tuple[tuple[Run, ...], ...]:
    labels = (
        (words.who, step.who), (words.extraction, step.extraction), (words.on, step.on),
        (words.off, step.off), (words.rack, step.rack), (words.book, step.book),
        (words.before, step.before), (words.if_not, step.before_if_not),
        (words.amounts, step.amounts), (words.target, step.target), (words.rock, step.rock),
        (words.set, step.setting),
        (words.limit, step.limit), (words.not_before, step.not_before), (words.hold, step.hold),
        (words.alarm, step.alarm), (words.see, step.watch), (words.if_not, step.watch_if_not),
        (words.see, step.check), (words.if_not, step.if_not), (words.call, step.call),
        (words.repeat, step.repeat), (words.into, step.container), (words.pause, step.pause),
    )  # fmt: skip
    return tuple((Run(solid(label), bold=True), Run(text)) for label, text in labels if text)
