"""Text made safe for HTML: the same as the template engine's own way, in every place of a template."""

import random

import pytest
from jinja2 import UndefinedError
from markupsafe import Markup, escape

from generator.model import Text
from generator.outputs import templating
from generator.outputs.escaping import escape_text
from generator.problems import Location

SIGNS = "ab &<>\"'\u00a0\u2028\x00\u00e9{}%"


VALUES = ("", "plain", 3, 1.5, None, Markup("<b>bold</b>"), Text("<i>", Location("x")))


@pytest.mark.parametrize("value", VALUES)
def test_a_value_comes_out_as_the_engine_shows_it(value: object) -> None:
    assert escape_text(value) == str(escape(value))


def test_strange_text_comes_out_as_the_engine_shows_it() -> None:
    rng = random.Random(5)
    for _ in range(500):
        text = "".join(rng.choices(SIGNS, k=rng.randrange(12)))
        assert escape_text(text) == str(escape(text))


@pytest.mark.parametrize(
    "template",
    [
        "{{ text }}",
        "<p title='{{ text }}'>",
        "{% for one in [text] %}{{ one }}{% endfor %}",
        "{% macro show(it) %}{{ it }}{% endmacro %}{{ show(text) }}",
        "{% set it %}{{ text }}{% endset %}{{ it }}",
        "{{ text ~ '!' }}",
        "{% autoescape false %}{{ text }}{% endautoescape %}",
    ],
)
def test_no_template_shows_a_sign_of_html_that_an_author_wrote(template: str) -> None:
    html = templating._environment().from_string(template).render(text="<img onerror='x'>")
    assert "&lt;img onerror=&#39;x&#39;&gt;" in html
    assert "<img" not in html


def test_what_is_not_given_is_an_error() -> None:
    with pytest.raises(UndefinedError):
        templating._environment().from_string("{{ text }}").render()
