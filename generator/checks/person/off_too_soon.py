"""A piece comes off while a place that asks for it is open."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, causes_of, found_at, moments, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="off-too-soon",
    level=Level.ERROR,
    subject="person",
    what="A piece of PPE is taken off while a place whose `wear` lists it is still open.",
    why="An open bath splashes and gives off vapour until its lid is on.",
    bad="""- {id: unwear, do: wear, take_off: [gauntlets, face-shield], say: Gauntlets and shield off.}
- {id: close-5, do: close, at: etch, say: Vented lid on.}""",
    good="""- {id: close-5, do: close, at: etch, say: Vented lid on.}
- {id: unwear, do: wear, take_off: [gauntlets, face-shield], say: Gauntlets and shield off.}""",
    needs=(
        "ppe",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every taking-off against the open places; one never closed again has the rule `left-open`."""
    never_closed = {id for end in study.walk.ends for id in end.state.names("open")}
    for moment in moments(study):
        if not moment.step.take_off:
            continue
        off = {str(piece) for piece in moment.step.take_off if not moment.after.has("worn", str(piece))}
        for id in sorted(set(moment.after.names("open")) - never_closed) if off else ():
            place = study.place(id)
            early = sorted(off & {str(piece) for piece in place.wear}) if place else []
            if early:
                yield found_at(
                    DOC,
                    moment,
                    f"{called(study, *early)} come off while {called(study, id)} is open",
                    f"close {id} first",
                    moment.after.cause("open", id),
                    explains=causes_of(moment.after, "worn", early),
                    label=f"opened {since_when(study, moment.after.atom('open', id).since)}",
                )


RULE = Rule(DOC, in_procedure=find)
