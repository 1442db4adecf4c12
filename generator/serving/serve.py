"""Run the preview until it is ended."""

import contextlib
import datetime
import tempfile
from collections.abc import Callable
from pathlib import Path

import uvicorn

from generator.pipeline import build_site
from generator.serving.app import preview_app
from generator.serving.preview import Preview
from generator.serving.watching import watch_folder


def serve(folder: Path, port: int, day: Callable[[], datetime.date]) -> None:
    """Show the draft of a folder at http://127.0.0.1:PORT/ until Ctrl+C; `day` says today at each build."""
    with tempfile.TemporaryDirectory() as work:
        preview = Preview(lambda: build_site(folder, day(), draft=True), Path(work))
        preview.refresh()
        with watch_folder(folder, preview.refresh), contextlib.suppress(KeyboardInterrupt):
            uvicorn.run(preview_app(preview), host="127.0.0.1", port=port, log_level="warning")
