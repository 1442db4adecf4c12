"""What the checks found and what was walked, for a page that instructors read."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from types import MappingProxyType

from generator.model import Lab
from generator.problems import Level, Problem
from generator.views.addresses import rule_address
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import counted, joined, low, role_title
from generator.views.report import FindingView, NotMadeView, ReportView
from generator.views.shown import LinkView
from generator.views.summary import ProcedureSummary

LIMITS = (
    "A check proves only what was declared. It cannot see a bottle, a part or a pair of gloves, and it "
    "replaces neither the supplier’s sheet nor the safety office."
)
_GRAVITY = (Level.ERROR, Level.WARNING, Level.NOTE)
_BLIND = (
    "Whether the bottle holds what its label and this lab’s files say, at that strength and of that age.",
    "Whether a step is done as it is written, by the person named, with the gloves named.",
    "Whether a hole, a face or a meter looks as a check asks: a check says what to look for, no more.",
    "What the supplier’s sheet says: what was copied from it is checked for gaps, not for truth.",
    "What two chemicals do that no group, statement or rule of this lab names.",
    "Other people in the room, and another procedure that is using the same place at that moment.",
    "A slip that is not a missing, moved or changed step: a splash, a dropped part, a wrong button.",
)


def report_view(
    problems: Iterable[Problem],
    not_made: Mapping[str, tuple[str, ...]],
    summaries: Iterable[ProcedureSummary] = (),
    titles: Mapping[str, str] = MappingProxyType({}),
) -> ReportView:
    """Every finding, the gravest first, every check that was not made, and how far the walk went.

    `titles` are how the roles are called in the middle of a sentence.
    """
    found, walked = tuple(problems), tuple(summaries)
    steps = _steps(walked) if found else {}
    graded = [problem for level in _GRAVITY for problem in found if problem.level is level]
    lived_with = [problem for problem in found if problem.level is Level.ACCEPTED]
    return ReportView(
        "What was checked",
        f"{_summary(found)}.",
        tuple(_finding(problem, steps, titles) for problem in graded),
        tuple(
            NotMadeView(LinkView(rule, rule_address(rule)), f"the lab declares no {joined(needs, 'or')}")
            for rule, needs in not_made.items()
        ),
        LIMITS,
        accepted=tuple(_finding(problem, steps, titles) for problem in lived_with),
        walked=tuple(one.walked for one in walked),
        total=_total(walked),
        blind=(*_blind(walked), *_BLIND),
    )


def _summary(found: tuple[Problem, ...]) -> str:
    counts = [(level, sum(problem.level is level for problem in found)) for level in Level]
    return joined(
        f"{number} {level}{'s' * (number != 1 and level is not Level.ACCEPTED)}" for level, number in counts
    )


def _steps(walked: tuple[ProcedureSummary, ...]) -> dict[tuple[str, str], LinkView]:
    """Each step of a page by file and id; a class stands behind the procedure that it belongs to."""
    steps: dict[tuple[str, str], LinkView] = {}
    for one in walked:
        for file, id in one.steps:
            steps.setdefault((file, id), LinkView(f"step {id}", one.row.link.address, id))
    return steps


def _finding(
    problem: Problem, steps: Mapping[tuple[str, str], LinkView], titles: Mapping[str, str]
) -> FindingView:
    link = steps.get((problem.where.file, problem.step))
    step = f", step {problem.step}" if problem.step and link is None else ""
    accepted = problem.accepted
    said = ""
    if accepted:
        who = titles.get(accepted.who, accepted.who)
        said = f"by the {who} until {_day(accepted.until)}: {accepted.because}"
    follows = f"{counted(problem.follows, 'other finding')} followed from this" if problem.follows else ""
    return FindingView(
        str(problem.level),
        LinkView(problem.rule, rule_address(problem.rule)),
        f"{problem.where}{step}",
        problem.message,
        problem.fix,
        said,
        link,
        joined(part for part in (problem.path, follows) if part),
    )


def role_words(lab: Lab) -> dict[str, str]:
    """The roles of a lab in the middle of a sentence."""
    return {str(id): low(role_title(lab, str(id))) for id in lab.roles}


def _day(text: str) -> str:
    try:
        return day_words(date.fromisoformat(text))
    except ValueError:
        return text


def _total(walked: tuple[ProcedureSummary, ...]) -> str:
    if not walked:
        return ""
    steps = sum(one.counts.straight for one in walked)
    moments = sum(one.counts.moments for one in walked)
    paths = sum(one.counts.paths for one in walked)
    return (
        f"{counted(len(walked), 'procedure')} walked: {counted(steps, 'step')} without a fault; with every "
        f"check that may fail and every pause {counted(paths, 'path')} and {counted(moments, 'moment')}."
    )


def _blind(walked: tuple[ProcedureSummary, ...]) -> Iterator[str]:
    """What was left out here and now, counted."""
    acts = sum(one.counts.acts for one in walked)
    if acts:
        yield f"{counted(acts, 'step')} of the kind “act”: they change nothing that is followed here."
    untimed = sum(one.counts.untimed for one in walked)
    if untimed:
        yield f"{counted(untimed, 'step')} without a time: every time here is short by what they take."
    cut = [one.title for one in walked if not one.counts.finished]
    if cut:
        yield f"What lies behind the bound of the walk in {joined(cut)}."
    yield "Two checks that fail in one run: each is walked by itself, and then all of them once in one run."
    yield "How long a fault takes to put right: the times above are those of a run without one."
