"""An index in parts: small ones stay whole; every word once, weighed as the theme's search weighs it."""

import json
import math
from typing import Any

import pytest

from generator.outputs.search import SEPARATOR
from generator.outputs.search_parts import PART_SIZE, index_files, split_index

FIELDS = {"title": {"boost": 1000.0}, "text": {"boost": 1.0}, "tags": {"boost": 1000000.0}}
CONFIG = {"lang": ["en"], "separator": SEPARATOR, "pipeline": ["stopWordFilter"], "fields": FIELDS}


def index_of(*docs: dict[str, Any], **config: Any) -> str:
    """An index as the engine writes it."""
    rows = [{"location": f"{number}.html", "title": "", "text": "", **doc} for number, doc in enumerate(docs)]
    return json.dumps({"config": CONFIG | config, "docs": rows})


def read_parts(index: str) -> tuple[dict[str, Any], dict[str, Any]]:
    """What the short index says of its parts, and what each part holds."""
    short, parts = split_index(index)
    held = {}
    for path, script in parts.items():
        given = script.removeprefix("newelSearchPart(").removesuffix(");\n")
        name, content = json.loads(f"[{given}]")
        assert path.endswith(f"/{name}.js")
        held[name] = content
    assert json.loads(short)["docs"] == []
    return json.loads(short)["config"]["parts"], held


def test_a_small_index_stays_in_one_piece() -> None:
    index = index_of({"title": "Etch"})
    assert index_files(index) == {
        "search_index.json": index,
        "search_index.js": f"var __index = {index};\n",
    }
    assert len(index_files(index, split_above=0)) == 5


def test_a_word_weighs_what_its_rareness_and_its_field_say() -> None:
    """By hand: Robertson and Zaragoza 2009, k1 1.2, b 0; of 3 entries 2 places hold the word."""
    docs = ({"text": "etch <b>Etch</b>"}, {"title": "Etch", "boost": 2.0}, {"text": "rinse"})
    rare = math.log(1 + (3 - 2 + 0.5) / (2 + 0.5))
    twice, once = rare * 2.2 * 2 / (1.2 + 2), rare * 2.2 * 1 / (1.2 + 1) * 1000 * 2
    assert read_parts(index_of(*docs))[1]["words-0"]["etch"] == [0, round(twice, 3), 1, round(once, 3)]


def test_the_parts_hold_every_word_once_and_in_order() -> None:
    docs = [{"text": f"<p>word{number} of plate\u2028x</p>"} for number in range(9000)]
    parts, held = read_parts(index_of(*docs))
    files = [held[f"words-{number}"] for number in range(len(parts["words"]))]
    words = [word for file in files for word in file]
    assert words == sorted({*(f"word{number}" for number in range(9000)), "plate", "x"})
    assert [next(iter(file)) for file in files] == parts["words"]
    assert len(files) > 3
    texts = [held[f"texts-{number}"] for number in range(len(parts["texts"]))]
    assert [text for file in texts for text in file] == [doc["text"] for doc in docs]
    assert parts["texts"][1] == len(texts[0])
    assert all(len(json.dumps(file)) < 2 * PART_SIZE for file in texts)


def test_each_index_has_a_folder_of_its_own() -> None:
    first, second = (read_parts(index_of({"title": title}))[0]["folder"] for title in ("Etch", "Rinse"))
    assert first != second


@pytest.mark.parametrize(
    "config", [{"pipeline": ["stemmer"]}, {"lang": ["ja"]}, {"separator": r"\p{L}"}], ids=str
)
def test_words_that_need_more_than_cutting_are_left_to_the_theme(config: dict[str, Any]) -> None:
    index = index_of({"title": "Etch"}, **config)
    assert split_index(index) == (index, {})


def test_words_are_left_out_where_the_theme_leaves_them_out() -> None:
    assert [*read_parts(index_of({"text": "the plate"}))[1]["words-0"]] == ["plate"]
    assert [*read_parts(index_of({"text": "the plate"}, lang=["de"]))[1]["words-0"]] == ["plate", "the"]
