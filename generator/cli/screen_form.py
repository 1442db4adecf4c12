"""A screening as lines for people, and as JSON."""

import json
from collections.abc import Iterator
from typing import Any

from generator.cli.lines import Line, Piece, text_line, visible
from generator.hazards import Edition, Screening, Share, Step, statement_text


def screen_json(found: Screening) -> str:
    """Classes, statements, signal, pictograms, unknown and steps, in plain ASCII."""
    data = {
        "classes": list(dict.fromkeys(one.name for one in found.classes)),
        "statements": [*found.statements, *found.supplements],
        "signal": found.signal,
        "pictograms": list(found.pictograms),
        "unknown": [f"{one.about}: {one.why}" for one in found.unknown],
        "steps": [_step(one) for one in found.steps],
    }
    return json.dumps(data, indent=2) + "\n"


def _step(one: Step) -> dict[str, Any]:
    return {
        "rule": one.rule,
        "clause": one.clause,
        "terms": [{"name": t.name, "working": t.working, "value": t.value} for t in one.terms],
        "total": one.total,
        "limit": one.limit,
        "outcome": one.outcome,
        "evidence": str(one.evidence),
        "text": one.text,
    }


def screen_lines(found: Screening, heading_only: bool = False) -> Iterator[Line]:
    """The caution, what the composition implies, what is not known, the shares and the arithmetic."""
    yield text_line(found.caution, "warning")
    if heading_only:
        return
    yield Line()
    yield from _implied(found)
    yield from _part("Not known", [f"{one.about}: {one.why}" for one in found.unknown])
    if found.density is not None:
        yield from _part("Density", [found.density.says])
    yield from _part("Shares by weight", [_share(row) for row in found.shares])
    yield from _part(
        "Arithmetic", [f"{one.text} [{one.clause}; {one.evidence.words}]" for one in found.steps]
    )
    yield text_line(found.source, "frame")


def _share(row: Share) -> str:
    share = "not known" if row.percent is None else f"{row.percent:.4g} %"
    return f"{row.ingredient.name}: {share} ({row.says})"


def _implied(found: Screening) -> Iterator[Line]:
    codes = (*found.statements, *found.supplements)
    words = found.signal or "no signal word"
    yield Line((Piece(f"{visible(found.name)}: ", "strong"), Piece(words, "strong" if found.signal else "")))
    for code in codes:
        names = ", ".join(dict.fromkeys(one.name for one in found.classes if one.code == code))
        text = statement_text(code, Edition.REV10) or statement_text(code, Edition.CLP) or ""
        yield Line(
            (Piece(f"  {code}  ", "strong"), Piece(f"{text}{f' ({names})' if names else ''}")), hang=10
        )
    if not codes:
        yield text_line("  No class by these rules. That is not a statement of safety.")
    if found.pictograms:
        yield text_line(f"  {' '.join(found.pictograms)}")


def _part(title: str, rows: list[str]) -> Iterator[Line]:
    if rows:
        yield Line()
        yield text_line(title, "strong")
        for row in rows:
            yield Line((Piece(f"  {visible(row)}"),), hang=4)
    if title == "Arithmetic":
        yield Line()
