"""A text read again after an edit: of its lists, only the items in which a line changed are parsed anew."""

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import yaml

from generator.notation.composer import Composer
from generator.notation.tree import ListNode, MapNode, Node, Text, moved, moved_text
from generator.problems import Location

# An end of the document, and a name without a value, which the parser puts where the next thing begins.
_ELSEWHERE = re.compile(r"^(?:\.\.\.|[ -]*\?(?: |$))", re.MULTILINE)


class _Edit(NamedTuple):
    """Lines of the old text, counted from 1, that are others in the new one, and how many lines that adds.

    Where lines were only put in, `last` is the line before them and `first` the one behind.
    """

    first: int
    last: int
    adds: int


class _Item(NamedTuple):
    """An item of a list in block style: the way from the root, its first line, the first line behind it.

    `lead` is what stands before the item on its first line: the indent and the dash.
    """

    path: tuple[int, ...]
    first: int
    behind: int
    lead: str


def compose_again(root: Node, before: str, text: str, file: str) -> Node | None:
    """The tree of a text from the tree of the text before, both without slips of form; what was, is shared.

    The lines around an item are as they were, so that the parser would come to it and leave it as it did
    then. None where no item holds an edit, or where it cannot be read by itself.
    """
    old, new = before.splitlines(keepends=True), text.splitlines(keepends=True)
    made, behind = root, 0
    for edit in _edits(old, new):
        if edit.last < behind:
            continue  # in the item that was read for the edit before
        item = _item_around(made, edit, old)
        items = _items(new[item.first - 1 : item.behind - 1 + edit.adds], file, item) if item else ()
        if item is None or not items:
            return None
        made, behind = _with_items(made, item.path, items, edit.adds), item.behind
    return made


def _edits(old: list[str], new: list[str]) -> Iterator[_Edit]:
    """Each line that is another one; where lines came or went, all from the first to the last in one."""
    if len(old) == len(new):
        lines = enumerate(zip(old, new, strict=True), 1)
        yield from (_Edit(number, number, 0) for number, (line, its) in lines if line != its)
        return
    head = _alike(old, new)
    tail = min(_alike(old[::-1], new[::-1]), len(old) - head, len(new) - head)
    yield _Edit(head + 1, len(old) - tail, len(new) - len(old))


def _alike(one: list[str], other: list[str]) -> int:
    """How many lines at the start are the same."""
    pairs = enumerate(zip(one, other, strict=False))
    return next((index for index, (line, its) in pairs if line != its), min(len(one), len(other)))


def _item_around(root: Node, edit: _Edit, lines: list[str]) -> _Item | None:
    """The innermost item that holds all edited lines; the line behind it is where something else begins."""
    node, found, behind = root, None, len(lines) + 1
    path: tuple[int, ...] = ()
    while not isinstance(node, Text):
        parts = _parts(node)
        index = bisect_right(parts, min(edit.first, edit.last), key=lambda part: part[0].line) - 1
        dash = "-" if isinstance(node, ListNode) else ""
        if index + 1 < len(parts):
            follows = parts[index + 1][0]
            if edit.last >= follows.line or _lead(lines, follows).strip() != dash:
                return found
            behind = follows.line
        if index < 0:
            return found
        where, node = parts[index]
        path = (*path, index)
        if dash and _lead(lines, where).strip() == dash:
            found = _Item(path, where.line, behind, _lead(lines, where))
    return found


def _parts(node: ListNode | MapNode) -> list[tuple[Location, Node]]:
    """Where each part of a collection begins, and what it is."""
    if isinstance(node, ListNode):
        return [(item.where, item) for item in node.items]
    return [(key.where, value) for key, value in node.items]


def _lead(lines: list[str], where: Location) -> str:
    return lines[where.line - 1][: where.column - 1]


def _items(lines: Sequence[str], file: str, item: _Item) -> tuple[Node, ...]:
    """What these lines hold as a list by themselves; nothing where anything about them is strange."""
    text = "".join(lines)
    if not text.startswith(item.lead) or _ELSEWHERE.search(text):
        return ()
    composer = Composer(text, file, (), item.first, len(item.path) - 1)
    try:
        found = composer.document()
    except yaml.YAMLError:
        return ()
    strange = composer.found or composer.anchors
    return found.items if isinstance(found, ListNode) and not strange else ()


def _with_items(node: Node, path: Sequence[int], items: tuple[Node, ...], adds: int) -> Node:
    """The tree with these items instead of the one at the end of a path, and what follows moved by lines."""
    assert not isinstance(node, Text)
    index, *deeper = path
    if isinstance(node, ListNode):
        inside = (_with_items(node.items[index], deeper, items, adds),) if deeper else items
        behind = node.items[index + 1 :]
        behind = tuple(moved(one, adds) for one in behind) if adds else behind
        return ListNode((*node.items[:index], *inside, *behind), node.where)
    key, value = node.items[index]
    pair = (key, _with_items(value, deeper, items, adds))
    below = node.items[index + 1 :]
    below = tuple((moved_text(name, adds), moved(one, adds)) for name, one in below) if adds else below
    return MapNode((*node.items[:index], pair, *below), node.where)
