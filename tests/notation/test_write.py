"""What is written reads back as the same data, and nobody else's reader gives it another meaning."""

from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.notation import as_yaml, plain, read_text
from generator.notation.decode import INVISIBLE

# An author's file holds no character that nobody sees, and YAML no halves of surrogate pairs; a key has at
# most 1024 letters.
LETTERS = st.characters(exclude_categories=("Cs", "Cc"), exclude_characters="\ufffe\uffff").filter(
    lambda letter: not INVISIBLE.match(letter)
)
WORDS = st.text(st.one_of(LETTERS, st.sampled_from("\n :#-{}[],'\"&*!|>%@`?\u00a0")), max_size=30)
KEYS = st.text(st.one_of(LETTERS, st.sampled_from(" :#-{}[],'\"&*!|>%@`?")), min_size=1, max_size=20)
DATA = st.recursive(
    WORDS,
    lambda inner: st.one_of(st.lists(inner, max_size=4), st.dictionaries(KEYS, inner, max_size=4)),
    max_leaves=12,
)
MAPS = st.dictionaries(KEYS, DATA, min_size=1, max_size=5)


@given(MAPS)
def test_written_data_reads_back(data: dict[str, Any]) -> None:
    document = read_text(as_yaml(data).encode(), "x.yml")
    assert document.problems == ()
    assert document.root is not None
    assert plain(document.root) == data


@pytest.mark.parametrize("data", [[], {}])
def test_what_is_empty_is_written_as_such(data: object) -> None:
    assert yaml.load(as_yaml(data), Loader=yaml.BaseLoader) == data


@given(MAPS)
def test_another_reader_finds_the_same_text(data: dict[str, Any]) -> None:
    """PyYAML without types is the second source."""
    assert yaml.load(as_yaml(data), Loader=yaml.BaseLoader) == data


@pytest.mark.parametrize(
    "text", ["", " ", "a: b", "a #b", "- a", "# a", "a\nb", "'", '"', "\\", "a:", "?", "é\u00a0"]
)
def test_awkward_words_read_back(text: str) -> None:
    document = read_text(as_yaml({"a": text, "b": [text]}).encode(), "x.yml")
    assert document.root is not None
    assert plain(document.root) == {"a": text, "b": [text]}


def test_a_name_with_a_colon_reads_back() -> None:
    document = read_text(as_yaml({"0:0": "a", "b": {"c:d": ""}}).encode(), "x.yml")
    assert document.problems == ()


def test_plain_words_stand_without_quotes() -> None:
    assert as_yaml({"title": "Copper the holes", "time": "6 to 10 min", "none": []}) == (
        "title: Copper the holes\ntime: 6 to 10 min\nnone: []\n"
    )
