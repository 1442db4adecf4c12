"""A limit that the tool named cannot show."""

import re
from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.model import Reading, Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import Quantity, UnitsError, read_quantity, show_quantity, show_window

DOC = RuleDoc(
    id="limit-not-measurable",
    level=Level.WARNING,
    subject="people",
    what="A limit is finer than the tool named can show. How fine it shows stands in the field `shows` "
    "of the place; where that is not there, in its title, its `look` or the step's sentence as "
    "`shows 0.1 g`, `reads to 0.1 g` or `graduated in 1 mm`.",
    why="Whoever cannot read the limit writes down what passes.",
    bad="""places:
  balance: {title: Balance, shows: 0.1 g}
steps:
  - {id: weigh, do: check, at: balance, record: {gain: up to 0.05 g}, fail: {call: keeper}, say: Weigh.}""",
    good="""places:
  balance: {title: Balance, shows: 0.001 g}
steps:
  - {id: weigh, do: check, at: balance, record: {gain: up to 0.05 g}, fail: {call: keeper}, say: Weigh.}""",
)

_SHOWS = re.compile(
    r"\b(?:shows|reads|graduated)(?: to| in)?(?: steps of)? (\d+(?:\.\d+)? ?[^\s,;.()]+)", re.IGNORECASE
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a reading."""
    for found in study.steps():
        step = found.step
        tools = tuple(_tools(study, step)) if step.record else ()
        for name, reading in step.record.items():
            for tool in tools:
                if _too_fine(reading, tool):
                    yield _fine(step, str(name), reading, tool)


def _tools(study: Study, step: Step) -> Iterator[Quantity]:
    place = study.place(step.at)
    if place and place.shows:
        yield place.shows
        return
    words = (step.say, *((place.title, place.look) if place else ()))
    for shown in (match[1] for sentence in words if sentence for match in _SHOWS.finditer(sentence)):
        try:
            tool = read_quantity(shown)
        except UnitsError:
            continue
        if tool.number > 0:
            yield tool


def _too_fine(reading: Reading, tool: Quantity) -> bool:
    limit = reading.limit
    if limit is None or limit.dimension != tool.dimension:
        return False
    edges = [edge.to(tool.unit).number / tool.number for edge in (limit.low, limit.high) if edge is not None]
    between = any(abs(edge - round(edge)) > 1e-6 for edge in edges)
    return between or (len(edges) == 2 and abs(edges[1] - edges[0]) < 1 - 1e-6)


def _fine(step: Step, name: str, reading: Reading, tool: Quantity) -> Problem:
    assert reading.limit is not None
    return DOC.found(
        step.spot("record"),
        f"{name} is to be {show_window(reading.limit)}, but the tool named shows steps of "
        f"{show_quantity(tool)}",
        "name a finer tool, or set a limit that it can show",
        step=str(step.id),
    )


RULE = Rule(DOC, in_procedure=find)
