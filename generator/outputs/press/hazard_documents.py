"""Hazard summaries, the lab's overview and the safety office's sheet as tagged A4 documents."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Any

from generator.outputs.press.hazard_parts import (
    caution,
    fact_pairs,
    heading,
    heading_rows,
    label_box,
    pairs,
    texts_in,
    words,
)
from generator.outputs.press.template_door import print_template
from generator.outputs.press.texts import demand, unprintable_in
from generator.views.chemical import ChemicalView, HazardSummaryView, ScreeningView
from generator.views.lab_hazards import LabHazardsView, OfficeView, TableView
from generator.views.print_setting import PrintSetting

Part = dict[str, Any]
_LEAD = "Summary, not the supplier’s sheet."
_WIDE = {"as_bought": (2.2, 1.5, 1.4, 2, 1.8), "made_here": (1.6, 1.3, 1.5, 3, 1.4), "kept_apart": (3, 1)}


@lru_cache(maxsize=500)
def chemical_pdf(view: ChemicalView, setting: PrintSetting) -> bytes:
    """The summary of one substance or mixture, with its screening where there is one."""
    return _print(view.title, _chemical(view), view.caution, setting)


@lru_cache(maxsize=500)
def summary_pdf(view: HazardSummaryView, setting: PrintSetting) -> bytes:
    """The summary of a procedure: all that it meets, then what to do when it goes wrong."""
    return _print(view.title, _summary(view), view.caution, setting)


@lru_cache(maxsize=500)
def office_pdf(view: OfficeView, setting: PrintSetting) -> bytes:
    """The safety office's sheet with lines to sign on."""
    return _print(view.title, _office(view), view.caution, setting)


@lru_cache(maxsize=500)
def overview_pdf(view: LabHazardsView, setting: PrintSetting) -> bytes:
    """The whole lab."""
    return _print(view.title, _overview(view), view.caution, setting)


def _print(title: str, parts: Iterable[Part], says: str, setting: PrintSetting) -> bytes:
    set_parts = list(parts)
    data = {"parts": set_parts, "caution": says, "foot": setting.foot, "draft": setting.draft}
    demand(title, unprintable_in(texts_in({**data, "title": title})))
    return print_template("hazards.typ", data, title, setting.language, setting.dated)


def _opening(title: str, lead: str, says: str) -> Iterator[Part]:
    yield {"kind": "title", "text": title}
    yield words(lead, bold=True)
    yield caution(says)


def _chemical(view: ChemicalView) -> Iterator[Part]:
    yield from _opening(view.title, _LEAD, view.caution)
    yield label_box(view.label)
    if view.if_contaminated:
        yield pairs((("If something else got in", view.if_contaminated),))
    yield heading(2, "Summary")
    yield heading_rows(view.headings)
    yield fact_pairs(view.help)
    if view.screening:
        yield heading(2, "Screening from the composition")
        yield from _screening(view.screening)


def _screening(view: ScreeningView) -> Iterator[Part]:
    yield caution(view.caution)
    if view.refused:
        yield words(f"Not screened: {view.refused}")
        return
    declared = "; ".join(f"{one.text} ({one.code})" for one in view.declared) or "no statement"
    implied = "; ".join(f"{one.text} ({one.code})" for one in view.statements)
    nothing = "no class by these rules. That is not a statement of safety."
    beside = [("Declared", declared), ("Implied by the composition", implied or nothing)]
    more = (("Implied, not declared", view.undeclared), ("Only declared", view.only_declared))
    yield pairs((*beside, *((label, text) for label, text in more if text)))
    yield pairs(tuple(("Not known", text) for text in view.unknown))
    if view.shares:
        yield heading(3, "The shares by weight")
        rows = ((one.title, one.share, one.working, one.evidence) for one in view.shares)
        yield _table(("Part", "% by weight", "Worked out", "Its classes"), rows, (2, 1, 3, 2))
    if view.rows:
        yield heading(3, "The arithmetic")
        sums = ((one.about, one.arithmetic, f"{one.limit}, {one.evidence}", one.result) for one in view.rows)
        yield _table(("Rule", "Sum", "Limit", "Result"), sums, (2, 4, 2, 2))
    yield words(view.source)


def _table(heads: tuple[str, ...], rows: Iterable[tuple[str, ...]], widths: tuple[float, ...]) -> Part:
    cells = [[{"text": text, "note": ""} for text in row] for row in rows]
    return {"kind": "table", "heads": list(heads), "rows": cells, "widths": list(widths)}


def _summary(view: HazardSummaryView) -> Iterator[Part]:
    yield from _opening(view.title, _LEAD, view.caution)
    if not view.items:
        yield words("No substance or mixture is declared at its places or used in its steps. "
                    "That is not a statement of safety.")  # fmt: skip
    yield fact_pairs(view.help)
    yield pairs(tuple((sign.title, sign.detail) for sign in view.words))
    for item in view.items:
        yield heading(2, item.title)
        yield words(f"{item.where}{f'; {item.strength}' if item.strength else ''}")
        yield label_box(item.label)
        yield heading_rows(item.headings)
    if view.emergencies:
        yield heading(2, "When it goes wrong")
        rows = ((one.when, f"{one.first} {one.then}".strip()) for one in view.emergencies)
        yield pairs(tuple((when[:1].upper() + when[1:], text) for when, text in rows))


def _office(view: OfficeView) -> Iterator[Part]:
    yield from _opening(view.title, "Summary for the safety office, not the supplier’s sheet.", view.caution)
    yield fact_pairs(view.facts)
    for section in view.sections:
        yield heading(2, section.title)
        rows = tuple((line.label or "Note", line.text) for line in section.lines)
        yield pairs(rows or (("Not known", "Nothing is declared."),))
    yield heading(2, "Signatures")
    yield {"kind": "signs", "heads": ["Role", "Name", "Signature", "Date"], "rows": list(view.signs)}


def _overview(view: LabHazardsView) -> Iterator[Part]:
    yield from _opening(view.title, "Summary, not the supplier’s sheets.", view.caution)
    yield fact_pairs(view.facts)
    for table in view.tables:
        yield heading(2, table.title)
        if table.lead:
            yield words(table.lead)
        yield _view_table(table)
        for text in table.foot:
            yield words(text)


def _view_table(table: TableView) -> Part:
    cells = [[{"text": one.text, "note": one.note} for one in row] for row in table.rows]
    widths = list(_WIDE.get(table.anchor, (1.4, *(1,) * (len(table.heads) - 1))))
    return {"kind": "table", "heads": list(table.heads), "rows": cells, "widths": widths}
