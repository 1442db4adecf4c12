"""Entries under `accept` that do not hold; raised where warnings are accepted."""

from generator.checks.accepted import accept_expired, accept_of_error, accept_unused

RULES = (accept_unused.RULE, accept_expired.RULE, accept_of_error.RULE)

__all__ = ["RULES", "accept_expired", "accept_of_error", "accept_unused"]
