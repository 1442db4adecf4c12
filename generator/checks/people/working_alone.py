"""Nobody is there to help."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.hazards import needs_sign_off
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="working-alone",
    level=Level.ERROR,
    subject="people",
    what="The lab says `working_alone: never`, and the procedure names nobody `also_present`. Where it "
    "says `low-hazard only`, this counts for procedures with H314, H330, H334 or H350.",
    why="Whoever has something in the eyes cannot find the eyewash alone.",
    bad="""title: Copper the holes of a two-sided board
who: operator
approver: instructor""",
    good="""title: Copper the holes of a two-sided board
who: operator
also_present: buddy
approver: instructor""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem for the procedure."""
    room, procedure = study.lab.lab, study.procedure
    grave = needs_sign_off(study.used_codes())
    forbidden = room.working_alone == "never" or (room.working_alone == "low-hazard only" and grave)
    if forbidden and procedure.also_present is None:
        other = next((str(id) for id in study.lab.roles if id != procedure.who), "ROLE")
        because = f", and {', '.join(grave)} is in use" if room.working_alone != "never" else ""
        yield DOC.found(
            procedure.spot("who"),
            f"working alone is allowed here: {room.working_alone}{because}; but the procedure names nobody "
            "who is also present",
            f"write under `who` a line `also_present: {other}`, or another role",
        )


RULE = Rule(DOC, in_procedure=find)
