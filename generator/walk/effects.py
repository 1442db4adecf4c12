"""What each verb does to the part, the person and the places, by verb and place."""

from collections.abc import Callable
from typing import NamedTuple

from generator.model import Place, Step
from generator.walk.ground import Ground
from generator.walk.state import Draft
from generator.walk.wearing import change_wear, touch


class Deed(NamedTuple):
    """One step being done: on what ground, to which draft, at which place."""

    ground: Ground
    draft: Draft
    step: Step
    place: Place | None


Effect = Callable[[Deed], None]


def apply(ground: Ground, draft: Draft, step: Step) -> None:
    """Change the draft as the step's verb and place imply."""
    place = ground.place(step)
    if step.rack is not None:
        draft.put("rack", "", str(step.rack))
    if ground.touches(step):
        touch(draft, step)
    effect = EFFECTS.get(step.do)
    if effect:
        effect(Deed(ground, draft, step, place))
    _power(draft, step, place)
    if step.put_on or step.take_off or step.wash_hands:
        change_wear(ground, draft, step)


def _put_in(deed: Deed) -> None:
    draft, step, place = deed.draft, deed.step, deed.place
    if place is None or step.at is None:
        return
    draft.renew("in", "", str(step.at))
    draft.put("on", "", None)
    draft.put("entered", "", draft.state.clock.later(deed.ground.hands_on(step), deed.ground.hands_on(step)))
    if place.holds:
        draft.put("wet", "", "dripping")
        draft.put("seen", "", None)
    _wash(draft, place)
    _makes(draft, place)
    if place.cover == "door":
        draft.put("open", str(step.at), None)
    if deed.ground.hot_when_used(place) or draft.now().has("heated", str(step.at)):
        draft.renew("hot", "", str(step.at))


def _take_out(deed: Deed) -> None:
    draft, step, place = deed.draft, deed.step, deed.place
    draft.put("in", "", None)
    draft.put("entered", "", None)
    if place is None or step.at is None:
        return
    if place.holds and step.for_ is not None and draft.now().text("wet") == "dripping":
        draft.put("wet", "", "drained")
    if place.cover == "door":
        draft.put("open", str(step.at), None)
    if deed.ground.hot_when_used(place) or draft.now().has("heated", str(step.at)):
        draft.renew("hot", "", str(step.at))


def _rinse(deed: Deed) -> None:
    draft, step, place = deed.draft, deed.step, deed.place
    before = set(draft.state.names("residue"))
    draft.renew("wet", "", "dripping")
    draft.put("seen", "", None)
    draft.put("hot", "", None)
    if place is None or step.at is None:
        return
    _wash(draft, place)
    if place.tray:
        old = draft.now().value("tray", str(step.at))
        kept = old if isinstance(old, tuple) else ()
        off = frozenset(before & set(place.clears))
        draft.put("tray", str(step.at), (*kept, (str(step.waste or ""), off)))


def _dry(deed: Deed) -> None:
    draft, place = deed.draft, deed.place
    draft.put("seen", "", None)
    if place is None:
        return
    _wash(draft, place)
    if place.makes == "dry":
        draft.renew("wet", "", None)


def _clean(deed: Deed) -> None:
    draft, place = deed.draft, deed.place
    if place is not None:
        _wash(draft, place)
        _makes(draft, place)


def _wash(draft: Draft, place: Place) -> None:
    """A place takes off what it clears and leaves what it leaves."""
    for residue in place.clears:
        if draft.now().has("residue", str(residue)):
            draft.renew("residue", str(residue), None)
    for residue in place.leaves:
        draft.renew("residue", str(residue), True)


def _makes(draft: Draft, place: Place) -> None:
    if place.makes == "dry":
        draft.renew("wet", "", None)
    elif place.makes == "wet":
        draft.renew("wet", "", "dripping")


def _open(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.at is not None:
        draft.renew("open", str(step.at), True)


def _close(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.at is not None:
        draft.renew("open", str(step.at), None)


def _empty(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.at is not None and draft.now().has("tray", str(step.at)):
        draft.renew("tray", str(step.at), None)
    for mixture in step.use:
        if draft.now().has("made", str(mixture)):
            draft.renew("made", str(mixture), None)


def _mount(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.at is not None:
        draft.renew("on", "", str(step.at))
        draft.put("rack", "", None)
        draft.put("looked", str(step.at), None)
    else:
        draft.put("on", "", None)


def _check(deed: Deed) -> None:
    draft, step, place = deed.draft, deed.step, deed.place
    draft.renew("seen", "", True)
    if step.at is not None and place and place.shared:
        draft.put("looked", str(step.at), True)


def _cool(deed: Deed) -> None:
    deed.draft.put("hot", "", None)
    # A machine that cools where it was heated is cold afterwards.
    deed.draft.put("heated", str(deed.step.at or ""), None)


def _heat(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.at is not None:
        draft.put("heated", str(step.at), True)
        draft.renew("hot", "", str(step.at))


def _save(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    draft.renew("saved", str(step.at or ""), True)


def _release(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    draft.renew("machine", str(step.at or ""), "free")
    if draft.now().text("on") == str(step.at or ""):
        draft.renew("on", "", None)
        draft.put("looked", str(step.at or ""), None)


def _claim(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    draft.renew("machine", str(step.at or ""), "held")
    draft.put("saved", str(step.at or ""), None)


def _mix(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.into is not None and step.into in deed.ground.lab.mixtures:
        draft.renew("made", str(step.into), draft.state.clock)


def _switch_off(deed: Deed) -> None:
    draft, step = deed.draft, deed.step
    if step.at is not None:
        draft.renew("live", str(step.at), None)


def _power(draft: Draft, step: Step, place: Place | None) -> None:
    """Current by `power`; elements by setting a machine that has power."""
    if step.at is None:
        return
    elements = step.do in ("set", "heat") and place is not None and place.power is not None
    if step.power is not None or elements:
        draft.renew("live", str(step.at), True)
    if elements and step.do != "switch-off":
        draft.put("heated", str(step.at), True)
        if draft.now().text("in") == str(step.at):
            draft.put("hot", "", str(step.at))


EFFECTS: dict[str, Effect] = {
    "put-in": _put_in,
    "take-out": _take_out,
    "rinse": _rinse,
    "dry": _dry,
    "clean": _clean,
    "open": _open,
    "close": _close,
    "empty": _empty,
    "mount": _mount,
    "check": _check,
    "cool": _cool,
    "heat": _heat,
    "save": _save,
    "release": _release,
    "claim": _claim,
    "mix": _mix,
    "add": _mix,
    "switch-off": _switch_off,
}
