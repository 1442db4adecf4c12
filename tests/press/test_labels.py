"""Container labels measured on the printed page, for each class of volume.

Label and pictogram sizes: CLP Annex I table 1.3 (read). x-heights: Reg. (EU) 2024/2865, as several
consultants quote it. Written out here a second time, not imported.
"""

import math
from dataclasses import dataclass, replace

import numpy as np
import pypdf
import pypdfium2
import pytest

from generator.hazards import Edition
from generator.outputs.press.drawing import Box, Text
from generator.outputs.press.label_sizes import CLASSES, VolumeClass, tiling, volume_class
from generator.outputs.press.labels import container_labels_pdf, set_label, waste_labels_pdf
from generator.problems import NewelError
from generator.views.filling.container_labels import CAUTION
from generator.views.filling.labels import label_view
from generator.views.labels import ContainerLabelView
from generator.views.print_setting import PrintSetting
from tests.press.test_document import reader, root_of, structure

MM = 72 / 25.4
DPI = 300
SETTING = PrintSetting("en", "2026-11-25", "Larkmere Technical College, room B14")
# A row of dots at 300 dpi.
DOT = 25.4 / DPI


@dataclass(frozen=True)
class Least:
    """What the tables ask for, in mm, at a volume in litres."""

    litres: float
    label: tuple[float, float]
    pictogram: float
    x_height: float


TABLE = (
    Least(0.5, (52, 74), 10, 1.2),
    Least(3, (52, 74), 10, 1.4),
    Least(50, (74, 105), 23, 1.8),
    Least(500, (105, 148), 32, 2.0),
    Least(1000, (148, 210), 46, 2.0),
)


def etch_label() -> ContainerLabelView:
    codes = ("H314", "H317", "H334", "H410")
    label = label_view(codes, False, Edition.REV10, "", vented=True)
    return ContainerLabelView(
        "Micro-etch bath", "sodium persulfate 90 g/L, water", label, ("Made in B14.",), ("Filled on", "By"),
        CAUTION, stop="Vented cap only, never sealed.",
    )  # fmt: skip


def plain_label() -> ContainerLabelView:
    label = label_view((), True, Edition.REV10, "")
    return ContainerLabelView("Deionised water", "CAS 7732-18-5", label, (), ("Filled on",), CAUTION)


def dots(pdf: bytes, page: int) -> np.ndarray:
    image = pypdfium2.PdfDocument(pdf)[page].render(scale=DPI / 72).to_pil().convert("RGB")
    return np.asarray(image).astype(int)


def diamond_sides(pdf: bytes, page: int) -> list[float]:
    """Sides of the red diamonds in the first row of labels, from their widths where they are widest."""
    rgb = dots(pdf, page)
    red = (rgb[:, :, 0] > 180) & (rgb[:, :, 1] < 90) & (rgb[:, :, 2] < 90)
    columns = red.any(axis=0)
    edges = np.flatnonzero(np.diff(np.concatenate(([0], columns.astype(int), [0]))))
    widths = [(right - left) * 25.4 / DPI for left, right in zip(edges[::2], edges[1::2], strict=True)]
    return [width / math.sqrt(2) for width in widths]


def x_heights(pdf: bytes, page: int) -> list[float]:
    """Heights in mm of every small x, v and z on a page, from the outlines of the letters."""
    text = pypdfium2.PdfDocument(pdf)[page].get_textpage()
    whole = text.get_text_range()
    found = []
    for index, character in enumerate(whole):
        if character in "xvz":
            _, bottom, _, top = text.get_charbox(index, loose=False)
            found.append((top - bottom) / MM)
    return found


@pytest.mark.parametrize("number", range(len(TABLE)))
def test_pictogram_letters_and_label_of_each_volume_class(number: int) -> None:
    least = TABLE[number]
    volume = volume_class(least.litres)
    assert CLASSES[number] is volume
    found = set_label(etch_label(), volume)
    assert found is not None
    assert min(found.size) >= least.label[0] and max(found.size) >= least.label[1]
    pdf = container_labels_pdf(etch_label(), SETTING)
    sides = diamond_sides(pdf, number)
    assert len(sides) >= 3
    assert min(sides) >= least.pictogram - DOT
    # Each pictogram at least a fifteenth of the least label, and a square centimetre (CLP Annex I 1.2.1.3).
    assert (min(sides) + DOT) ** 2 >= least.label[0] * least.label[1] / 15
    assert min(sides) ** 2 >= 100
    heights = x_heights(pdf, number)
    assert len(heights) > 10
    assert min(heights) >= least.x_height - 1e-3


def test_a_measure_that_is_too_small_would_be_seen() -> None:
    """The measuring itself, on a page set for the class below."""
    pdf = container_labels_pdf(etch_label(), SETTING)
    assert min(diamond_sides(pdf, 1)) < TABLE[2].pictogram
    smaller = replace(CLASSES[2], x_height=1.2)
    found = set_label(etch_label(), smaller)
    assert found is not None


