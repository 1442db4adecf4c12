"""What to say when a lab's own formula uses what is no word of a formula."""

import ast

from generator.formulas.errors import RefusedError
from generator.formulas.places import A_WORD, WORDS_INSTEAD

USE = {
    "total": "write total(rows, lambda row: ...)",
    "product": "write product(low, high, lambda i: ...)",
    "smallest": "write smallest(low, high, lambda i: ... < ...)",
    "next_size_up": "write next_size_up(value, sizes)",
}


def refused(node: ast.AST, what: str, fix: str) -> RefusedError:
    """The error for a piece of the text, at its line and column (counted from 1)."""
    return RefusedError(getattr(node, "lineno", 1), what, fix, getattr(node, "col_offset", 0) + 1)


def refused_statement(statement: ast.stmt) -> RefusedError:
    """The error for a statement other than an assignment and a return."""
    names = {
        ast.If: "if",
        ast.While: "while",
        ast.For: "for",
        ast.Import: "import",
        ast.ImportFrom: "import",
        ast.With: "with",
        ast.Try: "try",
        ast.FunctionDef: "def",
        ast.AugAssign: "+=",
        ast.Raise: "raise",
        ast.Assert: "assert",
        ast.Global: "global",
        ast.Delete: "del",
    }
    name = names.get(type(statement), type(statement).__name__.lower())
    fix = WORDS_INSTEAD.get(name, "use `name = ...` and `return ...` only")
    return refused(statement, f"`{name}` cannot be recorded", fix)


def refused_expression(expression: ast.expr) -> RefusedError:
    """The error for an expression that is no word of a formula."""
    names: dict[type[ast.expr], str] = {
        ast.IfExp: "if",
        ast.BoolOp: "or" if isinstance(getattr(expression, "op", None), ast.Or) else "and",
        ast.ListComp: "for",
        ast.GeneratorExp: "for",
        ast.Lambda: "lambda",
        ast.Await: "await",
        ast.JoinedStr: "f-string",
        ast.Subscript: "[ ]",
    }
    name = names.get(type(expression))
    if name is None:
        return refused(expression, f"a {type(expression).__name__.lower()} cannot be recorded", A_WORD)
    return refused(expression, f"`{name}` cannot be recorded", WORDS_INSTEAD.get(name, A_WORD))


def refused_operator(expression: ast.expr) -> RefusedError:
    """The error for a sign other than + - * / ** and the four comparisons."""
    signs = {
        ast.FloorDiv: "//",
        ast.Mod: "%",
        ast.Eq: "==",
        ast.NotEq: "!=",
        ast.Not: "not",
        ast.MatMult: "@",
    }
    found = next((signs[type(n)] for n in ast.walk(expression) if type(n) in signs), None)
    if found is None:
        return refused(expression, f"`{ast.unparse(expression)[:40]}` cannot be recorded", A_WORD)
    fixes = {"//": "write whole_down(a / b)", "==": "compare with < or >", "!=": "compare with < or >"}
    return refused(expression, f"`{found}` cannot be recorded", fixes.get(found, A_WORD))
