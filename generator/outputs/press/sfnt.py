"""Reads from a TrueType file the four tables that tell how wide and how high its letters are.

Tables head, hhea, hmtx, OS/2 and cmap (format 4) as in ISO/IEC 14496-22; the bundled fonts need no more.
"""

import struct
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Measures:
    """Cap height and advance of each character, in parts of the em square."""

    cap: float
    advances: dict[str, float]


def measures(path: Path) -> Measures:
    """The measures of a font file; ValueError where it has no Unicode map of format 4."""
    data = path.read_bytes()
    tables = _tables(data)
    em = _u16(data, tables["head"] + 18)
    cap = _u16(data, tables["OS/2"] + 88) / em
    widths = _widths(data, tables["hmtx"], _u16(data, tables["hhea"] + 34))
    glyphs = _characters(data, tables["cmap"])
    return Measures(
        cap, {chr(code): widths[min(glyph, len(widths) - 1)] / em for code, glyph in glyphs.items()}
    )


def _u16(data: bytes, at: int) -> int:
    return int.from_bytes(data[at : at + 2], "big")


def _tables(data: bytes) -> dict[str, int]:
    entries = (struct.unpack_from(">4sLLL", data, 12 + 16 * n) for n in range(_u16(data, 4)))
    return {tag.decode("ascii"): offset for tag, _, offset, _ in entries}


def _widths(data: bytes, at: int, count: int) -> list[int]:
    return [width for width, _ in struct.iter_unpack(">Hh", data[at : at + 4 * count])]


def _characters(data: bytes, cmap: int) -> dict[int, int]:
    entries = (struct.unpack_from(">HHL", data, cmap + 4 + 8 * n) for n in range(_u16(data, cmap + 2)))
    tables = [cmap + offset for platform, _, offset in entries if platform in (0, 3)]
    at = next((table for table in tables if _u16(data, table) == 4), None)
    if at is None:
        raise ValueError("the font has no Unicode map of format 4")
    return _format_4(data, at)


def _format_4(data: bytes, at: int) -> dict[int, int]:
    count = _u16(data, at + 6) // 2
    ends, starts, deltas, offsets = (at + 14, at + 16 + 2 * count, at + 16 + 4 * count, at + 16 + 6 * count)
    found: dict[int, int] = {}
    for n in range(0, 2 * count, 2):
        offset, delta = _u16(data, offsets + n), _u16(data, deltas + n)
        start = _u16(data, starts + n)
        for code in range(start, min(_u16(data, ends + n), 0xFFFE) + 1):
            glyph = code
            if offset:
                glyph = _u16(data, offsets + n + offset + 2 * (code - start))
                if not glyph:
                    continue
            found[code] = (glyph + delta) % 0x10000
    return {code: glyph for code, glyph in found.items() if glyph}
