"""What the checks found, for a page."""

from collections.abc import Iterable, Mapping

from generator.problems import Level, Problem
from generator.views.addresses import rule_address
from generator.views.filling.words import joined
from generator.views.report import FindingView, NotMadeView, ReportView
from generator.views.shown import LinkView

LIMITS = (
    "A check proves only what was declared. It cannot see a bottle, a part or a pair of gloves, and it "
    "replaces neither the supplier’s sheet nor the safety office."
)


def report_view(problems: Iterable[Problem], not_made: Mapping[str, tuple[str, ...]]) -> ReportView:
    """Every finding in the order of the files, and every check that was not made."""
    found = tuple(problems)
    counts = [(level, sum(problem.level is level for problem in found)) for level in Level]
    summary = joined(
        f"{number} {level}{'s' * (number != 1 and level is not Level.ACCEPTED)}" for level, number in counts
    )
    return ReportView(
        "What was checked",
        f"{summary}.",
        tuple(_finding(problem) for problem in found),
        tuple(
            NotMadeView(LinkView(rule, rule_address(rule)), f"the lab declares no {joined(needs, 'or')}")
            for rule, needs in not_made.items()
        ),
        LIMITS,
    )


def _finding(problem: Problem) -> FindingView:
    step = f", step {problem.step}" if problem.step else ""
    accepted = problem.accepted
    said = f"by the {accepted.who} until {accepted.until}: {accepted.because}" if accepted else ""
    return FindingView(
        str(problem.level),
        LinkView(problem.rule, rule_address(problem.rule)),
        f"{problem.where}{step}",
        problem.message,
        problem.fix,
        said,
    )
