"""How the tests of calculators open a page, fill a box and read what comes out."""

from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from generator.pipeline.check import Checked

PROCEDURE = "procedures/copper-the-holes"
COPPER = "Metal thickness wanted on the face"
LabSite = tuple[Path, Checked]


def listen(page: Page) -> list[str]:
    """What the page complains of, as it comes."""
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("console", lambda message: said.append(message.text) if message.type == "error" else None)
    return said


def address(site: LabSite, at: str) -> str:
    """Where a page of the site is opened from its folder."""
    return f"{site[0].as_uri()}/{at}/index.html"


def plain(text: str | None) -> str:
    """The text with ordinary spaces."""
    return (text or "").replace("\u00a0", " ").replace("\u202f", " ")


def answer_of(page: Page) -> str:
    """What the calculator shows as its answer."""
    return plain(page.locator(".nw-result").text_content())


def refusal_of(page: Page) -> str:
    """What the form says is wrong or unusual."""
    return plain(page.locator(".nw-calculator .nw-wrong, .nw-job .nw-wrong").first.text_content())


def box(page: Page, name: str) -> Any:
    """The box whose label begins so."""
    return page.locator(".nw-calculator, .nw-job").get_by_role("textbox", name=name)
