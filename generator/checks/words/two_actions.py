"""One sentence changes two things at once."""

from collections.abc import Iterator

from generator.checks.evidence.changes import changes, worn_words
from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.study.sentences import Said

DOC = RuleDoc(
    id="two-actions",
    level=Level.WARNING,
    subject="words",
    what="One sentence changes two of these: the lid, the part, the current, what is worn, the tray.",
    why=(
        "Hands stop between two actions, and nobody knows which half was done. One action, one step, one "
        "tick."
    ),
    bad="say: Lid off. Lower the board in.",
    good="""- {id: open, do: open, at: soak, say: Lid off.}
- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    needs=("english",),
    source="DOE-STD-1029-92, chapter 4 (one action a step), from memory",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a step: its sentence, or else its card's sentence."""
    worn = worn_words(study)
    for found in study.steps():
        step = found.step
        for field, text in (("say", step.say), ("card", step.card)):
            things = tuple(changes(study, step, str(text), worn)) if text else ()
            if text is not None and len(things) > 1:
                yield _problem(Said(text, field, "command", step), things)
                break


def _problem(said: Said, things: tuple[str, ...]) -> Problem:
    shown = " and ".join((", ".join(things[:-1]), things[-1]))
    step = said.step
    assert isinstance(step, Step)
    return said.found(
        DOC,
        f"one sentence changes {len(things)} things: {shown}",
        f"write a step for each, in the order of the hands; `{step.id}` keeps what its verb `{step.do}` does",
        label="one action a step",
    )


RULE = Rule(DOC, in_procedure=find)
