"""Where the drawings of signs and pictograms stand in a site."""

from collections.abc import Iterator

from generator.hazards.drawings import pictogram_codes, pictogram_svg
from generator.outputs.signs import sign_name, sign_names, sign_svg


def sign_path(symbol: str) -> str:
    """Return the path of a sign by its ISO 7010 number, or of its family's general sign."""
    return f"assets/signs/{sign_name(symbol)}.svg"


def pictogram_path(code: str) -> str:
    """Return the path of a GHS pictogram by its code ("GHS05")."""
    return f"assets/signs/{code}.svg"


def drawings() -> Iterator[tuple[str, str]]:
    """Path and SVG text of every drawing."""
    for name in sign_names():
        yield f"assets/signs/{name}.svg", sign_svg(name)
    for code in pictogram_codes():
        yield pictogram_path(code), pictogram_svg(code)
