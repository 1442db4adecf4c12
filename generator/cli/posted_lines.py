"""Changes, copies and refusals as lines of text."""

from collections.abc import Iterable, Iterator

from generator.cli.lines import Line, Piece, text_line, visible
from generator.pipeline.changes import ToldChange
from generator.pipeline.posting import Ready, Refused
from generator.posting.copies import Hanging

_HEADS = {
    "new hazard": "New hazard (the approver and the safety office)",
    "chemical": "Chemicals and waste (the approver)",
    "ppe": "What is worn (the approver)",
    "limit": "Limits and settings (the approver)",
    "time": "Times (the approver)",
    "order": "Order, places and people (the approver)",
    "wording": "Wording (the author or the approver)",
}


def change_lines(told: Iterable[ToldChange], copies: Iterable[Hanging] = ()) -> Iterator[Line]:
    """Every change under the head of its group, with what it affects."""
    found, hung = tuple(told), tuple(copies)
    for group, head in _HEADS.items():
        rows = [one for one in found if one.change.group == group]
        if rows:
            yield text_line(f"  {head}", "strong", hang=2)
        for one in rows:
            yield text_line(f"    {visible(one.text)}", hang=6)
            yield Line((Piece("      affects ", "frame"), Piece(visible(affected_words(one, hung)))), hang=8)


def affected_words(one: ToldChange, copies: Iterable[Hanging] = ()) -> str:
    """ "etch-card copies 1 and 2, run sheet; no calculator; no copy hangs of door-card"."""
    hung = {card: _numbers(card, tuple(copies)) for card in one.cards}
    cards = [f"{card} {numbers}" for card, numbers in hung.items() if numbers]
    rest = [card for card, numbers in hung.items() if not numbers]
    words = ", ".join([*cards, *one.affects]) or "no copy that hangs"
    if "calculators" not in one.affects:
        words += "; no calculator"
    return f"{words}; no copy hangs of {', '.join(rest)}" if rest else words


def _numbers(card: str, copies: tuple[Hanging, ...]) -> str:
    numbers = [str(one.copy.copy_) for one in copies if _same_card(str(one.copy.card), card)]
    if len(numbers) < 2:
        return f"copy {numbers[0]}" if numbers else ""
    return f"copies {', '.join(numbers[:-1])} and {numbers[-1]}"


def _same_card(of_copy: str, card: str) -> bool:
    """`line.second-year/etch` is the card `second-year/etch` of its procedure."""
    home, _, name = of_copy.partition("/")
    tail = home.partition(".")[2]
    return (f"{tail}/{name}" if tail else name) == card


def refusal_lines(refused: Refused) -> Iterator[Line]:
    """Why a procedure is not posted; its problems are listed by `newel check`."""
    for one in refused.refusals:
        yield Line((Piece(f"{refused.id} is not posted", "error"), Piece(f": {visible(one.what)}")), hang=4)
        yield Line((Piece("   = ", "frame"), Piece("fix: ", "fix"), Piece(visible(one.fix))), hang=10)
    if refused.problems:
        many = len(refused.problems)
        yield Line(
            (
                Piece(f"{refused.id} is not posted", "error"),
                Piece(f": {many} problem{'s stand' if many > 1 else ' stands'} in the way, as listed above"),
            ),
            hang=4,
        )


def ready_lines(ready: Ready) -> Iterator[Line]:
    """What was posted."""
    yield text_line(f"posted {ready.id}, issue {ready.number}: {ready.file}", "strong")
    yield from change_lines(ready.changes, ready.replace)
    if ready.number == 1:
        yield text_line("  its first issue")
    elif not ready.changes:
        yield text_line("  nothing changed: a review")


def replace_lines(copies: Iterable[Hanging]) -> Iterator[Line]:
    """The replace list, to be ticked off."""
    found = tuple(copies)
    if not found:
        yield text_line("No copy on a wall is wrong.")
        return
    todo = "Replace" if any(one.state == "replace" for one in found) else "Take down"
    yield text_line(f"{todo} {len(found)} cop{'ies' if len(found) > 1 else 'y'}:", "strong")
    for one in found:
        yield text_line(
            f"  [ ] {visible(one.name)}, {visible(str(one.copy.hangs))}: {state_text(one)}", hang=6
        )
    yield text_line("To print this list: newel build, then cards/replace/index.html of the site.", hang=4)


def state_text(one: Hanging) -> str:
    """A copy's state in words."""
    has = f"hangs as issue {one.copy.issue} · {one.copy.code}"
    words = {
        "current": f"current, issue {one.copy.issue} · {one.copy.code}",
        "replace": f"{has}; now issue {one.issue} · {one.code}",
        "withdrawn": f"{has}; withdrawn, take it down",
        "not posted": f"{has}; no such card is posted, take it down",
    }
    late = f"; somebody was to look at it by {one.look_due}" if one.look_due else ""
    return words[one.state] + late
