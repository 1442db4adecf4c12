"""The page of a rule, and the report of all that the rules found."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.problems import Level, RuleDoc
from generator.views.addresses import REPORT, rule_address
from generator.views.report import ReportView

_LEVELS = {
    Level.ERROR: "error, stops publishing",
    Level.WARNING: "warning, publishes only with a named role's reason",
    Level.NOTE: "note, on style",
    Level.ACCEPTED: "accepted",
}
_RULE_PARTS: tuple[Part[RuleDoc], ...] = (
    Part("not_so", "Not so", "shared/code.j2", lambda doc: {"code": doc.bad}),
    Part("but_so", "But so", "shared/code.j2", lambda doc: {"code": doc.good}),
)
_REPORT_PARTS: tuple[Part[ReportView], ...] = (
    Part("findings", "Found", "report/findings.j2", lambda view: {"rows": view.findings}),
    Part("accepted", "Accepted, for a time", "report/findings.j2", lambda view: {"rows": view.accepted}),
    Part("walked", "What was walked", "report/walked.j2", lambda view: {"rows": view.walked}),
    Part("not_made", "Not checked", "report/not_made.j2", lambda view: {"any": view.not_made}),
    Part("blind", "What a checker cannot see", "report/blind.j2", lambda view: {"rows": view.blind}),
)


def rule_anchors(doc: RuleDoc) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_RULE_PARTS, doc)


def rule_page(doc: RuleDoc, book: Book) -> Page:
    """Return the page of a rule, from what the rule says of itself."""
    links = Links(book, rule_address(doc.id))
    needs = ", ".join(doc.needs)
    more = f"; for some findings {_LEVELS[doc.sometimes]}" if doc.sometimes else ""
    html = render("rule/rule.j2", links, doc=doc, level=f"{_LEVELS[doc.level]}{more}", needs=needs)
    sections = (Section(1, "page_top", doc.id, html), *part_sections(_RULE_PARTS, doc, links))
    return Page(links.here, doc.id, sections, description=doc.what.replace("`", ""), kind="rule")


def rule_entry(doc: RuleDoc) -> SearchEntry:
    """Return what the rule is found by."""
    return SearchEntry(rule_address(doc.id), doc.id, f"{doc.what} {doc.why}".replace("`", ""), boost=0.5)


def report_anchors(view: ReportView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_REPORT_PARTS, view)


def report_page(view: ReportView, book: Book) -> Page:
    """Return the report; a link that leads nowhere raises NewelError."""
    links = Links(book, REPORT)
    head = Section(1, "page_top", view.title, render("report/head.j2", links, view=view))
    return Page(REPORT, view.title, (head, *part_sections(_REPORT_PARTS, view, links)), kind="report")
