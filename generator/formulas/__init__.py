"""What can be calculated: formulas recorded once as a tape, from which everything else is read."""

from generator.formulas.errors import FormulaError
from generator.formulas.formula import (
    Answer,
    Example,
    Formula,
    Naive,
    Requirement,
    check_examples,
)
from generator.formulas.inputs import AnyInput, Choice, Input, Rows, Sizes
from generator.formulas.library import FIELDS, LIBRARY, find_formula
from generator.formulas.tape import Tape

__all__ = [
    "FIELDS",
    "LIBRARY",
    "Answer",
    "AnyInput",
    "Choice",
    "Example",
    "Formula",
    "FormulaError",
    "Input",
    "Naive",
    "Requirement",
    "Rows",
    "Sizes",
    "Tape",
    "check_examples",
    "find_formula",
]
