"""A formula's ready-reckoner for its page: answers over what is usual, the rest as in the boxes."""

from collections.abc import Iterator, Mapping
from typing import Any

from generator.formulas import AnyInput, Formula, FormulaError, Input, Sizes
from generator.formulas.reckoner import reckon, round_values
from generator.units import Quantity, Window, show_number, show_quantity
from generator.views.calculator import ReckonerView
from generator.views.filling.answers import answer_words
from generator.views.filling.boxes import Ranges, clock_text, shown_value
from generator.views.filling.words import joined, low, named

_ROWS, _COLUMNS = 7, 6


def reckoner_view(
    formula: Formula, values: Mapping[str, Any], ranges: Ranges, limit: Quantity | None
) -> ReckonerView | None:
    """Down with the first input that has a usual range, across with the second; None where none has."""
    lines = sorted(_lines(formula, ranges), key=lambda one: bool(one[0].default))[:2]
    if not lines:
        return None
    down, rows = lines[0][0], round_values(lines[0][1], _ROWS)
    across, columns = (lines[1][0], round_values(lines[1][1], _COLUMNS)) if len(lines) > 1 else (None, ())
    try:
        table = reckon(formula, down.name, across.name if across else "", values, rows, columns)
    except FormulaError:
        return None
    if not any(cell for row in table.cells for cell in row):
        return None
    words = answer_words(formula, values)
    heads = tuple(_shown(across, each) for each in columns) if across else (words,)
    return ReckonerView(
        _title(words, down, across),
        (named(down.name), *heads),
        tuple(
            (_shown(down, row), *(_cell(formula, cell, limit) for cell in cells))
            for row, cells in zip(rows, table.cells, strict=True)
        ),
        _note(formula, values, {down.name, across.name if across else ""}, limit),
    )


def _lines(formula: Formula, ranges: Ranges) -> Iterator[tuple[Input, Window]]:
    for each in formula.inputs:
        if not isinstance(each, Input) or each.clock:
            continue
        window = ranges.usual.get(each.name) or each.usual_window
        if window and window.low and window.high and window.low.si < window.high.si:
            steps = round_values(window, _ROWS)
            if not each.whole or all(step.number.is_integer() for step in steps):
                yield each, window


def _title(words: str, down: Input, across: Input | None) -> str:
    by = low(named(down.name)) + (f" (down) and {low(named(across.name))} (across)" if across else "")
    return f"{words}, by {by}"


def _shown(each: Input, quantity: Quantity) -> str:
    return show_quantity(quantity) if quantity.unit or not each.unit else show_number(quantity.number)


def _cell(formula: Formula, cell: Quantity | None, limit: Quantity | None) -> str:
    if cell is None or (limit and limit.dimension == cell.dimension and cell.si > limit.si):
        return "–"
    return formula.answer.show(cell).split("\u00a0")[0]


def _note(formula: Formula, values: Mapping[str, Any], taken: set[str], limit: Quantity | None) -> str:
    """What else the answers hang on."""
    held = [
        f"{low(named(each.name))} {_held(each, value)}"
        for each in formula.inputs
        if each.name not in taken and (value := values.get(each.name)) and not isinstance(each, Sizes)
    ]
    words = f"For {joined(held)}." if held else ""
    never = f"Never above {show_quantity(limit)} here." if limit else ""
    return " ".join(filter(None, (words, never)))


def _held(each: AnyInput, value: Any) -> str:
    return clock_text(value) if isinstance(each, Input) and each.clock else shown_value(value)
