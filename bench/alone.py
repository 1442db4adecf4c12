"""`python -m bench.alone`: `newel build` here; prints the CPU seconds of the pages alone, the rest left out.

The rest is the reading of procedures, the walk, every rule, and the views: all that comes before a page is
laid out from a finished view. Loading the program, the engine, the index and the files stay in.
"""

import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import Any

import generator.pipeline.chapter as chapter
from generator.cli import main


class _Clock:
    """CPU seconds spent in what is left out."""

    def __init__(self) -> None:
        self.seconds = 0.0

    def called(self, work: Callable[..., Any]) -> Callable[..., Any]:
        """The same work, its time noted."""

        def timed(*words: Any, **more: Any) -> Any:
            start = time.process_time()
            made = work(*words, **more)
            self.seconds += time.process_time() - start
            return made

        return timed

    def walked(self, work: Callable[..., Iterator[Any]]) -> Callable[..., Iterator[Any]]:
        """The same row of things made one by one, the time of each noted."""

        def timed(*words: Any, **more: Any) -> Iterator[Any]:
            row, end = work(*words, **more), object()
            step = self.called(lambda: next(row, end))
            while (made := step()) is not end:
                yield made

        return timed


def _run() -> None:
    clock = _Clock()
    chapter._judge = clock.called(chapter._judge)
    chapter.procedure_sheets = clock.walked(chapter.procedure_sheets)  # type: ignore[attr-defined]
    chapter.summary_of = clock.called(chapter.summary_of)  # type: ignore[attr-defined]
    with suppress(SystemExit):
        main(["build"])
    print(time.process_time() - clock.seconds)


if __name__ == "__main__":
    _run()
