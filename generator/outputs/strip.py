"""The strip of a run as SVG: a shape or pattern of its own for every meaning, tones from the style sheet."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.outputs.address_links import AddressBook, Links
from generator.outputs.escaping import escape_text
from generator.outputs.strip_scale import Scale, scale_of, tick_text, wrapped
from generator.outputs.templating import render
from generator.views.addresses import procedure_address
from generator.views.strip import BandView, LaneView, PauseMarkView, SpanView, StripView

LETTER = 5.7
_LINE = 13.0
_HEAD = 15.0
_GAP = 5.0
_HEIGHTS = {
    "attention": 22.0,
    "place": 18.0,
    "wet": 9.0,
    "worn": 7.0,
    "open": 17.0,
    "live": 17.0,
    "held": 17.0,
    "limit": 11.0,
}
_SHARES = {"near": 0.55, "away": 0.25}
_PATTERNS = (
    '<defs><pattern id="run_near" width="5" height="5" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)">'
    '<path class="nw-run-stroke" d="M1 0V5"/></pattern>'
    '<pattern id="run_here" width="4" height="4" patternUnits="userSpaceOnUse">'
    '<path class="nw-run-stroke" d="M1 0V4"/></pattern>'
    '<pattern id="run_wet" width="12" height="9" patternUnits="userSpaceOnUse">'
    '<path class="nw-run-stroke" d="M0 4.5q3-4 6 0t6 0"/></pattern>'
    '<pattern id="run_pause" width="4" height="4" patternUnits="userSpaceOnUse">'
    '<path class="nw-run-dot" d="M1 1h1v1H1z"/></pattern></defs>'
)
_FILLS = {"here": ' fill="url(#run_here)"', "near": ' fill="url(#run_near)"', "wet": ' fill="url(#run_wet)"'}


@dataclass(frozen=True, slots=True)
class Placed:
    """A lane with its upper edge, height, and the base line of its name, in px."""

    band: BandView
    lane: LaneView
    top: float
    height: float
    name_at: float


def strip_html(view: StripView) -> str:
    """The drawing in a box that scrolls by itself, its key, and the same in words as a table."""
    scale = scale_of(view)
    head = _head_height(view, scale)
    lanes, height = _placed(view, head)
    names = tuple(_names(lanes))
    wide, high = f"{scale.width + 2:.0f}", f"{height:.0f}"
    drawing = (
        f'<svg class="nw-run" role="img" aria-labelledby="run_title run_said" width="{wide}" ',
        f'height="{high}" viewBox="-1 0 {wide} {high}">',
        f'<title id="run_title">{escape_text(view.title)}</title>',
        f'<desc id="run_said">{escape_text(view.said)}</desc>{_PATTERNS}',
        *_frame(view, scale, head, height),
        *(piece for lane in lanes for piece in _lane(lane, scale)),
        *_hover(view, scale, head, height),
        *('<g class="nw-run-paper nw-run-names">', *names, "</g>"),
        f'</svg><svg class="nw-run-names" aria-hidden="true" width="1" height="{high}">',
        *names,
        "</svg></div>",
    )
    links = Links(AddressBook({}), procedure_address(view.procedure))
    box = '<div class="nw-run-box" tabindex="0" role="region" aria-label="The whole run as a drawing">'
    return box + "".join(drawing) + render("procedure/strip_words.j2", links, view=view, kinds=_kinds(view))


def _kinds(view: StripView) -> frozenset[str]:
    """What the key has to explain."""
    spans = {span.kind for band in view.bands for lane in band.lanes for span in lane.spans}
    return frozenset(spans | {"must" if pause.must else "may" for pause in view.pauses})


def _head_height(view: StripView, scale: Scale) -> float:
    most = max(len(_stage_lines(stage, scale)) for stage in view.stages)
    return most * _LINE + 22 + (_LINE if view.pauses else 0)


def _stage_lines(stage: SpanView, scale: Scale) -> tuple[str, ...]:
    return wrapped(stage.text, scale.right(stage.end) - scale.left(stage.start) - 6, LETTER * 1.06)


def _placed(view: StripView, head: float) -> tuple[tuple[Placed, ...], float]:
    top = head + _GAP
    lanes = []
    for band in view.bands:
        for lane in band.lanes:
            top += _HEAD if lane.name else 2.0
            lanes.append(Placed(band, lane, top, _HEIGHTS[band.kind], top - 4))
            top += _HEIGHTS[band.kind] + _GAP
    return tuple(lanes), top + 2


def _names(lanes: tuple[Placed, ...]) -> Iterator[str]:
    """In the room over their lane; on a screen they stay in sight while the drawing is scrolled."""
    for lane in lanes:
        if lane.lane.name:
            yield f'<text x="2" y="{lane.name_at:.0f}">{escape_text(lane.lane.name)}</text>'


def _frame(view: StripView, scale: Scale, head: float, height: float) -> Iterator[str]:
    """Stages with their names, the time scale, pauses."""
    axis = head - 6 - (_LINE if view.pauses else 0)
    for stage in view.stages:
        x = scale.left(stage.start)
        yield f'<path class="nw-run-stage" d="M{x:.1f} 0V{height:.0f}"/>'
        for number, line in enumerate(_stage_lines(stage, scale)):
            y = 11 + number * _LINE
            yield f'<text class="nw-run-title" x="{x + 4:.1f}" y="{y:.0f}">{escape_text(line)}</text>'
    yield f'<path class="nw-run-axis" d="M0 {axis + 4:.0f}H{scale.width:.1f}"/>'
    for x, minute in scale.ticks():
        yield f'<path class="nw-run-axis" d="M{x:.1f} {axis - 8:.0f}v12"/>'
        yield f'<text class="nw-run-time" x="{x + 4:.1f}" y="{axis:.0f}">{tick_text(minute)}</text>'
    for pause in view.pauses:
        yield from _pause(pause, scale, axis, height)


def _pause(pause: PauseMarkView, scale: Scale, axis: float, height: float) -> Iterator[str]:
    x, y = scale.rights[pause.behind], axis + 4
    if pause.must and pause.behind + 1 < len(scale.lefts):
        wide = scale.lefts[pause.behind + 1] - x
        yield f'<rect class="nw-run-must" fill="url(#run_pause)" x="{x:.1f}" y="{y:.0f}" width="{wide:.1f}" '
        yield f'height="{height - y:.0f}"/>'
    else:
        yield f'<path class="nw-run-may" d="M{x:.1f} {y:.0f}V{height:.0f}"/>'
    words = f"{'pause' if pause.must else 'may pause'} {pause.text}"
    late = x + len(words) * LETTER > scale.width
    anchor = f' text-anchor="end" x="{x - 4:.1f}"' if late else f' x="{x + 4:.1f}"'
    yield f'<text class="nw-run-time nw-run-by"{anchor} y="{y + _LINE - 1:.0f}">{escape_text(words)}</text>'


def _lane(placed: Placed, scale: Scale) -> Iterator[str]:
    base = placed.top + placed.height
    yield f'<path class="nw-run-base" d="M0 {base:.1f}H{scale.width:.1f}"/>'
    edges = [(scale.left(span.start), scale.right(span.end)) for span in placed.lane.spans]
    for index, (span, (x, end)) in enumerate(zip(placed.lane.spans, edges, strict=True)):
        after = edges[index + 1][0] if index + 1 < len(edges) else scale.width
        yield from _span(span, x, max(end - x, 2.0), placed)
        yield from _text(span, x, end, after, placed)


def _span(span: SpanView, x: float, width: float, placed: Placed) -> Iterator[str]:
    """A lid that is off is a box without its upper edge; a limit is a bar with its end."""
    top, height = placed.top, placed.height
    if span.kind == "open":
        way = f"M{x + 1:.1f} {top:.0f}v{height:.0f}h{width - 2:.1f}v-{height:.0f}"
        yield f'<path class="nw-run-open" d="{way}"/>'
    elif span.kind == "limit":
        yield f'<path class="nw-run-limit" d="M{x:.1f} {top + 4:.0f}h{width:.1f}"/>'
    elif span.kind == "spare":
        middle, end = top + 4, x + width
        yield f'<path class="nw-run-spare" d="M{x:.1f} {middle:.0f}H{end:.1f}"/>'
        yield f'<path class="nw-run-end" d="M{end:.1f} {top:.0f}v9"/>'
    else:
        tall = height * _SHARES.get(span.kind, 1.0)
        yield f'<rect class="nw-run-{span.kind}"{_FILLS.get(span.kind, "")} x="{x + 0.5:.1f}" '
        yield f'y="{top + height - tall:.1f}" width="{max(width - 1, 1.5):.1f}" height="{tall:.1f}"/>'


def _text(span: SpanView, x: float, end: float, after: float, placed: Placed) -> Iterator[str]:
    """Inside the piece, else its number there, else beside it, else nothing: the table has it."""
    whole, number = span.text, span.text.split(" ", 1)[0] if span.text[:1].isdigit() else ""
    inside = next((text for text in (whole, number) if text and _room(text) <= end - x), "")
    beside = next((text for text in (whole, number) if text and _room(text) <= after - end), "")
    y = placed.top + placed.height / 2 + 4
    if inside:
        kind = "nw-run-on" if span.kind == "live" else "nw-run-in"
        yield f'<text class="{kind}" x="{(x + end) / 2:.1f}" y="{y:.1f}">{escape_text(inside)}</text>'
    elif beside:
        yield f'<text class="nw-run-by" x="{end + 4:.1f}" y="{y:.1f}">{escape_text(beside)}</text>'


def _room(text: str) -> float:
    return len(text) * LETTER + 6


def _hover(view: StripView, scale: Scale, head: float, height: float) -> Iterator[str]:
    """A column over each step, which says under the pointer what it is."""
    yield '<g class="nw-run-steps">'
    for index, visit in enumerate(view.visits):
        x, width = scale.lefts[index], scale.rights[index] - scale.lefts[index]
        words = ". ".join((visit.number, visit.say))
        yield f'<rect x="{x:.1f}" y="{head:.0f}" width="{width:.1f}" height="{height - head:.0f}">'
        yield f"<title>{escape_text(words)}</title></rect>"
    yield "</g>"
