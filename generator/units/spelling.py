"""One spelling for each of the many ways in which a quantity is typed."""

import re
import unicodedata
from functools import lru_cache

from generator.units.table import spellings

_NO_BREAK_GROUP = "(?<=\\d)[\u00a0\u2009\u202f](?=\\d{3}(?!\\d))"
_TEN_TO = "\\s?[\u00d7x]\\s?10([\u2070\u00b9\u00b2\u00b3\u2074-\u2079\u207b\u207a]+)"
_OTHER_SIGNS = str.maketrans(
    {
        "\u2212": "-",  # true minus
        "\u03bc": "u",  # Greek mu, to which NFKC turns the micro sign
        "\u03a9": "ohm",  # Greek omega, to which NFKC turns the ohm sign
        "\u00b7": " ",
        "\u22c5": " ",
        "\u2022": " ",
        "*": " ",
        "^": "",
        "\u2044": "/",
        "\u2215": "/",
    }
)


def normalise(text: str) -> str:
    """The text after NFKC with our ASCII names of signs: degC, um, ohm, +/-, dm2, single spaces."""
    text = re.sub(_NO_BREAK_GROUP, "", text)
    text = re.sub(
        _TEN_TO, lambda match: "e" + unicodedata.normalize("NFKC", match[1]).replace("\u2212", "-"), text
    )
    text = unicodedata.normalize("NFKC", text).translate(_OTHER_SIGNS)
    text = text.replace("\u00b1", " +/- ").replace("+-", " +/- ")
    text = re.sub("\u00b0 ?([CF])\\b", r"deg\1", text)
    text = re.sub(r"\s*/\s*", "/", text).replace("+/-", " +/- ")
    return " ".join(text.split())


@lru_cache(maxsize=4096)
def find_unit(text: str) -> str | None:
    """The symbol of our table for a unit as typed, or None. The bare letters C and F are not read."""
    text = normalise(text)
    known = spellings()
    if text in known:
        return known[text]
    tidy = _per(text)
    return known.get(tidy) or known.get(tidy.replace("( ", "(").replace(" )", ")"))


def _per(text: str) -> str:
    """`mL per L` and `A dm-2` with a slash."""
    text = re.sub(r" per ", "/", text)
    return re.sub(r" ([A-Za-z]+)-([123])$", lambda m: f"/{m[1]}{m[2] if m[2] != '1' else ''}", text)


def nearest_unit(text: str) -> str | None:
    """The unit that a mistyped one was most likely meant to be, as our symbol; None when nothing is near."""
    from difflib import get_close_matches

    text = normalise(text)
    if text in _MEANT:
        return _MEANT[text]
    known = spellings()
    lower = {spelling.lower(): symbol for spelling, symbol in known.items()}
    if text.lower() in lower:
        return lower[text.lower()]
    near = get_close_matches(text, tuple(known), n=1, cutoff=0.7)
    return known[near[0]] if near else None


_MEANT = {
    "mim": "min",
    "nin": "min",
    "C": "degC",
    "c": "degC",
    "deg": "degC",
    "degrees": "degC",
    "F": "degF",
    "f": "degF",
    "R": "ohm",
    "mR": "mohm",
    "u": "um",
    "lt": "L",
    "ltr": "L",
    "gm": "g",
    "gms": "g",
    "Kg": "kg",
    "sqdm": "dm2",
    "sqcm": "cm2",
    "square dm": "dm2",
    "ampere hours": "A h",
    "amp hours": "A h",
    "%w/v": "g/L",
    "% w/v": "g/L",
    "shore": "ShoreD",
    "Rockwell": "HRC",
}
