"""What every formula of the library must have, and what names may mean."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import generator.formulas.library as library
from generator.formulas import LIBRARY, Choice, Formula, Input, Rows, check_examples, find_formula
from generator.formulas.constants import METALS
from generator.formulas.inputs import AnyInput
from generator.formulas.library import FIELDS
from generator.formulas.settling import settle
from generator.formulas.tape import Constant, Given, Row
from generator.units import UNITS

each_formula = pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)

WANTED = """
plating_area plating_current plating_time thickness_from_charge drill_size aspect_ratio smallest_hole
make_up_solid make_up_liquid mixing_heat dilution raise_strength copper_by_edta acid_by_base
copper_correction chloride_correction additive_by_charge copper_used drag_out rinse_ratio contamination_budget
evaporation_top_up barrel_resistance copper_from_resistance coupon_thickness etch_rate holes_to_sample
anode_ratio supply_headroom
heater_warm_up neutralising_estimate container_runs registration_error annular_ring anodise_time
letter_height session_clock latest_start stagger
"""


def quantities(formula: Formula) -> Iterator[Input]:
    for each in formula.inputs:
        if isinstance(each, Input):
            yield each
        if isinstance(each, Rows):
            yield from each.columns


def test_what_is_asked_for_is_there() -> None:
    assert [name for name in WANTED.split() if name not in library.by_name()] == []
    assert len({formula.name for formula in LIBRARY}) == len(LIBRARY)
    assert sum(len(formulas) for _, formulas in FIELDS) == len(LIBRARY)


@each_formula
def test_worked_examples_agree(formula: Formula) -> None:
    assert formula.examples
    assert check_examples(formula) == ()


@each_formula
def test_it_says_all_that_a_reader_needs(formula: Formula) -> None:
    assert formula.title and formula.decides and formula.source and formula.cautions
    assert formula.title[0].isupper() and not formula.title.endswith(".")
    assert not formula.decides.endswith(".")
    for caution in formula.cautions:
        assert caution.endswith(".")
    for each in quantities(formula):
        assert each.means and each.usual and each.hard and each.because, each.name
    assert formula.name.isidentifier() and formula.name == formula.name.lower()


@each_formula
def test_ranges_stand_inside_each_other(formula: Formula) -> None:
    for each in quantities(formula):
        usual, hard, default = each.usual_window, each.hard_window, each.default_quantity
        assert usual is not None and hard is not None
        assert usual.dimension == hard.dimension == each.dimension, each.name
        assert hard.contains(usual), each.name
        assert default is None or hard.contains(default), each.name
        for unit in each.all_units:
            assert UNITS[unit].dimension.matches(each.dimension), (each.name, unit)
    for unit in formula.answer.all_units:
        assert UNITS[unit].dimension.matches(UNITS[formula.answer.unit].dimension)


@each_formula
def test_every_input_is_used_and_none_is_missing(formula: Formula) -> None:
    used: set[str] = set()
    tapes = (formula.tape, *formula.requirement_tapes)
    for tape in tapes:
        for node in tape.nodes:
            if isinstance(node, Given):
                used.add(node.name)
            if isinstance(node, Row):
                used.add(node.rows)
            used.update(filter(None, (getattr(node, "record", ""), getattr(node, "sizes", ""))))
    assert used == {each.name for each in formula.inputs}


@each_formula
def test_symbols_in_one_formula_differ(formula: Formula) -> None:
    symbols = [each.symbol for each in quantities(formula)]
    for each in formula.inputs:
        if isinstance(each, Choice):
            symbols += [field.symbol for field in each.table.fields]
    symbols += sorted({node.symbol for node in formula.tape.nodes if isinstance(node, Constant)})
    symbols.append(formula.answer.symbol)
    assert sorted(symbols) == sorted(set(symbols))


def test_one_name_has_one_dimension_symbol_and_meaning() -> None:
    """A value is looked up by name: a name with two meanings would capture the wrong number."""
    meanings: dict[str, tuple[object, ...]] = {}
    for formula in LIBRARY:
        all_inputs: list[AnyInput] = [*formula.inputs]
        all_inputs += [column for each in formula.inputs if isinstance(each, Rows) for column in each.columns]
        for each in all_inputs:
            dimension = each.dimension if isinstance(each, Input) else type(each).__name__
            meaning = (dimension, each.symbol, each.means)
            assert meanings.setdefault(each.name, meaning) == meaning, (formula.name, each.name)


def test_one_meaning_has_one_name() -> None:
    names: dict[str, str] = {}
    for formula in LIBRARY:
        for each in quantities(formula):
            assert names.setdefault(each.means, each.name) == each.name


def test_names_that_labs_write() -> None:
    """The names in the demo lab's job, its calculators and its readings."""
    known = {each.name for formula in LIBRARY for each in quantities(formula)} | {"holes"}
    job = "length width board_thickness masked count drill area contact_area coupon_area density copper"
    assert set(job.split()) <= known
    assert {"efficiency", "container", "a_board"} <= known


@each_formula
def test_staff_only_where_chemicals_are_handled(formula: Formula) -> None:
    chemical = formula.name.startswith(
        ("make_up", "mixing", "raise", "copper_c", "copper_d", "chloride", "additive")
    )
    assert (formula.who == "staff") == (chemical or formula.name == "neutralising_estimate")


def test_acid_is_never_worked_out_without_its_caution() -> None:
    for name in (
        "make_up_liquid",
        "mixing_heat",
        "raise_strength",
        "dilution",
        "dilution_by_mass",
        "dilution_by_density",
    ):
        assert any(caution.startswith("Acid into water") for caution in find_formula(name).cautions)
    assert any("safety office" in caution for caution in find_formula("container_runs").cautions)
    assert any(
        "no recipe for disposal" in caution for caution in find_formula("neutralising_estimate").cautions
    )
    assert any("supply" in caution for caution in find_formula("plating_current").cautions)


@each_formula
def test_the_wrong_sum_differs_and_says_why(formula: Formula) -> None:
    if formula.naive is None:
        return
    assert formula.naive.forgets and not formula.naive.forgets.endswith(".")
    differs = []
    for example in formula.examples:
        wrong = formula.evaluate_naive(example.given)
        assert wrong is not None
        differs.append(wrong.number != formula.evaluate(example.given).number)
    other = {"throwing_power": "80 %"} if formula.name == "barrel_resistance" else {}
    if other:
        given = {**formula.examples[0].given, **other}
        wrong = formula.evaluate_naive(given)
        differs.append(wrong is not None and wrong.number < formula.evaluate(given).number)
    assert any(differs)


def test_metals_have_a_source_each() -> None:
    for row in METALS.rows:
        assert row.source
        record = METALS.record(row.name)
        assert record is not None
        assert settle((Choice("metal", "", "", METALS),), {"metal": row.name}, "").records["metal"] == record
    assert METALS.record("lead") is None


def test_formulas_take_their_words_from_one_place() -> None:
    """No built-in or library function is in reach of a formula's text."""
    folder = Path(str(library.__file__)).parent
    for file in folder.glob("*.py"):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Import):
                assert all(name.name != "math" for name in node.names), file
            if isinstance(node, ast.ImportFrom):
                assert node.module and not node.module.startswith("math"), file
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                assert node.func.id not in {"sum", "max", "min", "round", "abs", "float", "int"}, (
                    file,
                    node.lineno,
                )
