"""What is typed after `newel calculate`: name=value, a list of rows as "180 x 0.9 mm, 26 x 1.3 mm"."""

import re
from collections.abc import Iterable, Mapping
from typing import Any

from generator.formulas import AnyInput, Choice, Formula, FormulaError, Input, Rows, Sizes
from generator.formulas.inputs import wanted
from generator.formulas.inverse import solve_for
from generator.units import UnitsError, read_number, read_quantity

_BETWEEN_ROWS = re.compile(r"\s*[;,]\s*")
_BETWEEN_CELLS = re.compile(r"\s+[x×]\s+|(?<=\d)[x×](?=\d)")
_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")


def typed_values(formula: Formula, words: Iterable[str], wanted_input: str = "") -> dict[str, Any]:
    """The inputs by name, and `answer` where an input is to be worked out; FormulaError for a bad word."""
    extra = (solve_for(formula, wanted_input).answer_input,) if wanted_input else ()
    values: dict[str, Any] = {}
    for word in words:
        name, is_given, text = word.partition("=")
        name, text = name.strip(), text.strip()
        if not is_given or not name:
            fix = f'write each input as name="number unit", such as {_such_as(formula)}'
            raise FormulaError(f"`{word}` gives nothing a value", fix, formula.name)
        if name in values:
            raise FormulaError(f"`{name}` is given twice", "leave one of them out", formula.name)
        values[name] = _value(formula, wanted(name, (*formula.inputs, *extra), formula.name), text)
    return values


def _such_as(formula: Formula) -> str:
    given: Mapping[str, Any] = formula.examples[0].given if formula.examples else {}
    name, value = next(((n, v) for n, v in given.items() if isinstance(v, str)), ("copper", "22 um"))
    return f'{name}="{value}"'


def _value(formula: Formula, each: AnyInput, text: str) -> Any:
    match each:
        case Rows():
            return tuple(_rows(formula, each, text))
        case Sizes():
            return tuple(_sizes(text))
        case Choice():
            return text
        case Input():
            return _plain(text) if formula.as_given else text


def _plain(text: str) -> Any:
    """A number of a lab's own formula, with a unit or without."""
    try:
        return read_number(text)
    except UnitsError:
        pass
    try:
        return read_quantity(text)
    except UnitsError as error:
        raise FormulaError(error.message, error.fix) from error


def _rows(formula: Formula, rows: Rows, text: str) -> Iterable[dict[str, Any]]:
    _refuse_comma(formula, rows.name, text)
    for number, row in enumerate(filter(None, _BETWEEN_ROWS.split(text)), 1):
        cells = _BETWEEN_CELLS.split(row)
        if len(cells) != len(rows.columns):
            pattern = " x ".join(column.name for column in rows.columns)
            what = f'row {number} of {rows.name} is "{row}", and {pattern} is expected'
            fix = f'write {rows.name}="{_rows_such_as(rows)}"'
            raise FormulaError(what, fix, formula.name, given=rows.name)
        pairs = zip(rows.columns, cells, strict=True)
        yield {column.name: _cell(formula, column, cell) for column, cell in pairs}


def _cell(formula: Formula, column: Input, text: str) -> Any:
    return _plain(text) if formula.as_given or not column.unit else text


def _rows_such_as(rows: Rows) -> str:
    first = " x ".join(f"4 {column.unit}".strip() for column in rows.columns)
    return f"{first}, {first.replace('4', '2')}"


def _sizes(text: str) -> tuple[str, ...]:
    """Sizes with a comma between them; the unit may stand once, behind the last."""
    parts = [part for part in re.split(r",\s+|;\s*|,(?!\d)", text) if part]
    unit = re.sub(r"^[0-9.]+\s*", "", parts[-1]) if parts else ""
    return tuple(f"{part} {unit}" if re.fullmatch(r"[0-9.]+", part) and unit else part for part in parts)


def _refuse_comma(formula: Formula, name: str, text: str) -> None:
    found = _DECIMAL_COMMA.search(text)
    if found:
        around = text[max(0, found.start() - 1) : found.end() + 1]
        fix = f"write {around.replace(',', '.')} with a point, or a space after the comma between two rows"
        raise FormulaError(f"`{name}` holds {around}, which can be read in two ways", fix, formula.name)
