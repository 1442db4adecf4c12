"""A process of its own: posts in copies of itself, each killed as a line of standard input says.

Nothing here may start a thread, or a copy could hang; each copy starts its own. A line "whole" lets the copy
end; a number is the seconds after which it is killed; the name of a call of the system ("fsync", "link",
"rename") kills it when it comes to that call.
"""

import importlib
import os
import signal
import sys
import time
from collections.abc import Callable

_LONGEST = 120  # seconds; a copy that hangs fails its test and does not hold it up for ever
CALLS = ("fsync", "link", "rename")
PRELOADED = (
    "generator.cli.post",
    "generator.pipeline.posting",
    "generator.publishing.files",
    "generator.cli.report",
)


def run_killed(act: Callable[[], object], line: str) -> None:
    """Act in a copy of this process, cut off as the line says."""
    child = os.fork()
    if not child:
        signal.alarm(_LONGEST)
        if line in CALLS:
            setattr(os, line, lambda *_, **__: os.kill(os.getpid(), signal.SIGKILL))
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # what the copy says must not stand among our answers
        act()
        os._exit(1)  # a command leaves by itself
    if line.replace(".", "").isdigit():
        time.sleep(float(line))
        os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


def answer(act: Callable[[str], None]) -> None:
    """For every line asked act, then say how long it took."""
    for asked in sys.stdin:
        started = time.monotonic()
        act(asked.strip())
        print(f"ended {time.monotonic() - started:.3f}", flush=True)


if __name__ == "__main__":
    from generator.cli import main

    for module in PRELOADED:
        importlib.import_module(module)
    answer(lambda line: run_killed(lambda: main(sys.argv[1:]), line))
