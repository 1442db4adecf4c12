"""The C parser's events to a located tree, with what is wrong with names, values, tags and aliases."""

from collections.abc import Sequence
from typing import Any

import yaml
from yaml._yaml import CParser
from yaml.composer import ComposerError
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
    StreamEndEvent,
)

from generator.notation.decode import INVISIBLE, invisible
from generator.notation.tree import ListNode, MapNode, Node, Text
from generator.problems import Level, Location, Problem

DEEPEST = 40
MOST_VALUES = 200_000
_SIGNS = "yaml-sign"
_new_place = tuple.__new__
_new_text = str.__new__
# Nothing in a file has a type: these tags say no more than what stands there anyway.
_KNOWN_TAGS = {"!", *(f"tag:yaml.org,2002:{kind}" for kind in ("str", "seq", "map"))}


class TooDeepError(yaml.YAMLError):
    """Collections stand more than DEEPEST deep inside one another."""


class TooManyError(yaml.YAMLError):
    """A file holds more than MOST_VALUES values: texts, lists and mappings; names do not count."""


class Composer:
    """The tree of a text, made from the parser's events: its own tree would cost as much again.

    `seen` is what is known to be wrong already, `found` what was wrong besides. A text that is a piece of
    a file begins at a `line` of it, `depth` collections deep.
    """

    def __init__(self, text: str, file: str, seen: Sequence[Problem], line: int = 1, depth: int = 0) -> None:
        self.next: Any = CParser(text).get_event
        self.file = file
        self.escapes = "\\" in text
        self.signed = {one.where.line for one in seen if one.rule == _SIGNS}
        self.found: list[Problem] = []
        self.line = line
        self.depth = depth
        self.values = 0
        self.anchors: dict[str, Any] = {}

    def document(self) -> Node | None:
        """The one document of the text, None where it is empty; a YAMLError where it cannot be read."""
        self.next()
        if not isinstance(self.next(), DocumentStartEvent):
            return None
        first = self.next()
        root = self.node(first)
        self.next()
        behind = self.next()
        if isinstance(behind, StreamEndEvent):
            return root
        raise ComposerError(
            "expected a single document in the stream", _mark(first),
            "but found another document", _mark(behind),
        )  # fmt: skip

    def node(self, event: Any) -> Node:
        """What an event begins."""
        self.values += 1
        if self.values > MOST_VALUES:
            raise TooManyError
        if event.anchor is not None:
            if isinstance(event, AliasEvent):
                return self.sign(self.anchored(event))
            self.anchor(event)
        if event.tag is not None and event.tag not in _KNOWN_TAGS:
            return self.tagged(event)
        return self.text(event) if isinstance(event, ScalarEvent) else self.collection(event)

    def text(self, event: Any) -> Text:
        """A scalar; a file holds hundreds, so place and text are made without a call of their classes."""
        start, end, value = event.start_mark, event.end_mark, event.value
        line, column = start.line, start.column
        length = end.column - column if end.line == line else 1
        where = _new_place(Location, (self.file, line + self.line, column + 1, length if length > 1 else 1))
        if self.escapes and not value.isprintable() and (unseen := INVISIBLE.search(value)):
            # An escape in quotes may stand for what the file itself must not hold.
            self.found.append(invisible(where, unseen.group()))
            value = INVISIBLE.sub("", value)
        made = _new_text(Text, value)
        made.where = where
        return made

    def collection(self, event: SequenceStartEvent | MappingStartEvent) -> ListNode | MapNode:
        """A list or a mapping; its depth is looked at before the parser's own stack runs out."""
        self.depth += 1
        if self.depth > DEEPEST:
            raise TooDeepError
        made = self.items(event) if isinstance(event, SequenceStartEvent) else self.mapping(event)
        self.depth -= 1
        return made

    def items(self, start: SequenceStartEvent) -> ListNode:
        items = []
        while not isinstance(event := self.next(), SequenceEndEvent):
            items.append(self.node(event))
        return ListNode(tuple(items), self.place(start))

    def mapping(self, start: MappingStartEvent) -> MapNode:
        pairs: list[tuple[Text, Node]] = []
        bare: list[bool] = []
        following = self.next
        while not isinstance(event := following(), MappingEndEvent):
            if not isinstance(event, ScalarEvent):
                self.not_a_key(event)
                continue
            if event.anchor is not None:
                self.anchor(event)
            key, behind = self.text(event), following()
            plain = type(behind) is ScalarEvent and behind.anchor is None and behind.tag is None
            if plain and self.values < MOST_VALUES:
                self.values += 1  # as for any node, without the call
                pairs.append((key, self.text(behind)))
            else:
                pairs.append((key, self.node(behind)))
            if start.flow_style:
                bare.append(_is_bare(event, behind))
        if any(bare):
            pairs = self.cut(pairs, bare) if not all(bare) else self.list_in_braces(start, pairs)
        if len({key for key, _ in pairs}) < len(pairs):
            self.twice([key for key, _ in pairs])
        return MapNode(tuple(pairs), self.place(start))

    def place(self, event: Any) -> Location:
        mark = _mark(event)
        return Location(self.file, mark.line + self.line, mark.column + 1)

    def anchor(self, event: Any) -> None:
        """A name for what stands here, which an alias may use."""
        first = self.anchors.setdefault(event.anchor, event)
        if first is not event:
            raise ComposerError(
                "found duplicate anchor; first occurrence", _mark(first),
                "second occurrence", _mark(event),
            )  # fmt: skip

    def anchored(self, alias: AliasEvent) -> Any:
        """What an alias stands for."""
        first = self.anchors.get(str(alias.anchor))
        if first is None:
            raise ComposerError(None, None, "found undefined alias", _mark(alias))
        return first

    def tagged(self, event: Any) -> Text:
        """Behind a tag the text is told on: one slip should not look like two."""
        told, known = self.sign(event), len(self.found)
        if not isinstance(event, ScalarEvent):
            self.collection(event)
        self.forget(known)
        return told

    def sign(self, event: Any) -> Text:
        where = self.place(event)
        if where.line not in self.signed:
            self.signed.add(where.line)
            self.add(
                _SIGNS,
                where,
                "a tag, anchor or alias of YAML stands here; plain text is expected",
                "write the value out, and put it in straight double quotes if it begins with ! & or *",
            )
        return Text(event.value if isinstance(event, ScalarEvent) else "", where)

    def forget(self, known: int) -> None:
        """Take back what was found since so much was known."""
        self.signed -= {one.where.line for one in self.found[known:] if one.rule == _SIGNS}
        del self.found[known:]

    def not_a_key(self, event: Any) -> None:
        """A name that is none; what stands behind it is not told either."""
        known = len(self.found)
        meant = self.anchored(event) if isinstance(event, AliasEvent) else event
        if meant is event:
            self.node(event)
        self.node(self.next())
        self.forget(known)
        self.add(
            "unreadable",
            self.place(meant),
            "a list or braces stand where a field's name belongs",
            "write the field as `name: value`",
        )

    def list_in_braces(self, start: Any, pairs: list[tuple[Text, Node]]) -> list[tuple[Text, Node]]:
        self.add(
            "unreadable",
            self.place(start),
            "words without values stand in braces",
            f"write a list in brackets: `[{', '.join(name for name, _ in pairs)}]`",
        )
        return pairs

    def cut(self, pairs: list[tuple[Text, Node]], bare: list[bool]) -> list[tuple[Text, Node]]:
        """What is left of the pairs in braces where a comma cut a sentence."""
        kept = []
        for index, (key, value) in enumerate(pairs):
            if bare[index] and (index or " " in key):
                self.comma(key)
            else:
                kept.append((key, value))
        return kept

    def comma(self, key: Text) -> None:
        self.add(
            "comma-in-braces",
            key.where,
            f'a comma inside {{ }} cuts the sentence before "{key}"',
            "put the whole sentence in straight double quotes, or write the fields on lines of their own",
        )

    def twice(self, keys: list[Text]) -> None:
        met: set[str] = set()
        for key in keys:
            if key in met:
                self.add(
                    "given-twice",
                    key.where,
                    f'"{key}" is given twice here',
                    "keep one of the two; only one would have counted",
                )
            met.add(key)

    def add(self, rule: str, where: Location, message: str, fix: str) -> None:
        self.found.append(Problem(rule, Level.ERROR, where, message, fix))


def _mark(event: Any) -> Any:
    return event.start_mark


def _is_bare(key: Any, value: Any) -> bool:
    return isinstance(value, ScalarEvent) and bool(_mark(value).index == key.end_mark.index)
