"""An acid and a base are used one after the other without a rinse."""

from collections.abc import Iterator, Mapping, Set

from generator.checks.evidence.contents import groups
from generator.checks.evidence.meeting import is_small
from generator.checks.evidence.moments import causes_of, found_at
from generator.checks.evidence.vessels import known, used
from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import Located, Study, title_of
from generator.walk import Moment

DOC = RuleDoc(
    id="acid-then-base",
    level=Level.WARNING,
    subject="chemicals",
    what="A base is used right after an acid, or an acid after a base, on the part or in one vessel, and "
    "no rinse lies between them. What a row of `keep_apart` for the two calls `small` does not count.",
    why="The film that rides along heats and spits where the two meet, and each bath spoils the other.",
    bad="""steps:
  - {id: etch-in, do: put-in, at: etch, for: 40 s, say: Lower the board in.}
  - {id: etch-out, do: take-out, at: etch, for: 8 s, say: Let it drip.}
  - {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    good="""steps:
  - {id: etch-in, do: put-in, at: etch, for: 40 s, say: Lower the board in.}
  - {id: etch-out, do: take-out, at: etch, for: 8 s, say: Let it drip.}
  - {id: spray, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}
  - {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    needs=("substances",),
)

_ARTICLE = {"acid": "an acid", "base": "a base"}


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that follows the other kind, on whatever path it first does."""
    steps = {str(found.step.id): found.step for found in study.steps()}
    kinds = {str(found.step.id): _kind(study, found) for found in study.steps()}
    passing = {id for id, step in steps.items() if step.do != "rinse" and not kinds[id]}
    told: set[str] = set()
    for moment in study.walk.moments:
        id = str(moment.step.id)
        before = _before(moment, steps, kinds, passing) if kinds.get(id) and id not in told else None
        if before is not None:
            told.add(id)
            yield _followed(study, moment, before, kinds)


def _followed(study: Study, moment: Moment, before: Step, kinds: Mapping[str, str]) -> Problem:
    step, place = moment.step, study.place(before.at)
    kind, last = kinds[str(step.id)], kinds[str(before.id)]
    riding = [str(residue) for residue in (place.leaves if place else ())]
    return found_at(
        DOC,
        moment,
        f"{_what(study, step, kind)} is {_ARTICLE[kind]} and comes right after "
        f"{_what(study, before, last)}, {_ARTICLE[last]}, of step {before.id}: no rinse between",
        f"put a `do: rinse` step between {before.id} and {step.id}",
        *causes_of(moment.before, "residue", [name for name in riding if moment.before.has("residue", name)]),
    )


def _before(
    moment: Moment, steps: Mapping[str, Step], kinds: Mapping[str, str], passing: Set[str]
) -> Step | None:
    """The last step before this one that used the other kind, unless a rinse came after it.

    Steps that are `passing` neither use one of the kinds nor rinse.
    """
    last, ended = "", -1.0
    for id, clock in moment.before.ended.items():
        if id not in passing and clock.shortest >= ended:
            last, ended = id, clock.shortest
    other = "base" if kinds[str(moment.step.id)] == "acid" else "acid"
    found = steps.get(last)
    if found is None or found.do == "rinse" or kinds[last] != other:
        return None
    return found if _meets(found, moment.step) else None


def _kind(study: Study, located: Located) -> str:
    """`acid` or `base` where a step uses one of them, empty where neither or both, or too little to count."""
    step = located.step
    if step.do != "put-in" and not step.use:
        return ""
    place = study.place(step.at) if step.do == "put-in" else None
    used = {group for id in _enough(study, located) for group in groups(study.lab, str(id))}
    held = groups(study.lab, str(place.holds)) if place and place.holds else frozenset()
    found = {"acid", "base"} & {*used, *held}
    return found.pop() if len(found) == 1 else ""


def _enough(study: Study, located: Located) -> Iterator[str]:
    """What a step uses, without the amounts that the lab's row for acid and base calls small."""
    amounts = used(study, located)
    apart = study.lab.keep_apart if amounts else ()
    rows = [row for row in apart if {"acid", "base"} <= {*map(str, row.groups)}]
    for name in amounts:
        if not any(is_small(study.lab, row, (name,), known(amounts)) for row in rows):
            yield name


def _meets(one: Step, other: Step) -> bool:
    """Whether what the two use can meet: on the part, or in one vessel."""
    return (one.do == "put-in" and other.do == "put-in") or (one.into or one.at) == (other.into or other.at)


def _what(study: Study, step: Step, kind: str) -> str:
    """What of the step is the acid or the base: something that it uses, else what the place holds."""
    place = study.place(step.at)
    held = place.holds if place else None
    id = next((name for name in step.use if kind in groups(study.lab, str(name))), held) or step.at or ""
    return title_of(study.lab, str(id))


RULE = Rule(DOC, in_procedure=find)
