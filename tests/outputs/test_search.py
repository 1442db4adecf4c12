"""Entries of the search index: escaped, behind their page, split where a query is split."""

import json
import re

import pytest

from generator.outputs.search import (
    SEPARATOR,
    SearchEntry,
    add_entries,
    index_entry,
    pages_first,
    script_form,
)

INDEX = '{"config":{"separator":"x"},"docs":[{"location":"start/","title":"Start","text":""}]}'


def test_title_text_and_tags_are_escaped() -> None:
    entry = index_entry(SearchEntry("places/x#a", "<b>", "1 < 2\n\n3", ("<i>",), 2.0))
    assert entry == {
        "location": "places/x/index.html#a",
        "title": "&lt;b&gt;",
        "text": "<p>1 &lt; 2</p><p>3</p>",
        "tags": ["&lt;i&gt;"],
        "boost": 2.0,
    }


def test_ours_come_behind_what_was_written_by_hand() -> None:
    docs = json.loads(add_entries(INDEX, [SearchEntry("", "Lab", "µm")]))["docs"]
    assert [doc["location"] for doc in docs] == ["start/", "index.html"]


def test_a_place_on_a_page_comes_behind_an_entry_of_its_page() -> None:
    place = SearchEntry("glossary#dwell", "Dwell", "")
    page = SearchEntry("glossary", "Glossary", "")
    assert pages_first((place, page)) == (page, place)
    assert pages_first((place,)) == (SearchEntry("glossary", "Dwell", ""), place)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("H314, H318.", ["H314", "H318"]),
        ("0.1 mol/L", ["0.1", "mol/L"]),
        ("7664-93-9", ["7664", "93", "9"]),
        ("micro-etch (acid): why?", ["micro", "etch", "acid", "why"]),
    ],
)
def test_the_index_is_split_into_the_words_of_a_lab(text: str, words: list[str]) -> None:
    assert [word for word in re.split(SEPARATOR, text) if word] == words


def test_the_script_form_is_one_statement() -> None:
    script = script_form('{"docs":["a\u2028b"]}')
    assert script == 'var __index = {"docs":["a\\u2028b"]};\n'
