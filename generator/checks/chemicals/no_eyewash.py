"""Something that harms eyes is in use, and no eyewash is named."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.hazards import needs_eyewash
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="no-eyewash",
    level=Level.ERROR,
    subject="chemicals",
    what="H314, H318 or H319 is in use, at a place or in a step, and `lab.help.eyewash` is missing.",
    why="With a splash in the eye the first seconds count, and the second person has to find it at once.",
    bad="""lab:
  help: {emergency: "Campus emergency line, extension 800"}""",
    good="""lab:
  help:
    emergency: Campus emergency line, extension 800
    eyewash: left of the door, six paces from the copper cell""",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem for the room."""
    room = study.lab.lab
    harmful = {id: codes for id in _used(study) if (codes := needs_eyewash(study.statements_of(id)))}
    if room.help.eyewash is None and harmful:
        told = [f"{title_of(study.lab, id)} ({', '.join(codes)})" for id, codes in harmful.items()]
        more = f" and {len(told) - 3} more" if len(told) > 3 else ""
        yield DOC.found(
            room.spot("help"),
            f"no eyewash is named, but {', '.join(told[:3])}{more} can harm eyes",
            "write under `lab`, `help`: a line `eyewash: ...` with where it is; where the room has none, "
            "have one put up before anybody works",
            label="help stands here",
        )


def _used(study: LabStudy) -> tuple[str, ...]:
    held = [str(place.holds) for place in study.lab.places.values() if place.holds]
    return tuple(dict.fromkeys((*held, *(id for uses in study.uses.values() for id in uses.in_use))))


RULE = Rule(DOC, in_lab=find)
