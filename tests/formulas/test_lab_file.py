"""A lab's own formulas, read from their text; nothing of it may run."""

import time
from pathlib import Path
from typing import Any

import pytest

from generator.formulas import FormulaError, Rows, Sizes, check_examples
from generator.formulas.lab_file import read_formulas
from generator.units import Quantity

RESIN = '''"""Sums of the casting room."""


def mix_ratio(resin, parts_a=100, parts_b=32):
    """Mass of part B for a mass of part A.

    Decides: how much hardener to weigh. Unit: as the resin.
    Source: the ratio on the supplier's can, invented for this example.

    >>> round(mix_ratio(182), 2)
    58.24
    """
    return resin * parts_b / parts_a
'''
SOIL = '''"""Sums of the soils bench."""


def water_content(wet, dry, tin):
    """Mass of water over mass of dry soil, from three weighings of one tin.

    Decides: one point on the line. Shown in %.
    Source: the definition.

    >>> round(100 * water_content(46.20, 39.80, 12.40), 2)
    23.36
    """
    return (wet - dry) / (dry - tin)
'''


def test_a_formula_with_the_unit_of_an_input() -> None:
    read = read_formulas(RESIN, "formulas.py")
    assert read.faults == ()
    (formula,) = read.formulas
    assert formula.name == "mix_ratio"
    assert formula.title == "Mass of part B for a mass of part A"
    assert formula.decides == "how much hardener to weigh"
    assert formula.source == "the ratio on the supplier's can, invented for this example"
    assert formula.answer.like == "resin"
    assert check_examples(formula) == ()
    assert formula.evaluate({"resin": Quantity(182, "g")}) == Quantity(58.24, "g")
    assert formula.evaluate({"resin": Quantity(0.182, "kg")}).unit == "kg"
    assert formula.evaluate({"resin": 200, "parts_b": 50}) == Quantity(100, "")


def test_a_formula_shown_in_percent() -> None:
    (formula,) = read_formulas(SOIL, "formulas.py").formulas
    assert formula.decides == "one point on the line"
    assert check_examples(formula) == ()
    found = formula.evaluate(
        {name: Quantity(n, "g") for name, n in (("wet", 46.2), ("dry", 39.8), ("tin", 12.4))}
    )
    assert (found.unit, round(found.number, 2)) == ("%", 23.36)


@pytest.mark.parametrize(("worked", "decimals"), [("58.24", 2), ("58.2", 1), ("58", 0)])
def test_an_answer_is_shown_as_finely_as_its_worked_example(worked: str, decimals: int) -> None:
    text = RESIN.replace("182), 2", f"182), {decimals}").replace("58.24", worked)
    (formula,) = read_formulas(text, "formulas.py").formulas
    assert formula.answer.decimals == decimals


def test_a_share_may_be_tested_as_it_is() -> None:
    bare = SOIL.replace(
        "round(100 * water_content(46.20, 39.80, 12.40), 2)", "round(water_content(46.2, 39.8, 12.4), 4)"
    )
    (formula,) = read_formulas(bare.replace("23.36", "0.2336"), "formulas.py").formulas
    assert formula.examples[0].answer == "23.36 %"
    assert check_examples(formula) == ()


def test_values_of_one_kind_are_brought_to_one_unit() -> None:
    (formula,) = read_formulas(SOIL, "formulas.py").formulas
    mixed = {"wet": Quantity(46.2, "g"), "dry": Quantity(0.0398, "kg"), "tin": Quantity(12400, "mg")}
    assert formula.evaluate(mixed).number == pytest.approx(23.3577, rel=1e-5)


def test_the_unit_of_the_answer_is_the_unit_of_what_goes_in() -> None:
    weight, heaped, drill, _ = read_formulas(RICH, "formulas.py").formulas
    assert weight.evaluate({"mass": Quantity(0.003, "kg")}) == Quantity(14.715, "g")
    rows: list[Any] = [{"n": 2, "w": Quantity(3, "g")}, {"n": 1, "w": Quantity(0.004, "kg")}]
    assert heaped.evaluate({"rows": rows}).number == pytest.approx(10, rel=1e-12)
    stock = [Quantity(0.8, "mm"), Quantity(900, "um")]
    assert drill.evaluate({"hole": Quantity(0.81, "mm"), "drills": stock}).number == pytest.approx(0.9)


