"""One working-out of a formula on the command line, and its two forms: text, and JSON."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.cli.lines import Line, Piece, text_line
from generator.formulas import AnyInput, Choice, Formula, Input, Rows, Sizes
from generator.formulas.sensitivity import outside_usual
from generator.outputs.mathml import equation_text, formula_text
from generator.units import Quantity, show_quantity, show_window
from generator.views.filling.boxes import as_quantity, clock_text
from generator.views.filling.effects import naive_sentence


@dataclass(frozen=True, slots=True)
class Calculated:
    """What came out: the answer or the input solved for (`wanted`), from what, and whence each value is."""

    formula: Formula
    found: Quantity
    values: Mapping[str, Any]
    origins: Mapping[str, str]
    usual: Mapping[str, Any]
    wanted: str = ""
    unit: str = ""

    @property
    def shown(self) -> Quantity:
        """What came out, in the unit that was asked for."""
        return self.found.to(self.unit) if self.unit else self.found

    @property
    def words(self) -> str:
        """What came out as printed."""
        answer = self.formula.answer
        if self.wanted:
            each = self.formula.input(self.wanted)
            if isinstance(each, Input) and each.clock and not self.unit:
                return clock_text(self.shown)
            return show_quantity(self.shown, 4)
        return answer.show(self.shown)


def text_lines(done: Calculated) -> Iterator[Line]:
    """The answer, the sum, the inputs, what people get wrong, the cautions and the source."""
    formula = done.formula
    each = formula.input(done.wanted) if done.wanted else None
    means = each.means if each else formula.answer.means
    head = f"{formula.title}: {means} " if done.wanted else f"{formula.title}: "
    yield Line((Piece(head), Piece(done.words, "strong")))
    sum = equation_text(formula, done.wanted) if done.wanted else formula_text(formula)
    yield text_line(f"  {sum}", hang=4)
    given = (one for one in formula.inputs if one.name in done.values)
    names = {one.name: _words(one, done.values[one.name]) for one in given}
    if done.wanted:
        names["answer"] = _words(None, done.values["answer"])
    widths = max(map(len, names), default=0), max((len(words) for words in names.values()), default=0)
    for name, words in names.items():
        yield text_line(_input_line(done, name, words, widths), hang=widths[0] + 4)
    yield from _remarks(done)


def _input_line(done: Calculated, name: str, words: str, widths: tuple[int, int]) -> str:
    each = done.formula.input(name)
    origin = f" ({done.origins[name]})" if done.origins.get(name) else ""
    means = each.means if each else done.formula.answer.means
    return f"  {name:<{widths[0]}}  {words:<{widths[1]}}  {means}{origin}"


def _remarks(done: Calculated) -> Iterator[Line]:
    formula = done.formula
    for odd in _unusual(done):
        yield _remark("look again", odd, "warning")
    naive = naive_sentence(formula, done.values) if not done.wanted else ""
    if naive:
        yield _remark("slip", naive)
    for caution in formula.cautions:
        yield _remark("caution", caution, "warning")
    if formula.answer.never_above:
        yield _remark("caution", f"Never above {formula.answer.never_above}.", "warning")
    if formula.who == "staff":
        yield _remark("who", "For staff only.")
    if formula.source:
        yield _remark("source", formula.source)
    yield text_line("The supplier's sheet, the safety office and local codes stand above this sum.")


def _remark(label: str, words: str, role: str = "") -> Line:
    return Line((Piece("   = ", "frame"), Piece(f"{label}: ", role or "strong"), Piece(words)), hang=7)


def _unusual(done: Calculated) -> Iterator[str]:
    if done.formula.as_given:
        return
    singles = {each.name for each in done.formula.inputs if isinstance(each, Input)}
    given = {name: value for name, value in done.values.items() if name in singles}
    for odd in outside_usual(done.formula, given, done.usual):
        yield f"{odd.name} is {show_quantity(odd.given)}; usual is {show_window(odd.usual)}."


def _words(each: AnyInput | None, value: Any) -> str:
    if isinstance(each, Rows):
        columns = {column.name: column for column in each.columns}
        cells = (" x ".join(_words(columns[name], cell) for name, cell in row.items()) for row in value)
        return ", ".join(cells)
    if isinstance(each, Sizes):
        return ", ".join(_words(None, size) for size in value)
    quantity = as_quantity(each, value) if isinstance(each, Input) else value
    if not isinstance(quantity, Quantity):
        return str(value)
    return clock_text(quantity) if isinstance(each, Input) and each.clock else show_quantity(quantity)


def json_text(done: Calculated) -> str:
    """{"formula", "answer": {"value", "unit"}, "inputs"}; what was solved for stands under "solved_for"."""
    inputs = {
        one.name: _plain(one, done.values[one.name]) for one in done.formula.inputs if one.name in done.values
    }
    answer = _plain(None, done.shown)
    data: dict[str, Any] = {"formula": done.formula.name, "answer": answer, "inputs": inputs}
    if done.wanted:
        data |= {"solved_for": done.wanted}
        data["inputs"]["answer"] = _plain(None, done.values["answer"])
    return json.dumps(data, ensure_ascii=False, indent=2)


def _plain(each: AnyInput | None, value: Any) -> Any:
    if isinstance(each, Choice):
        return str(value)
    if isinstance(each, Rows):
        columns = {column.name: column for column in each.columns}
        return [{name: _plain(columns[name], cell) for name, cell in row.items()} for row in value]
    if isinstance(each, Sizes):
        size = Input(each.name, each.symbol, each.means, each.unit)
        return [_plain(size, one) for one in value]
    quantity = as_quantity(each, value) if isinstance(each, Input) else value
    if isinstance(quantity, Quantity) and (quantity.unit or each is None):
        return {"value": quantity.number, "unit": quantity.unit}
    return quantity.number if isinstance(quantity, Quantity) else value
