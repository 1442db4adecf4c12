"""An acid and a base are used one after the other without a rinse."""

from collections.abc import Iterator

from generator.checks.chemicals.contents import groups
from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study, title_of
from generator.walk import Moment

DOC = RuleDoc(
    id="acid-then-base",
    level=Level.WARNING,
    subject="chemicals",
    what="A base is used right after an acid, or an acid after a base, on the part or in one vessel, and "
    "no rinse "
    "lies between them.",
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


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that follows the other kind, on whatever path it first does."""
    told: set[str] = set()
    for moment in study.walk.moments:
        before = _before(study, moment)
        if before is not None and moment.step.id not in told:
            told.add(str(moment.step.id))
            yield _followed(study, moment, before)


def _followed(study: Study, moment: Moment, before: Step) -> Problem:
    step = moment.step
    kinds = f"an {_kind(study, before)}", f"a {_kind(study, step)}"
    first, second = (kind.replace("an base", "a base").replace("a acid", "an acid") for kind in kinds)
    since = [moment.before.cause("residue", str(left)) for left in _residues(study, before)]
    return DOC.found(
        step.spot("at"),
        f"{_what(study, step)} is {second} and follows {first}, {_what(study, before)} at step "
        f"{before.id}, with no rinse between",
        f"put a `do: rinse` step between {before.id} and {step.id}",
        step=str(step.id),
        path=moment.path,
        causes=tuple(since),
    )


def _before(study: Study, moment: Moment) -> Step | None:
    """The last step before this one that used the other kind, unless a rinse came after it."""
    wanted = {"acid": "base", "base": "acid"}.get(_kind(study, moment.step))
    if wanted is None:
        return None
    for step in _ran(study, moment):
        if step.do == "rinse":
            return None
        if _kind(study, step):
            return step if _kind(study, step) == wanted and _meets(step, moment.step) else None
    return None


def _ran(study: Study, moment: Moment) -> Iterator[Step]:
    """The steps that ran before a moment, the last first."""
    ended = list(moment.before.ended.items())
    order = sorted(range(len(ended)), key=lambda i: (ended[i][1].shortest, i), reverse=True)
    known = {str(found.step.id): found.step for found in study.steps()}
    return (known[ended[i][0]] for i in order if ended[i][0] in known)


def _kind(study: Study, step: Step) -> str:
    """`acid` or `base` where a step uses one of them, empty where neither or both."""
    place = study.place(step.at) if step.do == "put-in" else None
    used = {group for id in step.use for group in groups(study.lab, str(id))}
    held = groups(study.lab, str(place.holds)) if place and place.holds else frozenset()
    found = {"acid", "base"} & {*used, *held}
    return found.pop() if len(found) == 1 else ""


def _meets(one: Step, other: Step) -> bool:
    """Whether what the two use can meet: on the part, or in one vessel."""
    return (one.do == "put-in" and other.do == "put-in") or (one.into or one.at) == (other.into or other.at)


def _residues(study: Study, step: Step) -> tuple[str, ...]:
    place = study.place(step.at)
    return tuple(map(str, place.leaves)) if place else ()


def _what(study: Study, step: Step) -> str:
    place = study.place(step.at)
    id = next(iter(step.use), None) or (place.holds if place else None) or step.at or ""
    return title_of(study.lab, str(id))


RULE = Rule(DOC, in_procedure=find)
