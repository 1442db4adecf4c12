"""The document around the drawing: tagged, titled, letters in it, the same bytes every time; the SVG."""

import io
import subprocess
import sys
import threading
from dataclasses import replace
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pypdf
import pytest

from generator.outputs.press import card_pdf, card_svg
from tests.press import samples
from tests.press.pdf_reading import letters

ROOT = Path(__file__).parents[2]


def local(name: str) -> str:
    """A tag or attribute without its namespace."""
    return name.rpartition("}")[2]


def reader(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def elements(node: Any) -> list[Any]:
    """All structure elements under a node, in order."""
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, list):
        return [found for child in node for found in elements(child)]
    if not isinstance(node, dict) or "/S" not in node:
        return []
    return [node, *elements(node.get("/K", []))]


def root_of(pdf: bytes) -> Any:
    return reader(pdf).trailer["/Root"]


def structure(pdf: bytes) -> list[Any]:
    return elements(root_of(pdf)["/StructTreeRoot"]["/K"])


def test_the_document_is_tagged_titled_and_in_a_language() -> None:
    """Exported as PDF/UA-1; the export's own checks passed. No claim of conformance beyond that."""
    root = root_of(card_pdf(samples.etch_card()))
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert "pdfuaid" in root["/Metadata"].get_data().decode("utf-8")
    info = reader(card_pdf(samples.etch_card())).metadata
    assert info is not None
    assert info.title == "Etch card · Copper the holes of a two-sided board"


def test_signs_and_code_have_words() -> None:
    figures = [node for node in structure(card_pdf(samples.etch_card())) if node["/S"] == "/Figure"]
    words = [str(node["/Alt"]) for node in figures]
    assert "Sign M013" in words
    assert "Sign W023" in words
    assert "goes in DRY" in words
    assert any(text.startswith("QR code") for text in words)
    assert all(words)


def test_headings_and_table_are_marked_as_such() -> None:
    kinds = [str(node["/S"]) for node in structure(card_pdf(samples.copper_card()))]
    assert kinds.count("/H1") == 1
    assert kinds.count("/H2") >= 4
    assert kinds.count("/TH") == 6
    assert kinds.count("/TD") == 6
    assert kinds.count("/P") >= 20


def test_only_our_letters_and_all_of_them_inside() -> None:
    page: Any = reader(card_pdf(samples.copper_card())).pages[0]
    fonts = [font.get_object() for font in page["/Resources"]["/Font"].get_object().values()]
    assert len(fonts) == 2
    for font in fonts:
        assert "IBMPlexSansCond" in font["/BaseFont"]
        inner = font["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
        assert any(key in inner for key in ("/FontFile2", "/FontFile3"))
        assert "/ToUnicode" in font


def test_the_same_card_gives_the_same_bytes() -> None:
    found: list[bytes] = []
    thread = threading.Thread(target=lambda: found.append(card_pdf(samples.etch_card())))
    thread.start()
    thread.join()
    assert found == [card_pdf(samples.etch_card())]


def test_another_process_at_another_hour_gives_the_same_bytes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TZ", "Pacific/Auckland")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1")
    monkeypatch.setenv("PYTHONHASHSEED", "7")
    code = (
        "import sys; from tests.press import samples; from generator.outputs.press import card_pdf;"
        "sys.stdout.buffer.write(card_pdf(samples.drill_card()))"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, check=True)
    assert done.stdout == card_pdf(samples.drill_card())


def test_many_threads_print_at_once() -> None:
    cards = [replace(samples.drill_card(), issue=str(number)) for number in range(8)]
    found: dict[str, bytes] = {}

    def work(card: Any) -> None:
        found[card.issue] = card_pdf(card)

    threads = [threading.Thread(target=work, args=(card,)) for card in cards]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert all(found[card.issue] == card_pdf(card) for card in cards)


def test_a_draft_says_so_across_and_in_words() -> None:
    card = replace(samples.etch_card(), status="draft", read_from=1400.0)
    pdf = card_pdf(card)
    text = "".join(one.character for one in letters(pdf))
    assert "DRAFT.Notforuseatthebench." in text
    large = [one for one in letters(pdf) if one.height > 30]
    assert "".join(one.character for one in large) == "DRAFT"


def test_a_posted_card_does_not_say_draft() -> None:
    assert "DRAFT" not in "".join(one.character for one in letters(card_pdf(samples.etch_card())))


def test_a_withdrawn_card_has_no_steps() -> None:
    text = "".join(one.character for one in letters(card_pdf(samples.withdrawn_card())))
    assert "DONOTUSE" in text
    assert "Thiscardiswithdrawn." in text
    assert "Dutytechnician" in text
    assert "Lowertheboard" not in text


def test_the_svg_needs_no_style_script_or_other_file() -> None:
    svg = card_svg(samples.etch_card())
    root = ElementTree.fromstring(svg)
    for node in root.iter():
        assert local(node.tag) not in ("script", "style", "foreignObject")
        for name, value in node.attrib.items():
            assert local(name) != "style"
            assert not local(name).startswith("on")
            if local(name) == "href":
                assert value.startswith(("#", "data:image/"))
    ids = [node.get("id") for node in root.iter() if node.get("id")]
    assert len(ids) == len(set(ids))


def test_the_svg_is_the_same_drawing_every_time() -> None:
    assert card_svg(samples.drill_card()) == card_svg(samples.drill_card())
