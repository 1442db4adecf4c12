"""Moments of the walk as rules look at them: by verb, with the words and causes of a problem."""

from collections.abc import Iterable
from typing import Any

from generator.model import Place
from generator.problems import Cause, Problem, RuleDoc, misplaced
from generator.study import LabStudy, Study, title_of
from generator.walk import START, End, Moment, State


def moments(study: Study, *verbs: str, straight: bool = False) -> Iterable[Moment]:
    """Moments of these verbs (all, where none is named), on every path or on the straight run alone."""
    walk = study.walk
    if not verbs:
        return walk.straight if straight else walk.moments
    by_verb = walk.straight_by_verb if straight else walk.by_verb
    return [moment for verb in verbs for moment in by_verb.get(verb, ())]


def at_places(study: Study, *verbs: str, straight: bool = False) -> Iterable[tuple[Moment, str, Place]]:
    """Moments at a declared place, with the place's id and the place."""
    by_verb = study.placed_by_verb if verbs else {}
    rows = [row for verb in verbs for row in by_verb.get(verb, ())] if verbs else study.placed
    return [row for row in rows if row[0].path == ""] if straight else rows


def found_at(doc: RuleDoc, moment: Moment, message: str, fix: str, *causes: Cause, **more: Any) -> Problem:
    """A problem that stands on the step of a moment."""
    return doc.found(
        moment.step.spot("id"),
        message,
        fix,
        step=str(moment.step.id),
        path=moment.path,
        order=moment.order,
        causes=causes,
        **more,
    )


def found_at_end(
    doc: RuleDoc, study: Study, end: End, since: str, message: str, fix: str, *causes: Cause
) -> Problem:
    """A problem of the end of a path; it stands on the step since when it holds, or on the last step.

    What the last step leaves behind is one fault, whatever it leaves: the run cannot end with that step.
    """
    step = study.step(since) or study.procedure.steps[-1]
    last = study.walk.moments[end.order - 2].step
    explains = (misplaced(since),) if since == last.id else ()
    return doc.found(
        step.spot("id"),
        message,
        fix,
        step=str(step.id),
        path=end.path,
        order=end.order,
        causes=causes,
        explains=explains,
    )


def part(study: Study) -> str:
    """What the workpiece is called."""
    return str(study.procedure.part.name) if study.procedure.part else "part"


def called(study: LabStudy, *ids: str) -> str:
    """Titles as a list in a sentence."""
    names = [title_of(study.lab, id) for id in ids]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}" if names else "nothing"


def either(study: LabStudy, ids: list[str]) -> str:
    """Titles as a choice in a sentence."""
    names = [title_of(study.lab, id) for id in ids]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def is_or_are(study: LabStudy, ids: list[str]) -> str:
    """The verb behind titles: several, or one that names a pair (gloves, goggles) takes "are"."""
    first = title_of(study.lab, ids[0]).partition(" over ")[0] if ids else ""
    return "are" if len(ids) > 1 or (first.endswith("s") and not first.endswith("ss")) else "is"


def since_when(study: Study, since: str) -> str:
    """ "since step rinse-2 (line 171)", or "since the start"."""
    step = study.step(since) if since != START else None
    return f"since step {since} (line {step.where.line})" if step else "since the start"


def causes_of(state: State, kind: str, names: list[str]) -> tuple[Cause, ...]:
    """The causes of several atoms of one kind."""
    return tuple(state.cause(kind, name) for name in names)


def made_here(moment: Moment) -> tuple[Cause, ...]:
    """All that this step made so: where the step itself is wrong, it explains what follows from that."""
    return tuple(moment.after.made_by(str(moment.step.id)))


def left_inside(moment: Moment) -> tuple[Cause, ...]:
    """All that the part's present place made so: it would have come off had the part been taken out."""
    inside = moment.before.atom("in")
    return tuple(moment.before.made_by(inside.since)) if inside.value else ()


def minutes(seconds: float) -> str:
    """A time as a person says it: 40 s, 5 min 15 s, 2 h 5 min, 3 days."""
    whole = round(seconds)
    if whole < 120:
        return f"{whole} s"
    if whole < 7200:
        return f"{whole // 60} min" + (f" {whole % 60} s" if whole % 60 else "")
    if whole < 172_800:
        return f"{whole // 3600} h" + (f" {whole % 3600 // 60} min" if whole % 3600 // 60 else "")
    return f"{whole / 86_400:.3g} days"
