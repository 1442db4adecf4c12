"""The bands of a strip: attention, place, wet, worn, open, live, held, and what must be reached in time."""

from collections.abc import Callable, Iterable, Iterator
from itertools import pairwise

from generator.study import Study
from generator.units import show_window
from generator.views.filling.words import low, thing_title
from generator.views.strip import BandKind, BandView, LaneView, SpanView
from generator.walk import Ground, Moment

Run = tuple[Moment, ...]
_STAYS = {"here": "waiting here", "near": "staying near", "away": "away"}


def bands(study: Study, run: Run, numbers: dict[str, str]) -> Iterator[BandView]:
    """Every band that has something on it, from the hands down to the limits."""
    yield from _band("attention", "Attention", [LaneView("Attention", tuple(_attention(study, run)))])
    yield from _band("place", "Part is in", _places(study, run))
    yield from _band("wet", "Part is wet", _wet(run))
    yield from _band("worn", "Worn", _worn(study, run))
    yield from _band("open", "Open", _named(study, run, "open", "Open"))
    yield from _band("live", "Current or heat on", _named(study, run, "live", "Current or heat on"))
    yield from _band("held", "Machine held", _held(study, run))
    yield from _band("limit", "In time", _limits(study, run, numbers))


def _band(kind: BandKind, name: str, lanes: Iterable[LaneView]) -> Iterator[BandView]:
    found = tuple(lane for lane in lanes if lane.spans)
    if found:
        yield BandView(kind, name, found)


def _attention(study: Study, run: Run) -> Iterator[SpanView]:
    """Hands first, then the waiting of the same step; what states no time is hands-on."""
    ground = Ground(study.lab, study.procedure, study.sums)
    pieces: list[SpanView] = []
    for index, moment in enumerate(run):
        lasts = moment.after.clock.shortest - moment.before.clock.shortest
        hands = ground.hands_on(moment.step) * moment.times
        share = hands / lasts if lasts else 1.0
        if share > 0:
            pieces.append(SpanView(index, index + share, "hands", "", "hands on"))
        if share < 1:
            stay = moment.step.stay
            pieces.append(SpanView(index + share, index + 1, stay, "", _STAYS[stay]))
    yield from _merged(pieces, seams(run))


def _merged(pieces: list[SpanView], breaks: frozenset[int]) -> Iterator[SpanView]:
    kept: list[SpanView] = []
    for piece in pieces:
        last = kept[-1] if kept else None
        joins = (
            last
            and last.kind == piece.kind
            and last.end == piece.start
            and int(piece.start) - 1 not in breaks
        )
        if last and joins:
            kept[-1] = SpanView(last.start, piece.end, last.kind, last.text, last.said)
        else:
            kept.append(piece)
    yield from kept


def _spans(run: Run, value: Callable[[Moment], object]) -> Iterator[tuple[int, int, object]]:
    """Neighbouring moments of one value that is not empty, cut where a pause has to be taken."""
    start, breaks = 0, seams(run)
    values = [value(moment) for moment in run]
    for index, found in enumerate(values):
        if index + 1 == len(run) or values[index + 1] != found or index in breaks:
            if found:
                yield start, index + 1, found
            start = index + 1


def _number(study: Study, id: str) -> str:
    """A place in a word or two: number and title."""
    place = study.place(id)
    if place is None:
        return id
    return f"{place.number} {place.title}" if place.number is not None else str(place.title)


def _places(study: Study, run: Run) -> Iterator[LaneView]:
    spans = (
        SpanView(start, end, "in", _number(study, str(id)), low(thing_title(study.lab, str(id))))
        for start, end, id in _spans(run, lambda moment: moment.after.text("in"))
    )
    yield LaneView("Part is in", tuple(spans))


def _wet(run: Run) -> Iterator[LaneView]:
    found = _spans(run, lambda moment: moment.after.has("wet"))
    yield LaneView("Part is wet", tuple(SpanView(start, end, "wet", "", "wet") for start, end, _ in found))


