"""Check codes: five letters from a content, the last of which tells a misread or swapped letter.

The alphabet has 32 letters, without 0, 1, I and O. The first four letters are 20 bits of the SHA-256 of the
content. The last is a weighted sum of them over the field of 32 elements (polynomial x^5 + x^2 + 1): the
weights of all five places differ and none is zero, so that every single wrong letter and every swap of two
unlike letters gives a code that `is_code` refuses.
"""

import hashlib
import json
from collections.abc import Iterable

ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
_POLYNOMIAL = 0b100101
_WEIGHTS = (2, 4, 8, 16)


def check_code(content: Iterable[tuple[object, str]]) -> str:
    """The code of pairs of a name and a text, whatever their order."""
    rows = sorted(json.dumps(pair, ensure_ascii=True) for pair in content)
    number = int.from_bytes(hashlib.sha256("\n".join(rows).encode()).digest()[:3], "big") >> 4
    values = [(number >> shift) & 31 for shift in (15, 10, 5, 0)]
    return "".join(ALPHABET[value] for value in (*values, _last(values)))


def is_code(text: str) -> bool:
    """Whether a text, in capitals or not, can be a code at all."""
    values = [ALPHABET.find(letter) for letter in text.strip().upper().replace("-", "").replace(" ", "")]
    return len(values) == 5 and min(values) >= 0 and _last(values[:4]) == values[4]


def _last(values: list[int]) -> int:
    total = 0
    for value, weight in zip(values, _WEIGHTS, strict=True):
        total ^= _times(value, weight)
    return total


def _times(one: int, other: int) -> int:
    """Product in the field of 32 elements."""
    product = 0
    while other:
        if other & 1:
            product ^= one
        one <<= 1
        if one & 32:
            one ^= _POLYNOMIAL
        other >>= 1
    return product
