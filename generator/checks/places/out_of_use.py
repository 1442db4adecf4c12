"""A procedure uses a place that is out of use."""

import datetime
from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="out-of-use",
    level=Level.WARNING,
    subject="places",
    what=(
        "A step is done at a place that is `out_of_use` today. A banner stands on its pages; no new "
        "issue is needed."
    ),
    why="A student learns it at home, not in front of the red tag.",
    bad="""places: {soak: {title: Soak cleaner, out_of_use: {since: 2026-11-20, until: 2026-12-01,
   because: the heater is being mended}}}""",
    good="""places: {soak: {title: Soak cleaner}}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Each place out of use today, once, at the first step that is done there."""
    seen: set[str] = set()
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        out = place.out_of_use if place else None
        if out is None or str(step.at) in seen or not _today(study, out.since, out.until):
            continue
        seen.add(str(step.at))
        until = f" until {out.until}" if out.until else ""
        yield DOC.found(
            step.spot("at"),
            f"{called(study, str(step.at))} is out of use{until}: {out.because}",
            "take the `out_of_use` away when it is mended, or work at another place",
            step=str(step.id),
            place=str(step.at),
        )


def _today(study: Study, since: datetime.date | None, until: datetime.date | None) -> bool:
    return (since is None or since <= study.today) and (until is None or study.today <= until)


RULE = Rule(DOC, in_procedure=find)
