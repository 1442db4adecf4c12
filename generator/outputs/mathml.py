"""Prints tapes as MathML with the symbols of the field, and as one line of text for a reader aloud."""

from collections.abc import Mapping
from html import escape

from generator.formulas.formula import Formula
from generator.formulas.inputs import Choice, Rows
from generator.formulas.inverse import solve_for
from generator.formulas.tape import (
    Column,
    Constant,
    Field,
    Given,
    Index,
    NextSize,
    Node,
    Number,
    Operation,
    Product,
    Smallest,
    Tape,
    Total,
)
from generator.outputs.mathml_pieces import (
    ATOM,
    MIDDLE,
    POWER,
    PRODUCT,
    SUM,
    Piece,
    at_least,
    between,
    cases,
    function_piece,
    in_brackets,
    number_piece,
    row,
    symbol_piece,
    times,
)


def formula_mathml(formula: Formula) -> str:
    """Return `<math>` for "answer = ...", with the formula as text for a reader aloud."""
    if formula.in_words:
        return _in_words(formula)
    return equation_mathml(formula.answer.symbol, formula.tape, _symbols(formula))


def _in_words(formula: Formula) -> str:
    words = escape(formula_text(formula), quote=True)
    right = f"<mtext>{escape(formula.in_words)}</mtext>"
    left = symbol_piece(formula.answer.symbol).markup
    return f'<math display="block" alttext="{words}"><mrow>{left}<mo>=</mo>{right}</mrow></math>'


def equation_text(formula: Formula, name: str) -> str:
    """Return the formula solved for one of its inputs as one line."""
    inverse = solve_for(formula, name)
    return f"{inverse.wanted.symbol} = {_Printer(_symbols(formula)).piece(inverse.tape.answer).text}"


def solved_mathml(formula: Formula, name: str) -> str:
    """Return `<math>` for the formula solved for one of its inputs."""
    inverse = solve_for(formula, name)
    return equation_mathml(inverse.wanted.symbol, inverse.tape, _symbols(formula))


def equation_mathml(left: str, tape: Tape, symbols: Mapping[str, str]) -> str:
    """Return `<math>` for a tape under its left side; `symbols` by name of input, column or record.field."""
    name = symbol_piece(left)
    right = _Printer(symbols).piece(tape.answer)
    words = escape(f"{name.text} = {right.text}", quote=True)
    markup = f"<mrow>{name.markup}<mo>=</mo>{right.markup}</mrow>"
    return f'<math display="block" alttext="{words}">{markup}</math>'


def formula_text(formula: Formula) -> str:
    """Return the formula as one line: "I = j (A + A_contact)"."""
    if formula.in_words:
        return f"{formula.answer.symbol} = {formula.in_words}"
    return f"{formula.answer.symbol} = {_Printer(_symbols(formula)).piece(formula.tape.answer).text}"


def symbol_mathml(symbol: str) -> str:
    """Return the markup of one symbol, with what follows an underscore set low."""
    return f"<math>{symbol_piece(symbol).markup}</math>"


def _symbols(formula: Formula) -> dict[str, str]:
    symbols = {"answer": formula.answer.symbol}
    for each in formula.inputs:
        symbols[each.name] = each.symbol
        if isinstance(each, Rows):
            symbols |= {f"{each.name}.{column.name}": column.symbol for column in each.columns}
        if isinstance(each, Choice):
            symbols |= {f"{each.name}.{field.name}": field.symbol for field in each.table.fields}
    return symbols


