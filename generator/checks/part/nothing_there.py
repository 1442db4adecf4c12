"""The part is taken out of a place where it is not."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, made_here, part
from generator.checks.rule import Rule
from generator.model import Place
from generator.problems import Cause, Level, Problem, RuleDoc, misplaced
from generator.study import Study
from generator.walk import Moment

DOC = RuleDoc(
    id="nothing-there",
    level=Level.ERROR,
    subject="part",
    what="`take-out` at a place where nothing was put in, or `empty` at a place without a tray, with nothing "
    "named to be emptied, while a tray somewhere else is full.",
    why="A step is missing, or stands in the wrong order.",
    bad="""- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}   # and no put-in before it""",
    good="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every take-out against where the part is, and every emptying against where something runs into."""
    yield from _empty(study)
    for moment, id, place in at_places(study, "take-out"):
        where = moment.before.text("in")
        if where != id:
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} is taken out of {called(study, id)}, but it is "
                + (f"in {called(study, where)}" if where else "not in there"),
                f"put a `do: put-in` step at {id} before it",
                moment.before.cause("in"),
                explains=(*made_here(moment), *_left_undone(moment, place), *_too_late(study, moment)),
            )


def _empty(study: Study) -> Iterator[Problem]:
    for moment, id, place in at_places(study, "empty"):
        full = sorted(tray for tray in moment.before.names("tray") if _meant(moment, place, tray))
        if full and not (place.tray or place.holds or moment.step.use):
            yield found_at(
                DOC,
                moment,
                f"{called(study, id)} has no tray to be emptied; full is the tray of {called(study, *full)}",
                f"write `at: {full[0]}`",
                *(moment.before.cause("tray", tray) for tray in full),
            )


def _meant(moment: Moment, place: Place, tray: str) -> bool:
    """Whether a full tray elsewhere is what was to be emptied: what is in it goes where the step says."""
    runs = moment.before.value("tray", tray)
    homes = {container for container, _ in runs} if isinstance(runs, tuple) else set()
    return place.drains_to is None or str(moment.step.waste or "") in homes


def _too_late(study: Study, moment: Moment) -> Iterator[Cause]:
    """What a put-in at the same place makes that stands behind the take-out instead of before it."""
    later = (
        other
        for other in study.walk.by_verb.get("put-in", ())
        if other.straight and other.order > moment.order and other.step.at == moment.step.at
    )
    behind = next(later, None)
    if behind is not None:
        yield misplaced(str(behind.step.id))
        yield from behind.after.made_by(str(behind.step.id))


def _left_undone(moment: Moment, place: Place) -> Iterator[Cause]:
    """What the place would have taken off or dried, had the part been put in."""
    for residue in place.clears:
        if moment.before.has("residue", str(residue)):
            yield moment.before.cause("residue", str(residue))
    if place.makes == "dry" and moment.before.has("wet"):
        yield moment.before.cause("wet")


RULE = Rule(DOC, in_procedure=find)
