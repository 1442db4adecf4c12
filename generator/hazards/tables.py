"""The data files of this floor, read once when first asked for."""

import json
from functools import cache
from importlib.resources import files
from typing import Any, cast


@cache
def read_table(name: str) -> dict[str, Any]:
    """One file of `data/` as read from JSON: do not change what comes back."""
    text = files("generator.hazards").joinpath("data", f"{name}.json").read_text(encoding="utf-8")
    return cast(dict[str, Any], json.loads(text))


def source_of(name: str) -> str:
    """Edition and source of one data file, as one sentence for a page's foot."""
    meta = read_table(name)["meta"]
    return f"{meta['edition']}. Source: {meta['source']}."


def unresolved_in(name: str) -> tuple[str, ...]:
    """What is known to be unsettled in one data file."""
    return tuple(read_table(name)["meta"].get("unresolved", ()))
