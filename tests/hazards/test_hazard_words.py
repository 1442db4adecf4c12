"""Hazard words that ship."""

import pytest

from generator.hazards import Evidence, hazard_word, hazard_word_ids, is_statement


# Numbers and names read in a public index of ISO 7010.
@pytest.mark.parametrize(
    ("word", "symbol"),
    [
        ("hot-surface", "W017"),
        ("crushing", "W019"),
        ("sharp", "W022"),
        ("electricity", "W012"),
        ("glare", "W027"),
        ("noise", "W038"),
    ],
)
def test_signs(word: str, symbol: str) -> None:
    found = hazard_word(word)
    assert found is not None
    assert (found.symbol, found.evidence) == (symbol, Evidence.SECONDARY)


@pytest.mark.parametrize("word", ["dust", "heats-itself"])
def test_without_a_sign_of_its_own_the_general_one_stands_in(word: str) -> None:
    found = hazard_word(word)
    assert found is not None
    assert (found.symbol, found.evidence) == ("W001", Evidence.PRACTICE)


def test_words_are_no_statements() -> None:
    assert not [word for word in hazard_word_ids() if is_statement(word)]
    assert hazard_word("H314") is None
