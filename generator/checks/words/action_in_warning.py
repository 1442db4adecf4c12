"""A command hides where only reasons and dangers stand."""

from collections.abc import Iterator
from functools import lru_cache

from generator.checks.evidence.english import VERBS, commanded, sentences, without_condition
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.study.sentences import REASON, Said

DOC = RuleDoc(
    id="action-in-warning",
    level=Level.WARNING,
    subject="words",
    what="A `why`, a `because` or another sentence that warns tells the reader to do something.",
    why=(
        "Warnings are read once and explained away; steps are ticked. An action that stands in a warning is "
        "missed."
    ),
    bad="""say: Lower the board in.
why: Acid splashes. Pull the sash down first.""",
    good="""- {id: sash, do: act, at: hood, say: Pull the sash down.}
- id: in
  say: Lower the board in.
  why: Acid splashes.""",
    needs=("english",),
    source="DOE-STD-1029-92, chapter 4 (no user action inside a precaution), from a list derived from it",
)
_DUTIES = (
    "you must ",
    "you should ",
    "you have to ",
    "you need to ",
    "please ",
    "remember to ",
    "make sure to ",
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """Reasons and warnings of the lab."""
    for said in study.said_in_lab:
        yield from _judge(said)


def find(study: Study) -> Iterator[Problem]:
    """Reasons and warnings of the procedure."""
    for said in study.said:
        yield from _judge(said)


def _judge(said: Said) -> Iterator[Problem]:
    if said.kind != REASON:
        return
    hidden = _hidden(said.text)
    if hidden:
        start = said.text.find(hidden)
        yield said.found(
            DOC,
            f'`{said.field}` tells the reader to do something: "{hidden}"',
            f"make it a step (`say: {hidden}.`) before this one, and keep the reason here",
            start,
            len(hidden),
        )


@lru_cache(maxsize=4096)
def _hidden(text: str) -> str:
    """The first sentence of a text that is a command, or an empty text."""
    return next((sentence for sentence in sentences(text) if _is_command(sentence)), "")


def _is_command(sentence: str) -> bool:
    plain = without_condition(sentence)
    low = plain.lower()
    duty = next((low[len(words) :] for words in _DUTIES if low.startswith(words)), "")
    # A duty needs no object after its verb; a word that may be a noun ("Rinse water ...") does.
    return (duty.split(" ")[0] if duty else "") in VERBS or bool(commanded(plain))


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
