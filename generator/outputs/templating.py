"""The only door to the template engine: compiled once, everything escaped, nothing undefined."""

import json
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2.compiler import CodeGenerator, Frame
from jinja2.nodes import Call, Expr, Getattr
from markupsafe import Markup, escape

from generator.outputs.address_links import Links, relative
from generator.outputs.assets import script_path
from generator.outputs.drawings import pictogram_path, sign_path
from generator.outputs.escaping import escape_text


def render(template: str, links: Links, /, **data: object) -> str:
    """Return a template as HTML; in it `link(address, anchor)` and `file(path)` are this page's links.

    `sign_file(symbol)`, `pictogram_file(code)` and `script_file(kind)` lead to files that every site has.
    The lines come out without indentation, so that no engine takes them for code.
    """
    html = (
        _environment()
        .get_template(template)
        .render(
            data,
            link=links.page,
            file=links.file,
            sign_file=lambda symbol: relative(links.here, sign_path(symbol)),
            pictogram_file=lambda code: relative(links.here, pictogram_path(code)),
            script_file=lambda kind: relative(links.here, script_path(kind)),
        )
    )
    return _squeezed(html)


def _squeezed(html: str) -> str:
    """The lines without blanks at their ends, and no empty ones; far quicker than a pattern."""
    return "\n".join(filter(None, map(str.strip, html.split("\n"))))


class _Writer(CodeGenerator):
    """Writes templates in which every value goes through our own escaping, whatever a template says.

    What they are given are objects, so that a point leads to an attribute and is never tried as a key.
    """

    def _output_child_pre(
        self, node: Expr, frame: Frame, finalize: CodeGenerator._FinalizeInfo  # noqa: ARG002
    ) -> None:
        self.write("environment.escape_text(")
        if finalize.src is not None:
            self.write(finalize.src)

    def visit_Getattr(self, node: Getattr, frame: Frame) -> None:  # noqa: N802 - named by the engine
        self.write("getattr(")
        self.visit(node.node, frame)
        self.write(f", {node.attr!r})")

    def visit_Call(self, node: Call, frame: Frame, forward_caller: bool = False) -> None:  # noqa: N802
        """A plain call: nothing that a template calls asks for the engine's context."""
        self.visit(node.node, frame)
        self.write("(*()")  # the engine writes each argument with a comma before it
        self.signature(node, frame, {"caller": "caller"} if forward_caller else None)
        self.write(")")


class _Environment(Environment):
    code_generator_class = _Writer
    escape_text = staticmethod(escape_text)


@cache
def _environment() -> Environment:
    environment = _Environment(
        loader=FileSystemLoader(Path(__file__).parent / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        cache_size=-1,
    )
    environment.globals.clear()  # no template asks for the engine's own, and each page would gather them
    for name, change in _FILTERS:
        environment.filters[name] = change
    return environment


def json_block(data: object) -> Markup:
    """Return data as JSON that can stand inside a script element."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), default=_as_fields)
    return Markup(text.replace("&", "\\u0026").replace("<", "\\u003c").replace(">", "\\u003e"))


def _as_fields(value: object) -> object:
    if is_dataclass(value) and not isinstance(value, type):
        return {name: getattr(value, name) for name in _field_names(type(value))}
    if isinstance(value, Mapping):
        return dict(value)
    raise TypeError(f"{type(value).__name__} cannot stand in a page's data")


@cache
def _field_names(kind: type[Any]) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind))


def drawing(svg: str) -> Markup:
    """Return a finished drawing as it is; only drawings that the build made itself may come here."""
    return Markup(svg)


def code_text(text: str) -> Markup:
    """Return text for a <pre>, its line ends written so that they survive the squeezing of gaps."""
    return Markup(str(escape(text)).replace("\n", "&#10;").replace("\t", "&#9;"))


def symbol(text: str) -> Markup:
    """Return a symbol of a formula ("A_contact"), what follows the first low line set low."""
    name, _, low = text.partition("_")
    return Markup("{}<sub>{}</sub>").format(name, low) if low else escape(name)


def code_words(text: str) -> Markup:
    """Return a rule's text with what stands between backticks as code."""
    parts = text.split("`")
    return Markup("").join(
        Markup("<code>{}</code>").format(part) if number % 2 else escape(part)
        for number, part in enumerate(parts)
    )


def sentence(text: str) -> str:
    """Return the text with a capital first letter, for a line of its own."""
    return text[:1].upper() + text[1:]


def paragraphs(text: str) -> Markup:
    """Return plain text as paragraphs, one for each run of lines without an empty line."""
    parts = (" ".join(part.split()) for part in text.split("\n\n"))
    return Markup("").join(Markup("<p>{}</p>").format(part) for part in parts if part)


_FILTERS: tuple[tuple[str, Callable[..., object]], ...] = (
    ("json_block", json_block),
    ("code_text", code_text),
    ("code_words", code_words),
    ("drawing", drawing),
    ("paragraphs", paragraphs),
    ("sentence", sentence),
    ("symbol", symbol),
)
