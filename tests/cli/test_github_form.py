"""Workflow commands. How signs are escaped: GitHub's own runner toolkit, command.ts, from memory:
% CR LF in a message; these and : and , in a property."""

from dataclasses import replace

from generator.cli.github_form import github_form
from generator.cli.report import Report
from generator.problems import Location
from tests.cli.examples import LATE, REPORT, WET


def test_one_command_a_problem_then_the_counts() -> None:
    assert github_form(REPORT).splitlines() == [
        "::error file=procedures/copper-the-holes.yml,line=204,col=9,endColumn=10,"
        "title=error[arrives-wet] step black-in::"
        "the board is still wet when it enters graphite (station 3), which takes only dry parts"
        "%0Afix: put a `do: dry` step and an inspection between rinse-2 and black-in",
        "::warning file=procedures/copper-the-holes.yml,line=205,col=14,endColumn=38,"
        "title=warning[too-late] step black-in::"
        "10 min go by, 8 min are the most, on the path: after see-pink failed once"
        " (and 4 more that follow from this)%0Afix: shorten the mend, or 50 %25 of it",
        "1 error, 1 warning, 0 notes, 1 accepted",
        "walked: 2 procedures and 1 class, 122 steps, 26 paths",
        "not made for want of cards: card-too-small, card-stage-unknown",
        "not made for want of part or residues: ends-dirty",
        "A checker proves only what is declared.",
    ]


def test_accepted_warnings_are_notices_when_asked_for() -> None:
    assert "::notice file=procedures/lab.yml,line=3" in github_form(REPORT, accepted=True)


def test_a_message_cannot_start_a_command_of_its_own() -> None:
    sly = replace(WET, message="a\n::stop-commands::x\r::error::y")
    command = github_form(Report((sly,))).splitlines()[0]
    assert command.endswith("::a%0A::stop-commands::x%0D::error::y%0Afix: " + WET.fix)


def test_a_file_name_cannot_bring_facts_of_its_own() -> None:
    sly = replace(LATE, where=Location("a,line=9::b%.yml", 2, 3))
    assert "file=a%2Cline=9%3A%3Ab%25.yml,line=2,col=3," in github_form(Report((sly,)))
