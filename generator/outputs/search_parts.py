"""A large search index cut into small scripts, so that a browser weighs no word that is not sought.

The theme's own search reads the whole index and weighs every word of it when a page is opened. Here the
weights are worked out once, as that search would, and a page loads only those of the words that are typed.
"""

import json
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from hashlib import sha256
from math import floor, log
from typing import Any

from generator.outputs.search import SEPARATOR, script_form

# Bytes. Weighed in Chromium on a busy machine, 0.14 MB took 2.9 s and 0.81 MB 6.6 s to the first result: the
# demo lab, at half of this, stays in one file.
SPLIT_ABOVE = 300_000
# Characters of one part: a few milliseconds to read, and one letter typed asks for a handful.
PART_SIZE = 48_000
# Saturation of a word said often; BM25 as the theme's search sets it, where length does not count.
_K1 = 1.2
# Number of an entry, how often a word is said there, and what a field and an entry count for.
_Place = tuple[int, int, float]
_TAG = re.compile(r"<[^>]*>")
# These words run into one another there; the theme has a cutter for each.
_NO_SPACES = frozenset(("hi", "ja", "ko", "th", "zh"))
# The words that the theme's search leaves out of an English index (lunr 2.3.9, lib/stop_word_filter.js).
_STOP_WORDS = """
a able about across after all almost also am among an and any are as at be because been but by can cannot
could dear did do does either else ever every for from get got had has have he her hers him his how
however i if in into is it its just least let like likely may me might most must my neither no nor not of
off often on only or other our own rather said say says she should since so some than that the their them
then there these they this tis to too twas us wants was we were what when where which while who whom why
will with would yet you your
"""


def index_files(index: str, split_above: int = SPLIT_ABOVE) -> dict[str, str]:
    """Return the files of the folder `search` by name: the index in both forms; a large one in parts."""
    parts: dict[str, str] = {}
    if len(index.encode()) > split_above:
        index, parts = split_index(index)
    return {"search_index.json": index, "search_index.js": script_form(index), **parts}


def split_index(index: str) -> tuple[str, dict[str, str]]:
    """Return an index without entries that says where its parts lie, and the parts by name.

    An index whose words are not cut by signs alone is returned as it came, without parts.
    """
    data = json.loads(index)
    config, docs = data["config"], data["docs"]
    words = _separator(config)
    if words is None:
        return index, {}
    stop = _STOP_WORDS.split() if config["lang"] == ["en"] and config["pipeline"] else []
    weights = _weights(docs, config["fields"], words, frozenset(stop))
    ordered = sorted(weights.items(), key=lambda row: row[0].encode("utf-16-be"))  # as JavaScript compares
    rows = [f"{_json(word)}:{_json(found)}" for word, found in ordered]
    texts = [_json(doc["text"]) for doc in docs]
    word_files, text_files = list(_cut(rows)), list(_cut(texts))
    titles = [[doc["location"], doc["title"], *([doc["tags"]] if doc.get("tags") else [])] for doc in docs]
    # A folder of its own for each index: what a browser kept of an older one is never read with a newer.
    folder = sha256(index.encode()).hexdigest()[:12]
    named = {"titles": _json(titles)}
    named |= {f"words-{n}": f"{{{','.join(rows[span])}}}" for n, span in enumerate(word_files)}
    named |= {f"texts-{n}": f"[{','.join(texts[span])}]" for n, span in enumerate(text_files)}
    config["parts"] = {
        "folder": folder,
        "words": [ordered[span.start][0] for span in word_files],
        "texts": [span.start for span in text_files],
        "stop": stop,
    }
    parts = {f"{folder}/{name}.js": _part(name, content) for name, content in named.items()}
    return _json({**data, "docs": []}), parts


def _separator(config: Mapping[str, Any]) -> re.Pattern[str] | None:
    """What stands between two words; None where more is done to words than cutting and leaving some out."""
    if set(config["pipeline"]) - {"stopWordFilter"} or _NO_SPACES & set(config["lang"]):
        return None
    try:
        return re.compile(config["separator"])
    except re.error:  # an author's own, in JavaScript's way of writing
        return None


def _weights(
    docs: Sequence[Mapping[str, Any]],
    fields: Mapping[str, Mapping[str, float]],
    separator: re.Pattern[str],
    stop: frozenset[str],
) -> dict[str, list[float]]:
    """For each word: number of an entry and the word's weight in it, by turns.

    BM25 (Robertson and Zaragoza 2009) with the theme's constants, rounded in each field to a thousandth as
    there.
    """
    said: dict[str, list[_Place]] = {}
    for number, doc in enumerate(docs):
        for field, told in fields.items():
            boost = told.get("boost", 1.0) * doc.get("boost", 1.0)
            for word, often in Counter(_words(doc.get(field, ""), separator)).items():
                said.setdefault(word, []).append((number, often, boost))
    return {
        word: _weighed(places, len(docs)) for word, places in said.items() if word and word not in stop
    }


def _weighed(places: Sequence[_Place], docs: int) -> list[float]:
    """Number of an entry and a word's weight in it, by turns, from where and how often it is said."""
    rare = log(1 + abs((docs - len(places) + 0.5) / (len(places) + 0.5)))
    known: dict[tuple[int, float], float] = {}
    sums: dict[int, float] = {}
    for number, often, boost in places:
        weight = known.get((often, boost))
        if weight is None:
            exact = rare * (_K1 + 1) * often / (_K1 + often) * boost
            weight = known[often, boost] = floor(exact * 1000 + 0.5) / 1000
        sums[number] = round(sums[number] + weight, 3) if number in sums else weight
    return [value for row in sums.items() for value in row]


def _words(html: str | list[str], separator: re.Pattern[str]) -> list[str]:
    texts = [html] if isinstance(html, str) else html
    if separator.pattern == SEPARATOR:  # a line's end parts words there, as a tag does
        return separator.split(_TAG.sub("\n", "\n".join(texts)).lower())
    pieces = (piece for text in texts for piece in _TAG.split(text))
    return [word for piece in pieces for word in separator.split(piece.lower())]


def _cut(rows: Sequence[str]) -> Iterator[slice]:
    """Which rows stand together, in parts of about PART_SIZE characters each."""
    start = size = 0
    for number, row in enumerate(rows):
        size += len(row)
        if size > PART_SIZE or number == len(rows) - 1:
            yield slice(start, number + 1)
            start, size = number + 1, 0


def _part(name: str, content: str) -> str:
    safe = content.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f'newelSearchPart("{name}",{safe});\n'


def _json(data: object) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
