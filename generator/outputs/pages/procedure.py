"""The student's page of one procedure."""

from collections.abc import Iterator

from generator.model.verbs import VERBS
from generator.outputs.address_links import Book, Links
from generator.outputs.explained import Explained
from generator.outputs.javascript import formula_path
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import procedure_address
from generator.views.procedure import ProcedureView, StageView, SymptomView

_Parts = tuple[Part[ProcedureView], ...]

_BEFORE: _Parts = (
    Part("session_plan", "Session clock", "procedure/plan.j2", lambda view: {"plan": view.plan}),
    Part("my_part", "My part", "procedure/job.j2", lambda view: {"job": view.job}),
    Part(
        "get_ready",
        "Get ready",
        "procedure/ready.j2",
        lambda view: {"any": view.ready or view.tell_us_first or view.wear or view.limits},
    ),
    Part("whole_run", "The whole run", "procedure/strip.j2", lambda view: {"strip": view.strip}),
)
_AFTER: _Parts = (
    Part("learn_it", "Learn it first", "procedure/learn.j2", lambda view: {"learning": view.learning}),
    Part("you_may_see", "What you may see", "procedure/symptoms.j2", lambda view: {"rows": view.symptoms}),
    Part("wall_cards", "Wall cards", "procedure/cards.j2", lambda view: {"cards": view.cards}),
    Part(
        "papers_and_decisions",
        "Papers and decisions",
        "procedure/papers.j2",
        lambda view: {"any": view.papers or view.standing.history or view.differs},
    ),
)


def procedure_anchors(view: ProcedureView) -> frozenset[str]:
    """Return the anchors that other pages may link to: parts, stages and steps."""
    steps = {step.id for stage in view.stages for step in stage.steps}
    stages = {_stage_anchor(stage, view) for stage in view.stages}
    return part_anchors((*_BEFORE, *_AFTER), view) | stages | steps


def _stage_anchor(stage: StageView, view: ProcedureView) -> str:
    """The stage's id; where a step has the same one, the step keeps it: cards and alarms lead to steps."""
    is_taken = any(step.id == stage.id for other in view.stages for step in other.steps)
    return f"stage_{stage.id}" if is_taken else stage.id


def procedure_page(view: ProcedureView, book: Book) -> Page:
    """Return the page; a link that leads nowhere raises NewelError."""
    address = procedure_address(view.id)
    sections = tuple(_sections(view, Links(book, address)))
    return Page(address, view.title, sections, description=view.lead, kind="procedure")


def procedure_entry(view: ProcedureView, words: str, tags: tuple[str, ...]) -> SearchEntry:
    """Return the one entry that stands for the procedure in the search, found by words and tags."""
    return SearchEntry(procedure_address(view.id), view.title, words, tags, boost=2.0)


def symptom_entries(view: ProcedureView) -> tuple[SearchEntry, ...]:
    """Return an entry for each symptom: it leads to the step where it is seen, else to the list of them."""
    address = procedure_address(view.id)
    return tuple(
        SearchEntry(f"{address}#{_seen_at(view, row)}", row.symptom, "\n".join((row.do_first, *row.causes)))
        for row in view.symptoms
    )


def _seen_at(view: ProcedureView, row: SymptomView) -> str:
    here = row.at and row.at.address == procedure_address(view.id) and row.at.anchor
    return here or "you_may_see"


def _sections(view: ProcedureView, links: Links) -> Iterator[Section]:
    terms = Explained(view.glossary, frozenset(VERBS))
    formulas = dict.fromkeys(formula_path(sum.formula) for sum in view.job.sums) if view.job else {}
    head = render("procedure/head.j2", links, view=view, formulas=tuple(formulas))
    yield Section(1, "page_top", view.title, head)
    yield from part_sections(_BEFORE, view, links)
    for stage in view.stages:
        html = render("procedure/stage.j2", links, view=view, stage=stage, explain=terms.explain)
        yield Section(2, _stage_anchor(stage, view), stage.title, html)
    yield from part_sections(_AFTER, view, links)
    if terms.met:
        yield Section(2, "", "", render("procedure/terms.j2", links, terms=terms.met))
