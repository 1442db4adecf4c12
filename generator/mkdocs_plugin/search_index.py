"""The search index that the engine has written, with our entries, in both forms or in parts."""

from collections.abc import Iterable
from pathlib import Path

from generator.outputs.search import SearchEntry, add_entries
from generator.publishing.search_files import write_index


def write_search_index(site: Path, entries: Iterable[SearchEntry]) -> str:
    """Add the entries to search/search_index.json and write the script form, or the parts, beside it.

    Returns the engine's own; without the search plugin there is none ("") and nothing to do.
    """
    path = site / "search" / "search_index.json"
    if not path.exists():
        return ""
    index = path.read_text(encoding="utf-8")
    write_index(path.parent, add_entries(index, entries))
    return index
