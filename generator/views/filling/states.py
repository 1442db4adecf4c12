"""What the walk believes at a step, as short words under it."""

from collections.abc import Iterator

from generator.study import Study
from generator.units import show_quantity
from generator.views.filling.words import joined, low, thing_title
from generator.views.shown import BadgeView
from generator.walk import Moment, State

_BEFORE = frozenset(("put-in", "check", "mount", "hold"))


def state_badges(study: Study, moment: Moment, numbers: dict[str, str]) -> tuple[BadgeView, ...]:
    """Part, clothes, lids, current and limits at a moment; `numbers` gives the number of each step by id."""
    state = moment.before if moment.step.do in _BEFORE else moment.after
    found = (
        *_part(study, state),
        *_open(study, moment.after),
        *_live(study, moment.after),
        *_worn(study, moment.after),
        *_limits(study, moment, numbers),
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


def _worn(study: Study, state: State) -> Iterator[BadgeView]:
    base = set(map(str, study.lab.lab.base_wear))
    pieces = [name for name in (*state.names("worn"), *state.gloves()) if name not in base]
    titles = dict.fromkeys(low(thing_title(study.lab, name)) for name in pieces)
    if titles:
        yield BadgeView("worn", f"wearing {joined(titles)}")


def _limits(study: Study, moment: Moment, numbers: dict[str, str]) -> Iterator[BadgeView]:
    """A limit shows from the end of the step that starts its clock to the step that must be reached."""
    for later in study.procedure.steps:
        since = later.since
        if since is None or since.time.high is None:
            continue
        start, goal = str(since.step), str(later.id)
        if start not in moment.before.ended or goal in moment.before.ended:
            continue
        first = show_quantity(since.time.high)
        yield BadgeView(
            "limit", f"step {numbers.get(goal, goal)} within {first} of step {numbers.get(start, start)}"
        )
