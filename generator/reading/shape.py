"""A located tree to plain data that carries its places along."""

from collections.abc import Mapping

from generator.model import MARKS, WHERE
from generator.notation import ListNode, MapNode, Node, Text

_NOTHING: Mapping[int, object] = {}


def shape(node: Node, made: Mapping[int, object] = _NOTHING) -> object:
    """Dict, list and Text; each dict holds its own place and the places of its values under hidden keys.

    What was `made` of a mapping already, by the mapping's `id()`, stands in its place.
    """
    if isinstance(node, MapNode):
        return made[id(node)] if id(node) in made else shape_map(node, made)
    return [shape(item, made) for item in node.items] if isinstance(node, ListNode) else node


def shape_map(node: MapNode, made: Mapping[int, object] = _NOTHING) -> dict[str, object]:
    """A mapping's fields; the first of a key given twice counts."""
    out: dict[str, object] = {}
    marks = {}
    for key, value in node.items:
        if key not in out:
            out[key] = value if type(value) is Text else shape(value, made)
            marks[key] = value.where
    out[WHERE] = node.where
    out[MARKS] = marks
    return out
