"""The QR code of an address, drawn as strokes."""

from functools import cache, lru_cache
from re import findall
from typing import Any

import zxingcpp

from generator.outputs.press.drawing import Code


@lru_cache(maxsize=2_000)
def code_of(address: str, size: float, alt: str) -> Code:
    """The QR code of an address, error correction Q (25 %), with the quiet zone of ISO/IEC 18004."""
    modules, path = _modules(address)
    return Code(0.0, 0.0, size, modules, path, alt)


@lru_cache(maxsize=2_000)
def _modules(address: str) -> tuple[int, str]:
    """Modules along a side and the dark ones as a path; a card asks for its code in many sizes."""
    made = zxingcpp.create_barcode(address, zxingcpp.BarcodeFormat.QRCode, ec_level="Q")
    # A byte a module, 0 is dark; that an image is a buffer stands in no type of theirs.
    image: Any = made.to_image(scale=1, add_quiet_zones=False)
    side, pixels, quiet = int(image.shape[0]), bytes(image), 4
    rows = b"\n".join(pixels[start : start + side] for start in range(0, len(pixels), side))
    strokes = map(_strokes(side).__getitem__, findall(rb"\0+|\xff+|\n", rows))
    return side + 2 * quiet, f"M{quiet} {quiet}.5{''.join(strokes)}"


@cache
def _strokes(side: int) -> dict[bytes, str]:
    """A run of dark modules as a stroke, one of light ones as a step without ink; then back to a new row."""
    lengths = range(1, side + 1)
    runs = {b"\0" * n: f"h{n}" for n in lengths} | {b"\xff" * n: f"m{n} 0" for n in lengths}
    return {**runs, b"\n": f"m-{side} 1"}
