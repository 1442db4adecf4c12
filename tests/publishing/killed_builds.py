"""A process of its own: builds in copies of itself, each killed as a line of standard input says.

Only the pages of the lab itself are laid out, worked out once beforehand by this process: the moments fall
where something is written, and no copy wakes the press, whose threads do not live on in a copy.
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
from generator.outputs.page import whole_page
from generator.outputs.site import SiteFile
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
        own = (page for page in made.site.pages if page.address.split("/")[0] not in _OF_EVERY_LAB)
        pages = tuple(whole_page(page) for page in own)
        files = tuple(SiteFile(file.path, file.content) for file in made.site.files)
        _made[text] = replace(made, site=replace(made.site, pages=pages, files=files))
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
    """One build, cut off as the line says."""
    small_site(Path("procedures"))
    run_killed(lambda: main(sys.argv[1:]), line)


if __name__ == "__main__":
    for module in PRELOADED:
        importlib.import_module(module)
    generator.pipeline.build_site = small_site
    warm_up()
    answer(act)
