"""A step's sentence describes instead of telling what to do."""

import re
from collections.abc import Iterator
from functools import lru_cache

from generator.checks.evidence.english import VERBS, sentences, without_condition
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.study.sentences import Said

DOC = RuleDoc(
    id="not-imperative",
    level=Level.NOTE,
    subject="words",
    what=(
        'The sentence of a step describes ("the board is lowered") where it should command ("lower the '
        'board").'
    ),
    why="A command has one reader, who knows that it is their turn.",
    bad="say: The board should be lowered into the bath.",
    good="say: Lower the board in.",
    needs=("english",),
    source="DOE-STD-1029-92, chapter 4 (imperative verb first), from memory",
)
_SUBJECT = re.compile(
    r"(?:the|a|an|you|your|we|it|this|these|those|that|they|there|he|she|students?|operators?|one|each)\b",
    re.IGNORECASE,
)
_FINITE = re.compile(
    r"\b(?:is|are|was|were|has|have|had|should|shall|must|will|would|can|may|needs?|be|gets?)\b",
    re.IGNORECASE,
)


def find(study: Study) -> Iterator[Problem]:
    """Steps and mends; only the first sentence is judged, for the next may say what it is for."""
    for found in study.steps():
        sign = _described(found.step.say)
        if sign:
            yield Said(found.step.say, "say", "command", found.step).found(
                DOC,
                f'the sentence describes ("{sign}") and does not tell what to do',
                'begin with the verb, as in "Lower the board in."',
            )


@lru_cache(maxsize=4096)
def _described(text: str) -> str:
    """The start of a text's first sentence by which it describes, or an empty text."""
    return _describes(without_condition(next(iter(sentences(text)), "")))


def _describes(sentence: str) -> str:
    """The words by which a sentence is seen to describe, or an empty text."""
    gerund = re.match(r"(\w+)ing\b", sentence)
    if gerund and _stem(gerund[1].lower()) in VERBS:
        return gerund.group()
    if not _SUBJECT.match(sentence):
        return ""
    finite = _FINITE.search(sentence) or _third_person(sentence)
    return sentence[: finite.end()] if finite else ""


def _stem(start: str) -> str:
    """`lower` of lowering, `place` of placing, `dip` of dipping."""
    forms = (start, f"{start}e", start[:-1] if start[-2:-1] == start[-1:] else start)
    return next((form for form in forms if form in VERBS), "")


def _third_person(sentence: str) -> re.Match[str] | None:
    words = re.finditer(r"\b([a-z]+?)(?:es|s)\b", sentence)
    return next(
        (word for word in words if word.start() and (word[1] in VERBS or f"{word[1]}e" in VERBS)), None
    )


RULE = Rule(DOC, in_procedure=find)
