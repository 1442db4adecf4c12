"""Small pieces that many views show: links, labelled facts, states, signs, people to call."""

from dataclasses import dataclass
from typing import Literal

# A longer text of a fact takes the room of two.
_LONG = 36

BannerKind = Literal["draft", "out-of-use", "overdue", "withdrawn", "note"]


@dataclass(frozen=True, slots=True)
class LinkView:
    """A text that leads to an address of this build, and to an anchor there."""

    text: str
    address: str
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class SourceView:
    """Where something stands in the author's files: file and line, and the address to edit it or ""."""

    text: str
    url: str = ""


@dataclass(frozen=True, slots=True)
class FactView:
    """A label and a finished text; `link` makes the text lead somewhere.

    `sum` names the value that the text shows, so that the page can follow a student's own part.
    """

    label: str
    text: str
    link: LinkView | None = None
    sum: str = ""

    @property
    def is_long(self) -> bool:
        """Whether the text wants the room of two."""
        return len(self.text) > _LONG


@dataclass(frozen=True, slots=True)
class BannerView:
    """A strip over the page: what state it is in, in words, with the reason."""

    kind: BannerKind
    title: str
    text: str = ""


@dataclass(frozen=True, slots=True)
class BadgeView:
    """A state worked out by the walk: `kind` is part, worn, open, live or limit; the text says all of it."""

    kind: str
    text: str


@dataclass(frozen=True, slots=True)
class StationView:
    """A place as it is named beside a step; `number` is "" for one without."""

    number: str
    title: str
    address: str


@dataclass(frozen=True, slots=True)
class SignView:
    """A sign by its number in ISO 7010 ("M009", "W017", or "" for none) and its words."""

    symbol: str
    title: str
    detail: str = ""


@dataclass(frozen=True, slots=True)
class CallView:
    """A role and how it is reached; never a name."""

    title: str
    reach: str
    then: str = ""


@dataclass(frozen=True, slots=True)
class PictureView:
    """A picture of the build (`path` from the root of the site) and the words for who does not see it.

    Without a path the words stand alone.
    """

    path: str
    alt: str


@dataclass(frozen=True, slots=True)
class EmergencyView:
    """When, what first, what then."""

    when: str
    first: str
    then: str = ""
