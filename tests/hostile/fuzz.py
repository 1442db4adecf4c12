"""Many strange inputs through each door, led by which lines of our code they reach: `make fuzz`.

`python -m tests.hostile.fuzz [--door NAME] [--runs N] [--seed N]` needs atheris. A fault stops the run,
and the input that did it stays in `.cache/`.
"""

import argparse
import json
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["generator"]):
    from tests.hostile.doors import DOORS
    from tests.hostile.mutation import DEEDS, WORDS_ONLY, mutate
    from tests.hostile.seeds import SEEDS

SHARES = {"reader": 0.35, "units": 0.3, "walk": 0.25, "views": 0.1}
LONGEST = 20  # seconds of CPU for one input, with every line counted
MEMORY = 3_000  # MB
SPARE = 300  # the fuzzer counts a few inputs that never come here
LARGEST = 60_000  # bytes of one input


class Tally:
    """How many inputs went through a door, how many were understood, how long the slowest took."""

    def __init__(self, door: str, runs: int) -> None:
        self.door, self.runs = door, runs
        self.tried = self.understood = 0
        self.slowest = 0.0
        self.started = time.monotonic()

    def one(self, data: bytes) -> None:
        """Try one input; whatever is raised here stops the run."""
        begun = time.process_time()
        self.understood += DOORS[self.door](data)
        took = time.process_time() - begun
        self.slowest = max(self.slowest, took)
        assert took < LONGEST, f"{took:.1f} s for one input"
        self.tried += 1
        if self.tried == self.runs:
            self.tell()

    def tell(self) -> None:
        """One line of what was tried."""
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
        told = {"door": self.door, "tried": self.tried, "understood": self.understood,
                "slowest s": round(self.slowest, 2), "memory MB": memory,
                "minutes": round((time.monotonic() - self.started) / 60, 1)}  # fmt: skip
        print(f"\n{json.dumps(told)}", flush=True)


def _pieces(data: bytes, most: int, seed: int) -> bytes:
    """Now and then single bytes, else whole pieces of a lab."""
    if seed % 8 == 0:
        changed: bytes = atheris.Mutate(data, most)
        return changed
    return mutate(data, seed)[:most]


def _near_good(data: bytes, most: int, seed: int) -> bytes:
    """Mostly one step away from a good lab, since pages are made of labs without an error alone."""
    if seed % 4 == 0:
        return _pieces(data, most, seed)
    good = SEEDS["views"]()
    return mutate(good[seed % len(good)], seed, WORDS_ONLY if seed % 3 else DEEDS)[:most]


MUTATORS: dict[str, Callable[[bytes, int, int], bytes]] = {"walk": _pieces, "views": _near_good}


def fuzz(door: str, runs: int, seed: int) -> None:
    """Fuzz one door; ends the process."""
    Path(".cache").mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as corpus:
        for number, content in enumerate(SEEDS[door]()):
            (Path(corpus) / f"seed-{number}").write_bytes(content)
        tally = Tally(door, runs)
        words = [
            "fuzz",
            corpus,
            f"-runs={runs + SPARE}",
            f"-seed={seed}",
            f"-max_len={LARGEST}",
            f"-timeout={LONGEST * 15}",  # by the clock on the wall, for a machine that does other work too
            f"-rss_limit_mb={MEMORY}",
            "-verbosity=0",
            f"-artifact_prefix=.cache/fuzz-{door}-",
        ]
        own = {"custom_mutator": MUTATORS[door]} if door in MUTATORS else {}
        atheris.Setup(words, tally.one, **own)
        atheris.Fuzz()


def main() -> int:
    """Fuzz the door that is named, or each in a process of its own; the status is that of the worst."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--door", choices=tuple(DOORS))
    words.add_argument("--runs", type=int, default=200_000, help="inputs in all, or through the one door")
    words.add_argument("--seed", type=int, default=1)
    asked = words.parse_args()
    if asked.door:
        fuzz(asked.door, asked.runs, asked.seed)
    return max(
        subprocess.run(
            [sys.executable, "-m", "tests.hostile.fuzz", "--door", door, "--seed", str(asked.seed),
             "--runs", str(round(asked.runs * share))],
            check=False,
        ).returncode
        for door, share in SHARES.items()
    )  # fmt: skip


if __name__ == "__main__":
    sys.exit(main())
