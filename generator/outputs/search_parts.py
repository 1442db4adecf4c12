"""A large search index cut into small scripts, so that a browser weighs no word that is not sought.

The theme's own search reads the whole index and weighs every word of it when a page is opened. Here the
weights are worked out once, as that search would, and a page loads only those of the words that are typed.
"""

import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from hashlib import sha256
from math import floor, log
from typing import Any

from generator.outputs.search import script_form

# Bytes. Weighed in Chromium on a busy machine, 0.14 MB took 2.9 s and 0.81 MB 6.6 s to the first result: the
# demo lab, at half of this, stays in one file.
SPLIT_ABOVE = 300_000
# Characters of one part: a few milliseconds to read, and one letter typed asks for a handful.
PART_SIZE = 48_000
# Saturation of a word said often; BM25 as the theme's search sets it, where length does not count.
_K1 = 1.2
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
    word_files = [dict(rows) for rows in _cut(ordered)]
    text_files = list(_cut([doc["text"] for doc in docs]))
    titles = [[doc["location"], doc["title"], *([doc["tags"]] if doc.get("tags") else [])] for doc in docs]
    # A folder of its own for each index: what a browser kept of an older one is never read with a newer.
    folder = sha256(index.encode()).hexdigest()[:12]
    named = {"titles": titles} | _numbered("words", word_files) | _numbered("texts", text_files)
    config["parts"] = {
        "folder": folder,
        "words": [next(iter(rows)) for rows in word_files],
        "texts": [sum(map(len, text_files[:number])) for number in range(len(text_files))],
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
    said: dict[str, list[tuple[int, str, int]]] = {}
    for number, doc in enumerate(docs):
        for field in fields:
            for word, often in Counter(_words(doc.get(field, ""), separator, stop)).items():
                said.setdefault(word, []).append((number, field, often))
    found: dict[str, list[float]] = {}
    for word, places in said.items():
        rare = log(1 + abs((len(docs) - len(places) + 0.5) / (len(places) + 0.5)))
        sums: dict[int, float] = {}
        for number, field, often in places:
            boost = fields[field].get("boost", 1.0) * docs[number].get("boost", 1.0)
            weight = rare * (_K1 + 1) * often / (_K1 + often) * boost
            sums[number] = sums.get(number, 0.0) + floor(weight * 1000 + 0.5) / 1000
        found[word] = [value for row in sums.items() for value in (row[0], round(row[1], 3))]
    return found


def _words(html: str | list[str], separator: re.Pattern[str], stop: frozenset[str]) -> Iterator[str]:
    for text in [html] if isinstance(html, str) else html:
        for piece in _TAG.split(text):
            yield from (word for word in separator.split(piece.lower()) if word and word not in stop)


def _cut(rows: Sequence[Any]) -> Iterator[list[Any]]:
    """The rows in lists of about PART_SIZE characters each."""
    part: list[Any] = []
    size = 0
    for row in rows:
        part.append(row)
        size += len(_json(row))
        if size > PART_SIZE:
            yield part
            part, size = [], 0
    if part:
        yield part


def _numbered(name: str, contents: Iterable[object]) -> dict[str, object]:
    return {f"{name}-{number}": content for number, content in enumerate(contents)}


def _part(name: str, content: object) -> str:
    safe = _json(content).replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f'newelSearchPart("{name}",{safe});\n'


def _json(data: object) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
