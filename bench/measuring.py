"""Times of two things by turns, so that a busy machine slows both, and what a process used."""

import gc
import json
import os
import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Times:
    """Seconds of each run."""

    seconds: tuple[float, ...]

    @property
    def median(self) -> float:
        """The middle one."""
        return statistics.median(self.seconds)

    @property
    def spread(self) -> float:
        """How far the middle half of the runs lies apart, as a share of the median."""
        if len(self.seconds) < 4:
            return (max(self.seconds) - min(self.seconds)) / self.median
        low, _, high = statistics.quantiles(self.seconds, n=4)
        return (high - low) / self.median


@dataclass(frozen=True, slots=True)
class Pair:
    """Ours and the yardstick, run by turns."""

    ours: Times
    yardstick: Times

    @property
    def ratio(self) -> float:
        """Ours as a multiple of the yardstick, median to median."""
        return self.ours.median / self.yardstick.median


def by_turns(
    ours: Callable[[], object], yardstick: Callable[[], object], runs: int,
    before: Callable[[], object] = lambda: None,
) -> Pair:  # fmt: skip
    """Run both `runs` times, after one run each that does not count; CPU time, child processes with it.

    `before` goes before each run of ours and is not counted.
    """
    before()
    ours()
    yardstick()
    times: tuple[list[float], list[float]] = ([], [])
    for _ in range(runs):
        before()
        for kept, work in zip(times, (ours, yardstick), strict=True):
            kept.append(cpu_of(work))
    return Pair(Times(tuple(times[0])), Times(tuple(times[1])))


def cpu_of(work: Callable[[], object]) -> float:
    """CPU seconds of one run."""
    with collector_at_rest():
        start = _cpu_so_far()
        work()
        return _cpu_so_far() - start


@contextmanager
def collector_at_rest() -> Iterator[None]:
    """The collector of circles rests during a run, as it does in `newel check` and `newel build`."""
    gc.collect()
    resting = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if resting:
            gc.enable()


def _cpu_so_far() -> float:
    """User and system seconds of this process and of the children that have ended."""
    used = (resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(one.ru_utime + one.ru_stime for one in used)


@dataclass(frozen=True, slots=True)
class Used:
    """What a process used: CPU seconds, wall seconds, peak memory in MB, exit status, its errors."""

    cpu: float
    wall: float
    peak: float
    status: int
    said: str


# A process counts what its parent held when it began, so that a small one has to begin it. The command's own
# output goes nowhere, its errors go on to us.
_BEGIN = """
import json, os, sys
nowhere = os.open(os.devnull, os.O_WRONLY)
words = sys.argv[1:]
process = os.posix_spawnp(words[0], words, os.environ, file_actions=[(os.POSIX_SPAWN_DUP2, nowhere, 1)])
_, status, used = os.wait4(process, 0)
print(json.dumps([used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, os.waitstatus_to_exitcode(status)]))
"""


def run_process(words: Sequence[str], folder: Path) -> Used:
    """Run a command to its end in a folder; what Python compiles is kept, as on anybody's own machine."""
    env = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    env.pop("PYTHONDONTWRITEBYTECODE", None)
    start = time.perf_counter()
    begun = subprocess.run((sys.executable, "-S", "-c", _BEGIN, *words), cwd=folder, capture_output=True,
                           check=True, env=env)  # fmt: skip
    wall = time.perf_counter() - start
    cpu, peak, status = json.loads(begun.stdout)
    return Used(cpu, wall, peak, status, begun.stderr.decode("utf-8", "replace").strip())
