"""Templates: everything escaped, nothing undefined, data blocks that cannot end their script."""

import json
import random
import re
from dataclasses import dataclass
from pathlib import Path

import pytest
from jinja2 import UndefinedError
from markupsafe import Markup

from generator.outputs import templating
from generator.outputs.address_links import AddressBook, Links
from generator.outputs.templating import code_text, json_block, paragraphs, render, sentence, symbol
from generator.views.index import IndexView

LINKS = Links(AddressBook({"": frozenset()}), "")
EVIL = "</script><img src=x onerror=alert(1)>"


@dataclass(frozen=True)
class Thing:
    """A view for a data block."""

    name: str
    parts: tuple[float, ...]


def test_an_authors_text_is_escaped() -> None:
    html = render("index/lead.j2", LINKS, view=IndexView("x", "X", EVIL, ()))
    assert "<img" not in html
    assert "&lt;img src=x" in html


def test_what_is_not_given_is_an_error() -> None:
    with pytest.raises(UndefinedError):
        render("index/lead.j2", LINKS)


def test_a_data_block_cannot_end_its_script_and_reads_back() -> None:
    block = json_block(Thing(EVIL, (0.1, 2.0)))
    assert "<" not in block
    assert json.loads(str(block)) == {"name": EVIL, "parts": [0.1, 2.0]}


def test_only_data_may_stand_in_a_data_block() -> None:
    with pytest.raises(TypeError, match="object cannot stand"):
        json_block(object())


def test_code_keeps_its_lines_and_spaces_through_the_squeezing() -> None:
    assert code_text("a:\n\t  - <b>") == Markup("a:&#10;&#9;  - &lt;b&gt;")


def test_small_filters() -> None:
    assert sentence("splash in an eye") == "Splash in an eye"
    assert sentence("") == ""
    assert symbol("A_contact") == Markup("A<sub>contact</sub>")
    assert symbol("<j>") == Markup("&lt;j&gt;")
    assert paragraphs("one\nline\n\ntwo <2>") == Markup("<p>one line</p><p>two &lt;2&gt;</p>")


def test_no_template_turns_escaping_off() -> None:
    folder = Path(templating.__file__).parent / "templates"
    unsafe = re.compile(r"\|\s*safe|autoescape|Markup")
    found = [path.name for path in folder.rglob("*.j2") if unsafe.search(path.read_text("utf-8"))]
    assert found == []


def test_only_drawings_of_the_build_pass_unescaped() -> None:
    folder = Path(templating.__file__).parent / "templates"
    uses = {
        use
        for path in folder.rglob("*.j2")
        for use in re.findall(r"\{\{\s*([\w.]+)\s*\|\s*drawing\s*\}\}", path.read_text("utf-8"))
    }
    assert uses == {"view.strip", "view.mathml", "turned.mathml", "chart"}


def test_lines_come_out_squeezed_as_the_plain_pattern_would() -> None:
    dice = random.Random(20261125)
    for _ in range(20_000):
        html = "".join(dice.choices(" \t\n\r\xa0\x0b\u2028ab<", k=dice.randint(0, 14)))
        assert templating._squeezed(html) == re.sub(r"\s*\n\s*", "\n", html).strip()
