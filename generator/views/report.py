"""What the checks found, for a page that anybody can read."""

from dataclasses import dataclass

from generator.views.shown import LinkView


@dataclass(frozen=True, slots=True)
class FindingView:
    """One problem: level, rule, where, what was found, how to mend it; an accepted one says why and until."""

    level: str
    rule: LinkView
    where: str
    message: str
    fix: str = ""
    accepted: str = ""


@dataclass(frozen=True, slots=True)
class NotMadeView:
    """A check that was not made in this lab, and why."""

    rule: LinkView
    why: str


@dataclass(frozen=True, slots=True)
class ReportView:
    """All findings of a build, with the counts in words and what no check can know."""

    title: str
    summary: str
    findings: tuple[FindingView, ...]
    not_made: tuple[NotMadeView, ...]
    limits: str
