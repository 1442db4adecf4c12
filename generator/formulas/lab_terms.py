"""Writes the expressions of a lab's own formula on a tape, from its text alone: nothing of it is run."""

import ast
import math
from collections.abc import Callable

from generator.formulas import words
from generator.formulas.errors import RefusedError
from generator.formulas.lab_refusals import (
    USE,
    refused,
    refused_expression,
    refused_operator,
    refused_statement,
)
from generator.formulas.lab_scope import DEEPEST, Scope, Term
from generator.formulas.places import A_WORD, WORDS_INSTEAD
from generator.formulas.symbols import RowsSymbol, RowSymbol, SizesSymbol, Symbol, operate, raise_to
from generator.formulas.tape import Index, NextSize, Node, Number, Row

_BINARY = {ast.Add: "add", ast.Sub: "subtract", ast.Mult: "multiply", ast.Div: "divide"}
_COMPARED = {
    ast.Lt: ("less", False),
    ast.LtE: ("less or equal", False),
    ast.Gt: ("less", True),
    ast.GtE: ("less or equal", True),
}
_PLAIN_WORDS = {
    "sqrt": 1,
    "exp": 1,
    "log": 1,
    "larger": 2,
    "smaller": 2,
    "choose": 3,
    "whole_up": 1,
    "whole_down": 1,
}


def body_of(function: ast.FunctionDef, scope: Scope) -> Node:
    """The tape's entry for what a function returns; RefusedError for more than assignments and a return."""
    terms = dict(scope.terms)
    for statement in function.body:
        inner = scope.with_terms(terms)
        match statement:
            case ast.Expr(ast.Constant(str())):
                continue
            case ast.Assign([ast.Name(name)], value):
                terms[name] = Symbol(node_of(value, inner))
            case ast.Return(ast.expr() as value):
                return node_of(value, inner)
            case _:
                raise refused_statement(statement)
    raise refused(function, f"`{function.name}` returns nothing", "end it with `return` and the answer")


def node_of(expression: ast.expr, scope: Scope) -> Node:
    """The tape's entry for an expression; RefusedError for what is no word of a formula."""
    term = term_of(expression, scope)
    if isinstance(term, RowsSymbol):
        raise refused(expression, f"`{term.name}` is a list, and a list is no number", WORDS_INSTEAD["for"])
    if isinstance(term, RowSymbol):
        raise refused(expression, "a row is no number", "name one of its columns, as in row.count")
    return term.node if isinstance(term, Symbol) else term


def term_of(expression: ast.expr, scope: Scope) -> Term:
    """What an expression stands for: an entry, a list or a row."""
    if scope.depth > DEEPEST or next(scope.left, None) is None:
        raise refused(
            expression, "this goes too deep or too far", "give parts of it names, or leave parts out"
        )
    inner = scope.inside()
    match expression:
        case ast.Constant(value):
            return _number(expression, value)
        case ast.Name(name):
            return _name(expression, name, scope)
        case ast.BinOp() | ast.UnaryOp() | ast.Compare():
            return _operation(expression, inner)
        case ast.Attribute(ast.Name(owner), column):
            return _column(expression, owner, column, scope)
        case ast.Call():
            return _call(expression, inner)
    raise refused_expression(expression)


def _number(expression: ast.expr, value: object) -> Node:
    plain = isinstance(value, int | float) and not isinstance(value, bool)
    if not plain or not abs(value) < 1e30 or not math.isfinite(float(value)):  # type: ignore[arg-type]
        raise refused(
            expression, f"`{ast.unparse(expression)[:40]}` is no number for a formula", "write a number"
        )
    return Number(float(value), line=expression.lineno)  # type: ignore[arg-type]


def _name(expression: ast.expr, name: str, scope: Scope) -> Term:
    if name in scope.terms:
        return scope.terms[name]
    if name == "pi":
        return words.pi
    from difflib import get_close_matches

    near = get_close_matches(name, [*scope.terms, "pi"], n=1)
    fix = f"write `{near[0]}`" if near else "name an input of the function"
    raise refused(expression, f"`{name}` is no input and no value worked out before", fix)


def _operation(expression: ast.expr, scope: Scope) -> Node:
    line = expression.lineno
    match expression:
        case ast.UnaryOp(ast.USub(), operand):
            return operate("negate", (node_of(operand, scope),), line)
        case ast.UnaryOp(ast.UAdd(), operand):
            return node_of(operand, scope)
        case ast.BinOp(left, ast.Pow(), right):
            return _power(expression, left, right, scope)
        case ast.BinOp(left, op, right) if type(op) in _BINARY:
            args = (node_of(left, scope), node_of(right, scope))
            return operate(_BINARY[type(op)], args, line)
        case ast.Compare(left, [op], [right]) if type(op) in _COMPARED:
            word, turned = _COMPARED[type(op)]
            pair = (node_of(left, scope), node_of(right, scope))
            return operate(word, pair[::-1] if turned else pair, line)
    raise refused_operator(expression)


def _power(expression: ast.expr, left: ast.expr, right: ast.expr, scope: Scope) -> Node:
    exponent = right.value if isinstance(right, ast.Constant) else None
    try:
        return raise_to(node_of(left, scope), exponent, expression.lineno)
    except RefusedError as error:
        if error.column:
            raise
        raise refused(expression, error.what, error.fix) from error


