"""The report page says what stands, what is lived with, how far the walk went and what nobody looked at."""

import datetime
from pathlib import Path

from generator.outputs.address_links import AddressBook
from generator.outputs.pages.checking import report_anchors, report_page
from generator.pipeline import Checked, check
from generator.problems import Level
from generator.reading import open_folder, read_lab
from generator.views.filling.report import report_view, role_words
from generator.views.filling.summary import summary_of
from generator.views.report import ReportView

ROOT = Path(__file__).parents[2]


def _checked(folder: str) -> Checked:
    return check(read_lab(open_folder(ROOT / folder, folder)), datetime.date(2026, 11, 25))


def _view(checked: Checked) -> ReportView:
    assert checked.lab is not None
    summaries = map(summary_of, checked.studies.values())
    return report_view(checked.problems, checked.not_made, summaries, role_words(checked.lab.lab))


def test_findings_stand_the_gravest_first_and_accepted_ones_apart() -> None:
    checked = _checked("procedures")
    view = _view(checked)
    levels = [finding.level for finding in view.findings]
    assert levels == sorted(levels, key=["error", "warning", "note"].index)
    assert len(view.accepted) == checked.count(Level.ACCEPTED) > 0
    assert len(view.accepted) + len(view.findings) == len(checked.problems)
    first = view.accepted[0]
    assert "by the course instructor until 30 June 2027" in first.accepted and first.step is not None


def test_the_walk_is_counted_and_its_time_told() -> None:
    """61 steps of 195.7 min: 88.6 up to the only pause and 107.1 behind it, by the steps' own times."""
    checked = _checked("procedures")
    row = next(row for row in _view(checked).walked if row.procedure.address == "procedures/copper-the-holes")
    walk = checked.studies["copper-the-holes"].walk
    assert (row.steps, row.moments) == ("61", str(len(walk.moments)))
    paths = {moment.path for moment in walk.moments} | set(walk.paths)
    assert row.paths == str(len(paths))
    assert row.whole == "3\u00a0h\u00a016\u00a0min"
    assert row.longest == "1\u00a0h\u00a047\u00a0min, set-sum to find-marks"


def test_what_was_not_looked_at_is_said() -> None:
    view = _view(_checked("tests/labs/resin"))
    assert any("without a time" in line for line in view.blind)
    assert any("act" in line for line in view.blind)
    assert view.not_made and all("declares no" in line.why for line in view.not_made)


def test_a_report_on_nothing_is_a_page_too() -> None:
    view = report_view((), {})
    assert view.total == "" and view.walked == ()
    page = report_page(view, AddressBook({"checks/report": report_anchors(view)}))
    assert [section.anchor for section in page.sections] == ["page_top", "blind"]
