"""The place may become hotter than the rack stands."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_quantity, show_window

DOC = RuleDoc(
    id="rack-too-hot",
    level=Level.ERROR,
    subject="part",
    what="The part goes into a place that may become hotter than its rack `stands`.",
    why="The rack softens, drops the part, and gives off fumes.",
    bad="""racks: {white-rack: {title: White plastic rack,
   stands: up to 60 degC}}   # and an oven at 70 to 80 degC""",
    good="""racks: {white-rack: {title: White plastic rack, stands: up to 95 degC}}""",
    needs=(
        "part",
        "racks",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every put-in: the hottest that the place may be against what the rack stands."""
    for moment, id, place in at_places(study, "put-in"):
        name = moment.before.text("rack")
        rack = study.lab.racks.get(name)  # type: ignore[call-overload]
        if rack is None or rack.stands is None or rack.stands.high is None or place.temperature is None:
            continue
        hottest = place.temperature.high
        if hottest is not None and hottest.si > rack.stands.high.si:
            yield found_at(
                DOC,
                moment,
                f"{called(study, id)} may reach {show_quantity(hottest)}, and the "
                f"{called(study, name)} stands "
                f"{show_window(rack.stands)} only",
                "mount the part on another rack, or without one, before this step",
                moment.before.cause("rack"),
            )


RULE = Rule(DOC, in_procedure=find)
