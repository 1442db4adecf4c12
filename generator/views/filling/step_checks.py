"""What is looked at, watched and written down at a step, and what follows when it is not so."""

from generator.model import Fail, Reading, Step
from generator.units import Window, show_quantity, show_unit
from generator.views.filling.telling import Telling
from generator.views.filling.words import (
    call_sentence,
    joined,
    low,
    named,
    times,
    window_words,
)
from generator.views.step import (
    FailView,
    RecordView,
)


def fail_view(told: Telling, fail: Fail | None) -> FailView | None:
    """Words, mend, the step to go back to, how often, whom to call."""
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


def watch_words(step: Step) -> str:
    """What is looked at again and again, and how often."""
    watch = step.watch
    if watch is None:
        return ""
    what = watch.check or f"write down {joined(low(named(name)) for name in watch.record)}"
    return f"Every {show_quantity(watch.every)}: {what}"


def record_views(step: Step) -> tuple[RecordView, ...]:
    """All that is written down at a step, the watch's readings too."""
    readings = {**step.record, **(step.watch.record if step.watch else {})}
    return tuple(record_view(str(name), reading) for name, reading in readings.items())


def record_view(name: str, reading: Reading) -> RecordView:
    """One reading to write down."""
    if reading.kind != "number":
        return RecordView(name, named(name), reading.kind)
    limit: Window | None = reading.limit
    return RecordView(name, named(name), show_unit(reading.unit), window_words(limit))
