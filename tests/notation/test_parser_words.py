"""A slip of form is told at the author's line, and not where the parser gave up."""

import pytest

from generator.notation import read_text

SLIPS = {
    "a quote left open": (
        'a:\n  - b: "Left: one.\n    c: d\n  - b: "Right: two."\n    c: d\n',
        (2, 8, "a quote is opened here and not closed before the next field"),
        'close it at the end of the line: `- b: "Left: one."`',
    ),
    "a single quote left open": (
        "a: 'one\nb: two\n",
        (1, 4, "a quote is opened here and not closed before the next field"),
        "close it at the end of the line: `a: 'one'`",
    ),
    "a field too deep": (
        "a:\n  - say: Lower it.\n     do: put-in\n    at: soak\n",
        (3, 6, "the line is indented deeper than the field above it, which has a value already"),
        "move it left under the fields beside it, or write above it the field that it belongs to",
    ),
    "a colon glued to the text": (
        "a:\n  - id: b\n    say:Lower it.\n    do: put-in\n",
        (3, 5, "no space stands behind the colon of a field"),
        "write `say: Lower it.`",
    ),
    "a glued colon in the first field": (
        "a:\n  - id:b\n    say: Lower it.\n",
        (2, 5, "no space stands behind the colon of a field"),
        "write `id: b`",
    ),
    "a field without its colon": (
        "a:\n  - id: b\n    do put-in\n    at: soak\n",
        (3, 5, "a line stands here that is no field and belongs to no sentence"),
        "write it as `field: value`, or indent it deeper than the field whose sentence it goes on",
    ),
    "a list without its field": (
        "a:\n  - title: Clean\n      - id: b\n        say: Lower it.\n",
        (3, 9, "the line is indented deeper than the field above it, which has a value already"),
        "move it left under the fields beside it, or write above it the field that it belongs to",
    ),
    "an apostrophe in single quotes": (
        "a:\n  - say: 'Don't let it touch.'\n    do: wait\n",
        (2, 15, "the sentence goes on behind its closing quote"),
        'write `- say: "Don\'t let it touch."`',
    ),
    "one word in quotes": (
        'a:\n  say: "Lower" the board in.\n  do: wait\n',
        (2, 16, "the sentence goes on behind its closing quote"),
        'write `say: "\\"Lower\\" the board in."`',
    ),
    "a brace left open": (
        "a:\n  - b: {c: d\n    e: f\n    g: h\n",
        (2, 8, "brackets or braces are not closed"),
        "close them on the same line, and put sentences with commas in quotes",
    ),
    "a comma left out in braces over two lines": (
        "a: {b: c,\n  d: 'e' f: g}\n",
        (2, 10, "brackets or braces are not closed"),
        "close them on the same line, and put sentences with commas in quotes",
    ),
    "a slip below quotes over two lines": (
        'a: "one\n  b: two"\nc: d]\ne: {f: "g" h: i}\n',
        (4, 12, "brackets or braces are not closed"),
        "close them on the same line, and put sentences with commas in quotes",
    ),
}


@pytest.mark.parametrize("title", SLIPS)
def test_a_slip_is_told_at_its_own_line(title: str) -> None:
    text, (line, column, message), fix = SLIPS[title]
    [problem] = read_text(text.encode(), "x.yml").problems
    assert (problem.where.line, problem.where.column, problem.message) == (line, column, message)
    assert problem.fix == fix
