"""A sentence holds a number that a field holds."""

import re
from collections.abc import Iterator

from generator.checks.evidence.quantities import (
    Mention,
    fields_of,
    mentions,
    place_values,
    step_values,
    without,
)
from generator.checks.rule import Rule
from generator.model import Place, Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.study.sentences import COMMAND, SEEN, Said

DOC = RuleDoc(
    id="number-in-sentence",
    level=Level.WARNING,
    subject="words",
    what="A sentence holds a quantity, a station number or the name of a timer that a field holds.",
    why=(
        "The number is printed beside the sentence, from its field. Written twice, the two differ after "
        "the next "
        "edit, and the page's own numbers for another part do not reach the sentence."
    ),
    bad="""- id: soak-in
  say: Soak for 8 min at 45 °C in station 1.
  do: put-in
  at: soak""",
    good="""- id: soak-in
  say: Lower the board in.
  do: put-in
  at: soak
  for: 8 min""",
)
_STATION = re.compile(
    r"\bstation\s+(?:no\.?\s*|number\s+|#\s*)?(?:\d+|one|two|three|four|five|six|seven|eight|nine)\b",
    re.IGNORECASE,
)
_JUDGED = (COMMAND, SEEN)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """Sentences of places and timers."""
    for said in study.said_at_equipment:
        found = _found(said, study.place(said.place), "")
        if found:
            yield _problem(said, found)


def find(study: Study) -> Iterator[Problem]:
    """Sentences of steps."""
    for said in study.said_at_steps:
        if said.step and said.kind in _JUDGED:
            place = study.place(said.step.at)
            found = _found(said, place, _timer(study, said.step, place))
            if found:
                yield _problem(said, found)


def _timer(study: Study, step: Step, place: Place | None) -> str:
    id = step.alarm or (place.timer if place else None)
    timer = study.lab.timers.get(id) if id else None
    return str(timer.title) if timer else ""


def _found(said: Said, place: Place | None, timer: str) -> list[Mention]:
    """The quantities, stations and timers that a sentence holds, in its order."""
    if said.kind not in _JUDGED:
        return []
    found = [mention for mention in mentions(said.text) if _counts(said, place, mention)]
    if "tation" in said.text:
        found += [Mention(match.group(), match.start(), None) for match in _STATION.finditer(said.text)]
    found += _of_timer(said, timer)
    return sorted(found, key=lambda mention: mention.start)


def _problem(said: Said, found: list[Mention]) -> Problem:
    shown = ", ".join(f'"{mention.text}"' for mention in found)
    return said.found(
        DOC,
        f"the sentence holds {shown}, which a field holds or should hold",
        _fix(said, found),
        found[0].start,
        len(found[0].text),
    )


def _counts(said: Said, place: Place | None, mention: Mention) -> bool:
    """In a command every quantity counts; what must be seen may have a tolerance that no field holds."""
    if said.kind == COMMAND or mention.value is None:
        return said.kind == COMMAND
    value = mention.value
    held = (*(step_values(said.step) if said.step else ()), *place_values(place))
    return any(
        value.dimension == other.dimension and abs(value.si - other.si) <= 1e-9 * abs(other.si)
        for other in held
    )


def _of_timer(said: Said, timer: str) -> list[Mention]:
    named = timer and timer.lower() in said.text.lower()
    found = re.search(rf"\b{re.escape(timer)}\b", said.text, re.IGNORECASE) if named else None
    return [Mention(found.group(), found.start(), None, alarm=True)] if found else []


def _fix(said: Said, found: list[Mention]) -> str:
    where = fields_of(found, at_place=bool(said.place))
    short = without(said.text, found)
    return f"write `{short}`; {where}" if short else f"leave it out of the sentence; {where}"


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
