"""The only door to YAML: raw text in, a tree of located text out, and back."""

from generator.notation.parse import Document, read_text
from generator.notation.tree import ListNode, MapNode, Node, Text, depth_of, plain
from generator.notation.write import as_yaml

__all__ = ["Document", "ListNode", "MapNode", "Node", "Text", "as_yaml", "depth_of", "plain", "read_text"]
