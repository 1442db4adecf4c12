"""A redo finds things not as the step expects them."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, moments
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import Moment

DOC = RuleDoc(
    id="redo-makes-trouble",
    level=Level.ERROR,
    sometimes=Level.WARNING,
    subject="time",
    what=(
        "A fault that shows only on a redo and has no better name: a lid already off, a lid already "
        "on, a machine already free or already held, gloves put on over the same gloves. A warning is "
        "a look that is only taken again, with nothing done in between."
    ),
    why="Authors write the straight run and forget what a second pass finds.",
    bad="""- {id: see-pink, do: check, say: Look., check: even pink, fail: {redo: open-5, at_most: 1,
   call: technician}}   # and the lid is still off""",
    good="""- {id: close-5, do: close, at: etch, say: Vented lid on.}
- {id: see-pink, do: check, say: Look., check: even pink, fail: {redo: open-5, at_most: 1,
   call: technician}}""",
)


_TURNING = ("open", "close", "release")


def find(study: Study) -> Iterator[Problem]:
    """Each moment on a redo path that does again what is already done; each look that is only repeated."""
    yield from _only_repeated(study)
    for moment in moments(study):
        words = "" if moment.straight or "pause" in moment.path else already(study, moment)
        if words and not _same_on_straight(study, moment):
            yield found_at(
                DOC,
                moment,
                f"on the redo, {words}",
                "let the redo start at another step, or add a step that brings things back before the check",
            )


def _only_repeated(study: Study) -> Iterator[Problem]:
    """A reading may be taken again, and time or words may mend; a bare second look sees the same."""
    for found in study.steps():
        step, fail = found.step, found.step.fail
        if fail is None or fail.redo != step.id or fail.mend or fail.say or step.record:
            continue
        if step.do == "check" and step.for_ is None:
            yield DOC.found(
                fail.spot("redo"),
                f"when the check of {step.id} fails, it is only made again: nothing is done in between",
                "let the redo start at the step that puts it right, or write a `mend:` under `fail`",
                step=str(step.id),
                level=Level.WARNING,
            )


def already(study: Study, moment: Moment) -> str:
    """What the step does that is already so."""
    if moment.step.do not in _TURNING and not moment.step.put_on:
        return ""
    step, before, id = moment.step, moment.before, str(moment.step.at or "")
    place = study.place(id) if step.do in ("open", "close") else None
    if place and place.cover == "lid" and before.has("open", id) == (step.do == "open"):
        return f"the lid of {called(study, id)} is already {'off' if step.do == 'open' else 'on'}"
    if step.do == "release" and before.text("machine", id) == "free":
        return f"{called(study, id)} is already free"
    if not step.put_on or step.fresh:
        return ""
    twice = sorted({str(piece) for piece in step.put_on} - {str(piece) for piece in step.take_off})
    worn = [piece for piece in twice if before.has("worn", piece)]
    return f"{called(study, *worn)} are already on" if worn else ""


def _same_on_straight(study: Study, moment: Moment) -> bool:
    return any(other.step is moment.step and already(study, other) for other in study.walk.straight)


RULE = Rule(DOC, in_procedure=find)
