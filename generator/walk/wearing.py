"""What the person wears, and what the gloves have touched."""

from generator.model import Step
from generator.walk.ground import Ground
from generator.walk.state import Atom, Draft


def dress(ground: Ground, draft: Draft, pieces: tuple[str, ...]) -> None:
    """Wear exactly these pieces, as at the start and after a pause."""
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
    for piece in step.take_off:
        _off(ground, draft, str(piece))
    for piece in step.put_on:
        if step.fresh and draft.now().has("worn", str(piece)):
            _off(ground, draft, str(piece))
        _on(ground, draft, str(piece))


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
    gloves = draft.now().gloves()
    if gloves and step.at is not None:
        outer = gloves[-1]
        atom = draft.now().atom("glove", outer)
        touched = draft.now().touched(outer) | {str(step.at)}
        # The glove counts since it was put on, so its `since` stays.
        draft.keep("glove", outer, Atom(touched, atom.since))
