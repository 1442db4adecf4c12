"""Text to a located tree: the raw scan first, then PyYAML's C parser, no implicit types."""

from dataclasses import dataclass

import yaml

from generator.notation.decode import INVISIBLE, decode, invisible
from generator.notation.loader import DEEPEST, MOST_VALUES, Loader, TooDeepError, TooManyError
from generator.notation.parser_words import parser_problem
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
            found.append(parser_problem(bad, file, text))
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
            # Behind a tag the text is told on: one slip should not look like two.
            return Text(node.value if isinstance(node, yaml.ScalarNode) else "", self.place(node))
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
        if not node.value.isprintable() and (unseen := INVISIBLE.search(node.value)):
            # Quotes may hold an escape for what the file itself must not hold.
            self.found.append(invisible(where, unseen.group()))
            return Text(INVISIBLE.sub("", node.value), where)
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
