"""What a formula's page shows that is read off the formula itself: MathML, turned round, and its code."""

import hashlib
from dataclasses import replace

from generator.formulas import Formula
from generator.formulas.inverse import solve_for
from generator.outputs.javascript import formula_functions
from generator.outputs.mathml import formula_mathml, solved_mathml
from generator.views.calculator import CalculatorView, SolvedView


def with_formula(view: CalculatorView, formula: Formula) -> CalculatorView:
    """Return the view with the formula, the formula turned round, and its code."""
    solved = tuple(
        SolvedView(solve_for(formula, name).wanted.means, solved_mathml(formula, name)) for name in view.solve
    )
    return replace(view, mathml=formula_mathml(formula), solved=solved, code=formula_code(formula))


def formula_code(formula: Formula) -> str:
    """Return six figures that change when anything that the formula works out with changes."""
    text = formula_functions(formula) + repr(formula.inputs)
    return hashlib.sha256(text.encode()).hexdigest()[:6].upper()
