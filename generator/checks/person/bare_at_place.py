"""A step is done at a place without all that the place wants worn."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, causes_of, found_at, is_or_are, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import START, State, worn_as

DOC = RuleDoc(
    id="bare-at-place",
    level=Level.ERROR,
    subject="person",
    what=(
        "A step at a place whose `wear` is not all on; `wear_when: hot` counts only once place or "
        "part is hot."
    ),
    why="The place says what protects there. A splash does not wait until the gloves are on.",
    bad="""- {id: open-5, do: open, at: etch, say: Lid off.}
- {id: etch-wear, do: wear, put_on: [gauntlets, apron, face-shield], say: Put on gauntlets and shield.}""",
    good="""- {id: etch-wear, do: wear, put_on: [gauntlets, apron, face-shield],
   say: Put on gauntlets and shield.}
- {id: open-5, do: open, at: etch, say: Lid off.}""",
    needs=(
        "ppe",
        "places",
    ),
)


# To claim a machine is to write a slip or to press a key in front of it; nothing of it is open or hot yet.
_NOT_HANDS_ON = ("wear", "wait", "hold", "cool", "claim")


def find(study: Study) -> Iterator[Problem]:
    """Every step at a place: what the place wants worn against what is on."""
    visits = at_places(study)
    there = {id: place for _, id, place in visits}
    wanted = {id: {*worn_as(study.lab, place.wear)} for id, place in there.items()}
    for moment, id, place in visits:
        cold = place.wear_when == "hot" and not _is_hot(moment.before, id)
        if not wanted[id] or cold or moment.step.do in _NOT_HANDS_ON:
            continue
        missing = sorted(wanted[id].difference(moment.before.names("worn")))
        if missing:
            since = moment.before.atom("worn", missing[0]).since
            yield found_at(
                DOC,
                moment,
                f"{called(study, *missing)} {is_or_are(study, missing)} not worn at "
                f"{called(study, id)}",
                f"put `put_on: [{', '.join(missing)}]` on a `do: wear` step before {moment.step.id}",
                *causes_of(moment.before, "worn", missing),
                label=f"last taken off {since_when(study, since)}"
                if since != START
                else "never put on before here",
            )


def _is_hot(state: State, place: str) -> bool:
    return state.has("hot") or state.has("heated", place)


RULE = Rule(DOC, in_procedure=find)
