"""A report as JSON: what is wrong, how much of it, what was walked and what was not made."""

import json
from typing import Any

from generator.cli.report import CAUTION, Report, whole_message
from generator.problems import Level, Problem

_COUNTED = (Level.ERROR, Level.WARNING, Level.NOTE, Level.ACCEPTED)


def json_form(report: Report) -> str:
    """The report as JSON text in plain ASCII, so that no screen or pipe can spoil it."""
    data = {
        "problems": [_entry(problem) for problem in report.problems],
        "counts": {str(level): report.count(level) for level in _COUNTED},
        "walked": _walked(report),
        "not_made": {rule: list(needs) for rule, needs in report.not_made.items()},
        "caution": CAUTION,
    }
    return json.dumps(data, indent=2) + "\n"


def _entry(problem: Problem) -> dict[str, Any]:
    where = problem.where
    entry: dict[str, Any] = {
        "rule": problem.rule,
        "level": str(problem.level),
        "file": where.file,
        "line": where.line,
        "column": where.column,
        "step": problem.step,
        "message": whole_message(problem),
        "fix": problem.fix,
    }
    if problem.accepted:
        it = problem.accepted
        entry["accepted"] = {"who": it.who, "until": it.until, "because": it.because}
    return entry


def _walked(report: Report) -> dict[str, Any] | None:
    walked = report.walked
    if walked is None:
        return None
    return {
        "procedures": walked.procedures,
        "classes": walked.classes,
        "steps": walked.steps,
        "paths": walked.paths,
        "unfinished": list(walked.unfinished),
    }
