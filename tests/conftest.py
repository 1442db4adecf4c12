"""What every test may ask for: a real browser, and the same random cases on every run."""

import shutil
from collections.abc import Iterator

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

settings.register_profile("same-cases", deadline=None, derandomize=True)
settings.load_profile("same-cases")

QUIET_FLAGS = (
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-quic",
    "--disable-sync",
    "--no-first-run",
)


@pytest.fixture(autouse=True)
def _quiet_engine(monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep the engine's banner about its own next major version out of outputs under test."""
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """Start the system's Chromium once; where there is none, the test fails."""
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    if path is None:
        pytest.fail("no Chromium on this machine: install Debian's package chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=list(QUIET_FLAGS))
        yield browser
        browser.close()
