"""Problems as people read them, letter by letter."""

import io
import re

import pytest

from generator.cli.lines import Line, Piece, plain_text, visible, wrap_line
from generator.cli.report import Report, Walked
from generator.cli.screen import show
from generator.cli.text_form import problem_lines, text_form
from generator.problems import Level, Location, Problem
from tests.cli.examples import LATE, LIVED_WITH, REPORT, TEXT, WET

WET_SHOWN = """\
error[arrives-wet]: the board is still wet when it enters graphite (station 3), which takes only dry parts
  --> procedures/copper-the-holes.yml:204:9  step black-in
   |
204|       - id: black-in
   |             ^^^^^^^^ last made wet at step rinse-2 (line 171); nothing dries it before here
   = fix: put a `do: dry` step and an inspection between rinse-2 and black-in
"""
LATE_SHOWN = """\
warning[too-late]: 10 min go by, 8 min are the most
  --> procedures/copper-the-holes.yml:205:14  step black-in
   |
205|         say: Lower the board in.
   |              ^^^^^^^^^^^^^^^^^^^
   = on the path: after see-pink failed once
   = fix: shorten the mend, or 50 % of it
   = and 4 more that follow from this
"""
LIVED_WITH_SHOWN = """\
accepted[gloves-on-clean-thing]: wet gloves touch the light table
  --> procedures/lab.yml:3:1  place light-table
   = fix: take the gloves off first
   = accepted: by instructor until 2027-06-30, because: The table counts as wet.
"""
CLOSING = """\
1 error, 1 warning, 0 notes, 1 accepted
walked: 2 procedures and 1 class, 122 steps, 26 paths
not made for want of cards: card-too-small, card-stage-unknown
not made for want of part or residues: ends-dirty
A checker proves only what is declared.
"""


def shown(problem: Problem, text: str = TEXT, width: int = 0) -> str:
    return plain_text(problem_lines(problem, text, width))


def problem_at(line: int, column: int, length: int = 1, label: str = "here") -> Problem:
    where = Location("p.yml", line, column, length)
    return Problem("a-rule", Level.NOTE, where, "message", "do it", label=label)


def test_a_problem_as_the_design_shows_it() -> None:
    assert shown(WET) == WET_SHOWN


def test_path_and_what_follows() -> None:
    assert shown(LATE) == LATE_SHOWN


def test_an_accepted_warning_says_who_until_when_and_why() -> None:
    assert shown(LIVED_WITH, "") == LIVED_WITH_SHOWN


def test_a_report_leaves_accepted_warnings_to_the_counts() -> None:
    assert plain_text(text_form(REPORT)) == f"{WET_SHOWN}\n{LATE_SHOWN}\n{CLOSING}"


def test_a_report_lists_accepted_warnings_when_asked() -> None:
    every = "\n".join((WET_SHOWN, LATE_SHOWN, LIVED_WITH_SHOWN, CLOSING))
    assert plain_text(text_form(REPORT, accepted=True)) == every


def test_a_lab_that_was_not_understood_is_not_called_clean() -> None:
    assert plain_text(text_form(Report(()))) == (
        "0 errors, 0 warnings, 0 notes, 0 accepted\n"
        "nothing was walked: the lab's own files could not be understood, so most checks were not made\n"
        "A checker proves only what is declared.\n"
    )


def test_a_procedure_too_long_to_walk_is_named() -> None:
    long = Report((), walked=Walked(1, 0, 900, 1, ("anneal",)))
    assert "not walked to the end, being too long: anneal\n" in plain_text(text_form(long))


