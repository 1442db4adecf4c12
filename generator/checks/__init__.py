"""The rules: one a module, by subject; each finds problems in a study and judges nothing else."""

from generator.checks.registry import RULES, docs
from generator.checks.rule import Rule
from generator.checks.runnable import runnable

__all__ = ["RULES", "Rule", "docs", "runnable"]
