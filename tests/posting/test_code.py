"""Check codes: one wrong letter or two swapped ones are told."""

import itertools
import random

from generator.posting.code import ALPHABET, check_code, is_code

CODES = [check_code([("etch-in", str(number))]) for number in range(300)]


def test_a_code_is_one() -> None:
    assert all(is_code(code) and len(code) == 5 for code in CODES)
    assert is_code(f" {CODES[0].lower()} ")
    assert not is_code("")
    assert not is_code("K7QM0")


def test_no_letters_look_alike() -> None:
    assert len(set(ALPHABET)) == 32
    assert not set("01IO") & set(ALPHABET)


def test_every_single_wrong_letter_is_told() -> None:
    for code in CODES[:60]:
        for place, letter in itertools.product(range(5), ALPHABET):
            if letter != code[place]:
                assert not is_code(code[:place] + letter + code[place + 1 :])


def test_every_swap_of_two_letters_is_told() -> None:
    for code in CODES:
        for one, other in itertools.combinations(range(5), 2):
            letters = list(code)
            letters[one], letters[other] = letters[other], letters[one]
            assert not is_code("".join(letters)) or code[one] == code[other]


def test_a_code_comes_from_the_content_and_not_from_its_order() -> None:
    rows = [((name, "x"), str(number)) for number, name in enumerate("abcdefgh")]
    mixed = random.Random(4).sample(rows, len(rows))
    assert check_code(rows) == check_code(mixed)
    assert check_code(rows) != check_code(rows[1:])
    assert len(set(CODES)) > 295
