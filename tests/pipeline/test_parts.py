"""Links are looked up among all pages; what was found among the same ones is not looked up again."""

import pytest

from generator.pipeline.kept import NOTHING_KEPT
from generator.pipeline.memory import Memory
from generator.pipeline.parts import Leaves, see_links
from generator.pipeline.slips import Part, Slip
from generator.problems import NewelError


def slip(
    address: str, *anchors: str, links: tuple[tuple[str, str], ...] = (), files: tuple[str, ...] = ()
) -> Slip:
    heads: tuple[tuple[int, str, str], ...] = ()
    key = f"{address} {links} {files}"
    return Slip(address, address, "", "page", False, heads, anchors, key, links, files)


TO_B = slip("a", links=(("b", "step"),), files=("x.pdf",))
B = slip("b", "step", "other")
FILES = frozenset(("x.pdf",))


@pytest.fixture
def leaves() -> Leaves:
    return Leaves(NOTHING_KEPT, Memory())


@pytest.mark.parametrize(
    ("later", "files", "said"),
    [
        ((TO_B,), FILES, 'the page "b"'),
        ((TO_B, slip("b", "other")), FILES, 'anchor on b "step"'),
        ((TO_B, B), frozenset[str](), 'the file "x.pdf"'),
        ((slip("a", links=(("c", ""),)), B), FILES, 'the page "c"'),
    ],
)
def test_a_link_that_has_come_to_lead_nowhere_is_found(
    leaves: Leaves, later: tuple[Slip, ...], files: frozenset[str], said: str
) -> None:
    see_links(leaves, [Part((TO_B, B))], FILES)
    see_links(leaves, [Part((TO_B, B))], FILES)
    with pytest.raises(NewelError) as told:
        see_links(leaves, [Part(later)], files)
    assert said in told.value.what


def test_what_was_found_is_not_looked_up_again(leaves: Leaves, monkeypatch: pytest.MonkeyPatch) -> None:
    see_links(leaves, [Part((TO_B, B))], FILES)
    looked: list[str] = []
    monkeypatch.setattr(
        "generator.outputs.address_links.AddressBook.see_page",
        lambda _, here, *to: looked.append(f"{here} {to}"),
    )
    see_links(leaves, [Part((TO_B, slip("b", "step", "other", links=(("a", ""),))))], FILES)
    assert looked == ["b ('a', '')"]
