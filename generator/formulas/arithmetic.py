"""The words of the formula language on doubles, as IEEE 754 and the page have them: nothing raises."""

import math
from collections.abc import Callable, Mapping

# A value this near to a whole number is that number: 0.3 / 0.1 makes three.
DUST = 1e-9
# Above a million the dust does not grow further.
MOST_DUST = 1e6


def add(a: float, b: float) -> float:
    """The sum."""
    return a + b


def subtract(a: float, b: float) -> float:
    """The difference."""
    return a - b


def multiply(a: float, b: float) -> float:
    """The product."""
    return a * b


def divide(a: float, b: float) -> float:
    """The quotient; over nothing it is infinite, and nothing over nothing is no number."""
    if b:
        return a / b
    if a != a or a == 0:
        return math.nan
    return math.copysign(math.inf, a) * math.copysign(1, b)


def negate(a: float) -> float:
    """The other sign."""
    return -a


def power(a: float, exponent: float) -> float:
    """A whole power by repeated multiplication, from the left."""
    result = a
    for _ in range(int(exponent) - 1):
        result = result * a
    return result


def sqrt(a: float) -> float:
    """The square root; no number below 0."""
    return math.sqrt(a) if a >= 0 else math.nan


def exp(a: float) -> float:
    """e to a power."""
    try:
        return math.exp(a)
    except OverflowError:
        return math.inf


def log(a: float) -> float:
    """The natural logarithm."""
    if a > 0:
        return math.log(a)
    return -math.inf if a == 0 else math.nan


def larger(a: float, b: float) -> float:
    """The first where it is not below the second."""
    return a if a >= b else b


def smaller(a: float, b: float) -> float:
    """The first where it is not above the second."""
    return a if a <= b else b


def whole_up(a: float) -> float:
    """The next whole number up, dust aside."""
    return _whole(a, math.ceil, -DUST)


def whole_down(a: float) -> float:
    """The next whole number down, dust aside."""
    return _whole(a, math.floor, DUST)


def _whole(a: float, turn: Callable[[float], int], dust: float) -> float:
    if not math.isfinite(a):
        return a
    size = a if a >= 0 else -a
    near = size if size >= 1 else 1.0
    return float(turn(a + dust * (near if near <= MOST_DUST else MOST_DUST)))


def nearest(a: float, step: float) -> float:
    """The nearest multiple of a step; halves go away from zero."""
    count = divide(a, step)
    if not math.isfinite(count):
        return count
    size = -count if count < 0 else count
    low = float(math.floor(size))
    whole = low + 1 if size - low >= 0.5 else low
    return (-whole if count < 0 else whole) * step


def less(a: float, b: float) -> bool:
    """Whether the first is below the second."""
    return a < b


def less_or_equal(a: float, b: float) -> bool:
    """Whether the first is not above the second."""
    return a <= b


def next_size_up(value: float, sizes: tuple[float, ...]) -> float:
    """The smallest size that is not below the value by more than a part in 1e9; no number if all are."""
    size = value if value >= 0 else -value
    floor = value - 1e-9 * size
    found = math.nan
    for stock in sizes:
        if stock >= floor and not stock >= found:
            found = stock
    return found


WORDS: Mapping[str, Callable[..., float]] = {
    "add": add,
    "subtract": subtract,
    "multiply": multiply,
    "divide": divide,
    "negate": negate,
    "power": power,
    "sqrt": sqrt,
    "exp": exp,
    "log": log,
    "larger": larger,
    "smaller": smaller,
    "whole_up": whole_up,
    "whole_down": whole_down,
    "nearest": nearest,
    "less": less,
    "less or equal": less_or_equal,
}
