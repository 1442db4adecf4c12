"""Reads a lab's own formulas from the text of a Python file without running any of it."""

import ast
from collections.abc import Mapping
from dataclasses import dataclass, replace

from generator.formulas.errors import RefusedError
from generator.formulas.formula import Answer, Example, Formula
from generator.formulas.inputs import AnyInput, Input, Rows, Sizes
from generator.formulas.lab_docstring import Words, read_docstring
from generator.formulas.lab_examples import decimals_shown, work_out
from generator.formulas.lab_refusals import refused, refused_statement
from generator.formulas.lab_scope import Scope, Term
from generator.formulas.lab_terms import body_of, defaults_of, node_of
from generator.formulas.library import by_name
from generator.formulas.symbols import RowsSymbol, SizesSymbol, Symbol, given
from generator.formulas.tape import Column, Number, Tape
from generator.units import find_unit
from generator.units.dimension import NUMBER

LONGEST_TEXT = 100_000
LARGEST_FORMULA = 2000
DEEPEST_FORMULA = 150


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong in a lab's file of formulas; line and column counted from 1."""

    line: int
    column: int
    message: str
    fix: str
    rule: str


@dataclass(frozen=True, slots=True)
class LabFormulas:
    """The formulas that could be read, and what is wrong with the file."""

    formulas: tuple[Formula, ...]
    faults: tuple[Fault, ...]


def read_formulas(text: str, filename: str) -> LabFormulas:
    """The formulas of a file; rules of the faults: unreadable, formula-untested, formula-disagrees."""
    try:
        if len(text) > LONGEST_TEXT:
            raise RefusedError(1, "the file is too long for a lab's formulas", "split it")
        module = ast.parse(text, filename)
    except RefusedError as error:
        return LabFormulas((), (_fault(error),))
    except SyntaxError as error:
        place = (error.lineno or 1, error.offset or 1)
        return LabFormulas((), (Fault(*place, f"not Python: {error.msg}", "mend this line", "unreadable"),))
    except (ValueError, RecursionError, MemoryError):
        return LabFormulas((), (Fault(1, 1, "this is no Python text", "write it anew", "unreadable"),))
    read = _read_module(module)
    lines = text.splitlines()
    return replace(read, faults=tuple(_in_letters(fault, lines) for fault in read.faults))


def _in_letters(fault: Fault, lines: list[str]) -> Fault:
    """The column in characters, where Python's parser counts bytes."""
    line = lines[fault.line - 1] if fault.line <= len(lines) else ""
    before = line.encode()[: fault.column - 1]
    return replace(fault, column=len(before.decode(errors="ignore")) + 1)


def _read_module(module: ast.Module) -> LabFormulas:
    functions: dict[str, ast.FunctionDef] = {}
    numbers: dict[str, Term] = {}
    formulas: list[Formula] = []
    faults: list[Fault] = []
    for statement in module.body:
        try:
            match statement:
                case ast.FunctionDef(name):
                    _check_head(statement, functions)
                    functions[name] = statement
                    if not name.startswith("_"):
                        formula, found = _read_function(statement, functions, numbers)
                        formulas.append(formula)
                        faults.extend(found)
                case _:
                    numbers |= _number_of(statement, numbers)
        except RefusedError as error:
            faults.append(_fault(error, statement))
    return LabFormulas(tuple(formulas), tuple(sorted(faults, key=lambda f: (f.line, f.column))))


def _number_of(statement: ast.stmt, numbers: Mapping[str, Term]) -> dict[str, Term]:
    """What a statement beside the functions may be: words, an import of ours, a number with a name."""
    match statement:
        case ast.Expr(ast.Constant(str())) | ast.ImportFrom(module="generator.formulas.words"):
            return {}
        case ast.Assign([ast.Name(name)], value):
            return {name: Symbol(node_of(value, Scope(numbers)))}
    raise refused_statement(statement)


def _check_head(function: ast.FunctionDef, functions: Mapping[str, ast.FunctionDef]) -> None:
    args = function.args
    if function.decorator_list:
        raise refused(function.decorator_list[0], "a decorator cannot be recorded", "leave it out")
    if args.vararg or args.kwarg or args.kwonlyargs or args.posonlyargs:
        raise refused(function, f"`{function.name}` takes inputs without a name", "name each input")
    if function.name in functions:
        raise refused(function, f"`{function.name}` is defined twice", "give one of them another name")
    if function.name in by_name():
        raise refused(function, f"the tool has a formula `{function.name}` of its own", "take another name")


