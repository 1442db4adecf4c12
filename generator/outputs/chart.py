"""A small chart of an answer against one input, drawn at build time; chart.js draws the same again."""

from collections.abc import Iterator

from markupsafe import escape

from generator.views.calculator import AxisView, ChartView

_WIDTH, _HEIGHT = 320.0, 210.0
_TOP, _BOTTOM, _RIGHT = 26.0, 166.0, 302.0
_LETTER = 6.4  # width of a figure of 11 px, px


def chart_svg(view: ChartView) -> str:
    """Return the drawing as SVG for a page; it has classes only, no style of its own."""
    left = 10.0 + _LETTER * max(len(words) for _, words in view.y.marks)
    frame = _Frame(view, left)
    parts = (*frame.marks(), *frame.names(), *frame.curve())
    return (
        f'<svg class="nw-chart" xmlns="http://www.w3.org/2000/svg" role="img" '
        f'viewBox="0 0 {_WIDTH:.0f} {_HEIGHT:.0f}" aria-label="{escape(view.words)}">{"".join(parts)}</svg>'
    )


class _Frame:
    """Where the numbers of a chart fall on the drawing."""

    def __init__(self, view: ChartView, left: float) -> None:
        self._view = view
        self._left = left

    def _x(self, number: float) -> float:
        axis = self._view.x
        return self._left + (_RIGHT - self._left) * _share(number, axis)

    def _y(self, number: float) -> float:
        return _BOTTOM - (_BOTTOM - _TOP) * _share(number, self._view.y)

    def marks(self) -> Iterator[str]:
        """A line across for each mark of the answer, a stroke for each of the input."""
        for number, words in self._view.y.marks:
            y = self._y(number)
            yield f'<path class="tick" d="M{self._left:.1f} {y:.1f}H{_RIGHT:.1f}"/>'
            place = f'x="{self._left - 5:.1f}" y="{y + 4:.1f}"'
            yield f'<text class="mark" text-anchor="end" {place}>{words}</text>'
        for number, words in self._view.x.marks:
            x = self._x(number)
            yield f'<path class="tick" d="M{x:.1f} {_BOTTOM:.1f}v5"/>'
            place = f'x="{x:.1f}" y="{_BOTTOM + 17:.1f}"'
            yield f'<text class="mark" text-anchor="middle" {place}>{words}</text>'

    def names(self) -> Iterator[str]:
        """What the axes show, and the axes."""
        x, y = escape(self._view.x.label), escape(self._view.y.label)
        yield f'<text class="name" x="0" y="12">{y}</text>'
        yield f'<text class="name" text-anchor="end" x="{_RIGHT:.1f}" y="{_HEIGHT - 6:.1f}">{x}</text>'
        yield f'<path class="edge" d="M{self._left:.1f} {_TOP:.1f}V{_BOTTOM:.1f}H{_RIGHT:.1f}"/>'

    def curve(self) -> Iterator[str]:
        """The answer, broken where there is none, and the point that is worked out."""
        steps, pen = [], "M"
        for number, answer in self._view.points:
            if answer is None:
                pen = "M"
                continue
            steps.append(f"{pen}{self._x(number):.1f} {self._y(answer):.1f}")
            pen = "L"
        at_x, at_y = self._x(self._view.at[0]), self._y(self._view.at[1])
        yield f'<path class="curve" d="{"".join(steps)}"/>'
        yield f'<path class="here" d="M{self._left:.1f} {at_y:.1f}H{at_x:.1f}V{_BOTTOM:.1f}"/>'
        yield f'<circle class="dot" cx="{at_x:.1f}" cy="{at_y:.1f}" r="4"/>'


def _share(number: float, axis: AxisView) -> float:
    return (number - axis.low) / (axis.high - axis.low)
