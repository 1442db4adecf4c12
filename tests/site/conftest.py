"""Published sites, each made once for all tests that look at it, and windows to look at them."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.site.calculator_pages import PROCEDURE, LabSite, listen
from tests.site.lab_site import write_lab_site
from tests.site.sample_site import write_sample


@pytest.fixture(scope="session")
def sample_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the sample site."""
    return write_sample(tmp_path_factory.mktemp("sample"))


@pytest.fixture(scope="session")
def calculator_site(tmp_path_factory: pytest.TempPathFactory) -> LabSite:
    """Every calculator of the demo lab, one procedure that works with them, and its day plan."""
    folder = tmp_path_factory.mktemp("calculators")
    lab = Path(__file__).parents[2] / "procedures"
    wanted = (PROCEDURE, f"{PROCEDURE}/day-plan")
    return write_lab_site(lab, folder, lambda at: at.startswith("calculators") or at in wanted)


@pytest.fixture
def context(chromium: Browser) -> Iterator[BrowserContext]:
    """A device of its own, with nothing remembered."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.set_default_timeout(5000)
    yield context
    context.close()


@pytest.fixture
def page(context: BrowserContext) -> Iterator[Page]:
    """A page whose errors and broken policies fail the test."""
    page = context.new_page()
    said = listen(page)
    yield page
    assert said == []


@pytest.fixture(scope="module")
def shared_page(chromium: Browser) -> Iterator[Page]:
    """One page for many tests; its errors fail the last of them."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    said = listen(page)
    yield page
    assert said == []
    context.close()
