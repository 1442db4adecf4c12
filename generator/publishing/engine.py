"""The engine that lays pages into the theme: MkDocs, in this process, strict."""

import io
import logging
import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, MkDocsException

from generator.outputs.frames import FramesUnfitError
from generator.outputs.site import Progress, Site
from generator.problems import NewelError

_DEFAULT = b"site_name: site\ntheme: material\nplugins: [search, newel]\n"


def run_engine(
    site: Site, folder: Path, config_path: Path | None, progress: Progress | None, offline: bool = False,
    frames: bool = True,
) -> str | None:  # fmt: skip
    """Build the site into a folder; raises NewelError "engine-failed" for each warning too.

    The pages of an `offline` copy say of which day they are. Without `frames` the engine lays out every page.
    Returns the engine's own search index ("" where it has none), None where more than the theme and our own
    plugin has a hand in the pages.
    """
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")  # the theme prints a page of news otherwise
    with _heard_warnings() as heard, tempfile.TemporaryDirectory() as empty:
        try:
            try:
                return _build(_load(config_path, folder, Path(empty)), site, progress, offline, frames=frames)
            except FramesUnfitError:
                return _build(_load(config_path, folder, Path(empty)), site, progress, offline, frames=False)
        except (Abort, MkDocsException) as error:
            said = "\n".join(heard) or str(error)
            what = f"the pages could not be laid out:\n{said}"
            raise NewelError("engine-failed", what, hint="The last site stands as it was.") from error


def _build(
    config: MkDocsConfig, site: Site, progress: Progress | None, offline: bool, frames: bool
) -> str | None:
    _hand_over(config, site, progress, offline)
    plugin = config.plugins["newel"]
    plugin.config["frames"] = frames
    build(config)
    index: str | None = getattr(plugin, "index", None)
    return index


def _load(config_path: Path | None, folder: Path, empty: Path) -> MkDocsConfig:
    if config_path is not None:
        return load_config(str(config_path), site_dir=str(folder), strict=True)
    return load_config(io.BytesIO(_DEFAULT), docs_dir=str(empty), site_dir=str(folder), strict=True)


def _hand_over(config: MkDocsConfig, site: Site, progress: Progress | None, offline: bool) -> None:
    plugin = config.plugins.get("newel")
    if plugin is None:
        raise NewelError(
            "plugin-missing",
            f"{config.config_file_path} does not name the plugin newel",
            "without it the engine does not see the lab",
            "write under plugins:  - newel",
        )
    plugin.config["site"] = site
    plugin.config["offline"] = offline
    if progress is not None:
        total = len(site.pages)
        plugin.config["progress"] = lambda done: progress(min(done, total), total)


class _Ear(logging.Handler):
    """Keeps what the engine warns of, for the one who asked for the build."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.heard: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.heard.append(record.getMessage())


@contextmanager
def _heard_warnings() -> Iterator[list[str]]:
    ear = _Ear()
    logger = logging.getLogger("mkdocs")
    logger.addHandler(ear)
    counters = list(logger.handlers)
    try:
        yield ear.heard
    finally:
        logger.removeHandler(ear)
        for handler in [h for h in logger.handlers if h not in counters]:
            logger.removeHandler(handler)  # the engine leaves its own counter behind after each strict build
