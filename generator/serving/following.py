"""After each save first what was saved, then everything; a save meanwhile comes first again."""

import gc
import logging
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from generator.serving.changes import Changes
from generator.serving.preview import Preview, SupersededError

_LOG = logging.getLogger(__name__)
_AFTER = 0.1  # seconds; a browser has drawn by then what the glance told it


def follow(changes: Changes, preview: Preview) -> None:
    """Show what changes until the changes end.

    From a save to the build behind it the collector of circles rests: an author would wait for it.
    """

    def pause() -> None:
        if changes.waiting:
            raise SupersededError

    patience: float | None = None
    while (files := changes.take(patience)) is not None:
        try:
            if files:
                gc.disable()
                patience = _AFTER if preview.glance(files) else 0.0
            else:
                gc.enable()
                patience = None if preview.refresh(pause) else patience
        except Exception:  # a fault of ours in one save; the next may be shown all the same
            _LOG.exception("a save could not be shown")
            patience = 0.0 if files else None


@contextmanager
def following(changes: Changes, preview: Preview) -> Iterator[None]:
    """Follow in a thread of its own while the block runs."""
    thread = threading.Thread(target=follow, args=(changes, preview), name="following", daemon=True)
    thread.start()
    try:
        yield
    finally:
        changes.end()
        thread.join()
        gc.enable()
