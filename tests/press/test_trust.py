"""What makes a printed card trusted: letters at every distance, reading order, grey copies, hostile text."""

import dataclasses
import io
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import combinations
from typing import Any

import numpy as np
import pypdf
import pytest
from PIL import Image

from generator.outputs.press import SIZES, card_pdf, fit
from generator.outputs.press.card import sheet_of
from generator.outputs.press.document import document_pdf
from generator.outputs.press.drawing import Sign
from generator.problems import NewelError
from generator.views.card import CardMark, CardStep, CardTable, CardView, Orientation
from generator.views.card_words import ENGLISH
from generator.views.paper import PaperBlanks, PaperCell, PaperTable, PaperView, PaperWords
from tests.press import samples
from tests.press.demo_cards import all_cards
from tests.press.demo_cards import name as name_of
from tests.press.pdf_reading import letters, overlapping, page_size, picture

FLAT_CAPITALS, FLAT_LOWER = frozenset("EFHIKLTXZ"), frozenset("xvz")
# What a page description rounds away, in mm.
HAIR = 0.03
SHEETS = [(size, lie) for size in SIZES for lie in ("portrait", "landscape")]
HOSTILE = '#panic("x") $x^2$ *b* _i_ \\u{41} `r` <l> @r // c /* d */ [e] #{1+1} = h --- "q"'
EVERY_MARK = tuple(CardMark(kind, ENGLISH.marks[kind]) for kind in ENGLISH.marks)  # type: ignore[arg-type]


def short_card() -> CardView:
    card = samples.drill_card()
    return replace(card, steps=card.steps[:3], stop_rule="Stop. Axe, vice, zinc.", help=card.help[:2])


@pytest.mark.parametrize(("size", "lie"), SHEETS)
@pytest.mark.parametrize("distance", [600.0, 1000.0, 1500.0])
def test_letters_of_every_sheet_at_every_distance(size: str, lie: Orientation, distance: float) -> None:
    """Boxes of the glyphs in the PDF: capitals of distance/300 at least, small letters of 0.7 of that."""
    card = replace(short_card(), size=size, orientation=lie, read_from=distance)
    pdf = card_pdf(card)
    found = letters(pdf)
    width, height = page_size(pdf)
    assert (width > height) == (lie == "landscape")
    capitals = [one.height for one in found if one.character in FLAT_CAPITALS]
    small = [one.height for one in found if one.character in FLAT_LOWER]
    assert min(capitals) >= max(distance / 300, 2.0) - HAIR
    assert min(small) >= 0.7 * min(capitals)
    assert min(one.left for one in found) >= 7.2 and max(one.right for one in found) <= width - 7.2
    assert min(one.top for one in found) >= 6.0 and max(one.bottom for one in found) <= height - 7.2
    assert not list(overlapping(found, 0.1))


@pytest.mark.parametrize(("size", "lie"), SHEETS)
def test_from_far_away_letters_grow_or_the_card_is_refused(size: str, lie: Orientation) -> None:
    """In steps up to 6 m: never a letter under distance/300, and once refused, refused from farther too."""
    fitted: list[bool] = []
    for distance in range(900, 6001, 300):
        card = replace(short_card(), size=size, orientation=lie, read_from=float(distance))
        fitted.append(fit(card).fits)
        if not fitted[-1]:
            with pytest.raises(NewelError, match=r"needs \d+ lines and has \d+ with letters"):
                card_pdf(card)
            continue
        found = letters(card_pdf(card))
        capitals = [one.height for one in found if one.character in FLAT_CAPITALS]
        small = [one.height for one in found if one.character in FLAT_LOWER]
        assert min(capitals) >= distance / 300 - HAIR
        assert min(small) >= 0.7 * distance / 300 - HAIR
    assert fitted == sorted(fitted, reverse=True)
    assert fitted[0] and not fitted[-1]


def spoken(node: Any) -> Iterator[int]:
    """The marked pieces of content in the order in which a screen reader goes to them."""
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, int):
        yield node
    elif isinstance(node, list):
        for child in node:
            yield from spoken(child)
    elif isinstance(node, dict):
        if "/MCID" in node:
            yield int(node["/MCID"])
        elif "/K" in node:
            yield from spoken(node["/K"])


@pytest.mark.parametrize("card", all_cards(), ids=name_of)
def test_a_card_is_read_out_as_it_is_printed(card: CardView) -> None:
    """The tree of tags goes through the content from its beginning to its end, and leaves nothing out."""
    pdf = card_pdf(card)
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    root: Any = reader.trailer["/Root"]
    order = list(spoken(root["/StructTreeRoot"]["/K"]))
    content = reader.pages[0].get_contents()
    assert content is not None
    there = [int(number) for number in re.findall(rb"/MCID (\d+)", content.get_data())]
    assert order == sorted(order)
    assert sorted(there) == sorted(set(order))
    # The word DRAFT lies under everything and is not read out.
    text = "".join(one.character for one in letters(pdf)).removeprefix(card.words.draft)
    assert text.startswith(card.title.replace(" ", ""))


