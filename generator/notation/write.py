"""Plain data to YAML that our own reader takes back: block style, quotes only where they are needed."""

import re

_SAFE = re.compile(r"[A-Za-z0-9\u00c0-\u024f(][^\n\t#]*")


def as_yaml(data: object, indent: int = 0) -> str:
    """Dict, list and str as YAML text ending in a newline; every scalar reads back as the same text."""
    return "".join(f"{line}\n" for line in _lines(data, indent))


def _lines(data: object, indent: int) -> list[str]:
    pad = " " * indent
    if isinstance(data, dict | list | tuple) and not data:
        return [f"{pad}{_empty(data)}"]
    if isinstance(data, dict):
        return [
            line for key, value in data.items() for line in _entry(f"{pad}{_name(str(key))}:", value, indent)
        ]
    if isinstance(data, list | tuple):
        return [line for item in data for line in _item(item, indent)]
    return [pad + scalar(str(data))]


def _empty(data: object) -> str:
    return "{}" if isinstance(data, dict) else "[]"


def _entry(head: str, value: object, indent: int) -> list[str]:
    if isinstance(value, dict | list | tuple):
        if not value:
            return [f"{head} {_empty(value)}"]
        return [head, *_lines(value, indent + 2)]
    return [f"{head} {scalar(str(value))}"]


def _item(item: object, indent: int) -> list[str]:
    pad = " " * indent
    if isinstance(item, dict | list | tuple):
        if not item:
            return [f"{pad}- {_empty(item)}"]
        inner = _lines(item, indent + 2)
        return [f"{pad}- {inner[0].lstrip()}", *inner[1:]]
    return [f"{pad}- {scalar(str(item))}"]


def _name(text: str) -> str:
    """A field's name; one with a colon inside would look like a sentence that has one."""
    return _in_quotes(text) if ":" in text else scalar(text)


def scalar(text: str) -> str:
    """A plain scalar where that is safe, else in double quotes with escapes."""
    plain = _SAFE.fullmatch(text) and ": " not in text and not text.endswith((":", " "))
    if plain and not any(sign in text for sign in "{}[],\"'") and text.isprintable():
        return text
    return _in_quotes(text)


def _in_quotes(text: str) -> str:
    return '"' + "".join(_escape(char) for char in text) + '"'


def _escape(char: str) -> str:
    if char in '"\\':
        return "\\" + char
    if char == "\n":
        return "\\n"
    if char.isprintable():
        return char
    code = ord(char)
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"
