"""The JSON of a report: the keys that others rely on, and nothing lost on the way."""

import json

from generator.cli.json_form import json_form
from generator.cli.report import Report
from tests.cli.examples import REPORT


def test_a_problem_has_the_agreed_keys() -> None:
    assert json.loads(json_form(REPORT))["problems"][0] == {
        "rule": "arrives-wet",
        "level": "error",
        "file": "procedures/copper-the-holes.yml",
        "line": 204,
        "column": 9,
        "step": "black-in",
        "message": "the board is still wet when it enters graphite (station 3), which takes only dry parts",
        "fix": "put a `do: dry` step and an inspection between rinse-2 and black-in",
    }


def test_counts_have_four_numbers() -> None:
    assert json.loads(json_form(REPORT))["counts"] == {"error": 1, "warning": 1, "note": 0, "accepted": 1}


def test_an_accepted_warning_stays_with_its_reason() -> None:
    entry = json.loads(json_form(REPORT))["problems"][2]
    assert entry["level"] == "accepted"
    reason = {"who": "instructor", "until": "2027-06-30", "because": "The table counts as wet."}
    assert entry["accepted"] == reason


def test_path_and_what_follows_stand_in_the_message() -> None:
    assert json.loads(json_form(REPORT))["problems"][1]["message"] == (
        "10 min go by, 8 min are the most, on the path: after see-pink failed once"
        " (and 4 more that follow from this)"
    )


def test_what_was_not_made_is_told() -> None:
    told = json.loads(json_form(REPORT))
    assert told["not_made"]["ends-dirty"] == ["part", "residues"]
    assert told["walked"] == {"procedures": 2, "classes": 1, "steps": 122, "paths": 26, "unfinished": []}
    assert json.loads(json_form(Report(())))["walked"] is None


def test_the_text_is_plain_ascii() -> None:
    assert json_form(REPORT).isascii()
