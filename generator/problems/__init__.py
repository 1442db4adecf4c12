"""What can be said about an author's text: where, how grave, what was found, how to mend it."""

from generator.problems.errors import NewelError
from generator.problems.location import Location
from generator.problems.problem import MISSING, Accepted, Cause, Level, Problem, by_place, misplaced, missing
from generator.problems.ruledoc import Example, RuleDoc

__all__ = [
    "MISSING",
    "Accepted",
    "Cause",
    "Example",
    "Level",
    "Location",
    "NewelError",
    "Problem",
    "RuleDoc",
    "by_place",
    "misplaced",
    "missing",
]
