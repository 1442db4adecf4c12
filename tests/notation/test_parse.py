"""Every scalar is text, every node knows its place."""

import pytest

from generator.notation import ListNode, MapNode, Text, composer, depth_of, plain, read_text
from generator.problems import Location

TEXT = """\
title: no
on: 3.10
until: 16:40
steps:
  - {id: a-1, say: "Lid off: slowly."}
  - id: b
    say: |
      One.
      Two.
"""


def root() -> MapNode:
    found = read_text(TEXT.encode(), "x.yml").root
    assert isinstance(found, MapNode)
    return found


def test_no_scalar_is_given_a_type() -> None:
    assert plain(root()) == {
        "title": "no",
        "on": "3.10",
        "until": "16:40",
        "steps": [{"id": "a-1", "say": "Lid off: slowly."}, {"id": "b", "say": "One.\nTwo.\n"}],
    }


def test_places_are_counted_from_one() -> None:
    steps = root().get("steps")
    assert isinstance(steps, ListNode)
    first = steps.items[0]
    assert isinstance(first, MapNode)
    say = first.get("say")
    assert isinstance(say, Text)
    assert say.where == Location("x.yml", 5, 20, 18)
    id = first.get("id")
    assert isinstance(id, Text)
    assert id.where == Location("x.yml", 5, 10, 3)


def test_columns_count_characters_and_not_bytes() -> None:
    found = read_text("{é: µ, b: c}\n".encode(), "x.yml").root
    assert isinstance(found, MapNode)
    assert [key.where.column for key, _ in found.items] == [2, 8]


def test_depth_counts_collections() -> None:
    assert depth_of(root()) == 3


def test_an_empty_file_is_an_empty_mapping() -> None:
    for data in (b"", b"\n\n", b"# only a comment\n"):
        document = read_text(data, "x.yml")
        assert document.problems == ()
        assert document.root == MapNode((), Location("x.yml"))


def test_the_first_of_two_counts() -> None:
    document = read_text(b"a: one\na: two\n", "x.yml")
    assert document.root is not None
    assert plain(document.root) == {"a": "one"}


@pytest.mark.parametrize(
    "deep", ["[" * 41 + "a" + "]" * 41, "a: " + "{a: " * 40 + "b" + "}" * 40, "- " * 100_000, "[" * 900,
             "[" * 41 + "]" * 41, "[" * 40 + "{}" + "]" * 40],
)  # fmt: skip
def test_what_stands_too_deep_is_refused(deep: str) -> None:
    [problem] = read_text(deep.encode(), "x.yml").problems
    assert problem.message == "lists or braces stand more than 40 deep inside one another"


@pytest.mark.parametrize(
    "shallow",
    ["[" * 40 + "]" * 40, "[" * 39 + "{}" + "]" * 39, "- {a: b}\n" * 200, "a:\n" + " " * 60 + "b: c"],
)
def test_many_braces_are_not_deep(shallow: str) -> None:
    assert read_text(shallow.encode(), "x.yml").problems == ()


def test_too_many_values_are_refused() -> None:
    [problem] = read_text(b"- \n" * 200_001, "x.yml").problems
    assert problem.message == "the file holds more than 200,000 values"


@pytest.mark.parametrize("value", ["b", "[]", "{}", "!!str b", "{b: c}"])
def test_a_value_counts_once_whatever_it_is(value: str, monkeypatch: pytest.MonkeyPatch) -> None:
    most = 40 if value == "{b: c}" else 20
    monkeypatch.setattr(composer, "MOST_VALUES", most + 1)  # the file itself is one
    rows = [f"k{number}: {value}\n" for number in range(21)]
    assert read_text("".join(rows[:20]).encode(), "x.yml").root is not None
    assert read_text("".join(rows).encode(), "x.yml").root is None


def test_nothing_is_read_behind_too_many_values(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(composer, "MOST_VALUES", 20)
    text = "k: v\n" * 30 + "k: [" * 3
    with pytest.raises(composer.TooManyError):
        composer.Composer(text, "x.yml", ()).document()


@pytest.mark.parametrize(("row", "found"), [("a: b", 59_999), ("- !a b", 60_000), ("- *a", 60_001)])
def test_of_a_file_full_of_one_fault_each_is_told(row: str, found: int) -> None:
    """Each was once held against all before it, which took minutes."""
    text = ("- &a b\n" if "*" in row else "") + f"{row}\n" * 60_000
    problems = read_text(text.encode(), "x.yml").problems
    assert len({problem.where.line for problem in problems}) == len(problems) == found
