"""The preview: every save at once, a broken file over the last good page, nobody but this machine."""

import http.client
import json
import sys
import threading
import time
from collections.abc import Callable, Collection, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import Browser, Route, expect

from generator.outputs.page import Page, Section
from generator.outputs.site import Site, SiteFile
from generator.problems import Level, Location, NewelError, Problem
from generator.serving.app import preview_app
from generator.serving.changes import Changes
from generator.serving.preview import Preview
from generator.serving.serve import refuse_taken
from generator.serving.watching import watch_folder
from tests.site.sample_site import tiny_site

WRONG = Problem("arrives-wet", Level.ERROR, Location("x.yml", 2, 3), "the board is <wet>", "dry it", "dip")


@dataclass
class Lab:
    """A pipeline that hands back what the test sets; counts its builds."""

    site: Site | None
    problems: tuple[Problem, ...] = ()
    stop: NewelError | None = None
    expected: list[str] = field(default_factory=list)

    def build(self, pause: Callable[[], None]) -> "Lab":
        pause()
        if self.stop:
            raise self.stop
        return self

    def glance(self, files: Iterable[Path], looked_at: Collection[str]) -> None:
        """Never enough."""

    def expect(self, path: str) -> None:
        self.expected.append(path)


def site_saying(text: str, title: str = "Small lab") -> Site:
    """One page with a sentence, and one file."""
    section = Section(1, "page_top", title, f"<section><p>{text}</p></section>")
    page = Page("", title, (section,), listed=True)
    return replace(tiny_site(title), pages=(page,), files=(SiteFile("cards/x.pdf", text.encode()),))


@pytest.fixture
def lab() -> Lab:
    """A lab that builds."""
    return Lab(site_saying("first"))


@pytest.fixture
def preview(lab: Lab, tmp_path: Path) -> Preview:
    """A preview of that lab, built once."""
    made = Preview(lab, tmp_path)
    made.refresh()
    return made


