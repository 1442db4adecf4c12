"""The day plans of a class: worked out once, for their print and for their page."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.outputs.press.document import document_sheets
from generator.outputs.press.door import print_book
from generator.outputs.site import SiteFile
from generator.pipeline.kept import NOTHING_KEPT, Kept, kept_or_made, key_of
from generator.pipeline.paper import refused, standing_facts
from generator.pipeline.standing import Shown
from generator.problems import NewelError, Problem
from generator.study import Study
from generator.views.addresses import day_plan_path
from generator.views.day_plan import DayPlanView
from generator.views.filling.card import CardFacts
from generator.views.filling.class_day import class_days, planned_work
from generator.views.filling.day_plan import class_plan_view
from generator.views.paper import PaperView


@dataclass(frozen=True, slots=True)
class DayPlans:
    """The days by procedure, one PDF a procedure, and what could not be set."""

    days: Mapping[str, tuple[DayPlanView, ...]]
    files: tuple[SiteFile, ...]
    problems: tuple[Problem, ...]

    def own(self, study: Study) -> bool:
        """Whether a procedure has plans; those of a class overlay go with its procedure's."""
        return study.class_of is None and str(study.procedure.id) in self.days


def set_day_plans(shown: Shown, facts: CardFacts, kept: Kept = NOTHING_KEPT) -> DayPlans:
    """A plan for every procedure with cards and a part that fits a session; none for one withdrawn."""
    days: dict[str, tuple[DayPlanView, ...]] = {}
    files: list[SiteFile] = []
    problems: list[Problem] = []
    for study in shown.studies:
        if not study.procedure.cards or shown.of(study).status == "withdrawn":
            continue
        id, found = str(study.procedure.id), class_days(study)
        if found:
            days[id] = found
            papers = tuple(_views(study, standing_facts(shown, study, facts), found))
            try:
                files.append(_print(id, papers, kept))
            except NewelError as bad:
                problems.append(refused(study.procedure, bad))
    return DayPlans(days, tuple(files), tuple(problems))


def _views(study: Study, facts: CardFacts, days: tuple[DayPlanView, ...]) -> Iterator[PaperView]:
    issue = f" · issue {facts.issue} · check code {facts.check_code}" if facts.issue else ""
    identity = f"Procedure {study.procedure.id}{issue}"
    dated = facts.dated or study.today.isoformat()
    for day in days:
        yield class_plan_view(study, day, planned_work(day), dated, identity, facts.status)


def _print(id: str, papers: tuple[PaperView, ...], kept: Kept) -> SiteFile:
    content = kept_or_made(kept, key_of("day plan pdf", papers), lambda: _book(papers))
    return SiteFile(day_plan_path(id), content)


def _book(papers: tuple[PaperView, ...]) -> bytes:
    first = papers[0]
    sheets = [sheet for paper in papers for sheet in document_sheets(paper)]
    return print_book(sheets, first.title.partition(". ")[0], first.language, first.dated)
