"""Edit to new HTML at the client: a file is saved, the preview tells, the page has the new words."""

import http.client
import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bench.measuring import Times
from bench.rows import Row, shown
from tests.many_labs import procedure_id, write_many

_SERVE = "import sys; from generator.cli import main; main(['serve', '--port', sys.argv[1]])"
_LONGEST = 600.0


def serve_rows(folder: Path, most: int, runs: int) -> Iterator[Row]:
    """Wall time through the real command, a real socket and real file events; median and spread."""
    found: dict[int, Times] = {}
    for count in (10, 100, 1000):
        if count <= most:
            write_many(folder / str(count), count)
            found[count] = Times(tuple(_edits(folder / str(count), count, runs)))
            yield _row(count, found)


def _row(count: int, found: dict[int, Times]) -> Row:
    small, times = found.get(100), found[count]
    ratio = f"{times.median / small.median:.2f}x" if small and count == 1000 else ""
    beside = f"N = 100 {shown(small.median)}" if small and count == 1000 else ""
    goal = "<= 10 ms, <= 1.3x" if count == 1000 else ""
    return Row("edit to new HTML at the client, wall", count, len(times.seconds), shown(times.median), beside,
               ratio, f"{times.spread:.0%}", goal)  # fmt: skip


def _edits(folder: Path, count: int, runs: int) -> Iterator[float]:
    """Seconds from the save to the new words, in another procedure each time."""
    with _served(folder) as port:
        news = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
        news.request("GET", "/_newel/news")
        stream = news.getresponse()
        _next(stream)
        for turn in range(runs + 1):
            id, words = procedure_id(turn % count), f"Lid off and aside {'again ' * (turn // count)}now."
            file = folder / "procedures" / f"{id}.yml"
            text = file.read_text(encoding="utf-8").replace("Lid off.", words, 1)
            start = time.perf_counter()
            file.write_text(text, encoding="utf-8")
            while words not in _page(port, f"procedures/{id}/index.html"):
                _next(stream)
            if turn:
                yield time.perf_counter() - start
        news.close()


def _next(stream: http.client.HTTPResponse) -> None:
    while not stream.readline().startswith(b"data:"):
        pass


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
