"""Formulas on the page against formulas in Python, in a real browser, to the last bit."""

import json
import math
import random
import re
import struct
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from generator.formulas import LIBRARY, Answer, Formula, Input, Sizes
from generator.formulas.evaluate import Givens, evaluate
from generator.formulas.inverse import solvable, solve_for
from generator.formulas.tape import Operation, Tape
from generator.formulas.words import (
    choose,
    larger,
    nearest,
    next_size_up,
    product,
    smaller,
    smallest,
    whole_down,
    whole_up,
)
from generator.outputs.formula_data import formula_data, unit_data
from generator.outputs.javascript import formulas_script, javascript_function
from generator.units import UNITS, show_number
from generator.units.quantity import from_si, to_si
from tests.outputs.random_givens import as_page_data, random_givens

SCRIPTS = Path(__file__).parents[2] / "generator/outputs/scripts"
# The two thousand of tests/site/test_calculators.py go through the real page; these look at every function.
CASES = 400


def calculate_script() -> str:
    """The arithmetic as a page's script has it, with its names in reach."""
    text = "".join((SCRIPTS / name).read_text("utf-8") for name in ("calculate.js", "typed.js"))
    return re.sub(r"^(export |import .*$)", "", text, flags=re.MULTILINE)


@pytest.fixture(scope="module")
def page(chromium: Browser) -> Iterator[Page]:
    page = chromium.new_page()
    page.add_script_tag(content=calculate_script())
    page.add_script_tag(content=formulas_script(LIBRARY))
    yield page
    page.close()


# Bits cross as text of eight bytes: JSON would lose what is not finite, and the sign of nothing.
RUN = """([name, part, key, cases]) => {
  const all = newelFormulas[name];
  const run = part === "solve" ? all.solve[key] : part === "requires" ? all.requires[key] : all[part];
  const view = new DataView(new ArrayBuffer(8));
  return JSON.parse(cases).map((g) => {
    view.setFloat64(0, Number(run(g, words)) + 0);
    return view.getBigUint64(0).toString(16);
  });
}"""


def bits(number: float) -> str:
    return f"{struct.unpack('>Q', struct.pack('>d', number + 0.0))[0]:x}"


def number(text: str) -> float:
    return float(struct.unpack(">d", int(text, 16).to_bytes(8, "big"))[0])


def agree(page: Page, place: list[Any], tape: Tape, givens: list[Givens]) -> None:
    cases = json.dumps([as_page_data(each) for each in givens])
    found = page.evaluate(RUN, [*place, cases])
    exact = not any(isinstance(node, Operation) and node.word in ("exp", "log") for node in tape.nodes)
    for each, text in zip(givens, found, strict=True):
        wanted = evaluate(tape, each)
        if exact or not math.isfinite(wanted):
            assert text == bits(wanted) or (math.isnan(wanted) and math.isnan(number(text))), (place, each)
        else:
            assert number(text) == pytest.approx(wanted, rel=1e-12), (place, each)


@pytest.mark.browser
@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_page_and_python_agree(page: Page, formula: Formula) -> None:
    dice = random.Random(formula.name)
    givens = [random_givens(formula, dice) for _ in range(CASES)]
    agree(page, [formula.name, "answer", ""], formula.tape, givens)
    for number, tape in enumerate(formula.requirement_tapes):
        agree(page, [formula.name, "requires", number], tape, givens)
    if formula.naive_tape:
        agree(page, [formula.name, "naive", ""], formula.naive_tape, givens[:100])
    answered = [
        Givens(
            {**each.quantities, "answer": evaluate(formula.tape, each)}, each.rows, each.sizes, each.records
        )
        for each in givens[:60]
    ]
    finite = [each for each in answered if math.isfinite(each.quantities["answer"])]
    for name in solvable(formula):
        agree(page, [formula.name, "solve", name], solve_for(formula, name).tape, finite)


ANY = (
    0.0,
    -0.0,
    0.5,
    -0.5,
    1.5,
    2.5,
    -2.5,
    0.49999999999999994,
    0.1 * 3 / 0.1,
    0.3 / 0.1,
    3.0000000001,
    1e6 + 0.5,
    1e15 + 0.5,
    1e300,
    -1e300,
    5e-324,
)
A, B = Input("a", "a", "", ""), Input("b", "b", "", "")
STOCK = Sizes("stock", "s", "", "")
WORDS: dict[str, Callable[..., Any]] = {
    "powers": lambda a: a**2 + a**3 - a**4,
    "whole_up": lambda a: whole_up(a),
    "whole_down": lambda a: whole_down(a),
    "nearest": lambda a, b: nearest(a, b),
    "nearest_whole": lambda a: nearest(a),
    "larger_smaller": lambda a, b: larger(a, b) / smaller(a, b),
    "choose": lambda a, b: choose(a < b, a / b, b / a),
    "at_least": lambda a, b: choose(a >= b, 1, 2),
    "product": lambda a, b: product(a, b, lambda i: i / 3),
    "smallest": lambda a, b: smallest(a, b, lambda i: i * i > 5),
    "next_size_up": lambda a, stock: next_size_up(a, stock),
}


