"""Which dimensions a word of the formula language takes, and which it gives."""

from generator.formulas.errors import RefusedError
from generator.formulas.tape import Node, Number
from generator.units.dimension import NUMBER, Dimension

_SAME = {
    "add": "added to",
    "subtract": "taken from",
    "larger": "compared with",
    "smaller": "compared with",
    "less": "compared with",
    "less or equal": "compared with",
}
COMPARISONS = ("less", "less or equal")


def dimension_of(word: str, args: tuple[Node, ...], line: int) -> Dimension:
    """What the word gives; RefusedError where the arguments measure what it cannot take."""
    if word in _SAME:
        same = _common(args[0], args[1], _SAME[word], line)
        return NUMBER if word in COMPARISONS else same
    if word == "multiply":
        return args[0].dimension * args[1].dimension
    if word == "divide":
        return args[0].dimension / args[1].dimension
    if word == "choose":
        return _common(args[1], args[2], "chosen against", line)
    return _of_one(word, args, line)


def _of_one(word: str, args: tuple[Node, ...], line: int) -> Dimension:
    dimension = args[0].dimension
    if word == "power":
        exponent = args[1]
        return dimension ** int(exponent.value) if isinstance(exponent, Number) else dimension
    if word == "sqrt":
        return _root(dimension, line)
    if word in ("exp", "log", "whole_up", "whole_down"):
        if dimension.powers != NUMBER.powers:
            raise RefusedError(line, f"{word} of {_a(dimension)}", f"divide it by {_a(dimension)} first")
        return NUMBER
    if word == "nearest":
        return _common(args[0], args[1], "rounded in steps of", line)
    return dimension  # negate


def _root(dimension: Dimension, line: int) -> Dimension:
    if any(n % 2 for n in dimension.powers):
        raise RefusedError(line, f"sqrt of {_a(dimension)}", "check what stands under the root")
    s, m, kg, k, a, mol = (n // 2 for n in dimension.powers)
    return Dimension((s, m, kg, k, a, mol))


def _common(left: Node, right: Node, verb: str, line: int) -> Dimension:
    """The dimension of both; a bare 0 goes with anything."""
    if _is_zero(left):
        return right.dimension
    if _is_zero(right) or left.dimension.powers == right.dimension.powers:
        return left.dimension
    first, second = (right, left) if verb == "taken from" else (left, right)
    what = f"{_a(first.dimension)} is {verb} {_a(second.dimension)}"
    raise RefusedError(line, what, "bring both to the same dimension")


def _is_zero(node: Node) -> bool:
    return isinstance(node, Number) and node.value == 0


def _a(dimension: Dimension) -> str:
    name = dimension.name
    if name[0] in "aeiou":
        return f"an {name}"
    return f"a {name}"