def _worn(study: Study, run: Run) -> Iterator[LaneView]:
    """A lane a piece; a fresh piece begins a span of its own."""
    base = set(map(str, study.lab.lab.base_wear))
    pieces = dict.fromkeys(name for moment in run for name in moment.after.names("worn") if name not in base)
    for piece in pieces:
        title = thing_title(study.lab, piece)
        found = _spans(run, _since(piece))
        yield LaneView(title, tuple(SpanView(start, end, "worn", "", low(title)) for start, end, _ in found))


def _since(piece: str) -> Callable[[Moment], object]:
    return lambda moment: moment.after.atom("worn", piece).since if moment.after.has("worn", piece) else None


def _named(study: Study, run: Run, kind: str, name: str) -> tuple[LaneView, ...]:
    """One span for each time that a place is open or live."""
    places = dict.fromkeys(place for moment in run for place in moment.after.names(kind))
    spans = [
        SpanView(start, end, kind, _number(study, place), low(thing_title(study.lab, place)))
        for place in places
        for start, end, _ in _spans(run, _has(kind, place))
    ]
    return lanes_apart(spans, name)


def _has(kind: str, place: str) -> Callable[[Moment], object]:
    return lambda moment: moment.after.has(kind, place)


def _held(study: Study, run: Run) -> tuple[LaneView, ...]:
    places = dict.fromkeys(place for moment in run for place in moment.after.names("machine"))
    spans = [
        SpanView(start, end, "held", _number(study, place), low(thing_title(study.lab, place)))
        for place in places
        for start, end, _ in _spans(run, _is_held(place))
    ]
    return lanes_apart(spans, "Machine held")


def _is_held(place: str) -> Callable[[Moment], object]:
    return lambda moment: moment.after.text("machine", place) == "held"


def _limits(study: Study, run: Run, numbers: dict[str, str]) -> Iterator[LaneView]:
    """Each clock that runs out: from the end of the step that starts it to the step that must be reached."""
    for step in study.procedure.steps:
        if step.since is None or step.since.time.high is None:
            continue
        goals = [i for i, moment in enumerate(run) if moment.step is step]
        before = run[: max(goals, default=0)]
        starts = [i for i, moment in enumerate(before) if moment.step.id == step.since.step]
        if starts:
            number = numbers[str(step.id)]
            said = f"step {number} {show_window(step.since.time)} after step {numbers[str(step.since.step)]}"
            spans = _limit(run, starts[-1] + 1, goals[-1], step.since.time.high.si, said)
            yield LaneView(f"In time: {said}", spans)


def _limit(run: Run, start: int, goal: int, most: float, said: str) -> tuple[SpanView, ...]:
    """What is used of the time, and behind it what is to spare."""
    used = SpanView(start, goal, "limit", "", said)
    last = _position(run, run[start - 1].after.clock.shortest + most)
    return (used, SpanView(goal, last, "spare")) if last > goal else (used,)


def _position(run: Run, clock: float) -> float:
    """Where on the strip a time falls, in seconds from the start; its end for what comes after it."""
    for index, moment in enumerate(run):
        start, end = moment.before.clock.shortest, moment.after.clock.shortest
        if clock < end:
            return index + max(clock - start, 0.0) / (end - start)
    return float(len(run))


def lanes_apart(spans: Iterable[SpanView], name: str) -> tuple[LaneView, ...]:
    """Pieces on as few lines as they fit on without touching; the first line bears the name."""
    lines: list[list[SpanView]] = []
    for span in sorted(spans, key=lambda one: one.start):
        free = next((line for line in lines if line[-1].end <= span.start), None)
        if free is None:
            lines.append([span])
        else:
            free.append(span)
    return tuple(LaneView("" if index else name, tuple(line)) for index, line in enumerate(lines))


def seams(run: Run) -> frozenset[int]:
    """Behind which visits the clock jumps, because a pause has to be taken there."""
    return frozenset(
        index
        for index, (one, other) in enumerate(pairwise(run))
        if other.before.clock.shortest > one.after.clock.shortest + 1e-6
    )