@pytest.mark.browser
def test_words_agree_on_awkward_doubles(page: Page) -> None:
    dice = random.Random("words")
    pairs = [(a, b) for a in ANY for b in ANY] + [(dice.gauss(0, 9), dice.gauss(0, 9)) for _ in range(500)]
    formulas = tuple(
        Formula(name, "", "", (A, B, STOCK), Answer("x", "", ""), "", function)
        for name, function in WORDS.items()
    )
    page.add_script_tag(content=formulas_script(formulas).replace("newelFormulas", "trials"))
    page.evaluate("globalThis.newelFormulas = Object.freeze({ ...newelFormulas, ...trials })")
    for formula in formulas:
        givens = [Givens({"a": a, "b": b}, {}, {"stock": (2.5, 0.5, 1.5)}) for a, b in pairs]
        agree(page, [formula.name, "answer", ""], formula.tape, givens)


@pytest.mark.browser
def test_units_are_converted_alike(page: Page) -> None:
    dice = random.Random("units")
    numbers = [dice.gauss(0, 100) for _ in range(20)] + [0.0, 1.0, 0.1]
    data = json.dumps([[unit_data(symbol), numbers] for symbol in UNITS])
    run = "(data) => JSON.parse(data).map(([unit, all]) => all.map((n) => [toSI(n, unit), fromSI(n, unit)]))"
    found = page.evaluate(run, data)
    for symbol, pairs in zip(UNITS, found, strict=True):
        for value, (si, back) in zip(numbers, pairs, strict=True):
            assert (si, back) == (to_si(value, symbol), from_si(value, symbol)), symbol


@pytest.mark.browser
@pytest.mark.parametrize("toward", ["nearest", "up", "down"])
def test_answers_are_rounded_and_shown_alike(page: Page, toward: Any) -> None:
    dice = random.Random(toward)
    values = [dice.gauss(0, 1) * 10 ** dice.randint(-3, 8) for _ in range(300)]
    values += [0.0, -0.0, 0.25, 0.125, 2.675, 1.005, -0.5, 12345.5, 999.95, 1e12, -3.4e10]
    cases = [(value, decimals) for value in values for decimals in (0, 1, 2, 3)]
    run = """([cases, toward]) => cases.map(([value, decimals]) => {
      const kept = tellingDecimals(value, decimals, toward);
      const rounded = roundAnswer(value, kept, toward);
      return [rounded, showNumber(rounded, kept)];
    })"""
    from generator.units import Quantity

    for (value, decimals), (rounded, shown) in zip(cases, page.evaluate(run, [cases, toward]), strict=True):
        ours = Answer("x", "", "", decimals=decimals, toward=toward).rounded(Quantity(value, ""))
        assert rounded == ours.number
        assert shown == show_number(ours.number, ours.decimals)


@pytest.mark.browser
def test_typed_numbers(page: Page) -> None:
    texts = ["1.5", " 2 ", "−3", "1e3", "1,5", "", "1.5.2", "0x10", "Infinity", "NaN", "12 mm", "1e9999"]
    found = page.evaluate("(texts) => texts.map((text) => String(readNumber(text)))", texts)
    assert found == ["1.5", "2", "-3", "1000", *["NaN"] * 8]
    ranges = [[1, 1, 2], [1 - 1e-13, 1, 2], [0.99, 1, 2], [2.01, 1, 2], [5, None, None], [None, None, None]]
    outside = page.evaluate(
        "(ranges) => ranges.map(([v, l, h]) => isOutside(v === null ? NaN : v, l, h))", ranges
    )
    assert outside == [False, False, True, True, False, True]


def test_one_function_as_printed() -> None:
    formula = next(each for each in LIBRARY if each.name == "plating_current")
    assert javascript_function(formula.tape) == "(g, w) => (g.density * (g.area + g.contact_area))"


def test_names_from_outside_ascii_are_quoted() -> None:
    formula = Formula("x", "", "", (Input("é", "é", "", ""),), Answer("x", "", ""), "", lambda é: é * 2)
    assert javascript_function(formula.tape) == '(g, w) => (g["\\u00e9"] * 2)'


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_data_for_the_page_is_plain(formula: Formula) -> None:
    data = formula_data(formula)
    assert json.loads(json.dumps(data, allow_nan=False)) == data
    assert [each["name"] for each in data["inputs"]] == [each.name for each in formula.inputs]


def test_data_of_one_formula() -> None:
    formula = next(each for each in LIBRARY if each.name == "plating_time")
    data = formula_data(formula)
    efficiency = data["inputs"][2]
    assert efficiency["low"] == 0.01
    assert efficiency["high"] == 1
    assert efficiency["must_be"] == "1 to 100\u00a0%: no more metal is laid down than the charge carries"
    assert (efficiency["default"], efficiency["default_shown"]) == (0.97, "97")
    assert data["answer"]["units"][0] == {
        "symbol": "min",
        "shown": "min",
        "numerator": 60.0,
        "denominator": 1.0,
        "offset": 0.0,
        "decimals": 1,
    }
    assert data["solve"] == ["copper", "density", "efficiency"]
    assert [row["name"] for row in data["inputs"][3]["rows"]][:2] == ["copper", "nickel"]
