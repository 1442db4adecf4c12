"""Run the preview until it is ended."""

import contextlib
import datetime
import tempfile
from collections.abc import Callable
from pathlib import Path

import uvicorn

from generator.pipeline import build_site
from generator.publishing.store import open_store
from generator.serving.app import preview_app
from generator.serving.preview import Preview
from generator.serving.watching import watch_folder


def serve(folder: Path, port: int, day: Callable[[], datetime.date], state: Path) -> None:
    """Show the draft of a folder at http://127.0.0.1:PORT/ until Ctrl+C; `day` says today at each build.

    `state` is the folder `.newel` in which builds keep what the press made.
    """
    with tempfile.TemporaryDirectory() as work, open_store(state) as kept:
        preview = Preview(lambda: build_site(folder, day(), draft=True, kept=kept, preview=True), Path(work))
        preview.refresh()
        with watch_folder(folder, preview.refresh), contextlib.suppress(KeyboardInterrupt):
            uvicorn.run(preview_app(preview), host="127.0.0.1", port=port, log_level="warning")
