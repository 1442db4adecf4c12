"""Breaks runs of text into lines by the measured width of their letters."""

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from generator.outputs.press.drawing import Line, Run
from generator.outputs.press.metrics import bold, medium, tidy

Word = tuple[str, bool, float]


@lru_cache(maxsize=20_000)
def _em_width(text: str, heavy: bool) -> float:
    return (bold() if heavy else medium()).width(text, 1.0)


def width(text: str, cap: float, heavy: bool = False) -> float:
    """Width in mm of `text` on one line with capitals `cap` mm high."""
    return _em_width(text, heavy) * cap


def run_width(line: Iterable[Run], cap: float) -> float:
    """Width in mm of a line of runs."""
    return sum(width(run.text, cap, run.bold) for run in line)


@lru_cache(maxsize=10_000)
def _words_of(text: str, heavy: bool) -> tuple[Word, ...]:
    """The words of a text with their widths in cap heights; a no-break space does not part words."""
    return tuple((word, heavy, _em_width(word, heavy)) for word in tidy(text).split(" "))


def _words(runs: Iterable[Run]) -> list[Word]:
    return [word for run in runs for word in _words_of(run.text, run.bold)]


def _lines(runs: Iterable[Run], rooms: Sequence[float]) -> list[list[Word]]:
    """Words in lines; rooms in cap heights, the last one goes on."""
    spaces = (_em_width(" ", False), _em_width(" ", True))
    words = _words(runs)
    least = min(rooms)
    if any(word[2] > least for word in words):
        words = [piece for word in words for piece in _pieces(word, least)]
    lines: list[list[Word]] = [[]]
    used, room = 0.0, rooms[0]
    for word in words:
        gap = spaces[word[1]] if used else 0.0
        if used and used + gap + word[2] > room:
            lines.append([])
            room = rooms[min(len(lines), len(rooms)) - 1]
            used = gap = 0.0
        lines[-1].append(word)
        used += gap + word[2]
    return lines


def _pieces(word: Word, room: float) -> Iterator[Word]:
    text, heavy, wide = word
    while wide > room and len(text) > 1:
        cut = next((n for n in range(len(text) - 1, 1, -1) if _em_width(text[:n], heavy) <= room), 1)
        yield text[:cut], heavy, _em_width(text[:cut], heavy)
        text = text[cut:]
        wide = _em_width(text, heavy)
    yield text, heavy, wide


def broken(runs: Iterable[Run], rooms: tuple[float, ...], cap: float) -> tuple[Line, ...]:
    """Lines no wider than their room in mm, full ones first, broken at spaces; the last room goes on.

    A single word wider than its room is broken between letters, for nothing is ever dropped; `whole`
    tells beforehand whether that happens.
    """
    lines = _lines(runs, [room / cap for room in rooms])
    return tuple(_joined(line) for line in lines if line)


def line_count(runs: Iterable[Run], room: float, cap: float) -> int:
    """Number of lines that the runs take in `room` mm."""
    return len(_lines(runs, (room / cap,)))


def whole(runs: Iterable[Run], room: float, cap: float) -> bool:
    """True when every word fits on a line of `room` mm."""
    return all(word[2] * cap <= room for word in _words(runs))


def _joined(line: Sequence[Word]) -> Line:
    texts: list[tuple[list[str], bool]] = []
    for text, heavy, _ in line:
        if texts and texts[-1][1] == heavy:
            texts[-1][0].append(text)
        elif texts:
            texts.append((["", text], heavy))
        else:
            texts.append(([text], heavy))
    return tuple(Run(" ".join(parts), heavy) for parts, heavy in texts)
