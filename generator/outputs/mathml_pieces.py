"""Pieces of printed mathematics: markup, the same as text, and how tightly it holds together."""

from dataclasses import dataclass
from html import escape

from generator.units import show_number

# How tightly an entry holds together: a sum least, a symbol most.
SUM, PRODUCT, POWER, ATOM = 1, 2, 3, 4
_NO_SIGN = "\u2062"


@dataclass(frozen=True, slots=True)
class Piece:
    """Markup, the same in plain text, how tightly it holds, and whether a digit or a word begins it.

    open_end: it ends in a sum over rows, which would swallow a factor written after it.
    """

    markup: str
    text: str
    holds: int = ATOM
    begins_with_number: bool = False
    is_word: bool = False
    open_end: bool = False


def symbol_piece(symbol: str) -> Piece:
    """A symbol; what follows an underscore is set low."""
    top, _, low = symbol.partition("_")
    word = len(top) > 2
    if not low:
        return Piece(f"<mi>{escape(top)}</mi>", symbol, is_word=word)
    kind = "mn" if low.isdigit() else "mtext"
    low_words = escape(low.replace("_", " "))
    return Piece(f"<msub><mi>{escape(top)}</mi><{kind}>{low_words}</{kind}></msub>", symbol, is_word=word)


def number_piece(value: float) -> Piece:
    """A number as shown."""
    shown = show_number(value)
    return Piece(f"<mn>{shown}</mn>", shown, begins_with_number=True)


def in_brackets(piece: Piece) -> Piece:
    """The piece in round brackets."""
    return Piece(f"<mrow><mo>(</mo>{piece.markup}<mo>)</mo></mrow>", f"({piece.text})")


def at_least(piece: Piece, holds: int) -> Piece:
    """The piece, in brackets where it holds less tightly than asked."""
    return piece if piece.holds >= holds else in_brackets(piece)


MIDDLE = {
    "add": ("+", "+", SUM),
    "subtract": ("−", "-", SUM + 0.5),
    "less": ("&lt;", "<", SUM),
    "less or equal": ("≤", "<=", SUM),
}
_AROUND = {
    "whole_up": ("⌈", "⌉", "rounded up"),
    "whole_down": ("⌊", "⌋", "rounded down"),
}
_NAMES = {"larger": "max", "smaller": "min", "log": "ln", "exp": "exp", "nearest": "nearest"}


def row(piece: Piece) -> str:
    """One element, as a fraction or a power needs for each of its sides."""
    return f"<mrow>{piece.markup}</mrow>"


def between(sign: tuple[str, str, float], left: Piece, right: Piece) -> Piece:
    """Two pieces with a sign between them."""
    shown, typed, needs = sign
    tight = right if right.holds >= needs else in_brackets(right)
    markup = f"<mrow>{left.markup}<mo>{shown}</mo>{tight.markup}</mrow>"
    return Piece(markup, f"{left.text} {typed} {tight.text}", SUM, left.begins_with_number)


def times(left: Piece, right: Piece) -> Piece:
    """A product, with a sign only where symbols would run together."""
    first = in_brackets(left) if left.open_end else at_least(left, PRODUCT)
    second = at_least(right, PRODUCT)
    sign = "×" if second.begins_with_number else "·" if first.is_word or second.is_word else _NO_SIGN
    typed = {"×": " × ", "·": " · "}.get(sign, " ")
    return Piece(
        f"<mrow>{first.markup}<mo>{sign}</mo>{second.markup}</mrow>",
        f"{first.text}{typed}{second.text}",
        PRODUCT,
        first.begins_with_number,
        second.is_word,
        second.open_end,
    )


def function_piece(word: str, args: tuple[Piece, ...]) -> Piece:
    """A word with its arguments."""
    if word == "negate":
        inner = at_least(args[0], PRODUCT)
        return Piece(f"<mrow><mo>−</mo>{inner.markup}</mrow>", f"-{inner.text}", SUM)
    if word == "sqrt":
        return Piece(f"<msqrt>{args[0].markup}</msqrt>", f"sqrt({args[0].text})")
    if word in _AROUND:
        left, right, words = _AROUND[word]
        markup = f"<mrow><mo>{left}</mo>{args[0].markup}<mo>{right}</mo></mrow>"
        return Piece(markup, f"({args[0].text}) {words}")
    name = _NAMES[word]
    inside = "<mo>,</mo>".join(arg.markup for arg in args)
    text = ", ".join(arg.text for arg in args)
    return Piece(f"<mrow><mi>{name}</mi><mo>(</mo>{inside}<mo>)</mo></mrow>", f"{name}({text})")


def cases(condition: Piece, this: Piece, that: Piece) -> Piece:
    """This if a condition holds, otherwise that."""
    rows = (
        f"<mtr><mtd>{this.markup}</mtd><mtd><mtext>if&#160;</mtext>{condition.markup}</mtd></mtr>"
        f"<mtr><mtd>{that.markup}</mtd><mtd><mtext>otherwise</mtext></mtd></mtr>"
    )
    text = f"({this.text} if {condition.text}, otherwise {that.text})"
    return Piece(f"<mrow><mo>{{</mo><mtable>{rows}</mtable></mrow>", text, SUM)
