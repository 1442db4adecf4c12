"""What the checks found and what was walked, for a page that instructors read."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from generator.problems import Level, Problem
from generator.study import Study
from generator.views.addresses import procedure_address, rule_address
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import counted, joined, low, role_title, spoken_time
from generator.views.report import FindingView, NotMadeView, ReportView, WalkedView
from generator.views.shown import LinkView
from generator.walk import Ground, stretches, totals

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
    problems: Iterable[Problem], not_made: Mapping[str, tuple[str, ...]], studies: Iterable[Study] = ()
) -> ReportView:
    """Every finding, the gravest first, every check that was not made, and how far the walk went."""
    found, walked = tuple(problems), tuple(studies)
    steps, titles = _steps(walked), _titles(walked)
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
        walked=tuple(_walked(study) for study in walked),
        total=_total(walked),
        blind=(*_blind(walked), *_BLIND),
    )


def _summary(found: tuple[Problem, ...]) -> str:
    counts = [(level, sum(problem.level is level for problem in found)) for level in Level]
    return joined(
        f"{number} {level}{'s' * (number != 1 and level is not Level.ACCEPTED)}" for level, number in counts
    )


def _steps(studies: tuple[Study, ...]) -> dict[tuple[str, str], LinkView]:
    """Each step of a page by file and id; a class stands behind the procedure that it belongs to."""
    steps: dict[tuple[str, str], LinkView] = {}
    for study in studies:
        address = procedure_address(study.procedure.id)
        for step in study.procedure.steps:
            link = LinkView(f"step {step.id}", address, str(step.id))
            steps.setdefault((step.where.file, str(step.id)), link)
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


def _titles(studies: tuple[Study, ...]) -> dict[str, str]:
    """The roles of the lab in the middle of a sentence."""
    roles = studies[0].lab.roles if studies else {}
    return {str(id): low(role_title(studies[0].lab, str(id))) for id in roles}


def _day(text: str) -> str:
    try:
        return day_words(date.fromisoformat(text))
    except ValueError:
        return text


def _walked(study: Study) -> WalkedView:
    walk = study.walk
    spent = totals(Ground(study.lab, study.procedure, study.sums), walk)
    longest = max(stretches(walk), key=lambda stretch: stretch.seconds, default=None)
    span = f"{spoken_time(longest.seconds)}, {longest.first} to {longest.last}" if longest else ""
    return WalkedView(
        LinkView(study.procedure.title, procedure_address(study.procedure.id)),
        str(len(walk.straight)),
        f"{len(walk.moments)}{'' if walk.finished else ', stopped at the bound'}",
        str(len(walk.paths) + 1),
        _time(spent.all),
        _time(spent.hands_on),
        _time(spent.here),
        _time(spent.near),
        _time(spent.away),
        span,
    )


def _time(seconds: float) -> str:
    return spoken_time(seconds) if seconds else ""


def _total(studies: tuple[Study, ...]) -> str:
    if not studies:
        return ""
    steps = sum(len(study.walk.straight) for study in studies)
    moments = sum(len(study.walk.moments) for study in studies)
    paths = sum(len(study.walk.paths) + 1 for study in studies)
    return (
        f"{counted(len(studies), 'procedure')} walked: {counted(steps, 'step')} without a fault; with every "
        f"check that may fail and every pause {counted(paths, 'path')} and {counted(moments, 'moment')}."
    )


def _blind(studies: tuple[Study, ...]) -> Iterator[str]:
    """What was left out here and now, counted."""
    acts = sum(step.do == "act" for study in studies for step in study.procedure.steps)
    if acts:
        yield f"{counted(acts, 'step')} of the kind “act”: they change nothing that is followed here."
    untimed = sum(totals(Ground(s.lab, s.procedure, s.sums), s.walk).untimed for s in studies)
    if untimed:
        yield f"{counted(untimed, 'step')} without a time: every time here is short by what they take."
    cut = [study for study in studies if not study.walk.finished]
    if cut:
        yield f"What lies behind the bound of the walk in {joined(str(s.procedure.title) for s in cut)}."
    yield "Two checks that fail in one run: each is walked by itself, and then all of them once in one run."
    yield "How long a fault takes to put right: the times above are those of a run without one."
