"""Run the preview until it is ended."""

import contextlib
import datetime
import gc
import socket
import tempfile
from collections.abc import Callable
from pathlib import Path
from types import FrameType

import uvicorn

from generator.pipeline.refresh import Desk
from generator.problems import NewelError
from generator.publishing.store import open_store
from generator.serving.app import preview_app
from generator.serving.changes import Changes
from generator.serving.following import following
from generator.serving.preview import Preview
from generator.serving.watching import watch_folder


def serve(
    folder: Path, port: int, day: Callable[[], datetime.date], state: Path, ready: Callable[[], None]
) -> None:
    """Show the draft of a folder at http://127.0.0.1:PORT/ until Ctrl+C; `day` says today at each build.

    `state` is the folder `.newel` in which builds keep what the press made; `ready` is called once the pages
    can be opened. Raises NewelError "port-taken" where something else listens.
    """
    refuse_taken(port)
    with tempfile.TemporaryDirectory() as work, open_store(state) as kept:
        preview, changes = Preview(Desk(folder, day, kept), Path(work)), Changes()
        with watch_folder(folder, changes):
            preview.refresh()
            gc.collect()
            gc.freeze()  # what a thousand procedures gave is not looked through again for what can go
            ready()
            with following(changes, preview), contextlib.suppress(KeyboardInterrupt):
                _Server(preview, port).run()


class _Server(uvicorn.Server):
    """Lets open pages go when it is ended; they listen for news without end otherwise."""

    def __init__(self, preview: Preview, port: int) -> None:
        app = preview_app(preview)
        told = uvicorn.Config(app, "127.0.0.1", port, log_level="warning", timeout_graceful_shutdown=1)
        super().__init__(told)
        self._preview = preview

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """A signal has come."""
        super().handle_exit(sig, frame)
        self._preview.end()


def refuse_taken(port: int) -> None:
    """Raise NewelError where the port cannot be had."""
    with socket.socket() as tried:
        # As the server itself does: a port that has just been let go may be had again.
        tried.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            tried.bind(("127.0.0.1", port))
        except OSError as taken:
            raise NewelError(
                "port-taken",
                f"port {port} cannot be had ({taken.strerror})",
                "another program listens there, perhaps another `newel serve`",
                f"end that one, or write `newel serve --port {port + 1 if port < 65535 else 8000}`",
            ) from taken
