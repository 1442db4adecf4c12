"""What a rule is: its document, and where it looks."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from generator.problems import Problem, RuleDoc
from generator.study import LabStudy, Study


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule looks once into a lab, once into each procedure, or is found on another floor (`found_by`)."""

    doc: RuleDoc
    in_lab: Callable[[LabStudy], Iterable[Problem]] | None = None
    in_procedure: Callable[[Study], Iterable[Problem]] | None = None
    found_by: str = ""

    def can_run(self, study: LabStudy) -> bool:
        """Whether the nouns that the rule needs are there."""
        return all(has_noun(study, noun) for noun in self.doc.needs)


def has_noun(study: LabStudy, noun: str) -> bool:
    """Whether a lab, or a procedure in it, has a noun that a rule can need."""
    if noun == "english":
        return study.lab.lab.language.split("-")[0] == "en"
    if noun == "sessions":
        return bool(study.lab.lab.sessions)
    if noun in ("part", "cards", "limits"):
        return not isinstance(study, Study) or bool(getattr(study.procedure, noun))
    return bool(getattr(study.lab, noun))
