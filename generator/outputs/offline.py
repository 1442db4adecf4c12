"""What makes a site installable: the list of its files for the service worker, and the web manifest."""

import json
from collections.abc import Iterable, Iterator
from hashlib import sha256
from pathlib import Path

WORKER = "service-worker.js"
MANIFEST = "newel.webmanifest"
# For the machine that serves or indexes the site; no page asks for them.
_LEFT_OUT = (WORKER, MANIFEST, "sitemap.xml", "sitemap.xml.gz")
_MAPS = ".map"
_SCRIPT = Path(__file__).parent / "scripts" / WORKER


def worker_script(files: Iterable[tuple[str, bytes]]) -> str:
    """Return the worker for these files (path from the root, content); any change in them changes it."""
    digests = {path: sha256(content).hexdigest()[:12] for path, content in _kept(files)}
    listed = json.dumps(dict(sorted(digests.items())), ensure_ascii=True, separators=(",", ":"))
    return f"self.newelFiles = {listed};\n{_SCRIPT.read_text(encoding='utf-8')}"


def _kept(files: Iterable[tuple[str, bytes]]) -> Iterator[tuple[str, bytes]]:
    return (file for file in files if file[0] not in _LEFT_OUT and not file[0].endswith(_MAPS))


def manifest(name: str) -> str:
    """Return the web manifest; addresses are relative to it, so the site may stand under any path."""
    icon = {"src": "assets/newel-mark.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any"}
    data = {
        "name": name,
        "short_name": name[:12].rstrip(" ,"),
        "id": "./",
        "start_url": "./index.html",
        "scope": "./",
        "display": "standalone",
        "icons": [icon],
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
