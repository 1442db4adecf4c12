"""The steps: places as stations, actions under them, times large at the right."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache, partial
from itertools import groupby
from typing import Literal

from generator.outputs.press.blocks import Block, Late
from generator.outputs.press.drawing import Box, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.rows import Columns, solid, step_row
from generator.outputs.press.stations import place_head, station, station_width
from generator.outputs.press.wrapping import width
from generator.views.card import CardMark, CardStep, CardView
from generator.views.card_words import CardWords
from generator.views.saying import said

# Loose: a line for each note. Snug: notes run on in one paragraph, and a place where only one thing is
# done leads in that paragraph. Close: every place leads in the paragraph of its first step.
Density = Literal["loose", "snug", "close"]
DENSITIES: tuple[Density, ...] = ("loose", "snug", "close")
_ARRIVAL = ("dry", "wet")


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


def step_blocks(card: CardView, room: float, letters: Letters, density: Density) -> tuple[Block, ...]:
    """A head for each stay unless the density is close; then one block a step."""
    columns = _columns(card.steps, room, letters, density)
    blocks: list[Block] = []
    for stay in stays(card.steps):
        if density == "close" or (density == "snug" and stay.placed and len(stay.steps) == 1):
            blocks += _close_stay(card, stay, columns, letters)
        else:
            blocks += _headed_stay(card, stay, columns, letters, density)
    return tuple(blocks)


def stays(steps: Iterable[CardStep]) -> tuple[Stay, ...]:
    """The steps in runs at one place, in order."""
    found: list[Stay] = []
    for place, group in groupby(steps, key=lambda step: (step.place_number, step.place_title)):
        known = any((stay.number, stay.title) == place for stay in found)
        found.append(Stay(*place, tuple(group), known))
    return tuple(found)


def _columns(steps: Sequence[CardStep], room: float, letters: Letters, density: Density) -> Columns:
    numbers = max((width(step.number, letters.text, heavy=True) for step in steps), default=0.0)
    places = [step.place_number for step in steps if step.place_number or step.place_title]
    number = letters.bar + letters.gap if places else 0.0
    if places and density != "loose":
        number = max(station_width(place, letters) for place in places) + 0.5 * letters.gap
    sentence = number + numbers + 0.8 * letters.gap
    return Columns(room, number, sentence)


def _headed_stay(
    card: CardView, stay: Stay, columns: Columns, letters: Letters, density: Density
) -> list[Block]:
    if not stay.placed:
        return _tied(card, stay, columns, letters, letters.space, density)
    head = place_head(stay.number, stay.title, stay.arrivals, columns.sentence, columns.room, letters)
    blocks = _tied(card, stay, columns, letters, 0.6 * letters.gap, density)
    return [head._replace(gap=letters.space, keep=True), *blocks]


def _tied(
    card: CardView, stay: Stay, columns: Columns, letters: Letters, first: float, density: Density
) -> list[Block]:
    """The steps of a stay, joined by the line that shows that nobody walks in between."""
    again = _again(card, stay, columns, letters)
    blocks = []
    for place, step in enumerate(stay.steps):
        notes = _notes(card.words, step)
        says = _told(step)
        parts = [says, *notes] if density == "loose" else [_run_on(says, notes)]
        marks = [mark for mark in step.marks if mark.kind not in _ARRIVAL]
        block = step_row(step, parts, marks, columns, letters, beside=density != "loose")
        gap = letters.gap if place else first
        blocks.append(block._replace(gap=gap, again=again, tie=letters.bar if again else 0.0))
    return blocks


def _close_stay(card: CardView, stay: Stay, columns: Columns, letters: Letters) -> list[Block]:
    again = _again(card, stay, columns, letters)
    blocks = []
    for place, step in enumerate(stay.steps):
        # A numbered place is named once; after that its disc says it.
        named = stay.title and not place and not (stay.known and stay.number)
        lead = [Run(f"{stay.title}:")] if named else []
        runs = (*lead, *_run_on(_told(step), _notes(card.words, step)))
        block = step_row(step, [runs], step.marks, columns, letters, beside=True)
        gap = 0.75 * letters.gap if place else letters.gap
        if place or not stay.placed:
            tie = letters.bar if stay.placed else 0.0
            blocks.append(block._replace(gap=gap, again=again if place else None, tie=tie))
        else:
            blocks.append(_with_station(block, stay, letters)._replace(gap=gap))
    return blocks


@lru_cache(maxsize=4_000)
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
    up = (letters.text - letters.disc) / 2
    disc = ((0.0, up, Late(lambda: Block(0.0, station(stay.number, letters)))),)
    middle = letters.text / 2
    line = Box(0.0, 0.0, letters.bar, max(0.0, block.height - middle), fill="black")
    tie = ((0.0, middle, line),) if len(stay.steps) > 1 else ()
    return block._replace(parts=(*tie, *disc, *block.parts))


def _again(card: CardView, stay: Stay, columns: Columns, letters: Letters) -> Callable[[], Block] | None:
    """What a new column says first when a stay goes on in it."""
    if not stay.placed:
        return None
    title = f"{stay.title} ({card.words.continued})".strip()
    return partial(place_head, stay.number, title, (), columns.sentence, columns.room, letters)


@lru_cache(maxsize=4_000)
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
