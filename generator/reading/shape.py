"""A located tree to plain data that carries its places along."""

from generator.model import MARKS, WHERE, Text
from generator.notation import ListNode, MapNode, Node, TextNode


def shape(node: Node) -> object:
    """Dict, list and Text; each dict holds its own place and the places of its values under hidden keys."""
    if isinstance(node, TextNode):
        return Text(node.text, node.where)
    if isinstance(node, ListNode):
        return [shape(item) for item in node.items]
    return shape_map(node)


def shape_map(node: MapNode) -> dict[str, object]:
    """A mapping's fields; the first of a key given twice counts."""
    out: dict[str, object] = {}
    marks = {}
    for key, value in node.items:
        if key.text not in out:
            out[Text(key.text, key.where)] = shape(value)
            marks[key.text] = value.where
    out[WHERE] = node.where
    out[MARKS] = marks
    return out
