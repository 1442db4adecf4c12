"""Every calculator on its real page, in Chromium, against the same formula in Python."""

import html
import json
import random
import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page

from generator.formulas import LIBRARY, Formula
from generator.model import CalculatorSettings
from generator.outputs.chart import chart_svg
from generator.pipeline.check import Checked
from generator.units import Quantity
from generator.views.filling.calculator import calculator_view
from generator.views.filling.summary import summary_of
from tests.formulas.float_sums import METALS, RECORDS, SUMS, TRANSCENDENTAL, out_of_si
from tests.site.calculator_cases import Case, all_choices, answer_in_python, random_case, short_case
from tests.site.calculator_pages import LabSite, address

CASES = 2000
pytestmark = pytest.mark.browser


# Drives the form as a user does: units chosen, numbers typed, rows added and removed, then one `input` event
# on what was typed last, by which the page reads every box and answers.
DRIVE = """(texts) => {
  const cases = JSON.parse(texts);
  const form = document.querySelector("[data-nw-calculator]");
  const boxes = [...form.querySelectorAll(":scope > .nw-fields")].pop().children;
  const result = form.querySelector(".nw-result");
  const wrong = form.querySelector(".nw-wrong");
  const unit = form.querySelector(".nw-answer select");
  const said = (element, kind) => element.dispatchEvent(new Event(kind, { bubbles: true }));
  const choose = (select, value) => {
    if (select.value === value) return;
    select.value = value;
    said(select, "change");
  };
  const type = (field, [text, symbol]) => {
    const entry = field.querySelector("input");
    const choice = field.querySelector("select");
    if (symbol !== null && choice) { entry.value = ""; choose(choice, symbol); }
    entry.value = text;
    return entry;
  };
  const fillRows = (box, rows) => {
    const lines = box.querySelector(".nw-row-list").children;
    while (lines.length < rows.length) box.querySelector(":scope > button").click();
    while (lines.length > rows.length) lines[0].querySelector("button").click();
    rows.forEach((row, at) => row.forEach((cell, column) => type(lines[at].children[column], cell)));
    return box;
  };
  const fill = (box, entry) => {
    if (box.matches("fieldset")) return fillRows(box, entry);
    if (typeof entry !== "string") return type(box, entry);
    const choice = box.querySelector("select");
    return choice ? (choose(choice, entry), choice) : type(box, [entry, null]);
  };
  const found = cases.map(([entries, symbol]) => {
    const filled = entries.map((entry, at) => fill(boxes[at], entry));
    const last = filled.filter((one) => one.matches("input")).pop();
    choose(unit, symbol);
    said(last || boxes[0].querySelector("input") || unit, last ? "input" : "change");
    return ["value" in result.dataset ? result.dataset.value : null, result.textContent, wrong.textContent];
  });
  localStorage.clear();
  return JSON.stringify(found);
}"""


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_page_python_and_plain_floats_agree(
    shared_page: Page, calculator_site: LabSite, formula: Formula
) -> None:
    """Two thousand answers of the page, every unit chosen: as Python gives them, and as a plain sum does."""
    dice = random.Random(formula.name)
    settings = _settings(calculator_site[1], formula)
    shared_page.goto(address(calculator_site, f"calculators/{formula.name}"))
    assert_said_as_built(shared_page, calculator_site[1], formula)
    cases, wanted = _answered(formula, dice, settings)
    entries = json.dumps([[case.entries, case.unit] for case in cases])
    found = json.loads(shared_page.evaluate(DRIVE, entries))
    for case, number, (value, shown, said) in zip(cases, wanted, found, strict=True):
        if number is None:
            assert (value, shown) == (None, "no answer"), case
            assert said and "NaN" not in said, case
            continue
        assert value is not None, (case, said)
        agree(formula, case, number, float(value))
        assert shown == formula.answer.show(Quantity(number, case.unit)), case
    assert frozenset(choice for case in cases for choice in case.used) >= all_choices(formula)
    assert {case.unit for case in cases} == set(formula.answer.all_units)


def _answered(
    formula: Formula, dice: random.Random, settings: CalculatorSettings | None
) -> tuple[list[Case], list[float | None]]:
    """Cases until enough have an answer, with up to fifty that are refused."""
    cases: list[Case] = []
    wanted: list[float | None] = []
    answers = 0
    for turn in range(CASES * 10):
        case = random_case(formula, dice, turn)
        number = answer_in_python(formula, case, settings)
        if number is None and wanted.count(None) >= 50:
            continue
        cases.append(case)
        wanted.append(number)
        answers += number is not None
        if answers == CASES:
            return cases, wanted
    raise AssertionError(f"only {answers} cases in which the formula answers")


def agree(formula: Formula, case: Case, number: float, value: float) -> None:
    """Page and Python, and both with the sum on plain floats: 1e-15, or 1e-12 beyond plain arithmetic."""
    near = 1e-12 if formula.name in TRANSCENDENTAL else 1e-15
    plain = out_of_si(SUMS[formula.name](case.as_floats()), case.unit)
    assert abs(value - number) <= near * abs(number), (case, "page", value, "Python", number)
    assert abs(value - plain) <= near * abs(plain), (case, "page", value, "plain floats", plain)


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_what_is_typed_key_by_key_is_answered(
    shared_page: Page, calculator_site: LabSite, formula: Formula
) -> None:
    dice = random.Random(formula.name)
    settings = _settings(calculator_site[1], formula)
    shared_page.goto(address(calculator_site, f"calculators/{formula.name}"))
    rows = shared_page.locator(".nw-row").count()
    drawn = (short_case(formula, dice, rows) for _ in range(CASES))
    case = next(case for case in drawn if answer_in_python(formula, case, settings) is not None)
    for text in _texts(case.entries):
        _to_the_next_box(shared_page)
        if text in RECORDS:
            shared_page.keyboard.press("Home")
            for _ in range(list(METALS if text in METALS else ("outside", "inside")).index(text)):
                shared_page.keyboard.press("ArrowDown")
        else:
            shared_page.keyboard.press("Control+a")
            shared_page.keyboard.type(text)
    number = answer_in_python(formula, case, settings)
    value = shared_page.locator(".nw-result").get_attribute("data-value")
    assert value is not None and float(value) == pytest.approx(number, rel=1e-12), case
    shared_page.evaluate("localStorage.clear()")


def _texts(entries: Any) -> Iterator[str]:
    """What is typed into box after box; a cell is its text and the choice that it leaves alone."""
    for entry in entries:
        if isinstance(entry, str):
            yield entry
        elif isinstance(entry[0] if entry else entry, tuple):
            yield from (cell[0] for row in entry for cell in row)
        elif entry:
            yield entry[0]


def _to_the_next_box(page: Page) -> None:
    """By the Tab key, past choices of units and buttons, to a box for a number or a row of a table."""
    at = "document.activeElement"
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate(f"{at}.matches('.nw-fields:not(.nw-wanted) :is(input, select:not(.nw-unit))')"):
            return
    raise AssertionError("no box is reached by the Tab key")


def _settings(checked: Checked, formula: Formula) -> CalculatorSettings | None:
    return checked.lab.lab.calculators.get(formula.name) if checked.lab else None


def test_every_formula_has_a_sum_on_plain_floats() -> None:
    assert sorted(SUMS) == sorted(formula.name for formula in LIBRARY)


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
    view = calculator_view(formula, checked.lab, map(summary_of, checked.studies.values()))
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