def _column(expression: ast.expr, owner: str, column: str, scope: Scope) -> Term:
    row = scope.terms.get(owner)
    if isinstance(row, RowSymbol):
        return row.column(column, expression.lineno)
    name = f"{owner}.{column}"
    raise refused(expression, f"`{name}` cannot be recorded", WORDS_INSTEAD.get(name, A_WORD))


def _call(call: ast.Call, scope: Scope) -> Node:
    name = ast.unparse(call.func)
    if name in _PLAIN_WORDS or name in ("nearest", "total", "product", "smallest", "next_size_up"):
        if call.keywords:
            raise refused(call, f"`{name}` takes no named values", "give them in their order")
        return _word(call, name, scope)
    if name in scope.functions:
        return _own_function(call, scope.functions[name], scope)
    raise refused(call, f"`{name[:40]}` cannot be recorded", WORDS_INSTEAD.get(name, A_WORD))


def _word(call: ast.Call, name: str, scope: Scope) -> Node:
    match name, call.args:
        case "total", [rows, ast.Lambda() as body]:
            return _total(call, rows, body, scope)
        case "product" | "smallest", [low, high, ast.Lambda() as body]:
            return _range(call, name, (low, high, body), scope)
        case "next_size_up", [value, sizes]:
            return _next_size(call, value, sizes, scope)
        case "nearest", [value] | [value, _]:
            step = call.args[1] if len(call.args) == 2 else ast.Constant(1, lineno=call.lineno, col_offset=0)
            return operate("nearest", (node_of(value, scope), node_of(step, scope)), call.lineno)
        case _, args if len(args) == _PLAIN_WORDS.get(name):
            if name == "choose" and not isinstance(args[0], ast.Compare):
                raise refused(
                    args[0], "a comparison is expected here", "write a < b, a <= b, a > b or a >= b"
                )
            return operate(name, tuple(node_of(arg, scope) for arg in args), call.lineno)
    raise refused(call, f"`{name}` is not used like this", USE.get(name, f"see how `{name}` is used"))


def _parameter(function: ast.Lambda) -> str:
    args = function.args
    if (
        len(args.args) != 1
        or args.vararg
        or args.kwarg
        or args.kwonlyargs
        or args.posonlyargs
        or args.defaults
    ):
        raise refused(
            function, "a lambda with other than one name cannot be recorded", "write lambda row: ..."
        )
    return args.args[0].arg


def _total(call: ast.Call, rows: ast.expr, body: ast.Lambda, scope: Scope) -> Node:
    term = term_of(rows, scope)
    if not isinstance(term, RowsSymbol) or isinstance(term, SizesSymbol):
        raise refused(rows, "total is asked of something that is no list of rows", USE["total"])
    row = Row(term.name, line=call.lineno)
    inner = scope.inside(**{_parameter(body): RowSymbol(row, term.columns)})
    return words.total_of(row, node_of(body.body, inner), call.lineno).node


def _range(call: ast.Call, name: str, args: tuple[ast.expr, ast.expr, ast.Lambda], scope: Scope) -> Node:
    low, high, body = args
    index = Index(line=call.lineno)
    inner = scope.inside(**{_parameter(body): Symbol(index)})
    build: Callable[..., Symbol] = words.product_of if name == "product" else words.smallest_of
    inside: object = node_of(body.body, inner)
    if name == "smallest":
        inside = Symbol(node_of(body.body, inner))
    return build(node_of(low, scope), node_of(high, scope), index, inside, call.lineno).node


def _next_size(call: ast.Call, value: ast.expr, sizes: ast.expr, scope: Scope) -> Node:
    term = term_of(sizes, scope)
    if not isinstance(term, SizesSymbol):
        raise refused(
            sizes, "next_size_up is asked of something that is no list of sizes", USE["next_size_up"]
        )
    return NextSize(node_of(value, scope), term.name, line=call.lineno)


def _own_function(call: ast.Call, function: ast.FunctionDef, scope: Scope) -> Node:
    names = [arg.arg for arg in function.args.args]
    terms: dict[str, Term] = {name: Symbol(node) for name, node in defaults_of(function).items()}
    for name, value in zip(names, call.args, strict=False):
        terms[name] = term_of(value, scope)
    for keyword in call.keywords:
        if keyword.arg not in names:
            raise refused(call, f"`{function.name}` has no input `{keyword.arg}`", "use: " + ", ".join(names))
        terms[keyword.arg or ""] = term_of(keyword.value, scope)
    missing = [name for name in names if name not in terms]
    if missing or len(call.args) > len(names):
        what = f"`{function.name}` is given too much" if not missing else f"`{missing[0]}` is not given"
        raise refused(call, what, f"write {function.name}({', '.join(names)})")
    return body_of(function, scope.with_terms({**scope.fixed, **terms}))


def defaults_of(function: ast.FunctionDef) -> dict[str, Node]:
    """The numbers that a function's inputs have when nobody says; RefusedError for anything but a number."""
    args = function.args
    names = [arg.arg for arg in args.args][len(args.args) - len(args.defaults) :]
    return {name: node_of(value, Scope({})) for name, value in zip(names, args.defaults, strict=True)}
