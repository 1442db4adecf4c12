"""What testing a few holes says about all of them."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula, Requirement
from generator.formulas.inputs import Input
from generator.formulas.words import choose, product

HOLES_TOTAL = Input(
    "holes_total",
    "N",
    "holes on the board",
    "",
    (),
    "1 to 2000",
    "1 to 100000",
    "holes are counted",
    whole=True,
)
HOLES_BAD = Input(
    "holes_bad",
    "K",
    "bad holes among them",
    "",
    (),
    "1 to 20",
    "0 to 100000",
    "holes are counted",
    whole=True,
)
HOLES_TESTED = Input(
    "holes_tested",
    "n",
    "holes that are tested",
    "",
    (),
    "1 to 50",
    "0 to 5000",
    "holes are counted",
    whole=True,
)


def _all_missed(holes_total: Any, holes_bad: Any, holes_tested: Any) -> Any:
    missed = product(0, holes_tested - 1, lambda i: (holes_total - holes_bad - i) / (holes_total - i))
    return choose(holes_tested + holes_bad > holes_total, 0, missed)


def _not_more_than_all(holes_total: Any, holes_tested: Any) -> Any:
    return holes_tested <= holes_total


def _not_all_bad(holes_total: Any, holes_bad: Any) -> Any:
    return holes_bad <= holes_total


HOLES_TO_SAMPLE = Formula(
    name="holes_to_sample",
    title="Chance that a sample misses every bad hole",
    decides="how many holes to test, and why all are looked at",
    inputs=(HOLES_TOTAL, HOLES_BAD, HOLES_TESTED),
    answer=Answer("P", "chance that all bad holes are missed", "%", decimals=0),
    source="hypergeometric distribution, drawing without putting back",
    function=_all_missed,
    cautions=("Look at all holes, measure some. A few measurements find a bad bath, not a bad hole.",),
    examples=(Example({"holes_total": 206, "holes_bad": 4, "holes_tested": 3}, "94 %"),),
    requires=(
        Requirement(_not_more_than_all, "more holes are tested than there are"),
        Requirement(_not_all_bad, "more holes are bad than there are"),
    ),
)
