"""The parts of a hazard document as data for its template."""

from collections.abc import Iterable, Iterator
from typing import Any

from generator.hazards import pictogram_svg
from generator.views.chemical import HazardHeadingView, LabelView, StatementView
from generator.views.shown import FactView

Part = dict[str, Any]
NOT_KNOWN = "Not known here. See the supplier’s sheet."


def heading(level: int, text: str) -> Part:
    """A heading."""
    return {"kind": "heading", "level": level, "text": text}


def words(text: str, bold: bool = False) -> Part:
    """A paragraph."""
    return {"kind": "text", "text": text, "bold": bold}


def caution(text: str) -> Part:
    """The caution, set off by a line."""
    return {"kind": "caution", "text": text}


def pairs(rows: tuple[tuple[str, str], ...]) -> Part:
    """Labels with their texts."""
    return {"kind": "pairs", "rows": [list(row) for row in rows]} if rows else words("")


def fact_pairs(facts: Iterable[FactView]) -> Part:
    """Facts as labels with texts."""
    return pairs(tuple((fact.label, fact.text) for fact in facts))


def label_box(label: LabelView) -> Part:
    """Pictograms, signal word, statements, and what is not known of them."""
    notes = [f"Not known: {label.unknown}"] if label.unknown else []
    return {
        "kind": "label",
        "signal": label.signal,
        "pictograms": [{"svg": pictogram_svg(one.code), "alt": one.alt} for one in label.pictograms],
        "codes": _coded(label.statements),
        "advice": _coded(label.precautions),
        "notes": [*notes, *([f"{label.declared} Sheet heading 2."] if label.declared else [])],
    }


def _coded(rows: Iterable[StatementView]) -> list[list[str]]:
    return [[one.code, f"{one.text} {one.note}".strip()] for one in rows]


def heading_rows(rows: Iterable[HazardHeadingView]) -> Part:
    """Headings with their lines, each with its number on a safety data sheet."""
    return {
        "kind": "headings",
        "rows": [
            {
                "title": row.title,
                "sheet": f"sheet heading {row.sheet}" if row.sheet else "",
                "lines": [[line.label, line.text] for line in row.lines] or [["", NOT_KNOWN]],
            }
            for row in rows
        ],
    }


def texts_in(data: object) -> Iterator[str]:
    """Every text that the data would print; drawings and names of kinds are no texts."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for key, value in data.items():
            if key not in ("kind", "svg"):
                yield from texts_in(value)
    elif isinstance(data, list | tuple):
        for value in data:
            yield from texts_in(value)
