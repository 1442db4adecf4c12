"""The search index that the engine has written, with our entries, in both forms."""

from collections.abc import Iterable
from pathlib import Path

from generator.outputs.search import SearchEntry, add_entries, script_form


def write_search_index(site: Path, entries: Iterable[SearchEntry]) -> None:
    """Add the entries to search/search_index.json and write the script form beside it.

    Without the search plugin there is no index and nothing to do.
    """
    path = site / "search" / "search_index.json"
    if not path.exists():
        return
    index = add_entries(path.read_text(encoding="utf-8"), entries)
    path.write_text(index, encoding="utf-8")
    path.with_suffix(".js").write_text(script_form(index), encoding="utf-8")
