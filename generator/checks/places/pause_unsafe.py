"""Work may stop where something is not safe to leave."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, part
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import State

DOC = RuleDoc(
    id="pause-unsafe",
    level=Level.ERROR,
    subject="places",
    what="At a `pause` something is open, live, wet, hot, in a bath, or the tray is full.",
    why="Nobody stands by during a pause.",
    bad="""- {id: see-pink, do: check, at: light, say: Keep it wet., check: even pink,
   pause: {keep: in a bag, time: up to 3 days}}""",
    good="""- {id: see-black, do: check, at: light, say: Look at every hole., check: even black,
   pause: {keep: dry in a bag, time: up to 3 days}}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every pause as it is taken."""
    for rest in study.walk.rests:
        state = rest.moment.after
        unsafe = [*_places(study, state), *_part(study, state)]
        if unsafe:
            yield found_at(
                DOC,
                rest.moment,
                f"work may stop here, but {' and '.join(words for words, _ in unsafe)}",
                "put the pause behind a later step, or make it safe first",
                *(cause for _, cause in unsafe),
            )


def _places(study: Study, state: State) -> Iterator[tuple[str, Cause]]:
    for kind, words in (("open", "is open"), ("live", "is live"), ("tray", "has a full tray")):
        for id in sorted(state.names(kind)):
            yield f"{called(study, id)} {words}", state.cause(kind, id)


def _part(study: Study, state: State) -> Iterator[tuple[str, Cause]]:
    if study.procedure.part is None:
        return
    if state.has("wet"):
        yield f"the {part(study)} is wet", state.cause("wet")
    if state.has("hot"):
        yield f"the {part(study)} is hot", state.cause("hot")
    if study.mixture_at(state.text("in")):
        yield f"the {part(study)} is in {called(study, state.text('in'))}", state.cause("in")


RULE = Rule(DOC, in_procedure=find)
