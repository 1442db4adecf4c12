"""A process of its own: builds in copies of itself, each killed as a line of standard input says.

"small" before the moment lays out only the pages of the lab itself, worked out once beforehand, so that the
moments fall where something is written; without it the whole command runs.
"""

import datetime
import importlib
import sys
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import Any

from jinja2 import Environment

import generator.pipeline
from generator.cli import main
from generator.pipeline import Outcome, build_site
from tests.posting.killing import answer, run_killed
from tests.posting.labs import ID

PRELOADED = (
    "generator.cli.build",
    "generator.cli.report",
    "generator.pipeline.build",
    "generator.publishing.publish",
    "generator.publishing.store",
    "generator.mkdocs_plugin",
)
_OF_EVERY_LAB = ("checks", "calculators", "start")
_made: dict[bytes, Outcome] = {}


def small_site(folder: Path, *_: Any, **__: Any) -> Outcome:
    """The build of what lies there, without the pages that every lab has."""
    text = (folder / f"{ID}.yml").read_bytes()
    if text not in _made:
        made = build_site(folder, datetime.date(2026, 11, 25), draft=True)
        assert made.site is not None
        pages = tuple(p for p in made.site.pages if p.address.split("/")[0] not in _OF_EVERY_LAB)
        _made[text] = replace(made, site=replace(made.site, pages=pages))
    return _made[text]


def warm_up() -> None:
    """One build in this process, which leaves the theme's templates compiled for all copies."""
    compile_once = Environment.compile
    made: dict[tuple[Any, ...], Any] = {}

    def compiled(self: Environment, *words: Any, **named: Any) -> Any:
        key = (*words, *sorted(named.items()))
        if key not in made:
            made[key] = compile_once(self, *words, **named)
        return made[key]

    Environment.compile = compiled  # type: ignore[method-assign]
    with suppress(SystemExit):
        main(sys.argv[1:])


def act(line: str) -> None:
    """One build of one kind, cut off as the line says."""
    kind, _, how = line.rpartition(" ")
    if kind == "small":
        small_site(Path("procedures"))
        generator.pipeline.build_site = small_site
    run_killed(lambda: main(sys.argv[1:]), how)
    generator.pipeline.build_site = build_site


if __name__ == "__main__":
    for module in PRELOADED:
        importlib.import_module(module)
    small_site(Path("procedures"))
    generator.pipeline.build_site = small_site
    warm_up()
    answer(act)
