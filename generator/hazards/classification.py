"""Hazard classes with category and statement, and the specific limits that go with them."""

import re
from dataclasses import dataclass

from generator.hazards.statements import statement
from generator.problems import NewelError

_CLASS = re.compile(
    r"(?P<short>[A-Z][A-Za-z. -]*?)\s*(?P<category>\d[A-D]?)?\s*(?P<star>\*{0,4})\s*"
    r"(?P<code>(?:EU)?H\d{3}[A-Za-z]{0,2})\s*\*{0,4}\Z"
)
_LIMIT = re.compile(
    r"(?:(?P<low>[\d.]+)\s*<=\s*)?C\s*(?:>=\s*(?P<least>[\d.]+)|<\s*(?P<high>[\d.]+))\s*\**\Z"
)


@dataclass(frozen=True, slots=True)
class HazardClass:
    """Short name in Annex VI ("Skin Corr."), category ("1A") and statement ("H314").

    `minimum`: at least so grave (one star in Annex VI); `unsure`: the statement leaves the category open.
    """

    short: str
    category: str
    code: str
    minimum: bool = False
    unsure: bool = False

    @property
    def name(self) -> str:
        """Class and category: "Skin Corr. 1A"."""
        return f"{self.short} {self.category}".strip()


@dataclass(frozen=True, slots=True)
class SpecificLimit:
    """From `low` (included) up to `high` (not included, None for no end), in % w/w, this class applies."""

    hazard_class: HazardClass
    low: float
    high: float | None = None


def read_class(text: str) -> HazardClass:
    """A class as Annex VI writes it: "Acute Tox. 4 * H302"; one star marks a minimum classification."""
    found = _CLASS.match(text.strip())
    if found is None:
        raise NewelError(
            "class-unreadable",
            f"This is no hazard class: {text!r}.",
            "A class is a short name, a category and an H statement.",
            "Write it like this: Skin Corr. 1A H314.",
        )
    return HazardClass(found["short"].strip(), found["category"] or "", found["code"], found["star"] == "*")


def read_limit(text: str) -> SpecificLimit:
    """A limit: "Skin Irrit. 2 H315: 5 <= C < 15", "Skin Corr. 1A H314: C >= 15" or "EUH031: C >= 5"."""
    head, _, tail = text.partition(":")
    found = _LIMIT.match(tail.strip())
    if found is None:
        raise NewelError(
            "limit-unreadable",
            f"This is no concentration limit: {text!r}.",
            "A limit is a class, a colon and a range of C.",
            "Write it like this: Skin Irrit. 2 H315: 5 <= C < 15.",
        )
    name = head.strip()
    of = HazardClass("", "", name) if name.startswith("EUH") else read_class(name)
    high = float(found["high"]) if found["high"] else None
    return SpecificLimit(of, float(found["least"] or found["low"] or 0), high)


# One statement for categories 1 and 2, whose converted points differ tenfold.
_TWO_CATEGORIES = ("H300", "H310", "H330")


def classes_of(codes: tuple[str, ...]) -> tuple[HazardClass, ...]:
    """Classes that statements alone stand for; of several categories the gravest is taken."""
    singles = dict.fromkeys(part for code in codes for part in code.split("+"))
    found = (statement(code) for code in singles)
    return tuple(
        HazardClass(
            held.uses[0].short,
            _category(held.uses[0].categories[0]),
            held.code,
            unsure=held.code in _TWO_CATEGORIES,
        )
        for held in found
        if held is not None and held.uses
    )


def _category(text: str) -> str:
    return "2" if text == "2A" else text if text[:1].isdigit() else ""
