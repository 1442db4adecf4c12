"""What a page must know about a formula, as plain data for a JSON block."""

from typing import Any

from generator.formulas.formula import Formula
from generator.formulas.inputs import AnyInput, Choice, Input, Rows, Sizes
from generator.formulas.inverse import solvable
from generator.formulas.settling import bounds, range_in_words
from generator.units import UNITS, Window, show_number, show_window


def formula_data(formula: Formula) -> dict[str, Any]:
    """Return inputs, answer and words; every bound in coherent SI, every unit with its exact factor."""
    answer = formula.answer
    return {
        "name": formula.name,
        "title": formula.title,
        "decides": formula.decides,
        "inputs": [input_data(each) for each in formula.inputs],
        "answer": {
            "symbol": answer.symbol,
            "means": answer.means,
            "units": [{**unit_data(unit), "decimals": answer.decimals_in(unit)} for unit in answer.all_units],
            "toward": answer.toward,
            "never_above": answer.never_above,
            "like": answer.like,
        },
        "requires": [each.otherwise for each in formula.requires],
        "naive": formula.naive.forgets if formula.naive else "",
        "solve": list(solvable(formula)),
        "cautions": list(formula.cautions),
        "who": formula.who,
        "source": formula.source,
    }


def input_data(each: AnyInput) -> dict[str, Any]:
    """Return one input; `kind` is quantity, rows, sizes or choice."""
    start = {"name": each.name, "symbol": each.symbol, "means": each.means}
    match each:
        case Input():
            return {"kind": "quantity", **start, **_quantity_data(each)}
        case Rows():
            return {"kind": "rows", **start, "columns": [input_data(column) for column in each.columns]}
        case Sizes():
            unit = Input(each.name, each.symbol, each.means, each.unit)
            default = [unit.read(text).si for text in each.default]
            return {"kind": "sizes", **start, "units": [unit_data(each.unit)], "default": default}
        case Choice():
            rows = [
                {"name": row.name, "title": row.title, "values": dict(each.table.record(row.name) or {})}
                for row in each.table.rows
            ]
            return {"kind": "choice", **start, "rows": rows, "default": each.default}


def _quantity_data(each: Input) -> dict[str, Any]:
    low, high = bounds(each)
    usual_low, usual_high = _si(each.usual_window)
    default = each.default_quantity
    return {
        "units": [unit_data(unit) for unit in each.all_units],
        "low": low,
        "high": high,
        "must_be": range_in_words(each),
        "usual_low": usual_low,
        "usual_high": usual_high,
        "usually": show_window(each.usual_window) if each.usual_window else "",
        "default": None if default is None else default.si,
        "default_shown": ""
        if default is None
        else show_number(default.to(each.unit).number, default.decimals),
        "whole": each.whole,
    }


def _si(window: Window | None) -> tuple[float | None, float | None]:
    if window is None:
        return None, None
    return (window.low.si if window.low else None), (window.high.si if window.high else None)


def unit_data(symbol: str) -> dict[str, Any]:
    """Return a unit: SI = (number + offset) x numerator / denominator, in this order."""
    unit = UNITS[symbol]
    return {
        "symbol": symbol,
        "shown": unit.plural,
        "numerator": unit.numerator,
        "denominator": unit.denominator,
        "offset": float(unit.offset),
    }
