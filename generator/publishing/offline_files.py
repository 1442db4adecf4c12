"""The service worker and the web manifest of a finished site."""

from pathlib import Path

from generator.outputs.offline import MANIFEST, WORKER, manifest, worker_script


def write_offline_files(site: Path, name: str) -> None:
    """Write both into the site's folder; the worker lists every file that stands there."""
    found = sorted(path for path in site.rglob("*") if path.is_file())
    files = ((path.relative_to(site).as_posix(), path.read_bytes()) for path in found)
    (site / WORKER).write_text(worker_script(files), encoding="utf-8", newline="\n")
    (site / MANIFEST).write_text(manifest(name), encoding="utf-8", newline="\n")
