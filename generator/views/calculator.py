"""One formula as a page: form, answer, what a wrong number does, chart, table, formula, worked example."""

from dataclasses import dataclass

from generator.views.plan import BoxView, UnitView
from generator.views.shown import LinkView


@dataclass(frozen=True, slots=True)
class WorkedView:
    """A worked example: what was given, what came out, and where it is from."""

    given: tuple[tuple[str, str], ...]
    answer: str
    source: str = ""


@dataclass(frozen=True, slots=True)
class ReckonerView:
    """A ready-reckoner: heads and rows of finished values."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class AxisView:
    """One axis of a chart: what it shows, from where to where, and its marks with their numbers."""

    label: str
    low: float
    high: float
    marks: tuple[tuple[float, str], ...]


@dataclass(frozen=True, slots=True)
class ChartView:
    """The answer against one input, `along`; a point without an answer has None. `at` is as given."""

    along: str
    x: AxisView
    y: AxisView
    points: tuple[tuple[float, float | None], ...]
    at: tuple[float, float]
    words: str


@dataclass(frozen=True, slots=True)
class SolvedView:
    """The formula turned round: what comes out, and the formula as MathML."""

    label: str
    mathml: str


@dataclass(frozen=True, slots=True)
class CalculatorView:
    """The page of a formula.

    `units` and `decimals` (one for each unit) say how the answer is shown; `toward` how it is rounded
    (nearest, up, down); `clock` that it is a time of day. `never` is the lab's limit for the answer in SI,
    in words in `never_shown`. `solve` names the inputs that can be worked out from the answer. `requires`
    is said where numbers do not fit. `shown`, `naive_shown`, `effects`, `chart` speak of the numbers in the
    boxes at first. `mathml`, `solved` and `code` (which names the formula as it stands) are made by the
    build.
    """

    name: str
    title: str
    decides: str
    boxes: tuple[BoxView, ...]
    answer_label: str
    answer_symbol: str
    units: tuple[UnitView, ...]
    decimals: tuple[int, ...]
    toward: str = "nearest"
    clock: bool = False
    shown: str = ""
    mathml: str = ""
    solve: tuple[str, ...] = ()
    solved: tuple[SolvedView, ...] = ()
    examples: tuple[WorkedView, ...] = ()
    cautions: tuple[str, ...] = ()
    source: str = ""
    never_above: str = ""
    never: float | None = None
    never_shown: str = ""
    who: str = ""
    naive: str = ""
    naive_shown: str = ""
    effects: tuple[str, ...] = ()
    chart: ChartView | None = None
    requires: tuple[str, ...] = ()
    reckoner: ReckonerView | None = None
    used_in: tuple[LinkView, ...] = ()
    code: str = ""
    date: str = ""
    search_text: str = ""
