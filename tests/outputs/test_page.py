"""Pages: joined as HTML, with every anchor known, and nothing in them that an engine takes for its own."""

import pytest

from generator.outputs.page import Page, Section, find_unfit, join_sections, page_anchors
from tests.site.sample_site import sample_site

PAGE = Page(
    "procedures/x",
    "R & D <1>",
    (
        Section(1, "page_top", "R & D <1>", "<section><p>lead</p></section>"),
        Section(2, "coat", "Coat", '<section><ol><li id="black-in">in</li></ol></section>'),
        Section(2, "", "", "<div>without a heading</div>"),
    ),
)


def test_sections_are_joined_with_escaped_headings() -> None:
    assert join_sections(PAGE) == (
        '<h1 id="page_top">R &amp; D &lt;1&gt;</h1>\n<section><p>lead</p></section>\n'
        '<h2 id="coat">Coat</h2>\n<section><ol><li id="black-in">in</li></ol></section>\n'
        "<div>without a heading</div>"
    )


def test_anchors_are_those_of_sections_and_of_ids_inside() -> None:
    assert page_anchors(PAGE) == {"page_top", "coat", "black-in"}


@pytest.mark.parametrize(
    ("html", "said"),
    [
        ("<p>loose</p>", "one closed"),
        ("<section>\t</section>", "\\t"),
        ('<section><p markdown="1">x</p></section>', "markdown="),
        ("<section>\n    <p>x</p></section>", "    "),
        ("<section>\x0c</section>", "x0c"),
    ],
)
def test_what_an_engine_would_read_is_found(html: str, said: str) -> None:
    assert said in find_unfit(Section(2, "a", "A", html))


def test_every_section_of_every_kind_of_page_is_fit() -> None:
    pages = sample_site().pages
    assert [(p.address, s.anchor, u) for p in pages for s in p.sections if (u := find_unfit(s))] == []


def test_no_id_stands_twice_on_a_page() -> None:
    for page in sample_site().pages:
        body = join_sections(page)
        assert [a for a in page_anchors(page) if body.count(f' id="{a}"') != 1] == [], page.address


def test_no_page_of_ours_has_a_style_or_an_inline_script() -> None:
    for page in sample_site().pages:
        body = join_sections(page)
        assert " style=" not in body
        assert "<script>" not in body
        assert " on" not in body or not any(f" on{event}=" in body for event in ("click", "load", "error"))
