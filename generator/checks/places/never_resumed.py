"""The part ends at a machine that was not made ready to go on."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at_end, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import START, State

DOC = RuleDoc(
    id="never-resumed",
    level=Level.ERROR,
    subject="places",
    what=(
        "The part ends at a machine that was never claimed back, or is not on it, or nobody looked "
        "whether it sits where it sat."
    ),
    why="A part that sits a tenth of a millimetre off is ruined by the next cut.",
    bad="""- {id: back-on-pins, do: mount, at: drill,
   say: Put the board on the same pins.}   # and no check behind it""",
    good="""- {id: claim-drill, do: claim, at: drill, say: Book the drill. Open the saved job.}
- {id: back-on-pins, do: mount, at: drill, say: Put the board on the same pins.}
- {id: find-marks, do: check, at: drill, say: Find both marks., record: {mark-1: up to 0.08 mm}}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """The end of every path whose part ends at a shared machine that it left."""
    told = study.procedure.part
    id = str(told.ends.at) if told and told.ends and told.ends.at else ""
    place = study.place(id)
    if place is None or not place.shared:
        return
    for end in study.walk.ends:
        fault = _fault(end.state, id)
        if fault:
            words, atom, do = fault
            yield found_at_end(
                DOC,
                study,
                end,
                end.state.atom(*atom).since,
                f"the {part(study)} ends at {called(study, id)}, but {words}",
                f"put a `do: {do}` step at {id} near the end",
                end.state.cause(*atom),
            )


def _fault(state: State, id: str) -> tuple[str, tuple[str, str], str] | None:
    """What is missing, the atom that says so, and the verb that mends it."""
    if state.atom("on").since == START and state.text("on") == id:
        return None
    if state.text("machine", id) == "free":
        return "it was freed and nobody booked it again", ("machine", id), "claim"
    if state.text("on") != id:
        return "nobody put it back on", ("on", ""), "mount"
    if not state.has("looked", id):
        return "nobody looked whether it sits where it sat", ("looked", id), "check"
    return None


RULE = Rule(DOC, in_procedure=find)
