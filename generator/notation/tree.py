"""The author's file as a tree in which every scalar is text with a place."""

from dataclasses import dataclass

from generator.problems import Location
from generator.problems.location import NOWHERE


class Text(str):
    """The author's words with the place where they stand."""

    __slots__ = ("where",)

    where: Location

    def __new__(cls, text: str, where: Location = NOWHERE) -> "Text":
        made = str.__new__(cls, text)
        made.where = where
        return made


@dataclass(frozen=True, slots=True)
class ListNode:
    """A sequence."""

    items: tuple["Node", ...]
    where: Location


@dataclass(frozen=True, slots=True)
class MapNode:
    """A mapping in the author's order; a key given twice stands twice."""

    items: tuple[tuple[Text, "Node"], ...]
    where: Location

    def get(self, key: str) -> "Node | None":
        """The first value under a key."""
        return next((value for name, value in self.items if name == key), None)


Node = Text | ListNode | MapNode


def plain(node: Node) -> object:
    """The same data as dict, list and str, without places; the first of a key given twice."""
    if isinstance(node, Text):
        return str(node)
    if isinstance(node, ListNode):
        return [plain(item) for item in node.items]
    out: dict[str, object] = {}
    for key, value in node.items:
        out.setdefault(str(key), plain(value))
    return out


def moved(node: Node, by: int) -> Node:
    """The same, by so many lines further down."""
    if isinstance(node, Text):
        return moved_text(node, by)
    where = _lower(node.where, by)
    if isinstance(node, ListNode):
        return ListNode(tuple(moved(item, by) for item in node.items), where)
    return MapNode(tuple((moved_text(key, by), moved(value, by)) for key, value in node.items), where)


def moved_text(text: Text, by: int) -> Text:
    """A text, by so many lines further down; one of hundreds, so that its class is not called for it."""
    made = str.__new__(Text, text)
    made.where = _lower(text.where, by)
    return made


def _lower(where: Location, by: int) -> Location:
    file, line, column, length = where
    return tuple.__new__(Location, (file, line + by, column, length))


def depth_of(node: Node) -> int:
    """How many collections stand inside one another."""
    if isinstance(node, Text):
        return 0
    inner = node.items if isinstance(node, ListNode) else tuple(value for _, value in node.items)
    return 1 + max((depth_of(item) for item in inner), default=0)
