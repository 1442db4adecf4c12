"""Where on the strip a visit or a time stands: time runs evenly, but no step is too thin to be seen."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.views.strip import StripView

RUN = 960.0
THINNEST = 5.0
MOST_A_MINUTE = 24.0
PAUSE = 64.0
TICK_ROOM = 62.0
_TICKS = (1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 1440, 2880)


@dataclass(frozen=True, slots=True)
class Scale:
    """Left and right edge of each visit in px, and its minutes."""

    lefts: tuple[float, ...]
    rights: tuple[float, ...]
    starts: tuple[float, ...]
    ends: tuple[float, ...]

    @property
    def width(self) -> float:
        """The right edge of the run."""
        return self.rights[-1]

    def left(self, position: float) -> float:
        """Where a piece that begins at a position begins."""
        index = min(int(position), len(self.lefts) - 1)
        return self.lefts[index] + (position - index) * (self.rights[index] - self.lefts[index])

    def right(self, position: float) -> float:
        """Where a piece that ends at a position ends: before a pause, not behind it."""
        whole = int(position)
        return self.rights[whole - 1] if whole == position and whole else self.left(position)

    def ticks(self) -> Iterator[tuple[float, int]]:
        """Places and minutes of the time scale, as dense as their numbers can be read."""
        worked = sum(end - start for start, end in zip(self.starts, self.ends, strict=True))
        wanted = TICK_ROOM * worked / self.width
        step = next((tick for tick in _TICKS if tick >= wanted), _TICKS[-1])
        last = -TICK_ROOM
        for index, (start, end) in enumerate(zip(self.starts, self.ends, strict=True)):
            for minute in range(-(-int(start * 60) // (step * 60)) * step, int(end) + 1, step):
                if not start <= minute < end:
                    continue
                place = self.left(index + (minute - start) / (end - start))
                if place - last >= TICK_ROOM * 0.8:
                    yield place, minute
                    last = place


def scale_of(view: StripView) -> Scale:
    """Widths from minutes; a pause that has to be taken is a gap of one width, however long."""
    worked = sum(visit.end - visit.start for visit in view.visits)
    a_minute = min(RUN / worked, MOST_A_MINUTE) if worked else 0.0
    gaps = {pause.behind for pause in view.pauses if pause.must}
    edges = [0.0]
    lefts, rights = [], []
    for index, visit in enumerate(view.visits):
        lefts.append(edges[-1])
        rights.append(lefts[-1] + max((visit.end - visit.start) * a_minute, THINNEST))
        edges.append(rights[-1] + (PAUSE if index in gaps and index + 1 < len(view.visits) else 0.0))
    return Scale(
        tuple(lefts), tuple(rights), tuple(v.start for v in view.visits), tuple(v.end for v in view.visits)
    )


def tick_text(minutes: int) -> str:
    """A time from the start: "45 min", "2 h", "1 h 30", "3 d"."""
    days, rest = divmod(minutes, 1440)
    if days and not rest:
        return f"{days}\N{NO-BREAK SPACE}d"
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest}\N{NO-BREAK SPACE}min" if rest else "0"
    return f"{hours}\N{NO-BREAK SPACE}h" + (f"\N{NO-BREAK SPACE}{rest:02d}" if rest else "")


def wrapped(text: str, width: float, letter: float, most: int = 3) -> tuple[str, ...]:
    """A text on at most so many lines of a width in px; what does not fit ends in an ellipsis."""
    room = max(int(width / letter), 2)
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if len(longer) <= room or not lines[-1]:
            lines[-1] = longer
        else:
            lines.append(word)
    if len(lines) > most:
        lines = [*lines[: most - 1], f"{lines[most - 1]}…"]
    return tuple(line if len(line) <= room else f"{line[: room - 1].rstrip()}…" for line in lines)
