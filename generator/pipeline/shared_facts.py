"""Facts that several procedures share: where what is posted says otherwise than the page of the noun."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from generator.model import Lab
from generator.posting.change import differences
from generator.posting.facts import noun_facts
from generator.posting.issue import Issue
from generator.posting.telling import tell_apart
from generator.posting.used import Named, stock_of
from generator.views.shown import BannerView

# The nouns that have a page.
_PAGES = ("places", "mixtures", "substances")
_MOST = 3

Banners = Mapping[Named, tuple[BannerView, ...]]


def shared_banners(live: Lab, shown: Lab, differing: Sequence[tuple[str, Issue]], draft: bool) -> Banners:
    """Banners for the pages of places, mixtures and substances.

    `differing` are issues that stand and from which the files differ, with the procedures' titles.
    """
    if not differing:
        return {}
    here, files = stock_of(shown).nouns, stock_of(live).nouns
    names = [name for name in here if name[0] in _PAGES]
    found = {name: tuple(_banners(name, here[name], files.get(name), differing, draft)) for name in names}
    return {name: banners for name, banners in found.items() if banners}


def _banners(
    name: Named, here: Mapping[str, Any], in_files: Mapping[str, Any] | None,
    differing: Iterable[tuple[str, Issue]], draft: bool,
) -> Iterator[BannerView]:  # fmt: skip
    if in_files != here:
        yield BannerView("note", "A change is being prepared", "This page shows what is posted.")
    title = "Differs from what is posted" if draft else "Not the same everywhere yet"
    for text, whose in _otherwise(name, here, differing).items():
        more = f" and {len(whose) - _MOST} more" if len(whose) > _MOST else ""
        who = "; ".join(whose[:_MOST]) + more
        yield BannerView("draft" if draft else "note", title, f"Posted for {who}: {text}.")


def _otherwise(
    name: Named, here: Mapping[str, Any], differing: Iterable[tuple[str, Issue]]
) -> dict[str, list[str]]:
    """How the noun stands in issues that have it otherwise, in words, with the procedures of each."""
    found: dict[str, list[str]] = {}
    for title, issue in differing:
        there = issue.content["lab"].get(name[0], {}).get(name[1])
        if there is not None and there != here:
            changes = differences(noun_facts(*name, there), noun_facts(*name, here), {})
            text = "; ".join(map(tell_apart, changes))
            if text:
                found.setdefault(text, []).append(f"{title}, issue {issue.head.number}")
    return found
