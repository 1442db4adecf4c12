"""Text to a located tree: the raw scan first, then PyYAML's C parser, no implicit types."""

from dataclasses import dataclass

import yaml

from generator.notation.decode import decode
from generator.notation.loader import DEEPEST, MOST_VALUES, Loader, TooDeepError, TooManyError
from generator.notation.scan import scan
from generator.notation.tree import ListNode, MapNode, Node, Text
from generator.problems import Level, Location, Problem, by_place

_SIGNS = "yaml-sign"
# CBaseLoader resolves no types: every plain scalar is text, so only these tags come without being written.
_KNOWN_TAGS = {f"tag:yaml.org,2002:{kind}" for kind in ("str", "seq", "map")}


@dataclass(frozen=True, slots=True)
class Document:
    """One file as read: its text (for quoting lines), its tree where it could be parsed, what was wrong."""

    file: str
    text: str
    root: Node | None
    problems: tuple[Problem, ...]


def read_text(data: bytes, file: str) -> Document:
    """A file's bytes as a located tree, with all that is wrong with its form; never raises on bad input."""
    text, problems = decode(data, file)
    if problems:
        return Document(file, text, None, problems)
    found = list(scan(text, file))
    root = _compose(text, file, found)
    return Document(file, text, root, by_place(found))


def _compose(text: str, file: str, found: list[Problem]) -> Node | None:
    loader = Loader(text)
    try:
        node = loader.get_single_node()
    except TooDeepError:
        found.append(
            Problem(
                "unreadable",
                Level.ERROR,
                Location(file),
                f"lists or braces stand more than {DEEPEST} deep inside one another",
                "look for brackets that are never closed",
            )
        )
        return None
    except TooManyError:
        found.append(
            Problem(
                "unreadable",
                Level.ERROR,
                Location(file),
                f"the file holds more than {MOST_VALUES:,} values",
                "split it: one procedure a file",
            )
        )
        return None
    except yaml.YAMLError as bad:
        if not any(problem.level is Level.ERROR for problem in found):
            found.append(_parser_problem(bad, file))
        return None
    if node is None:
        return MapNode((), Location(file))
    return _Convert(file, found).node(node)


class _Convert:
    """PyYAML nodes to ours, noting keys given twice, values cut by a comma, tags and aliases."""

    def __init__(self, file: str, found: list[Problem]) -> None:
        self.file = file
        self.found = found
        self.seen: set[int] = set()

    def place(self, node: yaml.Node) -> Location:
        mark = node.start_mark
        return Location(self.file, mark.line + 1, mark.column + 1)

    def node(self, node: yaml.Node) -> Node:
        if id(node) in self.seen or node.tag not in _KNOWN_TAGS:
            self.sign(node)
            return Text("", self.place(node))
        self.seen.add(id(node))
        if isinstance(node, yaml.ScalarNode):
            return self.text(node)
        if isinstance(node, yaml.SequenceNode):
            return ListNode(tuple([self.node(item) for item in node.value]), self.place(node))
        assert isinstance(node, yaml.MappingNode)
        return self.mapping(node)

    def text(self, node: yaml.ScalarNode) -> Text:
        start, end = node.start_mark, node.end_mark
        line, column = start.line, start.column
        length = end.column - column if end.line == line else 1
        # `_make` takes a fifth of the time of a call, and a file holds hundreds of scalars.
        where = Location._make((self.file, line + 1, column + 1, length if length > 1 else 1))
        return Text(node.value, where)

    def mapping(self, node: yaml.MappingNode) -> MapNode:
        items: list[tuple[Text, Node]] = []
        names: set[str] = set()
        bare = [self.is_bare(key, value) for key, value in node.value] if node.flow_style else ()
        cut = any(bare) and not all(bare)
        for index, (key_node, value_node) in enumerate(node.value):
            if not isinstance(key_node, yaml.ScalarNode) or id(key_node) in self.seen:
                self.not_a_key(key_node)
                continue
            key = self.text(key_node)
            if cut and bare[index] and (index or " " in key):
                self.comma(key)
                continue
            if key in names:
                self.twice(key)
            names.add(key)
            items.append((key, self.node(value_node)))
        if bare and all(bare):
            self.list_in_braces(node)
        return MapNode(tuple(items), self.place(node))

    @staticmethod
    def is_bare(key: yaml.Node, value: yaml.Node) -> bool:
        """A word in braces with neither a colon nor a value behind it."""
        return isinstance(value, yaml.ScalarNode) and value.start_mark.index == key.end_mark.index

    def list_in_braces(self, node: yaml.MappingNode) -> None:
        words = ", ".join(str(key.value) for key, _ in node.value)
        self.add(
            "unreadable",
            self.place(node),
            "words without values stand in braces",
            f"write a list in brackets: `[{words}]`",
        )

    def comma(self, key: Text) -> None:
        self.add(
            "comma-in-braces",
            key.where,
            f'a comma inside {{ }} cuts the sentence before "{key}"',
            "put the whole sentence in straight double quotes, or write the fields on lines of their own",
        )

    def twice(self, key: Text) -> None:
        self.add(
            "given-twice",
            key.where,
            f'"{key}" is given twice here',
            "keep one of the two; only one would have counted",
        )

    def sign(self, node: yaml.Node) -> None:
        line = node.start_mark.line + 1
        if any(problem.rule == _SIGNS and problem.where.line == line for problem in self.found):
            return
        self.add(
            _SIGNS,
            self.place(node),
            "a tag, anchor or alias of YAML stands here; plain text is expected",
            "write the value out, and put it in straight double quotes if it begins with ! & or *",
        )

    def not_a_key(self, node: yaml.Node) -> None:
        self.add(
            "unreadable",
            self.place(node),
            "a list or braces stand where a field's name belongs",
            "write the field as `name: value`",
        )

    def add(self, rule: str, where: Location, message: str, fix: str) -> None:
        self.found.append(Problem(rule, Level.ERROR, where, message, fix))


_PARSER_WORDS = (
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
)


def _parser_problem(bad: yaml.YAMLError, file: str) -> Problem:
    said = " ".join(str(getattr(bad, part, "") or "") for part in ("context", "problem")) or str(bad)
    mark = getattr(bad, "problem_mark", None) or getattr(bad, "context_mark", None)
    where = Location(file, mark.line + 1, mark.column + 1) if mark else Location(file)
    for sign, message, fix in _PARSER_WORDS:
        if sign in said:
            return Problem("unreadable", Level.ERROR, where, message, fix)
    return Problem(
        "unreadable",
        Level.ERROR,
        where,
        f"the text cannot be read here ({said.strip()})",
        "compare indentation, quotes and colons with the lines above",
    )
