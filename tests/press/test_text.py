"""What the PDF says: everything, in order, as written; whole words; nothing read as markup."""

import io
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import pypdf
import pypdfium2
import pytest

from generator.outputs.press import card_pdf, card_svg, fit
from generator.outputs.press.drawing import Run
from generator.outputs.press.wrapping import broken, run_width, width
from generator.problems import NewelError
from generator.views.card import CardStep, CardView
from tests.press import samples
from tests.press.pdf_reading import letters

HOSTILE = (
    '#panic("x")', "#import sys: *", "$x^2$", "*bold* _it_", "\\u{41} \\n", '"quoted" `raw`',
    "<label> @ref", "// comment /* more */", "[content] #{1+1}", "= heading", "--- ~ ...", "it's",
)  # fmt: skip


def solid(text: str) -> str:
    return re.sub(r"\s+", "", text)


def printed(pdf: bytes) -> str:
    """All printed letters in the order of the page's content, without white space."""
    return "".join(one.character for one in letters(pdf))


def of_step(step: CardStep) -> tuple[str, ...]:
    notes = (
        step.setting,
        step.limit,
        step.hold,
        step.alarm,
        step.check,
        step.if_not,
        step.call,
        step.container,
    )
    first, _, rest = step.sentence.partition(" ")
    said_once = rest if first.upper() == step.verb else step.sentence
    return (step.number, step.verb, said_once, *notes)


def in_order(card: CardView) -> Iterator[str]:
    yield card.words.wear
    yield from (f"{piece.title}{piece.symbol}" for piece in card.wear)
    yield from (card.words.stop, card.stop_rule)
    yield from (f"{line.label}{line.text}" for line in card.help)
    yield card.signal
    yield from (hazard.text for hazard in card.hazards)
    for step in card.steps:
        yield from of_step(step)
    for table in card.tables:
        yield from (table.title, *table.heads, *(value for row in table.rows for value in row), table.note)
    yield from (card.caution, card.words.scan, card.address_shown)


@pytest.mark.parametrize(
    "make", [samples.drill_card, samples.etch_card, samples.copper_card, samples.door_card]
)
def test_everything_is_said_in_the_order_of_the_card(make: Callable[[], CardView]) -> None:
    card = make()
    text = printed(card_pdf(card))
    assert text.startswith(solid(card.title))
    head, at = text.partition(card.words.wear)[0], len(solid(card.title))
    for group in ((card.card, card.issue, card.check_code, card.good_until), card.stations):
        places = [head.find(solid(part), at) for part in group]
        assert -1 not in places
        assert places == sorted(places)
    assert solid(card.procedure_title) in head
    assert solid(card.lab_title) in head
    for part in in_order(card):
        found = text.find(solid(part), at)
        assert found >= 0, part
        at = found + len(solid(part))


def test_times_marks_and_places_are_there() -> None:
    card = samples.copper_card()
    text = printed(card_pdf(card))
    for step in card.steps:
        marks = (mark.text for mark in step.marks)
        for part in (step.dwell_shown, step.window_shown, step.place_title, *marks):
            assert solid(part) in text


def test_a_sentence_that_begins_with_its_verb_says_it_once() -> None:
    empty = replace(samples.drill_card().steps[0], verb="EMPTY", sentence="Empty the tray. Rinse the tray.")
    emptied = replace(empty, verb="EMPTY", sentence="Emptying takes a minute.", number="2")
    text = printed(card_pdf(replace(samples.drill_card(), steps=(empty, emptied))))
    assert "EMPTYthetray.Rinsethetray." in text
    assert "EMPTYEmptyingtakesaminute." in text


def test_spanish_is_printed_in_spanish() -> None:
    card = replace(samples.spanish_card(), read_from=1200.0)
    pdf = card_pdf(card)
    text = printed(pdf)
    for word in ("LLEVE", "PARE", "PELIGRO", "SINO", "LAVAOJOS", "edición", "válidahasta"):
        assert word in text
    for word in ("WEAR", "STOP", "IFNOT", "gooduntil"):
        assert word not in text
    root: Any = pypdf.PdfReader(io.BytesIO(pdf)).trailer["/Root"]
    assert root["/Lang"] == "es"


def test_the_whole_sign_table_is_printed() -> None:
    signs = "µ Ω ° ± ² ³ · – − ≤ ≥ × % ½ α β γ Ω ρ δ Ł ő ñ ß Ž"
    card = replace(samples.etch_card(), stop_rule=signs)
    assert solid(signs) in printed(card_pdf(card))


@pytest.mark.parametrize("text", HOSTILE)
def test_markup_is_printed_as_written(text: str) -> None:
    card = replace(samples.drill_card(), read_from=800.0, stop_rule=text, title=text[:14])
    steps = tuple(replace(step, sentence=text) for step in card.steps)
    pdf = card_pdf(replace(card, steps=steps))
    assert printed(pdf).count(solid(text)) >= len(steps) + 1


def test_a_title_cannot_reach_out_of_the_svg() -> None:
    svg = card_svg(replace(samples.drill_card(), title='</svg><script>alert("x")</script>'))
    assert "<script" not in svg
    assert svg.count("<svg") == svg.count("</svg>")


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("Etch 😀", "U+1F600 GRINNING FACE"),
        ("שלום", "U+05E9 HEBREW LETTER SHIN"),
        ("a\u202eb", "U+202E RIGHT-TO-LEFT OVERRIDE"),
        ("a\u200db", "U+200D ZERO WIDTH JOINER"),
        ("漢", "U+6F22 CJK UNIFIED IDEOGRAPH-6F22"),
        ("\x07", "U+0007"),
    ],
)
def test_a_letter_that_is_missing_is_named(text: str, named: str) -> None:
    card = samples.drill_card()
    broken_card = replace(card, steps=(*card.steps[:-1], replace(card.steps[-1], check=text)))
    with pytest.raises(NewelError) as caught:
        card_pdf(broken_card)
    assert caught.value.id == "letter-missing"
    assert named in str(caught.value)
    assert not fit(broken_card).fits
    assert fit(broken_card).missing


def test_a_letter_in_two_parts_is_composed() -> None:
    card = replace(samples.drill_card(), title="Cafe\u0301")
    assert "Café" in printed(card_pdf(card))


def test_words_are_broken_at_spaces_only() -> None:
    lines = broken((Run("Lower the board in."), Run("SEE", bold=True), Run("a line")), (30.0,), 3.0)
    assert all(run_width(line, 3.0) <= 30.0 for line in lines)
    assert len(lines) == 2
    words = " ".join("".join(run.text for run in line) for line in lines)
    assert words == "Lower the board in. SEE a line"


def test_a_word_longer_than_the_line_is_kept_whole_in_letters() -> None:
    lines = broken((Run("Rindfleischetikettierungsgesetz"),), (20.0,), 3.0)
    assert "".join(run.text for line in lines for run in line) == "Rindfleischetikettierungsgesetz"
    assert all(run_width(line, 3.0) <= 20.0 for line in lines)


def test_a_page_is_one_page() -> None:
    assert len(pypdfium2.PdfDocument(card_pdf(samples.etch_card()))) == 1


def test_an_address_too_long_for_its_line_is_broken_behind_a_stroke() -> None:
    address = "circuits.larkmere.example/procedures/copper-the-holes.second-year"
    lines = broken((Run(address),), (width(address, 4.0) - 10.0,), 4.0)
    assert [line[0].text for line in lines] == [
        "circuits.larkmere.example/procedures/", "copper-the-holes.second-year",
    ]  # fmt: skip
