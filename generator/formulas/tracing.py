"""Calls a formula's function once with stand-ins, so that its operations are written on a tape."""

from collections.abc import Callable, Mapping
from typing import Any

from generator.formulas.errors import FormulaError, RefusedError
from generator.formulas.places import WORDS_INSTEAD
from generator.formulas.symbols import entry
from generator.formulas.tape import Tape


def record(function: Callable[..., Any], symbols: Mapping[str, object], name: str) -> Tape:
    """The tape of a function called with stand-ins for its parameters; FormulaError where it cannot be."""
    wanted = parameters(function)
    missing = [parameter for parameter in wanted if parameter not in symbols]
    if missing:
        line = function.__code__.co_firstlineno
        raise FormulaError(f"`{missing[0]}` is no input of the formula", "declare it", name, line)
    try:
        answer = function(**{parameter: symbols[parameter] for parameter in wanted})
        return Tape(entry(answer, function.__code__.co_firstlineno))
    except RefusedError as error:
        raise FormulaError(error.what, error.fix, name, error.line) from error
    except RecursionError as error:
        line = function.__code__.co_firstlineno
        raise FormulaError("it calls itself without end", WORDS_INSTEAD["for"], name, line) from error


def parameters(function: Callable[..., Any]) -> tuple[str, ...]:
    """The names of the inputs that a function asks for."""
    code = function.__code__
    return code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]
