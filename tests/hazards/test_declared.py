"""What a lab declares, completed from the substances that ship."""

from generator.hazards import Evidence, declared_ingredient
from generator.units import read_quantity


def test_the_lab_list_decides_and_the_entry_adds_limits() -> None:
    one = declared_ingredient("salt", read_quantity("72 g/L"), ("H302", "H318", "H410"), cas="7758-99-8")
    assert {c.code for c in one.classes or ()} == {"H302", "H318", "H400", "H410"}
    assert (one.m_acute, one.evidence) == (10, Evidence.OFFICIAL)
    assert one.notes == ()


def test_what_the_lab_leaves_out_is_set_aside_and_said() -> None:
    one = declared_ingredient("persulfate", read_quantity("90 g/L"), ("H272", "H302"), cas="7775-27-1")
    assert {c.code for c in one.classes or ()} == {"H272", "H302"}
    assert "H334" in one.notes[0]
    assert "memory" in one.notes[0]


def test_what_the_lab_adds_is_kept() -> None:
    one = declared_ingredient("salt", read_quantity("10 g/L"), ("H319", "H335"), cas="497-19-8")
    assert {c.code for c in one.classes or ()} == {"H319", "H335"}


def test_a_solution_of_stated_strength_uses_the_whole_entry() -> None:
    """A 10 % acid is labelled H315 H319; in the bath its pure share and the entry's limits decide."""
    strength = read_quantity("10 % w/w")
    one = declared_ingredient(
        "acid 10 %", read_quantity("100 g/L"), ("H315", "H319"), cas="7664-93-9", strength=strength
    )
    assert "H314" in {c.code for c in one.classes or ()}
    assert one.of_pure


def test_unknown_is_not_none() -> None:
    amount = read_quantity("10 g/L")
    assert declared_ingredient("mystery", amount, None).classes is None
    assert declared_ingredient("sugar", amount, ()).classes == ()
    known = declared_ingredient("acid", amount, None, cas="64-19-7")
    assert {c.code for c in known.classes or ()} == {"H226", "H314"}


def test_hazard_words_and_supplements() -> None:
    one = declared_ingredient("stuff", read_quantity("10 g/L"), ("H317", "heats-itself", "EUH031"))
    assert [c.code for c in one.classes or ()] == ["H317"]
    assert one.supplements == ("EUH031",)
