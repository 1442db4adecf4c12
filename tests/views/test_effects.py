"""What a wrong number does: told where it does anything that is shown."""

from generator.formulas import find_formula
from generator.views.filling.effects import effect_sentences

NB = "\N{NO-BREAK SPACE}"


def test_a_number_that_leaves_the_answer_as_it_is_shown_is_not_told() -> None:
    values = {"density": "1.9 A/dm2", "area": "2.57 dm2", "contact_area": "0.06 dm2"}
    told = list(effect_sentences(find_formula("plating_current"), values))
    assert [line.split(" 10")[0] for line in told] == ["Density", "Area"]
    # 1.9 A/dm2 on 0.9 x 2.57 dm2 + 0.06 dm2 is 4.51 A, on 1.1 x 2.57 dm2 + 0.06 dm2 5.49 A: by hand.
    assert told[1] == f"Area 10{NB}% low gives 4.5{NB}A instead of 5.0{NB}A, 10{NB}% high gives 5.5{NB}A."


def test_a_number_of_which_nearly_all_is_in_the_answer_is_told() -> None:
    values = {"density": "1.9 A/dm2", "area": "0.06 dm2", "contact_area": "2.57 dm2"}
    told = list(effect_sentences(find_formula("plating_current"), values))
    assert [line.split(" 10")[0] for line in told] == ["Density", "Contact area"]
