"""What the checks found, for a page that anybody can read."""

from dataclasses import dataclass

from generator.views.shown import LinkView


@dataclass(frozen=True, slots=True)
class FindingView:
    """One problem: level, rule, where, what was found, how to mend it; an accepted one says who, until, why.

    `step` leads to the step on its page; `more` says how the work comes there and what follows.
    """

    level: str
    rule: LinkView
    where: str
    message: str
    fix: str = ""
    accepted: str = ""
    step: LinkView | None = None
    more: str = ""


@dataclass(frozen=True, slots=True)
class NotMadeView:
    """A check that was not made in this lab, and why."""

    rule: LinkView
    why: str


@dataclass(frozen=True, slots=True)
class WalkedView:
    """How much of one procedure was walked, and the time of its straight run, in words."""

    procedure: LinkView
    steps: str
    moments: str
    paths: str
    whole: str
    hands_on: str
    here: str
    near: str
    away: str
    longest: str


@dataclass(frozen=True, slots=True)
class ReportView:
    """All findings of a build, with the counts in words and what no check can know.

    `findings` stand, `accepted` are those that a role lives with; `blind` says what was not looked at.
    """

    title: str
    summary: str
    findings: tuple[FindingView, ...]
    not_made: tuple[NotMadeView, ...]
    limits: str
    accepted: tuple[FindingView, ...] = ()
    walked: tuple[WalkedView, ...] = ()
    total: str = ""
    blind: tuple[str, ...] = ()
