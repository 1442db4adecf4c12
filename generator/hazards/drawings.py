"""The nine hazard pictograms: names, words for those who cannot see them, and the drawings."""

from functools import cache
from importlib.resources import files

from generator.problems import NewelError

_WORDS: dict[str, tuple[str, str]] = {
    "GHS01": ("Exploding bomb", "explosive"),
    "GHS02": ("Flame", "burns easily"),
    "GHS03": ("Flame over circle", "feeds a fire"),
    "GHS04": ("Gas cylinder", "gas under pressure"),
    "GHS05": ("Corrosion", "corrodes skin, eyes or metal"),
    "GHS06": ("Skull and crossbones", "poisons quickly, in small amounts"),
    "GHS07": ("Exclamation mark", "irritates or harms"),
    "GHS08": ("Health hazard", "may harm health for long"),
    "GHS09": ("Environment", "harms life in water"),
}


def pictogram_codes() -> tuple[str, ...]:
    """GHS01 to GHS09."""
    return tuple(_WORDS)


def pictogram_title(code: str) -> str:
    """The GHS name of the symbol ("Corrosion"); NewelError for a code that is none."""
    return _row(code)[0]


def pictogram_alt(code: str) -> str:
    """Words in place of the picture: name and what it warns of."""
    title, means = _row(code)
    return f"{code} {title}: {means}"


def _row(code: str) -> tuple[str, str]:
    if code not in _WORDS:
        raise NewelError(
            "pictogram-unknown",
            f"There is no pictogram {code}.",
            "The GHS has nine.",
            f"Use one of {', '.join(_WORDS)}.",
        )
    return _WORDS[code]


@cache
def pictogram_svg(code: str) -> str:
    """The drawing as SVG text, without an XML declaration; from the package ghs-hazard-pictogram (MIT).

    The file is found by its name: the package's own table gives ghs02.svg for GHS01.
    """
    _row(code)
    path = files("ghs_hazard_pictogram").joinpath("pictograms", f"{code.lower()}.svg")
    text = path.read_text(encoding="utf-8")
    return text[text.index("<svg") :].strip()
