"""The strip of a run, from the straight run of its walk."""

from collections.abc import Iterator
from math import ceil, floor

from generator.study import Study
from generator.units import show_window
from generator.views.filling.strip_bands import bands
from generator.views.filling.words import joined, low, spoken_time
from generator.views.strip import BandView, PauseMarkView, SpanView, StripView, VisitView
from generator.walk import Moment


def strip_view(study: Study) -> StripView | None:
    """Every visit of the straight run, with what the walk believes; None where nothing was walked."""
    run = study.walk.straight
    if not run:
        return None
    numbers = {str(step.id): str(number) for number, step in enumerate(study.procedure.steps, 1)}
    visits = tuple(_visit(moment, numbers) for moment in run)
    found = tuple(bands(study, run, numbers))
    cells = [_cells(band, len(run)) for band in found]
    return StripView(
        procedure=study.procedure.id,
        title=f"The run of: {study.procedure.title}",
        said=_said(study, found),
        visits=visits,
        stages=tuple(_stages(run)),
        bands=found,
        pauses=tuple(_pauses(run)),
        columns=("Step", "From the start", "Lasts", *(band.name for band in found)),
        rows=tuple(map(_row, visits, *cells)),
    )


def _visit(moment: Moment, numbers: dict[str, str]) -> VisitView:
    start, end = moment.before.clock.shortest / 60, moment.after.clock.shortest / 60
    return VisitView(str(moment.step.id), numbers[str(moment.step.id)], str(moment.step.say), start, end)


def _stages(run: tuple[Moment, ...]) -> Iterator[SpanView]:
    """A stage that is repeated is one piece."""
    start = 0
    for index, moment in enumerate(run):
        if index + 1 == len(run) or run[index + 1].stage is not moment.stage:
            title = str(moment.stage.title)
            yield SpanView(start, index + 1, "stage", title, title)
            start = index + 1


def _pauses(run: tuple[Moment, ...]) -> Iterator[PauseMarkView]:
    for index, moment in enumerate(run):
        pause = moment.step.pause
        if pause is not None:
            yield PauseMarkView(index, pause.time.low is not None, show_window(pause.time))


def _said(study: Study, found: tuple[BandView, ...]) -> str:
    spent = study.totals
    by_attention = (
        (spent.hands_on, "hands-on"),
        (spent.here, "waiting here"),
        (spent.near, "near"),
        (spent.away, "away"),
    )
    parts = joined(f"{spoken_time(seconds)} {words}" for seconds, words in by_attention if seconds)
    count = len(study.walk.straight)
    steps = f"{count} {'step' if count == 1 else 'steps'}"
    time = f"{steps} take {spoken_time(spent.all)}: {parts}." if spent.all else f"{steps} that state no time."
    return f"{time} Drawn over the time: {joined(low(band.name) for band in found)}."


def _row(visit: VisitView, *cells: str) -> tuple[str, ...]:
    lasts = spoken_time((visit.end - visit.start) * 60) if visit.end > visit.start else ""
    return (visit.say, spoken_time(visit.start * 60), lasts, *cells)


def _cells(band: BandView, count: int) -> tuple[str, ...]:
    """What a band says at each visit, everything once."""
    told: list[dict[str, None]] = [{} for _ in range(count)]
    for span in (span for lane in band.lanes for span in lane.spans if span.said):
        for index in range(floor(span.start), ceil(span.end)):
            told[index][span.said] = None
    return tuple(map(", ".join, told))
