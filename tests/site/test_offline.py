"""Without a network: the kept copy answers, search included; a new posting wins and says so; any sub-path."""

import functools
import http.server
import json
import os
import shutil
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from generator.outputs.offline import manifest, worker_script
from generator.publishing.offline_files import write_offline_files
from generator.publishing.search_files import write_index

pytestmark = pytest.mark.browser
PROCEDURE = "procedures/copper-the-holes/index.html"
TAKEN = """new Promise((done) => {
    if (navigator.serviceWorker.controller) done(1);
    else navigator.serviceWorker.addEventListener("controllerchange", () => done(1), { once: true });
})"""
# Whether there is a newer worker, answered to the end.
ASKED = "navigator.serviceWorker.ready.then((found) => found.update()).then(() => 1)"


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files and says nothing."""

    def log_message(self, format: str, *args: object) -> None:
        """Keep the test's output clean."""


@pytest.fixture
def folder(sample_folder: Path, tmp_path: Path) -> Path:
    """A copy of the site below a folder, for a test that posts anew."""
    shutil.copytree(sample_folder, tmp_path / "site" / "lab")
    return tmp_path / "site" / "lab"


@pytest.fixture
def server(folder: Path) -> Iterator[http.server.ThreadingHTTPServer]:
    """The folder above the site, so that the site stands under a sub-path."""
    handler = functools.partial(Quiet, directory=str(folder.parent))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as running:
        thread = threading.Thread(target=running.serve_forever, daemon=True)
        thread.start()
        yield running
        running.shutdown()
        thread.join()


@pytest.fixture
def context(chromium: Browser) -> Iterator[BrowserContext]:
    """A device of its own."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.set_default_timeout(10_000)
    yield context
    context.close()


@pytest.mark.parametrize("split_above", [None, 0], ids=["index in one piece", "index in parts"])
def test_the_site_is_read_and_searched_without_a_network(
    context: BrowserContext, server: http.server.ThreadingHTTPServer, folder: Path, split_above: int | None
) -> None:
    if split_above is not None:
        index = folder / "search" / "search_index.json"
        write_index(index.parent, index.read_text(encoding="utf-8"), split_above)
        write_offline_files(folder, "Lab")
    root = f"http://127.0.0.1:{server.server_address[1]}/lab/"
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("console", lambda one: said.append(one.text) if "Content Security" in one.text else None)
    page.goto(f"{root}index.html")
    page.evaluate(TAKEN)
    assert page.locator('link[rel="manifest"]').get_attribute("href") == f"{root}newel.webmanifest"
    context.set_offline(True)
    page.goto(f"{root}{PROCEDURE}")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Copper the holes")
    expect(page.get_by_role("button", name="Open bench view")).to_be_visible()
    page.goto(f"{root}places/")
    page.click(".md-search__input")
    page.keyboard.type("H314")
    page.wait_for_selector(".md-search-result__link")
    assert said == []


def test_a_new_posting_wins_and_says_so(
    context: BrowserContext, server: http.server.ThreadingHTTPServer, folder: Path
) -> None:
    root = f"http://127.0.0.1:{server.server_address[1]}/lab/"
    page = context.new_page()
    page.goto(root + PROCEDURE)
    page.evaluate(TAKEN)
    path = folder / PROCEDURE
    os.utime(path, (0, 0))  # an old file is what a browser would rather not ask for again
    page.reload()
    page.evaluate(ASKED)  # else the next page's question may be taken for this one's, answered already
    path.write_text(path.read_text("utf-8").replace("Copper the holes", "Silver the holes"), encoding="utf-8")
    write_offline_files(folder, "Lab")
    other = context.new_page()
    other.goto(root + PROCEDURE)
    expect(other.get_by_role("heading", level=1)).to_contain_text("Silver the holes")
    expect(page.get_by_text("A newer copy of these pages has come")).to_be_visible(timeout=60_000)
    context.set_offline(True)
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Silver the holes")


def test_from_a_folder_no_worker_is_asked_for(context: BrowserContext, folder: Path) -> None:
    page = context.new_page()
    said: list[str] = []
    page.on("console", lambda one: said.append(one.text) if one.type == "error" else None)
    page.goto(f"{folder.as_uri()}/{PROCEDURE}")
    assert page.locator('link[rel="manifest"]').count() == 0
    assert said == []


def test_the_worker_changes_with_any_file_and_with_nothing_else() -> None:
    files = [("a.html", b"1"), ("b c.html", b"2")]
    assert worker_script(files) == worker_script(reversed(files))
    assert worker_script(files) != worker_script([("a.html", b"1"), ("b c.html", b"3")])
    assert worker_script(files) == worker_script([*files, ("sitemap.xml", b"today")])


def test_the_manifest_names_no_path_of_its_own() -> None:
    data = json.loads(manifest("Printed Circuits Lab, Larkmere"))
    assert (data["scope"], data["start_url"]) == ("./", "./index.html")
    assert data["short_name"] == "Printed Circ"
