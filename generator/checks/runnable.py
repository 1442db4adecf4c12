"""Which rules can run: those whose nouns are there."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache, lru_cache

from generator.checks.registry import RULES
from generator.checks.rule import has_noun
from generator.problems import Problem
from generator.study import LabStudy, Study


@dataclass(frozen=True, slots=True)
class Runnable:
    """What looks into a procedure, in the order of the rules; the ids of the rules that needed any noun."""

    finders: tuple[Callable[[Study], Iterable[Problem]], ...]
    ids: tuple[str, ...]


def runnable(study: LabStudy) -> Runnable:
    """The rules for which a study has what they need; each noun is looked for once, however many need it."""
    return _with(frozenset(noun for noun in _needed() if has_noun(study, noun)))


@lru_cache(maxsize=64)
def _with(nouns: frozenset[str]) -> Runnable:
    rules = [rule for rule in RULES if nouns.issuperset(rule.doc.needs)]
    finders = tuple(rule.in_procedure for rule in rules if rule.in_procedure)
    return Runnable(finders, tuple(rule.doc.id for rule in rules if rule.doc.needs))


@cache
def _needed() -> tuple[str, ...]:
    return tuple(dict.fromkeys(noun for rule in RULES for noun in rule.doc.needs))
