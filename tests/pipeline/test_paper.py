"""Run sheets, door signs, check-off list and the print of all, from the demo lab."""

import io
from functools import cache

import pypdf
import pypdfium2
import pytest

from generator.outputs.press import fit
from generator.pipeline.cards import SetCard, set_cards
from generator.pipeline.marks import card_marks
from generator.pipeline.paper import SetPaper, print_all, set_paper
from generator.pipeline.standing import Shown
from generator.views.filling.check_off import check_off_view
from generator.views.filling.run_sheet import run_sheet_view
from generator.views.paper import PaperTable
from tests.press.demo_cards import LINE, SITE, facts, shown


@cache
def two() -> Shown:
    """The line, and a procedure that leaves something running."""
    wanted = {LINE, "reflow-a-small-board"}
    return Shown(shown().lab, tuple(one for one in shown().standings if one.id in wanted))


@cache
def paper() -> SetPaper:
    return set_paper(two(), facts())


@cache
def cards() -> tuple[SetCard, ...]:
    return set_cards(two().studies, facts(), card_marks(two(), SITE))


def text_of(pdf: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(pdf)
    pages = (document[number].get_textpage().get_text_range() for number in range(len(document)))
    return [" ".join(page.replace("\u00a0", " ").split()) for page in pages]


def file(path: str) -> list[str]:
    return text_of(next(one.content for one in paper().files if one.path == path))


def test_a_run_sheet_has_two_pages_at_most_and_the_limits() -> None:
    pages = file(f"cards/{LINE}/run-sheet.pdf")
    assert 1 <= len(pages) <= 2
    text = " ".join(pages)
    for words in ("Card issue followed", "Its check code", "Verified by", "Second person in the room"):
        assert words in text
    for limit in (
        "up to 0.70 mΩ",
        "up to 0.08 mm",
        "19 to 26 µm",
        "40 s (30 to 60 s)",
        "up to 8 min after step 42",
    ):
        assert limit in text


def test_a_run_sheet_carries_the_sums_of_the_job() -> None:
    (study,) = (study for study in two().studies if study.procedure.id == LINE)
    table = next(part for part in run_sheet_view(study, facts()).parts if isinstance(part, PaperTable))
    cells = [(cell.text or cell.lead).replace("\u00a0", " ") for row in table.rows for cell in row]
    assert cells[cells.index("Area to be plated") + 1] == "2.57 dm²"
    assert "5.0 A" in cells
    assert "54 min" in cells


def test_a_sum_bears_its_formulas_title_with_the_authors_name() -> None:
    """A bare "salt" or "found" says too little; "area" says no more than the title does."""
    rows = {
        (cell.text or cell.lead): study.procedure.id
        for study in shown().studies
        for part in run_sheet_view(study, facts()).parts
        if isinstance(part, PaperTable)
        for row in part.rows
        for cell in row
    }
    assert rows["Solid for a new bath (salt)"] == "make-up-the-copper-bath"
    assert rows["Sulfuric acid by titration with sodium hydroxide (found)"] == "titrate-the-copper-bath"
    assert "Area to be plated" in rows


def test_every_reading_of_the_procedure_has_a_blank() -> None:
    (study,) = (study for study in two().studies if study.procedure.id == LINE)
    tables = [part for part in run_sheet_view(study, facts()).parts if isinstance(part, PaperTable)]
    names = [row[1].text.partition(" (")[0] for row in tables[-1].rows]
    for step in study.procedure.steps:
        for name in step.record:
            assert str(name).replace("-", " ").capitalize() in names


def test_whose_initials_are_wanted_is_said_beside_the_room_for_them() -> None:
    (study,) = (study for study in two().studies if study.procedure.id == LINE)
    tables = [part for part in run_sheet_view(study, facts()).parts if isinstance(part, PaperTable)]
    run = next(table for table in tables if table.heads[-1] == "Initials")
    assert not [row for row in run.rows if row[-1].text.strip()]
    asked = [row[2].text for row in run.rows if "initials" in row[2].text]
    assert asked[0] == "both answers agree within 5 %; initials: Second person in the room"


def test_a_door_sign_hangs_for_each_step_that_runs_alone() -> None:
    (sign,) = paper().signs
    assert sign.card == "door-warm-jar"
    assert fit(sign).fits
    (text,) = file("cards/reflow-a-small-board/door-sign-warm-jar.pdf")
    for words in ("RUNNING UNATTENDED", "Do not switch anything", "Left at", "Back by", "extension 800"):
        assert words in text


def test_the_check_off_list_has_every_lid_and_every_look() -> None:
    view = check_off_view(two().lab)
    assert view is not None
    opening, closing = (part for part in view.parts if isinstance(part, PaperTable))
    places = two().lab.lab.places.values()
    assert {place.title for place in places if place.look} <= {row[0].text for row in opening.rows}
    assert {p.title for p in places if p.cover or p.power or p.tray} <= {row[0].text for row in closing.rows}
    assert not [row[0].text for row in opening.rows if not row[2].text.strip()]
    etch = next(row for row in closing.rows if row[0].text == "Micro-etch")
    assert etch[1].text == "vented lid on"


def test_the_print_of_all_names_the_page_and_place_of_each_card() -> None:
    made = print_all(two().lab, cards(), paper().signs)
    pages = text_of(made.content)
    covers = next(number for number, text in enumerate(pages) if "Sheets to post" not in text)
    cover = " ".join(pages[:covers])
    for number, card in enumerate(cards(), start=covers + 1):
        assert f"{number} {card.view.title}" in cover
        assert card.view.title in pages[number - 1]
    assert "Lab door" in cover
    assert "the door, while it runs" in cover
    reader = pypdf.PdfReader(io.BytesIO(made.content))
    sizes = {round(float(page.mediabox.height) / 72 * 25.4) for page in reader.pages}
    assert {297, 420} <= sizes
    assert reader.metadata is not None
    assert str(reader.metadata.title).startswith("Sheets to post")


def test_the_print_of_all_is_the_same_every_time() -> None:
    assert print_all(two().lab, cards(), paper().signs) == print_all(two().lab, cards(), paper().signs)


@pytest.mark.parametrize("kind", ["pdf", "svg"])
def test_every_card_is_set_without_a_problem(kind: str) -> None:
    assert not [problem for card in cards() for problem in card.problems]
    assert all(any(one.path.endswith(kind) for one in card.files) for card in cards())