@dataclass(frozen=True)
class Client:
    """Asks the preview as a browser on this machine does."""

    port: int

    def get(self, path: str, host: str = "127.0.0.1") -> tuple[int, str]:
        """Status and text of an answer; the path is sent as it stands."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=5)
        connection.putrequest("GET", path, skip_host=True)
        connection.putheader("Host", host)
        connection.endheaders()
        answer = connection.getresponse()
        text = answer.read().decode()
        connection.close()
        return answer.status, text


@contextmanager
def serving(preview: Preview) -> Iterator[Client]:
    """The preview behind a real port."""
    server = uvicorn.Server(uvicorn.Config(preview_app(preview), port=0, log_level="error"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    wait_until(lambda: server.started)
    yield Client(server.servers[0].sockets[0].getsockname()[1])
    server.force_exit = server.should_exit = True
    thread.join(5)


@pytest.fixture
def client(preview: Preview) -> Iterator[Client]:
    """Requests to the preview."""
    with serving(preview) as client:
        yield client


def test_a_new_body_is_shown_without_the_engine(
    lab: Lab, preview: Preview, client: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "<p>first</p>" in client.get("/")[1]

    def no_engine(*_: object) -> None:
        raise AssertionError("the frame has not changed")

    monkeypatch.setattr("generator.serving.shell.run_engine", no_engine)
    lab.site = site_saying("second")
    preview.refresh()
    page = client.get("/index.html")[1]
    assert "<p>second</p>" in page
    assert "first" not in page
    assert client.get("/cards/x.pdf") == (200, "second")


def test_a_new_title_brings_a_new_frame(lab: Lab, preview: Preview, client: Client) -> None:
    lab.site = site_saying("second", "Renamed")
    preview.refresh()
    assert "<title>Renamed" in client.get("/")[1]


def test_errors_stand_beside_the_last_good_page(lab: Lab, preview: Preview, client: Client) -> None:
    lab.site, lab.problems = None, (WRONG,)
    preview.refresh()
    assert "<p>first</p>" in client.get("/")[1]
    assert preview.shown.errors == (WRONG,)


def test_an_error_that_stops_a_build_is_shown_like_a_problem(lab: Lab, preview: Preview) -> None:
    lab.stop = NewelError("unknown-link", "a page links to nowhere", hint="take it away")
    preview.refresh()
    assert [(p.rule, p.message, p.fix) for p in preview.shown.errors] == [
        ("unknown-link", "a page links to nowhere", "take it away")
    ]


def test_before_the_first_good_build_there_is_a_page(tmp_path: Path) -> None:
    preview = Preview(Lab(None, (WRONG,)), tmp_path)
    preview.refresh()
    with serving(preview) as client:
        assert "Not built yet" in client.get("/")[1]


def test_another_name_for_this_machine_is_refused(client: Client) -> None:
    assert client.get("/", "evil.example")[0] == 400


@pytest.mark.parametrize("path", ["/../../etc/hostname", "/%2e%2e/%2e%2e/etc/hostname", "/nothing.txt"])
def test_only_the_site_is_served(client: Client, path: str) -> None:
    assert client.get(path)[0] == 404


def test_a_save_is_noticed_once_and_at_once(tmp_path: Path) -> None:
    changes = Changes()
    with watch_folder(tmp_path, changes):
        (tmp_path / ".x.yml.swp").write_text("", "utf-8")
        (tmp_path / "x.yml").write_text("a: 1\n", "utf-8")
        assert changes.take(5.0) == frozenset((tmp_path / "x.yml",))
        assert not changes.take(0.1)


def test_a_file_put_in_place_of_another_is_noticed(tmp_path: Path) -> None:
    (tmp_path / "x.yml").write_text("a: 1\n", "utf-8")
    changes = Changes()
    with watch_folder(tmp_path, changes):
        (tmp_path / ".x.yml.part").write_text("a: 2\n", "utf-8")
        (tmp_path / ".x.yml.part").replace(tmp_path / "x.yml")
        assert changes.take(5.0) == frozenset((tmp_path / "x.yml",))


def test_a_file_that_an_editor_has_emptied_is_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.serving.watching._QUIET", 5.0)
    file, changes = tmp_path / "x.yml", Changes()
    with watch_folder(tmp_path, changes):
        file.write_text("", "utf-8")
        writing = threading.Timer(0.1, file.write_text, ("a: 1\n", "utf-8"))
        writing.start()
        assert changes.take(10.0) == frozenset((file,))
        assert file.read_text("utf-8") == "a: 1\n"
        writing.join()


def test_a_file_that_is_still_written_is_waited_for(tmp_path: Path) -> None:
    file, changes = tmp_path / "x.yml", Changes()
    file.write_text("a: 1\n", "utf-8")
    with watch_folder(tmp_path, changes):
        with file.open("a", encoding="utf-8") as opened:
            opened.write("b: 2\n")
            opened.flush()
            # Elsewhere nobody tells that a file was closed.
            assert not changes.take(0.1) or sys.platform != "linux"
        assert changes.take(5.0) == frozenset((file,))


def test_reading_is_no_change(tmp_path: Path) -> None:
    (tmp_path / "x.yml").write_text("a: 1\n", "utf-8")
    changes = Changes()
    with watch_folder(tmp_path, changes):
        (tmp_path / "x.yml").read_bytes()
        assert not changes.take(0.1)


def wait_until(true: Callable[[], bool]) -> None:
    """Wait up to five seconds."""
    end = time.monotonic() + 5
    while not true():
        assert time.monotonic() < end
        time.sleep(0.01)


@pytest.mark.browser
def test_an_edit_reaches_the_open_page(chromium: Browser, lab: Lab, preview: Preview, client: Client) -> None:
    page = chromium.new_page()
    page.set_default_timeout(5000)
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text) if message.type == "error" else None)
    page.goto(f"http://127.0.0.1:{client.port}/")
    page.evaluate("window.kept = true")
    page.wait_for_timeout(200)
    lab.site = site_saying("second")
    preview.refresh()
    expect(page.get_by_text("second")).to_be_visible()
    assert page.evaluate("window.kept")
    lab.site, lab.problems = None, (WRONG,)
    preview.refresh()
    expect(page.get_by_role("alert")).to_contain_text("the board is <wet> [arrives-wet]")
    expect(page.get_by_role("alert")).to_contain_text("x.yml:2:3, step dip")
    expect(page.get_by_text("second")).to_be_visible()
    lab.site, lab.problems = site_saying("third"), ()
    preview.refresh()
    expect(page.get_by_text("third")).to_be_visible()
    expect(page.get_by_role("alert")).to_be_hidden()
    assert said == []
    page.close()


CARD = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 3"><path d="M0 0h4v3z"/></svg>'


def site_with_card(text: str) -> Site:
    """A page with a card, whose drawing carries the same text."""
    html = f'<section><p>{text}</p><ul class="nw-card-list"><li><a href="#x"><img src="x.svg" alt=""><b>Line card</b></a></li></ul></section>'  # noqa: E501
    page = Page("", "Small lab", (Section(1, "page_top", "Small lab", html),), listed=True)
    drawing = SiteFile("x.svg", CARD.replace(b"0h4v3z", f"0h4v3z{text}".encode()))
    return replace(tiny_site("Small lab"), pages=(page,), files=(drawing,))


@pytest.mark.browser
def test_a_card_stands_beside_its_page_and_follows(
    chromium: Browser, lab: Lab, preview: Preview, client: Client
) -> None:
    lab.site = site_with_card("first")
    preview.refresh()
    page = chromium.new_page(viewport={"width": 1280, "height": 800})
    page.set_default_timeout(5000)
    page.goto(f"http://127.0.0.1:{client.port}/")
    beside = page.get_by_role("complementary", name="Card beside the page")
    expect(beside).to_be_hidden()
    page.get_by_role("button", name="Card beside the page").click()
    expect(beside.get_by_role("img", name="Line card")).to_be_visible()
    before = beside.get_by_role("img").get_attribute("src")
    page.wait_for_timeout(200)
    lab.site = site_with_card("second")
    preview.refresh()
    expect(page.get_by_text("second")).to_be_visible()
    expect(beside.get_by_role("img")).not_to_have_attribute("src", before or "")
    page.reload()
    expect(beside).to_be_visible()
    page.get_by_role("button", name="Page alone").click()
    expect(beside).to_be_hidden()
    page.close()


@pytest.mark.browser
def test_a_reader_who_missed_a_build_gets_the_page_as_it_is(
    chromium: Browser, lab: Lab, preview: Preview, client: Client
) -> None:
    page = chromium.new_page()
    page.set_default_timeout(5000)

    def build_meanwhile(route: Route) -> None:
        lab.site = site_saying("second")
        preview.refresh()
        route.continue_()

    page.route("**/_newel/preview.js", build_meanwhile, times=1)
    page.goto(f"http://127.0.0.1:{client.port}/")
    expect(page.get_by_text("second")).to_be_visible()
    page.close()


def told(client: Client, path: str, version: int) -> list[str]:
    """The first message of the stream about a page that was opened at a version."""
    connection = http.client.HTTPConnection("127.0.0.1", client.port, timeout=5)
    connection.request("GET", f"/_newel/news?page={path}&version={version}")
    message = json.loads(connection.getresponse().readline().removeprefix(b"data: "))
    connection.close()
    return sorted(message)


def test_news_bring_the_page_only_to_who_has_another(preview: Preview, client: Client) -> None:
    assert told(client, "index.html", preview.shown.version) == ["problems", "version"]
    assert told(client, "index.html", 0) == ["problems", "reload", "version"]
    assert told(client, "nowhere/index.html", 0) == ["problems", "version"]


def test_the_end_lets_open_pages_go(preview: Preview, client: Client) -> None:
    connection = http.client.HTTPConnection("127.0.0.1", client.port, timeout=5)
    connection.request("GET", "/_newel/news")
    stream = connection.getresponse()
    assert stream.readline().startswith(b"data: ")
    preview.end()
    assert stream.read().strip() == b""
    connection.close()


def test_a_page_that_somebody_opens_is_made_ready(lab: Lab, client: Client) -> None:
    connection = http.client.HTTPConnection("127.0.0.1", client.port, timeout=5)
    connection.request("GET", "/_newel/news?page=index.html")
    assert connection.getresponse().readline().startswith(b"data: ")
    wait_until(lambda: lab.expected == ["index.html"])
    connection.close()


def test_what_was_seen_before_is_no_news(lab: Lab, preview: Preview, client: Client) -> None:
    first = preview.shown.version
    preview.refresh()
    assert told(client, "index.html", first) == ["problems", "version"]
    lab.site = site_saying("second")
    preview.refresh()
    assert told(client, "index.html", first) == ["problems", "reload", "version"]


def test_a_page_says_which_build_it_shows(lab: Lab, preview: Preview, client: Client) -> None:
    assert f'data-version="{preview.shown.version}"' in client.get("/")[1]
    lab.site = site_saying("second")
    preview.refresh()
    assert f'data-version="{preview.shown.version}"' in client.get("/")[1]


def test_a_port_that_is_taken_is_refused_with_another(client: Client) -> None:
    with pytest.raises(NewelError) as told:
        refuse_taken(client.port)
    assert told.value.id == "port-taken"
    assert f"--port {client.port + 1}" in told.value.hint
