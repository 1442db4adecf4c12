"""The author's file as a tree in which every scalar is text with a place."""

from dataclasses import dataclass

from generator.problems import Location


@dataclass(frozen=True, slots=True)
class TextNode:
    """A scalar, always text; `quoted` when the author put quotes or a block sign around it."""

    text: str
    where: Location
    quoted: bool = False


@dataclass(frozen=True, slots=True)
class ListNode:
    """A sequence."""

    items: tuple["Node", ...]
    where: Location


@dataclass(frozen=True, slots=True)
class MapNode:
    """A mapping in the author's order; a key given twice stands twice."""

    items: tuple[tuple[TextNode, "Node"], ...]
    where: Location

    def get(self, key: str) -> "Node | None":
        """The first value under a key."""
        return next((value for name, value in self.items if name.text == key), None)


Node = TextNode | ListNode | MapNode


def plain(node: Node) -> object:
    """The same data as dict, list and str, without places; the first of a key given twice."""
    if isinstance(node, TextNode):
        return node.text
    if isinstance(node, ListNode):
        return [plain(item) for item in node.items]
    out: dict[str, object] = {}
    for key, value in node.items:
        out.setdefault(key.text, plain(value))
    return out


def depth_of(node: Node) -> int:
    """How many collections stand inside one another."""
    if isinstance(node, TextNode):
        return 0
    inner = node.items if isinstance(node, ListNode) else tuple(value for _, value in node.items)
    return 1 + max((depth_of(item) for item in inner), default=0)
