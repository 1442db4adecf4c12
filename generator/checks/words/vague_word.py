"""A word that two people measure differently."""

import re
from collections.abc import Iterator
from functools import lru_cache

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.study.sentences import COMMAND, SEEN, Said

DOC = RuleDoc(
    id="vague-word",
    level=Level.WARNING,
    subject="words",
    what='A command or a check rests on a word such as "several", "a while" or "enough".',
    why="Two students do two different things, and both have followed the card.",
    bad="say: Rinse for a while with plenty of water.",
    good="""say: Rinse both faces.
for: 60 s""",
    needs=("english",),
    source=(
        'DOE-STD-1029-92, chapter 4 (numbers with units, no "approximately"), from memory; the list of '
        'words is ours'
    ),
)
_TIMES = (
    "a while", "some time", "a moment", "a few moments", "briefly", "shortly", "soon", "a few minutes",
    "a few seconds", "a couple of minutes", "long enough", "quickly enough",
)  # fmt: skip
_AMOUNTS = (
    "several", "enough", "a few", "a couple of", "a bit", "a little", "plenty", "plenty of", "sufficient",
    "sufficiently", "various", "excess", "generous", "generously", "some more", "approximately", "approx",
    "roughly", "more or less", "or so",
)  # fmt: skip
_MANNERS = (
    "as needed", "as required", "as necessary", "if necessary", "if needed", "if required", "appropriate",
    "appropriately", "adequate", "adequately", "suitable", "suitably", "properly", "correctly", "thoroughly",
    "regularly", "occasionally", "from time to time", "periodically", "normally", "usually", "reasonable",
    "reasonably", "fairly", "preferably", "and so on", "etc", "until done", "until ready",
)  # fmt: skip
_FIXES = (
    (_TIMES, "give the time in a field (`for`, `takes`), or say what must be seen"),
    (_AMOUNTS, "give the number in a field (`use`, `record`, `rock`), or say what must be seen"),
    (_MANNERS, "say what is done, or what must be seen when it is right"),
)
_ALL = sorted((word for words, _ in _FIXES for word in words), key=len, reverse=True)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """Looks, what is done when they are not right, and what is done when a timer sounds."""
    for said in study.said_at_equipment:
        yield from _judge(said)


def find(study: Study) -> Iterator[Problem]:
    """Commands and checks of steps."""
    for said in study.said_at_steps:
        yield from _judge(said)


def _judge(said: Said) -> Iterator[Problem]:
    if said.kind not in (COMMAND, SEEN):
        return
    for match in _vague(said.text):
        word = " ".join(match.group().lower().split())
        fix = next(fix for words, fix in _FIXES if word in words)
        yield said.found(
            DOC,
            f'"{match.group()}" in `{said.field}` means something else to everybody',
            fix,
            match.start(),
            len(match.group()),
        )


@lru_cache(maxsize=4096)
def _vague(text: str) -> tuple[re.Match[str], ...]:
    """Every vague word of a text; plain pieces are looked for first, since few sentences hold one."""
    low = " ".join(text.lower().split())
    there = [word for word in _ALL if word in low]
    pattern = "|".join(there).replace(" ", r"\s+")
    return tuple(re.finditer(rf"\b(?:{pattern})\b", text, re.IGNORECASE)) if there else ()


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
