"""What the walk believes at a step, as short words under it."""

from collections.abc import Iterator

from generator.study import Study
from generator.units import show_quantity
from generator.views.filling.telling import Telling
from generator.views.filling.words import joined, low, thing_title
from generator.views.shown import BadgeView
from generator.walk import Moment, State

_BEFORE = frozenset(("put-in", "check", "mount", "hold"))


def state_badges(told: Telling, moment: Moment) -> tuple[BadgeView, ...]:
    """Part, clothes, lids, current and limits at a moment."""
    study = told.study
    state = moment.before if moment.step.do in _BEFORE else moment.after
    found = (
        *_part(study, state),
        *_open(study, moment.after),
        *_live(study, moment.after),
        *_worn(told, moment.after),
        *_limits(told, moment),
    )
    return tuple(found)


def _part(study: Study, state: State) -> Iterator[BadgeView]:
    part = study.procedure.part
    if part is None:
        return
    place = study.place(state.text("in") or None)
    if place:
        yield BadgeView("part", f"{low(part.name)} in {low(place.title)}")
    else:
        yield BadgeView("part", f"{low(part.name)} {'wet' if state.has('wet') else 'dry'}")
    if state.text("rack"):
        yield BadgeView("part", f"on {low(thing_title(study.lab, state.text('rack')))}")


def _open(study: Study, state: State) -> Iterator[BadgeView]:
    places = [place for name in state.names("open") if (place := study.place(name))]
    for place in places:
        cover = "door" if place.cover == "door" else "lid"
        if place.number is not None:
            yield BadgeView("open", f"{cover}\u00a0{place.number}\u00a0open")
        else:
            yield BadgeView("open", f"{cover} of {low(place.title)} open")


def _live(study: Study, state: State) -> Iterator[BadgeView]:
    for kind, words in (("live", "current on"), ("heated", "heat on")):
        names = [low(place.title) for name in state.names(kind) if (place := study.place(name))]
        if names:
            yield BadgeView("live", f"{words} at {joined(names)}")
    for name in state.names("machine"):
        if state.text("machine", name) == "held" and (place := study.place(name)):
            yield BadgeView("machine", f"{low(place.title)} held")


def _worn(told: Telling, state: State) -> Iterator[BadgeView]:
    pieces = [name for name in (*state.names("worn"), *state.gloves()) if name not in told.base]
    titles = dict.fromkeys(low(thing_title(told.study.lab, name)) for name in pieces)
    if titles:
        yield BadgeView("worn", f"wearing {joined(titles)}")


def _limits(told: Telling, moment: Moment) -> Iterator[BadgeView]:
    """A limit shows from the end of the step that starts its clock to the step that must be reached."""
    ended, numbers = moment.before.ended, told.numbers
    for later in told.limited:
        since = later.since
        assert since is not None
        assert since.time.high is not None
        start, goal = str(since.step), str(later.id)
        if start in ended and goal not in ended:
            first = show_quantity(since.time.high)
            yield BadgeView(
                "limit", f"step {numbers.get(goal, goal)} within {first} of step {numbers.get(start, start)}"
            )
