"""Entries of our own in the site's search index, and the same index for a folder without a server."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from generator.outputs.escaping import escape_text

# A query is always split at spaces and hyphens, whatever the index does, so the index is split there too:
# "7664-93-9" is found by its three parts, "etch" finds "micro-etch". A stop or slash inside stays: 0.1,
# mol/L.
# No sign is escaped that need not be: one engine's search reads the pattern in JavaScript's strict mode.
SEPARATOR = r'''[\s\-,;:!?()\[\]"“”‘’]+|\.(?=\s|$)'''


@dataclass(frozen=True, slots=True)
class SearchEntry:
    """A place in the site ("procedures/x" or "procedures/x#step") and the plain text it is found by.

    Each line of the text is a phrase; of many the search shows only those that hold a word sought.
    """

    location: str
    title: str
    text: str
    tags: tuple[str, ...] = ()
    boost: float = 1.0


def index_entry(entry: SearchEntry) -> dict[str, Any]:
    """Return an entry as the index wants it; what is shown there is inserted as HTML, so it is escaped."""
    address, hash_mark, anchor = entry.location.partition("#")
    path = f"{address}/index.html" if address else "index.html"
    found: dict[str, Any] = {
        "location": path + hash_mark + anchor,
        "title": escape_text(entry.title),
        "text": "".join(f"<p>{escape_text(line)}</p>" for line in entry.text.splitlines() if line.strip()),
    }
    if entry.tags:
        found["tags"] = [escape_text(tag) for tag in entry.tags]
    if entry.boost != 1.0:
        found["boost"] = entry.boost
    return found


def add_entries(index: str, entries: Iterable[SearchEntry]) -> str:
    """Return the engine's index (JSON text) with our entries behind its own."""
    data = json.loads(index)
    data["docs"].extend(index_entry(entry) for entry in pages_first(tuple(entries)))
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def add_items(index: str, entries: Iterable[SearchEntry]) -> str:
    """Return an index of Zensical's form (JSON text) with our entries behind its own."""
    data = json.loads(index)
    for entry in pages_first(tuple(entries)):
        found = index_entry(entry)
        level = 2 if "#" in entry.location else 1
        data["items"].append({
            "location": found["location"], "level": level, "title": found["title"], "text": found["text"],
            "path": [found["title"]], "tags": found.get("tags", []),
        })  # fmt: skip
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def pages_first(entries: tuple[SearchEntry, ...]) -> tuple[SearchEntry, ...]:
    """Return the entries, each page before the places on it.

    The search shows a place only under an entry of its page; a page without one gets the title of its first
    place.
    """
    pages = {entry.location: entry for entry in entries if "#" not in entry.location}
    places = [entry for entry in entries if "#" in entry.location]
    for entry in places:
        address = entry.location.partition("#")[0]
        pages.setdefault(address, SearchEntry(address, entry.title, ""))
    return (*pages.values(), *places)


def script_form(index: str) -> str:
    """Return the index as the classic script that a page opened from a folder can load."""
    safe = index.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f"var __index = {safe};\n"
