"""A wall card set by a warm compiler, against WeasyPrint setting the very same drawing."""

import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from html import escape
from itertools import count
from urllib.parse import quote

from bench.measuring import Pair, Times, by_turns, collector_at_rest
from bench.rows import Row, not_measured, pair_row, shown
from generator.outputs.press import card_pdf
from generator.outputs.press.card import sheet_of
from generator.outputs.press.drawing import Box, Code, Mark, Sheet, Sign, Text
from generator.outputs.press.metrics import FONTS, bold
from generator.outputs.signs import sign_svg
from generator.views.card import CardView

_MANY = 100
_INKS = {"black": "#000", "white": "#fff", "pale": "#e2e2e2", None: "transparent"}


def card_rows(runs: int) -> Iterator[Row]:
    """One card, then many; sentences are changed for every run, so that none repeats another."""
    what, many = "a wall card, compiler warm", "a hundred cards, each, CPU"
    try:
        from weasyprint import HTML
    except OSError as missing:
        yield not_measured(what, 1, f"WeasyPrint lacks a library: {missing}"[:100])
        return
    cards, turn = _cards(), count()
    # The yardstick sets a finished drawing; finding the size of the letters is ours alone.
    page = _html(sheet_of(cards[0]))
    fresh = iter([_other(cards[0], next(turn)) for _ in range(runs + 1)])
    pair = by_turns(
        lambda: card_pdf(next(fresh)),
        lambda: HTML(string=f"{page}<!--{next(turn)}-->").write_pdf(pdf_variant="pdf/ua-1"),
        runs,
    )
    yield pair_row(what, 1, "WeasyPrint", pair, "<= 12 ms, <= 0.08x")
    pages, few = [_html(sheet_of(card)) for card in cards], max(runs // 2, 2)
    packs = iter([_pack(cards, turn) for _ in range(2 * few + 1)])
    pair = by_turns(
        lambda: [card_pdf(card) for card in next(packs)],
        lambda: [
            HTML(string=pages[n % len(pages)]).write_pdf(pdf_variant="pdf/ua-1") for n in range(_MANY // 10)
        ],
        few,
    )
    each = Pair(_each(pair.ours, _MANY), _each(pair.yardstick, _MANY // 10))
    yield pair_row(many, _MANY, "WeasyPrint", each, "<= 0.08x")
    spent = Times(tuple(map(_by_threads, packs)))
    yield Row("the same by the two threads of a build, each, wall", _MANY, len(spent.seconds),
              shown(spent.median), "", "", f"{spent.spread:.0%}", "<= 7 ms")  # fmt: skip


def _each(times: Times, count: int) -> Times:
    return Times(tuple(spent / count for spent in times.seconds))


def _by_threads(pack: Sequence[CardView]) -> float:
    """Wall seconds a card: the typesetter works beside the fitting of the next one."""
    with collector_at_rest(), ThreadPoolExecutor(2) as pool:
        start = time.perf_counter()
        list(pool.map(card_pdf, pack))
        return (time.perf_counter() - start) / len(pack)


def _pack(cards: Sequence[CardView], turn: Iterator[int]) -> list[CardView]:
    """A hundred cards of which none was set before."""
    return [_other(cards[n % len(cards)], next(turn)) for n in range(_MANY)]


def _cards() -> tuple[CardView, ...]:
    from tests.press.samples import copper_card, door_card, drill_card, etch_card

    return etch_card(), drill_card(), copper_card(), door_card()


def _other(card: CardView, turn: int) -> CardView:
    """The same card under another title and another address, each of its steps with another sentence."""
    steps = tuple(replace(step, sentence=f"{step.sentence} {turn}") for step in card.steps)
    return replace(card, title=f"{card.title} {turn % 10}", address=f"{card.address}{turn}", steps=steps)


def _html(sheet: Sheet) -> str:
    """The drawing as a page of absolutely placed boxes, signs and lines of text."""
    style = (
        f"@page{{size:{sheet.width}mm {sheet.height}mm;margin:0}}"
        "body{margin:0}div,img{position:absolute;box-sizing:border-box;white-space:pre;line-height:1}"
        + "".join(
            f"@font-face{{font-family:P;font-weight:{weight};src:url(file://{FONTS / name})}}"
            for weight, name in ((500, "IBMPlexSansCondensed-Medium.ttf"), (700, bold().file))
        )
    )
    marks = "".join(part for mark in sheet.marks for part in _drawn(mark))
    title = escape(sheet.title)
    return (
        f"<html lang=en><head><title>{title}</title><style>{style}</style></head>"
        f"<body style='font-family:P'>{marks}</body></html>"
    )


def _drawn(mark: Mark) -> Iterator[str]:
    at = f"left:{mark.x:.3f}mm;top:{mark.y:.3f}mm;"
    match mark:
        case Text():
            size = mark.cap / bold().cap
            for number, line in enumerate(mark.lines):
                runs = "".join(f"<b>{escape(r.text)}</b>" if r.bold else escape(r.text) for r in line)
                top = f"left:{mark.x:.3f}mm;top:{mark.y + number * mark.pitch:.3f}mm;"
                yield f"<div style='{top}font-size:{size:.3f}mm;color:{_INKS[mark.ink]}'>{runs}</div>"
        case Box():
            shape = f"width:{mark.width:.3f}mm;height:{mark.height:.3f}mm;border-radius:{mark.radius:.3f}mm;"
            paint = f"background:{_INKS[mark.fill]};border:{mark.line:.3f}mm solid"
            yield f"<div style='{at}{shape}{paint}'></div>"
        case Sign():
            source = f"data:image/svg+xml,{quote(sign_svg(mark.name))}"
            yield f"<img style='{at}width:{mark.size:.3f}mm' alt='{escape(mark.alt)}' src='{source}'>"
        case Code():
            svg = (
                f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 -.5 {mark.modules} {mark.modules}'>"
                f"<path stroke='#000' d='{mark.path}'/></svg>"
            )
            source = f"data:image/svg+xml,{quote(svg)}"
            yield f"<img style='{at}width:{mark.size:.3f}mm' alt='{escape(mark.alt)}' src=\"{source}\">"
