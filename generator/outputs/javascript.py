"""Prints tapes as JavaScript, operation by operation, so that a page agrees with Python to the last bit."""

import json
from collections.abc import Iterable

from generator.formulas.formula import Formula
from generator.formulas.inverse import solvable, solve_for
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
    Row,
    Smallest,
    Tape,
    Total,
)

_SIGNS = {"add": "+", "subtract": "-", "multiply": "*", "divide": "/", "less": "<", "less or equal": "<="}
_CALLS = {
    "sqrt": "Math.sqrt",
    "exp": "Math.exp",
    "log": "Math.log",
    "power": "w.power",
    "larger": "w.larger",
    "smaller": "w.smaller",
    "whole_up": "w.wholeUp",
    "whole_down": "w.wholeDown",
    "nearest": "w.nearest",
}


def formula_path(name: str) -> str:
    """Return where the script of a formula stands, from the root of the site."""
    return f"assets/formulas/{name}.js"


def formulas_script(formulas: Iterable[Formula]) -> str:
    """Return a classic script that adds to `newelFormulas`: for each name its functions of (given, words).

    answer: the value; requires: comparisons that must hold; naive: the wrong sum or null; solve: for an
    input's name, its value from the others and `answer`. All in coherent SI; `words` is in calculate.js.
    """
    entries = ",\n".join(f"{json.dumps(formula.name)}: {formula_functions(formula)}" for formula in formulas)
    return f'"use strict";\nObject.assign(globalThis.newelFormulas ||= {{}}, {{\n{entries}\n}});\n'


def formula_functions(formula: Formula) -> str:
    """Return the functions of one formula as an object of JavaScript."""
    requires = ", ".join(javascript_function(tape) for tape in formula.requirement_tapes)
    naive = javascript_function(formula.naive_tape) if formula.naive_tape else "null"
    solve = ", ".join(
        f"{json.dumps(name)}: {javascript_function(solve_for(formula, name).tape)}"
        for name in solvable(formula)
    )
    return (
        f"{{\nanswer: {javascript_function(formula.tape)},\nrequires: [{requires}],\n"
        f"naive: {naive},\nsolve: {{ {solve} }},\n}}"
    )


def javascript_function(tape: Tape) -> str:
    """Return one pure function of (g, w): `g` holds SI numbers, lists of rows and records by input name."""
    printer = _Printer(tape)
    answer = printer.text(tape.answer)
    body = "".join(f" const {name} = {text};" for name, text in printer.kept)
    return f"(g, w) => {{{body} return {answer}; }}" if body else f"(g, w) => {answer}"


class _Printer:
    """Prints one tape; an entry that is used twice is worked out once, under a name."""

    def __init__(self, tape: Tape) -> None:
        self._inner = tape.inner
        self._shared = tape.shared
        self._names: dict[int, str] = {}
        self.kept: list[tuple[str, str]] = []

    def text(self, node: Node) -> str:
        """The expression for an entry, with a parenthesis round everything that has a sign."""
        key = id(node)
        if key in self._names:
            return self._names[key]
        text = self._expression(node)
        if key in self._shared and key not in self._inner and node.parts:
            name = f"v{len(self.kept) + 1}"
            self.kept.append((name, text))
            self._names[key] = name
            return name
        return text

    def _expression(self, node: Node) -> str:
        match node:
            case Operation("choose", (condition, this, that)):
                return f"({self.text(condition)} ? {self.text(this)} : {self.text(that)})"
            case Operation("negate", (inner,)):
                return f"(-{self.text(inner)})"
            case Operation(word, (left, right)) if word in _SIGNS:
                return f"({self.text(left)} {_SIGNS[word]} {self.text(right)})"
            case Operation(word, args):
                return f"{_CALLS[word]}({', '.join(self.text(arg) for arg in args)})"
            case Total() | Product() | Smallest() | NextSize():
                return self._loop(node)
        return self._leaf(node)

    def _loop(self, node: Node) -> str:
        match node:
            case Total(row, body):
                return f"w.total({_property('g', row.rows)}, ({self._loose(row)}) => {self.text(body)})"
            case Product(low, high, index, body):
                bounds = f"{self.text(low)}, {self.text(high)}"
                return f"w.product({bounds}, ({self._loose(index)}) => {self.text(body)})"
            case Smallest(low, high, index, condition):
                bounds = f"{self.text(low)}, {self.text(high)}"
                return f"w.smallest({bounds}, ({self._loose(index)}) => {self.text(condition)})"
            case NextSize(value, sizes):
                return f"w.nextSizeUp({self.text(value)}, {_property('g', sizes)})"
        raise TypeError(f"no JavaScript for {type(node).__name__}")

    def _loose(self, node: Row | Index) -> str:
        """The name of a row or whole number at hand."""
        return self._names.setdefault(id(node), f"r{len(self._names) + 1}")

    def _leaf(self, node: Node) -> str:
        match node:
            case Number(value) | Constant(value=value):
                return "Math.PI" if value == 3.141592653589793 else _literal(value)
            case Given(name):
                return _property("g", name)
            case Field(record, name):
                return _property(_property("g", record), name)
            case Column(row, name):
                return _property(self._names[id(row)], name)
            case Index():
                return self._names[id(node)]
        raise TypeError(f"no JavaScript for {type(node).__name__}")


def _literal(value: float) -> str:
    """A double that reads back as itself."""
    text = repr(value).removesuffix(".0")
    return f"({text})" if value < 0 else text


def _property(owner: str, name: str) -> str:
    # Names come from Python identifiers; those outside ASCII are quoted.
    return f"{owner}.{name}" if name.isascii() and name.isidentifier() else f"{owner}[{json.dumps(name)}]"
