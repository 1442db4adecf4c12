"""Parts of a page, each shown where it has something to show, so that its anchor is known beforehand."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Generic, TypeVar

from generator.outputs.address_links import Links
from generator.outputs.page import Section
from generator.outputs.templating import render

View = TypeVar("View")


@dataclass(frozen=True, slots=True)
class Part(Generic[View]):
    """A heading, its anchor, its template, and the template's data; shown when any of the data says
    something.

    An anchor of ours holds an underscore, which no author's id can.
    """

    anchor: str
    title: str
    template: str
    data: Callable[[View], Mapping[str, object]]


def part_anchors(parts: tuple[Part[View], ...], view: View) -> frozenset[str]:
    """Return the anchors of the parts that this view fills."""
    return frozenset(part.anchor for part in parts if _says(part.data(view)))


def part_sections(parts: tuple[Part[View], ...], view: View, links: Links) -> Iterator[Section]:
    """Return a section of level 2 for each part that this view fills."""
    for part in parts:
        data = part.data(view)
        if _says(data):
            html = render(part.template, links, view=view, title=part.title, **data)
            yield Section(2, part.anchor, part.title, html)


def _says(data: Mapping[str, object]) -> bool:
    return any(data.values())
