"""Where pages of the hazard papers end: a label keeps together with its head, signatures with each other."""

import re
from pathlib import Path

import pypdfium2
import pytest

# Each a page of text whose foot must not hold a head alone, or whose top not the rest of a box.
PAPERS = ("procedures/*/hazards.pdf", "procedures/*/office.pdf", "mixtures/*/hazards.pdf")


def pages(pdf: Path) -> list[str]:
    document = pypdfium2.PdfDocument(pdf)
    return [document[number].get_textpage().get_text_range() for number in range(len(document))]


@pytest.mark.parametrize("pattern", PAPERS)
def test_what_belongs_together_is_on_one_page(demo_site: Path, pattern: str) -> None:
    found = sorted(demo_site.glob(pattern))
    assert found
    for pdf in found:
        for text in pages(pdf):
            if "As declared" in text:
                # The box ends here, so its signal word and first statement stand here too.
                assert re.search(r"\b(Danger|Warning)\b|\bH\d{3}\b", text.split("As declared")[0]), pdf
            lines = [line.strip() for line in text.splitlines() if line.strip()]
            foot = max(n for n, line in enumerate(lines) if line.startswith("The supplier"))
            assert not lines[foot - 1].startswith("met at step"), pdf
        signed = [text for text in pages(pdf) if "Signature" in text]
        assert len(signed) <= 1, pdf