def test_a_share_goes_in_as_a_share() -> None:
    (formula,) = read_formulas("def part(whole, share):\n    return whole * share\n", "formulas.py").formulas
    assert formula.evaluate({"whole": Quantity(200, "g"), "share": Quantity(5, "%")}).number == 10


def test_nothing_comes_out_of_impossible_numbers() -> None:
    (formula,) = read_formulas(SOIL, "formulas.py").formulas
    with pytest.raises(FormulaError, match="nothing comes out of these numbers"):
        formula.evaluate({"wet": 1, "dry": 1, "tin": 1})


RICH = '''"""More of the language."""

from generator.formulas.words import choose, next_size_up, smallest, total

G = 9.81


def _half(x, of=2):
    return x / of


def weight(mass):
    """Weight of a mass. Unit: g.

    >>> round(weight(3), 2)
    14.71
    """
    half = _half(mass)
    return half * G


def heaped(rows):
    """Total of rows.

    >>> heaped([{"n": 2, "w": 3}, {"n": 1, "w": 4}])
    10.0
    """
    return total(rows, lambda row: row.n * row.w)


def drill(hole, drills):
    """Next drill.

    >>> drill(0.81, [0.8, 0.85, 0.9])
    0.85
    """
    return next_size_up(hole, drills)


def tins(mass):
    """How many tins.

    >>> tins(mass=7)
    3.0
    """
    return choose(mass > 0, smallest(1, 10, lambda i: i * i > mass), 0)
'''


def test_the_whole_language() -> None:
    read = read_formulas(RICH, "formulas.py")
    assert read.faults == ()
    assert [formula.name for formula in read.formulas] == ["weight", "heaped", "drill", "tins"]
    weight, heaped, drill, _ = read.formulas
    assert weight.answer.unit == "g"
    assert weight.evaluate({"mass": Quantity(3, "g")}).unit == "g"
    assert isinstance(heaped.inputs[0], Rows)
    assert [column.name for column in heaped.inputs[0].columns] == ["n", "w"]
    assert isinstance(drill.inputs[1], Sizes)
    for formula in read.formulas:
        assert check_examples(formula) == ()


REFUSED = [
    ("import os", 1, 1, "`import` cannot be recorded"),
    ("from math import sqrt", 1, 1, "`import` cannot be recorded"),
    ("open('x', 'w')", 1, 1, "`expr` cannot be recorded"),
    ("class A: pass", 1, 1, "`classdef` cannot be recorded"),
    ("@cache\ndef f(x): return x", 1, 2, "a decorator cannot be recorded"),
    ("def f(*x): return 1", 1, 1, "`f` takes inputs without a name"),
    ("def f(x): return max(x, 1)", 1, 18, "`max` cannot be recorded"),
    (
        "def f(x): return __import__('os').system('true')",
        1,
        18,
        "`__import__('os').system` cannot be recorded",
    ),
    ("def f(x): return x.__class__", 1, 18, "`x.__class__` cannot be recorded"),
    ("def f(x): return math.sqrt(x)", 1, 18, "`math.sqrt` cannot be recorded"),
    ("def f(x): return x ** 0.5", 1, 18, "a power other than 2, 3 or 4 cannot be recorded"),
    ("def f(x): return x if x > 1 else 2", 1, 18, "`if` cannot be recorded"),
    ("def f(x):\n    if x > 1:\n        return 2\n    return x", 2, 5, "`if` cannot be recorded"),
    ("def f(x):\n    for i in x:\n        pass", 2, 5, "`for` cannot be recorded"),
    ("def f(x):\n    while x: pass", 2, 5, "`while` cannot be recorded"),
    ("def f(x):\n    x += 1\n    return x", 2, 5, "`+=` cannot be recorded"),
    ("def f(x):\n    import os\n    return x", 2, 5, "`import` cannot be recorded"),
    ("def f(x): return sum([x, x])", 1, 18, "`sum` cannot be recorded"),
    ("def f(x): return [x][0]", 1, 18, "`[ ]` cannot be recorded"),
    ("def f(x): return x // 2", 1, 18, "`//` cannot be recorded"),
    ("def f(x): return x == 2", 1, 18, "`==` cannot be recorded"),
    ("def f(x): return 1 < x < 2", 1, 18, "`1 < x < 2` cannot be recorded"),
    ("def f(x): return not x", 1, 18, "`not` cannot be recorded"),
    ("def f(x): return round(x)", 1, 18, "`round` cannot be recorded"),
    ("def f(x): return 'a' * x", 1, 18, "`'a'` is no number for a formula"),
    ("def f(x): return True * x", 1, 18, "`True` is no number for a formula"),
    ("def f(x): return 1e999 * x", 1, 18, "`1e309` is no number for a formula"),
    ("def f(x): return y", 1, 18, "`y` is no input and no value worked out before"),
    ("def f(x): return f(x)", 1, 20, "this goes too deep or too far"),
    ("def f(x='a'): return x", 1, 9, "`'a'` is no number for a formula"),
    ("def f(x): pass", 1, 11, "`pass` cannot be recorded"),
    ("def f(x):\n    '''F.'''", 1, 1, "`f` returns nothing"),
    (
        "def f(x):\n    '''F. Unit: blorp.'''\n    return x",
        1,
        1,
        "`blorp` is no unit that this lab's tools know",
    ),
    (
        "def f(x):\n    '''F. Unit: as the y.'''\n    return x",
        1,
        1,
        "the unit is said to be as `y`, which is no input",
    ),
    ("def plating_time(x): return x", 1, 1, "the tool has a formula `plating_time` of its own"),
    ("def f(x): return x +", 1, 21, "not Python: invalid syntax"),
    ("def f(µ): return µ * max(1, 2)", 1, 22, "`max` cannot be recorded"),
]


