"""A process of its own: posts in copies of itself, each killed after a delay that standard input names.

Nothing here may start a thread, or a copy could hang; each copy starts its own. A line that says "whole" is
left to end; one that names a call of the system ("fsync", "link") is killed when it comes to that call.
"""

import importlib
import os
import signal
import sys
import time

from generator.cli import main

PRELOADED = (
    "generator.cli.post",
    "generator.pipeline.posting",
    "generator.publishing.files",
    "generator.cli.report",
)


def post(words: list[str], line: str) -> None:
    """One posting in a copy of this process, cut off as the line says."""
    child = os.fork()
    if not child:
        if line in ("fsync", "link"):
            setattr(os, line, lambda *_, **__: os.kill(os.getpid(), signal.SIGKILL))
        main(words)
    if line.replace(".", "").isdigit():
        time.sleep(float(line))
        os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


if __name__ == "__main__":
    for module in PRELOADED:
        importlib.import_module(module)
    for asked in sys.stdin:
        started = time.monotonic()
        post(sys.argv[1:], asked.strip())
        print(f"ended {time.monotonic() - started:.3f}", flush=True)
