"""Pieces of the walk's state in words: part, person, lids, current, trays, machines, clock."""

from collections.abc import Callable, Iterable

from generator.model import Lab
from generator.study import title_of
from generator.walk import START, Clock, State

_HOUR = 3600
_MINUTE = 60


def part_words(lab: Lab, state: State) -> str:
    """Where the part is, wet or dry, hot or not, and whether anybody has looked at it since."""
    words = [_whereabouts(lab, state), state.text("wet") or "dry"]
    if state.has("wet"):
        words[-1] = f"wet ({words[-1]}{_since(state, 'wet')})"
    if state.has("hot"):
        words.append(f"hot{_since(state, 'hot')}")
    words.append("looked at" if state.has("seen") else "not looked at")
    return ", ".join(word for word in words if word)


def _whereabouts(lab: Lab, state: State) -> str:
    if state.has("in"):
        return f"in {title_of(lab, state.text('in'))}{_since(state, 'in')}"
    return f"on {title_of(lab, state.text('on'))}{_since(state, 'on')}" if state.has("on") else ""


def residue_words(lab: Lab, state: State) -> str:
    """What rides on the part, each with the step that left it there."""
    return _with_since(lab, state, "residue") or "nothing"


def rack_words(lab: Lab, state: State) -> str:
    """What carries the part."""
    return f"{title_of(lab, state.text('rack'))}{_since(state, 'rack')}" if state.has("rack") else ""


def worn_words(lab: Lab, state: State) -> str:
    """What is worn, gloves in their order with what they have touched."""
    gloves = state.gloves()
    other = [title_of(lab, name) for name in state.names("worn") if name not in gloves]
    return ", ".join([*other, *(_glove(lab, state, glove) for glove in gloves)])


def _glove(lab: Lab, state: State, glove: str) -> str:
    touched = _titles(lab, sorted(state.touched(glove)))
    return title_of(lab, glove) + (f" (touched: {touched})" if touched else "")


def open_words(lab: Lab, state: State) -> str:
    """Lids and doors that stand open."""
    return _with_since(lab, state, "open")


def live_words(lab: Lab, state: State) -> str:
    """Places with current or elements on."""
    return _with_since(lab, state, "live")


def heated_words(lab: Lab, state: State) -> str:
    """Places that were heated in this run."""
    return _with_since(lab, state, "heated")


def tray_words(lab: Lab, state: State) -> str:
    """What stands in each tray, and for which container."""
    trays = ((title_of(lab, name), state.value("tray", name)) for name in state.names("tray"))
    return "; ".join(f"{title}: {_tray(lab, value)}" for title, value in trays)


def _tray(lab: Lab, value: object) -> str:
    rinses = value if isinstance(value, tuple) else ()
    return ", ".join(_rinse(lab, str(waste), residues) for waste, residues in rinses)


def _rinse(lab: Lab, waste: str, residues: Iterable[str]) -> str:
    what = f"water with {_titles(lab, sorted(residues))}" if residues else "water"
    return f"{what} for {title_of(lab, waste)}" if waste else f"{what} for no container"


def machine_words(lab: Lab, state: State) -> str:
    """Shared machines that were claimed or released, with whether the work on them is saved."""
    return "; ".join(f"{title_of(lab, name)}: {_machine(state, name)}" for name in state.names("machine"))


def _machine(state: State, name: str) -> str:
    saved = ", work saved" if state.has("saved", name) else ""
    looked = ", position looked at" if state.has("looked", name) else ""
    return f"{state.text('machine', name)}{_since(state, 'machine', name)}{saved}{looked}"


def made_words(lab: Lab, state: State) -> str:
    """Mixtures made in this run and not yet emptied."""
    return _with_since(lab, state, "made")


ROWS: tuple[tuple[str, Callable[[Lab, State], str]], ...] = (
    ("part", part_words),
    ("on it", residue_words),
    ("rack", rack_words),
    ("worn", worn_words),
    ("open", open_words),
    ("live", live_words),
    ("heated", heated_words),
    ("tray", tray_words),
    ("machine", machine_words),
    ("made", made_words),
)


def state_clock(clock: Clock) -> str:
    """The clock since the start; after a pause, from the shortest to the longest."""
    if round(clock.shortest) == round(clock.longest):
        return _time(clock.shortest)
    return f"{_time(clock.shortest)} to {_time(clock.longest)}"


def _time(seconds: float) -> str:
    hours, rest = divmod(round(seconds), _HOUR)
    minutes, left = divmod(rest, _MINUTE)
    words = [f"{hours} h" if hours else "", f"{minutes} min" if minutes else "", f"{left} s" if left else ""]
    return " ".join(word for word in words if word) or "0 min"


def _titles(lab: Lab, names: Iterable[str]) -> str:
    return ", ".join(title_of(lab, name) for name in names)


def _with_since(lab: Lab, state: State, kind: str) -> str:
    return ", ".join(f"{title_of(lab, name)}{_since(state, kind, name)}" for name in state.names(kind))


def _since(state: State, kind: str, name: str = "") -> str:
    since = state.atom(kind, name).since
    return "" if since == START else f" since {since}"
