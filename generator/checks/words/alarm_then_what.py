"""A timer sounds, and nothing says what to do first."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.checks.words.no_alarm import TIMED
from generator.model import Step, Timer
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import Moment

DOC = RuleDoc(
    id="alarm-then-what",
    level=Level.ERROR,
    subject="words",
    what=(
        "Neither the step nor its timer says what to do first when it sounds. With current or elements "
        "on, only "
        "the step's own `when_it_sounds` counts."
    ),
    why=(
        "In the first second after an alarm hands do what they did last time. With current on, that can be "
        "wrong."
    ),
    bad="""- id: copper-in
  do: put-in
  at: copper
  power: {to: 5 A}
  for: 54 min
  say: Hang the board in the middle.""",
    good="""- id: copper-in
  do: put-in
  at: copper
  power: {to: 5 A}
  for: 54 min
  when_it_sounds: Current to zero FIRST. Then lift.
  say: Hang the board in the middle.""",
    needs=("timers",),
)


def find(study: Study) -> Iterator[Problem]:
    """Steps with an alarm."""
    silent = [found.step for found in study.steps() if not found.step.when_it_sounds]
    timed = [(step, timer) for step in silent if (timer := _timer(study, step))]
    ids = {step.id for step, _ in timed}
    live = {moment.step.id for moment in study.walk.moments if moment.step.id in ids and _is_live(moment)}
    for step, timer in timed:
        where, id = step.spot("for"), str(step.id)
        if id in live:
            yield DOC.found(
                where,
                "current or elements are on when the timer sounds, and the step does not say what to do "
                "first",
                "write `when_it_sounds: Current to zero FIRST. Then lift.` or what is right here",
                step=id,
            )
        elif timer.when_it_sounds is None:
            yield DOC.found(
                where,
                f'"{timer.title}" sounds, and neither the step nor the timer says what to do first',
                "write `when_it_sounds: ...` on the timer, or on this step",
                step=id,
            )


def _is_live(moment: Moment) -> bool:
    step = moment.step
    return step.power is not None or (step.at is not None and moment.after.has("live", str(step.at)))


def _timer(study: Study, step: Step) -> Timer | None:
    """The timer that sounds at the end of a step: its own, or for what lasts in a place the place's."""
    place = study.place(step.at)
    of_place = place.timer if place and step.do in TIMED else None
    if step.for_ is None and step.alarm is None:
        return None
    id = step.alarm or of_place
    return study.lab.timers.get(id) if id else None


RULE = Rule(DOC, in_procedure=find)
