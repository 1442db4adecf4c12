"""`python -m bench`: every row that can be measured here, as ratios of this one run."""

import argparse
import tempfile
from collections.abc import Iterator
from pathlib import Path

from bench.building import build_rows
from bench.cards import card_rows
from bench.checking import check_rows
from bench.rows import Row, table
from bench.searching import search_rows
from bench.serving import serve_rows
from bench.weighing import weigh_rows


def main() -> None:
    """Measure and print."""
    words = argparse.ArgumentParser(prog="python -m bench", description=__doc__)
    words.add_argument("--runs", type=int, default=15, help="runs of each short row")
    words.add_argument("--most", type=int, default=1000, help="most procedures to build: 10, 100, 1000")
    asked = words.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        print(table(_rows(Path(folder), asked.runs, asked.most)), end="")
    print("Ratios of one run on one machine; the two of a row ran by turns. Spread: middle half over median.")


def _rows(folder: Path, runs: int, most: int) -> Iterator[Row]:
    yield from check_rows(folder / "check", runs)
    yield from card_rows(runs)
    yield from weigh_rows(folder / "weight")
    yield from build_rows(folder / "build", most)
    sites = {count: folder / "build" / str(count) / "lab" / "site" for count in (10, 100, 1000)}
    yield from search_rows({count: site for count, site in sites.items() if count <= most}, "plate")
    # Edits are short, and the first ones of a server slower than those of the rest of the day.
    yield from serve_rows(folder / "serve", most, 2 * runs)


if __name__ == "__main__":
    main()