class _Printer:
    """Prints entries with the symbols of one formula."""

    def __init__(self, symbols: Mapping[str, str]) -> None:
        self._symbols = symbols

    def piece(self, node: Node) -> Piece:
        """The piece for an entry."""
        match node:
            case Operation():
                return self._operation(node.word, tuple(self.piece(arg) for arg in node.args))
            case Total(at, body):
                return self._sum_over(self._name(at.rows), self.piece(body))
            case Product() | Smallest() | NextSize():
                return self._range(node)
            case _:
                return self._leaf(node)

    def _leaf(self, node: Node) -> Piece:
        match node:
            case Number(value, symbol):
                return symbol_piece(symbol) if symbol else number_piece(value)
            case Constant(symbol=symbol):
                return symbol_piece(symbol)
            case Given(name):
                return self._name(name)
            case Field(record, name):
                return self._name(f"{record}.{name}", name)
            case Column(at, name):
                return self._name(f"{at.rows}.{name}", name)
            case Index(name):
                return symbol_piece(name)
        raise TypeError(f"no MathML for {type(node).__name__}")

    def _name(self, key: str, otherwise: str = "") -> Piece:
        return symbol_piece(self._symbols.get(key, otherwise or key))

    def _operation(self, word: str, args: tuple[Piece, ...]) -> Piece:
        match word, args:
            case "add" | "subtract" | "less" | "less or equal", (left, right):
                return between(MIDDLE[word], left, right)
            case "multiply", (left, right):
                return times(left, right)
            case "divide", (left, right):
                text = f"{at_least(left, PRODUCT).text} / {at_least(right, POWER).text}"
                return Piece(f"<mfrac>{row(left)}{row(right)}</mfrac>", text, PRODUCT)
            case "power", (left, right):
                base = at_least(left, ATOM)
                return Piece(f"<msup>{row(base)}{right.markup}</msup>", f"{base.text}^{right.text}", POWER)
            case "choose", (condition, this, that):
                return cases(condition, this, that)
        return function_piece(word, args)

    def _sum_over(self, rows: Piece, body: Piece) -> Piece:
        body = at_least(body, PRODUCT)
        return Piece(
            f"<mrow><munder><mo>∑</mo>{rows.markup}</munder>{body.markup}</mrow>",
            f"sum over {rows.text} of {body.text}",
            PRODUCT,
            open_end=True,
        )

    def _range(self, node: Node) -> Piece:
        match node:
            case Product(low, high, index, body) if id(index) not in {id(n) for n in Tape(body).nodes}:
                return self._same_factors(low, high, body)
            case Product(low, high, index, body):
                under, over = self._bounds(index, low), self.piece(high)
                inside = at_least(self.piece(body), PRODUCT)
                markup = f"<munderover><mo>∏</mo>{under.markup}{row(over)}</munderover>{inside.markup}"
                return Piece(
                    f"<mrow>{markup}</mrow>",
                    f"product from {under.text} to {over.text} of {inside.text}",
                    SUM,
                )
            case Smallest(low, high, index, condition):
                under, over, holds = self._bounds(index, low), self.piece(high), self.piece(condition)
                words = f"the smallest {index.name}, {under.text} to {over.text}, with {holds.text}"
                markup = (
                    f"<mtext>smallest&#160;</mtext>{under.markup}<mtext>&#160;to&#160;</mtext>{over.markup}"
                )
                return Piece(
                    f"<mrow>{markup}<mtext>&#160;with&#160;</mtext>{holds.markup}</mrow>", words, SUM
                )
            case NextSize(value, _):
                inside = self.piece(value)
                markup = f"<mrow><mtext>next size up from&#160;</mtext>{in_brackets(inside).markup}</mrow>"
                return Piece(markup, f"the next size up from {inside.text}", SUM)
        raise TypeError(f"no MathML for {type(node).__name__}")

    def _same_factors(self, low: Node, high: Node, body: Node) -> Piece:
        """So many times the same factor, as a power."""
        first, last = getattr(low, "value", None), self.piece(high)
        if first not in (0, 1):
            last = in_brackets(between(MIDDLE["subtract"], last, self.piece(low)))
        count = last if first == 1 else between(MIDDLE["add"], last, number_piece(1))
        base = at_least(self.piece(body), ATOM)
        text = count.text if count.holds == ATOM else f"({count.text})"
        return Piece(f"<msup>{row(base)}{row(count)}</msup>", f"{base.text}^{text}", POWER)

    def _bounds(self, index: Index, low: Node) -> Piece:
        first = self.piece(low)
        return Piece(
            f"<mrow><mi>{escape(index.name)}</mi><mo>=</mo>{first.markup}</mrow>",
            f"{index.name} = {first.text}",
        )
