"""The check digit of a CAS registry number."""

import re

_FORM = re.compile(r"(\d{2,7})-(\d{2})-(\d)\Z")


def cas_check_digit(body: str) -> int:
    """The check digit for the digits before it: each digit times its place from the right, summed, mod 10.

    Source: CAS, "Check digit verification of CAS registry numbers" (from memory); tried on published numbers.
    """
    digits = [int(sign) for sign in body if sign.isdigit()]
    return sum(place * digit for place, digit in enumerate(reversed(digits), start=1)) % 10


def cas_well_formed(cas: str) -> bool:
    """Whether it is written like a CAS number at all: 2 to 7 digits, 2 digits, 1 digit, with hyphens."""
    return _FORM.match(cas) is not None and cas.isascii()


def cas_digit_right(cas: str) -> bool:
    """Whether a CAS number is well formed and its check digit is right."""
    found = _FORM.match(cas)
    return found is not None and cas.isascii() and cas_check_digit(found[1] + found[2]) == int(found[3])
