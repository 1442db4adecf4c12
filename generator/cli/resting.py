"""The collector of circles at rest during one run of a command."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collector_at_rest() -> Iterator[None]:
    """Let it rest: what a command makes holds few circles, and looking for them costs a part of it."""
    working = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if working:
            gc.enable()
