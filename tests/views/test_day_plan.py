"""The day plan of a class from a schedule as plain data."""

from generator.outputs.press.document import document_pdf
from generator.units import Clock
from generator.views.filling.day_plan import PlannedWork, day_plan_view
from generator.views.paper import PaperTable
from tests.press.demo_cards import shown


def test_the_plan_follows_the_clock() -> None:
    work = (
        PlannedWork(Clock(800), Clock(808), "Board 2", "Soak", "Soak cleaner", hands=False),
        PlannedWork(Clock(790), Clock(798), "Board 1", "Soak", "Soak cleaner"),
    )
    view = day_plan_view(shown().lab, "Thursday long lab", "2026-11-26", work)
    table = next(part for part in view.parts if isinstance(part, PaperTable))
    assert [row[0].lead for row in table.rows] == ["13:10", "13:20"]
    assert [row[2].lead for row in table.rows] == ["Board 1", "Board 2"]
    assert table.rows[1][3].text == "Soak (no hands needed)"
    assert document_pdf(view).startswith(b"%PDF")
