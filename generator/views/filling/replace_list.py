"""The replace list: every laminated copy that must come off the wall, and those to be looked at."""

from collections.abc import Iterable, Iterator, Mapping

from generator.posting.copies import Hanging
from generator.views.addresses import card_path
from generator.views.filling.sheets_held import day_words
from generator.views.posted import CurrentCardView, TickView

_TODO = {
    "replace": "Replace it",
    "withdrawn": "Take it down: withdrawn",
    "not posted": "Take it down: no such card is posted",
}


def replace_rows(
    hanging: Iterable[Hanging], cards: Mapping[str, CurrentCardView], files: frozenset[str]
) -> Iterator[TickView]:
    """Copies that are wrong; `cards` are those shown, by `procedure/card`, `files` the paths of the site."""
    for one in sorted(hanging, key=lambda one: str(one.copy.hangs).casefold()):
        if one.is_wrong:
            yield _row(one, cards.get(str(one.copy.card)), files)


def look_rows(hanging: Iterable[Hanging], cards: Mapping[str, CurrentCardView]) -> Iterator[TickView]:
    """Copies that are right as far as anybody knows, and that nobody has looked at in time."""
    for one in sorted(hanging, key=lambda one: str(one.copy.hangs).casefold()):
        if one.look_due and not one.is_wrong:
            todo = f"Look at it: due {day_words(one.look_due)}"
            after = f"newel copies looked-at {one.copy.card} {one.copy.copy_}"
            yield TickView(_name(one, cards), str(one.copy.hangs), todo, _has(one), after=after)


def _row(one: Hanging, card: CurrentCardView | None, files: frozenset[str]) -> TickView:
    procedure, _, name = str(one.copy.card).partition("/")
    pdf = card_path(procedure, name)
    fresh = one.state == "replace"
    changes = dict(card.changes) if card else {}
    down = "" if fresh else " --taken-down"
    return TickView(
        _name(one, {str(one.copy.card): card} if card else {}),
        str(one.copy.hangs),
        _TODO[one.state],
        _has(one),
        f"issue {one.issue} · {one.code}" if fresh else "",
        changes.get(str(one.copy.issue), ()) if fresh else (),
        pdf if fresh and pdf in files else "",
        f"newel copies replaced {one.copy.card} {one.copy.copy_}{down}",
    )


def _name(one: Hanging, cards: Mapping[str, CurrentCardView]) -> str:
    card = cards.get(str(one.copy.card))
    return f"{card.title if card else one.copy.card}, copy {one.copy.copy_}"


def _has(one: Hanging) -> str:
    return f"issue {one.copy.issue} · {one.copy.code}"
