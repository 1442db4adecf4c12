"""What the person wears, and what the gloves have touched."""

from collections.abc import Iterable
from difflib import get_close_matches

from generator.model import Lab, Step
from generator.walk.ground import Ground
from generator.walk.state import Atom, Draft


def worn_as(lab: Lab, names: Iterable[str]) -> tuple[str, ...]:
    """The declared pieces that names mean; a mistyped one counts as its nearest, so one slip is told once."""
    return tuple(_nearest(lab, str(name)) for name in names)


def _nearest(lab: Lab, name: str) -> str:
    if name in lab.ppe:
        return name
    return next(iter(get_close_matches(name, [str(id) for id in lab.ppe], 1, 0.6)), name)


def dress(ground: Ground, draft: Draft, pieces: tuple[str, ...]) -> None:
    """Wear exactly these pieces, as at the start and after a pause."""
    pieces = worn_as(ground.lab, pieces)
    for name in [*draft.now().names("worn")]:
        if name not in pieces:
            draft.renew("worn", name, None)
    for piece in pieces:
        draft.put("worn", piece, True)
    draft.put("hands", "", tuple(piece for piece in pieces if ground.on_hands(piece)))
    for name in [*draft.now().names("glove")]:
        draft.put("glove", name, None)


def change_wear(ground: Ground, draft: Draft, step: Step) -> None:
    """Off first, then on; with `fresh`, what is worn already is replaced by a new piece."""
    for piece in worn_as(ground.lab, step.take_off):
        _off(ground, draft, piece)
    for piece in worn_as(ground.lab, step.put_on):
        if step.fresh and draft.now().has("worn", piece):
            _off(ground, draft, piece)
        _on(ground, draft, piece)


def _off(ground: Ground, draft: Draft, piece: str) -> None:
    if not draft.now().has("worn", piece):
        return
    draft.renew("worn", piece, None)
    if ground.on_hands(piece):
        draft.put("hands", "", tuple(other for other in draft.now().gloves() if other != piece))
        draft.put("glove", piece, None)


def _on(ground: Ground, draft: Draft, piece: str) -> None:
    fresh = not draft.now().has("worn", piece)
    draft.put("worn", piece, True)
    if fresh and ground.on_hands(piece):
        draft.put("hands", "", (*draft.now().gloves(), piece))
        draft.renew("glove", piece, frozenset())


def touch(draft: Draft, step: Step) -> None:
    """The outermost gloves have now touched this place."""
    now = draft.now()
    gloves = now.gloves()
    if not gloves or step.at is None:
        return
    touched = now.touched(gloves[-1])
    if step.at not in touched:
        # The glove counts since it was put on, so its `since` stays.
        since = now.atom("glove", gloves[-1]).since
        draft.keep("glove", gloves[-1], Atom(touched | {str(step.at)}, since))
