"""What hangs on the walls: copies of cards, and whether one of them is current."""

from dataclasses import dataclass

from generator.views.shown import LinkView


@dataclass(frozen=True, slots=True)
class CopyView:
    """One laminated copy: card, issue, where it hangs, its state in words."""

    card: str
    pdf: str
    issue: str
    where: str
    state: str
    replace: bool = False


@dataclass(frozen=True, slots=True)
class CurrentCardView:
    """What is posted now for one card: the issue and check code to compare a copy with, and what changed.

    `procedure` and `card` are ids; `withdrawn` says since when and why. `changes` gives for each issue before
    this one, by its number, what changed since.
    """

    procedure: str
    card: str
    title: str
    issue: str
    code: str
    pdf: str
    address: str
    withdrawn: str = ""
    changes: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class PostedView:
    """The pages cards/ and cards/current/."""

    copies: tuple[CopyView, ...]
    cards: tuple[CurrentCardView, ...]
    procedures: tuple[LinkView, ...] = ()
