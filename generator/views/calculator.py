"""One formula as a page: form, answer, formula, worked example, cautions."""

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
class CalculatorView:
    """The page of a formula.

    `units` and `decimals` (one for each unit) say how the answer is shown; `toward` how it is rounded
    (nearest, up, down). `mathml` is made by the build. `requires` is said where numbers do not fit.
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
    shown: str = ""
    mathml: str = ""
    examples: tuple[WorkedView, ...] = ()
    cautions: tuple[str, ...] = ()
    source: str = ""
    never_above: str = ""
    who: str = ""
    naive: str = ""
    requires: tuple[str, ...] = ()
    reckoner: ReckonerView | None = None
    used_in: tuple[LinkView, ...] = ()
    search_text: str = ""
