"""A lab as a person has it: a folder, the command in a process of its own, and a phone that scans cards."""

import functools
import http.server
import io
import os
import re
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pdfplumber
import zxingcpp
from PIL import Image

from tests.press.pdf_reading import picture

ROOT = Path(__file__).parents[2]
ID = "weigh-a-coupon"
CARD = f"{ID}/balance-card"


@dataclass(frozen=True)
class Said:
    """What a command answered, in ordinary spaces."""

    status: int
    text: str


@dataclass(frozen=True)
class OneLab:
    """A lab's folder, the address at which its site is served, and the day."""

    home: Path
    address: str
    day: int = 1795600000

    def newel(self, *words: str) -> Said:
        """Type a command in the lab's folder."""
        env = {**os.environ, "PYTHONPATH": str(ROOT), "SOURCE_DATE_EPOCH": str(self.day), "COLUMNS": "100"}
        command = [str(Path(sys.executable).with_name("newel")), *words]
        done = subprocess.run(command, cwd=self.home, env=env, capture_output=True, text=True, check=False)
        text = f"{done.stdout}{done.stderr}".replace("\u00a0", " ")
        assert "own-fault" not in text, text
        return Said(done.returncode, text)

    def edit(self, old: str, new: str, file: str = f"procedures/{ID}.yml") -> None:
        """Change words of a file in an editor."""
        path = self.home / file
        text = path.read_text("utf-8")
        assert text.count(old) == 1, old
        path.write_text(text.replace(old, new), "utf-8")

    def printed(self) -> bytes:
        """The card as it comes out of the printer."""
        return (self.home / "site" / "cards" / f"{CARD}.pdf").read_bytes()


def scanned(pdf: bytes) -> str:
    """The address in the square of a printed card, as a phone reads it off the paper."""
    paper: Image.Image = picture(pdf, 150)
    (code,) = zxingcpp.read_barcodes(paper)
    return str(code.text)


def words_of(pdf: bytes) -> str:
    """All words of a sheet, in one line."""
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in opened.pages))


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """A folder on a port of this machine, there already or to come; its address with the last slash."""
    handler = functools.partial(_Quiet, directory=str(folder))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as running:
        thread = threading.Thread(target=running.serve_forever, daemon=True)
        thread.start()
        yield f"http://127.0.0.1:{running.server_address[1]}/"
        running.shutdown()
        thread.join()
