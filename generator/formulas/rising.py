"""Whether a condition, once true for a whole number, stays true for every larger one.

Adding and multiplying doubles that are not negative never turns their order round, however they are rounded:
what grows with a number may stand still, but it does not fall.
"""

from generator.formulas.tape import Index, Node, Number, Operation

_GROWING = ("add", "multiply")
_BELOW = ("less", "less or equal")


def stays_true(condition: Node, index: Index) -> bool:
    """True where a value apart from the index is compared with one that never falls as the index grows.

    The index counts from 0 or above. False says only that this was not seen.
    """
    match condition:
        case Operation(word=word, args=(wanted, growing)) if word in _BELOW:
            return not _uses(wanted, index) and _never_falls(growing, index)
    return False


def _never_falls(node: Node, index: Index) -> bool:
    """Whether a value that is never negative stays or grows as the index does."""
    match node:
        case Number(value):
            return value >= 0
        case Operation(word=word, args=args) if word in _GROWING:
            return all(_never_falls(arg, index) for arg in args)
        case Operation(word="choose", args=(condition, *ways)):
            return not _uses(condition, index) and all(_never_falls(way, index) for way in ways)
    return node is index


def _uses(node: Node, index: Index) -> bool:
    return node is index or any(_uses(part, index) for part in node.parts)
