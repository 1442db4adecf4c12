"""What hangs on a step alone is worked out once for that very step."""

from generator.model import Step
from generator.study.once import once_a_step


def step(say: str) -> Step:
    return Step.model_validate({"id": "rinse", "say": say, "do": "rinse"})


def test_the_same_step_is_looked_at_once() -> None:
    asked: list[Step] = []

    def said(one: Step) -> str:
        asked.append(one)
        return str(one.say)

    once, first = once_a_step(said), step("Rinse both sides.")
    assert [once(first), once(first)] == ["Rinse both sides."] * 2
    assert asked == [first]


def test_a_step_that_says_the_same_is_another_step() -> None:
    which = once_a_step(id)
    one, other = step("Rinse."), step("Rinse.")
    assert one == other
    assert (which(one), which(other)) == (id(one), id(other))


def test_of_many_steps_the_last_are_remembered_and_none_is_taken_for_another() -> None:
    asked: list[str] = []

    def said(one: Step) -> str:
        asked.append(str(one.say))
        return asked[-1]

    once = once_a_step(said)
    words = [f"Rinse for the {number}th time." for number in range(3000)]
    assert [once(step(word)) for word in words] == words  # most of them lie where one before them lay
    assert asked == words
    kept = step("Rinse on.")
    for word in words:
        assert (once(kept), once(step(word))) == ("Rinse on.", word)
    assert asked.count("Rinse on.") == 1
