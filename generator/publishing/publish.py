"""The way from a site in memory to a folder: engine into a new folder, then one exchange."""

import shutil
import tempfile
from pathlib import Path

from generator.outputs.site import Site
from generator.publishing.carry import make_portable, pack_folder, refuse_strange_zip
from generator.publishing.engine import Progress, run_engine
from generator.publishing.file_engines import run_file_engine
from generator.publishing.folder import recover_folder, refuse_strange_folder, replace_folder
from generator.publishing.lock import hold_lock


def publish(
    site: Site, target: Path, config: Path | None = None, progress: Progress | None = None,
    engine: str = "mkdocs", offline: bool = False,
) -> None:  # fmt: skip
    """Write the site to `target`; on any failure the folder stays as it was.

    `offline` makes a copy to carry: its pages say of which day they are, and beside the folder lies the same
    as a ZIP (`zip_path`), which is replaced after the folder, each of them whole at any moment.

    `config` is a mkdocs.yml of the lab's own; without one the built-in look is all there is. `progress` is
    told the pages done and the pages there are, by MkDocs alone. Raises NewelError: "already-building" when
    another build is at work there, "strange-folder" when the folder is no site of ours, "engine-missing"
    when the engine is not installed, "engine-failed" with what the engine said.
    """
    target = target.resolve()
    state = target.parent / ".newel"
    state.mkdir(parents=True, exist_ok=True)
    with hold_lock(state / f"{target.name}.lock", target):
        recover_folder(target, state)
        refuse_strange_folder(target)
        if offline:
            refuse_strange_zip(zip_path(target), target.name)
        _sweep(state, target)
        with tempfile.TemporaryDirectory(dir=state, prefix=_prefix(target)) as work:
            fresh, packed = Path(work) / "site", Path(work) / "site.zip"
            if engine == "mkdocs":
                run_engine(site, fresh, config, progress, offline)
            else:
                run_file_engine(engine, site, fresh, config, offline)
            if offline:
                make_portable(fresh, site.name, site.date)
                pack_folder(fresh, packed, target.name, site.date)
            replace_folder(fresh, target, state)
            if offline:
                packed.replace(zip_path(target))


def zip_path(target: Path) -> Path:
    """Where the ZIP of a copy to carry lies: beside its folder."""
    return target.parent / f"{target.name}.zip"


def _prefix(target: Path) -> str:
    return f"{target.name}-new-"


def _sweep(state: Path, target: Path) -> None:
    """Take away what a build left behind that was cut off; the lock says that none is at work."""
    for left in state.glob(f"{_prefix(target)}*"):
        shutil.rmtree(left, ignore_errors=True)
