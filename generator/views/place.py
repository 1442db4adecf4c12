"""A place of the lab as its own page shows it."""

from dataclasses import dataclass

from generator.views.shown import BannerView, FactView, LinkView, SignView


@dataclass(frozen=True, slots=True)
class PlaceView:
    """What a place demands and allows; `steps` lead to every step that works there."""

    id: str
    number: str
    title: str
    facts: tuple[FactView, ...]
    wear: tuple[SignView, ...] = ()
    hazards: tuple[SignView, ...] = ()
    look: str = ""
    not_right: str = ""
    timer: str = ""
    first: str = ""
    contents: LinkView | None = None
    steps: tuple[LinkView, ...] = ()
    banners: tuple[BannerView, ...] = ()
    search_text: str = ""
