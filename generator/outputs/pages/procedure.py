"""The student's page of one procedure."""

from collections.abc import Iterator

from generator.outputs.address_links import AddressBook, Links
from generator.outputs.page import Page, Section
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.procedure import ProcedureView

# Anchors of our own hold an underscore, which no author's id can.
_PARTS = (
    ("session_plan", "Session clock", "procedure/plan.j2"),
    ("my_part", "My part", "procedure/job.j2"),
    ("get_ready", "Get ready", "procedure/ready.j2"),
    ("whole_run", "The whole run", "procedure/strip.j2"),
)
_AFTER = (
    ("you_may_see", "What you may see", "procedure/symptoms.j2"),
    ("wall_cards", "Wall cards", "procedure/cards.j2"),
    ("papers", "Papers and decisions", "procedure/papers.j2"),
)


def procedure_address(id: str) -> str:
    """Return the address of a procedure's page."""
    return f"procedures/{id}"


def procedure_anchors(view: ProcedureView) -> frozenset[str]:
    """Return the anchors that other pages may link to: parts, stages and steps."""
    steps = {step.id for stage in view.stages for step in stage.steps}
    return frozenset({anchor for anchor, *_ in _shown(view)} | {stage.id for stage in view.stages} | steps)


def procedure_page(view: ProcedureView, book: AddressBook) -> Page:
    """Return the page; a link that leads nowhere raises NewelError."""
    address = procedure_address(view.id)
    sections = tuple(_sections(view, Links(book, address)))
    return Page(address, view.title, sections, description=view.lead, kind="procedure")


def procedure_entry(view: ProcedureView) -> SearchEntry:
    """Return the one entry that stands for the procedure in the search."""
    return SearchEntry(procedure_address(view.id), view.title, view.search_text, view.search_tags, boost=2.0)


def _sections(view: ProcedureView, links: Links) -> Iterator[Section]:
    yield Section(1, "page_top", view.title, render("procedure/head.j2", links, view=view))
    shown = _shown(view)
    for part in _PARTS:
        if part in shown:
            yield _part(part, view, links)
    for stage in view.stages:
        html = render("procedure/stage.j2", links, view=view, stage=stage)
        yield Section(2, stage.id, stage.title, html)
    for part in _AFTER:
        if part in shown:
            yield _part(part, view, links)


def _part(part: tuple[str, str, str], view: ProcedureView, links: Links) -> Section:
    anchor, title, template = part
    return Section(2, anchor, title, render(template, links, view=view))


def _shown(view: ProcedureView) -> tuple[tuple[str, str, str], ...]:
    has = {
        "session_plan": view.plan,
        "my_part": view.job,
        "get_ready": view.ready or view.tell_us_first or view.wear or view.limits,
        "whole_run": view.strip,
        "you_may_see": view.symptoms,
        "wall_cards": view.cards,
        "papers": view.papers or view.changes or view.differs,
    }
    return tuple(part for part in (*_PARTS, *_AFTER) if has[part[0]])
