"""Nasty files: each gives located problems, never a traceback, and never a value that nobody wrote."""

import pytest

from generator.notation import MapNode, read_text
from generator.problems import Level

NASTY = {
    "a tag that builds an object": (b"a: !!python/object/apply:os.system [ls]\n", "yaml-sign", 1),
    "a tag on a scalar": (b"a: b\nc: !!int 8\n", "yaml-sign", 2),
    "a tag of one's own": (b"a: !mine b\n", "yaml-sign", 1),
    "an anchor": (b"a: &x b\n", "yaml-sign", 1),
    "an alias": (b"a: b\nc: *x\n", "yaml-sign", 2),
    "a merge key": (b"a: &x\n  b: c\nd:\n  <<: *x\n", "yaml-sign", 1),
    "laughter that grows": (b"a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n", "yaml-sign", 1),
    "an alias to itself": (b"a: &a [*a]\n", "yaml-sign", 1),
    "a byte that is nothing": (b"a: b\x00c\n", "unreadable", 1),
    "a bell": (b"a: b\nc: d\x07\n", "unreadable", 2),
    "an escape for the terminal": (b"a: \x1b[31mred\n", "unreadable", 1),
    "bytes of another encoding": (b"a: b\nc: 45 \xb0C\n", "not-utf8", 2),
    "half a character": (b"a: \xe2\x82\n", "not-utf8", 1),
    "UTF-16": ("a: b\n".encode("utf-16"), "not-utf8", 1),
    "a value larger than any file": (b"a: " + b"x" * 10_000_000 + b"\n", "unreadable", 1),
    "lists inside lists": (b"a: " + b"[" * 2_000 + b"\n", "unreadable", 1),
    "braces inside braces": (b"a: " + b"{b: " * 500 + b"}" * 500 + b"\n", "unreadable", 1),
    "indentation without end": (b"".join(b" " * depth + b"a:\n" for depth in range(300)), "unreadable", 1),
    "a brace that never closes": (b"a: {b: c\nd: e\n", "unreadable", 1),
    "a bracket that never closes": (b"a: [b, c\n", "unreadable", 2),
    "a quote that never closes": (b'a: "b\nc: d\n', "unreadable", 1),
    "a bracket too many": (b"a: [b]]\n", "unreadable", 1),
    "smart quotes": ("a: \u201cb c\u201d\n".encode(), "smart-quote", 1),
    "guillemets": ("a: \u00abb c\u00bb\n".encode(), "smart-quote", 1),
    "a tab before a field": (b"a:\n\tb: c\n", "tab-indent", 2),
    "two documents": (b"a: b\n---\nc: d\n", "unreadable", 2),
    "a list as a field's name": (b"? [a, b]\n: c\n", "unreadable", 1),
    "a field given twice": (b"a: b\nc: d\na: e\n", "given-twice", 3),
    "a field given twice in braces": (b"a: {b: c, b: d}\n", "given-twice", 1),
    "text behind a hash": (b"a: bath #3 of the line\n", "text-cut", 1),
    "a colon in a sentence": (b"a: Look: no film.\n", "colon-in-sentence", 1),
    "a comma in braces": (b"a: {b: one, two, c: d}\n", "comma-in-braces", 1),
    "words in braces": (b"a: {one, two}\n", "unreadable", 1),
    "a sign in front": (b"a: >= 8 min\n", "yaml-sign", 1),
    "a backtick in front": (b"a: `b`\n", "yaml-sign", 1),
    "an at-sign in front": (b"a: @b\n", "yaml-sign", 1),
    "a per cent sign in front": (b"a: %b\n", "yaml-sign", 1),
    "indentation that fits nothing": (b"a:\n    b: c\n  d: e\n", "unreadable", 3),
    "a scalar behind a list": (b"- a\nb: c\n", "unreadable", 2),
}  # fmt: skip


@pytest.mark.parametrize("title", NASTY)
def test_nasty_text_is_a_located_problem(title: str) -> None:
    data, rule, line = NASTY[title]
    document = read_text(data, "x.yml")
    found = [(problem.rule, problem.where.line) for problem in document.problems]
    assert (rule, line) in found
    assert all(problem.level is Level.ERROR and problem.fix for problem in document.problems)
    assert all(problem.where.file == "x.yml" for problem in document.problems)


@pytest.mark.parametrize("title", NASTY)
def test_one_slip_is_told_once(title: str) -> None:
    told = [(p.rule, p.where.line, p.where.column) for p in read_text(NASTY[title][0], "x.yml").problems]
    assert len(told) == len(set(told))


def test_every_slip_of_a_file_is_told_in_one_run() -> None:
    text = (
        "say: Look: no film.\n"
        "why: Tag #3 is on it.\n"
        "film: < 0.1 mm\n"
        "note: \u201cquoted\u201d\n"
        "fail: {say: Lid on, then wait, call: me}\n"
        "film: 3\n"
        "\tx: y\n"
    )
    document = read_text(text.encode(), "x.yml")
    found = {(problem.rule, problem.where.line) for problem in document.problems}
    assert {("colon-in-sentence", 1), ("text-cut", 2), ("yaml-sign", 3), ("smart-quote", 4),
            ("tab-indent", 7)} <= found  # fmt: skip


QUIET = {
    "a start of document": "---\na: b\n",
    "an end of document": "a: b\n...\n",
    "a byte-order mark": "\ufeffa: b\n",
    "line ends of Windows": "a: b\r\nc: d\r\n",
    "text behind a block sign": "a: |\n  x: y # z\n  *not an alias\nb: c\n",
    "text behind a folding sign": "a: >-\n  x: y\n  {z\nb: c\n",
    "signs in quotes": "a: '*x'\nb: \"&y: #z\"\nc: 'it''s'\n",
    "quotes over two lines": 'a: "one\n  two: three # four"\nb: c\n',
    "a comment": "# a: b: c\na: b  # c: d\n",
    "a time of day, a window and a number below nothing": "a: 16:40\nb: 6 to 10 min\nc: -18 degC\n",
    "words that other readers turn into values": "a: no\nb: on\nc: 3.10\nd: 1e3\ne: null\nf: 2026-06-03\n",
    "an address": "a: https://example.org/x#y\n",
    "braces over two lines": "a: {b: c,\n  d: e}\nf: [g,\n  h]\n",
    "curly quotes inside a sentence": "a: Turn it to \u201cFREE\u201d now.\n",
    "an empty list, empty braces": "a: []\nb: {}\n",
}


@pytest.mark.parametrize("title", QUIET)
def test_good_text_is_left_alone(title: str) -> None:
    document = read_text(QUIET[title].encode(), "x.yml")
    assert [(p.rule, str(p.where), p.message) for p in document.problems] == []
    assert isinstance(document.root, MapNode)
