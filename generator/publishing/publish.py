"""The way from a site in memory to a folder: engine into a new folder, then one exchange."""

import tempfile
from pathlib import Path

from generator.outputs.site import Site
from generator.publishing.engine import Progress, run_engine
from generator.publishing.file_engines import run_file_engine
from generator.publishing.folder import recover_folder, refuse_strange_folder, replace_folder
from generator.publishing.lock import hold_lock


def publish(
    site: Site, target: Path, config: Path | None = None, progress: Progress | None = None,
    engine: str = "mkdocs",
) -> None:  # fmt: skip
    """Write the site to `target`; on any failure the folder stays as it was.

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
        with tempfile.TemporaryDirectory(dir=state, prefix=f"{target.name}-") as work:
            fresh = Path(work) / "site"
            if engine == "mkdocs":
                run_engine(site, fresh, config, progress)
            else:
                run_file_engine(engine, site, fresh, config)
            replace_folder(fresh, target, state)
