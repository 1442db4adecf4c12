"""Works out the examples in the docstring of a lab's own formula, on the tape and without running them."""

import ast
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from generator.formulas.errors import RefusedError
from generator.formulas.evaluate import Givens, evaluate
from generator.formulas.formula import Example
from generator.formulas.lab_docstring import Worked
from generator.formulas.lab_refusals import refused
from generator.formulas.lab_scope import Scope, Term
from generator.formulas.lab_terms import node_of
from generator.formulas.symbols import RowsSymbol, SizesSymbol
from generator.formulas.tape import Tape
from generator.units.dimension import NUMBER

Functions = Mapping[str, ast.FunctionDef]


@dataclass(frozen=True, slots=True)
class Outcome:
    """What an example came to: what it asked for, what the docstring says, and whether both agree."""

    found: float
    expected: float
    agrees: bool
    example: Example | None


def work_out(worked: Worked, name: str, functions: Functions, fixed: Mapping[str, Term]) -> Outcome:
    """The outcome of one example of the formula of this name; RefusedError where it cannot be read."""
    try:
        asked = ast.parse(worked.asked, mode="eval").body
        expected = float(worked.expected)
    except (SyntaxError, ValueError, RecursionError, MemoryError) as error:
        fix = "write >>> round(name(1, 2), 2) and its answer on the next line"
        raise RefusedError(worked.line, "a worked example cannot be read", fix) from error
    inner, digits = _rounding(asked, worked.line)
    lists, inner = _without_lists(inner)
    scope = Scope(_stand_ins(lists), functions, fixed=fixed)
    try:
        number = evaluate(Tape(node_of(inner, scope)), _givens(lists))
    except RefusedError as error:
        raise RefusedError(worked.line, f"in a worked example, {error.what}", error.fix) from error
    example = _as_example(inner, lists, name, functions, worked.expected)
    return Outcome(number, expected, _agree(number, expected, digits), example)


def _rounding(asked: ast.expr, line: int) -> tuple[ast.expr, int | None]:
    match asked:
        case ast.Call(ast.Name("round"), [inner]):
            return inner, 0
        case ast.Call(ast.Name("round"), [inner, ast.Constant(int() as digits)]) if 0 <= digits <= 15:
            return inner, digits
        case ast.Call(ast.Name("round")):
            raise RefusedError(line, "a worked example rounds in a way of its own", "write round(..., 2)")
    return asked, None


def _agree(found: float, expected: float, digits: int | None) -> bool:
    if digits is None:
        return abs(found - expected) <= 1e-12 * abs(expected)
    return abs(found - expected) <= 0.5 * 10.0**-digits * (1 + 1e-9)


class _TakeLists(ast.NodeTransformer):
    """Puts a name in the place of each list of rows or sizes that is written out in an example."""

    def __init__(self) -> None:
        self.lists: dict[str, Any] = {}

    def visit_List(self, node: ast.List) -> ast.AST:
        try:
            value = ast.literal_eval(node)
        except ValueError as error:
            raise refused(
                node, "a list of an example holds more than numbers", "write numbers only"
            ) from error
        name = f"list {len(self.lists) + 1}"
        self.lists[name] = value
        return ast.copy_location(ast.Name(name, ast.Load()), node)


def _without_lists(expression: ast.expr) -> tuple[dict[str, Any], ast.expr]:
    taker = _TakeLists()
    plain = taker.visit(expression)
    return taker.lists, plain


def _stand_ins(lists: Mapping[str, Any]) -> dict[str, Term]:
    return {
        name: RowsSymbol(name, None) if _are_rows(rows) else SizesSymbol(name, NUMBER)
        for name, rows in lists.items()
    }


def _are_rows(value: Any) -> bool:
    return all(isinstance(row, dict) for row in value)


def _givens(lists: Mapping[str, Any]) -> Givens:
    rows = {name: tuple(_numbers(row) for row in value) for name, value in lists.items() if _are_rows(value)}
    sizes = {name: tuple(map(float, value)) for name, value in lists.items() if not _are_rows(value)}
    return Givens({}, rows, sizes)


def _numbers(row: Mapping[Any, Any]) -> dict[str, float]:
    return {str(column): float(number) for column, number in row.items()}


def _as_example(
    asked: ast.expr, lists: Mapping[str, Any], name: str, functions: Functions, expected: str
) -> Example | None:
    """The example as the page shows it: for a plain call, or 100 times one for an answer in %."""
    percent = ""
    match asked:
        case ast.BinOp(ast.Constant(100), ast.Mult(), call) | ast.BinOp(call, ast.Mult(), ast.Constant(100)):
            asked, percent = call, " %"
    match asked:
        case ast.Call(ast.Name(called)) if called == name:
            given = _given(asked, lists, functions[name])
            return Example(given, expected + percent) if given else None
    return None


def _given(call: ast.Call, lists: Mapping[str, Any], function: ast.FunctionDef) -> dict[str, Any]:
    names = [arg.arg for arg in function.args.args]
    pairs = [*zip(names, call.args, strict=False), *((k.arg or "", k.value) for k in call.keywords)]
    given: dict[str, Any] = {}
    for name, value in pairs:
        match value:
            case ast.Name(listed) if listed in lists:
                given[name] = lists[listed]
            case _:
                given[name] = evaluate(Tape(node_of(value, Scope({}))), Givens({}))
    return given


def decimals_shown(examples: tuple[Example, ...]) -> int:
    """As many decimals as the worked examples show, four at most; two where there is none."""
    shown = [len(example.answer.split()[0].partition(".")[2]) for example in examples if example.answer]
    return min(max(shown, default=2), 4)
