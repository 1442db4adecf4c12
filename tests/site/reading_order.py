"""What a screen reader is told of a page: Chromium's accessibility tree of the article, line by line."""

from collections.abc import Iterator, Mapping
from typing import Any

from playwright.sync_api import Page

# Told by their name alone; what is inside is in the name already.
_WHOLE = ("heading", "link", "button", "DisclosureTriangle", "textbox", "searchbox", "combobox", "checkbox",
          "image", "math", "MathMLMath", "spinbutton", "InputTime")  # fmt: skip
_OPENED = ("list", "table", "region", "group", "complementary", "alert", "figure")

Node = Mapping[str, Any]


def reading_order(page: Page) -> str:
    """The lines of the article: role and name of each piece, and plain text as it comes."""
    session = page.context.new_cdp_session(page)
    session.send("Accessibility.enable")
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    session.detach()
    by_id = {node["nodeId"]: node for node in nodes}
    article = next(node for node in nodes if _role(node) == "article")
    return "\n".join(_lines(article, by_id, "")) + "\n"


def _lines(node: Node, by_id: Mapping[str, Node], indent: str) -> Iterator[str]:
    role, name = _role(node), _name(node)
    if role == "StaticText":
        if name:
            yield f"{indent}{name}"
        return
    if role == "status":
        # What it says comes some time after the page.
        yield f"{indent}status"
        return
    if role in _WHOLE and not node.get("ignored"):
        yield f"{indent}{role}{_level(node)}: {name}".rstrip()
        return
    inside = indent
    if role in _OPENED and not node.get("ignored") and (name or role in ("list", "table", "alert")):
        yield f"{indent}{role}: {name}".rstrip(": ")
        inside = indent + "  "
    for child in node.get("childIds", ()):
        if child in by_id:
            yield from _lines(by_id[child], by_id, inside)


def _role(node: Node) -> str:
    return str(node.get("role", {}).get("value", ""))


def _name(node: Node) -> str:
    return " ".join(str(node.get("name", {}).get("value", "")).split())


def _level(node: Node) -> str:
    found = [one["value"]["value"] for one in node.get("properties", ()) if one["name"] == "level"]
    return f" {found[0]}" if found else ""