@pytest.mark.parametrize(("text", "line", "column", "message"), REFUSED, ids=lambda value: str(value)[:40])
def test_what_is_no_word_is_refused_at_its_place(text: str, line: int, column: int, message: str) -> None:
    faults = [fault for fault in read_formulas(text, "formulas.py").faults if fault.rule == "unreadable"]
    assert [(fault.line, fault.column, fault.message) for fault in faults] == [(line, column, message)]
    assert faults[0].fix


def test_a_formula_without_an_example_is_told() -> None:
    read = read_formulas("\n\ndef twice(x):\n    return 2 * x\n", "formulas.py")
    (fault,) = read.faults
    assert (fault.line, fault.rule) == (3, "formula-untested")
    assert fault.message == "`twice` has no worked example"
    assert fault.fix == "write >>> round(twice(...), 2) and its answer into its docstring"
    assert [formula.name for formula in read.formulas] == ["twice"]


def test_an_example_that_disagrees_is_told_at_its_line() -> None:
    read = read_formulas(RESIN.replace("58.24", "58.42"), "formulas.py")
    (fault,) = read.faults
    assert (fault.line, fault.rule) == (10, "formula-disagrees")
    assert fault.message == "`mix_ratio`: the example says 58.42, and 58.24 comes out"


@pytest.mark.parametrize(
    ("asked", "answer"),
    [
        ("round(mix_ratio(182), n)", "58.24"),
        ("mix_ratio(", "1"),
        ("mix_ratio(182)", "much"),
        ("print(1)", "1"),
    ],
)
def test_an_example_that_cannot_be_read_is_told(asked: str, answer: str) -> None:
    text = RESIN.replace("round(mix_ratio(182), 2)", asked).replace("58.24", answer)
    (fault,) = read_formulas(text, "formulas.py").faults
    assert (fault.line, fault.rule) == (10, "unreadable")


HOSTILE = [
    "(" * 50_000,
    "x = " + "-" * 50_000 + "1",
    "def f(x):\n return " + "+".join(["x"] * 30_000),
    "def f0(x):\n return x+x\n"
    + "".join(f"def f{i}(x):\n return f{i - 1}(x)+f{i - 1}(x)\n" for i in range(1, 60)),
    "def f(x):\n" + " x = x*x\n" * 500 + " return x",
    "def f(x):\n" + " x = x+1\n" * 3000 + " return x",
    "def f(x): return product(1, 1e9, lambda i: i)\n",
    "\0",
    "x = " + "9" * 5000,
    "é" * 200_000,
]


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_hostile_text_is_answered_quickly(text: str) -> None:
    start = time.process_time()
    read = read_formulas(text, "formulas.py")
    assert read.faults
    assert time.process_time() - start < 3


def test_nothing_is_run(tmp_path: Path) -> None:
    target = tmp_path / "written"
    text = f"open({str(target)!r}, 'w').write('x')\n" + RESIN.replace(
        "mix_ratio(182)", f"open({str(target)!r}, 'w')"
    )
    assert read_formulas(text, "formulas.py").faults
    assert not target.exists()
