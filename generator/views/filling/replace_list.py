"""The replace list: every laminated copy that must come off the wall, and those to be looked at."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import groupby

from generator.posting.copies import Hanging
from generator.views.addresses import card_path
from generator.views.filling.sheets_held import day_words
from generator.views.posted import CurrentCardView, TickGroupView, TickView

_ASKED = {
    "replace": "Take down",
    "withdrawn": "Withdrawn: take down",
    "not posted": "No such card is posted: take down",
}
Cards = Mapping[str, CurrentCardView]


def replace_groups(
    hanging: Iterable[Hanging], cards: Cards, files: frozenset[str]
) -> Iterator[TickGroupView]:
    """Copies that are wrong, by card and by what hangs; `cards` by `procedure/card`, `files` of the site."""
    for row in _grouped(one for one in hanging if one.is_wrong):
        first, fresh = row[0], row[0].state == "replace"
        procedure, _, name = str(first.copy.card).partition("/")
        pdf = card_path(procedure, name)
        changes = dict(cards[str(first.copy.card)].changes) if str(first.copy.card) in cards else {}
        yield TickGroupView(
            _title(first, cards),
            _ASKED[first.state],
            issue_words(str(first.copy.issue), str(first.copy.code)),
            tuple(_tick(one, "replaced", "" if fresh else " --taken-down") for one in row),
            issue_words(first.issue, first.code) if fresh else "",
            changes.get(str(first.copy.issue), ()) if fresh else (),
            pdf if fresh and pdf in files else "",
        )


def look_groups(hanging: Iterable[Hanging], cards: Cards) -> Iterator[TickGroupView]:
    """Copies that are right as far as anybody knows, and that nobody has looked at in time."""
    for row in _grouped(one for one in hanging if one.look_due and not one.is_wrong):
        due = min(one.look_due for one in row if one.look_due)
        has = issue_words(str(row[0].copy.issue), str(row[0].copy.code))
        ticks = tuple(_tick(one, "looked-at", "") for one in row)
        todo = f"Look, due {day_words(due)}:"
        yield TickGroupView(_title(row[0], cards), todo, f"it should be {has}", ticks)


def issue_words(issue: str, code: str) -> str:
    """Issue and check code, which stay on one line."""
    return f"issue {issue} · {code}".replace(" ", "\N{NO-BREAK SPACE}")


def _grouped(copies: Iterable[Hanging]) -> Iterator[list[Hanging]]:
    def same(one: Hanging) -> tuple[str, str]:
        return str(one.copy.card), str(one.copy.code)

    found = sorted(copies, key=lambda one: (*same(one), str(one.copy.hangs).casefold()))
    return (list(row) for _, row in groupby(found, same))


def _title(one: Hanging, cards: Cards) -> str:
    card = cards.get(str(one.copy.card))
    return card.title if card else str(one.copy.card)


def _tick(one: Hanging, done: str, tail: str) -> TickView:
    copy = one.copy
    after = f"newel copies {done} {copy.card} {copy.copy_}{tail}"
    return TickView(str(copy.hangs), f"copy {copy.copy_}", after)
