"""Breaks runs of text into lines by the measured width of their letters."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, pairwise
from typing import NamedTuple

from generator.outputs.press.drawing import Line, Run
from generator.outputs.press.holding import held
from generator.outputs.press.metrics import bold, composed, medium

Word = tuple[str, bool, float]
_HAIR = 1e-9
# A word of fewer cap heights looks lost on a line of its own.
_SHORT = 5.0


@lru_cache(maxsize=20_000)
def _em_width(text: str, heavy: bool) -> float:
    return (bold() if heavy else medium()).width(text, 1.0)


def width(text: str, cap: float, heavy: bool = False) -> float:
    """Width in mm of `text` on one line with capitals `cap` mm high."""
    return _em_width(text, heavy) * cap


def run_width(line: Iterable[Run], cap: float) -> float:
    """Width in mm of a line of runs."""
    return sum(width(run.text, cap, run.bold) for run in line)


@dataclass(frozen=True, slots=True, eq=False)
class Paragraph:
    """Words with the left and right edge of each on one endless line, in cap heights; the widest word.

    `held` numbers the words that no line begins with where the one before can go with them.
    """

    words: tuple[Word, ...]
    starts: tuple[float, ...]
    ends: tuple[float, ...]
    widest: float
    held: frozenset[int]


@lru_cache(maxsize=10_000)
def words_of(runs: tuple[Run, ...]) -> Paragraph:
    """The words of the runs; a no-break space does not part words."""
    words = [
        (word, run.bold, _em_width(word, run.bold))
        for run in runs
        for word in composed(run.text).split(" ")
        if word
    ]
    return _laid(words or [("", False, 0.0)])


def _laid(words: Sequence[Word]) -> Paragraph:
    spaces = _em_width(" ", False), _em_width(" ", True)
    starts, ends = [], []
    # The first word has no space before it.
    end = -spaces[words[0][1]]
    for _, heavy, wide in words:
        start = end + spaces[heavy]
        end = start + wide
        starts.append(start)
        ends.append(end)
    widest = max([word[2] for word in words])
    return Paragraph(tuple(words), tuple(starts), tuple(ends), widest, held([word[0] for word in words]))


def _narrowed(laid: Paragraph, least: float) -> Paragraph:
    """The same words, those wider than `least` cap heights broken between letters."""
    return _laid([piece for word in laid.words for piece in _pieces(word, least)])


def _cuts(laid: Paragraph, rooms: Sequence[float]) -> tuple[int, ...]:
    """The number of the first word of each line; rooms in cap heights, the last one goes on."""
    ends, starts, count = laid.ends, laid.starts, len(laid.ends)
    # A hair of slack, for a room that was measured from these very words.
    room = rooms[0] + _HAIR
    if ends[-1] <= room:
        return (0,)
    cuts, last, first = [0], len(rooms) - 1, 0
    while True:
        # Always one word at least.
        first = bisect_right(ends, starts[first] + room, first + 1)
        if first >= count:
            return _company(laid, cuts, room)
        while first in laid.held and first > cuts[-1] + 1:
            first -= 1
        if last and len(cuts) <= last:
            room = rooms[len(cuts)] + _HAIR
        cuts.append(first)


def _company(laid: Paragraph, cuts: list[int], room: float) -> tuple[int, ...]:
    """The same cuts, a short last word not left alone where the line above can spare another."""
    last = cuts[-1]
    if last < len(laid.words) - 1 or laid.words[last][2] >= _SHORT or len(cuts) < 2:
        return tuple(cuts)
    first = last - 1
    while first in laid.held:
        first -= 1
    if first > cuts[-2] + 1 and laid.ends[last] - laid.starts[first] <= room:
        cuts[-1] = first
    return tuple(cuts)


def _pieces(word: Word, room: float) -> Iterator[Word]:
    """A word in pieces as long as the room allows, of one letter at least; an address behind a stroke."""
    text, heavy, _ = word
    ends = list(accumulate((_em_width(letter, heavy) for letter in text), initial=0.0))
    start, last = 0, len(text)
    while start < last:
        fitting = bisect_right(ends, ends[start] + room + _HAIR) - 1
        end = min(max(fitting, start + 1), last)
        stroke = text.rfind("/", start, end) + 1 if end < last else 0
        end = stroke if stroke > start else end
        yield text[start:end], heavy, ends[end] - ends[start]
        start = end


class Cut(NamedTuple):
    """Words with the first word of each line; `whole` is false where a word had to be broken."""

    laid: Paragraph
    cuts: tuple[int, ...]
    whole: bool


def cut(runs: tuple[Run, ...], rooms: tuple[float, ...], cap: float) -> Cut:
    """Lines no wider than their room in mm, full ones first, broken at spaces; the last room goes on.

    A single word wider than its room is broken between letters, for nothing is ever dropped.
    """
    return cut_words(words_of(runs), [room / cap for room in rooms])


def cut_words(laid: Paragraph, rooms: Sequence[float]) -> Cut:
    """The same for words whose widths are known, with rooms in cap heights."""
    least = rooms[0] if len(rooms) == 1 else min(rooms)
    if laid.ends[-1] <= least:
        return Cut(laid, (0,), True)
    if laid.widest <= least + _HAIR:
        return Cut(laid, _cuts(laid, rooms), True)
    narrow = _narrowed(laid, least)
    return Cut(narrow, _cuts(narrow, rooms), False)


def broken(runs: Iterable[Run], rooms: tuple[float, ...], cap: float) -> tuple[Line, ...]:
    """The lines of `cut` themselves."""
    found = cut(tuple(runs), rooms, cap)
    return joined(found.laid, found.cuts)


def line_count(runs: Iterable[Run], room: float, cap: float) -> int:
    """Number of lines that the runs take in `room` mm."""
    return len(cut(tuple(runs), (room,), cap).cuts)


def last_width(found: Cut) -> float:
    """Width of the last line in cap heights."""
    return found.laid.ends[-1] - found.laid.starts[found.cuts[-1]]


def whole(runs: Iterable[Run], room: float, cap: float) -> bool:
    """True when every word fits on a line of `room` mm."""
    return words_of(tuple(runs)).widest * cap <= room


@lru_cache(maxsize=20_000)
def joined(laid: Paragraph, cuts: tuple[int, ...]) -> tuple[Line, ...]:
    """The lines of a paragraph that is cut before these words, as few runs in each as can be."""
    return tuple(_line(laid.words[first:last]) for first, last in pairwise((*cuts, len(laid.words))))


def _line(words: Sequence[Word]) -> Line:
    texts: list[tuple[list[str], bool]] = []
    for text, heavy, _ in words:
        if texts and texts[-1][1] == heavy:
            texts[-1][0].append(text)
        elif texts:
            texts.append((["", text], heavy))
        else:
            texts.append(([text], heavy))
    return tuple(Run(" ".join(parts), heavy) for parts, heavy in texts)
