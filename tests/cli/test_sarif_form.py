"""SARIF: what OASIS SARIF 2.1.0 asks of a log, written out here clause by clause, from memory."""

import json
from dataclasses import replace
from typing import Any

import jsonschema
import pytest

from generator.checks import docs
from generator.cli.report import Report
from generator.cli.sarif_form import sarif_form
from generator.problems import Location
from tests.cli.examples import REPORT, WET


def holds(required: tuple[str, ...], **properties: Any) -> dict[str, Any]:
    """An object with these members and no others."""
    shape = {"type": "object", "required": list(required), "properties": properties}
    return {**shape, "additionalProperties": False}


def listed(item: dict[str, Any]) -> dict[str, Any]:
    return {"type": "array", "items": item}


TEXT = {"type": "string"}
COUNT = {"type": "integer", "minimum": 1}
LEVEL = {"enum": ["none", "note", "warning", "error"]}
BAG = {"type": "object", "properties": {"tags": {**listed(TEXT), "uniqueItems": True}}}  # 3.8
MESSAGE = holds(("text",), text=TEXT, markdown=TEXT)  # 3.11, 3.12
REGION = holds(("startLine",), startLine=COUNT, startColumn=COUNT, endColumn=COUNT)  # 3.30
PHYSICAL = holds(("artifactLocation",), artifactLocation=holds(("uri",), uri=TEXT), region=REGION)  # 3.29
LOGICAL = holds((), name=TEXT, kind=TEXT)  # 3.33
LOCATION = holds((), physicalLocation=PHYSICAL, logicalLocations=listed(LOGICAL))  # 3.28
SUPPRESSION = holds(  # 3.35
    ("kind",),
    kind={"enum": ["inSource", "external"]},
    status={"enum": ["accepted", "underReview", "rejected"]},
    justification=TEXT,
)
RESULT = holds(  # 3.27
    ("message",),
    ruleId=TEXT,
    ruleIndex={"type": "integer", "minimum": 0},
    level=LEVEL,
    message=MESSAGE,
    locations=listed(LOCATION),
    suppressions={**listed(SUPPRESSION), "uniqueItems": True},
    properties=BAG,
)
RULE = holds(  # 3.49
    ("id",),
    id=TEXT,
    shortDescription=MESSAGE,
    fullDescription=MESSAGE,
    help=MESSAGE,
    defaultConfiguration=holds((), level=LEVEL),
    properties=BAG,
)
DRIVER = holds(  # 3.19
    ("name",), name=TEXT, version=TEXT, fullDescription=MESSAGE, rules={**listed(RULE), "uniqueItems": True}
)
RUN = holds(  # 3.14
    ("tool",),
    tool=holds(("driver",), driver=DRIVER),
    columnKind={"enum": ["utf16CodeUnits", "unicodeCodePoints"]},
    results=listed(RESULT),
)
LOG = holds(  # 3.13
    ("version", "runs"), **{"$schema": TEXT, "version": {"const": "2.1.0"}, "runs": listed(RUN)}
)


def run_of(report: Report) -> dict[str, Any]:
    log = json.loads(sarif_form(report, "1.2.3"))
    jsonschema.validate(log, LOG)
    run: dict[str, Any] = log["runs"][0]
    return run


def test_a_log_is_valid() -> None:
    assert run_of(REPORT)["tool"]["driver"]["version"] == "1.2.3"


def test_a_log_with_every_rule_is_valid() -> None:
    rules = run_of(Report((), docs=docs()))["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == [doc.id for doc in docs()]


def test_a_wrong_log_would_be_seen() -> None:
    log = json.loads(sarif_form(REPORT))
    log["runs"][0]["results"][0]["level"] = "accepted"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(log, LOG)


def test_a_result_says_where_and_points_at_its_rule() -> None:
    run = run_of(REPORT)
    first = run["results"][0]
    assert run["tool"]["driver"]["rules"][first["ruleIndex"]]["id"] == first["ruleId"] == "arrives-wet"
    assert first["locations"] == [
        {
            "physicalLocation": {
                "artifactLocation": {"uri": "procedures/copper-the-holes.yml"},
                "region": {"startLine": 204, "startColumn": 9, "endColumn": 10},
            },
            "logicalLocations": [{"name": "black-in", "kind": "step"}],
        }
    ]


def test_every_rule_of_a_result_is_listed_once() -> None:
    rules = [rule["id"] for rule in run_of(REPORT)["tool"]["driver"]["rules"]]
    assert rules == ["arrives-wet", "too-late", "gloves-on-clean-thing"]


def test_an_accepted_warning_is_a_suppressed_result() -> None:
    result = run_of(REPORT)["results"][2]
    assert result["level"] == "warning"
    [suppression] = result["suppressions"]
    assert suppression["status"] == "accepted"
    assert suppression["justification"] == "instructor, until 2027-06-30: The table counts as wet."


@pytest.mark.parametrize(
    ("file", "uri"),
    [
        ("a b/ü.yml", "a%20b/%C3%BC.yml"),
        ("a:b.yml", "a%3Ab.yml"),
        ("/lab/p.yml", "file:///lab/p.yml"),
        ("bad\udcff.yml", "bad%FF.yml"),
    ],
)
def test_a_file_name_becomes_a_reference(file: str, uri: str) -> None:
    [result] = run_of(Report((replace(WET, where=Location(file, 1, 1)),)))["results"]
    assert result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == uri


def test_a_problem_without_a_file_has_no_place() -> None:
    [result] = run_of(Report((replace(WET, where=Location("", 0, 0, 0)),)))["results"]
    assert result["locations"] == []
