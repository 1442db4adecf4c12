"""Run sheets, check-off lists and the print of all: pages, letters, tags, the same bytes every time."""

import io
from dataclasses import replace
from typing import Any

import pypdf
import pypdfium2
import pytest

from generator.outputs.press.document import document_pdf, document_sheets
from generator.outputs.press.drawing import Ruled
from generator.problems import NewelError
from generator.views.paper import BLANK, TICK, PaperBlanks, PaperCell, PaperTable, PaperView, PaperWords


def a_row(number: int, text: str = "Lower the board in.") -> tuple[PaperCell, ...]:
    return PaperCell(lead=str(number)), PaperCell(text, "PUT IN"), BLANK, TICK


def a_paper(rows: int, **changes: Any) -> PaperView:
    table = PaperTable("The run", ("Step", "What", "Done", ""), (1, 6, 2, 1), tuple(map(a_row, range(rows))))
    parts = (PaperBlanks(("Name", "Date")), PaperWords("once.", "READ"), table)
    plain = PaperView("x", "Run sheet", "2026-11-25", address="https://x.example/", parts=parts)
    return replace(plain, **changes)


def text_of(pdf: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(pdf)
    return [document[number].get_textpage().get_text_range() for number in range(len(document))]


def test_a_short_list_is_one_page_with_comfortable_letters() -> None:
    (sheet,) = document_sheets(a_paper(5))
    assert {mark.cap for mark in sheet.marks if isinstance(mark, Ruled)} == {2.6}


def test_letters_shrink_to_two_millimetres_before_a_third_page() -> None:
    sheets = document_sheets(a_paper(68))
    (cap,) = {mark.cap for sheet in sheets for mark in sheet.marks if isinstance(mark, Ruled)}
    assert len(sheets) == 2
    assert 2.0 <= cap < 2.6
    assert len(document_sheets(a_paper(200))) > 2


@pytest.mark.parametrize("rows", [150, 200, 260])
def test_letters_that_save_no_page_are_not_made_smaller(rows: int) -> None:
    view = a_paper(rows)
    sheets = document_sheets(view)
    assert len(sheets) == len(document_sheets(replace(view, letters=2.0))) > view.most_pages
    (cap,) = {mark.cap for sheet in sheets for mark in sheet.marks if isinstance(mark, Ruled)}
    assert cap == 2.6 or len(document_sheets(replace(view, most_pages=9, letters=cap + 0.1))) > len(sheets)


def test_no_last_page_holds_a_few_lines_that_smaller_letters_would_save() -> None:
    """For every length: either the last page is filled to three tenths, or no letters are small enough."""
    for rows in range(24, 60):
        view = a_paper(rows)
        sheets = document_sheets(view)
        caps = {mark.cap for sheet in sheets for mark in sheet.marks if isinstance(mark, Ruled)}
        lowest = max(mark.y + sum(mark.heights) for mark in sheets[-1].marks if isinstance(mark, Ruled))
        if len(sheets) == 2 and lowest < 0.25 * sheets[-1].height:
            assert len(document_sheets(replace(view, letters=2.0))) == 2, rows
        assert len(caps) == 1


def test_no_row_stands_alone_on_a_page() -> None:
    who = PaperTable("Who", ("At",), (1.0,), tuple((PaperCell(f"row {n}"),) for n in range(5)))
    for rows in range(18, 28):
        view = a_paper(rows)
        pages = text_of(document_pdf(replace(view, parts=(*view.parts, who, *a_paper(20).parts))))
        counts = [text.count("row ") for text in pages]
        assert sum(counts) == 5
        assert 1 not in counts, rows


def test_a_small_table_is_not_cut() -> None:
    """Three rows that do not all fit at the foot go to the next page together."""
    for rows in range(20, 40):
        tail = PaperTable(
            "Latest moments", ("At",), (1.0,), tuple((PaperCell(f"row {n}"),) for n in range(3))
        )
        view = a_paper(rows)
        pages = text_of(document_pdf(replace(view, parts=(*view.parts, tail))))
        holding = [text for text in pages if "Latest moments" in text]
        assert len(holding) == 1
        assert all(f"row {n}" in holding[0] for n in range(3)), rows


def test_every_page_says_which_it_is_and_every_row_is_printed_once() -> None:
    pages = text_of(document_pdf(a_paper(60)))
    assert len(pages) == 2
    for number, text in enumerate(pages, start=1):
        assert f"{number}/2" in text
        assert "What" in text
    assert sum(text.count("PUT IN") for text in pages) == 60


def test_nothing_is_below_the_margin() -> None:
    for sheet in document_sheets(a_paper(120)):
        for mark in sheet.marks:
            if isinstance(mark, Ruled):
                assert mark.y + sum(mark.heights) <= sheet.height - 8


def test_it_is_tagged_titled_and_the_same_every_time() -> None:
    view = a_paper(60, status="posted")
    first = document_pdf(view)
    document_pdf.cache_clear()
    assert document_pdf(view) == first
    root: Any = pypdf.PdfReader(io.BytesIO(first)).trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"]
    assert pypdf.PdfReader(io.BytesIO(first)).metadata.title == "Run sheet"  # type: ignore[union-attr]
    assert b"pdfuaid" in first or "/StructTreeRoot" in root


def test_a_draft_says_so() -> None:
    assert "DRAFT. Not for use at the bench." in text_of(document_pdf(a_paper(3)))[0]
    assert "DRAFT" not in text_of(document_pdf(a_paper(3, status="posted")))[0]


def test_a_row_longer_than_a_page_is_refused() -> None:
    endless = PaperTable("x", ("a",), (1.0,), ((PaperCell("Read the slip again. " * 900),),))
    with pytest.raises(NewelError) as caught:
        document_pdf(a_paper(1, parts=(endless,)))
    assert caught.value.id == "page-too-small"


def test_markup_is_printed_as_written_and_a_missing_letter_is_named() -> None:
    hostile = '#panic("x") $x$ *b* <label> // c'
    table = PaperTable("x", ("a",), (1.0,), ((PaperCell(hostile),),))
    assert hostile in text_of(document_pdf(a_paper(1, parts=(table,))))[0]
    with pytest.raises(NewelError) as caught:
        document_pdf(a_paper(1, title="Run 😀"))
    assert "GRINNING FACE" in str(caught.value)
