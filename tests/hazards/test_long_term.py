"""Sensitisers, CMR, organ damage, ozone; what is added for airways and aspiration."""

import pytest

from generator.hazards import Composition, Ingredient, read_class, read_limit
from generator.hazards.composition import LimitSet
from generator.hazards.long_term import screen_long_term
from generator.hazards.organ import screen_organ
from generator.hazards.steps import Part
from generator.units import Quantity


def stuff(percent: float, *classes: str, limits: tuple[str, ...] = (), gas: bool = False) -> Part:
    one = Ingredient(
        "stuff",
        Quantity(percent, "% w/w"),
        tuple(read_class(text) for text in classes),
        tuple(read_limit(text) for text in limits),
        gas=gas,
    )
    return Part(one, percent)


def codes(*parts: Part, chosen: LimitSet = "clp") -> list[str]:
    found = screen_long_term(parts, Composition("mixture", (), limit_set=chosen))
    return [one.code for one in found.classes]


# Muta., Carc., Repr.: tables 3.5.2, 3.6.2, 3.7.2 of CLP, read. STOT: TRGS 201, read on a secondary page.
# Sensitisers: table 3.4.5, from memory.
@pytest.mark.parametrize(
    ("text", "limit"),
    [
        ("Muta. 1B H340", 0.1),
        ("Muta. 2 H341", 1.0),
        ("Carc. 1A H350", 0.1),
        ("Carc. 1A H350i", 0.1),
        ("Carc. 2 H351", 1.0),
        ("Repr. 1B H360D", 0.3),
        ("Repr. 2 H361", 3.0),
        ("Lact. H362", 0.3),
        ("STOT SE 2 H371", 10.0),
        ("STOT RE 2 H373", 10.0),
        ("Resp. Sens. 1 H334", 1.0),
        ("Resp. Sens. 1A H334", 0.1),
        ("Skin Sens. 1 H317", 1.0),
        ("Skin Sens. 1B H317", 1.0),
        ("Skin Sens. 1A H317", 0.1),
        ("Ozone 1 H420", 0.1),
    ],
)
def test_generic_limits(text: str, limit: float) -> None:
    code = text.split()[-1]
    assert codes(stuff(limit, text)) == [code]
    assert codes(stuff(limit * 0.999, text)) == []


def test_they_are_not_added() -> None:
    assert codes(stuff(0.9, "Carc. 2 H351"), stuff(0.9, "Carc. 2 H351")) == []


def test_category_1_organ_damage_steps_down() -> None:
    """10 % and more: category 1; 1 to 10 %: category 2 (TRGS 201)."""
    assert codes(stuff(10, "STOT RE 1 H372")) == ["H372"]
    assert codes(stuff(9.9, "STOT RE 1 H372")) == ["H373"]
    assert codes(stuff(1, "STOT SE 1 H370")) == ["H371"]
    assert codes(stuff(0.99, "STOT SE 1 H370")) == []


def test_nickel_salts_have_their_own_limits() -> None:
    """Annex VI limits of nickel sulphate (memory): STOT RE 1 from 1 %, 2 from 0.1 %, Skin Sens. 0.01 %."""
    limits = ("STOT RE 1 H372: C >= 1", "STOT RE 2 H373: 0.1 <= C < 1", "Skin Sens. 1 H317: C >= 0.01")
    both = ("STOT RE 1 H372", "Skin Sens. 1 H317")
    assert codes(stuff(1, *both, limits=limits)) == ["H372", "H317"]
    assert codes(stuff(0.1, *both, limits=limits)) == ["H373", "H317"]
    assert codes(stuff(0.01, *both, limits=limits)) == ["H317"]


def test_limits_of_the_united_states() -> None:
    """29 CFR 1910.1200 App. A from memory: 0.1 % for Repr. 1 and 2 and Carc. 2."""
    assert codes(stuff(0.1, "Repr. 2 H361"), chosen="us") == ["H361"]
    assert codes(stuff(0.1, "Repr. 2 H361")) == []


def test_a_sensitising_gas() -> None:
    """0.2 % for a gas (table 3.4.5, from memory)."""
    assert codes(stuff(0.2, "Resp. Sens. 1 H334", gas=True)) == ["H334"]
    assert codes(stuff(0.19, "Resp. Sens. 1 H334", gas=True)) == []


# Table 3.4.6 (from memory): 0.1 %, 0.01 % for 1A, a tenth of a specific limit.
@pytest.mark.parametrize(
    ("part", "named"),
    [
        (stuff(0.1, "Skin Sens. 1 H317"), True),
        (stuff(0.09, "Skin Sens. 1 H317"), False),
        (stuff(0.01, "Skin Sens. 1A H317"), True),
        (stuff(0.02, "Skin Sens. 1 H317", limits=("Skin Sens. 1 H317: C >= 0.2",)), True),
        (stuff(1, "Skin Sens. 1 H317"), False),
    ],
)
def test_a_sensitiser_below_its_limit_is_named(part: Part, named: bool) -> None:
    found = screen_long_term((part,), Composition("mixture", ()))
    assert (found.supplements == ("EUH208",)) is named


def organ(*parts: Part, thin: bool | None = None) -> list[str]:
    found = screen_organ(parts, Composition("mixture", (), thin=thin))
    return [one.code for one in found.classes]


def test_airways_and_drowsiness_are_added_apart() -> None:
    """20 % each (TRGS 201)."""
    assert organ(stuff(10, "STOT SE 3 H335"), stuff(10, "STOT SE 3 H335")) == ["H335"]
    assert organ(stuff(10, "STOT SE 3 H335"), stuff(10, "STOT SE 3 H336")) == []
    assert organ(stuff(20, "STOT SE 3 H336")) == ["H336"]


def test_a_limit_alone_brings_the_class() -> None:
    """Formaldehyde: STOT SE 3 H335 from 5 % stands only among its limits (Annex VI, from memory)."""
    assert organ(stuff(5, "Skin Corr. 1B H314", limits=("STOT SE 3 H335: C >= 5",))) == ["H335"]


def test_aspiration_needs_a_thin_liquid() -> None:
    assert organ(stuff(10, "Asp. Tox. 1 H304"), thin=True) == ["H304"]
    assert organ(stuff(10, "Asp. Tox. 1 H304"), thin=False) == []
    assert organ(stuff(9.9, "Asp. Tox. 1 H304"), thin=True) == []
    unsure = screen_organ((stuff(10, "Asp. Tox. 1 H304"),), Composition("mixture", ()))
    assert [one.about for one in unsure.unknown] == ["aspiration"]
