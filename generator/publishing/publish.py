"""The way from a site in memory to a folder: laid out into a new folder, then one exchange."""

import shutil
import tempfile
from collections.abc import Collection
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from generator.outputs.site import Progress, Site
from generator.pipeline.kept import NOTHING_KEPT, Kept
from generator.publishing.carry import make_portable, pack_folder, refuse_strange_zip
from generator.publishing.folder import recover_folder, refuse_strange_folder, replace_folder
from generator.publishing.imprint import Imprint, find_imprint, imprint_of, keep_imprint
from generator.publishing.linked import remove_folder
from generator.publishing.lock import hold_lock
from generator.publishing.reprint import reprint
from generator.publishing.seal import LinkFoundError, Rows, rows_after, rows_of, seal_of_rows

# The rows of a folder before a part of its paths was written anew, and these paths.
Looked = tuple[Rows, Collection[str]]


def publish(
    site: Site, target: Path, config: Path | None = None, progress: Progress | None = None,
    engine: str = "mkdocs", offline: bool = False, kept: Kept = NOTHING_KEPT, beside: str = "",
) -> str:  # fmt: skip
    """Write the site to `target`; on any failure the folder stays as it was.

    `offline` makes a copy to carry: its pages say of which day they are, and beside the folder lies the same
    as a ZIP (`zip_path`), which is replaced after the folder, each of them whole at any moment.

    `config` is a mkdocs.yml of the lab's own; without one the built-in look is all there is. `progress` is
    told the pages done and the pages there are, by MkDocs alone. `beside` names all that the engine reads
    besides the site, "" where that is not known: with it, and with what `kept` has of the last site, the
    engine rests where it is not needed. Returns the seal of the folder, "" where it has none.

    Raises NewelError: "already-building" when another build is at work there, "strange-folder" when the
    folder is no site of ours, "engine-missing", "engine-failed" with what the engine said.
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
            fresh, now, rows = Path(work) / "site", None, None
            if engine != "mkdocs" or offline:
                _lay_apart(site, fresh, config, progress, engine, offline)
            else:
                now, rows = _lay_out(site, fresh, target, config, progress, kept, beside)
            if offline:
                _pack(site, fresh, target)
            replace_folder(fresh, target, state)
            if offline:
                _packed(fresh).replace(zip_path(target))
            left = _leave_spare(fresh, target)
        return _seal(target, now, kept, rows if left else None)


def _take_spare(fresh: Path, target: Path) -> Path:
    """Where the site before the last one now lies, if it was left; it goes away unless it is made use of."""
    taken = fresh.with_name("spare")
    if _spare(target).exists():
        _spare(target).rename(taken)
    return taken


def _spare(target: Path) -> Path:
    return target.parent / ".newel" / f"{target.name}-spare"


def _leave_spare(before: Path, target: Path) -> bool:
    """Leave the site that was replaced for the next build, if most of it is the files of the new one.

    Where it goes away instead, the files that both have lose a name.
    """
    page = "assets/newel.css"
    if (before / page).exists() and (before / page).samefile(target / page):
        before.rename(_spare(target))
        return True
    if before.exists():
        with suppress(OSError):
            remove_folder(str(before))  # what it leaves goes away with the folder round it
    return False


def _pack(site: Site, fresh: Path, target: Path) -> None:
    make_portable(fresh, site.name, site.date)
    pack_folder(fresh, _packed(fresh), target.name, site.date)


def _packed(fresh: Path) -> Path:
    return fresh.with_suffix(".zip")


def _lay_apart(
    site: Site, fresh: Path, config: Path | None, progress: Progress | None, engine: str, offline: bool
) -> None:
    """A copy to carry, or another engine's site: always from the beginning, and without an imprint."""
    if engine == "mkdocs":
        from generator.publishing.engine import run_engine

        run_engine(site, fresh, config, progress, offline)
    else:
        from generator.publishing.file_engines import run_file_engine

        run_file_engine(engine, site, fresh, config, offline)


def _lay_out(
    site: Site, fresh: Path, target: Path, config: Path | None, progress: Progress | None, kept: Kept,
    beside: str,
) -> tuple[Imprint | None, Looked | None]:  # fmt: skip
    """Write the site into a new folder, from the last one where that will do.

    Returns its imprint; and where the last one did, its rows, and the paths of which they hold no more.
    """
    now = imprint_of(site, beside)
    last = find_imprint(kept, target.name) if now else None
    spare = _take_spare(fresh, target)
    rows = _rows_of(target) if last else None
    if now and last and rows is not None and last.seal == seal_of_rows(rows):
        touched = reprint(site, target, fresh, spare, last, now, kept)
        if touched is not None:
            return replace(now, index=last.index), (rows, touched)
    from generator.publishing.engine import run_engine  # takes half a second to load

    index = run_engine(site, fresh, config, progress)
    return (replace(now, index=index) if now and index is not None else None), None


def _seal(target: Path, now: Imprint | None, kept: Kept, looked: Looked | None) -> str:
    """The seal of what was written, once nothing changes there any more; kept with the imprint."""
    rows = _rows_of(target, looked)
    seal = "" if rows is None else seal_of_rows(rows)
    if now and seal:
        keep_imprint(kept, target.name, replace(now, seal=seal))
    return seal


def _rows_of(target: Path, looked: Looked | None = None) -> Rows | None:
    with suppress(LinkFoundError, OSError):
        return rows_after(looked[0], target, looked[1]) if looked else rows_of(target)
    return None


def zip_path(target: Path) -> Path:
    """Where the ZIP of a copy to carry lies: beside its folder."""
    return target.parent / f"{target.name}.zip"


def _prefix(target: Path) -> str:
    return f"{target.name}-new-"


def _sweep(state: Path, target: Path) -> None:
    """Take away what a build left behind that was cut off; the lock says that none is at work."""
    for left in state.glob(f"{_prefix(target)}*"):
        shutil.rmtree(left, ignore_errors=True)