def _read_function(
    function: ast.FunctionDef, functions: Mapping[str, ast.FunctionDef], numbers: Mapping[str, Term]
) -> tuple[Formula, tuple[Fault, ...]]:
    fixed = dict(numbers)
    scope = Scope({**fixed, **_stand_ins(function)}, functions, fixed=fixed)
    tape = Tape(body_of(function, scope))
    if _is_too_much(tape):
        raise refused(function, f"`{function.name}` is too long when it is written out", "split it")
    words = read_docstring(function)
    formula = Formula(
        name=function.name,
        title=words.title,
        decides=words.labelled.get("Decides", ""),
        inputs=_inputs(function, tape),
        answer=_answer(function, words),
        source=words.labelled.get("Source", ""),
        cautions=tuple(filter(None, [words.labelled.get("Caution", "")])),
        as_given=True,
        recorded=tape,
    )
    examples, faults = _examples(function, words, functions, fixed)
    answer = replace(formula.answer, decimals=decimals_shown(examples))
    return replace(formula, answer=answer, examples=examples), faults


def _is_too_much(tape: Tape) -> bool:
    try:
        return tape.size > LARGEST_FORMULA or tape.depth > DEEPEST_FORMULA
    except RecursionError:
        return True


def _stand_ins(function: ast.FunctionDef) -> dict[str, Term]:
    lists = _list_names(function)
    stand_ins: dict[str, Term] = {}
    for arg in function.args.args:
        kind = lists.get(arg.arg)
        if kind == "rows":
            stand_ins[arg.arg] = RowsSymbol(arg.arg, None)
        elif kind == "sizes":
            stand_ins[arg.arg] = SizesSymbol(arg.arg, NUMBER)
        else:
            stand_ins[arg.arg] = given(arg.arg, NUMBER)
    return stand_ins


def _list_names(function: ast.FunctionDef) -> dict[str, str]:
    """The parameters that total and next_size_up are asked of."""
    found: dict[str, str] = {}
    for node in ast.walk(function):
        match node:
            case ast.Call(ast.Name("total"), [ast.Name(name), *_]):
                found[name] = "rows"
            case ast.Call(ast.Name("next_size_up"), [_, ast.Name(name)]):
                found[name] = "sizes"
    return found


def _inputs(function: ast.FunctionDef, tape: Tape) -> tuple[AnyInput, ...]:
    defaults = {name: node for name, node in defaults_of(function).items() if isinstance(node, Number)}
    lists = _list_names(function)
    inputs: list[AnyInput] = []
    for arg in function.args.args:
        name, words = arg.arg, arg.arg.replace("_", " ")
        if lists.get(name) == "rows":
            columns = dict.fromkeys(
                n.name for n in tape.nodes if isinstance(n, Column) and n.row.rows == name
            )
            inputs.append(
                Rows(name, name, words, tuple(Input(c, c, c.replace("_", " "), "") for c in columns))
            )
        elif lists.get(name) == "sizes":
            inputs.append(Sizes(name, name, words, ""))
        else:
            default = f"{defaults[name].value:.15g}" if name in defaults else ""
            inputs.append(Input(name, name, words, "", default=default))
    return tuple(inputs)


def _answer(function: ast.FunctionDef, words: Words) -> Answer:
    names = [arg.arg for arg in function.args.args]
    if words.like and words.like not in names:
        fix = "write one of: " + ", ".join(names)
        raise refused(function, f"the unit is said to be as `{words.like}`, which is no input", fix)
    unit = find_unit(words.shown) if words.shown else ""
    if unit is None:
        raise refused(
            function, f"`{words.shown}` is no unit that this lab's tools know", "write Unit: g, or as the ..."
        )
    return Answer(function.name, words.title, unit, like=words.like)


def _examples(
    function: ast.FunctionDef,
    words: Words,
    functions: Mapping[str, ast.FunctionDef],
    fixed: Mapping[str, Term],
) -> tuple[tuple[Example, ...], tuple[Fault, ...]]:
    place = (function.lineno, function.col_offset + 1)
    if not words.worked:
        message = f"`{function.name}` has no worked example"
        fix = f"write >>> round({function.name}(...), 2) and its answer into its docstring"
        return (), (Fault(*place, message, fix, "formula-untested"),)
    unit = _answer(function, words).unit
    examples, faults = [], []
    for worked in words.worked:
        try:
            outcome = work_out(worked, function.name, functions, fixed)
        except RefusedError as error:
            faults.append(_fault(error))
            continue
        if not outcome.agrees:
            message = (
                f"`{function.name}`: the example says {worked.expected}, and {outcome.found:.10g} comes out"
            )
            faults.append(Fault(worked.line, 1, message, "work the example out again", "formula-disagrees"))
        if outcome.example:
            examples.append(_in_unit(outcome.example, unit))
    return tuple(examples), tuple(faults)


def _in_unit(example: Example, unit: str) -> Example:
    """The answer with the unit that is shown after it; a bare share is turned into per cent."""
    answer = example.answer
    if not unit or answer.endswith("%"):
        return example
    if unit == "%":
        decimals = max(len(answer.partition(".")[2]) - 2, 0)
        answer = f"{100 * float(answer):.{decimals}f}"
    return replace(example, answer=f"{answer} {unit}")


def _fault(error: RefusedError, statement: ast.stmt | None = None) -> Fault:
    line = error.line or getattr(statement, "lineno", 1)
    return Fault(line, max(error.column, 1), error.what, error.fix, "unreadable")
