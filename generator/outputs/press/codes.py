"""The QR code of an address, drawn as strokes."""

from functools import lru_cache
from typing import Any

import zxingcpp

from generator.outputs.press.drawing import Code

# Dark modules in a row are a stroke, light ones a step without ink; a run that is longer becomes two of them.
_LONGEST = 12
_STROKES = tuple(
    pair
    for n in range(_LONGEST, 0, -1)
    for pair in ((b"\0" * n, b"h%d" % n), (b"\xff" * n, b"m%d 0" % n))
)


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
    path = b"\n".join(pixels[start : start + side] for start in range(0, len(pixels), side))
    for run, stroke in _STROKES:
        path = path.replace(run, stroke)
    # The next row begins where this one did, a module lower.
    rows = path.replace(b"\n", b"m-%d 1" % side).decode()
    return side + 2 * quiet, f"M{quiet} {quiet}{rows}"
