"""Every calculator on its real page, in Chromium, against the same formula in Python."""

import html
import random
import re
from collections.abc import Iterator
from typing import Any
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Browser, Page

from generator.formulas import LIBRARY, AnyInput, Choice, Formula, FormulaError, Input, Rows, Sizes
from generator.outputs.chart import chart_svg
from generator.pipeline.check import Checked
from generator.sums import passed_limits
from generator.units import Quantity
from generator.units.quantity import from_si
from generator.views.filling.calculator import calculator_view
from tests.outputs.random_givens import random_value
from tests.site.calculator_pages import LabSite, address, listen

CASES = 6
pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def shared_page(chromium: Browser) -> Iterator[Page]:
    """One page for many tests; its errors fail the last of them."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    said = listen(page)
    yield page
    assert said == []
    context.close()


SEND = """(hash) => new Promise((done) => {
  addEventListener("hashchange", () => {
    const result = document.querySelector(".nw-result");
    const number = "value" in result.dataset ? Number(result.dataset.value) : null;
    done([number, result.textContent, document.querySelector(".nw-wrong").textContent]);
  }, { once: true });
  location.hash = hash;
})"""


def given(each: AnyInput, dice: random.Random, turn: int) -> Any:
    """A value for an input, in one of its units by turns."""
    match each:
        case Input():
            unit = each.all_units[turn % len(each.all_units)]
            return Quantity(float(repr(from_si(random_value(each, dice), unit))), unit)
        case Rows():
            rows = range(dice.randint(0, 4))
            return tuple({column.name: given(column, dice, turn) for column in each.columns} for _ in rows)
        case Choice():
            return dice.choice(each.table.rows).name
        case Sizes():
            return None


def typed(value: Any) -> str:
    if isinstance(value, Quantity):
        return f"{value.number!r} {value.unit}".strip()
    if isinstance(value, tuple):
        return ", ".join(" x ".join(typed(cell) for cell in row.values()) for row in value)
    return str(value)


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_the_page_and_python_agree(shared_page: Page, calculator_site: LabSite, formula: Formula) -> None:
    """Random numbers, all units by turns, sent in by the address; a refusal is one on both sides."""
    dice = random.Random(formula.name)
    shared_page.goto(address(calculator_site, f"calculators/{formula.name}"))
    assert_said_as_built(shared_page, calculator_site[1], formula)
    settings = calculator_site[1].lab.lab.calculators.get(formula.name) if calculator_site[1].lab else None
    answered = 0
    turns = max(len(formula.answer.all_units), *(len(u) for u in _unit_lists(formula)), CASES)
    for turn in range(turns * 10):
        values = {each.name: given(each, dice, turn) for each in formula.inputs}
        values = {name: value for name, value in values.items() if value is not None}
        unit = formula.answer.all_units[turn % len(formula.answer.all_units)]
        hash = urlencode({**{name: typed(value) for name, value in values.items()}, "in": unit})
        number, shown, said = shared_page.evaluate(SEND, hash)
        try:
            wanted = formula.evaluate(values).to(unit)
            if any(passed_limits(formula, values, wanted, settings)):
                raise FormulaError("the lab never allows it")
        except FormulaError:
            assert (number, shown) == (None, "no answer"), values
            assert said and "NaN" not in said
            continue
        assert number == pytest.approx(wanted.number, rel=1e-12), (values, said)
        assert shown == formula.answer.show(wanted), values
        answered += 1
        if answered >= turns:
            break
    assert answered >= 2, "no case in which the formula answers"


def _unit_lists(formula: Formula) -> list[tuple[str, ...]]:
    columns = [c for each in formula.inputs if isinstance(each, Rows) for c in each.columns]
    return [each.all_units for each in (*formula.inputs, *columns) if isinstance(each, Input)]


def test_every_formula_has_a_page_and_every_page_a_formula(calculator_site: LabSite) -> None:
    pages = {path.parent.name for path in (calculator_site[0] / "calculators").glob("*/index.html")}
    own = {"hardener_mass"}
    assert pages == {formula.name for formula in LIBRARY} | own


READ = """() => ({
  naive: (document.querySelector("[data-nw-naive]") || {}).textContent || "",
  effects: [...document.querySelectorAll("[data-nw-effects] li")].map((line) => line.textContent),
  drawing: (document.querySelector("[data-nw-chart]") || {}).innerHTML || "",
  answer: document.querySelector(".nw-result").textContent,
})"""


def assert_said_as_built(page: Page, checked: Checked, formula: Formula) -> None:
    """Answer, sentences and chart of the first numbers: made in Python, then made again by the script."""
    assert checked.lab is not None
    view = calculator_view(formula, checked.lab, checked.studies.values())
    found = page.evaluate(READ)
    assert found["answer"] == view.shown
    assert (found["naive"], found["effects"]) == (view.naive_shown, list(view.effects))
    drawn = chart_svg(view.chart) if view.chart else ""
    assert _words_of(found["drawing"]) == _words_of(drawn)
    assert _numbers_of(found["drawing"]) == pytest.approx(_numbers_of(drawn), abs=0.11)


def _words_of(svg: str) -> list[str]:
    return [html.unescape(words) for words in re.findall(r">([^<>]+)</text>", svg)]


def _numbers_of(svg: str) -> list[float]:
    paths = " ".join(re.findall(r' d="([^"]+)"', svg))
    return [float(number) for number in re.findall(r"-?[0-9]+\.[0-9]", paths)]
