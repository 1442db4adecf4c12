"""A check rests on a colour alone."""

import re
from collections.abc import Iterator
from functools import lru_cache

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.study.sentences import SEEN, Said

DOC = RuleDoc(
    id="colour-only",
    level=Level.WARNING,
    subject="words",
    what="A check or a look rests on a colour alone, and no reading with a limit stands beside it.",
    why=(
        "About one man in twelve sees red and green differently, and nobody sees colour well under a yellow "
        "lamp."
    ),
    bad="check: the copper is pink",
    good="check: even matt pink, no grey smear, water film unbroken",
    needs=("english",),
    source="WCAG 2.2, success criterion 1.4.1 (use of colour); the share of readers is from memory",
)
_COLOUR = re.compile(
    r"\b(?:colou?rs?|colou?red|colou?rless|red(?:dish)?|green(?:ish)?|blue|bluish|yellow(?:ish)?|orange|pink(?:ish)?|purple|violet|"
    r"brown(?:ish)?|black|white|grey|gray|pale[r]?|dark(?:er)?|light(?:er)? than|amber|golden|straw|tan|"
    r"magenta|cyan)\b",
    re.IGNORECASE,
)
# Words for signs that are seen, felt or read whatever the colour.
_OTHER = re.compile(
    r"\b(?:smears?|patch(?:es)?|spots?|rings?|lines?|films?|edges?|drops?|crystals?|bubbles?|streaks?|crescents?|shape|"
    r"solid|cloudy|clear|lit|out|flash\w*|reads?|says?|shows?|number|mark|notch|meter|display|sound\w*|smell\w*|sticky|"
    r"steady|level|reading|film|broken|unbroken|scratch\w*|pits?|powder\w*|rough|smooth|matt|shiny|card|readable)\b",
    re.IGNORECASE,
)


# A lamp that is dark is out, whatever its colour when it is lit.
_OUT = re.compile(
    r"\b(?:lamp|light|led|display|screen|panel|indicator|window)s? (?:is |are |stays? |all )*dark\b|"
    r"\bdark (?:lamp|light|led|display|screen|panel|indicator)s?\b",
    re.IGNORECASE,
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """Looks at places."""
    for said in study.said_at_equipment:
        yield from _judge(said)


def find(study: Study) -> Iterator[Problem]:
    """Checks of steps; a limited reading in the same step is a sign of its own."""
    for said in study.said_at_steps:
        if said.step and not any(reading.limit for reading in said.step.record.values()):
            yield from _judge(said)


def _rests_on_colour(piece: str) -> bool:
    return bool(_COLOUR.search(_OUT.sub("", piece))) and not _OUT.search(piece) and not _OTHER.search(piece)


def _judge(said: Said) -> Iterator[Problem]:
    if said.kind != SEEN:
        return
    word = _colour_alone(said.text)
    if word is not None:
        yield said.found(
            DOC,
            f'`{said.field}` rests on a colour alone ("{word.group()}")',
            "add a sign that does not need colour: a film, an edge, a smear, a reading, a printed strip",
            word.start(),
            len(word.group()),
        )


@lru_cache(maxsize=4096)
def _colour_alone(text: str) -> re.Match[str] | None:
    """The first colour of a text that has a colour, and nothing but colours, in each of its pieces."""
    word = _COLOUR.search(text)
    pieces = [piece for piece in re.split(r"[,;.]|\band\b", text) if piece.strip()] if word else []
    alone = pieces and all(_rests_on_colour(piece) for piece in pieces)
    return word if alone else None


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
