"""What a check has to tell, as data: problems, the texts they quote, what was walked, what was not made."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from generator.problems import Level, Problem, RuleDoc

CAUTION = "A checker proves only what is declared."


@dataclass(frozen=True, slots=True)
class Walked:
    """How many procedures, classes, steps and paths were walked, and which were too long to finish."""

    procedures: int = 0
    classes: int = 0
    steps: int = 0
    paths: int = 0
    unfinished: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Report:
    """What the forms of a report are made from; `walked` is None where the lab was not understood."""

    problems: tuple[Problem, ...]
    texts: Mapping[str, str] = field(default_factory=dict)
    walked: Walked | None = None
    not_made: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    docs: tuple[RuleDoc, ...] = ()

    def count(self, level: Level) -> int:
        """How many problems of a level."""
        return sum(problem.level is level for problem in self.problems)

    def listed(self, accepted: bool) -> Iterable[Problem]:
        """The problems to list one by one: all, or all but those that are accepted."""
        return (problem for problem in self.problems if accepted or problem.level is not Level.ACCEPTED)


def whole_message(problem: Problem) -> str:
    """The message with its path and what follows, for forms that have no line of their own for these."""
    path = f", on the path: {problem.path}" if problem.path else ""
    follows = f" (and {problem.follows} more that follow from this)" if problem.follows else ""
    return f"{problem.message}{path}{follows}"
