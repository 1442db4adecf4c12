"""Breaks runs of text into lines by the measured width of their letters."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from generator.outputs.press.drawing import Line, Run
from generator.outputs.press.metrics import bold, medium, tidy


@lru_cache(maxsize=20_000)
def _em_width(text: str, heavy: bool) -> float:
    return (bold() if heavy else medium()).width(text, 1.0)


def width(text: str, cap: float, heavy: bool = False) -> float:
    """Width in mm of `text` on one line with capitals `cap` mm high."""
    return _em_width(text, heavy) * cap


def run_width(line: Iterable[Run], cap: float) -> float:
    """Width in mm of a line of runs."""
    return sum(width(run.text, cap, run.bold) for run in line)


@lru_cache(maxsize=4_000)
def words_of(text: str) -> tuple[str, ...]:
    """The words of a text, tidied; a no-break space does not part words."""
    return tuple(tidy(text).split(" "))


def broken(runs: Iterable[Run], rooms: tuple[float, ...], cap: float) -> tuple[Line, ...]:
    """Lines no wider than their room in mm, full ones first, broken at spaces; the last room goes on.

    A single word wider than its room is broken between letters, for nothing is ever dropped; `whole`
    tells beforehand whether that happens.
    """
    lines: list[list[Run]] = [[]]
    used = 0.0
    spaces = (width(" ", cap), width(" ", cap, heavy=True))
    for word in _words(runs, min(rooms), cap):
        wide = _em_width(word.text, word.bold) * cap
        gap = spaces[word.bold] if lines[-1] else 0.0
        if lines[-1] and used + gap + wide > rooms[min(len(lines), len(rooms)) - 1]:
            lines.append([])
            used = gap = 0.0
        lines[-1].append(Run(f" {word.text}", word.bold) if gap else word)
        used += gap + wide
    return tuple(_joined(line) for line in lines if line)


def whole(runs: Iterable[Run], room: float, cap: float) -> bool:
    """True when every word fits on a line of `room` mm."""
    return all(_em_width(word, run.bold) * cap <= room for run in runs for word in words_of(run.text))


def _words(runs: Iterable[Run], room: float, cap: float) -> Iterator[Run]:
    for run in runs:
        for word in words_of(run.text):
            if _em_width(word, run.bold) * cap <= room:
                yield Run(word, run.bold)
            else:
                yield from _pieces(word, run.bold, room, cap)


def _pieces(word: str, heavy: bool, room: float, cap: float) -> Iterator[Run]:
    while word and width(word, cap, heavy) > room:
        cut = next((n for n in range(len(word) - 1, 1, -1) if width(word[:n], cap, heavy) <= room), 1)
        yield Run(word[:cut], heavy)
        word = word[cut:]
    if word:
        yield Run(word, heavy)


def _joined(line: list[Run]) -> Line:
    texts: list[tuple[list[str], bool]] = []
    for run in line:
        if texts and texts[-1][1] == run.bold:
            texts[-1][0].append(run.text)
        else:
            texts.append(([run.text], run.bold))
    return tuple(Run("".join(parts), heavy) for parts, heavy in texts)
