"""A procedure's file as it was read last: the next reading takes over what no edit has touched."""

from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import NamedTuple

from generator.model import Procedure, Step
from generator.notation import Document, ListNode, MapNode, Node


class Earlier(NamedTuple):
    """A file that had no faults, and its steps by the `id()` of the node that each was made from."""

    document: Document
    steps: Mapping[int, Step]


def earlier(file: str) -> Earlier | None:
    """The last reading of a file, where it is one of the few that were read last."""
    return next(iter(_last(file)), None)


def remember(document: Document, procedure: Procedure) -> None:
    """Keep a file without faults for its next reading."""
    _last(document.file)[:] = [Earlier(document, dict(_steps(document.root, procedure)))]


@lru_cache(maxsize=8)
def _last(file: str) -> list[Earlier]:  # noqa: ARG001 - the key alone
    # What is kept here never changes what is read, only how long that takes.
    return []


def _steps(root: Node | None, procedure: Procedure) -> Iterator[tuple[int, Step]]:
    for part, stage in zip(_items(root, "stages"), procedure.stages, strict=True):
        yield from zip(map(id, _items(part, "steps")), stage.steps, strict=True)


def _items(node: Node | None, field: str) -> tuple[Node, ...]:
    listed = node.get(field) if isinstance(node, MapNode) else None
    return listed.items if isinstance(listed, ListNode) else ()
