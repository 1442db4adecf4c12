"""Links are relative, the same on a server and in a folder, and lead somewhere or stop the build."""

import pytest

from generator.outputs.address_links import AddressBook, Links
from generator.problems import NewelError

BOOK = AddressBook(
    {"": frozenset({"emergencies"}), "procedures/x": frozenset({"coat"}), "places": frozenset()},
    frozenset({"cards/x/coat.pdf"}),
)


@pytest.mark.parametrize(
    ("here", "target", "anchor", "link"),
    [
        ("", "procedures/x", "", "procedures/x/index.html"),
        ("procedures/x", "", "emergencies", "../../index.html#emergencies"),
        ("procedures/x", "places", "", "../../places/index.html"),
        ("procedures/x", "procedures/x", "coat", "#coat"),
        ("places", "places", "", "index.html"),
    ],
)
def test_a_link_is_relative(here: str, target: str, anchor: str, link: str) -> None:
    assert Links(BOOK, here).page(target, anchor) == link


def test_a_file_is_linked_from_where_the_page_is() -> None:
    assert Links(BOOK, "procedures/x").file("cards/x/coat.pdf") == "../../cards/x/coat.pdf"


@pytest.mark.parametrize(
    ("call", "what", "hint"),
    [
        (("procedures/y", ""), 'the page "procedures/y"', 'did you mean "procedures/x"?'),
        (("procedures/x", "coad"), 'anchor on procedures/x "coad"', 'did you mean "coat"?'),
        (("oven", ""), 'the page "oven"', "declare what it names, or take the link away"),
    ],
)
def test_an_unknown_target_stops_the_build(call: tuple[str, str], what: str, hint: str) -> None:
    with pytest.raises(NewelError) as caught:
        Links(BOOK, "places").page(*call)
    assert caught.value.id == "unknown-link"
    assert what in caught.value.what
    assert caught.value.hint == hint


def test_an_unknown_file_stops_the_build() -> None:
    with pytest.raises(NewelError, match=r"coad\.pdf"):
        Links(BOOK, "").file("cards/x/coad.pdf")
