"""What makes a site installable: the list of its files for the service worker, and the web manifest."""

import json
from collections.abc import Callable, Iterable, Mapping
from hashlib import sha256
from pathlib import Path

WORKER = "service-worker.js"
MANIFEST = "newel.webmanifest"
# For the machine that serves or indexes the site; no page asks for them.
_LEFT_OUT = (WORKER, MANIFEST, "sitemap.xml", "sitemap.xml.gz")
_MAPS = ".map"
_LIST = "self.newelFiles = "
_SCRIPT = Path(__file__).parent / "scripts" / WORKER


def worker_script(files: Iterable[tuple[str, bytes]]) -> str:
    """Return the worker for these files (path from the root, content); any change in them changes it."""
    return _worker(_digests(files))


def changed_worker(worker: str, gone: Callable[[str], bool], files: Iterable[tuple[str, bytes]]) -> str:
    """Return a worker of before without the files that are gone, and with these, new or changed."""
    listed = json.loads(worker.partition("\n")[0].removeprefix(_LIST).removesuffix(";"))
    return _worker({path: digest for path, digest in listed.items() if not gone(path)} | _digests(files))


def _worker(digests: Mapping[str, str]) -> str:
    listed = json.dumps(dict(sorted(digests.items())), ensure_ascii=True, separators=(",", ":"))
    return f"{_LIST}{listed};\n{_SCRIPT.read_text(encoding='utf-8')}"


def _digests(files: Iterable[tuple[str, bytes]]) -> dict[str, str]:
    kept = (file for file in files if file[0] not in _LEFT_OUT and not file[0].endswith(_MAPS))
    return {path: sha256(content).hexdigest()[:12] for path, content in kept}


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
