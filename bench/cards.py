"""A wall card set by a warm compiler, against WeasyPrint setting the same words in one column."""

from collections.abc import Iterator
from dataclasses import replace
from html import escape

from bench.measuring import by_turns
from bench.rows import Row, not_measured, pair_row


def card_rows(runs: int) -> Iterator[Row]:
    """One card, its words changed a little for every run so that no run repeats another."""
    from generator.outputs.press import card_pdf
    from tests.press.samples import etch_card

    what = "a wall card, compiler warm"
    try:
        from weasyprint import HTML
    except OSError as missing:
        yield not_measured(what, 1, f"WeasyPrint lacks a library: {missing}"[:100])
        return
    card, turn = etch_card(), iter(range(10_000))
    html = f"<h1>{escape(card.title)}</h1>" + "".join(
        f"<h2>{escape(f'{step.verb} {step.place_title}')}</h2>\n<p>{escape(step.sentence + step.check)}</p>"
        for step in card.steps
    )
    pair = by_turns(
        lambda: card_pdf(replace(card, title=f"{card.title} {next(turn)}")),
        lambda: HTML(string=html.replace("</h1>", f" {next(turn)}</h1>")).write_pdf(),
        runs,
    )
    yield pair_row(what, 1, "WeasyPrint", pair, "<= 12 ms, <= 0.08x")
