"""A word that the lab's glossary has another word for."""

import re
from collections.abc import Iterable, Iterator

from generator.checks.rule import Rule
from generator.model import Lab
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.study.sentences import Said

DOC = RuleDoc(
    id="two-words-one-thing",
    level=Level.WARNING,
    subject="words",
    what="A sentence uses a word that the glossary lists under `not`.",
    why="A reader who meets two words looks for two things, most of all in a second language.",
    bad="""glossary:
  mains-water: {means: Water from the tap., not: [tap water]}
# and in a procedure
say: Rinse with tap water.""",
    good="""glossary:
  mains-water: {means: Water from the tap., not: [tap water]}
# and in a procedure
say: Rinse with mains water.""",
    needs=("glossary",),
    source="DOE-STD-1029-92, chapter 4 (words with one meaning each), from a list derived from it",
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """Sentences of the lab; the glossary's own explanations may name the other word."""
    words = _said(study.lab, study.said_in_lab)
    for said in study.said_in_lab:
        if said.field != "means":
            yield from _judge(said, words)


def find(study: Study) -> Iterator[Problem]:
    """Sentences of the procedure."""
    words = _said(study.lab, study.said)
    for said in study.said if words else ():
        yield from _judge(said, words)


def _said(lab: Lab, all_said: Iterable[Said]) -> list[tuple[str, str]]:
    """Pairs of a word that is not used, in small letters, and the term; those alone that stand somewhere."""
    low = "\n".join(said.text for said in all_said).lower()
    return [
        (word, str(entry.term or id.replace("-", " ")))
        for id, entry in lab.glossary.items()
        for other in entry.not_
        if (word := str(other).lower()) in low
    ]


def _judge(said: Said, words: list[tuple[str, str]]) -> Iterator[Problem]:
    low = said.text.lower()
    for word, term in [pair for pair in words if pair[0] in low]:
        pattern = rf"(?<![\w-]){re.escape(word)}(?![\w-])"
        found = re.search(pattern, said.text, re.IGNORECASE)
        if found:
            better = re.sub(pattern, term.replace("\\", r"\\"), said.text, flags=re.IGNORECASE)
            better = better[:1].upper() + better[1:] if said.text[:1].isupper() else better
            yield said.found(
                DOC,
                f'"{found.group()}" is called "{term}" in this lab\'s glossary',
                f"write `{said.field.split('.')[-1]}: {better}`",
                found.start(),
                len(found.group()),
            )


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