def test_lines_stand_apart_by_120_percent_of_the_type() -> None:
    for volume in CLASSES:
        found = set_label(etch_label(), volume)
        assert found is not None
        for mark in found.marks:
            if isinstance(mark, Text):
                assert mark.pitch >= 1.2 * mark.cap / 0.698 - 1e-6


def test_nothing_runs_over_the_edge_or_into_the_printers_margin() -> None:
    pdf = container_labels_pdf(etch_label(), SETTING)
    for page in pypdfium2.PdfDocument(pdf):
        text = page.get_textpage()
        wide, high = page.get_width() / MM, page.get_height() / MM
        for index, character in enumerate(text.get_text_range()):
            if character.isspace():
                continue
            left, bottom, right, top = (value / MM for value in text.get_charbox(index))
            assert left >= 3.9 and right <= wide - 3.9 and bottom >= 3.0 and top <= high - 3.0


def test_what_stands_on_every_label() -> None:
    pdf = container_labels_pdf(etch_label(), SETTING)
    for page in reader(pdf).pages:
        text = " ".join(page.extract_text().split())
        for words in ("Micro-etch bath", "Danger", "Causes severe skin burns and eye damage", "(H334)",
                      "IF IN EYES", "never sealed", "Filled on", "stand above this label"):  # fmt: skip
            assert words in text
        # What gives off gas is never told to be closed tightly.
        assert "P233" not in text


def test_one_edition_of_precautions_on_a_label() -> None:
    """P316, P317, P354 are of Rev. 10 alone; P310, P351 and P313 are of the older set alone."""
    for edition, alone in ((Edition.REV10, "P310 P312 P313 P351"), (Edition.CLP, "P316 P317 P354 P319")):
        label = label_view(("H314", "H334", "H319"), False, edition, "")
        codes = " ".join(one.code for one in label.precautions)
        assert not [code for code in alone.split() if code in codes]


def test_a_label_of_something_unknown_says_so() -> None:
    label = label_view((), False, Edition.REV10, "")
    view = replace(plain_label(), label=label)
    text = " ".join(reader(container_labels_pdf(view, SETTING)).pages[0].extract_text().split())
    assert "No hazards are declared" in text


def test_labels_lie_on_common_paper() -> None:
    counts = {size: tiling(size) for size in ((74.0, 52.0), (105.0, 74.0), (148.0, 105.0), (210.0, 148.0))}
    assert [way.columns * way.rows if way else 0 for way in counts.values()] == [16, 8, 4, 2]
    letter = tiling((105.0, 74.0), "Letter")
    assert letter is not None and letter.columns * letter.rows == 6
    sheets = reader(container_labels_pdf(plain_label(), SETTING, "Letter")).pages
    assert len(sheets) == 5
    # ANSI/ASME Y14.1 size A, 8.5 in x 11 in, in points of 1/72 in
    sizes = {tuple(sorted((round(float(p.mediabox.width)), round(float(p.mediabox.height))))) for p in sheets}
    assert sizes == {(612, 792)}


def test_too_much_text_is_refused_not_shrunk() -> None:
    long = replace(etch_label(), lines=tuple(f"Line {n} of a very long list." * 4 for n in range(60)))
    assert set_label(long, CLASSES[4]) is None
    with pytest.raises(NewelError, match="needs more than a sheet"):
        container_labels_pdf(long, SETTING)


def test_the_document_is_tagged_titled_and_the_same_every_time() -> None:
    pdf = waste_labels_pdf((etch_label(), plain_label()), SETTING)
    container_labels_pdf.cache_clear()
    waste_labels_pdf.cache_clear()
    assert pdf == waste_labels_pdf((etch_label(), plain_label()), SETTING)
    root = root_of(pdf)
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert "pdfuaid" in root["/Metadata"].get_data().decode("utf-8")
    figures = [node for node in structure(pdf) if node["/S"] == "/Figure"]
    assert len(figures) == 3
    assert all("GHS" in str(node["/Alt"]) for node in figures)
    info = reader(pdf).metadata
    assert isinstance(reader(pdf), pypdf.PdfReader) and info is not None
    assert info.title == "Waste-container labels"


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("volume", CLASSES, ids=lambda volume: volume.name)
def test_a_label_keeps_white_inside_and_room_to_write(volume: VolumeClass, paper: str) -> None:
    """A whole sheet keeps clear of what a printer leaves white; a date wants 12 mm (both ours, no source)."""
    for view in (etch_label(), replace(plain_label(), blanks=("Filled", "By", "Use by"))):
        found = set_label(view, volume, paper)
        assert found is not None
        least = 8.0 if found.size[0] > 215.9 else 4.0
        texts = [mark for mark in found.marks if isinstance(mark, Text)]
        assert min(min(text.x, text.y) for text in texts) >= least
        lines = [mark for mark in found.marks if isinstance(mark, Box)]
        assert len(lines) == len(view.blanks)
        assert max(line.x + line.width for line in lines) <= found.size[0] - least
        assert len({round(line.width, 6) for line in lines}) == 1
        assert lines[0].width >= 12.0