@pytest.mark.parametrize(
    ("row", "column", "length", "marked"),
    [
        ("  - {id: rinse-2, do: rinse}", 5, 1, "rinse-2"),
        ("  help: {emergency: ring}", 9, 1, "emergency"),
        ("  for: 8 mins", 8, 6, "8 mins"),
        ("  for: 8 mins", 8, 99, "8 mins"),
        ("plain", 1, 1, "p"),
        ("short", 40, 1, ""),
        ("stage:", 1, 1, "stage"),
    ],
)
def test_carets_stand_under_what_is_meant(row: str, column: int, length: int, marked: str) -> None:
    quoted, carets = shown(problem_at(1, column, length), row).splitlines()[3:5]
    first, end = carets.index("^"), carets.rindex("^") + 1
    assert quoted[first:end] == marked
    assert end - first == max(len(marked), 1)


def test_carets_count_columns_of_the_screen_not_letters() -> None:
    quoted, carets = shown(problem_at(1, 4, 2), "説\u0301\tab").splitlines()[3:5]
    assert quoted == "  1| 説\u0301→ab"
    assert carets == "   |    ^^ here"


@pytest.mark.parametrize("line", [0, 3, 99])
def test_a_line_that_is_not_there_is_not_quoted(line: int) -> None:
    assert shown(problem_at(line, 1), "one\ntwo\n").splitlines()[2:] == ["   = fix: do it"]


def test_a_file_with_thousands_of_lines_keeps_its_frame() -> None:
    assert shown(problem_at(1234, 1, 2), "\n" * 1233 + "ab").splitlines()[1:] == [
        "   --> p.yml:1234:1",
        "    |",
        "1234| ab",
        "    | ^^ here",
        "    = fix: do it",
    ]


def test_signs_that_a_screen_would_obey_are_written_out() -> None:
    assert visible("a\x1b[31m\u202eb\u00a0c\td") == "a\\x1b[31m\\u202eb\u00a0c→d"


@pytest.mark.parametrize("column", [1, 60, 290])
def test_a_long_line_is_cropped_round_what_is_meant(column: int) -> None:
    row = "".join(chr(97 + i % 26) for i in range(300))
    quoted, carets = shown(problem_at(1, column, 5, ""), row, 80).splitlines()[3:5]
    assert len(quoted) <= 80
    assert quoted[carets.index("^") : carets.rindex("^") + 1] == row[column - 1 : column + 4]


def test_long_text_goes_on_under_its_beginning() -> None:
    says = Piece("put a dry step between the two steps")
    line = Line((Piece("   = ", "frame"), Piece("fix: ", "fix"), says), hang=5)
    rows = wrap_line(line, 32)
    assert plain_text(rows) == "   = fix: put a dry step between\n     the two steps\n"
    assert rows[0].pieces[:2] == line.pieces[:2]
    assert [piece.role for piece in rows[1].pieces] == [""]


def test_a_no_break_space_keeps_number_and_unit_on_one_line() -> None:
    rows = wrap_line(Line((Piece("it takes at the very most 8\u00a0min"),), hang=0), 28)
    assert [row.text for row in rows] == ["it takes at the very most", "8\u00a0min"]


class Screen(io.StringIO):
    """A stream that says it is a screen."""

    def isatty(self) -> bool:
        return True


def test_only_a_screen_gets_colour_and_the_words_stay_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv("COLUMNS", "200")
    monkeypatch.delenv("NO_COLOR", raising=False)
    screen, pipe = Screen(), io.StringIO()
    show(text_form(REPORT), screen)
    show(text_form(REPORT), pipe)
    assert "\x1b[1;31merror[arrives-wet]" in screen.getvalue()
    assert "\x1b" not in pipe.getvalue()
    assert without_colour(screen.getvalue()) == pipe.getvalue()


def test_a_screen_without_colour_loses_no_meaning(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv("COLUMNS", "200")
    monkeypatch.setenv("NO_COLOR", "1")
    screen = Screen()
    show(text_form(REPORT), screen)
    assert "error[arrives-wet]" in without_colour(screen.getvalue())
    assert "\x1b[1;31m" not in screen.getvalue()


def without_colour(text: str) -> str:
    return re.sub(r"\x1b\[[0-9;]*m", "", text)
