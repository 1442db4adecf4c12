"""A report as SARIF 2.1.0, the OASIS format for results of static analysis."""

import json
import os
from pathlib import PurePath
from typing import Any
from urllib.parse import quote_from_bytes

from generator.cli.report import CAUTION, Report, whole_message
from generator.problems import Level, Problem, RuleDoc

_SCHEMA = "https://json.schemastore.org/sarif-2.1.0.json"
_LEVELS = {Level.ERROR: "error", Level.WARNING: "warning", Level.NOTE: "note", Level.ACCEPTED: "warning"}


def sarif_form(report: Report, version: str = "0") -> str:
    """The report as SARIF text in plain ASCII; accepted warnings are suppressed results (clause 3.35)."""
    rules = _rules(report)
    places = {rule["id"]: index for index, rule in enumerate(rules)}
    driver = {"name": "Newel", "version": version, "fullDescription": {"text": CAUTION}, "rules": rules}
    run = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "results": [_result(problem, places) for problem in report.problems],
    }
    return json.dumps({"$schema": _SCHEMA, "version": "2.1.0", "runs": [run]}, indent=2) + "\n"


def _rules(report: Report) -> list[dict[str, Any]]:
    known = [_rule(doc) for doc in report.docs]
    told = {doc.id for doc in report.docs}
    others = dict.fromkeys(problem.rule for problem in report.problems if problem.rule not in told)
    return [*known, *({"id": rule} for rule in others)]


def _rule(doc: RuleDoc) -> dict[str, Any]:
    return {
        "id": doc.id,
        "shortDescription": {"text": doc.what},
        "fullDescription": {"text": doc.why},
        "help": {
            "text": _help(doc, doc.bad, doc.good),
            "markdown": _help(doc, _fenced(doc.bad), _fenced(doc.good)),
        },
        "defaultConfiguration": {"level": _LEVELS[doc.level]},
        "properties": {"tags": [doc.subject]},
    }


def _help(doc: RuleDoc, bad: str, good: str) -> str:
    return f"{doc.what} {doc.why}\n\nBad:\n\n{bad}\n\nGood:\n\n{good}"


def _fenced(yaml: str) -> str:
    return f"```yaml\n{yaml}\n```"


def _result(problem: Problem, places: dict[str, int]) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": problem.rule,
        "ruleIndex": places[problem.rule],
        "level": _LEVELS[problem.level],
        "message": {"text": f"{whole_message(problem)}\nfix: {problem.fix}"},
        "locations": [_location(problem)] if problem.where.file else [],
        "properties": {"fix": problem.fix},
    }
    if problem.accepted:
        it = problem.accepted
        reason = f"{it.who}, until {it.until}: {it.because}"
        result["suppressions"] = [{"kind": "external", "status": "accepted", "justification": reason}]
    return result


def _location(problem: Problem) -> dict[str, Any]:
    where = problem.where
    line, column = max(where.line, 1), max(where.column, 1)
    region = {"startLine": line, "startColumn": column, "endColumn": column + max(where.length, 1)}
    found: dict[str, Any] = {
        "physicalLocation": {"artifactLocation": {"uri": _address(where.file)}, "region": region}
    }
    if problem.step:
        found["logicalLocations"] = [{"name": problem.step, "kind": "step"}]
    return found


def _address(file: str) -> str:
    """A file's name as a reference, relative where the file is; a name that is no text keeps its bytes."""
    if PurePath(file).is_absolute():
        return PurePath(file).as_uri()
    return quote_from_bytes(os.fsencode(file))
