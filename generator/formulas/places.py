"""Finds where in a formula's text an operation stands, and refuses by name what is no word of ours."""

import linecache
import re
import sys
from types import FrameType

from generator.formulas.errors import RefusedError

_OWN = frozenset(__file__.replace("places.py", name) for name in ("places.py", "symbols.py", "words.py"))

WORDS_INSTEAD = {
    "max": "write larger(a, b)",
    "min": "write smaller(a, b)",
    "sum": "write total(rows, lambda row: ...)",
    "round": "write nearest(value, step)",
    "abs": "write larger(x, -x)",
    "pow": "write a power of 2, 3 or 4, or sqrt",
    "len": "give the number as an input of its own",
    "int": "write whole_down or whole_up",
    "float": "leave the quantity as it is",
    "range": "write product(low, high, lambda i: ...) or smallest(...)",
    "math.sqrt": "write sqrt(x)",
    "math.exp": "write exp(x)",
    "math.log": "write log(x)",
    "math.ceil": "write whole_up(x)",
    "math.floor": "write whole_down(x)",
    "math.pi": "write pi",
    "sorted": "leave the rows in their order",
    "if": "write choose(condition, this, that)",
    "while": "write smallest(low, high, condition)",
    "and": "write one choose inside another",
    "or": "write one choose inside another",
    "not": "turn the comparison round",
    "for": "write total(rows, lambda row: ...)",
}
A_WORD = "use the words of generator.formulas.words"


def line_of_caller() -> int:
    """The line of the formula's text that is being recorded."""
    frame = _frame()
    return frame.f_lineno


def refuse(what: str, fix: str = A_WORD) -> RefusedError:
    """The error for the expression at hand; a call such as max(...) is named instead of `what`."""
    frame = _frame()
    name = _called(_segment(frame))
    if name in WORDS_INSTEAD:
        return RefusedError(frame.f_lineno, f"`{name}` cannot be recorded", WORDS_INSTEAD[name])
    if name.startswith("math."):
        return RefusedError(frame.f_lineno, f"`{name}` cannot be recorded", A_WORD)
    return RefusedError(frame.f_lineno, what, fix)


def refuse_truth() -> RefusedError:
    """The error for asking whether a quantity is true, as `if`, `while`, `and`, `or`, `not` and max do."""
    frame = _frame()
    source = linecache.getline(frame.f_code.co_filename, frame.f_lineno)
    for word in ("while", "and", "or", "not", "if"):
        if re.search(rf"\b{word}\b", source) and not _called(_segment(frame)):
            return RefusedError(frame.f_lineno, f"`{word}` cannot be recorded", WORDS_INSTEAD[word])
    return refuse("a yes or no is asked of a quantity", WORDS_INSTEAD["if"])


def refuse_builtin_sum() -> RefusedError | None:
    """The error if Python's own sum() is adding: other versions of Python add in another way."""
    frame = _frame()
    if _called(_segment(frame)) == "sum":
        return RefusedError(frame.f_lineno, "`sum` cannot be recorded", WORDS_INSTEAD["sum"])
    return None


def _frame() -> FrameType:
    frame: FrameType | None = sys._getframe(1)
    while frame is not None and frame.f_code.co_filename in _OWN:
        frame = frame.f_back
    if frame is None:
        raise RuntimeError("a symbol is used outside a formula")
    return frame


def _segment(frame: FrameType) -> str:
    """The text of the expression that the frame is working out, as far as its first line goes."""
    positions = list(frame.f_code.co_positions())[frame.f_lasti // 2]
    start_line, _, start, _ = positions
    if start_line is None or start is None:
        return ""
    return linecache.getline(frame.f_code.co_filename, start_line)[start:].strip()


def _called(segment: str) -> str:
    """The name of the function that an expression calls, or nothing."""
    match = re.match(r"([a-z_]+(?:\.[a-z_]+)?)\(", segment)
    return match[1] if match else ""
