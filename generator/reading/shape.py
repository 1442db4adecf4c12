"""A located tree to plain data that carries its places along."""

from generator.model import MARKS, WHERE
from generator.notation import ListNode, MapNode, Node


def shape(node: Node) -> object:
    """Dict, list and Text; each dict holds its own place and the places of its values under hidden keys."""
    if isinstance(node, MapNode):
        return shape_map(node)
    return [shape(item) for item in node.items] if isinstance(node, ListNode) else node


def shape_map(node: MapNode) -> dict[str, object]:
    """A mapping's fields; the first of a key given twice counts."""
    out: dict[str, object] = {}
    marks = {}
    for key, value in node.items:
        if key not in out:
            out[key] = shape(value)
            marks[key] = value.where
    out[WHERE] = node.where
    out[MARKS] = marks
    return out
