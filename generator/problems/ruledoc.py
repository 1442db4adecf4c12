"""What a rule says about itself, for the author and for the rule's page."""

from dataclasses import dataclass
from typing import Any

from generator.problems.location import Location
from generator.problems.problem import Level, Problem


@dataclass(frozen=True, slots=True)
class Example:
    """A piece of YAML and one sentence about it."""

    yaml: str
    says: str = ""


@dataclass(frozen=True, slots=True)
class RuleDoc:
    """Id, level, subject (folder), what is looked for, why it matters, a bad and a good example.

    `sometimes` is a lower level that some of its findings have; those alone can be accepted.
    `needs` names the nouns without which the rule cannot be run: a lab that lacks one is told that the
    check was not made. `source` names an outside source or says "common practice, no source".
    """

    id: str
    level: Level
    subject: str
    what: str
    why: str
    bad: str
    good: str
    needs: tuple[str, ...] = ()
    source: str = "common practice, no source"
    sometimes: Level | None = None

    def found(self, where: Location, message: str, fix: str, **more: Any) -> Problem:
        """A problem of this rule: `more` are its other fields (step, place, label, path, causes)."""
        return Problem(self.id, more.pop("level", self.level), where, message, fix, **more)
