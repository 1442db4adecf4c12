"""What the HTML standard asks of a page, as far as its pieces can break it: ids, references, nesting, names.

Written from the WHATWG HTML standard (content models, section 4) and ARIA in HTML (naming prohibited).
"""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from selectolax.lexbor import LexborHTMLParser, LexborNode

_PHRASING_ONLY = {
    "p", "h1", "h2", "h3", "h4", "h5", "h6", "span", "b", "i", "em", "strong", "small", "code", "sub", "sup",
    "button", "label", "pre", "abbr", "time", "legend", "option",
}  # fmt: skip
_PHRASING = {
    "a", "abbr", "b", "br", "button", "code", "datalist", "em", "i", "img", "input", "label", "math", "mark",
    "meter", "output", "progress", "s", "script", "select", "small", "span", "strong", "sub", "sup", "svg",
    "template", "textarea", "time", "u", "var", "wbr", "kbd", "q", "cite", "dfn", "data", "del", "ins",
}  # fmt: skip
_CHILDREN = {
    "ul": {"li", "script", "template"}, "ol": {"li", "script", "template"},
    "dl": {"dt", "dd", "div", "script", "template"}, "tr": {"td", "th", "script", "template"},
    "table": {"caption", "colgroup", "thead", "tbody", "tfoot", "tr", "script", "template"},
    "thead": {"tr"}, "tbody": {"tr", "script", "template"}, "select": {"option", "optgroup", "hr"},
}  # fmt: skip
_INTERACTIVE = {"a", "button", "select", "textarea", "details", "label", "iframe", "input"}
_CONTROLS = {"input", "select", "textarea", "button", "meter", "output", "progress"}
_NO_NAME = {"div", "span", "p", "b", "i", "small", "strong", "em", "code", "sub", "sup", "dd", "dt", "legend"}
_OBSOLETE = {"center", "font", "marquee", "big", "tt", "strike", "acronym", "frame", "blink"}
_REFERENCES = ("aria-labelledby", "aria-describedby", "aria-controls", "aria-owns", "headers")
_FOREIGN = {"svg", "math"}


def faults(html: str) -> list[str]:
    """What is wrong with a page, each with the element it is about."""
    tree = LexborHTMLParser(html)
    nodes = [node for node in tree.root.traverse() if node.is_element_node] if tree.root else []
    return [*_of_the_page(tree), *_of_ids(nodes), *(said for node in nodes for said in _of_node(node))]


def _of_the_page(tree: LexborHTMLParser) -> Iterator[str]:
    title = tree.css_first("head > title")
    if title is None or not title.text().strip():
        yield "a page without a title"
    html = tree.css_first("html")
    if html is None or not html.attributes.get("lang"):
        yield "a page that does not say its language"
    levels = [int(str(node.tag)[1]) for node in tree.css("article :is(h1, h2, h3, h4, h5, h6)")]
    if levels.count(1) != 1:
        yield f"{levels.count(1)} headings of the first level"
    yield from (f"h{b} follows h{a}" for a, b in pairwise(levels) if b > a + 1)


def _of_ids(nodes: list[LexborNode]) -> Iterator[str]:
    ids = Counter(node.attributes["id"] for node in nodes if node.attributes.get("id"))
    yield from (f'the id "{id}" stands {count} times' for id, count in ids.items() if count > 1)
    for node in nodes:
        for name in _REFERENCES:
            for wanted in (node.attributes.get(name) or "").split():
                if wanted not in ids:
                    yield f'{_named(node)}: {name} names "{wanted}", which is not there'
        target = node.attributes.get("href") or ""
        if node.tag == "a" and len(target) > 1 and target[0] == "#" and target[1:] not in ids:
            yield f"{_named(node)}: leads to {target}, which is not there"


def _of_node(node: LexborNode) -> Iterator[str]:
    above = [str(parent.tag) for parent in _parents(node)]
    if _FOREIGN.intersection(above) or "article" not in above:
        return
    parent = node.parent
    tag, attributes = str(node.tag), node.attributes
    if parent is not None and tag not in _CHILDREN.get(str(parent.tag), {tag}):
        yield f"{_named(node)} stands right inside {_named(parent)}"
    if parent is not None and parent.tag in _PHRASING_ONLY and tag not in _PHRASING:
        yield f"{_named(node)} stands inside {_named(parent)}, which holds words only"
    if tag in _OBSOLETE or "style" in attributes or any(name.startswith("on") for name in attributes):
        yield f"{_named(node)} is obsolete, or styled or scripted where it stands"
    if _is_interactive(node) and {"a", "button"}.intersection(above):
        yield f"{_named(node)} can be used inside something that can be used"
    if tag == "img" and attributes.get("alt") is None:
        yield f"{_named(node)} has no alt"
    if tag in _NO_NAME and "aria-label" in attributes and "role" not in attributes:
        yield f"{_named(node)} has a name and no role"
    yield from _of_form(node, above)


def _of_form(node: LexborNode, above: list[str]) -> Iterator[str]:
    if node.tag == "details" and (node.css_first("summary") is None or _first_element(node) != "summary"):
        yield f"{_named(node)} does not begin with its summary"
    if node.tag == "label" and "for" not in node.attributes and not node.css(",".join(_CONTROLS)):
        yield f"{_named(node)} labels nothing"
    named = {"aria-label", "aria-labelledby", "title"}.intersection(node.attributes)
    is_control = node.tag in ("input", "select", "textarea") and node.attributes.get("type") != "hidden"
    if is_control and not named and "label" not in above:
        yield f"{_named(node)} has no label"
    if node.tag == "tr":
        sizes = {_cells(row) for row in (node.parent.css("tr") if node.parent else [])}
        if len(sizes) > 1 and not node.css("[rowspan]"):
            yield f"{_named(node)}: rows of {sorted(sizes)} cells in one table"


def _cells(row: LexborNode) -> int:
    return sum(int(cell.attributes.get("colspan") or 1) for cell in row.css("td, th"))


def _is_interactive(node: LexborNode) -> bool:
    return node.tag in _INTERACTIVE or "tabindex" in node.attributes


def _first_element(node: LexborNode) -> str:
    child = node.child
    while child is not None and not child.is_element_node:
        child = child.next
    return str(child.tag) if child is not None else ""


def _parents(node: LexborNode) -> Iterator[LexborNode]:
    parent = node.parent
    while parent is not None:
        yield parent
        parent = parent.parent


def _named(node: LexborNode) -> str:
    place = node.attributes.get("id") or node.attributes.get("class") or ""
    return f"<{node.tag}>" + (f" ({place})" if place else "")