def test_every_mark_is_told_from_every_other_in_a_grey_copy() -> None:
    """Pictures of the marks, laid over one another in grey, differ in a tenth of their dots at least."""
    card = short_card()
    step = replace(card.steps[0], marks=EVERY_MARK, place_title="Bench")
    marked = replace(card, steps=(step,), size="A3", read_from=900.0)
    image = picture(card_pdf(marked), 200)
    cut: dict[str, np.ndarray] = {}
    for mark in sheet_of(marked).marks:
        if isinstance(mark, Sign) and mark.name.startswith("mark-"):
            x, y, side = (round(value * 200 / 25.4) for value in (mark.x, mark.y, mark.size))
            one = image.crop((x, y, x + side, y + side)).resize((48, 48), Image.Resampling.BILINEAR)
            cut[mark.name] = np.asarray(one) < 128
    assert len(cut) == len(EVERY_MARK)
    for (name, dots), (other, others) in combinations(cut.items(), 2):
        assert np.mean(dots != others) >= 0.1, (name, other)


def test_states_do_not_hang_on_colour() -> None:
    """Signal word, frame and mark are black on white or white on black: colour is in the signs alone."""
    from generator.outputs.press.drawing import Box, Text

    for card in all_cards():
        for mark in sheet_of(card).marks:
            if isinstance(mark, Text):
                assert mark.ink in ("black", "white")
            if isinstance(mark, Box):
                assert mark.fill in (None, "black", "white")


def fields_of(kind: type) -> list[str]:
    left = ("id", "marks", "stage", "stage_title")
    return [one.name for one in dataclasses.fields(kind) if one.name not in left]


def with_text(step: CardStep, field: str, text: str) -> CardStep:
    """The step with other words in one field."""
    changes: dict[str, Any] = {field: text}
    return replace(step, **changes)


@cache
def hostile_steps() -> tuple[CardStep, ...]:
    """A step for each field, with hostile text in that field alone."""
    plain = CardStep("a", "1", "LOOK", "Look.", place_title="Bench")
    return tuple(
        with_text(replace(plain, id=f"s{n}", number=str(n)), field, HOSTILE) if field != "number" else plain
        for n, field in enumerate(fields_of(CardStep), start=1)
    )


def solid(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_hostile_text_in_every_field_of_a_step_is_printed_as_written() -> None:
    card = replace(samples.drill_card(), size="A3", read_from=600.0, steps=hostile_steps())
    text = "".join(one.character for one in letters(card_pdf(card)))
    assert text.count(solid(HOSTILE)) == len(fields_of(CardStep)) - 1


def test_hostile_text_in_every_field_of_a_card_is_printed_as_written() -> None:
    card = replace(
        samples.drill_card(), size="A3", read_from=600.0, title=HOSTILE, card="#c", procedure_title=HOSTILE,
        lab_title=HOSTILE, issue="$i", check_code="*k*", good_until="_u_", address_shown="@a",
        caution=HOSTILE, stop_rule=HOSTILE, signal="#W", stations=("#1",),
        wear=(replace(samples.BASE_WEAR[0], title=HOSTILE),), help=(replace(samples.HELP[0], text=HOSTILE),),
        hazards=(replace(samples.ETCH_HAZARDS[0], text=HOSTILE),), steps=(),
        tables=(CardTable("#t", ("*h*", "_k_"), (("$1", "<2>"),), HOSTILE),),
    )  # fmt: skip
    text = "".join(one.character for one in letters(card_pdf(card)))
    assert text.count(solid(HOSTILE)) >= 8
    for piece in ("#c", "$i", "*k*", "_u_", "@a", "#W", "#1"):
        assert piece in text, piece


def test_hostile_text_on_other_paper_is_printed_as_written() -> None:
    parts = (
        PaperBlanks((HOSTILE,), (HOSTILE,)), PaperWords(HOSTILE, HOSTILE),
        PaperTable(HOSTILE, (HOSTILE,), (1.0,), ((PaperCell(HOSTILE, HOSTILE),),), HOSTILE),
    )  # fmt: skip
    view = PaperView("x", HOSTILE, "2026-11-25", about=HOSTILE, identity=HOSTILE, parts=parts)
    text = "".join(one.character for one in letters(document_pdf(view)))
    assert text.count(solid(HOSTILE)) >= 11


@pytest.mark.parametrize("field", fields_of(CardStep))
def test_a_letter_that_no_font_has_is_named_wherever_it_stands(field: str) -> None:
    card = samples.drill_card()
    first = with_text(card.steps[0], field, "ab \N{GRINNING FACE}")
    spoilt = replace(card, steps=(first, *card.steps[1:]))
    with pytest.raises(NewelError, match="U\\+1F600 GRINNING FACE"):
        card_pdf(spoilt)
    assert fit(spoilt).missing == ("\N{GRINNING FACE}",)


def test_two_hundred_steps_are_refused_with_a_way_out() -> None:
    card = samples.drill_card()
    steps = tuple(replace(card.steps[n % 7], id=f"s{n}", number=str(n)) for n in range(200))
    found = fit(replace(card, steps=steps))
    assert not found.fits
    assert found.lines_needed > found.lines_there
    with pytest.raises(NewelError, match="needs"):
        card_pdf(replace(card, steps=steps))


def test_a_word_too_long_is_kept_whole_by_smaller_columns_or_broken_but_never_cut() -> None:
    word = "Rindfleischetikettierungsueberwachungsaufgabenuebertragungsgesetz"
    card = replace(samples.drill_card(), size="A3", read_from=600.0)
    long = replace(card, steps=(replace(card.steps[0], sentence=word, place_title=word, check=word),))
    text = "".join(one.character for one in letters(card_pdf(long)))
    assert text.count(word) == 3
