"""Formulas as MathML and as one line of text."""

from collections.abc import Callable
from typing import Any
from xml.etree import ElementTree

import pytest

from generator.formulas import LIBRARY, Answer, Formula, Input, Rows, Sizes
from generator.formulas.lab_file import read_formulas
from generator.formulas.words import (
    choose,
    exp,
    larger,
    log,
    nearest,
    next_size_up,
    product,
    smaller,
    smallest,
    sqrt,
    total,
    whole_down,
    whole_up,
)
from generator.outputs.mathml import formula_mathml, formula_text, symbol_mathml

SIDES = {"mfrac": 2, "msub": 2, "msup": 2, "munder": 2, "munderover": 3}
KNOWN = {"math", "mrow", "mi", "mn", "mo", "mtext", "msqrt", "mtable", "mtr", "mtd", *SIDES}

INPUTS = (
    Input("a", "a", "", ""),
    Input("b", "b", "", ""),
    Input("long_name", "long_name", "", ""),
    Rows("rows", "rows", "", (Input("n", "n", "", ""), Input("m", "m", "", ""))),
    Sizes("stock", "stock", "", ""),
)

LINES: list[tuple[Callable[..., Any], str]] = [
    (lambda a, b: a + b - a, "a + b - a"),
    (lambda a, b: a - (b - a), "a - (b - a)"),
    (lambda a, b: a - (b + a), "a - (b + a)"),
    (lambda a, b: a + (b + a), "a + b + a"),
    (lambda a, b: (a + b) * (a - b), "(a + b) (a - b)"),
    (lambda a, b: a * b / (a + b), "a b / (a + b)"),
    (lambda a, b: a / b / a, "a / b / a"),
    (lambda a, b: a / (b * a), "a / (b a)"),
    (lambda a, b: a / (b / a), "a / (b / a)"),
    (lambda a, b: (a / b) ** 2, "(a / b)^2"),
    (lambda a: (a**2) ** 3, "(a^2)^3"),
    (lambda a: -a * 2, "(-a) × 2"),
    (lambda a, b: b - -a, "b - (-a)"),
    (lambda a: 2 * a * 3, "2 a × 3"),
    (lambda a, long_name: a * long_name, "a · long_name"),
    (lambda a: sqrt(a + 1) + exp(a) + log(a), "sqrt(a + 1) + exp(a) + ln(a)"),
    (lambda a, b: larger(a, b) * smaller(a, 0), "max(a, b) min(a, 0)"),
    (lambda a: whole_up(a) + whole_down(a / 2), "(a) rounded up + (a / 2) rounded down"),
    (lambda a: nearest(a, 5), "nearest(a, 5)"),
    (lambda a, b: choose(a < b, a, b), "(a if a < b, otherwise b)"),
    (lambda rows: total(rows, lambda row: row.n * row.m), "sum over rows of n m"),
    (lambda rows: total(rows, lambda row: row.n + row.m), "sum over rows of (n + m)"),
    (lambda rows, a: total(rows, lambda row: row.n) * a, "(sum over rows of n) a"),
    (lambda rows, a: a * total(rows, lambda row: row.n) * a, "(a sum over rows of n) a"),
    (lambda rows, a: a - total(rows, lambda row: row.n), "a - sum over rows of n"),
    (lambda a: product(0, a, lambda i: i / a), "product from i = 0 to a of i / a"),
    (lambda a: smallest(1, 9, lambda i: i * i > a), "the smallest i, i = 1 to 9, with a < i i"),
    (lambda a, stock: next_size_up(a, stock), "the next size up from a"),
    (lambda a: a * 0.00393 + 1e-9, "a × 0.00393 + 1\u00a0×\u00a010⁻⁹"),
]


def trial(function: Callable[..., Any]) -> Formula:
    return Formula("x", "", "", INPUTS, Answer("x", "", ""), "", function)


@pytest.mark.parametrize(("function", "line"), LINES, ids=[line for _, line in LINES])
def test_a_formula_as_a_line(function: Callable[..., Any], line: str) -> None:
    assert formula_text(trial(function)) == f"x = {line}"
    check_markup(formula_mathml(trial(function)))


def check_markup(markup: str) -> None:
    """Well formed, elements that browsers have, and as many sides as each of them needs."""
    for element in ElementTree.fromstring(markup).iter():
        assert element.tag in KNOWN
        assert set(element.attrib) <= {"display", "alttext"}
        if element.tag in SIDES:
            assert len(element) == SIDES[element.tag], ElementTree.tostring(element)


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_every_formula_is_printed(formula: Formula) -> None:
    markup = formula_mathml(formula)
    check_markup(markup)
    assert 'alttext="' in markup
    assert len(formula_text(formula)) < 300


def test_the_library_in_lines() -> None:
    lines = {formula.name: formula_text(formula) for formula in LIBRARY}
    assert lines["plating_current"] == "I = j (A + A_contact)"
    assert lines["plating_time"] == "t = δ ρ z F / (M j η)"
    assert lines["plating_area"] == (
        "A = 2 (L - L_masked) W - 2 sum over holes of n π d^2 / 4 + sum over holes of n π d T"
    )


def test_one_formula_as_markup() -> None:
    current = next(formula for formula in LIBRARY if formula.name == "plating_current")
    assert formula_mathml(current) == (
        '<math display="block" alttext="I = j (A + A_contact)"><mrow><mi>I</mi><mo>=</mo>'
        "<mrow><mi>j</mi><mo>\u2062</mo><mrow><mo>(</mo><mrow><mi>A</mi><mo>+</mo>"
        "<msub><mi>A</mi><mtext>contact</mtext></msub></mrow><mo>)</mo></mrow></mrow></mrow></math>"
    )


def test_symbols() -> None:
    assert symbol_mathml("ρ_20") == "<math><msub><mi>ρ</mi><mn>20</mn></msub></math>"
    assert symbol_mathml("parts_a_b") == "<math><msub><mi>parts</mi><mtext>a b</mtext></msub></math>"
    assert symbol_mathml("<b>") == "<math><mi>&lt;b&gt;</mi></math>"


def test_a_labs_own_formula_is_printed() -> None:
    text = "def mix_ratio(resin, parts_a=100, parts_b=32):\n    return resin * parts_b / parts_a\n"
    (formula,) = read_formulas(text, "formulas.py").formulas
    assert formula_text(formula) == "mix_ratio = resin · parts_b / parts_a"
    check_markup(formula_mathml(formula))
