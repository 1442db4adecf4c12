"""Values that come from formulas, each knowing where its inputs came from."""

from generator.sums.known import Known
from generator.sums.limits import Passed, answer_limit, names_answer, passed_limits
from generator.sums.resolve import work_out
from generator.sums.settings import settings_problems
from generator.sums.sum import Given, Sum, Sums

__all__ = [
    "Given",
    "Known",
    "Passed",
    "Sum",
    "Sums",
    "answer_limit",
    "names_answer",
    "passed_limits",
    "settings_problems",
    "work_out",
]
