"""What the YAML parser says, in an author's words."""

import yaml

from generator.problems import Level, Location, Problem

_WORDS = (
    (
        "mapping values are not allowed",
        "a second `: ` stands on a line that already has one",
        "put the sentence in straight double quotes",
    ),
    (
        "did not find expected key",
        "the indentation does not fit the lines above",
        "bring the line under the fields that it belongs to",
    ),
    (
        "did not find expected '-' indicator",
        "a line is indented like the list above it but does not start with `- `",
        "start it with `- ` or move it left",
    ),
    (
        "did not find expected ',' or",
        "brackets or braces are not closed",
        "close them on the same line, and put sentences with commas in quotes",
    ),
    (
        "unexpected end of stream",
        "a quote, bracket or brace is opened and never closed",
        "close it where the text ends",
    ),
    (
        "expected a single document",
        "a line of three dashes starts a second document",
        "delete the line; one file holds one document",
    ),
    (
        "undefined alias",
        "a value begins with *, which YAML takes for an alias",
        "put the text in straight double quotes",
    ),
    (
        "maximum nesting depth",
        "brackets or braces stand very deep inside one another",
        "look for brackets that are never closed",
    ),
    (
        "did not find expected node content",
        "a comma, bracket or brace too many stands here",
        "delete it, or write the value that is missing before it",
    ),
    (
        "could not find expected ':'",
        "a line stands here that is no field and belongs to no sentence",
        "write it as `field: value`, or indent it deeper than the field whose sentence it goes on",
    ),
    (
        "escape c",  # an unknown one, or one of no letter
        "a backslash in double quotes begins an escape, and this is none",
        "write two backslashes, or put the text in single quotes",
    ),
    (
        "expected hexdecimal number",
        "a backslash in double quotes begins an escape, and this is none",
        "write two backslashes, or put the text in single quotes",
    ),
)
_CLOSING = (
    "a bracket or brace is closed here that was never opened",
    "delete it, or put the sentence in straight double quotes",
)


def parser_problem(bad: yaml.YAMLError, file: str, text: str = "") -> Problem:
    """The parser's one complaint about a text, located."""
    said = " ".join(str(getattr(bad, part, "") or "") for part in ("context", "problem")) or str(bad)
    mark = getattr(bad, "problem_mark", None) or getattr(bad, "context_mark", None)
    where = Location(file, mark.line + 1, mark.column + 1) if mark else Location(file)
    if mark and text[mark.index : mark.index + 1] in ("]", "}") and "node content" not in said:
        return Problem("unreadable", Level.ERROR, where, *_CLOSING)
    for sign, message, fix in _WORDS:
        if sign in said:
            return Problem("unreadable", Level.ERROR, where, message, fix)
    return Problem(
        "unreadable",
        Level.ERROR,
        where,
        f"the text cannot be read here ({said.strip()})",
        "compare indentation, quotes and colons with the lines above",
    )
