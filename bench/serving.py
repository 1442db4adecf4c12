"""Edit to new HTML at the client: a file is saved, and the preview tells the open page its new words."""

import http.client
import os
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from functools import partial
from pathlib import Path

from playwright.sync_api import Error

from bench.measuring import Times
from bench.painting import chromium_path, painted_edits
from bench.rows import Row, not_measured, shown
from tests.many_labs import procedure_id, write_many

_SERVE = "import sys; from generator.cli import main; main(['serve', '--port', sys.argv[1]])"
_LONGEST = 600.0
_BETWEEN = 0.5
_VERSION = re.compile(r'preview\.js" data-version="(\d+)"')


def serve_rows(folder: Path, most: int, runs: int) -> Iterator[Row]:
    """Wall time through the real command, a real socket and real file events; median and spread."""
    labs = {count: folder / str(count) for count in (10, 100, 1000) if count <= most}
    for count, lab in labs.items():
        write_many(lab, count)
    with ExitStack() as served:
        ports = {count: served.enter_context(_served(lab)) for count, lab in labs.items()}
        # By turns, so that the labs of all sizes meet the same minutes of the machine.
        turns = zip(*(_edits(lab, ports[count], count, runs) for count, lab in labs.items()), strict=True)
        html = dict(zip(labs, map(Times, zip(*turns, strict=True)), strict=True))
        for count, lab in labs.items():
            yield _row(count, html)
            yield _painted_row(lab, ports[count], count, runs, html[count])


def _row(count: int, found: dict[int, Times]) -> Row:
    small, times = found.get(100), found[count]
    ratio = f"{times.median / small.median:.2f}x" if small and count == 1000 else ""
    beside = f"N = 100 {shown(small.median)}" if small and count == 1000 else ""
    goal = "<= 10 ms, <= 1.3x" if count == 1000 else ""
    return Row("edit to new HTML at the client, wall", count, len(times.seconds), shown(times.median), beside,
               ratio, f"{times.spread:.0%}", goal)  # fmt: skip


def _painted_row(lab: Path, port: int, count: int, runs: int, html: Times) -> Row:
    """The same edit in a page that is open in Chromium, beside the new HTML alone a moment before."""
    what, browser = "edit to pixels in Chromium, wall", chromium_path()
    if browser is None:
        return not_measured(what, count, "no Chromium")
    id = procedure_id(count - 1)
    address = f"http://127.0.0.1:{port}/procedures/{id}/index.html"
    save = partial(_save, lab / "procedures" / f"{id}.yml")
    try:
        times = Times(tuple(painted_edits(browser, address, "#lid-off-0 .nw-step-say", save, runs)))
    except (Error, RuntimeError) as bad:
        return not_measured(what, count, str(bad).splitlines()[0][:100])
    return Row(what, count, runs, shown(times.median), f"new HTML alone {shown(html.median)}",
               f"{times.median / html.median:.2f}x", f"{times.spread:.0%}", "<= 100 ms")  # fmt: skip


def _edits(lab: Path, port: int, count: int, runs: int) -> Iterator[float]:
    """Seconds from the save to the new words at a client that has the page open, as a browser has.

    Another procedure each time as long as there are some, and a moment in between: nobody saves faster.
    """
    for turn in range(runs + 1):
        id, words = procedure_id(turn % count), f"Lid off and aside {'again ' * (turn // count)}now."
        with _opened(port, f"procedures/{id}/index.html") as stream:
            file = lab / "procedures" / f"{id}.yml"
            text = _edited(file, words)
            time.sleep(_BETWEEN)
            start = time.perf_counter()
            file.write_text(text, encoding="utf-8")
            while words not in _next(stream):
                pass
            if turn:
                yield time.perf_counter() - start


def _save(file: Path, words: str) -> None:
    file.write_text(_edited(file, words), encoding="utf-8")


def _edited(file: Path, words: str) -> str:
    """The sentence about the lid, said otherwise."""
    return re.sub(r"Lid off[^.]*\.", words, file.read_text(encoding="utf-8"), count=1)


@contextmanager
def _opened(port: int, path: str) -> Iterator[http.client.HTTPResponse]:
    """The stream of news about a page, its first message read."""
    version = _VERSION.search(_page(port, path))
    news = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    news.request("GET", f"/_newel/news?page={path}&version={version[1] if version else ''}")
    stream = news.getresponse()
    _next(stream)
    yield stream
    news.close()


def _next(stream: http.client.HTTPResponse) -> str:
    while not (line := stream.readline()).startswith(b"data:"):
        pass
    return line.decode("utf-8")


def _page(port: int, path: str) -> str:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    connection.request("GET", f"/{path}")
    body = connection.getresponse().read().decode("utf-8")
    connection.close()
    return body


@contextmanager
def _served(folder: Path) -> Iterator[int]:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port: int = free.getsockname()[1]
    words = (sys.executable, "-c", _SERVE, str(port))
    process = subprocess.Popen(words, cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                               env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})  # fmt: skip
    try:
        _wait(port)
        yield port
    finally:
        process.kill()
        process.wait()


def _wait(port: int) -> None:
    end = time.monotonic() + _LONGEST
    while time.monotonic() < end:
        with socket.socket() as tried:
            if tried.connect_ex(("127.0.0.1", port)) == 0:
                return
        time.sleep(0.1)
    raise TimeoutError("the preview did not begin")
